"""A copy held against its source: what answers what, how faithful it is, what space explains."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.collating import (
        collate as collate,
        collate_texts as collate_texts,
        prepared as prepared,
    )
    from inscribe.collation.model import (
        NO_DIFFERENCE as NO_DIFFERENCE,
        Beside as Beside,
        Collation as Collation,
        ColumnSpace as ColumnSpace,
        Fidelity as Fidelity,
        Group as Group,
        GroupKind as GroupKind,
        Judgement as Judgement,
        SpaceAccount as SpaceAccount,
        Span as Span,
        Verdict as Verdict,
    )
    from inscribe.collation.printed import Printed as Printed, as_printed as as_printed
    from inscribe.collation.witnesses import (
        Testimony as Testimony,
        Witness as Witness,
        testimony as testimony,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "collating": "collate collate_texts prepared",
            "model": (
                "Beside Collation ColumnSpace Fidelity Group GroupKind Judgement NO_DIFFERENCE "
                "SpaceAccount Span Verdict"
            ),
            "printed": "Printed as_printed",
            "witnesses": "Testimony Witness testimony",
        },
    )
