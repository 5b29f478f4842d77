"""A corpus of hostile and sloppy inputs, each with what must come of it."""
