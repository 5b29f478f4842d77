"""What a collection answers: every place of a word with its counts, and what its records share."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe import notebook
from inscribe.cautions import caution
from inscribe.concordance.clustering import Cluster, clusters
from inscribe.concordance.documents import Document, of_rows, rows_of
from inscribe.concordance.finding import ConcordanceQuery, query_of, search
from inscribe.concordance.folder import Collection, OpenFolder, Progress, open_folder
from inscribe.concordance.occurrences import Occurrence
from inscribe.concordance.tally import Order, counts, ordered
from inscribe.files import StrPath
from inscribe.keeping import made_together

if TYPE_CHECKING:
    from inscribe.keys import ClustersKeys, ConcordanceKeys, CountsKeys

CLUSTERS = "clusters"  # under which those of a folder are kept


@dataclass(frozen=True, slots=True)
class Concordance:
    """Every place of a word in a collection, in order, and how many there are by what.

    >>> from inscribe import collection, concord
    >>> concord(collection("examples", keep=False), "夢")
    <Concordance of '夢': 1 place>
    """

    query: str
    collection: Collection
    hits: tuple[Occurrence, ...]
    counts: CountsKeys

    def __repr__(self) -> str:
        return f"<Concordance of {self.query!r}: {notebook.counted(len(self.hits), 'place')}>"

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
    """What the records of a collection share, the largest cluster first.

    >>> from inscribe import clustered, collection
    >>> clustered(collection("examples", keep=False))
    <Clusters: 2 in 15 records>
    """

    collection: Collection
    clusters: tuple[Cluster, ...]

    def __repr__(self) -> str:
        records = notebook.counted(self.collection.records, "record")
        return f"<Clusters: {len(self.clusters)} in {records}>"

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

    >>> from inscribe import collection
    >>> places = concord(collection("examples", keep=False), "夢")
    >>> [(place.document.object, place.first) for place in places.hits]
    [('DEMO-001', 15)]
    """
    query = query_of(query) if isinstance(query, str) else query
    hits = ordered(search(held.documents, query), order)
    return Concordance(query.asked, held, tuple(hits), counts(hits))


def clustered(held: Collection) -> Clusters:
    """Return what the records of a collection share.

    >>> from inscribe import collection
    >>> found = clustered(collection("examples", keep=False))
    >>> found.clusters[0].kind, found.clusters[0].title, len(found.clusters[0].members)
    ('signature', '嶺暁', 2)
    """
    return Clusters(held, tuple(clusters(held.documents)))


def clusters_of_folder(
    folder: StrPath,
    progress: Progress = lambda done, count: None,
    *,
    library: Path | None = None,
    cache: Path | None = None,
    keep: bool = True,
) -> Clusters:
    """Return what the records of a folder share, kept until one of them changes.

    Its collection has those inscriptions only that share something. The arguments, and what is
    raised, are those of :func:`inscribe.concordance.collection`.

    >>> clusters_of_folder("examples", keep=False)
    <Clusters: 2 in 15 records>
    """
    with open_folder(folder, progress, library=library, cache=cache, keep=keep) as held:
        kept = made_together(CLUSTERS, held.store, held.mark, lambda: _as_data(held))
    documents = of_rows(kept["documents"])
    found = (
        Cluster(kind, title, tuple(documents[at] for at in members))
        for kind, title, members in kept["clusters"]
    )
    shared = Collection(tuple(documents), kept["records"], tuple(kept["unread"]))
    return Clusters(shared, tuple(found))


def _as_data(held: OpenFolder) -> dict[str, Any]:
    """Return the clusters as plain data, each inscription told once, pointed to by its number."""
    documents: dict[tuple[str, int], tuple[int, Document]] = {}
    found = []
    for each in clusters(held.documents()):
        members = [
            documents.setdefault((one.file, one.inscription), (len(documents), one))[0]
            for one in each.members
        ]
        found.append([each.kind, each.title, members])
    return {
        "documents": rows_of([one for _, one in documents.values()]),
        "clusters": found,
        "records": held.records,
        "unread": held.unread,
    }
