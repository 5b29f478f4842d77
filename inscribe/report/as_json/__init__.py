"""The JSON contract: one module a subject."""
