"""Records: one object, its inscriptions, and who read them when."""
