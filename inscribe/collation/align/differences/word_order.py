"""Words in Chinese order on one side, in Japanese order on the other: 倣古図 against 古図に倣ひて.

Aligned sign by sign such a passage falls to pieces. So where a run of Chinese characters differs,
its signs are put into Japanese order, by the formulas of signatures (於東都造之) or by moving one
sign behind what it governs (不見人), and aligned once more. Chinese order leaves particles and
endings unwritten; the other side may have them wherever it likes. Only what then agrees is one
group; the run is given up if putting it in order explains nothing.

Source of the rules: signature_formulas.tsv by way of the reading stage; that verbs and negations
stand before what they govern is common practice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from inscribe.collation.align.differences.orders import Order, orders, put_in
from inscribe.collation.align.searching import (
    AlignmentPath,
    TooMuchWorkError,
    agreeing,
    cheapest,
    groups,
    span,
)
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group

ENDINGS = "Chinese order leaves particles and endings unwritten"

LONGEST = 24  # signs of a run that is put in order
MOST_WORK = 4_000  # states looked at for one order of a run
DIFFERING = 30  # orders that are tried where in no order the words are the same
MOST_IN_ALL = 30_000  # and for all runs of a collation
GAIN = 500  # by which an order must be cheaper than the one carved


class _KanjiRun(NamedTuple):
    """Groups ``first`` to ``last`` (exclusive), in which one side is all Chinese characters."""

    first: int
    last: int
    in_copy: bool  # whether it is the copy that stands in Chinese order


def in_japanese_order(found: Sequence[Group], copy: Side, source: Side) -> list[Group]:
    """Return ``found`` with runs in Chinese order answered as a whole; small groups expected."""
    result: list[Group] = []
    done = 0
    aligner = _RunAligner()
    for first, last in _differing(found):
        if first < done:
            continue
        for in_copy in (True, False):
            run = _run(found, first, last, in_copy, copy, source)
            told = (
                _in_order(found, run, copy, source, aligner) if run and run.first >= done else None
            )
            if run and told:
                result += found[done : run.first]
                result += told
                done = run.last
                break
    return [*result, *found[done:]]


def _differing(found: Sequence[Group]) -> list[tuple[int, int]]:
    """Return first and last (exclusive) group of differences that are near each other."""
    runs: list[tuple[int, int]] = []
    for at, group in enumerate(found):
        if group.is_substantive:
            if runs and at - runs[-1][1] <= 4:
                runs[-1] = (runs[-1][0], at + 1)
            else:
                runs.append((at, at + 1))
    return runs


def _run(
    found: Sequence[Group], first: int, last: int, in_copy: bool, copy: Side, source: Side
) -> _KanjiRun | None:
    """Return the run of Chinese characters around some differences, on one side."""

    def is_run(group: Group) -> bool:
        part, side = (group.copy, copy) if in_copy else (group.source, source)
        return all(sort == "kanji" for sort in side.sort[part.start : part.end])

    if not all(map(is_run, found[first:last])):
        return None
    while first and is_run(found[first - 1]) and not found[first - 1].is_substantive:
        first -= 1
    while last < len(found) and is_run(found[last]) and not found[last].is_substantive:
        last += 1
    one, other = _spans(found[first:last])
    length = one[1] - one[0] if in_copy else other[1] - other[0]
    answer = other[1] - other[0] if in_copy else one[1] - one[0]
    answering = copy.sort[slice(*one)] if not in_copy else source.sort[slice(*other)]
    if not 2 <= length <= LONGEST or answer > 4 * LONGEST or "kana" not in answering:
        return None
    return _KanjiRun(first, last, in_copy)


def _spans(found: Sequence[Group]) -> tuple[tuple[int, int], tuple[int, int]]:
    first, last = found[0], found[-1]
    return (first.copy.start, last.copy.end), (first.source.start, last.source.end)


class _RunAligner:
    """Aligns runs with what answers them, within a bound of work."""

    def __init__(self) -> None:
        self._left = MOST_IN_ALL

    def path(self, chinese: Side, japanese: Side, *, linking: bool) -> AlignmentPath | None:
        """Return the cheapest path, None where it takes too long to find."""
        try:
            found = cheapest(chinese, japanese, most_work=self._most, linking=linking)
        except TooMuchWorkError:
            self._left -= self._most
            return None
        self._left -= found.work
        return found

    def agreeing(self, chinese: Side, japanese: Side) -> AlignmentPath | None:
        """Return the cheapest path on which the words are the same, None if there is none."""
        try:
            found = agreeing(chinese, japanese, most_work=self._most, linking=True)
        except TooMuchWorkError:
            self._left -= self._most
            return None
        self._left -= found.work if found else len(chinese) + len(japanese)
        return found

    @property
    def _most(self) -> int:
        return max(0, min(MOST_WORK, self._left))


def _in_order(
    found: Sequence[Group], run: _KanjiRun, copy: Side, source: Side, aligner: _RunAligner
) -> list[Group] | None:
    """Return the groups of a run put in the order that explains most, None if none does."""
    one, other = _spans(found[run.first : run.last])
    chinese = copy.part(*one) if run.in_copy else source.part(*other)
    japanese = source.part(*other) if run.in_copy else copy.part(*one)
    best = _best_order(chinese, japanese, aligner)
    if best is None:
        return None
    told = _as_one(_told(*best, chinese, japanese), chinese, japanese)
    if not any(group.order for group in told):
        return None
    return [_placed(group, run.in_copy, one[0], other[0], copy, source) for group in told]


def _best_order(
    chinese: Side, japanese: Side, aligner: _RunAligner
) -> tuple[list[Group], tuple[int, ...]] | None:
    """Return the small groups of a run in the order that explains most, and that order.

    First all orders are tried for one in which the words are the same, then some for one in which
    they differ less.
    """
    carved = aligner.path(chinese, japanese, linking=False)
    if carved is None:
        return None
    known = [o for o in orders("".join(chinese.norm)) if len(o.signs) == len(chinese)]
    least = carved.cost - GAIN
    best = None
    for order, turned, path in _paths(known, chinese, japanese, aligner):
        if path.cost < least:
            small = _with_endings(groups(path, turned, japanese), turned, japanese)
            if order.by_formula or not _is_attributive(small, order.signs, turned, japanese):
                least, best = path.cost, (small, order.signs)
    return best


def _paths(
    known: Sequence[Order], chinese: Side, japanese: Side, aligner: _RunAligner
) -> Iterator[tuple[Order, Side, AlignmentPath]]:
    turned = [(order, put_in(order, chinese)) for order in known]
    same = False
    for order, side in turned:
        if path := aligner.agreeing(side, japanese):
            same = True
            yield order, side, path
    for order, side in [] if same else turned[:DIFFERING]:
        if path := aligner.path(side, japanese, linking=True):
            yield order, side, path


def _with_endings(found: Iterable[Group], chinese: Side, japanese: Side) -> list[Group]:
    """Return ``found`` with particles and endings joined to the word before them."""
    result: list[Group] = []
    for group in found:
        if result and group.kind == "spelling" and not len(group.copy):
            last = result[-1]
            one = span(chinese, last.copy.start, group.copy.end)
            other = span(japanese, last.source.start, group.source.end)
            if last.is_substantive:
                result[-1] = Group("replaced" if len(one) else "omitted", one, other, last.why)
            else:
                result[-1] = Group("spelling", one, other, last.why or ENDINGS)
        else:
            result.append(group)
    return result


def _is_attributive(
    found: Sequence[Group], signs: tuple[int, ...], turned: Side, japanese: Side
) -> bool:
    """Whether the moved sign is joined by の to the one it now stands behind.

    Then it is no Chinese order: 夢春 is not はるのゆめ.
    Signs that are said after の (如 ごとし, 為 ために) do govern what stands behind them.
    """
    from inscribe.reading.chinese import stands_before

    return any(
        not stands_before(turned.norm[group.copy.start], "の")
        and signs[group.copy.start] < signs[group.copy.start - 1]
        and japanese.norm[group.source.start - 1] == "の"
        for group in found
        if group.copy.start and len(group.copy) and group.source.start
    )


def _told(
    small: Sequence[Group], signs: tuple[int, ...], chinese: Side, japanese: Side
) -> Iterator[Group]:
    """Yield the groups of a run, what was turned round as one group; spans are of the run."""
    ends = {at + 1 for at in range(len(signs)) if max(signs[: at + 1]) == at}
    taken: list[Group] = []
    for group in small:
        taken.append(group)
        first, end = taken[0].copy.start, group.copy.end
        if end in ends:
            if signs[first:end] == tuple(range(first, end)):
                yield from taken
            else:
                yield _turned(taken, chinese, japanese)
            taken = []
    yield from taken


def _as_one(told: Iterable[Group], chinese: Side, japanese: Side) -> list[Group]:
    """Return ``told`` with stretches that were turned round, one after the other, made one."""
    result: list[Group] = []
    for group in told:
        if result and result[-1].order and group.order:
            group = _turned([result.pop(), group], chinese, japanese)
        result.append(group)
    return result


def _turned(taken: Sequence[Group], chinese: Side, japanese: Side) -> Group:
    one = span(chinese, taken[0].copy.start, taken[-1].copy.end)
    other = span(japanese, taken[0].source.start, taken[-1].source.end)
    if any(group.is_substantive for group in taken):
        return Group("replaced", one, other)
    return Group("spelling", one, other, f"{one.text} in Chinese order is {other.text}", "Chinese")


def _placed(group: Group, in_copy: bool, i: int, j: int, copy: Side, source: Side) -> Group:
    """Return a group of a run as a group of the two texts.

    Its spans count from the start of the run before, from the start of the texts after.
    """
    one, other = (group.copy, group.source) if in_copy else (group.source, group.copy)
    kind = group.kind
    if not in_copy and kind in ("omitted", "added"):
        kind = "added" if kind == "omitted" else "omitted"
    return Group(
        kind,
        span(copy, i + one.start, i + one.end),
        span(source, j + other.start, j + other.end),
        group.why,
        group.order,
    )
