"""What Chinese text says: in Japanese order by its return marks, or sign by sign.

In reading order: ``marks`` (the return marks), ``order`` (what they do), ``by_sound``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.chinese.by_sound import (
        are_compounds as are_compounds,
        sign_by_sign as sign_by_sign,
    )
    from inscribe.reading.chinese.marks import (
        MARKS as MARKS,
        has_marks as has_marks,
        without_marks as without_marks,
    )
    from inscribe.reading.chinese.order import reading_order as reading_order
else:
    __getattr__ = late.door(
        __name__,
        {
            "by_sound": "are_compounds sign_by_sign",
            "marks": "MARKS has_marks without_marks",
            "order": "reading_order",
        },
    )
