"""Source texts and hits as the JSON contract has them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inscribe.sources.texts import SourceText


def text_as_json(text: SourceText) -> dict[str, Any]:
    """Return a source text as ``inscribe source add`` reads it."""
    known = {"id": text.id, "text": text.text, "title": text.title}
    known |= {"provenance": text.provenance, "licence": text.licence, **dict(text.extra)}
    return {key: value for key, value in known.items() if value}
