"""The entry as a word-processor document (extra: docx)."""
