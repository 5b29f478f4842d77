"""What a character is, apart from how it is written: strokes, readings, senses, name.

The readings are those of KANJIDIC2; the table is large and loaded only when asked for.

>>> readings("舩").on, readings("船").kun
(('セン',), ('ふね', 'ふな-'))
>>> kana_of("𛂞"), parent_of("𛂞"), kana_of("花")
('は', '八', None)
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from inscribe import tables
from inscribe.errors import InputError, Place, TableError
from inscribe.forms.steps import HENTAIGANA_COLUMNS, kana_values, steps

_COLUMNS = ("char", "strokes", "on", "kun", "names", "senses", "rank")
_LEAST_COMMON = 9999
_FEW = 20  # characters are searched for one by one; for more, the whole table is taken apart


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

    Raises:
        TableError: the row of the character cannot be used.
    """
    own = character(char).readings
    if own != Readings():
        return own
    step = steps().get(char)
    return character(step.after).readings if step and step.after != char else own


def character(char: str) -> Character:
    """Return what the table says about a kanji; only the character itself if nothing.

    Raises:
        TableError: the row of the character cannot be used.
    """
    known = _known()
    if char not in known:
        few = len(known) < _FEW
        row = _table().first_about(char) if few else _rows().get(char)
        known[char] = _read(*row) if row else Character(char)
    return known[char]


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
        (int(cells[6] or _LEAST_COMMON), char)
        for char, (cells, _) in _rows().items()
        if fewest <= int(cells[1].split(" ")[0] or 0) <= most
    ]
    return tuple(char for _, char in sorted(found))


def with_reading(kana: str) -> tuple[str, ...]:
    """Return the kanji of a reading, given in either kana, the common ones first.

    On, kun (with or without what is written in kana after the kanji) and name readings count, in
    that order of weight.
    """
    sought = _hiragana(kana)
    found: list[tuple[int, int, str]] = []
    for char, (cells, _) in _rows().items():
        if kana in cells[2] + cells[3] + cells[4] or _is_near(sought, cells):
            weights = [weight for weight, reading in _spoken(cells) if reading == sought]
            if weights:
                found.append((min(weights), int(cells[6] or _LEAST_COMMON), char))
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


def _is_near(sought: str, cells: tuple[str, ...]) -> bool:
    """Whether a reading can be among the cells, before they are taken apart."""
    return sought[:1] in _hiragana(cells[2] + cells[3] + cells[4])


def _spoken(cells: tuple[str, ...]) -> Iterator[tuple[int, str]]:
    """Yield each reading in hiragana with its weight: 0 whole, 1 without its kana, 2 in names."""
    for reading in f"{cells[2]} {cells[3]}".split():
        bare = _hiragana(reading.replace("-", ""))
        yield 0, bare.replace(".", "")
        yield 1, bare.partition(".")[0]
    for reading in cells[4].split():
        yield 2, _hiragana(reading)


def _hiragana(text: str) -> str:
    return "".join(chr(ord(char) - 0x60) if "ァ" <= char <= "ヶ" else char for char in text)


@tables.compiled
def _known() -> dict[str, Character]:
    return {}


@tables.compiled
def _table() -> tables.Search:
    return tables.Search("characters", _COLUMNS)


@tables.compiled
def _rows() -> dict[str, tables.Row]:
    found: dict[str, tables.Row] = {}
    for cells, place in tables.rows("characters", _COLUMNS):
        found.setdefault(cells[0], (cells, place))
    return found


@tables.compiled
def _parents() -> dict[str, str]:
    found: dict[str, str] = {}
    for (sign, _, parent, _), _place in tables.rows("hentaigana", HENTAIGANA_COLUMNS):
        found.setdefault(sign, parent)
    return found


@tables.compiled
def _hentaigana() -> dict[str, tuple[str, ...]]:
    """Return the hentaigana by the kana they may be read as and the kanji they come from."""
    found: dict[str, tuple[str, ...]] = {}
    for sign, values in kana_values().items():
        for source in (*values, _parents().get(sign, "")):
            found[source] = (*found.get(source, ()), sign)
    return found


@tables.compiled
def _sounds() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for (char, kana, _, _), _place in tables.rows("manyogana", ("char", "kana", "use", "source")):
        found[char] = (*found.get(char, ()), kana)
    return found


def _read(cells: tuple[str, ...], place: Place) -> Character:
    char, strokes, on, kun, names, senses, rank = cells
    try:
        return Character(
            char,
            tuple(int(count) for count in strokes.split()),
            Readings(tuple(on.split()), tuple(kun.split()), tuple(names.split())),
            tuple(sense for sense in senses.split("; ") if sense),
            int(rank) if rank else None,
        )
    except ValueError as error:
        raise TableError("strokes and rank must be numbers", place, "use digits") from error
