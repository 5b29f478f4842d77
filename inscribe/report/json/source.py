"""Source texts and hits as the JSON contract has them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.errors import InscribeError
    from inscribe.sources import Hit, SourceText


def text_as_json(text: SourceText) -> dict[str, Any]:
    """Return a source text as ``inscribe source add`` reads it."""
    known = {"id": text.id, "text": text.text, "title": text.title}
    known |= {"provenance": text.provenance, "licence": text.licence, **dict(text.extra)}
    return {key: value for key, value in known.items() if value}


def hits_as_json(query: str, hits: Sequence[Hit]) -> dict[str, Any]:
    """Return the answer to one query: the hits, and whether any is probable enough to be it."""
    from inscribe.sources import NO_SOURCE

    found = any(hit.score >= NO_SOURCE for hit in hits)
    return {"query": query, "found": found, "hits": [_hit_as_json(hit) for hit in hits]}


def error_as_json(line: int, error: InscribeError) -> dict[str, Any]:
    """Return what stands in place of the answer to a line that cannot be used."""
    return {"line": line, "error": error.within_line()}


def _hit_as_json(hit: Hit) -> dict[str, Any]:
    return {
        "rank": hit.rank,
        "id": hit.text.id,
        "title": hit.text.title,
        "score": round(hit.score, 4),
        "text": hit.text.text,
        "why": hit.why,
        "lines": [hit.first_line + 1, hit.last_line + 1],
    }
