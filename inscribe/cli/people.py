"""``inscribe people``: your own list of persons, made of another list, and looked into."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from inscribe.cli.giving import example, output_options
from inscribe.cli.showing import write_result
from inscribe.errors import InputError, Place, harmless

if TYPE_CHECKING:
    from inscribe.persons import ImportedPeople

_TEI = (".xml", ".tei")


@click.group(
    epilog=example(
        "inscribe people import list.csv -o my-glossary/people.tsv",
        "inscribe people show 雨庵",
    )
)
def command() -> None:
    """Keep a list of the persons whom inscriptions may name: poets, writers, carvers, patrons.

    The list is the table people.tsv in a folder that you name with inscribe --glossary FOLDER;
    inscribe glossary show people says what its columns hold. Where an inscription bears a name of
    the list, every command says so, with the reason; it is never an attribution.
    """


@command.command(
    "import",
    short_help="make the list of a table or a TEI document",
    epilog=example(
        "inscribe people import list.csv --propose",
        "inscribe people import list.csv --map 工銘=art --map Geb.=birth -o my-glossary/people.tsv",
        "inscribe people import persons.xml -o my-glossary/people.tsv",
    ),
)
@click.argument("path", metavar="LIST.csv|LIST.xml")
@click.option(
    "--map",
    "mapped",
    multiple=True,
    metavar="HEADING=COLUMN|FILE",
    help="Where a column goes; or a file that --propose has written.",
)
@click.option("--propose", is_flag=True, help="Only show where each column would go, as a file.")
@click.option("--encoding", metavar="NAME", default="", help="How the list is encoded, if known.")
@output_options
def import_list(
    path: str,
    mapped: tuple[str, ...],
    propose: bool,
    encoding: str,
    output: str | None,
    force: bool,
    quiet: bool,
) -> int:
    """Make a list of persons (people.tsv) of a table whose first line names its columns, or of TEI.

    Where each column goes is proposed from its heading. Nothing is lost: a cell that cannot stand
    where it goes, and a column that goes nowhere, is kept word for word in the note. Such cells are
    named with their row, with exit status 1.
    """
    from inscribe import persons

    text, encoded = _text_of(Path(path), encoding)
    if path.lower().endswith(_TEI):
        found = persons.people_of_tei(text, path)
    else:
        mapping = _mapping(mapped)
        found = persons.imported_people(text, path, mapping)
        if propose:
            write_result(persons.as_toml(found.mapping), output, force=force)
            return 0
    write_result(persons.as_table(found.rows), output, force=force)
    if not quiet:
        _tell(found, encoded)
    for remark in found.remarks:
        click.echo(harmless(f"{path}, {remark.told}"), err=True)
    return int(bool(found.remarks))


def _text_of(path: Path, encoding: str) -> tuple[str, str]:
    from inscribe import files
    from inscribe.encodings import decoded

    data = files.read_bytes(path)
    found = decoded(data, encoding)
    if found is None:
        said = "the list is no text in any encoding that is likely"
        raise InputError(said, Place(str(path)), "save it as UTF-8, or name it with --encoding")
    return found[0].replace("\r\n", "\n").replace("\r", "\n"), found[1]


def _mapping(given: tuple[str, ...]) -> dict[str, str]:
    from inscribe import files, persons

    found: dict[str, str] = {}
    for each in given:
        heading, equals, column = each.rpartition("=")
        if equals:
            found[heading] = column
        else:
            found |= persons.of_toml(files.read_text(Path(each)), each)
    return found


def _tell(found: ImportedPeople, encoded: str) -> None:
    click.echo(f"{len(found.rows)} persons, from {encoded}", err=True)
    for heading, column in found.mapping.items():
        click.echo(harmless(f"  {heading} -> {column}"), err=True)


@command.command(
    short_help="show the persons of the list, or those of a name",
    epilog=example("inscribe people show 雨庵"),
)
@click.argument("name", required=False, metavar="[NAME|ID]")
@output_options
def show(name: str | None, output: str | None, force: bool, quiet: bool) -> None:
    """List the persons of your list; with NAME, those it may name, in any form of its signs."""
    from inscribe import persons
    from inscribe.report.terminal import people_as_text

    found = persons.people_called(name) if name else tuple(persons.people().values())
    if not found:
        said = f"nobody in your list is called {name}" if name else "there is no list of persons"
        raise InputError(said, hint="name its folder: inscribe --glossary FOLDER people show")
    write_result(people_as_text(found), output, force=force)
