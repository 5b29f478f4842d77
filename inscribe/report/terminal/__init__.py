"""Reports for a terminal, at any width, with or without colour."""
