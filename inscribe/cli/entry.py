"""``inscribe entry``: the catalogue entry, in the chosen format."""

from __future__ import annotations

from collections.abc import Iterator, Set
from itertools import chain, compress
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from inscribe.cli.entries import ENDINGS, documents, format_of, write_site
from inscribe.cli.giving import COUNTING, example, library_option, library_path, output_options
from inscribe.cli.showing import progress_shown, status_of, write_pieces, write_result
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.entry import Entry, Made
    from inscribe.report import Style

# Formats whose documents are put together of those of single entries (inscribe.report.joined).
JOINED = ("md", "html", "json", "csv", "lido")
# Formats that do so too where each entry is to be a file of its own.
ALONE = ("tei", "annotation", "linked", "handout", "slides")

# Begins a CSV file: without it a spreadsheet takes the signs for those of another encoding.
SPREADSHEET = "\ufeff"

STYLES = """\b
A house style is a TOML file of these keys; each may be left out:
  labels = "en"         labels in English, or "ja": in Japanese
  italics = true        romanised words in italics
  brackets = "「」"     around quoted inscriptions; "" for none
  dates = "western"     1853 (Kaei 6), or "era": Kaei 6 (1853)
  days = "iso"          1853-02-08, "words": 8 February 1853, or "none"
  doubts = "list"       or "count": their number, the list folded
  explanations = ""     "en" or "ja"; as the labels where it is not given
  font = ""             of pages and documents
  paper = "A4"          or "A5", "letter"
  law_note = false      true: a last line on the law of export
  institution = ""      whose records these are, for lido and tei
  address = "https://..." where they will be published, for iiif and linked
  rights = ""           under what terms they may be used
  language = "en"       the language of translations and remarks
  order = [...]         the parts shown, in this order:
    object, images, place, carved, compared (the source beside it),
    source_image, drawing, romaji, translation, words (word by word), kana,
    current, passages, alternatives, date, signature, persons, source,
    differences, apparatus (of several sources), space, fidelity, readers,
    doubts, changes, workings (how dates were reckoned), remarks, cautions

Labels are kept in the table labels.tsv, cautions in cautions.tsv; a table of that name in a
folder given with --glossary goes before them. Explanations in Japanese are those of the table
explanations.tsv; what it has not stays English.

"""


@click.command(
    epilog=STYLES
    + COUNTING
    + example(
        "inscribe entry examples/DEMO-001.toml",
        "inscribe entry examples --format csv -o entries.csv",
        "inscribe entry examples --format html -o site/",
        "inscribe entry examples/DEMO-003.toml --format slides -o talk.html",
        "inscribe entry examples/DEMO-005.toml --style examples/styles/house.toml",
    )
)
@click.argument("path", metavar="RECORD|FOLDER")
@click.option(
    "--format",
    "asked",
    type=click.Choice(list(ENDINGS)),
    metavar="FORMAT",
    help=f"What to write: {', '.join(ENDINGS)} (default: as the file of -o ends, else md). volume "
    "is for print, pdf the same through a browser; iiif a manifest, linked JSON-LD, annotation W3C "
    "Web Annotation, svg the plate drawn to scale.",
)
@click.option("--style", "style_file", metavar="FILE", help="A house style (TOML), see below.")
@click.option(
    "--labels",
    type=click.Choice(["en", "ja"]),
    help="Labels in English or Japanese (default: as the style says, else en).",
)
@click.option(
    "--byte-order-mark/--no-byte-order-mark",
    "mark",
    default=None,
    help="Begin csv with a byte-order mark, which spreadsheets want and some programs do not "
    "(default: in the file of -o, not on standard output).",
)
@library_option("The library in which sources named by id are looked up")
@output_options
def command(
    path: str,
    asked: str | None,
    style_file: str | None,
    labels: Literal["en", "ja"] | None,
    mark: bool | None,
    library_file: str | None,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Write the catalogue entry of a record, or of every record of a folder.

    A folder gives one document with all its entries; with -o and an existing folder (or a name
    that ends in /), each entry goes to a file of its own there, named after its record, as html
    with an index and a volume for print; the same command takes up a stopped run. docx and pdf go
    to a file or a folder, svg of several inscriptions and iiif of several objects to a folder.
    Records of a folder that cannot be used are left out and named, with exit status 1.
    """
    from inscribe.cli.entries import EntryStream

    form = format_of(asked, output)
    if mark is not None and form != "csv":
        raise InputError("a byte-order mark is for csv", hint="add --format csv, or leave it away")
    first = SPREADSHEET if form == "csv" and (output is not None if mark is None else mark) else ""
    style = _style(style_file, labels)
    to_folder = output is not None and (output.endswith("/") or Path(output).is_dir())
    is_site = form == "html" and to_folder
    streams = form in JOINED or (to_folder and form in ALONE)
    if Path(path).is_dir() and streams and not is_site:
        with progress_shown("entries", quiet=quiet) as progress:
            stream = EntryStream(Path(path), form, style, library_path(library_file), progress)
            if output is not None and to_folder:
                stream.write_each(Path(output), ENDINGS[form], first, force=force)
            else:
                write_pieces(chain((first,) if first else (), stream.joined()), output, force=force)
        return status_of(stream.broken)
    entries, broken = _entries(Path(path), library_file, quiet=quiet)
    if output is not None and to_folder:
        below = Path(path) if Path(path).is_dir() else Path(path).parent
        if form == "html" and Path(path).is_dir():
            library = library_path(library_file)
            write_site(entries, below, style, Path(output), library=library, force=force)
        else:
            _write_each(entries, below, form, style, Path(output), first, force=force)
        return status_of(list(map(str, broken)))
    made = list(documents([entry for _, entry in entries], form, style))
    if len(made) > 1:
        what = (
            "an svg drawing shows one inscription"
            if form == "svg"
            else "a manifest is of one object"
        )
        raise InputError(
            f"{what}, and there are {len(made)}", hint="name a folder for them with -o FOLDER/"
        )
    _write(made[0], form, first, output, force=force)
    return status_of(list(map(str, broken)))


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
    first: str,
    *,
    force: bool,
) -> None:
    """Write each entry to a file in ``folder``, at the place its record has ``below`` its own.

    Nothing is written where a file would be lost; what an earlier run has written is left alone.
    """
    from inscribe.cli.entries import file_names, is_written, refuse_others, write_file

    records = [
        (path.relative_to(below), len(entry.inscriptions) if form == "svg" else 1)
        for path, entry in entries
    ]
    targets = [[folder / name for name in names] for names in file_names(records, ENDINGS[form])]
    written: set[Path] = set()
    if not force:
        there = [any(file.exists() for file in names) for names in targets]
        known = list(compress(entries, there)), list(compress(targets, there))
        made = _files(*known, form, style, first)
        found = [(file, is_written(file, data)) for file, data in made if file.exists()]
        refuse_others([file for file, is_same in found if not is_same])
        written = {file for file, _ in found}
    for file, data in _files(entries, targets, form, style, first, written):
        write_file(file, data, force=force)


def _files(
    entries: list[tuple[Path, Entry]],
    targets: list[list[Path]],
    form: str,
    style: Style,
    first: str,
    written: Set[Path] = frozenset(),
) -> Iterator[tuple[Path, bytes]]:
    """Yield each file with what belongs into it, but for those that are ``written`` already."""
    for (_, entry), names in zip(entries, targets, strict=True):
        if not written >= set(names):
            for file, made in zip(names, documents([entry], form, style), strict=True):
                if file not in written:
                    yield file, _as_bytes(made, first)


def _as_bytes(made: str | bytes, first: str) -> bytes:
    from inscribe.cli.entries import encoded

    return made if isinstance(made, bytes) else encoded(first, made)


def _write(made: str | bytes, form: str, first: str, output: str | None, *, force: bool) -> None:
    if isinstance(made, str):
        write_result(f"{first}{made}", output, force=force)
        return
    if output is None:
        raise InputError(f"a {form} entry goes to a file", hint="name it with -o FILE")
    from inscribe import writing

    writing.write_bytes(Path(output), made, force=force)
