"""How many columns of a terminal a text takes.

Written without a layout library: it is needed for the first thing seen at the bench. The tests
hold it against the tables of rich.
"""

from __future__ import annotations

import unicodedata

_NO_COLUMN = frozenset(("Mn", "Me", "Cf"))  # voicing marks, variation selectors, joiners


def width(text: str) -> int:
    r"""Return the columns a text takes on a terminal: two for each wide character.

    Marks that belong to the sign before them, variation selectors among them, take none.

    >>> width("花のa"), width("葛\U000e0100"), width("か\u3099")
    (5, 2, 2)
    """
    return sum(map(_columns, text))


def _columns(char: str) -> int:
    if unicodedata.category(char) in _NO_COLUMN:
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1
