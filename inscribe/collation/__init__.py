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
        Fidelity as Fidelity,
        Group as Group,
        GroupKind as GroupKind,
        Span as Span,
    )
    from inscribe.collation.spacing import (
        ColumnSpace as ColumnSpace,
        Judgement as Judgement,
        SpaceAccount as SpaceAccount,
        Verdict as Verdict,
    )
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
            "model": "Beside Collation Fidelity Group GroupKind NO_DIFFERENCE Span",
            "spacing": "ColumnSpace Judgement SpaceAccount Verdict",
            "witnesses": "Testimony Witness testimony",
        },
    )
