"""What a character is, apart from how it is written: strokes, readings, senses, name.

The readings are those of KANJIDIC2; the table is large and loaded only when asked for.

>>> readings("舩").on, readings("船").kun
(('セン',), ('ふね', 'ふな-'))
>>> kana_of("𛂞"), parent_of("𛂞"), kana_of("花")
('は', '八', None)
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.errors import InputError, Place
from inscribe.forms.steps import kana_values, steps
from inscribe.scripts import hiragana

_LEAST_COMMON = 9999
_FEW = 20  # characters are searched for one by one; for more, the whole table is read


class Readings(NamedTuple):
    """The readings of a kanji, the usual ones first.

    In ``kun`` a full stop parts off what is usually written in kana after the kanji, and a hyphen
    stands where something else is joined on.
    """

    on: tuple[str, ...] = ()  # katakana
    kun: tuple[str, ...] = ()  # hiragana
    names: tuple[str, ...] = ()  # hiragana; in names of people and places


class Character(NamedTuple):
    """One character as the table has it; ``strokes`` begins with the usual count."""

    char: str
    strokes: tuple[int, ...] = ()
    readings: Readings = Readings()
    senses: tuple[str, ...] = ()  # English
    rank: int | None = None  # by frequency in newspapers


def readings(char: str) -> Readings:
    """Return the readings of a kanji, or those of its current form where it has none of its own.

    A character that the table lacks has no readings.
    """
    own = character(char).readings
    if own != Readings():
        return own
    step = steps().get(char)
    return character(step.after).readings if step and step.after != char else own


@tables.cached()
def character(char: str) -> Character:
    """Return what the table says about a kanji; only the character itself if nothing."""
    few = next(_asked_for()) < _FEW
    row = _table().first_about(char) if few else _row(char)
    return _read(row) if row else Character(char)


def kana_of(sign: str) -> str | None:
    """Return the ordinary kana of a hentaigana or archaic kana, or None for any other sign."""
    values = kana_values().get(sign)
    return values[0] if values else None


def parent_of(sign: str) -> str | None:
    """Return the kanji a hentaigana was written from, or None."""
    return _parents().get(sign) or None


def sounds_of(kanji: str) -> tuple[str, ...]:
    """Return the kana a kanji is written for where only its sound counts (man'yogana).

    >>> sounds_of("乃"), sounds_of("作")
    (('の',), ('さ',))
    """
    return _sounds().get(kanji, ())


def hentaigana_from(kanji: str) -> tuple[str, ...]:
    """Return the hentaigana that were written from a kanji."""
    return _hentaigana().get(kanji, ())


def hentaigana_for(kana: str) -> tuple[str, ...]:
    """Return the hentaigana that may be read as a kana."""
    return _hentaigana().get(kana, ())


def with_strokes(fewest: int, most: int) -> tuple[str, ...]:
    """Return the kanji of so many strokes by the usual count, the common ones first."""
    found = [
        (int(row["rank"] or _LEAST_COMMON), row["written"])
        for row in _kanji()
        if fewest <= int(tables.listed(row["strokes"])[0]) <= most
    ]
    return tuple(char for _, char in sorted(found))


def with_reading(kana: str) -> tuple[str, ...]:
    """Return the kanji of a reading, given in either kana, the common ones first.

    On, kun (with or without what is written in kana after the kanji) and name readings count, in
    that order of weight.
    """
    sought = hiragana(kana)
    found: list[tuple[int, int, str]] = []
    for row in _kanji():
        if kana in row["on"] + row["kun"] + row["names"] or _is_near(sought, row):
            weights = [weight for weight, reading in _spoken(row) if reading == sought]
            if weights:
                found.append((min(weights), int(row["rank"] or _LEAST_COMMON), row["written"]))
    return tuple(char for _, _, char in sorted(found))


def code_point(text: str) -> str:
    """Return the character that a code point such as U+8229 names.

    Raises:
        InputError: there is no such character.
    """
    try:
        code = int(text[2:], 16)
        if not 0xD800 <= code <= 0xDFFF:
            return chr(code)
    except (ValueError, OverflowError):
        pass
    raise InputError(f"{text} is no code point", Place(), "write it as U+8229, up to U+10FFFF")


def _is_near(sought: str, row: tables.Row) -> bool:
    """Whether a reading can be in the row, before its cells are taken apart."""
    return sought[:1] in hiragana(row["on"] + row["kun"] + row["names"])


def _spoken(row: tables.Row) -> Iterator[tuple[int, str]]:
    """Yield each reading in hiragana with its weight: 0 whole, 1 without its kana, 2 in names."""
    for reading in (*tables.listed(row["on"]), *tables.listed(row["kun"])):
        bare = hiragana(reading.replace("-", ""))
        yield 0, bare.replace(".", "")
        yield 1, bare.partition(".")[0]
    for reading in tables.listed(row["names"]):
        yield 2, hiragana(reading)


@tables.cached()
def _asked_for() -> Iterator[int]:
    """Return a counter of the characters asked for since the tables were read."""
    return itertools.count()


@tables.cached()
def _table() -> tables.Search:
    return tables.Search("characters")


@tables.cached()
def _rows() -> tables.Rows:
    return tables.Rows("characters")


def _row(char: str) -> tables.Row | None:
    return next((row for row in _rows().about(char) if row["written"] == char), None)


def _kanji() -> Iterator[tables.Row]:
    """Yield the row of each kanji once, the user's first."""
    seen: set[str] = set()
    for row in tables.rows("characters"):
        if row["written"] not in seen:
            seen.add(row["written"])
            yield row


@tables.cached()
def _parents() -> dict[str, str]:
    found: dict[str, str] = {}
    for row in tables.rows("hentaigana"):
        found.setdefault(row["written"], row["parent"])
    return found


@tables.cached()
def _hentaigana() -> dict[str, tuple[str, ...]]:
    """Return the hentaigana by the kana they may be read as and the kanji they come from."""
    found: dict[str, tuple[str, ...]] = {}
    for sign, values in kana_values().items():
        for source in (*values, _parents().get(sign, "")):
            found[source] = (*found.get(source, ()), sign)
    return found


@tables.cached()
def _sounds() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("manyogana"):
        found[row["written"]] = (*found.get(row["written"], ()), row["kana"])
    return found


def _read(row: tables.Row) -> Character:
    cells = (tables.listed(row[column]) for column in ("on", "kun", "names"))
    return Character(
        row["written"],
        tuple(map(int, tables.listed(row["strokes"]))),
        Readings(*cells),
        tables.listed(row["gloss"]),
        int(row["rank"]) if row["rank"] else None,
    )
