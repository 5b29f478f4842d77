"""What kind of text an inscription is, and who reads it.

In reading order: ``reader`` (the way in), ``interpretation`` (from a text to what it says),
``register`` and ``signed`` (verse, signature or prose), ``mixed`` (a poem with something beside
it), ``doubts`` (of the carving itself), ``second_opinion``, ``iso`` (ISO 3602 in the place of
Hepburn).

Chances: every reading says how likely it is right, whole and word by word (``words/chances.py``,
weights in ``reading_chances.tsv``; what speaks: ``verse/weighing.py``,
``inscription/prose_rivals.py``, ``inscription/weighing.py``). Fit and measure:
``tests/benchmarks/chances.py [--fit | --tables]``. Below ``weighing.SURE`` nothing stands without
a doubt or another reading. Worn signs: ``restoring/filled.py`` reads the text with what restore
proposes, in brackets. A copy is read by a source in kana (``verse/by_source.py``). Counters in
verse: ``verse_counters.tsv``. What the dictionary of verse says of a word lies in its file
``features.txt``; MeCab is only given the place, for it maps its dictionary once for each tagger.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.inscription.doubts import (
        doubts_of_dates as doubts_of_dates,
        doubts_of_signs as doubts_of_signs,
        doubts_of_suspicions as doubts_of_suspicions,
    )
    from inscribe.reading.inscription.iso import iso_reading as iso_reading
    from inscribe.reading.inscription.reader import (
        Choice as Choice,
        read as read,
        read_text as read_text,
    )
    from inscribe.reading.inscription.second_opinion import (
        with_second_opinion as with_second_opinion,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "doubts": "doubts_of_dates doubts_of_signs doubts_of_suspicions",
            "iso": "iso_reading",
            "reader": "Choice read read_text",
            "second_opinion": "with_second_opinion",
        },
    )
