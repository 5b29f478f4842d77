"""Which kind of passage follows which, and what a person named did: two small tables."""

from __future__ import annotations

from itertools import product
from typing import Literal

from inscribe import tables
from inscribe.reading.words import Role

START, END = "start", "end"
_UNLISTED = 1.5
Where = Literal["inside", "column", "face"]
_WHERE: dict[str, tuple[Where, ...]] = {
    "inside": ("inside",),
    "column": ("column",),
    "face": ("face",),
    "edge": ("column", "face"),
    "any": ("inside", "column", "face"),
}


def order_cost(before: str, after: str, where: Where) -> float:
    """Return what speaks against one kind after another where they meet.

    >>> order_cost("heading", "verse", "column") < order_cost("verse", "verse", "column")
    True
    """
    known = _order()
    for left in _general(before):
        for right in _general(after):
            if (left, right, where) in known:
                return known[left, right, where]
    return _UNLISTED


def _general(kind: str) -> tuple[str, ...]:
    plain = kind.partition(":")[0]
    return (kind, plain) if plain != kind else (kind,)


@tables.cached()
def _order() -> dict[tuple[str, str, str], float]:
    found: dict[tuple[str, str, str], float] = {}
    for row in tables.rows("passage_order"):
        befores, afters = tables.listed(row["before"]), tables.listed(row["after"])
        for left, right, here in product(befores, afters, _WHERE[row["where"]]):
            found.setdefault((left, right, here), float(row["cost"]))
    return found


@tables.cached()
def closing_words() -> dict[str, Role]:
    """Return the words that close a signing, and what each says its person did."""
    found: dict[str, Role] = {}
    for row in tables.rows("passage_roles"):
        found.setdefault(row["written"], row["role"])  # type: ignore[arg-type]
    return found


@tables.cached()
def ranks() -> tuple[str, ...]:
    """Return the ranks that end the names of poets, the longest first."""
    written = (row["written"] for row in tables.rows("poets_ranks"))
    return tuple(sorted(written, key=len, reverse=True))
