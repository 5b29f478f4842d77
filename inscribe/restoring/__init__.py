"""Restoring what cannot be read: ranked candidates with their evidence, never put into a record.

>>> from inscribe.restoring import restore
>>> from inscribe import notation
>>> found = restore(notation.parse("武州□綾国作"))
>>> found.lacunae[0].candidates[0].text
'住'
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.restoring.filled import with_restored as with_restored
    from inscribe.restoring.model import (
        CAUTIONS as CAUTIONS,
        Candidate as Candidate,
        Evidence as Evidence,
        EvidenceKind as EvidenceKind,
        Lacuna as Lacuna,
        Restoration as Restoration,
    )
    from inscribe.restoring.seen import Seen as Seen
    from inscribe.restoring.worn import restore as restore
else:
    __getattr__ = late.door(
        __name__,
        {
            "filled": "with_restored",
            "model": "CAUTIONS Candidate Evidence EvidenceKind Lacuna Restoration",
            "seen": "Seen",
            "worn": "restore",
        },
    )
