"""A copy held against its source: what answers what, how faithful it is, what space explains."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.accounts import (
        ColumnSpace as ColumnSpace,
        Judgement as Judgement,
        SpaceAccount as SpaceAccount,
        Verdict as Verdict,
    )
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
        Printed as Printed,
        Span as Span,
    )
    from inscribe.collation.witnesses import (
        ApparatusPlace as ApparatusPlace,
        Testimony as Testimony,
        Witness as Witness,
        WitnessSource as WitnessSource,
        testimony as testimony,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "collating": "collate collate_texts prepared",
            "accounts": "ColumnSpace Judgement SpaceAccount Verdict",
            "model": ("Beside Collation Fidelity Group GroupKind NO_DIFFERENCE Printed Span"),
            "witnesses": "ApparatusPlace Testimony Witness WitnessSource testimony",
        },
    )
