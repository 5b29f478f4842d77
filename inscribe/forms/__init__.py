"""From what is carved to current characters, in traced steps that can be undone."""
