"""What a carved date says, which days it names, and whether it agrees with itself.

``finding`` (the way in) is asked about every text that is read, and most have no date; the
rooms ``calendar``, ``written`` and ``meaning`` are loaded with the first date found. ``model``
is what the stage hands on.

``written``: trace (is it worth a look, about 1 µs) → scanning (words and numbers) → parsing with
``year_rules``, ``pair_rules``, ``day_rules``, ``age_rules`` → expression; ``meaning``: resolving
(year, month, days, agreement) → conflict (ranked ways out) → account (sentences). Public names
are in ``__init__`` and load late: a text without a date must cost nothing. What stands in an era's
place and is none, or before 年 and is no number, is kept (``unknown_eras``, ``unknown_numbers``)
and explained by what it is like (``forms/alike.py``: look-alikes, parts, sounds). ``year`` is the
western year in which the Japanese year *began*; ``first_day`` and ``last_day`` may lie in the
next. A month name, day word or age word is a row in ``month_names``, ``day_words``, ``festivals``,
``solar_terms`` or ``date_words``. Leap months are put right in
``glossary/build/months_corrections.tsv``. 512 of the 3,376 computed months are marked as possibly
a day off.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.dates.finding import find as find, resolve as resolve, resolve_all as resolve_all
    from inscribe.dates.meaning import (
        Comparison as Comparison,
        SpokenWord as SpokenWord,
        compared as compared,
        words as words,
    )
    from inscribe.dates.model import (
        SEASONS as SEASONS,
        Age as Age,
        Agreement as Agreement,
        CandidateYear as CandidateYear,
        DatePiece as DatePiece,
        DateReading as DateReading,
        Explanation as Explanation,
        Part as Part,
        Precision as Precision,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "finding": "find resolve resolve_all",
            "meaning": "Comparison SpokenWord compared words",
            "model": (
                "SEASONS Age Agreement CandidateYear DatePiece DateReading Explanation Part "
                "Precision"
            ),
        },
    )
