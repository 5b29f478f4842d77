"""How often a word occurs: by object, by date, by carver as read; and hits in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import Literal

from inscribe.concordance.finding import Occurrence

Order = Literal["after", "before", "match", "object", "date"]
ORDERS: tuple[Order, ...] = ("after", "before", "match", "object", "date")
COUNTED = ("object", "date", "carver")
NO_DATE, NO_CARVER = "no date", "no name read"

Key = tuple[object, ...]
_KEYS: dict[Order, Callable[[Occurrence], Key]] = {
    "after": lambda hit: (hit.after, hit.before[::-1]),
    "before": lambda hit: (hit.before[::-1], hit.after),
    "match": lambda hit: (hit.match, hit.after),
    "object": lambda hit: (),
    "date": lambda hit: (hit.document.year is None, hit.document.year or 0),
}


def ordered(hits: Iterable[Occurrence], order: Order) -> list[Occurrence]:
    """Return hits by what follows, what precedes (read backwards), object or date."""
    key = _KEYS[order]

    def place(hit: Occurrence) -> Key:
        return hit.document.object, hit.document.inscription, hit.first

    return sorted(hits, key=lambda hit: (*key(hit), *place(hit)))


def counts(hits: Sequence[Occurrence]) -> dict[str, dict[str, int]]:
    """Return the number of hits by object, by year and by the carver's name as read."""
    made: dict[str, Counter[str]] = {name: Counter() for name in COUNTED}
    for hit in hits:
        document = hit.document
        made["object"][document.object] += 1
        made["date"][NO_DATE if document.year is None else str(document.year)] += 1
        for name in document.names or (NO_CARVER,):
            made["carver"][name] += 1
    return {
        name: dict(sorted(found.items(), key=lambda item: (-item[1], item[0])))
        for name, found in made.items()
    }
