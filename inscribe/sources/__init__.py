"""The library of source texts, and which of them an inscription copies."""
