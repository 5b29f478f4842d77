"""Recording an object at the bench: what is asked, what is suspicious, what is kept."""

from inscribe.recording.draft import Draft
from inscribe.recording.suspicions import Suspicion, suspicions

__all__ = ["Draft", "Suspicion", "suspicions"]
