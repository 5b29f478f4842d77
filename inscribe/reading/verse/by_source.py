"""A copied poem read by its source: where the source has kana, the kanji of the copy are told.

The source is read for itself; then the words of the copy are laid along what it says, sound by
sound, at the least cost. Where the two agree and the source is in kana, its sounds are taken;
where the copy has other words, more or fewer, it is read by itself, with the metre in view.

>>> found = read_by_source("鶯の啼花", "うぐひすのなくこゑ")
>>> [word.kana for word in found.words], found.own
(['うぐいす', 'の', 'なく', 'はな'], ('花',))
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from copy import copy
from itertools import groupby

from inscribe import tables
from inscribe.reading.spelling import is_kana, kana_share
from inscribe.reading.verse.alongside import (
    LaidWord,
    SourceKana,
    laid_along,
    nodes_along,
    runs_of,
    said_by,
)
from inscribe.reading.verse.lattice import Node
from inscribe.reading.verse.reader import read_among, read_verse
from inscribe.reading.verse.readings import VerseReading, taken_apart
from inscribe.reading.verse.settled import settled_nodes
from inscribe.reading.verse.usual_signs import as_written, in_usual_signs
from inscribe.reading.verse.voicing import has_voiced_kana
from inscribe.reading.words import AS_SPELLED, UNREAD_SIGNS, OverrideLike, ReadWord

READ_BY_SOURCE = "read as the source spells it in kana"
_LONGEST = 80  # signs of a poem
_COPIED = 0.5  # the share of the copy's kana that must agree


def read_by_source(
    text: str,
    source: str,
    overrides: Sequence[OverrideLike] = (),
    origin: Sequence[int] = (),
) -> VerseReading | None:
    """Return the words of a poem, those that its source tells as the source has them.

    Both are in current forms; ``overrides`` and ``origin`` are those of ``read_verse``. None where
    the source tells nothing: where too little agrees, or what agrees is in kana in the copy too.
    """
    if not kana_share(source) or max(len(text), len(source)) > _LONGEST:
        return None
    nodes = nodes_along(text)
    if overrides:
        nodes = settled_nodes(nodes, overrides, origin, text)
    said = said_by(source)
    words = laid_along(nodes, len(text), said)
    usual = in_usual_signs(text, [word.node.piece for word in words])
    if usual != text:
        read = read_by_source(usual, source, overrides, origin)
        return read and as_written(read, text)
    if _agreeing_kana(words) < _COPIED * sum(map(_kana_of, words)):
        return None
    told = [word for word in words if word.agrees and all(said.spelled[word.first : word.end])]
    if not any(_says_more(word.node.piece, said) for word in told):
        return None
    nodes = list(_allowed(nodes, told, said))
    pieces = [word.node.piece for word in words]
    voiced = any(has_voiced_kana(word.written) for word in pieces)
    found = read_among(text, pieces, nodes, voiced=voiced)
    return taken_apart(found._replace(own=tuple(_own(words))))


def _allowed(nodes: Sequence[Node], told: Sequence[LaidWord], said: SourceKana) -> Iterator[Node]:
    """Yield the words that say what the source says where that is told, and all others elsewhere.

    How a stretch that is told is divided into words is left to the reading.
    """
    covered: set[int] = set()
    for run in runs_of(told):
        start, end = run[0].node.start, run[-1].node.end
        covered.update(range(start, end))
        inside = [node for node in nodes if start <= node.start and node.end <= end]
        for node in _saying(inside, (start, run[0].first), (end, run[-1].end), said):
            yield _as_told(node) if _says_more(node.piece, said) else node
    for node in nodes:
        if covered.isdisjoint(range(node.start, node.end)):
            yield node


def _saying(
    nodes: Sequence[Node], first: tuple[int, int], last: tuple[int, int], said: SourceKana
) -> Iterator[Node]:
    """Yield the words that are on some way from one place in copy and source to another."""
    heard = [said.heard(node.piece.kana) for node in nodes]
    reached = {first}
    steps: list[tuple[Node, tuple[int, int], tuple[int, int]]] = []
    for node, kana in sorted(zip(nodes, heard, strict=True), key=lambda each: each[0].start):
        for start, at in [place for place in reached if place[0] == node.start]:
            if said.kana.startswith(kana, at):
                reached.add((node.end, at + len(kana)))
                steps.append((node, (start, at), (node.end, at + len(kana))))
    leading = {last}
    for node, before, after in sorted(steps, key=lambda step: -step[2][0]):
        if after in leading:
            leading.add(before)
            yield node


def stretch_copied(text: str, source: str) -> tuple[int, int] | None:
    """Return the offsets between which a short text copies a short source; None if hardly so.

    >>> stretch_copied("飛雁の数さへ見ゆる秋風書", "とぶかりのかずさへみゆるあきのよのつき")
    (0, 9)
    """
    if max(len(text), len(source)) > 2 * _LONGEST:
        return None
    said = said_by(source)
    words = laid_along(nodes_along(text), len(text), said)
    agreeing = [word.node for word in words if word.agrees]
    if not agreeing:
        return None
    first, end = agreeing[0].start, agreeing[-1].end
    between = [word for word in words if first <= word.node.start < end]
    least = _COPIED * min(len(said.kana), sum(map(_kana_of, between)))
    return (first, end) if _agreeing_kana(words) >= least else None


def is_poem(source: str) -> bool:
    """Whether a source keeps a metre."""
    return len(source) <= _LONGEST and read_verse(source).metre is not None


def _agreeing_kana(words: Sequence[LaidWord]) -> int:
    return sum(word.end - word.first for word in words if word.agrees)


def _says_more(word: ReadWord, said: SourceKana) -> bool:
    """Whether the source tells more of a word than its own signs: kanji, or voicing."""
    voiced = said.marked and has_voiced_kana(word.kana) and not has_voiced_kana(word.written)
    return voiced or not all(map(is_kana, word.written))


def _kana_of(word: LaidWord) -> int:
    return len(word.node.piece.kana)


@tables.cached(4096)
def _told_piece(piece: ReadWord) -> ReadWord:
    new = copy(piece)
    new.note = AS_SPELLED
    new.parts = tuple(map(_told_piece, piece.parts))
    return new


def _as_told(node: Node) -> Node:
    return node._replace(piece=_told_piece(node.piece))


def _own(words: Sequence[LaidWord]) -> Iterator[str]:
    """Yield the stretches of the copy that its source does not have."""
    for own, group in groupby(words, key=lambda word: not word.agrees):
        written = "".join(word.node.piece.written for word in group)
        if own and UNREAD_SIGNS.isdisjoint(written):
            yield written
