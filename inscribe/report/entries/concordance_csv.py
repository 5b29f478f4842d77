"""A concordance, its counts and its clusters as CSV, safe to open in a spreadsheet."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from inscribe.report.entries.table import csv_table

if TYPE_CHECKING:
    from inscribe.concordance import Clusters, Document, Occurrence
    from inscribe.keys import CountsKeys

HITS = ["object", "kind", "file", "inscription", "place", "first_sign", "before", "match", "after",
        "how", "year", "carver", "carver_romaji", "may_name"]  # fmt: skip
CLUSTERS = ["cluster", "cluster_kind", "title", "object", "kind", "file", "inscription", "place",
            "year", "carver", "carver_romaji", "may_name", "text"]  # fmt: skip


def hits_as_csv(hits: Sequence[Occurrence]) -> str:
    """Return one row a hit; the first sign is counted from 1, as on the metal."""
    rows = [
        {**hit.to_dict(), **_with_persons(hit.document), "first_sign": hit.first + 1}
        for hit in hits
    ]
    return _table(rows, HITS)


def counts_as_csv(counts: CountsKeys) -> str:
    """Return one row a count."""
    rows = [
        {"by": by, "value": value, "hits": count}
        for by, counted in (
            ("object", counts["object"]),
            ("date", counts["date"]),
            ("carver", counts["carver"]),
        )
        for value, count in counted.items()
    ]
    return _table(rows, ["by", "value", "hits"])


def clusters_as_csv(found: Clusters) -> str:
    """Return one row a member of a cluster."""
    rows = [
        {
            "cluster": number,
            "cluster_kind": each.kind,
            "title": each.title,
            **member.to_dict(),
            **_with_persons(member),
        }
        for number, each in enumerate(found.clusters, start=1)
        for member in each.members
    ]
    return _table(rows, CLUSTERS)


def _with_persons(document: Document) -> dict[str, str]:
    return {"may_name": "; ".join(f"{text}: {name}" for text, name, _ in document.persons)}


def _table(rows: Sequence[dict[str, Any]], columns: list[str]) -> str:
    texts = [{key: "" if row[key] is None else str(row[key]) for key in columns} for row in rows]
    return csv_table(texts, columns)
