"""Recording an object at the bench: what is asked, what is suspicious, what is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.recording.draft import Draft as Draft
    from inscribe.recording.odd_signs import Suspicion as Suspicion, suspicions as suspicions
    from inscribe.recording.questions import (
        FACE_ENDS as FACE_ENDS,
        Check as Check,
        Interview as Interview,
        column_problem as column_problem,
        yes_problem as yes_problem,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "draft": "Draft",
            "odd_signs": "Suspicion suspicions",
            "questions": "Check FACE_ENDS Interview column_problem yes_problem",
        },
    )
