"""Every word a date can be made of, from the glossary tables, by its first character."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.dates import calendar
from inscribe.dates.written.lookalikes import cycle_lookalikes


class Meaning(NamedTuple):
    """One thing a word can mean in a date; ``value`` depends on ``kind`` (see the tables)."""

    kind: str
    value: str
    kana: str
    romaji: str
    also: tuple[str, ...] = ()  # other romanised readings


class DateWord(NamedTuple):
    """A written word and all its meanings in dates."""

    text: str
    meanings: tuple[Meaning, ...]


Entry = tuple[str, Meaning]
_TABLES = ("month_names", "day_words", "festivals", "solar_terms", "date_words")


@tables.cached()
def _tables() -> dict[str, tables.Rows]:
    return {name: tables.Rows(name) for name in _TABLES}


@tables.cached()
def words_from(sign: str) -> tuple[DateWord, ...]:
    """Return the words that begin with a sign, the longest first."""
    found: dict[str, list[Meaning]] = {}
    named = _names_and_cycle().get(sign, ())
    for text, meaning in (*named, *_months(sign), *_days(sign), *_others(sign)):
        meanings = found.setdefault(text, [])
        if all(known.kind != meaning.kind for known in meanings):
            meanings.append(meaning)
    words = [DateWord(text, tuple(meanings)) for text, meanings in found.items()]
    return tuple(sorted(words, key=lambda word: -len(word.text)))


def signs() -> tuple[str, ...]:
    """Return every sign with which a word of dates begins."""
    listed = (sign for table in _tables().values() for sign in table.signs())
    return tuple(dict.fromkeys((*_names_and_cycle(), *listed)))


@tables.cached()
def _names_and_cycle() -> dict[str, list[Entry]]:
    """Return the names of eras and the signs of the cycle, by their first signs."""
    found: dict[str, list[Entry]] = {}
    for entry in (*_eras(), *_cycle()):
        found.setdefault(entry[0][0], []).append(entry)
    return found


def _entry(row: tables.Row, kind: str, value: str) -> Entry:
    """Return a word with what it means; of several readings in letters the first is usual."""
    first, *others = row["romaji"].split(tables.SEPARATOR)
    return row["written"], Meaning(kind, value, row["kana"], first, tuple(others))


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
    for row in _tables()["month_names"].about(sign):
        yield _entry(row, "month", row["month"])


def _days(sign: str) -> Iterator[Entry]:
    for row in _tables()["day_words"].about(sign):
        yield _entry(row, row["kind"], row["days"])
    for row in _tables()["festivals"].about(sign):
        yield _entry(row, "festival", f"{row['month']}-{row['day']}")
    for row in _tables()["solar_terms"].about(sign):
        yield _entry(row, "term", f"{row['earliest']} {row['latest']}")


def _others(sign: str) -> Iterator[Entry]:
    for row in _tables()["date_words"].about(sign):
        yield _entry(row, row["kind"], row["value"])
