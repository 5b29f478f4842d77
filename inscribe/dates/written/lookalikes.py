"""Signs of dates that are taken for one another in worn or running writing.

>>> are_alike("戊", "戌"), pairs_meant("戌申")
(True, ('戊申',))
"""

from __future__ import annotations

from inscribe import tables
from inscribe.dates import calendar


@tables.cached()
def lookalikes() -> frozenset[frozenset[str]]:
    """Return the pairs of signs taken for one another."""
    found = tables.rows("date_lookalikes")
    return frozenset(frozenset((row["written"], row["other"])) for row in found)


def are_alike(one: str, other: str) -> bool:
    """Return whether two signs are taken for one another."""
    return frozenset((one, other)) in lookalikes()


@tables.cached()
def cycle_lookalikes() -> frozenset[str]:
    """Return the signs that are no stem or branch but are taken for one."""
    every_sign = calendar.STEMS + calendar.BRANCHES
    return frozenset(
        sign
        for pair in lookalikes()
        for sign in pair
        if sign not in every_sign and any(other in every_sign for other in pair)
    )


def pairs_meant(written: str) -> tuple[str, ...]:
    """Return the pairs of the cycle that two signs may stand for, each sign itself or alike."""
    first, second = written[0], written[1]
    stems = [sign for sign in calendar.STEMS if sign == first or are_alike(sign, first)]
    branches = [sign for sign in calendar.BRANCHES if sign == second or are_alike(sign, second)]
    pairs = ((s, b) for s in stems for b in branches)
    return tuple(s + b for s, b in pairs if calendar.index_of(s, b) is not None)
