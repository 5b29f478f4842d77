"""What is known of a division beforehand: what a person settled, and the extent of a source."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from typing import Protocol

from inscribe.forms import normalise_text
from inscribe.reading.passages.stretches import KnownPassage
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import Doubt, InscribedText, Kind, Role
from inscribe.terms import SignIndex

_GAPS = re.compile(r"(［[^］]*］|（[^）]*）)")
_LINE_ENDS = re.compile(r"[\s／」]")
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
        taken = bool(found) and bool(inside) and inside[0] < found[-1].end
        if each.last > end or not inside or taken:
            why = f"the settled passage ({each.kind}) no longer fits what is carved"
            doubts.append(
                Doubt(SignIndex(min(each.first, end)), SignIndex(min(each.last, end)), why)
            )
            continue
        why = f"settled: {each.reason}" if each.reason else "settled by a reader"
        found.append(KnownPassage(inside[0], inside[-1] + 1, each.kind, each.role, why))
    return found, doubts


def source_extent(text: InscribedText, source: str) -> tuple[int, int] | None:
    """Return the offsets between which a text copies ``source``; None where it hardly does.

    The two are held together by their sounds, so that kana may answer kanji.
    """
    from difflib import SequenceMatcher

    ours, theirs = (
        _sounds(text.normal.text),
        _sounds(normalise_text(_LINE_ENDS.sub("", source)).text),
    )
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
