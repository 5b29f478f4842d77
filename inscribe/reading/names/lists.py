"""The listed names of families and places, a row of the tables for each first character.

>>> surnames("沢井")[0][0], place_names("岡崎")[0][0], surnames("綾国")
('さわい', 'おかざき', ())
"""

from __future__ import annotations

from inscribe import tables
from inscribe.errors import Place, TableError

# Readings of a name in kana with their costs, the likelier first.
Listed = tuple[tuple[str, int], ...]
_COLUMNS = ("first", "names")
_MOST_KNOWN = 100_000


@tables.compiled
def _surname_rows() -> tables.Rows:
    return tables.Rows("surnames", _COLUMNS)


@tables.compiled
def _place_rows() -> tables.Rows:
    return tables.Rows("place_names", _COLUMNS)


@tables.compiled
def _usual_surnames() -> dict[str, str]:
    return {
        written: kana
        for (written, kana), _ in tables.rows("surname_preferences", ("written", "kana"))
    }


@tables.compiled
def _known() -> dict[tuple[str, str], Listed]:
    return {}


def surnames(written: str) -> Listed:
    """Return the readings of a surname; empty where it is not listed."""
    return _readings("surname", written, _surname_rows())


def place_names(written: str) -> Listed:
    """Return the readings of a place; empty where it is not listed."""
    return _readings("place", written, _place_rows())


def surnames_from(first: str) -> dict[str, Listed]:
    """Return the surnames that begin with a character, with their readings."""
    cells = (cell for (_, cell), _ in _surname_rows().about(first))
    written = (item.partition("=")[0] for cell in cells for item in cell.split())
    return {name: surnames(name) for name in written}


def _readings(sort: str, written: str, rows: tables.Rows) -> Listed:
    known = _known()
    key = (sort, written)
    if key not in known:
        if len(known) > _MOST_KNOWN:
            known.clear()
        found = _looked_up(written, rows)
        usual = _usual_surnames().get(written) if sort == "surname" and found else None
        known[key] = _led_by(usual, found) if usual else found
    return known[key]


def _looked_up(written: str, rows: tables.Rows) -> Listed:
    """Return the readings of a name; the other names of its row are not taken apart."""
    for (_, cell), place in rows.about(written[0]):
        start = f" {cell}".find(f" {written}=")
        if start >= 0:
            return _name(cell[start:].partition(" ")[0], place)
    return ()


def _led_by(usual: str, readings: Listed) -> Listed:
    """Return the readings with the usual one first, as cheap as the cheapest."""
    others = tuple([each for each in readings if each[0].replace("|", "") != usual])
    return ((usual, readings[0][1]), *others)


def _name(item: str, place: Place) -> Listed:
    readings = (reading.partition(":") for reading in item.partition("=")[2].split("/"))
    try:
        return tuple((kana, int(cost)) for kana, _, cost in readings)
    except ValueError:
        message = f"“{item}” is no name with its readings"
        raise TableError(message, place, "write WRITTEN=KANA:COST/KANA:COST") from None
