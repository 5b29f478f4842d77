"""What a dictionary of names says: every reading, and nothing of which is usual.

It widens what may be a surname or a place, and adds readings below those that the counted tables
and the characters give; it never ranks them.

>>> known("薬袋").surname, known("綾郷").surname
(('みない', 'みなえ'), ())
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables

SOURCE = "ENAMDICT"
_MOST_KEPT = 50_000


class KnownName(NamedTuple):
    """The readings of a name as a surname, a place and a given name; empty where it is none."""

    surname: tuple[str, ...] = ()
    place: tuple[str, ...] = ()
    given: tuple[str, ...] = ()


@tables.cached()
def _dictionary() -> tables.Sorted:
    return tables.Sorted("name_dictionary")


@tables.cached(_MOST_KEPT)
def known(written: str) -> KnownName:
    """Return what the dictionary says of a name in current forms."""
    row = _dictionary().first_about(written.replace("ヶ", "ケ"))
    if row is None:
        return KnownName()
    listed = tables.listed
    return KnownName(listed(row["surname"]), listed(row["place"]), listed(row["given"]))
