"""How likely a word is in a signature: of which class, and among the words of its class.

>>> chances = word_chances()
>>> chances["住"]["residence"] > chances["住居"]["residence"]
True
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator

from inscribe import tables
from inscribe.dates import cycle
from inscribe.dates.eras import by_name
from inscribe.errors import Place, TableError
from inscribe.reading.signature_words import lexicon

_COLUMNS = ("class", "written", "weight")
_PARTS_OF_NAMES = ("class", "first", "last", "art_first", "art_last", "art_stem", "common_stem")
_FIRST_YEAR, _LAST_YEAR = 1500, 1912  # the years in which nearly all signed fittings were made
_MOST_MADE = 1780  # and after which most dated ones were
_OF_DATES = {
    "age_before": "age>before",
    "age_after": "age>after",
    "season": "date>season",
    "year": "date>year",
}
_SIGNING = 4.0  # blades, and fittings after them, were by custom dated in months 2 and 8
_NUMERALS = "〇一二三四五六七八九"
_LONGEST_ERA = 35

Weights = dict[str, dict[str, float]]


@tables.compiled
def weights() -> Weights:
    """Return the weights of the table: words by class.

    Raises:
        TableError: a weight is not a positive number.
    """
    found: Weights = defaultdict(dict)
    for (kind, words, cell), place in tables.rows("signature_chances", _COLUMNS):
        for word in words.split():
            found[kind].setdefault(word, _weight(cell, place))
    return dict(found)


def _weight(cell: str, place: Place) -> float:
    try:
        value = float(cell)
    except ValueError:
        value = 0.0
    if not value > 0 or math.isinf(value):
        raise TableError("the weight is not a positive number", place)
    return value


@tables.compiled
def word_chances() -> dict[str, dict[str, float]]:
    """Return the chance of each word within each class it can be of."""
    by_class: dict[str, dict[str, float]] = defaultdict(dict)
    for kind, word in _listed():
        own = weights().get(kind, {})
        by_class[kind].setdefault(word, own.get(word, own.get("*", 1.0)))
    for kind, own in weights().items():
        if kind not in _PARTS_OF_NAMES:
            by_class[kind] |= {word: weight for word, weight in own.items() if word != "*"}
    for kind, counted in _counted():
        by_class[kind] |= counted
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for kind, words in by_class.items():
        total = sum(words.values())
        for word, weight in words.items():
            found[word][kind] = weight / total
    return dict(found)


def _listed() -> Iterator[tuple[str, str]]:
    """Yield class and writing of every word that a glossary table lists."""
    for words in lexicon().values():
        for same in words.values():
            for word in same:
                yield (f"{word.kind}:{word.family}" if word.family else word.kind), word.text
    for (text, kind, *_), _ in tables.rows("day_words", ("word", "kind", "days", "kana", "romaji")):
        if kind == "auspicious":
            yield "date>auspicious", text
    for (text, kind, *_), _ in tables.rows(
        "date_words", ("word", "kind", "value", "kana", "romaji")
    ):
        if kind in _OF_DATES:
            yield _OF_DATES[kind], text
    for (text, *_), _ in tables.rows("month_names", ("name", "month", "kana", "romaji")):
        yield "date>month_name", text


def _counted() -> Iterator[tuple[str, dict[str, float]]]:
    """Yield the classes whose weights follow from the calendar."""
    yield "date>era", {name: weight for name in by_name() if (weight := _era_weight(name))}
    years = {numeral(n): 1.0 / (4 + n) for n in range(2, _LONGEST_ERA)}
    yield "date>year_number", years | {"元": 1.0 / 5}
    yield "date>cycle", {cycle.pair(n): 1.0 for n in range(60)}
    months = {numeral(n): _SIGNING if n in (2, 8) else 1.0 for n in range(1, 13)}
    yield "date>month_number", months | {"正": 1.0}
    yield "date>month", {"月": 1.0}
    yield "date>day_number", {numeral(n): 1.0 for n in range(1, 31)}
    yield "date>day", {"日": 1.0}
    yield "age>number", {numeral(n): 1.0 / (1 + abs(n - 62) / 15) for n in range(12, 100)}


def _era_weight(name: str) -> float:
    era = by_name()[name]
    years = range(max(era.first, _FIRST_YEAR), min(era.last, _LAST_YEAR))
    return sum(6.0 if year >= _MOST_MADE else 1.0 if year >= 1600 else 0.3 for year in years)


def numeral(number: int) -> str:
    """Return a number below 100 as dates write it.

    >>> numeral(6), numeral(10), numeral(28)
    ('六', '十', '二十八')
    """
    tens, ones = divmod(number, 10)
    head = "" if tens == 0 else "十" if tens == 1 else f"{_NUMERALS[tens]}十"
    return head + (_NUMERALS[ones] if ones else "")
