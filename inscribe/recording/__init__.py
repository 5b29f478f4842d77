"""Recording a new object: what is asked, the answers kept on the way, and second looks.

In reading order: ``questions``, ``draft`` (the answers kept), ``old_forms`` (a remark on forms).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.recording.draft import Draft as Draft
    from inscribe.recording.older import old_forms as old_forms
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
            "older": "old_forms",
            "questions": "Check FACE_ENDS Interview column_problem yes_problem",
        },
    )
