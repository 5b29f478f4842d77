"""Where two passages may meet, and what speaks against it: the end of a column hardly anything.

Prices are log odds, to be taken from the weight of a division.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from typing import NamedTuple

from inscribe.reading.names import known
from inscribe.reading.passages.order import closing_words
from inscribe.reading.passages.persons_named import is_title_word
from inscribe.reading.passages.sayings import known_lengths
from inscribe.reading.passages.titles import ends_of_titles
from inscribe.reading.passages.topics import ends_of_topics
from inscribe.reading.spelling import is_kanji_only
from inscribe.reading.words import MARK, POET, InscribedText, words_from

_FACE, _COLUMN, _SPACE, _SEAL, _KAO = 0.0, 0.4, 0.4, 0.0, 0.6
_AFTER_FORMULA = 1.2
_AFTER_FAMILY = 3.2  # 鴨打, 矢作: a surname that ends like a verb
_AFTER_TITLE = 1.6
_OBJECT, _AFTER_OBJECT = frozenset("をヲ"), 4.0  # a verb follows
_AFTER_SAYING = 1.0
_AFTER_POET = 1.0
_AFTER_KANA = 2.0
_AFTER_SENTENCE = 2.0
_AFTER_LINES = 2.4
_IN_NAMES = 2.8
_INSIDE = 3.6
_NAMES = range(2, 8)  # signs of a bare name, after which another may follow
_TAIL_OF_POEM = 7  # kanji with which a poem may end
_LINES = (4, 5, 7)
_MOST_LINES = 8
_SENTENCE_END = re.compile("かな|哉|けり|鳬|[へべ]し|から[すず]|なり|也|ら[むん]|かも|なし")
_TO_KANJI = re.compile("[ぁ-ヺー々ゝゞ](?=[^ぁ-ヺー々ゝゞ])")
# What a passage costs that runs over the end of a column or a face, by kind.
_OVER_COLUMN = {"date": 0.3, "dedication": 0.3, "heading": 3.0}
_OVER_FACE = {"verse": 1.0, "chinese": 1.0, "prose": 2.0, "heading": 3.0}
_OVER_A_FACE = 2.2


class _Cuts:
    """The cuts found so far, with their prices; the firm ones are where a passage likely begins."""

    def __init__(self, plain: str) -> None:
        self.plain = plain
        self.prices: dict[int, float] = {0: 0.0, len(plain): 0.0}
        self.firm: set[int] = {0}

    def note(self, at: int, price: float, *, firm: bool = False) -> None:
        """Note that passages may meet at an offset, at a price unless there is a lower one."""
        if 0 < at < len(self.plain):
            self.prices[at] = min(price, self.prices.get(at, price))
            if firm:
                self.firm.add(at)


def cuts_of(text: InscribedText) -> dict[int, float]:
    """Return the offsets at which passages may meet, with the price of each.

    >>> from inscribe.forms import normalise_text
    >>> sorted(cuts_of(InscribedText(normalise_text("蘿径書鵜沢秋綱刻"), "蘿径書鵜沢秋綱刻")))[:3]
    [0, 2, 3]
    """
    plain = text.normal.text
    cuts = _Cuts(plain)
    _note_ends(text, cuts)
    for at in _after_formulas(plain):
        family = at not in text.breaks and known(plain[max(0, at - 2) : at]).surname
        cuts.note(at, _AFTER_FAMILY if family else _AFTER_FORMULA, firm=not family)
    for at in [*ends_of_titles(plain, sorted(cuts.firm))]:
        cuts.note(at, _AFTER_TITLE, firm=True)
    for at in ends_of_topics(plain):
        cuts.note(at, _AFTER_TITLE)
    for found in _SENTENCE_END.finditer(plain):
        cuts.note(found.end(), _AFTER_SENTENCE)
    _note_ends_of_japanese(plain, cuts)
    for start in sorted(cuts.firm):
        for length in known_lengths(plain, start):
            cuts.note(start + length, _AFTER_SAYING, firm=True)
    _note_lines(plain, cuts)
    _note_poets(plain, cuts)
    _note_names(plain, cuts)
    for at, sign in enumerate(plain[:-1], start=1):
        if sign in _OBJECT and at in cuts.prices:
            cuts.prices[at] += _AFTER_OBJECT
    inside = {at for mark in MARK.finditer(plain) for at in range(mark.start() + 1, mark.end())}
    return {at: price for at, price in cuts.prices.items() if at not in inside}


def _note_ends(text: InscribedText, cuts: _Cuts) -> None:
    """Note the ends of columns and faces, spaces, and marks."""
    for at in text.breaks:
        cuts.note(at, _FACE if at in text.faces else _COLUMN, firm=True)
    for at in text.cuts:
        cuts.note(at, _SPACE, firm=True)
    for mark in MARK.finditer(text.normal.text):
        seal, kao = mark.group().startswith("（印"), mark.group() == "（花押）"
        cuts.note(mark.start(), _SEAL if seal else _INSIDE)
        cuts.note(mark.end(), _SEAL if seal else _KAO if kao else _INSIDE, firm=seal or kao)


def _note_names(plain: str, cuts: _Cuts) -> None:
    """Note where a bare name may end that begins where something else may."""
    for start in sorted(cuts.firm | set(cuts.prices)):
        for length in _NAMES:
            if start + length < len(plain) and is_kanji_only(plain[start : start + length + 1]):
                cuts.note(start + length, _IN_NAMES)


def _note_poets(plain: str, cuts: _Cuts) -> None:
    """Note where the name of a known poet begins, after Japanese or where a passage may, and ends.

    Only there: 伊勢 inside a column is a province; 宮内卿 before kanji is a title.
    """
    after_kana = {found.end() for found in _TO_KANJI.finditer(plain)}
    for start in sorted(cuts.firm | set(cuts.prices) | after_kana):
        for name in _poets_from(plain[start]) if start < len(plain) else ():
            if plain.startswith(name, start):
                if start:
                    cuts.note(start, _AFTER_KANA)
                end = start + len(name)
                if not (is_title_word(name) and is_kanji_only(plain[end : end + 1])):
                    cuts.note(end, _AFTER_POET, firm=True)


def _poets_from(sign: str) -> list[str]:
    words = words_from(sign)
    return [name for name in words if any(word.family == POET for word in words[name])]


def _after_formulas(plain: str) -> list[int]:
    words = "|".join(sorted(map(re.escape, closing_words()), key=len, reverse=True))
    return [found.end() for found in re.finditer(f"(?:{words})[之]?", plain)]


def _note_ends_of_japanese(plain: str, cuts: _Cuts) -> None:
    for found in _TO_KANJI.finditer(plain):
        for at in range(found.end(), found.end() + _TAIL_OF_POEM):
            if at > found.end() and not is_kanji_only(plain[found.end() : at]):
                break
            cuts.note(at, _AFTER_KANA)


def _note_lines(plain: str, cuts: _Cuts) -> None:
    for start in sorted(cuts.firm):
        for line in _LINES:
            for count in range(1, _MOST_LINES + 1):
                end = start + line * count
                if end > len(plain) or not is_kanji_only(plain[start:end].replace("□", "一")):
                    break
                cuts.note(end, _AFTER_LINES)


class Inner(NamedTuple):
    """The ends of columns and faces, and spaces, within a stretch; offsets from its start."""

    breaks: frozenset[int]
    faces: frozenset[int]
    cuts: frozenset[int]

    @classmethod
    def of(cls, text: InscribedText, first: int, end: int) -> Inner:
        """Return those of a stretch of a text."""
        return cls(*(_within(each, first, end) for each in (text.breaks, text.faces, text.cuts)))

    def price(self, kind: str) -> float:
        """Return what a passage of a kind costs that runs over them."""
        columns = _OVER_COLUMN.get(kind, 0.0) * len(self.breaks - self.faces)
        return columns + _OVER_FACE.get(kind, _OVER_A_FACE) * len(self.faces)


def _within(offsets: frozenset[int], first: int, end: int) -> frozenset[int]:
    if not offsets:
        return offsets
    inside = sorted(offsets)
    low, high = bisect_right(inside, first), bisect_right(inside, end - 1)
    return frozenset(at - first for at in inside[low:high])
