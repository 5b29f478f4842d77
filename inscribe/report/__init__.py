"""What the stages found, in one output format per package; no logic."""
