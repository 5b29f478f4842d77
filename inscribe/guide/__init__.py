"""The guide: how the work is done, chapter by chapter, written once and shown everywhere.

The chapters are Markdown files beside this one, in the order of ``CHAPTERS``; that on records ends
with every key a record may have, taken from the one description of them.

>>> next(iter(CHAPTERS)), chapter("notation").splitlines()[0]
('first-day', '# How a transcription is written')
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.errors import InputError, did_you_mean

if TYPE_CHECKING:
    from inscribe.record import Field, RecordTable

CHAPTERS = {
    "first-day": "from an object in hand to its entry",
    "notation": "how a transcription is written",
    "record": "the file of an object, and every key it may have",
    "differences": "a copy and its source",
    "space": "what the metal forced, and how to measure it",
    "exports": "entries for people, and for other programs",
    "imports": "lists, TEI, manifests and annotations that come in",
    "glossary": "your own tables of names and words",
    "library": "inscribe in Python programs",
    "changes": "what is stable, and what changed",
}


def chapter(name: str) -> str:
    """Return a chapter as Markdown.

    Raises:
        InputError: there is none of that name.
    """
    if name not in CHAPTERS:
        hint = did_you_mean(name, CHAPTERS) or f"the chapters are {', '.join(CHAPTERS)}"
        raise InputError(f"the guide has no chapter {name}", hint=hint)
    text = (Path(__file__).parent / f"{name}.md").read_text(encoding="utf-8")
    return text + "\n" + "\n".join(_keys()) if name == "record" else text


def _keys() -> Iterator[str]:
    """Yield the lines that tell every key of a record, table by table."""
    from inscribe.record import RECORD

    yield "## Every key"
    yield ""
    yield from _table(RECORD, "")


def _table(table: RecordTable, path: str) -> Iterator[str]:
    yield f"**{f'[{path}]' if path else 'at the top'}**: {table.about}"
    yield ""
    for field in table.fields:
        yield f"- `{field.key}`{' (needed)' if field.required else ''}: {_said(field)}"
    yield ""
    for field in table.fields:
        if field.table is not None:
            inner = f"{path}.{field.key}" if path else field.key
            yield from _table(field.table, f"[{inner}]" if field.holds == "tables" else inner)


def _said(field: Field) -> str:
    choices = f"; one of {', '.join(field.choices)}" if field.choices else ""
    several = "; as many as there are" if field.holds == "tables" else ""
    return field.about + choices + several
