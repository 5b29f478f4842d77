"""One place where a word was found, in its context."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.concordance.documents import Document
from inscribe.terms import How as How

if TYPE_CHECKING:
    from inscribe.keys import OccurrenceKeys


@dataclass(frozen=True, slots=True)
class Occurrence:
    """One place: signs ``first`` to ``last`` of a document (from 0), in context as carved.

    >>> from inscribe import collection, concord
    >>> place = concord(collection("examples", keep=False), "夢").hits[0]
    >>> place.document.object, place.first, place.how
    ('DEMO-001', 15, 'same signs')
    """

    document: Document
    first: int
    last: int
    before: str
    match: str
    after: str
    how: How

    def __repr__(self) -> str:
        where = f"{self.document.object}, signs {self.first}-{self.last}"
        return f"<Occurrence in {where}: {notebook.short(self.match)}, {self.how}>"

    def to_dict(self) -> OccurrenceKeys:
        """Return it as printed in JSON; signs count from 0."""
        return {
            **self.document.to_dict(),
            "signs": [self.first, self.last],
            "before": self.before,
            "match": self.match,
            "after": self.after,
            "how": self.how,
        }


def occurrence(document: Document, first: int, last: int, how: How) -> Occurrence:
    """Return the place of signs ``first`` to ``last`` of a document, found by ``how``."""
    signs = document.signs
    return Occurrence(
        document,
        first,
        last,
        "".join(signs[:first]),
        "".join(signs[first : last + 1]),
        "".join(signs[last + 1 :]),
        how,
    )
