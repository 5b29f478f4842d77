"""What is to be collated: records, files, literal texts, or pairs on standard input."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import nullcontext
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inscribe import files, notation, strict
from inscribe.cli.giving.arguments import Given, is_piped, told_apart
from inscribe.cli.giving.library import library_path
from inscribe.cli.giving.piped import (
    STANDARD_INPUT,
    read_standard_input,
    read_transcription,
)
from inscribe.errors import InputError, InscribeError, Place
from inscribe.scripts import is_written

if TYPE_CHECKING:
    from inscribe.record import CopiedText as RecordSource, Inscription, Record
    from inscribe.signs import Transcription
    from inscribe.terms import SourceKind


@dataclass(frozen=True)
class CollationText:
    """One text to be collated, what to call it, and the inscription it is, where it is one."""

    title: str
    transcription: Transcription
    inscription: Inscription | None = None
    remarks: tuple[str, ...] = ()  # what a reader must know of how it was measured
    siglum: str = ""  # of a source, as the record gives it
    kind: SourceKind | None = None


@dataclass(frozen=True)
class CollationTask:
    """A copy and the sources it is to be held against."""

    copy: CollationText
    sources: tuple[CollationText, ...]


def collation_tasks(
    texts: tuple[str, ...], library_file: str | None, *, literal: bool, convention: str
) -> list[CollationTask]:
    """Return what the arguments ask for: a copy and its sources, or a record with its own source.

    Raises:
        InputError: there is nothing to collate with, or an argument is no file.
    """
    taken = [_told_apart(text, library_file, literal=literal) for text in texts]
    if len(texts) == 1 and not literal:
        found = _own_sources(taken[0], library_file) or _with_piped_copy(taken[0], convention)
        if not found:
            raise InputError(
                "there is nothing to collate it with",
                Place(taken[0].place if isinstance(taken[0], Given) else texts[0]),
                "name a source text after it, or give the record a source",
            )
        return found
    if len(texts) < 2:
        raise InputError("a copy and a source are needed", hint="see inscribe collate --help")
    if texts.count(STANDARD_INPUT) > 1:
        raise InputError(
            "only one text can come from standard input", hint="name a file for the other"
        )
    copy, *sources = (
        each if isinstance(each, CollationText) else _text(each, convention) for each in taken
    )
    return [CollationTask(copy, tuple(sources))]


def _with_piped_copy(source: Given | CollationText, convention: str) -> list[CollationTask]:
    """Return the task to hold what is piped in against the one text that is named."""
    if not is_piped() or (isinstance(source, Given) and source.kind == "input"):
        return []
    piped = read_transcription()
    if not piped.strip():
        return []
    name = "standard input"
    copy = CollationText(name, notation.parse(piped, convention, name))
    return [
        CollationTask(
            copy, (source if isinstance(source, CollationText) else _text(source, convention),)
        )
    ]


def _of_library(argument: str, library_file: str | None) -> CollationText | None:
    """Return the text of the user's library that an argument names by its id, if it does.

    Raises:
        InputError: it is no file, and nearly such an id.
    """
    from inscribe.sources import Library, nearest_id, no_text

    path = library_path(library_file)
    if not path.is_file() or any(map(is_written, argument)) or Path(argument).exists():
        return None
    with Library(path) as library:
        if found := library.text_of_id(argument):
            return CollationText(found.title or found.id, notation.parse(found.text))
        if nearest_id(argument, library.ids()):
            raise no_text(argument, library.ids(), path)
    return None


def _told_apart(argument: str, library_file: str | None, *, literal: bool) -> Given | CollationText:
    if literal and argument != STANDARD_INPUT:
        return Given("text", argument)
    if argument and Path(argument).is_dir():
        raise InputError(
            "this is a folder; a collation takes one record, or a copy and its sources",
            Place(argument),
            f"name a file of it; for all its records, inscribe entry {argument} has the"
            " collation of each",
        )
    return _of_library(argument, library_file) or told_apart(argument)


def with_measured_copy(tasks: list[CollationTask], file: str, scale: float | None) -> CollationTask:
    """Return the one task, its copy's signs measured by the boxes in ``file``.

    Raises:
        InputError: the boxes cannot be used, or there is not one inscription they could be of.
    """
    from inscribe.record import read_boxes, remarks, with_boxes

    inscription = tasks[0].copy.inscription
    if len(tasks) != 1 or inscription is None:
        raise InputError("boxes measure one inscription of a record", hint="name such a record")
    boxes = read_boxes(Path(file), scale, inscription.plate)
    said = remarks(boxes, inscription)
    inscription = with_boxes(inscription, boxes.signs, file)
    copy = CollationText(tasks[0].copy.title, inscription.transcription, inscription, said)
    return CollationTask(copy, tasks[0].sources)


def _text(taken: Given, convention: str) -> CollationText:
    if taken.kind == "record":
        record = _record(Path(taken.value))
        inscription = record.inscriptions[0]
        return CollationText(record.id, inscription.transcription, inscription)
    words = notation.parse(taken.transcription(), convention, taken.place)
    title = taken.path.stem if taken.path else taken.place or taken.value or "no signs"
    return CollationText(title, words)


def _record(path: Path) -> Record:
    from inscribe.record import load

    return load(path)


def _own_sources(taken: Given | CollationText, library_file: str | None) -> list[CollationTask]:
    if isinstance(taken, CollationText) or taken.kind != "record":
        return []
    path = Path(taken.value)
    record = _record(path)
    found = []
    for inscription in record.inscriptions:
        if inscription.source is not None:
            title = f"{record.id}, {inscription.place}"
            copy = CollationText(title, inscription.transcription, inscription)
            sources = tuple(_source(each, path, library_file) for each in inscription.sources)
            found.append(CollationTask(copy, sources))
    return found


def _source(source: RecordSource, record: Path, library_file: str | None) -> CollationText:
    from inscribe.sources import Library, words_of

    title = source.title or " ".join(filter(None, (source.work, source.number))) or source.id
    path = library_path(library_file)
    asked = not source.text and path.exists()
    with Library(path) if asked else nullcontext() as library:
        if (words := words_of(source, library)) is not None:
            return CollationText(title or "source", words, siglum=source.siglum, kind=source.kind)
    raise InputError(
        f"the library has no text with the id {source.id!r}",
        Place(str(record)),
        "add it with inscribe source add, or write the text into the record",
    )


def pair_lines(file: str) -> list[tuple[int, str]]:
    """Return the lines of a file of pairs that hold anything, with their numbers."""
    text = read_standard_input() if file == STANDARD_INPUT else files.read_text(Path(file))
    lines = enumerate(text.split("\n"), start=1)
    return [(number, line) for number, line in lines if line.strip()]


def paired_tasks(
    lines: Iterable[tuple[int, str]],
) -> Iterator[tuple[int, Any, CollationTask | str]]:
    """Yield line number, id and task of each JSON line; a bad line yields its error instead."""
    for number, line in lines:
        identifier: Any = None
        try:
            values = _object(line)
            identifier = values.get("id")
            _check_texts(values)
            copy = CollationText("copy", notation.parse(values["copy"]))
            source = CollationText("source", notation.parse(values["source"]))
            yield number, identifier, CollationTask(copy, (source,))
        except InscribeError as error:
            yield number, identifier, str(error)


def _object(line: str) -> dict[str, Any]:
    try:
        values = strict.json_value(line, Place())
    except (ValueError, RecursionError) as error:
        raise InputError(f"the line is not JSON ({error})") from error
    if not isinstance(values, dict):
        raise InputError("the line is not a JSON object", hint='expected {"id", "copy", "source"}')
    return values


def _check_texts(values: dict[str, Any]) -> None:
    for key in ("copy", "source"):
        if not isinstance(values.get(key), str):
            raise InputError(f"the key {key!r} is missing or not a text")
