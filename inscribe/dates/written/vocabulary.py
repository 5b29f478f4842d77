"""Every word a date can be made of, from the glossary tables, by its first character."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.dates import calendar
from inscribe.dates.written.lookalikes import cycle_lookalikes
from inscribe.errors import Place, TableError

_MONTH = frozenset(map(str, range(1, 13)))
_DAY = frozenset(map(str, range(1, 31)))
# The values of the kinds that are reckoned with: numbers joined by hyphens, or a pattern.
_NUMBERS: dict[str, tuple[frozenset[str], ...]] = {
    "month": (_MONTH,),
    "season": (_MONTH, _MONTH),
    "season_day": (_MONTH, _MONTH),
    "day": (_DAY,),
    "days": (_DAY, _DAY),
    "part": (_DAY, _DAY),
    "festival": (_MONTH, _DAY),
}
# A day that every year has.
_DAY_OF_YEAR = (
    "(?:02-(?:0[1-9]|1[0-9]|2[0-8])|(?:0[13-9]|1[0-2])-(?:0[1-9]|[12][0-9]|30)"
    "|(?:0[13578]|1[02])-31)"
)
_PATTERNS = {
    "third": "0|10|20",
    "term": f"{_DAY_OF_YEAR} {_DAY_OF_YEAR}",
    "epoch": "-?[0-9]{1,4}",
    "same": "(?:era|year|month|day):-?[0-9]",
    "age": "[0-9]{1,3}",
    "age_after": "(?:[0-9]{1,3}-[0-9]{1,3})?",
}


class Meaning(NamedTuple):
    """One thing a word can mean in a date; ``value`` depends on ``kind`` (see the tables)."""

    kind: str
    value: str
    kana: str
    romaji: str
    also: tuple[str, ...] = ()  # other romanised readings


class Word(NamedTuple):
    """A written word and all its meanings in dates."""

    text: str
    meanings: tuple[Meaning, ...]


Entry = tuple[str, Meaning]
_COLUMNS = {
    "month_names": ("name", "month", "kana", "romaji"),
    "day_words": ("word", "kind", "days", "kana", "romaji"),
    "festivals": ("name", "month", "day", "kana", "romaji"),
    "solar_terms": ("term", "first", "last", "kana", "romaji"),
    "date_words": ("word", "kind", "value", "kana", "romaji"),
}


@tables.compiled
def _tables() -> dict[str, tables.Rows]:
    return {name: tables.Rows(name, columns) for name, columns in _COLUMNS.items()}


@tables.compiled
def _known() -> dict[str, tuple[Word, ...]]:
    return {}


def words_from(sign: str) -> tuple[Word, ...]:
    """Return the words that begin with a sign, the longest first.

    Raises:
        TableError: a row of the tables cannot be used.
    """
    known = _known()
    if sign not in known:
        known[sign] = _read_words_from(sign)
    return known[sign]


def signs() -> tuple[str, ...]:
    """Return every sign with which a word of dates begins."""
    listed = (sign for table in _tables().values() for sign in table.signs())
    return tuple(dict.fromkeys((*_names_and_cycle(), *listed)))


def _read_words_from(sign: str) -> tuple[Word, ...]:
    found: dict[str, list[Meaning]] = {}
    named = _names_and_cycle().get(sign, ())
    for text, meaning in (*named, *_months(sign), *_days(sign), *_others(sign)):
        meanings = found.setdefault(text, [])
        if all(known.kind != meaning.kind for known in meanings):
            meanings.append(meaning)
    words = [Word(text, tuple(meanings)) for text, meanings in found.items()]
    return tuple(sorted(words, key=lambda word: -len(word.text)))


@tables.compiled
def _names_and_cycle() -> dict[str, list[Entry]]:
    """Return the names of eras and the signs of the cycle, by their first signs."""
    found: dict[str, list[Entry]] = {}
    for entry in (*_eras(), *_cycle()):
        found.setdefault(entry[0][0], []).append(entry)
    return found


def _meaning(kind: str, value: str, kana: str, romaji: str, place: Place) -> Meaning:
    """Return a meaning whose cell of letters may hold several readings, the usual one first.

    Raises:
        TableError: the kind is reckoned with, and cannot be with this value.
    """
    if not _can_be(kind, value):
        raise TableError(f"“{value}” is no value of a {kind}", place, "see the head of the table")
    first, *others = romaji.split("; ")
    return Meaning(kind, value, kana, first, tuple(others))


def _can_be(kind: str, value: str) -> bool:
    if kind in _PATTERNS:
        return bool(re.fullmatch(_PATTERNS[kind], value))
    numbers = value.split("-")
    possible = _NUMBERS.get("days" if kind == "day" and len(numbers) == 2 else kind)
    if possible is None:  # nothing is reckoned with it
        return True
    return len(numbers) == len(possible) and all(map(frozenset.__contains__, possible, numbers))


def _eras() -> list[Entry]:
    known = calendar.by_name()
    return [(name, Meaning("era", name, era.kana, era.romaji)) for name, era in known.items()]


def _cycle() -> list[Entry]:
    found = []
    for sign in calendar.signs().values():
        main = Meaning(sign.kind, sign.sign, sign.kun, sign.kun_romaji)
        found += [(text, main) for text in (sign.sign, *sign.forms)]
        found += [(text, _other_writing(sign)) for text in sign.other]
        literary = Meaning(f"literary_{sign.kind}", sign.sign, sign.kun, sign.kun_romaji)
        found += [(text, literary) for text in sign.literary]
        found.append((sign.kun, Meaning(f"kana_{sign.kind}", sign.sign, sign.kun, sign.kun_romaji)))
    alike = Meaning("cycle_like", "", "", "")
    return found + [(sign, alike) for sign in sorted(cycle_lookalikes())]


def _other_writing(sign: calendar.CycleSign) -> Meaning:
    kind = "kana_stem" if sign.kind == "stem" else "animal"
    return Meaning(kind, sign.sign, sign.kun, sign.kun_romaji)


def _months(sign: str) -> Iterator[Entry]:
    for (name, month, kana, romaji), place in _tables()["month_names"].about(sign):
        yield name, _meaning("month", month, kana, romaji, place)


def _days(sign: str) -> Iterator[Entry]:
    for (word, kind, days, kana, romaji), place in _tables()["day_words"].about(sign):
        yield word, _meaning(kind, days, kana, romaji, place)
    for (name, month, day, kana, romaji), place in _tables()["festivals"].about(sign):
        yield name, _meaning("festival", f"{month}-{day}", kana, romaji, place)
    for (term, first, last, kana, romaji), place in _tables()["solar_terms"].about(sign):
        yield term, _meaning("term", f"{first} {last}", kana, romaji, place)


def _others(sign: str) -> Iterator[Entry]:
    for (word, kind, value, kana, romaji), place in _tables()["date_words"].about(sign):
        yield word, _meaning(kind, value, kana, romaji, place)
