"""The library and its hits on a terminal."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inscribe.sources.texts import SourceText


def listing(texts: Iterable[SourceText]) -> str:
    """Return one line a text: id, title, first line."""
    return "\n".join("\t".join((text.id, text.title, text.lines[0])) for text in texts)
