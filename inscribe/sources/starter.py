"""Texts that plates copy most often, to begin a library with.

They are package data (``often_copied/``), all from before 1600, typed from memory and not collated
with an edition: enough to find a copy by, and to be replaced by an edition's words before a
collation is printed. Only ``inscribe source add --starter`` opens them; reading knows none of them
by heart.

>>> texts = {text.id: text for text in starter_texts()}
>>> texts["starter:hyakunin-9"].title
'小野小町 小倉百人一首 9'
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from inscribe.files import read_text
from inscribe.sources.importers import texts_of
from inscribe.sources.texts import SourceText

_FOLDER = Path(__file__).parent / "often_copied"
_PREFIX = "starter:"
_PROVENANCE = "typed from memory for inscribe, not collated with an edition"
_LICENCE = "CC0-1.0"
_NUMBERED = {"hyakunin": "小倉百人一首", "thirty_six": "三十六歌仙"}  # files of one work


def starter_texts() -> Iterator[SourceText]:
    """Yield the texts, each with its work and number as title, and its kana beside it."""
    for path in sorted(_FOLDER.glob("*.tsv")):
        for text in texts_of(read_text(path), path.name, path.stem, kind="tsv"):
            yield _named(text, path.stem)


def _named(text: SourceText, stem: str) -> SourceText:
    said = {key: value for key, value in text.extra if value}
    work = said.get("work") or f"{_NUMBERED[stem]} {said['number']}"
    title = f"{said.get('author', '')} {work}".strip()
    identity = f"{_PREFIX}{text.id.replace(':', '-')}"
    return replace(text, id=identity, title=title, provenance=_PROVENANCE, licence=_LICENCE)
