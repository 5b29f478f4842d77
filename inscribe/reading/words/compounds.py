"""Words of signatures made of parts: 再刻 of 再 and 刻, 大炊助 of an office and its rank.

``signature_parts.tsv`` holds the parts by what they are, ``signature_compounds.tsv`` says what may
be put together, what it becomes and how it is read; so each part is known with all others of its
sort.

>>> [(word.kind, word.kana) for word in compounds("再刻")]
[('verb', 'さいこく')]
>>> compounds("大炊助")[0].kana, compounds("十七枚")[0].kana
('おおい の すけ', 'じゅうななまい')
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from itertools import product
from typing import NamedTuple

from inscribe import tables
from inscribe.dates.written import as_kanji, value_of
from inscribe.reading.words.conjugating import attributive, causative, continuative
from inscribe.reading.words.counting import counted, said
from inscribe.reading.words.lexical import (
    SignatureWord,
    cost_by_length,
    without_marks_of_repetition,
)

NUMBER = "number"
_NUMERALS = "一二三四五六七八九十百千廿卅"
_LARGEST = 9999
_SLOT = re.compile(r"\{(\d)([*~!^]?)\}|([^{}]+|\{\})")
# {0*} is a part's native word, {0~} what another verb follows (hori-), {0!} what one has done, {0^}
# what stands before a noun.
_NATIVE: dict[str, Callable[[str], str]] = {
    "*": str,
    "~": continuative,
    "!": causative,
    "^": attributive,
}
_JOIN = "+"  # two readings that change where they meet
_SHORTENING = frozenset("かきくけこさしすせそたちつてとはひふへほ")
_TO_P = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))


class CompoundPart(NamedTuple):
    """A part of compounds: its writing, its reading there, its native word, its number."""

    written: str
    kana: str
    native: str = ""
    number: int = 0
    particle: str = ""  # before it, where it is a verb in Japanese order: ヲ写ス


class CompoundRule(NamedTuple):
    """What may be put together: the sorts of its parts in order, and what they become."""

    sorts: tuple[str, ...]
    kind: str
    family: str
    kana: tuple[str, ...]  # patterns, {0} being the first part's reading
    with_object: str  # the pattern of the native words
    gloss: str
    cost: float


def joined(first: str, then: str) -> str:
    """Return two Sino-Japanese readings as one word, sounds changed where they meet.

    >>> joined("べつ", "さく"), joined("きん", "ひつ"), joined("そく", "こく")
    ('べっさく', 'きんぴつ', 'そっこく')
    """
    if first[-1] in "つち" and len(first) > 1 and then[0] in _SHORTENING:
        return f"{first[:-1]}っ{_TO_P.get(then[0], then[0])}{then[1:]}"
    if first[-1] == "く" and len(first) > 1 and then[0] in "かきくけこ":
        return f"{first[:-1]}っ{then}"
    if first[-1] == "ん" and then[0] in _TO_P:
        return f"{first}{_TO_P[then[0]]}{then[1:]}"
    return first + then


@tables.cached(50_000)
def compounds(text: str) -> tuple[SignatureWord, ...]:
    """Return the words that a text is when it is put together of parts, the likelier first."""
    if len(text) < 2:  # a sign alone is no compound
        return ()
    found: dict[tuple[str, str], SignatureWord] = {}
    for compound, ends in _beginning_with().get(text[0], ()):
        if text[-1] not in ends:
            continue
        for parts in _divisions(text, compound.sorts):
            if word := _word(text, compound, parts):
                found.setdefault((word.kind, word.family), word)
    return tuple(found.values())


def compounds_of(kind: str, most: int) -> Iterator[str]:
    """Yield every writing of a class that is put together of parts, numbers up to ``most``.

    >>> "五代目" in set(compounds_of("generation", 20))
    True
    """
    numbers = [as_kanji(number) for number in range(1, most + 1)]
    for rule in _compounds():
        if rule.kind == kind:
            parts = (numbers if sort == NUMBER else _writings(sort) for sort in rule.sorts)
            yield from map("".join, product(*parts))


def _word(
    text: str, compound: CompoundRule, parts: tuple[CompoundPart, ...]
) -> SignatureWord | None:
    """Return the word; None where all its readings want native words, and a part has none."""
    native = all(part.native for part in parts)
    patterns = [p for p in compound.kana if native or not any(mark in p for mark in _NATIVE)]
    if not patterns:
        return None
    first, *others = dict.fromkeys(_filled(pattern, parts) for pattern in patterns)
    object_ = compound.with_object if native else ""
    with_object = _filled(object_, tuple(p._replace(kana=p.native) for p in parts))
    if compound.kind == "opener":
        with_object = first
    cost = cost_by_length(text) + compound.cost
    glossed = compound.gloss
    return SignatureWord(
        text, compound.kind, first, with_object, tuple(others), glossed, compound.family, cost
    )


def _filled(pattern: str, parts: tuple[CompoundPart, ...]) -> str:
    """Return a reading by its pattern."""
    kana, waiting, before = "", "", parts[0]
    for slot, native, between in _SLOT.findall(pattern):
        if not slot:
            waiting = between
            kana += "" if between == _JOIN else between
            continue
        part = parts[int(slot)]
        spoken = said(part.number) if part.number else part.kana
        if native:
            spoken = _NATIVE[native](part.native)
        if waiting == _JOIN and before.number:
            kana = kana.removesuffix(said(before.number)) + counted(before.number, part.kana)
        elif waiting == _JOIN:
            head = kana.removesuffix(before.kana)
            kana = head + joined(before.kana, spoken)
        else:
            kana += spoken
        waiting, before = "", part
    return kana


def _divisions(text: str, sorts: tuple[str, ...]) -> Iterator[tuple[CompoundPart, ...]]:
    """Yield the ways to divide a text into parts of the sorts named."""
    if not sorts:
        if not text:
            yield ()
        return
    for end in range(1, len(text) - len(sorts) + 2):
        for part in _parts_of(sorts[0], text[:end]):
            for rest in _divisions(text[end:], sorts[1:]):
                yield (part, *rest)


def parts_written(sort: str, text: str) -> tuple[CompoundPart, ...]:
    """Return the parts of a sort that are written so.

    >>> [part.native for part in parts_written("act", "作")]
    ['つくる']
    """
    return _parts().get(sort, {}).get(text, ())


def _parts_of(sort: str, text: str) -> tuple[CompoundPart, ...]:
    if sort != NUMBER:
        return parts_written(sort, text)
    if any(sign not in _NUMERALS for sign in text):
        return ()
    number = value_of(text)
    well_formed = number and number <= _LARGEST and (len(text) == 1 or number >= 10)
    return (CompoundPart(text, "", number=number),) if number and well_formed else ()


@tables.cached()
def _parts() -> dict[str, dict[str, tuple[CompoundPart, ...]]]:
    """Return the parts by their sort and writing."""
    found: dict[str, dict[str, tuple[CompoundPart, ...]]] = {}
    for row in tables.rows("signature_parts"):
        written = without_marks_of_repetition(row["written"])
        part = CompoundPart(written, row["kana"], row["native"], particle=row["particle"])
        for sort in tables.listed(row["sort"]):
            of_sort = found.setdefault(sort, {})
            of_sort[part.written] = (*of_sort.get(part.written, ()), part)
    return found


@tables.cached()
def _compounds() -> tuple[CompoundRule, ...]:
    return tuple(
        CompoundRule(
            tuple(row["parts"].split(" ")),
            row["class"],
            row["family"],
            tables.listed(row["pattern"]),
            row["with_object"],
            row["gloss"],
            float(row["cost"]),
        )
        for row in tables.rows("signature_compounds")
    )


@tables.cached()
def _beginning_with() -> dict[str, tuple[tuple[CompoundRule, frozenset[str]], ...]]:
    """Return the compounds that may begin with a sign, each with the signs that may end it."""
    found: dict[str, tuple[tuple[CompoundRule, frozenset[str]], ...]] = {}
    for compound in _compounds():
        ends = frozenset(part[-1] for part in _writings(compound.sorts[-1]))
        for sign in dict.fromkeys(part[0] for part in _writings(compound.sorts[0])):
            found[sign] = (*found.get(sign, ()), (compound, ends))
    return found


def _writings(sort: str) -> Iterable[str]:
    """Return how the parts of a sort are written; of numbers, their signs."""
    return _NUMERALS if sort == NUMBER else _parts().get(sort, ())
