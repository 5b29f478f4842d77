"""The costs of one word after another, with the grammar of classical verse laid over UniDic's.

UniDic's matrix was learned from modern texts: what may follow the forms of a classical verb it
knows only dimly. Classical grammar says it outright (む follows the imperfective form, けり the
conjunctive), so the rules of ``verse_connections.tsv`` bound the cost where they are kept
(UniDic has て after some conjugations far cheaper than after others, for no reason verse knows)
and add to it where they are broken. Only the classes in use are kept, which makes the matrix
small enough for every processor's cache.
"""

from __future__ import annotations

import struct
from array import array
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from operator import itemgetter

from inscribe import tables
from inscribe.reading.mecab import Classes

_LIMIT = 32000
_OWN = 100_000  # classes of our own are UniDic's number and a multiple of this
_INFLECTED = ("動詞", "形容詞", "助動詞")


@dataclass(frozen=True, slots=True)
class Rule:
    """What a word may follow, the bounds of the cost when it does, the fine when it does not."""

    word: tuple[str, ...]
    after: tuple[str, ...]
    likely: int
    least: int
    unlikely: int

    def concerns(self, row: tuple[str, ...]) -> bool:
        """Whether the rule speaks of words of this class."""
        if row[0] != self.word[0]:
            return self.word[0] == "*"
        if len(self.word) > 2 and self.word[2] not in row[1:3]:
            return False
        return len(self.word) == 1 or self.word[1] in (row[4], row[6])

    def kept_by(self, row: tuple[str, ...]) -> bool:
        """Whether words of this class may stand before the rule's words."""
        refused = [wanted[1:] for wanted in self.after if wanted.startswith("!")]
        if any(_fits(wanted, row) for wanted in refused):
            return False
        return "*" in self.after or any(_fits(wanted, row) for wanted in self.after)


def _fits(wanted: str, row: tuple[str, ...]) -> bool:
    kind, spelt, written = wanted.partition("=")
    if spelt:
        return row[0] == kind and row[6] == written
    conjugation, slash, form = wanted.partition("/")
    if slash:
        return conjugation in f"{row[0]}-{row[4]}-{row[5]}" and row[5].startswith(form)
    if row[0] == wanted:
        return True
    return row[0] in _INFLECTED and row[5].startswith(wanted)


@tables.cached()
def rules() -> tuple[Rule, ...]:
    """Return the rules of the table."""
    return tuple(
        Rule(
            tuple(row["word"].split()),
            tables.listed(row["after"]),
            int(row["likely"]),
            int(row["least"]),
            int(row["unlikely"]),
        )
        for row in tables.rows("verse_connections")
    )


@tables.cached()
def _ruled_particles() -> tuple[str, ...]:
    spelt = {rule.word[1] for rule in rules() if rule.word[0] == "助詞" and len(rule.word) > 1}
    return tuple(sorted(spelt))


def own_class(classes: Classes, number: int, written: str, kana: str) -> int:
    """Return a class for a particle that has a rule of its own but shares UniDic's class.

    UniDic has ど and とも in one class; the grammar tells what each may follow. One in kanji (共)
    follows the rule of its kana, unless it has one.
    """
    row = classes.rows[number]
    spelt = written if written in _ruled_particles() else kana
    if row[0] != "助詞" or row[6] != "*" or spelt not in _ruled_particles():
        return number
    return number + _OWN * (1 + _ruled_particles().index(spelt))


def _row(classes: Classes, number: int) -> tuple[str, ...]:
    own, shared = divmod(number, _OWN)
    row = classes.rows[shared]
    return (*row[:6], _ruled_particles()[own - 1], *row[7:]) if own else row


def small_matrix(
    classes: Classes, used: Sequence[int], side: int, cells: array[int]
) -> Iterator[bytes]:
    """Yield the bytes of a matrix of the classes ``used`` (the first is the text's edge, 0)."""
    yield struct.pack("<HH", len(used), len(used))
    pick = itemgetter(*[number % _OWN for number in used])
    rows = [_row(classes, number) for number in used]
    kept = {rule: [rule.kept_by(row) for row in rows] for rule in rules()}
    for number, row in zip(used, rows, strict=True):
        right = number % _OWN
        line: Iterable[int] = pick(cells[right * side : (right + 1) * side])
        spoken_of = False  # the rule of * is for words that have no other
        for rule in rules():
            if rule.concerns(row):
                spoken_of = spoken_of or rule.word[0] != "*"
                if rule.word[0] != "*" or not spoken_of:
                    line = _laid_over(rule, line, kept[rule])
        yield array("h", [max(-_LIMIT, min(_LIMIT, cost)) for cost in line]).tobytes()


def _laid_over(rule: Rule, line: Iterable[int], kept: Sequence[bool]) -> list[int]:
    """Return the costs of a word after each class; ``kept`` tells after which the rule is kept."""
    likely, least, unlikely = rule.likely, rule.least, rule.unlikely
    return [
        max(min(cost, likely), least) if fits else cost + unlikely
        for cost, fits in zip(line, kept, strict=True)
    ]
