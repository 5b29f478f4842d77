"""The entry as a page that stands alone."""
