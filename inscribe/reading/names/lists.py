"""The listed names of families and places, a row of the tables for each first character.

>>> surnames("沢井")[0][0], place_names("岡崎")[0][0], surnames("綾国")
('さわい', 'おかざき', ())
"""

from __future__ import annotations

from inscribe import tables

# Readings of a name in kana with their costs, the likelier first.
Listed = tuple[tuple[str, int], ...]
_MOST_KNOWN = 50_000
_RARE = 9_300  # the cost of a surname that UniDic lacks


@tables.cached()
def _surname_rows() -> tables.Rows:
    return tables.Rows("surnames")


@tables.cached()
def _place_rows() -> tables.Rows:
    return tables.Rows("place_names")


@tables.cached()
def _count_rows() -> tables.Sorted:
    return tables.Sorted("surname_counts")


@tables.cached()
def _usual_surnames() -> dict[str, str]:
    return {row["written"]: row["kana"] for row in tables.rows("surname_preferences")}


@tables.cached(_MOST_KNOWN)
def surnames(written: str) -> Listed:
    """Return the readings of a surname; empty where it is not listed."""
    found = _looked_up(written, _surname_rows())
    usual = _usual_surnames().get(written)
    return _led_by(usual, found) if usual else found


@tables.cached(_MOST_KNOWN)
def place_names(written: str) -> Listed:
    """Return the readings of a place; empty where it is not listed."""
    return _looked_up(written, _place_rows())


@tables.cached()
def places_of_verse() -> dict[str, str]:
    """Return the places that poems sing of, with their reading in current kana.

    One with の in it is also written without, as in titles; its kana are divided there.

    >>> places_of_verse()["逢坂山"], places_of_verse()["佐夜中山"]
    ('おうさかやま', 'さや の なかやま')
    """
    found = {row["written"]: row["kana"] for row in tables.rows("verse_places")}
    shorter = {
        place.replace("の", ""): kana.replace("の", " の ") if kana.count("の") == 1 else kana
        for place, kana in found.items()
        if "の" in place
    }
    return shorter | found


@tables.cached(_MOST_KNOWN)
def families_counted(written: str) -> dict[str, int]:
    """Return how many persons of a dictionary have a surname read so, by reading.

    Empty where the usual reading is set down by hand, and where there is but one.

    >>> families_counted("川田"), families_counted("綾国")
    ({'かわだ': 23, 'かわた': 6}, {})
    """
    row = None if written in _usual_surnames() else _count_rows().first_about(written)
    items = tables.listed(row["readings"]) if row else ()
    return {kana: int(number) for kana, _, number in (item.partition(":") for item in items)}


def surnames_from(first: str) -> dict[str, Listed]:
    """Return the surnames that begin with a character, with their readings."""
    items = (item for row in _surname_rows().about(first) for item in tables.listed(row["names"]))
    return {name: surnames(name) for name in (item.partition("=")[0] for item in items)}


def _looked_up(written: str, rows: tables.Rows) -> Listed:
    """Return the readings of a name; the other names of its row are not taken apart."""
    for row in rows.about(written[0]):
        start = f";{row['names']}".find(f";{written}=")
        if start >= 0:
            return _name(row["names"][start:].partition(";")[0])
    return ()


def _led_by(usual: str, readings: Listed) -> Listed:
    """Return the readings with the usual one first, as cheap as the cheapest."""
    others = tuple([each for each in readings if each[0].replace("|", "") != usual])
    cost = readings[0][1] if readings else _RARE
    return ((usual, cost), *others)


def _name(item: str) -> Listed:
    readings = (reading.partition(":") for reading in item.partition("=")[2].split("/"))
    return tuple((kana, int(cost)) for kana, _, cost in readings)
