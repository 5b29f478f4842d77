"""How likely a word is in a signature: of which class, and among the words of its class.

>>> chances = word_chances()
>>> chances["住"]["residence"] > chances["住居"]["residence"]
True
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from itertools import chain

from inscribe import tables
from inscribe.dates import calendar
from inscribe.dates.calendar import by_name, of_year
from inscribe.dates.written import as_kanji
from inscribe.reading.words import compounds_of, lexicon

_NO_WORDS = frozenset(
    {"class", "surname", "first", "last", "art_first", "art_last", "art_stem", "common_stem"}
    | {"art_ending", "common_ending"}
)
_AFTER = "after "  # begins the name of what is likelier after a class
# The classes by which words are known inside a formula or a date (see signature_date_order.tsv).
INSIDE = {
    "age>number": ("age>bare_number",),
    "closer:model": ("model>closer",),
    "closer:patron": ("patron>closer",),
    "date>branch": ("date>year_branch",),
    "date>cycle": ("date>year_cycle",),
    "honorific": ("patron>honorific", "purpose>honorific"),
    "model_subject": ("model>subject",),
    "name": ("patron>name", "purpose>name", "model>name"),
    "object": ("patron>of",),
    "opener:model": ("model>opener",),
    "opener:patron": ("patron>opener",),
    "opener:purpose": ("purpose>opener",),
    "patron": ("patron>person", "purpose>person"),
    "surname": ("patron>surname", "purpose>surname", "model>surname"),
}
_FIRST_YEAR, _LAST_YEAR = 1500, 1912  # the years in which nearly all signed fittings were made
_MOST_MADE = 1780  # and after which most dated ones were
_OF_DATES = {
    "age_before": "age>before",
    "age_after": "age>after",
    "season": "date>season",
    "year": "date>year",
}
_COMPOUNDED = ("generation", "heading", "relation")  # classes of which no table lists every word
_MOST_COUNTED = 20  # generations
_SIGNING = 4.0  # blades, and fittings after them, were by custom dated in months 2 and 8
# How a year's sexagenary sign stands beside its number; from memory.
_SHAPES_OF_YEARS = {
    "年{pair}": 45.0,
    "歳{pair}": 4.0,
    "{pair}年": 30.0,
    "{pair}歳": 10.0,
    "{pair}": 12.0,
    "年{animal}": 8.0,
    "{animal}年": 3.0,
    "{animal}": 2.0,
}
_WITHOUT_NUMBER = {"{pair}": 8.0, "{pair}年": 6.0, "{pair}歳": 2.0}  # after the era's name
_LONGEST_ERA = 35

Weights = dict[str, dict[str, float]]


@tables.cached()
def weights() -> Weights:
    """Return the weights of the table: words by class."""
    found: Weights = defaultdict(dict)
    for row in tables.rows("signature_chances"):
        for word in tables.listed(row["written"]):
            found[row["class"]].setdefault(word, float(row["weight"]))
    return dict(found)


@tables.cached()
def word_chances() -> dict[str, dict[str, float]]:
    """Return the chance of each word within each class it can be of."""
    by_class: dict[str, dict[str, float]] = defaultdict(dict)
    for kind, word in _listed():
        own = weights().get(kind, {})
        by_class[kind].setdefault(word, own.get(word, own.get("*", 1.0)))
    for kind, own in weights().items():
        if kind not in _NO_WORDS and not kind.startswith(_AFTER):
            by_class[kind] |= {word: weight for word, weight in own.items() if word != "*"}
    for kind, counted in (*_counted(), *_written_together(by_class)):
        by_class[kind] |= counted
    for name in _names_of_signing_months() & by_class["date>month_name"].keys():
        by_class["date>month_name"][name] *= _SIGNING
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for kind, words in by_class.items():
        total = sum(words.values())
        for word, each in words.items():
            found[word][kind] = each / total
    return dict(found)


@tables.cached()
def likelier_after() -> Weights:
    """Return by how much a class is likelier after another than anywhere, by the class before."""
    return {
        kind.removeprefix(_AFTER): own for kind, own in weights().items() if kind.startswith(_AFTER)
    }


def _written_together(by_class: Weights) -> Iterator[tuple[str, dict[str, float]]]:
    """Yield the towns of provinces (雲州松江) and their governors (和泉守), with weights."""
    towns, governors = dict[str, float](), dict[str, float]()
    of_province: dict[str, list[str]] = {}
    for row in tables.rows("city_provinces"):
        of_province.setdefault(row["province"], []).extend(tables.listed(row["cities"]))
    places = by_class["place"]
    for row in tables.rows("provinces"):
        written, kind = row["written"], row["kind"]
        lying = [of_province.get(province, ()) for province in tables.listed(row["province"])]
        cities = {each: by_class["city"].get(each, 1.0) for each in chain(*lying)}
        for form in (written, f"{written}国") if kind == "province" else (written,):
            share = places.get(form, 1.0) / (sum(cities.values()) or 1.0)
            towns |= {form + city: weight * share for city, weight in cities.items()}
        if kind == "province":
            for office, weight in by_class["office:of_province"].items():
                governors[written + office] = weight
    yield "city:in_province", towns
    by_class["office:of_province"].clear()
    yield "office:of_province", governors


def _names_of_signing_months() -> set[str]:
    return {row["written"] for row in tables.rows("month_names") if row["month"] in ("2", "8")}


def _listed() -> Iterator[tuple[str, str]]:
    """Yield class and writing of every word that a glossary table lists."""
    for words in lexicon().values():
        for same in words.values():
            for word in same:
                kind = f"{word.kind}:{word.family}" if word.family else word.kind
                ends = kind == "verb" and word.text.endswith("之")
                yield ("verb:with_object" if ends else kind), word.text
    for kind in _COMPOUNDED:
        for written in compounds_of(kind, _MOST_COUNTED):
            yield kind, written
    for row in tables.rows("day_words"):
        if row["kind"] == "auspicious":
            yield "date>auspicious", row["written"]
    for row in tables.rows("date_words"):
        if row["kind"] in _OF_DATES:
            yield _OF_DATES[row["kind"]], row["written"]
    for row in tables.rows("month_names"):
        yield "date>month_name", row["written"]


def _counted() -> Iterator[tuple[str, dict[str, float]]]:
    """Yield the classes whose weights follow from the calendar."""
    yield "date>era", {name: weight for name in by_name() if (weight := _era_weight(name))}
    years = {as_kanji(n): 1.0 for n in range(2, _LONGEST_ERA)}
    yield "date>year_number", years | {"元": 1.0}
    yield from _years_written()
    yield "date>cycle", {calendar.pair(n): 1.0 for n in range(60)}
    months = {as_kanji(n): _SIGNING if n in (2, 8) else 1.0 for n in range(1, 13)}
    yield "date>month_number", months | {"正": 1.0}
    yield "date>season_month", dict(_months_in_season(months | {"正": 1.0}))
    yield "date>month", {"月": 1.0}
    yield "date>day_number", {as_kanji(n): 1.0 for n in range(1, 31)}
    yield "date>day", {"日": 1.0}
    yield "age>number", {as_kanji(n): 1.0 / (1 + abs(n - 62) / 15) for n in range(12, 100)}


def _months_in_season(months: Mapping[str, float]) -> Iterator[tuple[str, float]]:
    """Yield the seasons each before the number of one of its months (秋八)."""
    for row in tables.rows("date_words"):
        if row["kind"] == "season" and len(row["written"]) == 1:
            first, last = map(int, row["value"].split("-"))
            for month in range(first, last + 1):
                yield row["written"] + as_kanji(month), months[as_kanji(month)]
    yield "春正", months["正"]


def _era_weight(name: str) -> float:
    era = by_name()[name]
    return sum(map(_made_in, range(max(era.first, _FIRST_YEAR), min(era.last, _LAST_YEAR))))


def _made_in(year: int) -> float:
    """Return how many signed fittings there are of a year, relative to others."""
    return 6.0 if year >= _MOST_MADE else 1.0 if year >= 1600 else 0.3


def _years_written() -> Iterator[tuple[str, dict[str, float]]]:
    """Yield the years that there were, written by era and number, and with their cycle or animal.

    Era, number and sexagenary year determine each other, so they are words of one piece.
    """
    plain, full = dict[str, float](), dict[str, float]()
    for year in range(_FIRST_YEAR, _LAST_YEAR):
        pair = calendar.pair((year - 4) % 60)
        for era, number in of_year(year):
            written = era.name + ("元" if number == 1 else as_kanji(number))
            plain[written] = _made_in(year)
            for shape, share in _SHAPES_OF_YEARS.items():
                whole = written + shape.format(pair=pair, animal=pair[1])
                full[whole] = share * _made_in(year)
            for shape, share in _WITHOUT_NUMBER.items():
                full[era.name + shape.format(pair=pair)] = share * _made_in(year)
    yield "date>era_year", plain
    yield "date>full_year", full
