"""A concordance and its clusters as plain data."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from inscribe.report import caution

if TYPE_CHECKING:
    from inscribe.concordance import Cluster, Collection, Document, Occurrence


def concordance_as_json(
    query: str, held: Collection, hits: Sequence[Occurrence], counted: dict[str, dict[str, int]]
) -> dict[str, Any]:
    """Return the hits in order and their counts; signs count from 0."""
    return {
        "query": query,
        "records": held.records,
        "unread": list(held.unread),
        "hits": [hit_row(hit) for hit in hits],
        "counts": counted,
    }


def clusters_as_json(held: Collection, found: Sequence[Cluster]) -> dict[str, Any]:
    """Return the clusters, the largest first."""
    named = any(each.kind == "signature" for each in found)
    return {
        "records": held.records,
        "unread": list(held.unread),
        "clusters": [
            {
                "kind": each.kind,
                "title": each.title,
                "members": [_document(member) for member in each.members],
            }
            for each in found
        ],
        "cautions": [caution("attribution")] if named else [],
    }


def hit_row(hit: Occurrence) -> dict[str, Any]:
    """Return one hit in its context as carved."""
    return {
        **_document(hit.document),
        "signs": [hit.first, hit.last],
        "before": hit.before,
        "match": hit.match,
        "after": hit.after,
        "how": hit.how,
    }


def _document(document: Document) -> dict[str, Any]:
    return {
        "object": document.object,
        "kind": document.kind,
        "file": document.file,
        "inscription": document.inscription,
        "place": document.place,
        "year": document.year,
        "carver": document.carver,
        "carver_romaji": document.carver_romaji,
        "persons": [
            {"text": text, "name": name, "why": why} for text, name, why in document.persons
        ],
        "others": [{"name": name, "romaji": romaji} for name, romaji in document.others],
        "text": document.carved,
    }
