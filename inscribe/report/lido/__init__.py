"""The entry as LIDO 1.1 inscription elements."""
