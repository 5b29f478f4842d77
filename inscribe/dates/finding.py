"""Finding dates in a text, and resolving a text that is a date."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.dates.written import may_hold_date
from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.dates.model import DatePiece, DateReading
    from inscribe.dates.written import Expression

Between = tuple[int, int]
_PARTS = (
    "an era and year (嘉永六年), a sexagenary year (癸丑), a month, a day or an age (行年七十三)"
)
_NO_SIGNS = re.compile(r"[^\w□■]+")
_RECURRING = 1_000  # expressions whose meaning is kept
_LONGEST_NAMED_DAY = 6  # signs of a text that may be no more than a day with a name
_RECENT = 16  # texts whose dates are kept: register, passages and signature all ask for them
# Signs of the cycle whose old forms would be taken for other characters by a general table.
_CYCLE_FORMS = str.maketrans({"夘": "卯", "戼": "卯", "丣": "酉"})


def find(
    text: str,
    between: Between | None = None,
    *,
    weak: bool = False,
    before: DateReading | None = None,
) -> tuple[DateReading, ...]:
    """Return the dates and ages in a normalised text, in order, with offsets in that text.

    ``between`` narrows the years a bare sexagenary year may mean (western years, both included).
    Words that are a date only in a date's company (仲秋, 五月, 春, 端午 among other words) are
    left out unless ``weak`` is set; then they come with ``sure`` false. ``before`` is the date of
    an earlier inscription that a "same year" may refer to.

    >>> [(d.text, d.first, d.year) for d in find("武州住某作嘉永六年癸丑仲秋")]
    [('嘉永六年癸丑仲秋', 5, 1853)]
    >>> find("秋の田のかりほの庵の苫をあらみ")
    ()
    """
    return _found(text, between, weak, before)


@tables.cached(_RECENT)
def _found(
    text: str, between: Between | None, weak: bool, before: DateReading | None
) -> tuple[DateReading, ...]:
    if not weak and len(text) > _LONGEST_NAMED_DAY and not may_hold_date(text):
        return ()
    from inscribe.dates.written import bare_age, expressions

    kept = [each for each in expressions(text) if each.sure or weak or _is_named_day(each, text)]
    if not kept and "有" in text:
        kept = bare_age(text)  # 七十有五: a number so written is an age
    return _resolved(kept, text, between, before)


def _is_named_day(expression: Expression, text: str) -> bool:
    """Return whether a text is nothing but a day that has a name: 端午之日, 立春."""
    whole = (expression.first, expression.last) == (0, len(text) - 1)
    return whole and expression.pieces[0].kind in ("festival", "term") and len(text) > 1


def _resolved(
    found: Sequence[Expression],
    text: str,
    between: Between | None,
    before: DateReading | None = None,
) -> tuple[DateReading, ...]:
    """Return the readings of expressions in order; 同年 refers back, an age to the date given."""
    from inscribe.dates.meaning import with_age_at

    readings: list[DateReading] = []
    for expression in found:
        reading = _meaning_of(expression, text, between, before)
        readings.append(reading)
        before = reading if reading.year is not None else before
    dated = [reading for reading in readings if reading.year is not None or reading.candidates]
    if len(dated) != 1:
        return tuple(readings)
    return tuple(with_age_at(reading, dated[0]) for reading in readings)


def _meaning_of(
    expression: Expression, text: str, between: Between | None, before: DateReading | None
) -> DateReading:
    """Return what an expression means; one that recurs, wherever it stands, is resolved once."""
    first, last = expression.first, expression.last
    at_start = tuple(
        piece._replace(first=piece.first - first, last=piece.last - first)
        for piece in expression.pieces
    )
    referred = before if expression.same else None
    meaning = _meaning(
        expression._replace(pieces=at_start), text[first : last + 1], between, referred
    )
    return replace(meaning, first=first, last=last, pieces=expression.pieces)


@tables.cached(_RECURRING)
def _meaning(
    expression: Expression, text: str, between: Between | None, before: DateReading | None
) -> DateReading:
    from inscribe.dates.meaning import resolved

    return resolved(expression, text, between, before)


def resolve(text: str, between: Between | None = None) -> DateReading:
    """Return the date (or age) that ``text`` as carved names; offsets are those of ``text``.

    A date here and an age there become one reading; of several dates, the one that says most is
    returned (:func:`resolve_all` returns them all).

    Raises:
        InputError: nothing in ``text`` is a date or an age.

    >>> resolve("行年七十三翁 某作 安政二年").birth_year
    1783
    """
    return resolve_all(text, between)[0]


def resolve_all(text: str, between: Between | None = None) -> tuple[DateReading, ...]:
    """Return all dates of ``text`` as carved, the one that says most first.

    A Gregorian date (1853-07-08) is answered with the day of the Japanese calendar. Signs of the
    text that no date takes are named in a caution of the first.

    Raises:
        InputError: nothing in ``text`` is a date or an age.

    >>> resolve_all("嘉永六年花")[0].cautions
    ('花 is not taken for a part of the date',)
    """
    from inscribe.dates.written import bare_age, expressions, with_lone_stem
    from inscribe.forms import normalise_text

    if len(text) == len("1853-07-08") and text.count("-") == 2:
        return (_of_gregorian(text),)
    normal = normalise_text(text.translate(_CYCLE_FORMS))
    found = _joined(expressions(normal.text)) or bare_age(normal.text)
    if any(each.sure for each in found):
        found = [each for each in found if each.sure]
    if not found:
        raise InputError("no date or age is found in the text", hint=f"expected {_PARTS}")
    readings = _resolved(
        [with_lone_stem(each, normal.text) for each in found], normal.text, between
    )
    placed = [_placed(reading, normal.origin, text) for reading in readings]
    first, *others = sorted(placed, key=_says_most)
    return (_with_left_over(first, placed, text), *others)


def _with_left_over(first: DateReading, readings: list[DateReading], text: str) -> DateReading:
    """Return the first reading with a caution that names the signs which no reading takes."""
    covered = {at for reading in readings for at in _signs_of(reading)}
    runs = "".join(" " if at in covered else sign for at, sign in enumerate(text))
    left = [run for run in _NO_SIGNS.split(runs) if run]
    if not left:
        return first
    many = "are" if len(left) > 1 else "is"
    caution = f"{', '.join(left)} {many} not taken for a part of the date"
    why = "; ".join(filter(None, (first.why, caution)))
    return replace(first, cautions=(*first.cautions, caution), why=why)


def _signs_of(reading: DateReading) -> Iterator[int]:
    for piece in reading.pieces:
        yield from range(piece.first, piece.last + 1)


def _of_gregorian(text: str) -> DateReading:
    """Return the day of the Japanese calendar that an ISO date names."""
    from datetime import date

    from inscribe.dates.meaning import as_carved

    try:
        day = date.fromisoformat(text)
    except ValueError as error:
        raise InputError(f"{text} is no day of the Gregorian calendar") from error
    carved = as_carved(day)
    reading = resolve(carved)
    last = len(text) - 1
    pieces = tuple(piece._replace(first=0, last=last) for piece in reading.pieces)
    why = f"{text} was {carved}; {reading.why}"
    return replace(reading, text=text, first=0, last=last, pieces=pieces, why=why)


def _joined(found: Sequence[Expression]) -> list[Expression]:
    """Join an age that stands by itself to the one date of the text that has none."""
    ages = [each for each in found if each.age and not each.says_when]
    dates = [each for each in found if each.says_when and each.sure]
    if len(ages) != 1 or len(dates) != 1 or dates[0].age:
        return list(found)
    pieces = tuple(sorted(ages[0].pieces + dates[0].pieces, key=lambda piece: piece.first))
    return [dates[0]._replace(age=ages[0].age, pieces=pieces)]


def _says_most(reading: DateReading) -> tuple[bool, bool, int]:
    return (reading.year is None, not reading.candidates, reading.first)


def _placed(reading: DateReading, origin: tuple[int, ...], text: str) -> DateReading:
    """Return the reading with offsets and text as in the input before normalisation."""

    def moved(piece: DatePiece) -> DatePiece:
        first, last = origin[piece.first], origin[piece.last]
        return piece._replace(first=first, last=last, text=text[first : last + 1])

    first, last = origin[reading.first], origin[reading.last]
    pieces = tuple(moved(piece) for piece in reading.pieces)
    return replace(reading, first=first, last=last, text=text[first : last + 1], pieces=pieces)
