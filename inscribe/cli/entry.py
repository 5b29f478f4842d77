"""``inscribe entry``: the catalogue entry, in the chosen format."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from inscribe.cli.common import example, output_options, write_result
from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report.style import Style

FORMATS = ("md", "html", "json", "csv", "tei", "lido", "docx", "annotation")


@click.command(
    epilog=example(
        "inscribe entry examples/DEMO-001.toml",
        "inscribe entry examples --format csv -o entries.csv",
        "inscribe entry examples/DEMO-005.toml --format html --style house.toml -o 005.html",
    )
)
@click.argument("path", metavar="RECORD|FOLDER")
@click.option("--format", "form", type=click.Choice(FORMATS), default="md", show_default=True)
@click.option("--style", "style_file", metavar="FILE", help="A house style (TOML).")
@click.option("--labels", type=click.Choice(["en", "ja"]), help="Labels in English or Japanese.")
@click.option("--library", "library_file", metavar="PATH", envvar="INSCRIBE_LIBRARY")
@output_options
def command(
    path: str,
    form: str,
    style_file: str | None,
    labels: Literal["en", "ja"] | None,
    library_file: str | None,
    output: str | None,
    force: bool,
    quiet: bool,
) -> None:
    """Write the catalogue entry of a record, or of every record of a folder."""
    from inscribe.report import style as styles

    style = styles.load(Path(style_file)) if style_file else styles.Style()
    if labels:
        from dataclasses import replace

        style = replace(style, labels=labels)
    entries = _entries(Path(path), library_file)
    if form == "docx":
        _write_docx(entries, style, output, force=force)
        return
    write_result(_formats()[form](entries, style), output, force=force)


def _entries(path: Path, library_file: str | None) -> list[Entry]:
    from inscribe.cli.source import library_path
    from inscribe.entry import entry_of
    from inscribe.record import load
    from inscribe.sources.library import Library

    files = sorted(path.rglob("*.toml")) if path.is_dir() else [path]
    if not files:
        raise InputError("there is no record in the folder", Place(str(path)))
    wanted = library_path(library_file)
    with Library(wanted) if wanted.is_file() else nullcontext() as library:
        return [entry_of(load(file), library) for file in files]


def _formats() -> dict[str, Callable[[list[Entry], Style], str]]:
    from inscribe.report.annotation.entry import entries_as_annotations
    from inscribe.report.as_json.entry import entries_as_json
    from inscribe.report.html.entry import entries_as_html
    from inscribe.report.lido.entry import entries_as_lido
    from inscribe.report.markdown.entry import entry_as_markdown
    from inscribe.report.table.entry import entries_as_csv
    from inscribe.report.tei.entry import entries_as_tei

    def markdown(entries: list[Entry], style: Style) -> str:
        return "\n".join(entry_as_markdown(entry, style) for entry in entries)

    return {
        "md": markdown,
        "html": entries_as_html,
        "json": lambda entries, style: entries_as_json(entries),
        "csv": entries_as_csv,
        "tei": lambda entries, style: entries_as_tei(entries),
        "lido": lambda entries, style: entries_as_lido(entries),
        "annotation": lambda entries, style: entries_as_annotations(entries),
    }


def _write_docx(entries: list[Entry], style: Style, output: str | None, *, force: bool) -> None:
    from inscribe import files
    from inscribe.report.docx.entry import entries_as_docx

    if output is None:
        raise InputError("a docx entry goes to a file", hint="name it with -o FILE")
    files.write_bytes(Path(output), entries_as_docx(entries, style), force=force)
