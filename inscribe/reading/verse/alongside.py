"""The words of a copy laid along its source, sound by sound, at the least cost.

A word says what the source says next, or is the copy's own; what the copy lacks is passed over.
MeCab's costs of words and connections decide the rest; of the ways to one place in both texts only
the cheapest is gone on from.

>>> words = laid_along(nodes_along("鶯の啼花"), 4, said_by("うぐひすのなくこゑ"))
>>> [(word.node.piece.kana, word.agrees) for word in words]
[('うぐいす', True), ('の', True), ('なく', True), ('はな', False)]
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe.reading.spelling import is_kana, voiceless
from inscribe.reading.verse import tagger
from inscribe.reading.verse.lattice import Node
from inscribe.reading.verse.reader import read_verse, with_unread
from inscribe.reading.verse.voicing import has_voiced_kana
from inscribe.reading.words import UNREAD_SIGNS

_LEAST_RUN = 3  # kana that agree by no chance
# In MeCab's units, by hand: dear enough that a rare reading which agrees goes before a usual one.
_OTHER_WORD, _ITS_KANA = 5000, 1500  # a word the source lacks, and each kana of it
_LEFT_OUT, _KANA_LEFT_OUT = 2000, 700  # what the copy lacks, and each kana of it
_BEAM = 20_000  # ways that cost so much more than the cheapest are dropped
# What kana within words sound like (Cabinet order on current kana usage, 1986).
_AS_SOUNDED = str.maketrans("はひふへほゐゑをぢづ", "わいうえおいえおじず")


class SourceKana(NamedTuple):
    """The kana a source says, and for each whether it stands there in kana."""

    kana: str
    spelled: tuple[bool, ...]
    marked: bool  # whether voicing is marked

    def heard(self, kana: str) -> str:
        """Return kana as they are held against the source's, spelled of old or today."""
        return (kana if self.marked else "".join(map(voiceless, kana))).translate(_AS_SOUNDED)


class _LaidWay(NamedTuple):
    """The words of a copy so far, and how much of the source's kana lies behind the last one."""

    cost: int = 0
    behind: int = 0
    connection: int = 0  # the class of the last word
    before: _LaidWay | None = None
    word: LaidWord | None = None


class _Choice(NamedTuple):
    """A word that may be laid, its cost, how many kana it says, and where the source has them.

    ``starts`` is None where it says other words than the source, or cannot be read.
    """

    node: Node
    cost: int
    says: int
    starts: frozenset[int] | None


class LaidWord(NamedTuple):
    """A word of the copy, and between which of the source's kana it lies."""

    node: Node
    first: int
    end: int
    agrees: bool

    def follows(self, before: LaidWord) -> bool:
        """Whether this word and the one before agree with the source without a break."""
        joined = before.node.end == self.node.start and before.end == self.first
        return joined and self.agrees and before.agrees


def said_by(source: str) -> SourceKana:
    """Return what a source says, read as verse."""
    words = read_verse(source).words
    spelled = [all(map(is_kana, word.written)) for word in words for _ in word.kana]
    said = SourceKana("".join(word.kana for word in words), tuple(spelled), has_voiced_kana(source))
    return said._replace(kana=said.heard(said.kana))


def nodes_along(text: str) -> list[Node]:
    """Return the words that a copy may have, voicing left open."""
    nodes = tagger.verse_lattice(text, voiced=False)
    return nodes if UNREAD_SIGNS.isdisjoint(text) else with_unread(nodes, text)


def laid_along(nodes: Sequence[Node], length: int, said: SourceKana) -> list[LaidWord]:
    """Return the words of a copy laid along its source at the least cost."""
    starting: dict[int, list[_Choice]] = {}
    for choice in _choices(nodes, said):
        starting.setdefault(choice.node.start, []).append(choice)
    # The cheapest way to each offset of the copy, by how much of the source lies behind it.
    reached: list[dict[int, _LaidWay]] = [{} for _ in range(length + 1)]
    reached[0][0] = _LaidWay()
    for position in range(length):
        kept = _with_left_out(reached[position], len(said.kana))
        for choice in starting.get(position, ()):
            _extend(kept, choice, reached[choice.node.end])
    ended = _with_left_out(reached[length], len(said.kana))
    return _not_by_chance(_words_of(ended[-1])) if ended else []


def _choices(nodes: Sequence[Node], said: SourceKana) -> Iterator[_Choice]:
    """Yield the words worth laying: of those that sound alike the cheapest, of others one."""
    agreeing: dict[tuple[int, int, str], Node] = {}
    others: dict[tuple[int, int], Node] = {}
    for node in nodes:
        word = node.piece
        if word.written in UNREAD_SIGNS:
            yield _Choice(node, word.cost, word.morae, None)
            yield _Choice(node, word.cost + _OTHER_WORD, 0, None)
            continue
        if (kana := said.heard(word.kana)) in said.kana:
            key = node.start, node.end, kana
            if key not in agreeing or word.cost < agreeing[key].piece.cost:
                agreeing[key] = node
        there = others.get((node.start, node.end))
        if there is None or word.cost < there.piece.cost:
            others[node.start, node.end] = node
    for (_, _, kana), node in agreeing.items():
        starts = frozenset(at for at in range(len(said.kana)) if said.kana.startswith(kana, at))
        yield _Choice(node, node.piece.cost, len(kana), starts)
    for node in others.values():
        cost = node.piece.cost + _OTHER_WORD + _ITS_KANA * len(node.piece.kana)
        yield _Choice(node, cost, 0, None)


def _extend(kept: Sequence[_LaidWay], choice: _Choice, there: dict[int, _LaidWay]) -> None:
    """Put a word behind each way that it may follow."""
    side, cells = tagger.verse_connections()
    node, own, says, starts = choice
    row = side * node.piece.connection
    for way in kept:
        if starts is not None and way.behind not in starts:
            continue
        cost, end = way.cost + own + cells[way.connection + row], way.behind + says
        if end not in there or cost < there[end].cost:
            laid = LaidWord(node, way.behind, end, starts is not None)
            there[end] = _LaidWay(cost, end, node.piece.right_connection, way, laid)


def _with_left_out(reached: dict[int, _LaidWay], length: int) -> list[_LaidWay]:
    """Return the ways that are cheap enough, and those that leave kana of the source out."""
    limit = min([way.cost for way in reached.values()], default=0) + _BEAM
    kept: list[_LaidWay] = []
    leaving: _LaidWay | None = None
    for behind in range(length + 1):
        here = reached.get(behind)
        if leaving is not None:
            leaving = leaving._replace(cost=leaving.cost + _KANA_LEFT_OUT, behind=behind)
        if leaving is not None and (here is None or leaving.cost < here.cost):
            here = leaving
        elif here is not None:
            opened = here._replace(cost=here.cost + _LEFT_OUT)
            leaving = opened if leaving is None or opened.cost < leaving.cost else leaving
        if here is not None and here.cost <= limit:
            kept.append(here)
    return kept


def _words_of(way: _LaidWay | None) -> list[LaidWord]:
    words: list[LaidWord] = []
    while way is not None and way.word is not None:
        words.append(way.word)
        way = way.before
    return words[::-1]


def _not_by_chance(words: Sequence[LaidWord]) -> list[LaidWord]:
    """Return the words, those that agree for a kana or two only taken for the copy's own."""
    return [
        word if run[-1].end - run[0].first >= _LEAST_RUN else word._replace(agrees=False)
        for run in runs_of(words)
        for word in run
    ]


def runs_of(words: Sequence[LaidWord]) -> list[list[LaidWord]]:
    """Return words in runs that agree with the source without a break; each other by itself."""
    runs: list[list[LaidWord]] = [[word] for word in words[:1]]
    for before, word in pairwise(words):
        if word.follows(before):
            runs[-1].append(word)
        else:
            runs.append([word])
    return runs
