"""Restoring what cannot be read: ranked candidates with their evidence, never put into a record.

``restoring/``: what stood in a worn place; nothing is ever written to a record. Signatures:
``chances.py`` (how usual a word is: ``signature_chances.tsv``), ``name_chances.py``,
``stretches.py`` (what a stretch may be, looked up once), ``formula.py`` (sums over all divisions:
hidden semi-Markov over classes of words; ``signature_date_order.tsv`` is the grammar inside dates
and formulas). What determines each other is one word there: era, number and sexagenary year
(天保三年壬辰), town and province (雲州松江), opener and closer (応需). Verse: ``verse.py`` tries
each sign in its place (path cost, metre, frequency), within 16 signs around where there is no
metre. Sources: ``sourced.py`` finds what they have there, ``answering.py`` weighs it (one whose
wording differs beside the worn sign counts for a fifth, ``OTHER_WORDING``), ``spellings.py`` where
the source is spelled otherwise. ``seen.py`` keeps what the reader sees. One run looks at 20 worn
places (``worn.py``), some 10 ms each, however long the text; others with ``--places``. In verse
what stands beside a place is read once for all signs (``reading/verse/open_place.py``), some 5
ms, where MeCab for each of 2,200 took 50.

Measure: ``tests/benchmarks/restore.py --half look|measure`` (fitted on the odd halves only) and,
by class of sign, ``restore_signatures.py``. Names are a third of the signs and cannot be told
without a collection or a source (of a record, ``restore`` expects the names of the records beside
it; else ``--records``): without names the truth comes first for two thirds to three quarters of
the signs, within ten for 0.95-0.98. Where the source is in kana, most of what is lost is the
carver's choice of spelling (散る, ちる; 河, 川): the column "word".

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
    from inscribe.restoring.recorded import restore_inscription as restore_inscription
    from inscribe.restoring.seen import Seen as Seen
    from inscribe.restoring.worn import restore as restore
else:
    __getattr__ = late.door(
        __name__,
        {
            "filled": "with_restored",
            "model": "CAUTIONS Candidate Evidence EvidenceKind Lacuna Restoration",
            "recorded": "restore_inscription",
            "seen": "Seen",
            "worn": "restore",
        },
    )
