"""Readings of a surname: by the persons who are called so, the lists, the dictionary, the signs.

What many persons of a dictionary are called leads (川田 Kawada, 23 of 29); else the reading that
UniDic has as the usual one, then those of the dictionary of names, and for a family in no list the
native readings of its signs.

>>> [reading.romaji for reading in surname_readings("川田")][:2]
['Kawada', 'Kawata']
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator

from inscribe.reading.names.dictionary import SOURCE, known
from inscribe.reading.names.elements import Choice, Position
from inscribe.reading.names.lists import (
    Listed,
    families_counted,
    place_names,
    surnames,
    surnames_from,
)
from inscribe.reading.names.model import MOST, UNREAD, NameReading, element, ranked, romaji

_OF_HOUSES = ("place", "material")  # what a tradesman's house may be named after
FROM_DICTIONARY = 0.15  # below what is counted, as the dictionary says nothing of what is usual
_COUNTED = 0.9
_LISTED_AS, _KNOWN_AS = 3.0, 1.0  # persons that a word of UniDic's, of ENAMDICT's is as good as
_MADE_FIRST = 6  # readings by the characters that stand before those of the dictionary
_MANY_END_SO = frozenset("田野原沢井川山村本島崎坂岡瀬谷")
_FEW_FAMILIES, _LONG_KUN = 2, 3
_PAIR = 2  # signs of most surnames
_HEADS = 2
_BY_BEGINNING, _BY_END, _WRITTEN_OUT = 0.3, 0.3, 0.6
_VOICED = dict(zip("はひふへほ", "ばびぶべぼ", strict=True))
_LEAST_HEAD = 0.15  # a kun heads surnames if this share of the listed ones has it


def surname_readings(name: str, *, composed: bool = True) -> list[NameReading]:
    """Return the readings of a surname, best first; ``composed``: by its signs if in no list."""
    return _by_count(name, _listed_or_composed(name, composed=composed))


def _by_count(name: str, found: list[NameReading]) -> list[NameReading]:
    """Return readings of a surname by the persons who are called so; unchanged where none is."""
    counts = families_counted(name)
    if not counts:
        return found
    whole = sum(reading.score for reading in found) or 1.0
    persons = sum(counts.values())
    as_good_as = _LISTED_AS if surnames(name) else _KNOWN_AS
    guessed = {reading.plain_kana: reading for reading in found}
    counted = []
    for kana in dict.fromkeys((*guessed, *counts)):
        reading = guessed.get(kana) or NameReading(kana, romaji(kana), 0.0, "surname", "surname")
        number, said = counts.get(kana, 0), reading.reason
        weight = (number + as_good_as * reading.score / whole) / (persons + as_good_as)
        if number:
            said = f"surname, of {number} of {persons} persons in {SOURCE}"
        counted.append(reading._replace(score=_COUNTED * weight, reason=said))
    return ranked(counted)


def _listed_or_composed(name: str, *, composed: bool) -> list[NameReading]:
    in_dictionary = known(name).surname
    found = listed_readings(surnames(name), "surname")
    if found:
        return with_dictionary(found, in_dictionary)
    if in_dictionary:
        found = dictionary_readings(in_dictionary, "surname", 2 * FROM_DICTIONARY)
        plain = _by_plain_kun(name, in_dictionary) if composed else None
        found = [plain, *found] if plain else found
    elif len(name) > 1 and name[-1] == "屋" and UNREAD not in name:
        return _house_readings(name)
    elif composed:
        found = composed_readings(name, "surname")
    return found


def _by_plain_kun(name: str, listed: tuple[str, ...]) -> NameReading | None:
    """Return a reading by kun where few families are listed, and none with the first sign's kun.

    So with plants and animals before what many families end in: 薊野 is listed as あぞうの alone.
    """
    if len(name) != 2 or name[1] not in _MANY_END_SO or len(listed) > _FEW_FAMILIES:
        return None
    plain = composed_readings(name, "surname")[0]
    head = plain.kana.partition("|")[0]
    if len(head) < _LONG_KUN or head not in _plain_kun(name[0]):
        return None
    if any(kana.startswith(head) for kana in listed):
        return None
    reason = f"by kun, as surnames are; {SOURCE} has other readings, of few families"
    return plain._replace(score=2 * FROM_DICTIONARY, reason=reason)


def _house_readings(name: str) -> list[NameReading]:
    """Return the readings of a tradesman's house: a family, a province or a thing, and ya."""
    from inscribe.reading.words import words_from

    stem = name[:-1]
    known = [word.kana for word in words_from(stem[0]).get(stem, ()) if word.kind in _OF_HOUSES]
    families = [r.kana for r in listed_readings(surnames(stem), "surname")]
    places = [r.kana for r in listed_readings(place_names(stem), "place")]
    stems = [*known, *families, *places]
    stems = stems or [r.kana for r in composed_readings(stem, "surname")]
    reason = f"{name}, the name of a tradesman's house"
    return [
        NameReading(f"{kana}|や", romaji(f"{kana}|や"), 0.9 / 4**rank, reason, "surname")
        for rank, kana in enumerate(dict.fromkeys(stems))
    ]


def listed_readings(known: Listed, kind: str) -> list[NameReading]:
    """Return the readings of a name of UniDic, by what each costs there."""
    found = []
    for kana, cost in known:
        weight = math.exp((known[0][1] - cost) / 1000)
        reason = f"{kind} as in UniDic{'' if cost == known[0][1] else ', less usual'}"
        found.append(NameReading(kana, romaji(kana), 0.9 * weight, reason, kind))
    return found


def with_dictionary(found: list[NameReading], given: tuple[str, ...]) -> list[NameReading]:
    """Return readings with those of the dictionary after them, and say which it has too."""
    if not given:
        return found
    plain = {kana.replace("|", "") for kana in given}
    told = [r._replace(reason=_also_in(r.reason)) if r.plain_kana in plain else r for r in found]
    least = min((r.score for r in found[:_MADE_FIRST]), default=FROM_DICTIONARY)
    kind = found[0].kind if found else "given"
    further = dictionary_readings(given, kind, min(least, FROM_DICTIONARY))
    own = {r.plain_kana for r in found[:_MADE_FIRST]}
    new = [r for r in further if r.plain_kana not in own][: MOST - _MADE_FIRST]
    return [*told[: MOST - len(new)], *new]


def _also_in(reason: str) -> str:
    return f"{reason}; {SOURCE} has it too"


def dictionary_readings(found: tuple[str, ...], kind: str, weight: float) -> list[NameReading]:
    """Return the readings of the dictionary of names, each half as heavy as the one before."""
    reason = f"{kind} in {SOURCE}, which does not say how usual it is"
    return [
        NameReading(kana, romaji(kana), weight / 2**rank, reason, kind)
        for rank, kana in enumerate(found, start=1)
    ]


def composed_readings(name: str, kind: str) -> list[NameReading]:
    """Return the readings of a name that is in no list: by what is known of it, by its signs."""
    by_parts = (*_by_its_beginning(name, kind), *_by_its_end(name, kind))
    return ranked([*by_parts, *_by_its_signs(name, kind)])


def _known_as(part: str, kind: str) -> list[str]:
    """Return the readings of a part of a name that is itself such a name."""
    if kind == "place":
        listed, others = place_names(part), known(part).place
    else:
        listed, others = surnames(part), known(part).surname
    return [reading.kana for reading in listed_readings(listed, kind)] or list(others)


def _by_its_end(name: str, kind: str) -> Iterator[NameReading]:
    """Yield readings of a name whose end is known, as 佐波 is in 下佐波."""
    head, tail = name[:1], name[1:]
    if len(tail) < _PAIR or UNREAD in name:
        return
    why = f"{tail} is a known {kind}; {head} by itself"
    for rank, kana in enumerate(_known_as(tail, kind)[:_HEADS]):
        for choice in _kun_choices(head, heads=True):
            weight = _BY_END * choice.share / 2**rank
            yield _composed(f"{choice.kana}|{kana}", kind, weight, why)


def _by_its_beginning(name: str, kind: str) -> Iterator[NameReading]:
    """Yield readings of a name whose beginning is known, as 伊奈 is in 伊奈波, 朝夷 in 朝夷奈.

    Where its last sign is the last sound of what is known, it but writes that sound out.
    """
    head, tail = name[:-1], name[-1]
    if len(head) < _PAIR or UNREAD in name:
        return
    why = f"{head} is a known {kind}"
    for rank, kana in enumerate(_known_as(head, kind)[:_HEADS]):
        if _is_last_sound(tail, kana):
            yield _composed(kana, kind, _WRITTEN_OUT / 2**rank, f"{why}; {tail} is its last sound")
        for choice in _ends(tail, by_sound=_is_by_sound(head, kana)):
            weight = _BY_BEGINNING * choice.share / 2**rank
            yield _composed(f"{kana}|{choice.kana}", kind, weight, f"{why}; {tail} by itself")


def is_family_written_out(name: str) -> bool:
    """Whether a name is a known family's, its last sound written once more: 朝夷奈, あさいな.

    >>> is_family_written_out("朝夷奈"), is_family_written_out("朝夷国")
    (True, False)
    """
    head, tail = name[:-1], name[-1:]
    return len(head) >= _PAIR and any(_is_last_sound(tail, k) for k in _known_as(head, "surname"))


def _is_last_sound(sign: str, kana: str) -> bool:
    return any(kana.endswith(choice.kana) for choice in element(sign, "last") if choice.is_on)


def _is_by_sound(name: str, kana: str) -> bool:
    """Whether every sign of a name stands for its one sound: 伊奈, いな."""
    places: tuple[Position, ...] = ("first", "last", "last")
    return len(name) == len(kana) and all(
        any(c.is_on and c.kana == sound for c in element(sign, place))
        for sign, sound, place in zip(name, kana, places, strict=False)
    )


def _ends(sign: str, *, by_sound: bool) -> list[Choice]:
    """Return how the last sign of a longer name is read: は within names as ば."""
    sounds = [c for c in element(sign, "last") if c.is_on and len(c.kana) == 1] if by_sound else []
    found = [c._replace(share=1.0) for c in sounds[:1]]
    found += _composing(sign, heads=False, signs=_PAIR + 1)
    voiced = [
        choice._replace(kana=_VOICED[choice.kana]) for choice in found if choice.kana in _VOICED
    ]
    return [*voiced, *(c._replace(share=c.share / 2) if c.kana in _VOICED else c for c in found)]


def _composed(kana: str, kind: str, weight: float, why: str) -> NameReading:
    return NameReading(kana, romaji(kana), weight, why, kind)


def _by_its_signs(name: str, kind: str) -> list[NameReading]:
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
    return found


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
    return sorted(found, key=lambda choice: (-choice.share, -len(choice.kana), choice.kana))
