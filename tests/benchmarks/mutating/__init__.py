"""The parts of ``mutants.py``: where faults may be put, which tests see a line, one trial."""
