"""The pictures a record names, and what is the matter with their files."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from inscribe.errors import InscribeError
from inscribe.record import Inscription, Record, RecordImage, picture_file


def pictures_of(
    record: Record, number: int, inscription: Inscription
) -> Iterator[tuple[tuple[str | int, ...], RecordImage]]:
    """Yield each picture of an inscription with its place in the file.

    Those of its source are among them and, with the first inscription, those of the object.
    """
    if number == 0:
        for nth, image in enumerate(record.images):
            yield ("image", nth), image
    for nth, image in enumerate(inscription.images):
        yield ("inscription", number, "image", nth), image
    for nth, image in enumerate(inscription.source.images if inscription.source else ()):
        yield ("inscription", number, "source", "image", nth), image


def picture_problem(image: RecordImage, folder: Path) -> str:
    """Return why a picture cannot be shown, or nothing where it can."""
    try:
        picture_file(image, folder)
    except InscribeError as error:
        return f"the picture {image.file}: {error.message}"
    return ""
