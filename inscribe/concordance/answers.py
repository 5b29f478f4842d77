"""What a collection answers: every place of a word with its counts, and what its records share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe.cautions import caution
from inscribe.concordance.clustering import Cluster, clusters
from inscribe.concordance.finding import ConcordanceQuery, Occurrence, query_of, search
from inscribe.concordance.folder import Collection
from inscribe.concordance.tally import Order, counts, ordered

if TYPE_CHECKING:
    from inscribe.keys import ClustersKeys, ConcordanceKeys, CountsKeys


@dataclass(frozen=True, slots=True)
class Concordance:
    """Every place of a word in a collection, in order, and how many there are by what."""

    query: str
    collection: Collection
    hits: tuple[Occurrence, ...]
    counts: CountsKeys

    @property
    def cautions(self) -> tuple[str, ...]:
        """What must be said with it, in English: names that were read are no attributions."""
        named = any(hit.document.names_a_person for hit in self.hits)
        return (caution("attribution"),) if named else ()

    def to_dict(self) -> ConcordanceKeys:
        """Return it as ``inscribe concord --format json`` prints it; signs count from 0."""
        return {
            "query": self.query,
            "records": self.collection.records,
            "unread": list(self.collection.unread),
            "hits": [hit.to_dict() for hit in self.hits],
            "counts": self.counts,
            "cautions": list(self.cautions),
        }


@dataclass(frozen=True, slots=True)
class Clusters:
    """What the records of a collection share, the largest cluster first."""

    collection: Collection
    clusters: tuple[Cluster, ...]

    @property
    def cautions(self) -> tuple[str, ...]:
        """What must be said with it, in English: names that were read are no attributions."""
        named = any(member.names_a_person for each in self.clusters for member in each.members)
        return (caution("attribution"),) if named else ()

    def to_dict(self) -> ClustersKeys:
        """Return it as ``inscribe concord --clusters --format json`` prints it."""
        return {
            "records": self.collection.records,
            "unread": list(self.collection.unread),
            "clusters": [each.to_dict() for each in self.clusters],
            "cautions": list(self.cautions),
        }


def concord(held: Collection, query: ConcordanceQuery | str, order: Order = "after") -> Concordance:
    """Return every place of a word, or of what is asked for, in a collection.

    ``order`` is what the hits are ordered by: what follows ("after"), what precedes ("before"),
    the word as carved ("match"), "object" or "date".

    Raises:
        InputError: there is no word to look for.
    """
    query = query_of(query) if isinstance(query, str) else query
    hits = ordered(search(held.documents, query), order)
    return Concordance(query.asked, held, tuple(hits), counts(hits))


def clustered(held: Collection) -> Clusters:
    """Return what the records of a collection share."""
    return Clusters(held, tuple(clusters(held.documents)))
