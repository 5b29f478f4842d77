"""Recording a new object: the questions, the answers kept on the way, and second looks."""

from inscribe.reading.suspicious import Suspicion, suspicions
from inscribe.recording.draft import Draft
from inscribe.recording.old_forms import old_forms

__all__ = ["Draft", "Suspicion", "old_forms", "suspicions"]
