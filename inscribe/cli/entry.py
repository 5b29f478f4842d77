"""``inscribe entry``: the catalogue entry, in the chosen format."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Set
from itertools import compress
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from inscribe.cli.common import (
    COUNTING,
    example,
    format_option,
    library_option,
    library_path,
    output_options,
    progress_shown,
    status_of,
    write_pieces,
    write_result,
)
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.entry import Entry, Made
    from inscribe.report import Style

# What a file of each format is called when entries go to a folder.
ENDINGS = {
    "md": "md",
    "html": "html",
    "json": "json",
    "csv": "csv",
    "tei": "xml",
    "lido": "xml",
    "docx": "docx",
    "annotation": "json",
    "svg": "svg",
}


# Formats whose documents are put together of those of single entries (inscribe.report.joined).
JOINED = ("md", "html", "json", "csv", "lido")

STYLES = """\b
A house style is a TOML file of these keys; each may be left out:
  labels = "en"         labels in English, or "ja": in Japanese
  italics = true        romanised words in italics
  brackets = "「」"     around quoted inscriptions; "" for none
  dates = "western"     1853 (Kaei 6), or "era": Kaei 6 (1853)
  law_note = false      true: a last line on the law of export
  institution = ""      whose records these are, for lido and tei
  rights = ""           under what terms they may be used
  language = "en"       the language of translations and remarks
  order = [...]         the parts shown, in this order:
    object, place, carved, current, passages, kana, romaji, gloss, alternatives,
    translation, date, signature, persons, source, differences,
    fidelity, space, readers, doubts, changes, remarks, cautions

Labels are kept in the table labels.tsv, cautions in cautions.tsv; a table of that name in a
folder given with --glossary goes before them. Explanations stay in English.

"""


@click.command(
    epilog=STYLES
    + COUNTING
    + example(
        "inscribe entry examples/DEMO-001.toml",
        "inscribe entry examples --format csv -o entries.csv",
        "inscribe entry examples --format html -o pages/",
        "inscribe entry examples/DEMO-005.toml --style examples/styles/house.toml",
    )
)
@click.argument("path", metavar="RECORD|FOLDER")
@format_option(
    *ENDINGS, help="What to write; annotation is W3C Web Annotation, svg the plate drawn to scale."
)
@click.option("--style", "style_file", metavar="FILE", help="A house style (TOML), see below.")
@click.option(
    "--labels",
    type=click.Choice(["en", "ja"]),
    help="Labels in English or Japanese (default: as the style says, else en).",
)
@library_option("The library in which sources named by id are looked up")
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
) -> int:
    """Write the catalogue entry of a record, or of every record of a folder.

    A folder gives one document with all its entries; with -o and an existing folder (or a name
    that ends in /), each entry goes to a file of its own there, named after its record; the same
    command takes up a stopped run. docx goes to a file or a folder, svg of several inscriptions to
    a folder. Records of a folder that cannot be used are left out and named, with exit status 1.
    """
    style = _style(style_file, labels)
    to_folder = output is not None and (output.endswith("/") or Path(output).is_dir())
    if Path(path).is_dir() and form in JOINED and not to_folder:
        return _streamed(Path(path), form, style, library_file, output, force=force, quiet=quiet)
    entries, broken = _entries(Path(path), library_file, quiet=quiet)
    if output is not None and to_folder:
        below = Path(path) if Path(path).is_dir() else Path(path).parent
        _write_each(entries, below, form, style, Path(output), force=force)
        return status_of(list(map(str, broken)))
    made = list(_documents([entry for _, entry in entries], form, style))
    if len(made) > 1:
        raise InputError(
            f"there are {len(made)} drawings", hint="name a folder for them with -o FOLDER/"
        )
    _write(made[0], form, output, force=force)
    return status_of(list(map(str, broken)))


def _streamed(
    folder: Path,
    form: str,
    style: Style,
    library_file: str | None,
    output: str | None,
    *,
    force: bool,
    quiet: bool,
) -> int:
    """Write the entries of a folder as one document, as they are made."""
    from inscribe.cli.entry_stream import EntryStream

    with progress_shown("entries", quiet=quiet) as progress:
        stream = EntryStream(folder, form, style, library_path(library_file), progress)
        write_pieces(stream.joined(), output, force=force)
    return status_of(stream.broken)


def _style(file: str | None, labels: Literal["en", "ja"] | None) -> Style:
    from dataclasses import replace

    from inscribe import report

    style = report.load(Path(file)) if file else report.Style()
    return replace(style, labels=labels) if labels else style


def _entries(path: Path, library_file: str | None, *, quiet: bool) -> Made:
    from inscribe.entry import usable_entries

    with progress_shown("entries", quiet=quiet) as progress:
        return usable_entries(path, library_path(library_file), progress)


def _write_each(
    entries: list[tuple[Path, Entry]],
    below: Path,
    form: str,
    style: Style,
    folder: Path,
    *,
    force: bool,
) -> None:
    """Write each entry to a file in ``folder``, at the place its record has ``below`` its own.

    Nothing is written where a file would be lost; what an earlier run has written is left alone.
    """
    from inscribe.cli import entry_files

    records = [
        (path.relative_to(below), len(entry.inscriptions) if form == "svg" else 1)
        for path, entry in entries
    ]
    targets = [
        [folder / name for name in names] for names in entry_files.named(records, ENDINGS[form])
    ]
    written: set[Path] = set()
    if not force:
        there = [any(file.exists() for file in names) for names in targets]
        made = _files(list(compress(entries, there)), list(compress(targets, there)), form, style)
        found = [(file, entry_files.is_written(file, data)) for file, data in made if file.exists()]
        entry_files.refuse_others([file for file, is_same in found if not is_same])
        written = {file for file, _ in found}
    for file, data in _files(entries, targets, form, style, written):
        entry_files.write(file, data, force=force)


def _files(
    entries: list[tuple[Path, Entry]],
    targets: list[list[Path]],
    form: str,
    style: Style,
    written: Set[Path] = frozenset(),
) -> Iterator[tuple[Path, bytes]]:
    """Yield each file with what belongs into it, but for those that are ``written`` already."""
    for (_, entry), names in zip(entries, targets, strict=True):
        if not written >= set(names):
            for file, made in zip(names, _documents([entry], form, style), strict=True):
                if file not in written:
                    yield file, _as_bytes(made)


def _as_bytes(made: str | bytes) -> bytes:
    if isinstance(made, bytes):
        return made
    return (made if made.endswith("\n") else f"{made}\n").encode("utf-8", "backslashreplace")


def _documents(entries: list[Entry], form: str, style: Style) -> Iterator[str | bytes]:
    """Yield the entries as one document; as svg, a drawing for each inscription."""
    if form == "svg":
        from inscribe.report.drawing import plate_drawing

        for entry in entries:
            for each in entry.inscriptions:
                yield plate_drawing(each.inscription, each.collation)
    elif form == "docx":
        from inscribe.report.entries import entries_as_docx

        yield entries_as_docx(entries, style)
    else:
        yield formats()[form](entries, style)


def formats() -> dict[str, Callable[[list[Entry], Style], str]]:
    """Return what writes entries as one document, by the name of the format."""
    from inscribe.report.entries import (
        entries_as_annotations,
        entries_as_csv,
        entries_as_html,
        entries_as_json,
        entry_as_markdown,
    )
    from inscribe.report.lido import entries_as_lido
    from inscribe.report.tei import entries_as_tei

    return {
        "md": lambda entries, style: "\n".join(entry_as_markdown(e, style) for e in entries),
        "html": entries_as_html,
        "json": lambda entries, style: entries_as_json(entries),
        "csv": entries_as_csv,
        "tei": entries_as_tei,
        "lido": entries_as_lido,
        "annotation": lambda entries, style: entries_as_annotations(entries),
    }


def _write(made: str | bytes, form: str, output: str | None, *, force: bool) -> None:
    if isinstance(made, str):
        write_result(made, output, force=force)
        return
    if output is None:
        raise InputError(f"a {form} entry goes to a file", hint="name it with -o FILE")
    from inscribe import files

    files.write_bytes(Path(output), made, force=force)
