"""The cheapest way through two texts, exactly.

``costs`` (the prices), ``states`` (where an alignment is), ``pairs`` (two signs), ``worn`` (signs
that cannot be read), ``unwritten`` (what only one text writes), ``moves`` (every step allowed from
a state), ``search`` (the shortest path), ``homophones`` (what only sounds alike), ``grouping`` (its
steps as groups that a reader can use).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.align.searching.costs import prices as prices
    from inscribe.collation.align.searching.grouping import (
        groups as groups,
        joined as joined,
        span as span,
    )
    from inscribe.collation.align.searching.pairs import match as match
    from inscribe.collation.align.searching.search import (
        MOST_WORK as MOST_WORK,
        AlignmentPath as AlignmentPath,
        TooMuchWorkError as TooMuchWorkError,
        agreeing as agreeing,
        agreement as agreement,
        cheapest as cheapest,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "costs": "prices",
            "grouping": "groups joined span",
            "pairs": "match",
            "search": "AlignmentPath MOST_WORK TooMuchWorkError agreeing agreement cheapest",
        },
    )
