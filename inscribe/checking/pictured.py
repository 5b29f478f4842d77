"""The pictures a record names, and what is the matter with their files."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from inscribe.errors import InscribeError
from inscribe.record import Record, RecordImage, picture_file

KeyPath = tuple[str | int, ...]


def pictures_of(record: Record) -> Iterator[tuple[KeyPath, RecordImage]]:
    """Yield each picture of a record with its place in the file."""
    yield from _placed(record.images, ())
    for number, each in enumerate(record.inscriptions):
        yield from _placed(each.images, ("inscription", number))
        for nth, source in enumerate(each.sources):
            yield from _placed(source.images, ("inscription", number, "source", nth))


def _placed(
    images: tuple[RecordImage, ...], path: KeyPath
) -> Iterator[tuple[KeyPath, RecordImage]]:
    for nth, image in enumerate(images):
        yield (*path, "image", nth), image


def picture_problem(name: str, folder: Path) -> str:
    """Return why a picture file of a record's folder cannot be shown, or nothing where it can."""
    try:
        picture_file(RecordImage(name), folder)
    except InscribeError as error:
        return f"the picture {name}: {error.message}"
    return ""
