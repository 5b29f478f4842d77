"""Recording a new object: what is asked, the answers kept on the way, and second looks.

In reading order: ``typed`` and ``measures`` (what people type), ``checks``, ``questions``,
``draft`` (the answers kept), ``memory`` (what is said once for many objects), ``older`` (a remark
on forms), ``second_look``, ``again`` (a finished record opened again).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.recording.again import answers_of as answers_of, with_changes as with_changes
    from inscribe.recording.checks import (
        Check as Check,
        column_problem as column_problem,
        day_problem as day_problem,
        reading_problem as reading_problem,
        usual_word as usual_word,
    )
    from inscribe.recording.draft import Draft as Draft
    from inscribe.recording.measures import converted as converted
    from inscribe.recording.memory import SESSION as SESSION, Memory as Memory
    from inscribe.recording.older import old_forms as old_forms
    from inscribe.recording.questions import FACE_ENDS as FACE_ENDS, Interview as Interview
    from inscribe.recording.second_look import is_name_at as is_name_at, seen as seen
    from inscribe.recording.typed import (
        day_of as day_of,
        is_yes as is_yes,
        is_yes_or_no as is_yes_or_no,
        plain as plain,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "again": "answers_of with_changes",
            "checks": "Check column_problem day_problem reading_problem usual_word",
            "draft": "Draft",
            "measures": "converted",
            "memory": "Memory SESSION",
            "older": "old_forms",
            "questions": "FACE_ENDS Interview",
            "second_look": "is_name_at seen",
            "typed": "day_of is_yes is_yes_or_no plain",
        },
    )
