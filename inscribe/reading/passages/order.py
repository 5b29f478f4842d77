"""Which kind of passage follows which, and what a person named did: two small tables."""

from __future__ import annotations

from typing import Literal, get_args

from inscribe import tables
from inscribe.errors import TableError
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


@tables.compiled
def _order() -> dict[tuple[str, str, str], float]:
    found: dict[tuple[str, str, str], float] = {}
    columns = ("before", "after", "where", "cost")
    for (before, after, where, cost), place in tables.rows("passage_order", columns):
        if where not in _WHERE:
            raise TableError(f"“{where}” is no place", place, f"use {', '.join(_WHERE)}")
        try:
            value = float(cost)
        except ValueError:
            raise TableError("the cost is not a number", place, "give a number") from None
        for left in before.split():
            for right in after.split():
                for here in _WHERE[where]:
                    found.setdefault((left, right, here), value)
    return found


@tables.compiled
def closing_words() -> dict[str, Role]:
    """Return the words that close a signing, and what each says its person did."""
    found: dict[str, Role] = {}
    columns = ("written", "role", "kana", "alternatives", "gloss")
    for (written, role, *_), place in tables.rows("passage_roles", columns):
        if role not in get_args(Role):
            raise TableError(f"“{role}” is no role", place, f"use {', '.join(get_args(Role))}")
        found.setdefault(written, role)  # type: ignore[arg-type]
    return found


@tables.compiled
def ranks() -> tuple[str, ...]:
    """Return the ranks that end the names of poets, the longest first."""
    rows = tables.rows("poets_ranks", ("written", "kana", "gloss"))
    return tuple(sorted((cells[0] for cells, _ in rows), key=len, reverse=True))
