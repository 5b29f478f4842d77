"""A copy held against its source: what answers what, how faithful it is, what space explains.

``beside.py`` sets aside what was not copied (heading, writer, carver, date, patron, seal):
passages of these kinds of which the source has less than half the signs. A bare text only where
its division is sure and a signature stands in it. They are groups of the kind ``beside``, no
differences; the copied text between them is aligned alone.

In the order of the work: ``sounds`` (kana folded to letters, open where spelling leaves a
choice), ``align/sides`` (every way a character or word may be read, wide on purpose),
``align/extent`` (all of the source, or the part a copy is from), ``align/searching`` (what
answers what; exact shortest path), ``align/long_texts`` (both texts read once and aligned by ear,
then cut into blocks), ``align/differences`` (widened to where words may end; Chinese order:
formulas, the grammar of ``reading/chinese``, signs that govern moved behind what follows; moved,
doubled), ``breaks``, ``fidelity``; ``phrases`` and ``printed`` (differences as an edition prints
them, read only when asked for), ``witnesses`` (several sources: places, readings, chances;
``SLIP`` and ``NONE_OF_THEM`` are from memory). Up to 60 signs a text is aligned exactly; beyond
that work is counted in states (``Collation.work``), bounded per sign, and what goes beyond is one
difference, told in the notes. A repeat mark after an unread sign is unread. Prices:
``collation_costs.tsv``; every reading must stay cheaper than ``open`` + ``wrong``. A group in
Chinese order has the kind ``spelling`` and the key ``order``. A false alarm: add the word to
``collation_readings.tsv`` and ``tests/data/manuscript_spellings.tsv``. A missed difference:
``inscribe collate --text A B`` shows the reading used. Measure: ``tests/benchmarks/collate.py``
(even-numbered poems; constants were set on odd ones), ``collate_manuscripts.py`` (false alarms),
``collate_long.py`` (time, states and memory of long and unlike texts), ``printed.py`` (against a
second author's apparatus; rules were set on ``spans_d_look.jsonl``). Classes of spellings and
slips: ``tests/test_collate_classes.py``.
"""

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
    from inscribe.collation.apparatus import ApparatusPlace as ApparatusPlace
    from inscribe.collation.collating import (
        collate as collate,
        collate_texts as collate_texts,
        prepared as prepared,
    )
    from inscribe.collation.model import NO_DIFFERENCE as NO_DIFFERENCE, Collation as Collation
    from inscribe.collation.parts import (
        Beside as Beside,
        Fidelity as Fidelity,
        Group as Group,
        GroupKind as GroupKind,
        Printed as Printed,
        Span as Span,
    )
    from inscribe.collation.witnesses import (
        Testimony as Testimony,
        Witness as Witness,
        WitnessSource as WitnessSource,
        testimony as testimony,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "accounts": "ColumnSpace Judgement SpaceAccount Verdict",
            "apparatus": "ApparatusPlace",
            "collating": "collate collate_texts prepared",
            "model": "Collation NO_DIFFERENCE",
            "parts": "Beside Fidelity Group GroupKind Printed Span",
            "witnesses": "Testimony Witness WitnessSource testimony",
        },
    )
