"""What Chinese text says: as a known saying, in Japanese order, or by the sounds of its signs.

In reading order: ``marks`` (the return marks), ``order`` (what they do), ``by_sound``; then
``sayings`` (what has a customary reading), ``compounds`` and ``sign_words`` (the words),
``phrases`` and ``grammar`` (Japanese order), ``lines``, ``proposals`` (ranked readings);
``letters`` (the polite written style).

Chinese (``reading/chinese/``): ``known_saying`` looks a text up in ``sayings.tsv`` (by hand) and
in EDICT's set phrases (``compounds.tsv``; Debian package edict; rebuild with ``python
glossary/build compounds``, which also prints where EDICT reads a saying otherwise); a couplet is
its lines. ``chinese_readings`` ranks that, the Japanese order and the sounds. Japanese order:
``lines.py`` divides, ``grammar.py`` fills a chart with the cheapest phrase of each kind;
``single_words.py``, ``governing.py``, ``joining.py`` are its rules, ``chinese_words.tsv`` says
what each sign governs and how it is inflected (a verb or a turning sign is a row there). Return
marks restrict the chart to their order. Measure: ``tests/benchmarks/chinese.py FILE...``, totals
only; its "rules alone" is what the grammar does without the tables.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.chinese.by_sound import (
        are_compounds as are_compounds,
        sign_by_sign as sign_by_sign,
    )
    from inscribe.reading.chinese.letters import (
        is_letter as is_letter,
        letter_words as letter_words,
    )
    from inscribe.reading.chinese.lines import words_in_order as words_in_order
    from inscribe.reading.chinese.marks import (
        MARKS as MARKS,
        has_marks as has_marks,
        without_marks as without_marks,
    )
    from inscribe.reading.chinese.order import reading_order as reading_order
    from inscribe.reading.chinese.proposals import (
        ChineseReading as ChineseReading,
        chinese_readings as chinese_readings,
    )
    from inscribe.reading.chinese.sayings import Saying as Saying, known_saying as known_saying
    from inscribe.reading.chinese.sign_words import (
        spoken_forms as spoken_forms,
        stands_before as stands_before,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "by_sound": "are_compounds sign_by_sign",
            "letters": "is_letter letter_words",
            "lines": "words_in_order",
            "marks": "MARKS has_marks without_marks",
            "order": "reading_order",
            "proposals": "ChineseReading chinese_readings",
            "sayings": "Saying known_saying",
            "sign_words": "spoken_forms stands_before",
        },
    )
