"""The entry as a CSV table, one row an inscription."""
