"""The best division of an inscription into passages, and the next best, by dynamic programming.

Every stretch between two cuts is weighed as each kind of passage; a division is worth the weights
of its stretches less the prices of its cuts and of the order its kinds stand in.
"""

from __future__ import annotations

import math
import re
from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from inscribe.reading.passages.cuts import Inner, cuts_of
from inscribe.reading.passages.days import Days
from inscribe.reading.passages.lines import chinese_weight
from inscribe.reading.passages.order import END, START, Where, order_cost
from inscribe.reading.passages.poems import poem_weight, prose_weight
from inscribe.reading.passages.roles import with_roles
from inscribe.reading.passages.sayings import are_sayings_apart
from inscribe.reading.passages.signings import A_DATE, SIGNED, Signings
from inscribe.reading.passages.stretches import (
    HOPELESS,
    CopiedStretch,
    KnownPassage,
    PassageStretch,
)
from inscribe.reading.passages.surely import are_signed_and_dated, whole_columns
from inscribe.reading.passages.titles import begins_formula, framed_weight, is_verb_there
from inscribe.reading.passages.topics import place_weight, topic_weight
from inscribe.reading.spelling import KANA, is_kanji_only
from inscribe.reading.words import InscribedText

_KEPT = 3  # divisions kept at each place and kind
_LONGEST = 90  # characters of a stretch that is weighed; a longer text is prose
_LONGEST_FRAMED = 16  # signs of a heading or a dedication
_UNWEIGHED = -4.0  # prose, where nothing else is said for a stretch
_KNOWN = 200.0
# The price of a cut up to which a sentence or a poem may begin there: the ends of columns, titles.
_BEGINS_JAPANESE = 1.7
_TAIL_OF_POEM = 8  # kanji at the end, in which there are names
_AT_DATE = 1.2  # the price of a cut at the end of a date
_SEALED = 4.0
_BARE_NAME = 3.0
_TEXTS = frozenset({"verse", "prose", "chinese", "heading", "signature"})
_COPIED = 40.0  # what it weighs that a stretch is just what is copied of a source
_OF_A_POEM = 2.0  # what it weighs more as verse, where the source is a poem
_COPIED_KINDS = frozenset({"verse", "prose", "chinese"})
_PARTICLES = frozenset("にニをヲのノ")  # 静葭之図ニ倣フ is no title
_BEGUN_INSIDE = 1.0  # a signature that begins inside a column seldom runs over its end
_SOON = 6  # signs from the beginning of a sentence in which there is kana
_SAID_APART, _ON_ITS_FACE = 8.0, 6.0  # two sayings on two faces are two passages
_APART, _FEW = 2.0, 2  # one or two signs of a saying that have columns of their own
_SEAL = re.compile("（印[^）]*）")
_SENTENCES = "sentences in Japanese"


class PassageDivision(NamedTuple):
    """The passages of a text in order, and how likely it is that the text is divided so."""

    stretches: tuple[PassageStretch, ...]
    chance: float


class _Way(NamedTuple):
    weight: float
    stretches: tuple[PassageStretch, ...]


def divisions_of(
    text: InscribedText,
    known: Sequence[KnownPassage] = (),
    copied: CopiedStretch | None = None,
    undivided: Collection[tuple[int, int]] = (),
) -> tuple[PassageDivision, ...]:
    """Return the best division of a text and those near it, the best first; never none.

    Args:
        text: the text.
        known: passages that stand, whatever else is said.
        copied: the stretch of the text that copies a source that is known.
        undivided: first and last signs of words that are settled: no passages meet in them.
    """
    plain = text.normal.text
    days = Days(plain, text.faces)
    whole = () if known or copied else whole_columns(text, days)
    if not undivided and are_signed_and_dated(whole, text):
        return (PassageDivision(with_roles(whole, plain), 1.0),)
    weigher = _Weigher(text, days, known, copied)
    prices = _prices(text, days, known, undivided)
    prices = {at: p for at, p in prices.items() if not any(w.first < at < w.end for w in whole)}
    weigher.begins = {at for at, price in prices.items() if price <= _BEGINS_JAPANESE}
    places = sorted(prices)
    ways: dict[int, dict[str, list[_Way]]] = {0: {START: [_Way(0.0, ())]}}
    for number, first in enumerate(places[:-1]):
        if first not in ways:
            continue
        for end in places[number + 1 :]:
            if end - first > _LONGEST and end - first < len(plain):
                break
            for stretch in weigher.stretches(first, end):
                _lengthen(ways, first, stretch, text, prices[first])
    return _ranked(ways.get(len(plain), {}), plain)


def _prices(
    text: InscribedText,
    days: Days,
    known: Sequence[KnownPassage],
    undivided: Collection[tuple[int, int]],
) -> dict[int, float]:
    """Return the price of each cut, without those inside what is known."""
    prices = cuts_of(text)
    for at in days.edges():
        prices[at] = min(prices.get(at, _AT_DATE), _AT_DATE)
    origin = text.normal.origin
    for first, last in undivided:
        inside = {at for at in prices if 0 < at < len(origin) and first < origin[at] <= last}
        prices = {at: price for at, price in prices.items() if at not in inside}
    for each in known:
        prices = {at: p for at, p in prices.items() if not each.first < at < each.end}
        prices |= {each.first: 0.0, each.end: 0.0}
    return prices


def _lengthen(
    ways: dict[int, dict[str, list[_Way]]],
    first: int,
    stretch: PassageStretch,
    text: InscribedText,
    price: float,
) -> None:
    kind = f"signature:{stretch.role}" if stretch.role else stretch.kind
    where: Where = "face" if first in text.faces else "inside"
    if where == "inside" and (first in text.breaks or not first):
        where = "column"
    there = ways.setdefault(stretch.end, {}).setdefault(kind, [])
    for before, kept in ways[first].items():
        step = order_cost(before, kind, where) + price
        for way in kept:
            weight = way.weight + stretch.weight - step - _after_bare_name(way.stretches, stretch)
            if kind == before == "chinese" and where == "face":
                said = text.normal.text[way.stretches[-1].first : stretch.end]
                meet = first - way.stretches[-1].first
                weight += _ON_ITS_FACE * are_sayings_apart(said, [meet])
            there.append(_Way(weight, (*way.stretches, stretch)))
    there.sort(key=lambda way: -way.weight)
    del there[_KEPT:]


def _after_bare_name(before: Sequence[PassageStretch], stretch: PassageStretch) -> float:
    """Return what speaks against a signing after a bare name by which no text stands.

    A poet's or a writer's bare name stands beside the words; elsewhere it begins a signing.
    """
    if stretch.kind != "signature" or not before or before[-1].kind != "signature":
        return 0.0
    beside_text = len(before) > 1 and before[-2].kind in _TEXTS
    return 0.0 if before[-1].role or beside_text else _BARE_NAME


def _ranked(arrived: dict[str, list[_Way]], plain: str) -> tuple[PassageDivision, ...]:
    final = [
        way._replace(weight=way.weight - order_cost(kind, END, "face"))
        for kind, kept in arrived.items()
        for way in kept
    ]
    if not final:
        whole = PassageStretch(0, len(plain), "prose", 0.0)
        return (PassageDivision((whole,), 1.0),)
    final.sort(key=lambda way: -way.weight)
    odds = [math.exp(way.weight - final[0].weight) for way in final]
    total = sum(odds)
    return tuple(
        PassageDivision(with_roles(way.stretches, plain), each / total)
        for way, each in zip(final[:_KEPT], odds, strict=False)
    )


class _Weigher:
    """Weighs the stretches of one text as each kind of passage."""

    def __init__(
        self,
        text: InscribedText,
        days: Days,
        known: Sequence[KnownPassage],
        copied: CopiedStretch | None,
    ) -> None:
        self._text = text
        self._copied = copied
        self._known = known
        self._days = days
        self._signings = Signings(text)
        self.begins: set[int] = set()  # where Japanese may begin

    def stretches(self, first: int, end: int) -> Iterator[PassageStretch]:
        """Yield a stretch as each kind it may be."""
        for each in self._known:
            if (each.first, each.end) == (first, end):
                yield PassageStretch(first, end, each.kind, _KNOWN, each.role, (each.why,))
                return
            if each.first < end and first < each.end:
                return
        plain = self._text.normal.text[first:end]
        if "（印" in plain:
            if _SEAL.fullmatch(plain):
                yield PassageStretch(first, end, "seal", _SEALED, None, ("a seal",))
            return
        inner = Inner.of(self._text, first, end)
        in_japanese = self._in_japanese if KANA.search(plain) else self._in_kanji
        for stretch in (*in_japanese(plain, inner, first, end), *self._framed(plain, first, end)):
            weight = stretch.weight - inner.price(stretch.kind)
            if self._copied and stretch.kind in _COPIED_KINDS:
                weight += _COPIED * self._copied.shared(first, end)
            if weight > HOPELESS:
                yield stretch._replace(weight=weight)
        signed, role = self._signings.weight(first, end)
        signed -= inner.price("signature")
        if first and first not in self._text.breaks:
            signed -= _BEGUN_INSIDE * len(inner.breaks)
        if signed > HOPELESS and signed:
            yield PassageStretch(first, end, "signature", signed, role, (SIGNED,))

    def _in_japanese(
        self, plain: str, inner: Inner, first: int, end: int
    ) -> Iterator[PassageStretch]:
        if first not in self.begins:
            return
        tail = plain[-_TAIL_OF_POEM:].replace("□", "一")
        names_after = len(plain) > _TAIL_OF_POEM and is_kanji_only(tail)
        weight, reason = (0.0, "") if names_after else poem_weight(plain, inner.breaks)
        as_prose = prose_weight(plain)
        if not weight and self._copied and self._copied.verse:
            weight, reason = as_prose + _OF_A_POEM, "copied from a poem"
        if weight:
            yield PassageStretch(first, end, "verse", weight, None, (reason,))
        yield PassageStretch(first, end, "prose", as_prose, None, (_SENTENCES,))

    def _in_kanji(self, plain: str, inner: Inner, first: int, end: int) -> Iterator[PassageStretch]:
        yield PassageStretch(first, end, "prose", _UNWEIGHED - 0.5 * len(plain), None, ())
        weight, reason = chinese_weight(plain, inner.breaks)
        if weight:
            weight -= _SAID_APART * are_sayings_apart(plain, inner.faces)
            apart = _APART * (len(plain) <= _FEW and self._fills_columns(first, end))
            yield PassageStretch(first, end, "chinese", weight + apart, None, (reason,))
        if weight := self._days.weight(first, end):
            yield PassageStretch(first, end, "date", weight, None, (A_DATE,))

    def _of_topic(self, plain: str, end: int) -> float:
        """Return what a first stretch weighs as the topic of what follows; a poem, if at once."""
        in_japanese = bool(KANA.search(self._text.normal.text[end : end + _SOON]))
        if end in self._text.breaks:
            return topic_weight(plain) or in_japanese * place_weight(plain)
        return (in_japanese and len(plain) > 1) * max(topic_weight(plain), place_weight(plain)) / 2

    def _fills_columns(self, first: int, end: int) -> bool:
        """Whether a stretch begins and ends where columns do, among others."""
        edges = {0, len(self._text.normal.text), *self._text.breaks}
        return bool(self._text.breaks) and {first, end} <= edges

    def _framed(self, plain: str, first: int, end: int) -> Iterator[PassageStretch]:
        text = self._text.normal.text
        if len(plain) > _LONGEST_FRAMED or (first and begins_formula(text[first - 1])):
            return  # 春房図 in 探春房図
        if weight := framed_weight("dedication", plain, first=True, last=True):
            yield PassageStretch(first, end, "dedication", weight, None, ("for whom it was made",))
        if is_verb_there(text, end):
            return
        begins = first in {0, *self._text.breaks, *self._text.cuts}
        weight = framed_weight("heading", plain, first=begins, last=first > 0 or end == len(text))
        if not weight and not first and end < len(text):
            weight = self._of_topic(plain, end)
        if weight and (KANA.search(plain[-1:]) or text[end : end + 1] not in _PARTICLES):
            yield PassageStretch(first, end, "heading", weight, None, ("a heading",))
