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
def _known() -> dict[tuple[str, str], dict[str, Listed]]:
    return {}


def surnames_from(first: str) -> dict[str, Listed]:
    """Return the surnames that begin with a character, with their readings."""
    return _names_from("surname", first, _surname_rows())


def surnames(written: str) -> Listed:
    """Return the readings of a surname; empty where it is not listed."""
    return surnames_from(written[0]).get(written, ())


def place_names(written: str) -> Listed:
    """Return the readings of a place; empty where it is not listed."""
    return _names_from("place", written[0], _place_rows()).get(written, ())


def _names_from(sort: str, first: str, rows: tables.Rows) -> dict[str, Listed]:
    known = _known()
    if (sort, first) not in known:
        names: dict[str, Listed] = {}
        for (_, cell), place in rows.about(first):
            for item in cell.split():
                written, readings = _name(item, place)
                usual = _usual_surnames().get(written) if sort == "surname" else None
                names.setdefault(written, _led_by(usual, readings) if usual else readings)
        known[sort, first] = names
    return known[sort, first]


def _led_by(usual: str, readings: Listed) -> Listed:
    """Return the readings with the usual one first, as cheap as the cheapest."""
    others = tuple([each for each in readings if each[0].replace("|", "") != usual])
    return ((usual, readings[0][1]), *others)


def _name(item: str, place: Place) -> tuple[str, Listed]:
    written, _, cell = item.partition("=")
    readings = (reading.partition(":") for reading in cell.split("/"))
    try:
        return written, tuple((kana, int(cost)) for kana, _, cost in readings)
    except ValueError:
        message = f"“{item}” is no name with its readings"
        raise TableError(message, place, "write WRITTEN=KANA:COST/KANA:COST") from None
