"""Ranked readings of a name: never one reading without its rank and its reason.

Which reading a maker used is known only for known makers. What can be said of any other name is
how its characters are read in names: in made names of two characters by name readings (綾郷
Ayasato) or by on-readings (萩珉 Shūmin), in studio names by on-readings before 斎, 軒, 堂 (椋雲斎
Ryōunsai), in everyday names before 兵衛, 五郎, 助 (清兵衛 Seibee). The user's own list, a table
``names.tsv`` (written, kana, kind, note) in a glossary folder, always comes first, and so do the
names of the user's own persons (``people.tsv``) and the readings that were settled in records
(``settled``).

>>> [reading.romaji for reading in readings("綾郷")][:1]
['Ayasato']
>>> readings("椋雲斎", "art")[0].romaji, readings("源五郎")[0].romaji
('Ryōunsai', 'Gengorō')
"""

from __future__ import annotations

from collections.abc import Iterable

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading.names.dictionary import known
from inscribe.reading.names.elements import Position
from inscribe.reading.names.families import (
    FROM_DICTIONARY,
    composed_readings,
    dictionary_readings,
    listed_readings,
    surname_readings,
    with_dictionary,
)
from inscribe.reading.names.lists import place_names, surnames
from inscribe.reading.names.made import ending_of, made_readings
from inscribe.reading.names.model import (
    MOST,
    NameKind,
    NameReading,
    element,
    ranked,
    romaji,
)
from inscribe.reading.names.settled import settled_readings
from inscribe.reading.names.sounds import sounded
from inscribe.reading.spelling import hiragana

__all__ = ["MOST", "NameKind", "NameReading", "own_names", "readings"]

_PROVINCE_SIGN = "州"
_OWN_LIST = 100.0
_CHINESE_ENDS = frozenset("府陽奥")  # 越府, 会陽, 東奥: a province or town by its sound
_PLACES: tuple[Position, Position] = ("first", "last")


def _sort(written: str) -> str:
    """Return what sort of name one is whose sort nobody has said."""
    ending = ending_of(written)
    return "surname" if surnames(written) else ending.kind if ending else "given"


def own_names() -> dict[str, tuple[NameReading, ...]]:
    """Return the names that are settled in records or in the user's lists, with their readings."""
    listed = _own_list()
    if not settled_readings():
        return listed
    settled = {name: (*found, *listed.get(name, ())) for name, found in _settled().items()}
    return listed | settled


@tables.cached()
def _settled() -> dict[str, tuple[NameReading, ...]]:
    """Return the names that were settled in records, with their readings."""
    return {
        written: tuple(
            NameReading(kana, romaji(kana), _OWN_LIST, why, _sort(written)) for kana, why in found
        )
        for written, found in settled_readings().items()
    }


@tables.cached()
def _own_list() -> dict[str, tuple[NameReading, ...]]:
    """Return the names of the user's own lists (``names.tsv``, ``people.tsv``), with readings."""
    found: dict[str, tuple[NameReading, ...]] = {}
    for row in tables.rows("names"):
        written, kana, note = normalise_text(row["written"]).text, row["kana"], row["note"]
        reason = f"from your own list of names{f': {note}' if note else ''}"
        reading = NameReading(kana, romaji(kana), _OWN_LIST, reason, row["kind"] or "given")
        found[written] = (*found.get(written, ()), reading)
    if tables.has_own("people"):
        from inscribe.reading.names.people import names_of_people

        for written, kana, why, kind in names_of_people():
            reading = NameReading(kana, romaji(kana), _OWN_LIST, why, kind)
            found[written] = (*found.get(written, ()), reading)
    return found


def readings(name: str, kind: NameKind = "auto") -> tuple[NameReading, ...]:
    """Return the readings of a name, best first, each with its weight and its reason.

    ``name`` is in current forms; ``kind`` says what sort of name it is where that is known. A
    sign that cannot be read (□) stays so. Empty only for an empty name.

    >>> from inscribe import name_readings
    >>> [reading.romaji for reading in name_readings("嶺暁")[:2]]
    ['Reigyō', 'Mineaki']
    """
    if not name:
        return ()
    own = own_names().get(name, ())
    if kind == "surname":
        found = surname_readings(name)
    elif kind == "place":
        found = _place_readings(name)
    elif kind == "auto":
        found = ranked([*made_readings(name), *surname_readings(name, composed=len(name) == 2)])
    else:
        found = with_dictionary(made_readings(name, kind), known(name).given)
    return _distinct((*own, *found))[:MOST]


def _distinct(found: Iterable[NameReading]) -> tuple[NameReading, ...]:
    seen: dict[str, NameReading] = {}
    for reading in found:
        seen.setdefault(reading.romaji, reading)
    return tuple(seen.values())


def _place_readings(name: str) -> list[NameReading]:
    found = listed_readings(place_names(name), "place")
    found = found or _by_sound(name)
    of_family = [kana for kana, _ in surnames(name)[:1]]  # 柳生 Yagyū: families are named after it
    in_dictionary = list(known(name).place)
    if len(in_dictionary) > 1:
        usual = of_family or _as_a_word(name)
        in_dictionary.sort(key=lambda kana: kana not in usual)
    found = found or dictionary_readings(tuple(in_dictionary), "place", 2 * FROM_DICTIONARY)
    if len(name) == 2 and name[1] == _PROVINCE_SIGN and not found:
        head = next((c.kana for c in element(name[0], "first") if c.is_on), name[0])
        kana = f"{head}しゅう"
        reason = f"{name}, a province by one sign"
        return [NameReading(kana, romaji(kana), 0.2, reason, "place")]
    return found or surname_readings(name, composed=False) or composed_readings(name, "place")


def _as_a_word(name: str) -> list[str]:
    """Return how UniDic reads what is one word: 新橋 Shinbashi, of the three ENAMDICT has."""
    from inscribe.reading.mecab import unidic_words

    words = unidic_words(name)
    return [hiragana(words[0].kana)] if len(words) == 1 and words[0].known else []


def _by_sound(name: str) -> list[NameReading]:
    """Return the reading of a place named in the Chinese manner (越府, 会陽, 東奥), else none."""
    if len(name) != 2 or name[1] not in _CHINESE_ENDS:
        return []
    head, tail = (
        next((c for c in element(sign, place) if c.is_on), None)
        for sign, place in zip(name, _PLACES, strict=True)
    )
    if head is None or tail is None:
        return []
    kana, _ = sounded(head, tail)[0]
    reason = f"{name}, a place named in the Chinese manner"
    return [NameReading(kana, romaji(kana), 2 * FROM_DICTIONARY, reason, "place")]
