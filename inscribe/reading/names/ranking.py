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

import itertools
import math
from collections.abc import Iterable

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading.names.dictionary import SOURCE, known
from inscribe.reading.names.elements import Choice, Position
from inscribe.reading.names.lists import Listed, place_names, surnames, surnames_from
from inscribe.reading.names.made import ending_of, made_readings
from inscribe.reading.names.model import (
    MOST,
    UNREAD,
    NameKind,
    NameReading,
    element,
    ranked,
    romaji,
)
from inscribe.reading.names.settled import settled_readings
from inscribe.reading.names.sounds import sounded

__all__ = ["MOST", "NameKind", "NameReading", "own_names", "readings"]

_OF_HOUSES = ("place", "material")  # what a tradesman's house may be named after
_PROVINCE_SIGN = "州"
_OWN_LIST = 100.0
_FROM_DICTIONARY = 0.15  # below what is counted, as the dictionary says nothing of what is usual
_MADE_FIRST = 6  # readings by the characters that stand before those of the dictionary
_CHINESE_ENDS = frozenset("府陽奥")  # 越府, 会陽, 東奥: a province or town by its sound
_PLACES: tuple[Position, Position] = ("first", "last")
_MANY_END_SO = frozenset("田野原沢井川山村本島崎坂岡瀬谷")
_FEW_FAMILIES, _LONG_KUN = 2, 3
_PAIR = 2  # signs of most surnames
_LEAST_HEAD = 0.15  # a kun heads surnames if this share of the listed ones has it


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
        found = _surname_readings(name)
    elif kind == "place":
        found = _place_readings(name)
    elif kind == "auto":
        found = ranked([*made_readings(name), *_surname_readings(name, composed=len(name) == 2)])
    else:
        found = _with_dictionary(made_readings(name, kind), known(name).given)
    return _distinct((*own, *found))[:MOST]


def _distinct(found: Iterable[NameReading]) -> tuple[NameReading, ...]:
    seen: dict[str, NameReading] = {}
    for reading in found:
        seen.setdefault(reading.romaji, reading)
    return tuple(seen.values())


def _with_dictionary(found: list[NameReading], given: tuple[str, ...]) -> list[NameReading]:
    """Return readings with those of the dictionary after them, and say which it has too."""
    if not given:
        return found
    plain = {kana.replace("|", "") for kana in given}
    told = [r._replace(reason=_also_in(r.reason)) if r.plain_kana in plain else r for r in found]
    least = min((r.score for r in found[:_MADE_FIRST]), default=_FROM_DICTIONARY)
    kind = found[0].kind if found else "given"
    further = _dictionary_readings(given, kind, min(least, _FROM_DICTIONARY))
    own = {r.plain_kana for r in found[:_MADE_FIRST]}
    new = [r for r in further if r.plain_kana not in own][: MOST - _MADE_FIRST]
    return [*told[: MOST - len(new)], *new]


def _also_in(reason: str) -> str:
    return f"{reason}; {SOURCE} has it too"


def _dictionary_readings(found: tuple[str, ...], kind: str, weight: float) -> list[NameReading]:
    """Return the readings of the dictionary of names, each half as heavy as the one before."""
    reason = f"{kind} in {SOURCE}, which does not say how usual it is"
    return [
        NameReading(kana, romaji(kana), weight / 2**rank, reason, kind)
        for rank, kana in enumerate(found, start=1)
    ]


def _surname_readings(name: str, *, composed: bool = True) -> list[NameReading]:
    in_dictionary = known(name).surname
    found = _listed_readings(surnames(name), "surname")
    if found:
        return _with_dictionary(found, in_dictionary)
    if in_dictionary:
        found = _dictionary_readings(in_dictionary, "surname", 2 * _FROM_DICTIONARY)
        plain = _by_plain_kun(name, in_dictionary) if composed else None
        found = [plain, *found] if plain else found
    elif len(name) > 1 and name[-1] == "屋" and UNREAD not in name:
        return _house_readings(name)
    elif composed:
        found = _composed_readings(name, "surname")
    return found


def _by_plain_kun(name: str, listed: tuple[str, ...]) -> NameReading | None:
    """Return a reading by kun where few families are listed, and none with the first sign's kun.

    So with plants and animals before what many families end in: 薊野 is listed as あぞうの alone.
    """
    if len(name) != 2 or name[1] not in _MANY_END_SO or len(listed) > _FEW_FAMILIES:
        return None
    plain = _composed_readings(name, "surname")[0]
    head = plain.kana.partition("|")[0]
    if len(head) < _LONG_KUN or head not in _plain_kun(name[0]):
        return None
    if any(kana.startswith(head) for kana in listed):
        return None
    reason = f"by kun, as surnames are; {SOURCE} has other readings, of few families"
    return plain._replace(score=2 * _FROM_DICTIONARY, reason=reason)


def _house_readings(name: str) -> list[NameReading]:
    """Return the readings of a tradesman's house: a family, a province or a thing, and ya."""
    from inscribe.reading.words import words_from

    stem = name[:-1]
    known = [word.kana for word in words_from(stem[0]).get(stem, ()) if word.kind in _OF_HOUSES]
    families = [r.kana for r in _listed_readings(surnames(stem), "surname")]
    places = [r.kana for r in _listed_readings(place_names(stem), "place")]
    stems = [*known, *families, *places]
    stems = stems or [r.kana for r in _composed_readings(stem, "surname")]
    reason = f"{name}, the name of a tradesman's house"
    return [
        NameReading(f"{kana}|や", romaji(f"{kana}|や"), 0.9 / 4**rank, reason, "surname")
        for rank, kana in enumerate(dict.fromkeys(stems))
    ]


def _place_readings(name: str) -> list[NameReading]:
    found = _listed_readings(place_names(name), "place")
    found = found or _by_sound(name)
    found = found or _dictionary_readings(known(name).place, "place", 2 * _FROM_DICTIONARY)
    if len(name) == 2 and name[1] == _PROVINCE_SIGN and not found:
        head = next((c.kana for c in element(name[0], "first") if c.is_on), name[0])
        kana = f"{head}しゅう"
        reason = f"{name}, a province by one sign"
        return [NameReading(kana, romaji(kana), 0.2, reason, "place")]
    return found or _surname_readings(name, composed=False) or _composed_readings(name, "place")


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
    return [NameReading(kana, romaji(kana), 2 * _FROM_DICTIONARY, reason, "place")]


def _listed_readings(known: Listed, kind: str) -> list[NameReading]:
    found = []
    for kana, cost in known:
        weight = math.exp((known[0][1] - cost) / 1000)
        reason = f"{kind} as in UniDic{'' if cost == known[0][1] else ', less usual'}"
        found.append(NameReading(kana, romaji(kana), 0.9 * weight, reason, kind))
    return found


def _composed_readings(name: str, kind: str) -> list[NameReading]:
    options = [_composing(char, i == 0, len(name)) for i, char in enumerate(name)]
    found = []
    for combination in itertools.product(*options):
        kana = "|".join(c.kana for c in combination)
        share = math.prod(c.share for c in combination)
        by_kun = "by kun, as surnames are" if kind == "surname" else "by its characters"
        if kind == "surname" and any(c.is_on for c in combination):
            by_kun = "by its characters"
        reason = f"{name} is in no list of {kind}s; read {by_kun}"
        found.append(NameReading(kana, romaji(kana), 0.2 * share, reason, kind))
    return ranked(found)


def _composing(char: str, heads: bool, signs: int) -> list[Choice]:
    """Return how a character is read in a surname; by sound in 伊奈波: 奈 has no usual kun."""
    kun = _kun_choices(char, heads)
    found = element(char, "first" if heads else "last") if signs > _PAIR else ()
    if not found or not found[0].is_on:
        return kun
    return [found[0], *(c for c in kun if c.share >= _LEAST_HEAD)][:2]


def _kun_choices(char: str, heads: bool) -> list[Choice]:
    """Return how a character is read in a surname: by kun, as it is in listed surnames first."""
    in_names = [c for c in element(char, "first" if heads else "last") if not c.is_on]
    if heads and char != UNREAD:
        listed = _listed_heads(char)
        counted = [c for c in listed if c.share >= _LEAST_HEAD]
        if counted:
            return counted[:2]
    if not in_names and char != UNREAD:
        in_names = [Choice(kana, False, 1.0, "of the dictionary") for kana in _plain_kun(char)]
    return in_names[:2] or list(element(char, "first"))[:2]


def _plain_kun(char: str) -> list[str]:
    """Return the kun readings of a character in the dictionary, without okurigana."""
    from inscribe.forms import readings as dictionary

    return [k.strip("-") for k in dictionary(char).kun if "." not in k]


def _listed_heads(char: str) -> list[Choice]:
    """Return the kun readings with which the listed surnames of a character begin."""
    kun = {choice.kana for choice in element(char, "first") if not choice.is_on}
    if not kun:
        from inscribe.forms import readings as dictionary

        kun = {k.replace(".", "").strip("-") for k in dictionary(char).kun} | set(_plain_kun(char))
    listed = [ways[0][0] for name, ways in surnames_from(char).items() if len(name) > 1]
    counts = {k: sum(w.startswith(k) for w in listed) for k in kun if k}
    total = sum(counts.values())
    found = [Choice(k, False, n / total, "of surnames") for k, n in counts.items() if n]
    return sorted(found, key=lambda choice: (-choice.share, -len(choice.kana)))
