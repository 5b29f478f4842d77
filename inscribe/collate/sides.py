"""One of two texts to be aligned: its signs, their sounds, and every way its stretches are read.

A text is a lattice over the positions between its signs. An :class:`Edge` leads from one position
to a later one and carries the sound the signs between may have: one kana, one character with one
of its readings, or a word the dictionary knows.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from inscribe.collate import readings, sounds, words
from inscribe.forms.normal import NormalText
from inscribe.signs import Certainty, Kind, Transcription

REPEAT_MARKS = frozenset("々〻ゝゞヽヾ〱〲〳〴〵")
UNWRITTEN = ("の", "か", "つ")  # particles that scribes leave out between two characters


class Edge(NamedTuple):
    """A way to read the signs up to position ``end``."""

    end: int
    pattern: str
    step: str  # its row in the cost table
    spoken: str
    source: str


@dataclass(frozen=True, slots=True)
class Side:
    """A text as the aligner sees it; all tuples have one item a sign."""

    raw: tuple[str, ...]  # as carved
    norm: tuple[str, ...]  # in current forms; "" for a sign that is not there to read
    sort: tuple[str, ...]  # "kana", "kanji", "unread", "gap", "stop" or "other"
    letters: tuple[str, ...]  # the folded sound of kana, else ""
    edges: tuple[tuple[Edge, ...], ...]  # readings other than kana for themselves

    def __len__(self) -> int:
        return len(self.raw)

    def part(self, start: int, end: int) -> Side:
        """Return the signs ``start`` to ``end`` as a text of their own."""
        cut = slice(start, end)
        edges = tuple(
            tuple(e._replace(end=e.end - start) for e in at if e.end <= end) for at in self.edges[cut]
        )
        return Side(self.raw[cut], self.norm[cut], self.sort[cut], self.letters[cut], edges)


def side(text: Transcription, normal: NormalText) -> Side:
    """Return ``text`` prepared for alignment; ``normal`` is its normalisation."""
    parts: list[list[str]] = [[] for _ in text.signs]
    for char, origin in zip(normal.text, normal.origin, strict=True):
        parts[origin].append(char)
    norm = tuple("".join(part) for part in parts)
    raw = tuple(sign.text or norm[sign.index] for sign in text.signs)
    sort = tuple(_sort(sign, norm[sign.index]) for sign in text.signs)
    letters = tuple(sounds.fold(n) if s == "kana" else "" for n, s in zip(norm, sort, strict=True))
    return Side(raw, norm, sort, letters, _edges(norm, sort, letters))


def _sort(sign: object, norm: str) -> str:
    from inscribe.signs import Sign

    assert isinstance(sign, Sign)
    if sign.kind is Kind.GAP:
        return "gap"
    if sign.certainty is Certainty.UNREADABLE or norm == "□":
        return "unread"
    if sign.kind is not Kind.CHARACTER or not norm:
        return "other"
    if all(map(sounds.is_kana, norm)):
        return "kana"
    if sounds.is_kanji(norm[0]):
        return "kanji"
    return "stop" if unicodedata.category(norm[0])[0] in "PZ" else "other"


def _edges(
    norm: Sequence[str], sort: Sequence[str], letters: Sequence[str]
) -> tuple[tuple[Edge, ...], ...]:
    found: list[dict[tuple[int, str], Edge]] = [{} for _ in norm]
    for at, kind in enumerate(sort):
        if kind == "kanji" and len(norm[at]) == 1:
            for way in readings.ways(norm[at]):
                edge = Edge(at + 1, way.pattern, way.plausibility, way.spoken, way.source)
                found[at].setdefault((edge.end, edge.pattern), edge)
        elif kind == "kana":
            for edge in _long_vowels(letters, at):
                found[at].setdefault((edge.end, edge.pattern), edge)
    if "kanji" in sort:
        for start, edge in _words(norm):
            found[start].setdefault((edge.end, edge.pattern), edge)
    return tuple(tuple(edges.values()) for edges in found)


def _words(norm: Sequence[str]) -> list[tuple[int, Edge]]:
    """Return the dictionary words written with a Chinese character, placed by sign."""
    sign_at: dict[int, int] = {}
    position = 0
    for index, part in enumerate(norm):
        sign_at[position] = index
        position += len(part)
    sign_at[position] = len(norm)
    found: list[tuple[int, Edge]] = []
    for word in words.words("".join(norm)):
        if word.start in sign_at and word.end in sign_at:
            start, end = sign_at[word.start], sign_at[word.end]
            found += [
                (start, Edge(end, pattern, word.plausibility, word.spoken, word.source))
                for pattern in sounds.patterns(word.spoken)
            ]
    return found


def _long_vowels(letters: Sequence[str], at: int) -> list[Edge]:
    run = ""
    for part in letters[at : at + 3]:
        if len(part) != 1:
            break
        run += part
    found = [
        Edge(at + length, written, "long", written, "historical spelling")
        for length, written in sounds.long_spellings(run)
    ]
    if run[:2] == "くわ":
        found.append(Edge(at + 2, "か", "long", "か", "historical spelling"))
    return found
