"""Which days a written date means, whether it agrees with itself, and what else it may be.

In reading order: ``resolving`` (the way in), ``contradicting``, ``interval``, ``candidates``,
``mistakes``, ``conflict`` and ``conflict_days`` (ranked ways out), ``account`` (sentences),
``carved``, ``spoken`` and ``pronouncing`` (how it is said), ``several`` (the dates of one object
together).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.dates.meaning.carved import as_carved as as_carved
    from inscribe.dates.meaning.pronouncing import SpokenWord as SpokenWord, words as words
    from inscribe.dates.meaning.resolving import resolved as resolved, with_age_at as with_age_at
    from inscribe.dates.meaning.several import Comparison as Comparison, compared as compared
else:
    __getattr__ = late.door(
        __name__,
        {
            "carved": "as_carved",
            "pronouncing": "SpokenWord words",
            "resolving": "resolved with_age_at",
            "several": "Comparison compared",
        },
    )
