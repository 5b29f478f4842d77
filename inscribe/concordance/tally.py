"""How often a word occurs: by object, by date, by carver as read; and hits in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, Literal

from inscribe.concordance.occurrences import Occurrence

if TYPE_CHECKING:
    from inscribe.keys import CountsKeys

Order = Literal["after", "before", "match", "object", "date"]
ORDERS: tuple[Order, ...] = ("after", "before", "match", "object", "date")
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


def counts(hits: Sequence[Occurrence]) -> CountsKeys:
    """Return the number of hits by object, by year and by the carver's name as read."""
    documents = [hit.document for hit in hits]
    years = (NO_DATE if each.year is None else str(each.year) for each in documents)
    names = (name for each in documents for name in each.names or (NO_CARVER,))
    return {
        "object": _counted(each.object for each in documents),
        "date": _counted(years),
        "carver": _counted(names),
    }


def _counted(values: Iterable[str]) -> dict[str, int]:
    """Return how often each value occurs, the commonest first."""
    found = Counter(values)
    return dict(sorted(found.items(), key=lambda item: (-item[1], item[0])))
