"""Whether want of space explains a difference.

In reading order: ``measures`` (pitch, crowding, room), ``evidence`` (one difference weighed),
``reasons`` (the same in words), ``account`` (the verdicts).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.space.account import space_account as space_account
    from inscribe.collation.space.measures import missing as missing
else:
    __getattr__ = late.door(
        __name__,
        {
            "account": "space_account",
            "measures": "missing",
        },
    )
