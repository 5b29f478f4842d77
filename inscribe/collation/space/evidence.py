"""How strongly the measurements speak for "given up for space", for one difference.

The weight is the odds of space against anything else (a slip, another wording, a habit). Its
logarithm is a sum: an intercept and, for each feature, its value times its coefficient in
``glossary/space_weights.tsv``. The coefficients were fitted by logistic regression on plates of
carvers simulated by several authors (``tests/benchmarks/space.py``, which also measures each on the
carver it was not fitted on). :class:`Features` says what each feature is; 0 tells nothing.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields
from functools import cached_property
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.collation.space.measures import FEW_SIGNS, Measures
from inscribe.scripts import is_kana

if TYPE_CHECKING:
    from collections.abc import Sequence

    from inscribe.collation.parts import Group
    from inscribe.signs import Column, Transcription

CONTRACTING = frozenset({"omitted", "spelling", "kana", "replaced"})
# Small words that a hurried carver drops: common practice, no source.
SMALL_WORDS = frozenset("のをにはもぞとやがてへ之而")
SMALL = 2  # signs that small words dropped in one place have at most: には
SUREST = 4.6  # the logarithm of odds beyond which nothing is said: 99 in 100
LONGEST = 200  # signs of a gap within which a repeated word is looked for


@dataclass(frozen=True, slots=True)
class Features:
    """The evidence about one difference as numbers, each between about -1 and 2."""

    full: float  # 1: no sign fits below the last one; -1: many do
    cut_off: float  # the same, where nothing of the source follows the difference; else 0
    too_much: float  # 1: all that is missing had not fitted above his foot line; -1: easily
    concessions: float  # 0 to 1: other places where signs are saved on purpose, for the length
    shorter_writing: float  # 1: the word is there, with other signs and fewer
    other_word: float  # 1: another word stands there
    eye_skip: float  # 1: the gap ends with what stands before it
    words_lost: float  # 1: more than a small word is missing, and text follows
    heading: float  # 1: a first line, such as a title, or a last one like a name is missing
    late: float  # share of the last column written before the difference, by how ``full`` it is
    drawn_together: float  # by how much the last column is closer than the widest, or grows so


@dataclass(frozen=True)
class Case:
    """A measured copy held against its source: all that is asked about any of its differences.

    ``window`` is the part of the source that is meant (signs from, to).
    """

    copy: Transcription
    source: Transcription
    differences: Sequence[Group]
    window: tuple[int, int]
    measures: Measures

    @cached_property
    def savings(self) -> tuple[Group, ...]:
        """The differences by which the copy has fewer signs."""
        return tuple(group for group in self.differences if saves_space(group))

    @cached_property
    def missing(self) -> int:
        """The signs saved on the whole plate."""
        return sum(len(group.source) - len(group.copy) for group in self.savings)

    @property
    def length(self) -> int:
        """The signs of the text that is meant, at least one."""
        return max(1, self.window[1] - self.window[0])

    def concessions(self, group: Group) -> int:
        """Return in how many other places signs are saved on purpose, as carvers save them."""
        return sum(other is not group and self._is_concession(other) for other in self.savings)

    def _is_concession(self, group: Group) -> bool:
        """Whether it is a small word dropped, a shorter writing, a title or an author left off."""
        if self.is_heading(group):
            return True
        is_shorter = bool(len(group.copy)) and group.kind in ("spelling", "kana")
        return (is_shorter or is_small(group)) and not self.ends(group)

    def skipped(self, group: Group) -> str:
        """Return the words from which the eye may have skipped to the same words, or nothing.

        The gap ends with what stands before it, or begins with what stands after it.
        """
        start, end = group.source.start, group.source.end
        if group.kind != "omitted" or end >= self.window[1] or end - start > LONGEST:
            return ""
        text = [sign.text for sign in self.source.signs[self.window[0] : self.window[1]]]
        start, end = start - self.window[0], end - self.window[0]
        for length in range(end - start, 0, -1):
            if start >= length and text[start - length : start] == text[end - length : end]:
                return "".join(text[end - length : end])
            if text[start : start + length] == text[end : end + length]:
                return "".join(text[start : start + length])
        return ""

    def place(self, group: Group) -> tuple[int, int]:
        """Return column and place in the column, from 0, where the copy comes to ``group``."""
        for column in self.copy.columns:
            if column.signs and group.copy.start <= column.signs[-1].index:
                return column.index, max(0, group.copy.start - column.signs[0].index)
        last = self.copy.columns[-1]
        return last.index, len(last.signs)

    def ends(self, group: Group) -> bool:
        """Whether nothing of the source follows the group."""
        return group.source.end >= self.window[1]

    def is_heading(self, group: Group) -> bool:
        """Whether the group is a whole first line, or a last one that may be a name.

        A name is without kana where other lines have some, or shorter than any (common practice,
        no source): the last line of a poem is none.
        """
        lines = [line for line in self.source.columns if line.signs]
        if group.kind != "omitted" or len(lines) < 2:
            return False
        first, *_, last = lines
        if (group.source.start, group.source.end) == _ends_of(first):
            return True
        others = lines[:-1]
        if any(map(_has_kana, others)):
            is_name = not _has_kana(last)
        else:
            is_name = len(last.signs) < min(len(other.signs) for other in others)
        return is_name and (group.source.start, group.source.end) == _ends_of(last)


def _ends_of(line: Column) -> tuple[int, int]:
    return line.signs[0].index, line.signs[-1].index + 1


def _has_kana(line: Column) -> bool:
    return any(map(is_kana, (sign.text for sign in line.signs)))


def saves_space(group: Group) -> bool:
    """Whether the copy has fewer signs than the source there."""
    return group.kind in CONTRACTING and len(group.copy) < len(group.source)


def features(group: Group, case: Case) -> Features:
    """Return the features of a difference by which the copy saves signs."""
    measures = case.measures
    last = measures.columns[-1]
    full = math.tanh((2.5 - measures.signs_below) / 2)
    is_heading = case.is_heading(group)
    ends = case.ends(group)
    column, sign = case.place(group)
    crowding = (last.crowding or 1.0) - 1 if last.signs >= FEW_SIGNS else 0.0
    is_lost = group.kind == "omitted" and not (ends or is_heading or is_small(group))
    return Features(
        full=full,
        cut_off=full * (ends and not is_heading),
        too_much=math.tanh((case.missing - measures.signs_free) / 4),
        concessions=math.tanh(1.5 * case.concessions(group) / math.sqrt(case.length)),
        shorter_writing=float(group.kind != "replaced" and is_rewritten(group)),
        other_word=float(group.kind == "replaced"),
        eye_skip=float(bool(case.skipped(group))),
        words_lost=float(is_lost),
        heading=float(is_heading),
        late=max(0.0, full) * min(1.0, sign / max(last.signs, 1)) * (column == last.index),
        drawn_together=min(0.5, max(0.0, crowding, last.trend or 0.0)),
    )


def is_small(group: Group) -> bool:
    """Whether only small words are missing: の, には."""
    is_dropped = not len(group.copy) and len(group.source) <= SMALL
    return is_dropped and set(group.source.text) <= SMALL_WORDS


def is_rewritten(group: Group) -> bool:
    """Whether the copy has signs there that the source has not, as 夢 for ゆめ."""
    rest = iter(group.source.text)
    return not all(sign in rest for sign in group.copy.text)


def contributions(found: Features) -> dict[str, float]:
    """Return what each feature adds to the logarithm of the weight, and the intercept.

    Raises:
        TableError: the table of weights is not usable.
    """
    known = _weights()
    added = {f.name: known[f.name] * getattr(found, f.name) for f in fields(found)}
    return {"intercept": known["intercept"], **added}


def weight(found: Features) -> float:
    """Return the odds of "given up for space" against anything else.

    Raises:
        TableError: the table of weights is not usable.
    """
    total = sum(contributions(found).values())
    return math.exp(max(-SUREST, min(SUREST, total)))


@tables.cached()
def _weights() -> dict[str, float]:
    found: dict[str, float] = {}
    for row in tables.rows("space_weights"):
        found.setdefault(row["key"], float(row["weight"]))
    return found
