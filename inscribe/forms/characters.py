"""What the dictionary of characters says: strokes, readings, readings in names, senses.

>>> sorted(readings("山").on), readings("山").kun
(['サン', 'セン'], ('やま',))
"""

from __future__ import annotations

from dataclasses import dataclass

from inscribe import tables
from inscribe.errors import Place, TableError

Cells = tuple[str, str, str, str, str, str, Place]
COLUMNS = ("char", "strokes", "on", "kun", "names", "senses", "rank")


@dataclass(frozen=True, slots=True)
class Readings:
    """Sino-Japanese readings (katakana), native readings and readings in names (hiragana).

    In a native reading ``.`` stands before what is usually written in kana, ``-`` where something
    else is joined on.
    """

    on: tuple[str, ...] = ()
    kun: tuple[str, ...] = ()
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Character:
    """One character as the dictionary has it; ``strokes`` begins with the usual count."""

    char: str
    strokes: tuple[int, ...] = ()
    readings: Readings = Readings()
    senses: tuple[str, ...] = ()
    rank: int | None = None


def readings(char: str) -> Readings:
    """Return the readings of ``char``; all empty if the dictionary does not know it."""
    return character(char).readings


def character(char: str) -> Character:
    """Return what the dictionary says of ``char``; only the character itself if nothing.

    Raises:
        TableError: its row has a number that is none.
    """
    cells = _cells().get(char)
    if cells is None:
        return Character(char)
    strokes, on, kun, names, senses, rank, place = cells
    try:
        counts = tuple(map(int, strokes.split()))
        known_rank = int(rank) if rank else None
    except ValueError as error:
        raise TableError("strokes and rank must be numbers", place) from error
    said = Readings(tuple(on.split()), tuple(kun.split()), tuple(names.split()))
    meant = tuple(sense.strip() for sense in senses.split(";") if sense.strip())
    return Character(char, counts, said, meant, known_rank)


@tables.compiled
def _cells() -> dict[str, Cells]:
    found: dict[str, Cells] = {}
    for (char, strokes, on, kun, names, senses, rank), place in tables.rows("characters", COLUMNS):
        found.setdefault(char, (strokes, on, kun, names, senses, rank, place))
    return found
