"""What date or age is written in a text: its parts and where they stand.

In reading order: ``trace`` (may there be one), ``numerals``, ``vocabulary`` and ``scanning`` (words
and numbers), ``expression`` (what is being put together), ``look``, ``rules`` with ``year_rules``,
``pair_rules``, ``day_rules`` and ``age_rules``, ``parsing`` (all of it), ``lookalikes``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.dates.written.expression import Expression as Expression
    from inscribe.dates.written.lookalikes import are_alike as are_alike, pairs_meant as pairs_meant
    from inscribe.dates.written.numerals import (
        STARTS as STARTS,
        as_kanji as as_kanji,
        value_of as value_of,
    )
    from inscribe.dates.written.parsing import (
        bare_age as bare_age,
        expressions as expressions,
        with_lone_stem as with_lone_stem,
    )
    from inscribe.dates.written.trace import may_hold_date as may_hold_date
    from inscribe.dates.written.unknown_eras import (
        Like as Like,
        eras_like as eras_like,
        eras_most_like as eras_most_like,
    )
    from inscribe.dates.written.unknown_numbers import numbers_like as numbers_like
    from inscribe.dates.written.vocabulary import words_from as words_from
else:
    __getattr__ = late.door(
        __name__,
        {
            "expression": "Expression",
            "lookalikes": "are_alike pairs_meant",
            "numerals": "STARTS as_kanji value_of",
            "parsing": "bare_age expressions with_lone_stem",
            "trace": "may_hold_date",
            "unknown_eras": "Like eras_like eras_most_like",
            "unknown_numbers": "numbers_like",
            "vocabulary": "words_from",
        },
    )
