"""What may be meant by a year that cannot be: the name of no era, a number that is none."""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import notebook
from inscribe.dates import calendar
from inscribe.dates.meaning.mistakes import year_name
from inscribe.dates.model import DateReading, Explanation
from inscribe.dates.written import Expression, Like, eras_like, numbers_like

_MOST = 6
_UNREAD = "□"
_WEIGHT = 0.95  # of an era that a name is wholly like


def of_the_unknown_era(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """Return the eras that signs look like which are the name of none."""
    written = expression.unknown_era
    if written is None:
        return
    likes = {like.era: like for like in eras_like(written)}
    if not reading.candidates:
        for like in list(likes.values())[:_MOST]:
            yield _without_number(written, like)
    numbers = expression.numbers or ((expression.number,) if expression.number else ())
    for found in reading.candidates:
        for name, romaji, number in found.eras:
            if name in likes and (not numbers or number in numbers):
                read = year_name(calendar.by_name()[name], number)
                said = f"read {read} ({romaji} {number}, {found.year}) for {written}"
                yield _explained(written, likes[name], said, found.year)


def _without_number(written: str, like: Like) -> Explanation:
    era = calendar.by_name()[like.era]
    years = f"{era.romaji}, {era.first}-{era.last}, {notebook.counted(era.years, 'year')}"
    return _explained(written, like, f"read {era.name} ({years}) for {written}", None)


def _explained(written: str, like: Like, said: str, year: int | None) -> Explanation:
    text = f"{said}: {like.why}" if like.why else said
    return Explanation("era", written, like.era, year, like.share * _WEIGHT, text)


def of_the_odd_number(expression: Expression) -> Iterator[Explanation]:
    """Return what may stand where the number of a year is expected, for what is none."""
    written = expression.odd_number
    if not written:
        return
    era = calendar.by_name().get(expression.era or "")
    for number, why in numbers_like(written):
        if era is None or number > era.years:
            continue
        year = era.western(number)
        read = year_name(era, number)
        text = f"read {read} ({year}) for {era.name}{written}年: {why}"
        yield Explanation("era year", written, read, year, 0.85, text)
    text = f"write {_UNREAD} for what cannot be read of {written}"
    yield Explanation("era year", written, _UNREAD, None, 0.3, text)
