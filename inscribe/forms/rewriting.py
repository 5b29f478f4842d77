"""A text divided at the signs that change, written anew with its changes and origins.

The stretches between those signs are copied as they stand, so that a long text costs little more
than its changes.

>>> step = FormStep("ヿ", "こと", "ligature", "kana_ligatures")
>>> rewriting = Rewriting(["花の", "ヿ", ""], [step])
>>> rewriting.finished().text, rewriting.finished().origin
('花のこと', (0, 1, 2, 2))
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import accumulate
from types import MappingProxyType
from typing import Any

from inscribe import tables
from inscribe.forms.normal import Change, NormalText
from inscribe.forms.steps import FormStep
from inscribe.terms import SignIndex

Earlier = Mapping[int, Sequence[FormStep]]  # by the number of the step they go before

_SHARED = 1024  # texts shorter than this share their origins
_NO_OTHERS: Mapping[int, Sequence[Any]] = MappingProxyType({})


class Rewriting:
    """A text of one character a sign, as stretches and, between them, signs with their steps.

    ``parts`` are the stretch before the first sign, what stands for that sign, the next stretch
    and so on; it has one stretch more than there are steps. Every sign is first replaced as its
    step says; the methods then serve the signs whose meaning hangs on their neighbours.
    """

    def __init__(self, parts: list[str], steps: list[FormStep]) -> None:
        self.steps = steps
        ends = list(accumulate(map(len, parts)))
        self.starts = ends[0:-1:2]
        self._length = ends[-1]
        self._parts = parts
        self._parts[1::2] = [step.after for step in steps]
        self._others: dict[int, list[Change]] = {}  # by the number of the step

    def take(self, at: int, step: FormStep) -> None:
        """Let another step be that of the sign."""
        self.steps[at] = step
        self._parts[2 * at + 1] = step.after

    def replace(self, at: int, after: str, changes: list[Change]) -> None:
        """Let ``after`` stand for the sign of the step ``at``, by these changes instead."""
        self._parts[2 * at + 1] = after
        self._others[at] = changes

    def sign_before(self, at: int) -> str:
        """Return what stands for the one sign before the sign of the step ``at``."""
        stretch = self._parts[2 * at]
        return stretch[-1] if stretch else self._parts[2 * at - 1] if at else ""

    def replace_before(self, at: int, after: str, change: Change) -> None:
        """Let ``after`` stand for the one sign before the sign of the step ``at``."""
        stretch = self._parts[2 * at]
        if stretch:
            self._parts[2 * at] = stretch[:-1] + after
            self._others.setdefault(at, []).insert(0, change)
        else:
            self._parts[2 * at - 1] = after
            own = Change(SignIndex(self.starts[at - 1]), *self.steps[at - 1])
            self._others.setdefault(at - 1, [own]).append(change)

    def before(self, at: int, reach: int) -> str:
        """Return what stands before the sign of the step ``at``, some ``reach`` characters."""
        found = self._parts[2 * at][-reach:]
        for place in range(2 * at - 1, -1, -1):
            if len(found) >= reach:
                break
            found = self._parts[place][-reach:] + found
        return found

    def following(self, at: int, reach: int) -> str:
        """Return what stands after the sign of the step ``at``, some ``reach`` characters."""
        found = self._parts[2 * at + 2][:reach]
        for place in range(2 * at + 3, len(self._parts)):
            if len(found) >= reach:
                break
            found += self._parts[place][:reach]
        return found

    def follows_directly(self, at: int) -> bool:
        """Whether nothing stands between the sign of the step ``at`` and that of the one before."""
        return at < len(self.steps) and not self._parts[2 * at]

    def finished(self, earlier: Earlier = _NO_OTHERS) -> NormalText:
        """Return the whole; ``earlier`` gives the steps that went before those of the signs."""
        changes = _changes(self.starts, self.steps, self._others, earlier)
        return NormalText("".join(self._parts), self._origin(), changes)

    def _origin(self) -> tuple[SignIndex, ...]:
        lengths = list(map(len, self._parts[1::2]))
        if lengths.count(1) == len(lengths):
            return identity(self._length)
        uneven = [pair for pair in zip(self.starts, lengths, strict=True) if pair[1] != 1]
        found: list[int] = []
        start = 0
        for index, length in uneven:
            found += range(start, index)
            found += [index] * length
            start = index + 1
        found += range(start, self._length)
        return tuple(map(SignIndex, found))


def rewritten_evenly(parts: list[str], steps: list[FormStep]) -> NormalText:
    """Return a divided text of which each sign becomes the one character its step says.

    What :class:`Rewriting` does, for the many texts that need no more.
    """
    ends = list(accumulate(map(len, parts)))
    parts[1::2] = [step.after for step in steps]
    changes = _changes(ends[0:-1:2], steps, _NO_OTHERS, _NO_OTHERS)
    return NormalText("".join(parts), identity(ends[-1]), changes)


def _changes(
    starts: Sequence[int],
    steps: Sequence[FormStep],
    others: Mapping[int, Sequence[Change]],
    earlier: Earlier,
) -> tuple[Change, ...]:
    """Return the changes of the signs, in order.

    ``others`` are made instead of a sign's step, ``earlier`` are steps before it; both go by the
    number of the step.
    """
    new = tuple.__new__  # a third of the time of Change(...)
    found = [new(Change, (start, *step)) for start, step in zip(starts, steps, strict=True)]
    if not others and not earlier:
        return tuple(found)
    changes, done = [], 0
    for at in sorted({*earlier, *others}):
        changes += found[done:at]
        changes += [Change(SignIndex(starts[at]), *step) for step in earlier.get(at, ())]
        changes += others.get(at, found[at : at + 1])
        done = at + 1
    return (*changes, *found[done:])


@tables.cached(_SHARED)
def _shared_identity(length: int) -> tuple[SignIndex, ...]:
    return tuple(map(SignIndex, range(length)))


def identity(length: int) -> tuple[SignIndex, ...]:
    """Return the origin of a text in which every sign is one character."""
    return _shared_identity(length) if length < _SHARED else tuple(map(SignIndex, range(length)))
