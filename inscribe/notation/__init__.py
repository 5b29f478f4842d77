"""Text to transcription and back, in the conventions of the trade."""
