"""What is known of a division beforehand: what a person settled, and the extent of a source."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Protocol

from inscribe.forms import normalise_text
from inscribe.reading.passages.days import Days
from inscribe.reading.passages.stretches import CopiedStretch, KnownPassage
from inscribe.reading.spelling import KANA, hiragana, kana_share
from inscribe.reading.words import MARK, Doubt, InscribedText, Kind, Role
from inscribe.terms import SignIndex

_GAPS = re.compile(r"(［[^］]*］|（[^）]*）)")
_LINE_ENDS = re.compile(r"[\s／」]")
_SCRAP = 2  # signs that settled passages hardly leave out on purpose
_KANA_OF_CHINESE, _KANA_OF_NAMES = 0.3, 0.6
_LEAST_BLOCK = 3  # sounds that are the same by no chance
_COPIED = 0.55  # the share of sounds that must be the same


class PassageLike(Protocol):
    """Signs that are one passage, as a person settled it (``inscribe.record.SettledPassage``)."""

    @property
    def first(self) -> int:
        """The index of the first sign."""

    @property
    def last(self) -> int:
        """The index of the last sign."""

    @property
    def kind(self) -> Kind:
        """Its kind."""

    @property
    def role(self) -> Role | None:
        """What the person did whom it names, where that was set down."""

    @property
    def reason(self) -> str:
        """The reader's reason."""


def spans_settled(
    settled: Sequence[PassageLike], text: InscribedText
) -> tuple[list[KnownPassage], list[Doubt]]:
    """Return the settled passages as offsets of a text, and a doubt for each that does not fit."""
    found: list[KnownPassage] = []
    doubts: list[Doubt] = []
    end = len(text.carved) - 1
    for each in sorted(settled, key=lambda passage: passage.first):
        inside = [i for i, s in enumerate(text.normal.origin) if each.first <= s <= each.last]
        ends = SignIndex(min(each.first, end)), SignIndex(min(each.last, end))
        if each.last > end or not inside:
            why = f"the settled passage ({each.kind}) no longer fits what is carved"
            doubts.append(Doubt(*ends, why))
            continue
        if found and inside[0] < found[-1].end:
            why = f"the settled passage ({each.kind}) overlaps the one before it and is left aside"
            doubts.append(Doubt(*ends, why))
            continue
        if odd := _is_odd(each.kind, text.normal.text[inside[0] : inside[-1] + 1]):
            doubts.append(Doubt(*ends, f"settled as {each.kind}, although {odd}"))
        why = f"settled: {each.reason}" if each.reason else "settled by a reader"
        found.append(KnownPassage(inside[0], inside[-1] + 1, each.kind, each.role, why))
    return found, [*doubts, *_left_out(found, text)]


def _is_odd(kind: Kind, plain: str) -> str:
    """Return what speaks against a text being a passage of a kind, nothing where it may be one."""
    legible = MARK.sub("", plain)
    if kind == "seal":
        return "" if "（印" in plain else "there is no seal in it"
    if kind == "date":
        return "" if "□" in plain or Days(plain).weight(0, len(plain)) else "it is no date"
    if kind == "verse":
        return "" if KANA.search(legible) else "it has no kana"
    if kind == "chinese":
        return "it has kana" if kana_share(legible) > _KANA_OF_CHINESE else ""
    if kind in ("signature", "dedication"):
        return "most of it is kana" if kana_share(legible) > _KANA_OF_NAMES else ""
    return ""


def _left_out(found: Sequence[KnownPassage], text: InscribedText) -> Iterator[Doubt]:
    """Yield a doubt for each scrap of a sign or two that settled passages leave between them."""
    edges = [(0, 0), *((each.first, each.end) for each in found), (len(text.normal.text),) * 2]
    for (_, before), (after, _) in pairwise(edges) if found else ():
        if 0 < after - before <= _SCRAP:
            first, last = text.normal.origin[before], text.normal.origin[after - 1]
            said = "stands" if first == last else "stand"
            yield Doubt(
                first, last, f"{text.normal.text[before:after]} {said} in no settled passage"
            )


def source_extent(text: InscribedText, source: str) -> CopiedStretch | None:
    """Return the stretch of a text that copies ``source``; None where hardly any does.

    The two are held together by their sounds, so that kana may answer kanji.
    """
    from inscribe.reading.verse import is_poem, stretch_copied

    plain, copied = text.normal.text, normalise_text(_LINE_ENDS.sub("", source)).text
    marked = MARK.search(plain)
    stretch = None if marked else stretch_copied(plain, copied)
    stretch = stretch or _stretch_sounding(plain, copied)
    if stretch is None:
        return None
    first, end = stretch
    return CopiedStretch(first, _after_gap(plain, end), is_poem(copied))


def _after_gap(plain: str, end: int) -> int:
    """Return where what is lost at the end of a copy ends: 花の［　　］."""
    while (lost := MARK.match(plain, end)) and lost.group()[0] == "［":
        end = lost.end()
    return end


def _stretch_sounding(plain: str, copied: str) -> tuple[int, int] | None:
    from difflib import SequenceMatcher

    ours, theirs = _sounds(plain), _sounds(copied)
    matcher = SequenceMatcher(None, [s for s, _ in ours], [s for s, _ in theirs], autojunk=False)
    blocks = [block for block in matcher.get_matching_blocks() if block.size >= _LEAST_BLOCK]
    matched = sum(block.size for block in blocks)
    if not blocks or matched < _COPIED * min(len(theirs), len(ours)):
        return None
    first = ours[blocks[0].a][1]
    last = ours[blocks[-1].a + blocks[-1].size - 1][1]
    return first[0], last[1]


def _sounds(plain: str) -> list[tuple[str, tuple[int, int]]]:
    """Return the sounds of a text one by one, voicing left out, with the word each is from."""
    from inscribe.reading.verse import words_without_metre

    found: list[tuple[str, tuple[int, int]]] = []
    position = 0
    for part in _GAPS.split(plain):
        if not part or _GAPS.fullmatch(part):
            position += len(part)
            continue
        for word in words_without_metre(part, voiced=False):
            span = (position, position + word.length)
            found += [(_unvoiced(sound), span) for sound in hiragana(word.kana)]
            position += word.length
    return found


def _unvoiced(sound: str) -> str:
    return unicodedata.normalize("NFD", sound)[0]
