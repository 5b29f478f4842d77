"""Chinese word order with return marks (kaeriten), put into Japanese word order.

The marks are the Kanbun block of Unicode, U+3190 to U+319F; they stand after the sign they belong
to. ``㆑`` holds its sign back until the next one is read. The rows ``㆒㆓㆔㆕``, ``㆖㆗㆘``,
``㆙㆚㆛㆜`` and ``㆝㆞㆟`` hold back every sign but the first of the row, which calls the second,
which calls the third. ``㆒㆑`` and ``㆖㆑`` do both. ``㆐`` ties two signs into one word. Kana
after a kanji go with it.

Source: common rules of kundoku as taught in schools, from memory; code points from Unicode.

>>> reorder("於㆓東都㆒造㆑之"), reorder("欲㆑作㆓一詩㆒")
('東都於之造', '一詩作欲')
"""

from __future__ import annotations

from dataclasses import dataclass, field

from inscribe.errors import NotationError, Place
from inscribe.reading.chinese.marks import LINK, MARKS, RETURN, ROWS

_RANKS = {mark: (row, rank) for row, marks in enumerate(ROWS) for rank, mark in enumerate(marks)}
_MIDDLE = (1, 1)  # the ㆗ of ㆖㆗㆘, which may be missing


@dataclass(slots=True)
class _Unit:
    """A sign, or several tied together, with the marks it carries."""

    indexes: list[int]
    returns: bool = False
    rank: tuple[int, int] | None = None
    tied: bool = False  # the next sign belongs to it
    marks: list[int] = field(default_factory=list)

    @property
    def waits(self) -> bool:
        return self.returns or (self.rank is not None and self.rank[1] > 0)


def reorder(text: str) -> str:
    """Return ``text`` in Japanese word order, without its marks.

    Raises:
        NotationError: a mark has nothing to return to; its column is named.
    """
    return "".join(text[index] for index in reading_order(text))


def reading_order(text: str) -> tuple[int, ...]:
    """Return the indexes of the signs of ``text`` in the order they are read, marks left out.

    Every sign that is not a mark comes exactly once.

    Raises:
        NotationError: a mark has nothing to return to; its column is named.
    """
    units = _units(text)
    unread = set(range(len(units)))
    order: list[int] = []
    for number, unit in enumerate(units):
        if not unit.waits:
            for called in _called(units, unread, number):
                order += units[called].indexes
    if unread:
        lost = units[min(unread)]
        raise _misplaced(text, lost.marks[0], "nothing that is read calls its sign back")
    return tuple(order)


def _called(units: list[_Unit], unread: set[int], number: int) -> list[int]:
    """Return the unit and those its reading calls back, in order."""
    called: list[int] = []
    following: int | None = number
    while following is not None:
        here = following
        called.append(here)
        unread.discard(here)
        before = here - 1
        if before in unread and units[before].returns:
            following = before
        else:
            following = _next_of_row(units, unread, here)
    return called


def _next_of_row(units: list[_Unit], unread: set[int], number: int) -> int | None:
    rank = units[number].rank
    if rank is None:
        return None
    for before in range(number - 1, -1, -1):
        other = units[before].rank
        if before in unread and other is not None and other[0] == rank[0]:
            steps = other[1] - rank[1]
            skips_middle = steps == 2 and (rank[0], rank[1] + 1) == _MIDDLE
            return before if steps == 1 or skips_middle else None
    return None


def _units(text: str) -> list[_Unit]:
    units: list[_Unit] = []
    for index, sign in enumerate(text):
        if sign in MARKS:
            if not units:
                raise _misplaced(text, index, "it stands before all signs")
            _mark(text, units[-1], index)
        elif units and (units[-1].tied or (_is_kana(sign) and _is_kanji(text, units[-1]))):
            units[-1].indexes.append(index)
            units[-1].tied = units[-1].tied and _is_kana(sign)
        else:
            units.append(_Unit([index]))
    if units and units[-1].tied:
        raise _misplaced(text, units[-1].marks[-1], "no sign follows")
    return units


def _mark(text: str, unit: _Unit, index: int) -> None:
    mark = text[index]
    unit.marks.append(index)
    if mark == LINK:
        unit.tied = True
    elif mark == RETURN and not unit.returns:
        unit.returns = True
    elif mark in _RANKS and unit.rank is None:
        unit.rank = _RANKS[mark]
    else:
        raise _misplaced(text, index, "its sign has a mark of this kind already")


def _is_kana(sign: str) -> bool:
    return "\u3041" <= sign <= "\u30ff" and sign != "・"


def _is_kanji(text: str, unit: _Unit) -> bool:
    return not _is_kana(text[unit.indexes[0]]) and text[unit.indexes[0]].isalpha()


def _misplaced(text: str, index: int, why: str) -> NotationError:
    return NotationError(
        f"the return mark {text[index]} has no place: {why}",
        Place(None, 1, index + 1),
        "set it after the sign that is read later",
    )
