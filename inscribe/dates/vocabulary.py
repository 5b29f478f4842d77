"""Every word a date can be made of, from the glossary tables, by its first character."""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables
from inscribe.dates import cycle, eras
from inscribe.dates.lookalikes import cycle_lookalikes


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


Vocabulary = dict[str, tuple[Word, ...]]


@tables.compiled
def words() -> Vocabulary:
    """Return the words by their first character, the longest first."""
    found: dict[str, list[Meaning]] = {}
    for text, meaning in _entries():
        meanings = found.setdefault(text, [])
        if all(known.kind != meaning.kind for known in meanings):
            meanings.append(meaning)
    by_first: dict[str, list[Word]] = {}
    for text, meanings in found.items():
        by_first.setdefault(text[0], []).append(Word(text, tuple(meanings)))
    for group in by_first.values():
        group.sort(key=lambda word: -len(word.text))
    return {first: tuple(group) for first, group in by_first.items()}


def _entries() -> list[tuple[str, Meaning]]:
    return [*_eras(), *_cycle(), *_months(), *_days(), *_others()]


def _meaning(kind: str, value: str, kana: str, romaji: str) -> Meaning:
    """Return a meaning whose cell of letters may hold several readings, the usual one first."""
    first, *others = romaji.split("; ")
    return Meaning(kind, value, kana, first, tuple(others))


def _eras() -> list[tuple[str, Meaning]]:
    known = eras.by_name()
    return [(name, Meaning("era", name, era.kana, era.romaji)) for name, era in known.items()]


def _cycle() -> list[tuple[str, Meaning]]:
    found = []
    for sign in cycle.signs().values():
        main = Meaning(sign.kind, sign.sign, sign.kun, sign.kun_romaji)
        found += [(text, main) for text in (sign.sign, *sign.forms)]
        found += [(text, _other_writing(sign)) for text in sign.other]
        literary = Meaning(f"literary_{sign.kind}", sign.sign, sign.kun, sign.kun_romaji)
        found += [(text, literary) for text in sign.literary]
        found.append((sign.kun, Meaning(f"kana_{sign.kind}", sign.sign, sign.kun, sign.kun_romaji)))
    alike = Meaning("cycle_like", "", "", "")
    return found + [(sign, alike) for sign in sorted(cycle_lookalikes())]


def _other_writing(sign: cycle.CycleSign) -> Meaning:
    kind = "kana_stem" if sign.kind == "stem" else "animal"
    return Meaning(kind, sign.sign, sign.kun, sign.kun_romaji)


def _months() -> list[tuple[str, Meaning]]:
    columns = ("name", "month", "kana", "romaji")
    return [
        (name, _meaning("month", month, kana, romaji))
        for (name, month, kana, romaji), _ in tables.rows("month_names", columns)
    ]


def _days() -> list[tuple[str, Meaning]]:
    found = []
    for cells, _ in tables.rows("day_words", ("word", "kind", "days", "kana", "romaji")):
        word, kind, days, kana, romaji = cells
        found.append((word, _meaning(kind, days, kana, romaji)))
    for cells, _ in tables.rows("festivals", ("name", "month", "day", "kana", "romaji")):
        name, month, day, kana, romaji = cells
        found.append((name, _meaning("festival", f"{month}-{day}", kana, romaji)))
    for cells, _ in tables.rows("solar_terms", ("term", "first", "last", "kana", "romaji")):
        term, first, last, kana, romaji = cells
        found.append((term, _meaning("term", f"{first} {last}", kana, romaji)))
    return found


def _others() -> list[tuple[str, Meaning]]:
    columns = ("word", "kind", "value", "kana", "romaji")
    return [
        (word, _meaning(kind, value, kana, romaji))
        for (word, kind, value, kana, romaji), _ in tables.rows("date_words", columns)
    ]
