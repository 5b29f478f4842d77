"""Finding dates in a text, and resolving a text that is a date."""

from __future__ import annotations

from dataclasses import replace

from inscribe.dates.model import DateReading, Piece
from inscribe.dates.parse import expressions
from inscribe.dates.resolve import Between, resolved
from inscribe.dates.scan import may_hold_date
from inscribe.errors import InputError
from inscribe.forms import normalise_text

_PARTS = (
    "an era and year (嘉永六年), a sexagenary year (癸丑), a month, a day or an age (行年七十三)"
)
# Signs of the cycle whose old forms would be taken for other characters by a general table.
_CYCLE_FORMS = str.maketrans({"夘": "卯", "戼": "卯", "丣": "酉"})


def find(
    text: str, between: Between | None = None, *, weak: bool = False
) -> tuple[DateReading, ...]:
    """Return the dates and ages in a normalised text, in order, with offsets in that text.

    ``between`` narrows the years a bare sexagenary year may mean (western years, both included).
    Words that are a date only in a date's company (a lone 仲秋, 五月, 春) are left out unless
    ``weak`` is set; then they come with ``sure`` false.

    >>> [(d.text, d.first, d.year) for d in find("武州住某作嘉永六年癸丑仲秋")]
    [('嘉永六年癸丑仲秋', 5, 1853)]
    >>> find("秋の田のかりほの庵の苫をあらみ")
    ()
    """
    if not weak and not may_hold_date(text):
        return ()
    found: list[DateReading] = []
    before: DateReading | None = None
    for expression in expressions(text):
        if expression.sure or weak:
            reading = resolved(expression, text, between, before)
            found.append(reading)
            before = reading if reading.year is not None else before
    return tuple(found)


def resolve(text: str, between: Between | None = None) -> DateReading:
    """Return the date (or age) that ``text`` as carved names; offsets are those of ``text``.

    Several expressions that belong together (a date here, an age there) become one reading.

    Raises:
        InputError: nothing in ``text`` is a date or an age.

    >>> resolve("行年七十三翁 安政二年").birth_year
    1783
    """
    normal = normalise_text(text.translate(_CYCLE_FORMS))
    found = find(normal.text, between, weak=True)
    if not found:
        raise InputError("no date or age is found in the text", hint=f"expected {_PARTS}")
    origin = normal.origin
    placed = tuple(_placed(reading, origin, text) for reading in found)
    return placed[0]


def _placed(reading: DateReading, origin: tuple[int, ...], text: str) -> DateReading:
    """Return the reading with offsets and text as in the input before normalisation."""

    def moved(piece: Piece) -> Piece:
        first, last = origin[piece.first], origin[piece.last]
        return replace(piece, first=first, last=last, text=text[first : last + 1])

    first, last = origin[reading.first], origin[reading.last]
    pieces = tuple(moved(piece) for piece in reading.pieces)
    return replace(reading, first=first, last=last, text=text[first : last + 1], pieces=pieces)
