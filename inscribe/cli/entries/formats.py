"""The formats of an entry: which there are, how their files end, what makes them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.cli.giving import format_for
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

# What a file of each format is called when entries go to a folder.
ENDINGS = {
    "md": "md",
    "html": "html",
    "handout": "html",
    "slides": "html",
    "volume": "html",
    "pdf": "pdf",
    "docx": "docx",
    "csv": "csv",
    "json": "json",
    "tei": "xml",
    "lido": "xml",
    "iiif": "json",
    "linked": "jsonld",
    "annotation": "json",
    "svg": "svg",
}


def format_of(form: str | None, output: str | None) -> str:
    """Return the format that is asked for, by name or by how the file to write ends.

    >>> format_of(None, "page.html"), format_of(None, None), format_of("slides", "talk.html")
    ('html', 'md', 'slides')

    Raises:
        InputError: the two contradict each other, no format ends so, or the ending leaves a choice.
    """
    if _is_folder(output):
        return form or "md"
    if form is None and output is not None and output.lower().endswith(".xml"):
        raise InputError("an .xml file may be tei or lido", hint="say which with --format")
    return format_for(form, output, ENDINGS, "md")


def _is_folder(output: str | None) -> bool:
    return output is not None and (output.endswith("/") or Path(output).is_dir())


def documents(entries: list[Entry], form: str, style: Style) -> Iterator[str | bytes]:
    """Yield the entries as one document; svg is one an inscription, iiif one an object."""
    if form == "svg":
        from inscribe.report.drawing import plate_drawing

        for entry in entries:
            for each in entry.inscriptions:
                yield plate_drawing(each.inscription, each.collation, style, each.kind)
    elif form == "docx":
        from inscribe.report.entries import entries_as_docx

        yield entries_as_docx(entries, style)
    elif form == "pdf":
        from inscribe.cli.entries.printing import printed
        from inscribe.report.pages import entries_as_html, entries_as_volume

        page = entries_as_html if len(entries) == 1 else entries_as_volume
        yield printed(page(entries, style, alone=True))
    elif form == "iiif":
        from inscribe.report.linked import entry_as_manifest

        for entry in entries:
            yield entry_as_manifest(entry, style)
    else:
        yield formats()[form](entries, style)


@cache
def formats() -> dict[str, Callable[[list[Entry], Style], str]]:
    """Return what writes entries as one document, by the name of the format."""
    from inscribe.report import pages
    from inscribe.report.entries import (
        entries_as_annotations,
        entries_as_csv,
        entries_as_json,
        entry_as_markdown,
    )
    from inscribe.report.lido import entries_as_lido
    from inscribe.report.linked import entries_as_linked
    from inscribe.report.tei import entries_as_tei

    return {
        "md": lambda entries, style: "\n".join(entry_as_markdown(e, style) for e in entries),
        "html": pages.entries_as_html,
        "handout": pages.entries_as_handout,
        "slides": pages.entries_as_slides,
        "volume": pages.entries_as_volume,
        "json": lambda entries, style: entries_as_json(entries),
        "csv": entries_as_csv,
        "tei": entries_as_tei,
        "lido": entries_as_lido,
        "linked": entries_as_linked,
        "annotation": lambda entries, style: entries_as_annotations(entries),
    }
