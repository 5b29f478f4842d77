"""From the steps of an alignment to groups a reader can use: what answers what, how, and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from inscribe.collation.align.searching.homophones import only_sound_alike
from inscribe.collation.align.searching.search import AlignmentPath
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side
from inscribe.collation.parts import Group, GroupKind, Span, kind_of_wording

KIND_OF_STEP: dict[str, GroupKind] = {
    "same": "same",
    "form": "form",
    "punctuation": "form",
    "voicing": "kana",
    "repeat": "kana",
    "small": "kana",
    "spelling_pair": "kana",
    "initial_mu": "kana",
    "ligature": "spelling",
    "unread": "unread",
    "gap": "unread",
    "unwritten": "spelling",
}


def span(side: Side, start: int, end: int) -> Span:
    """Return the signs ``start`` to ``end`` of one text as a span."""
    return Span(start, end, "".join(side.raw[start:end]))


def groups(
    path: AlignmentPath, copy: Side, source: Side, at: tuple[int, int] = (0, 0)
) -> Iterator[Group]:
    """Yield the smallest groups of an alignment, in order; they tile both texts.

    ``at`` is where both stand in the texts that they are parts of, if they are.
    """
    start, steps = path.start, list[AlignmentMove]()
    for step in path.steps:
        steps.append(step)
        end = step.state
        if end.mode == "closed":
            yield _group(start, end, steps, copy, source, at)
            start, steps = end, []


def _group(
    start: State,
    end: State,
    steps: list[AlignmentMove],
    copy: Side,
    source: Side,
    at: tuple[int, int],
) -> Group:
    one = Span(at[0] + start.i, at[0] + end.i, "".join(copy.raw[start.i : end.i]))
    other = Span(at[1] + start.j, at[1] + end.j, "".join(source.raw[start.j : end.j]))
    kind = _kind(steps, (start, end), copy, source)
    if kind == "spelling" and only_sound_alike(steps, (start, end), copy, source):
        return Group("replaced", one, other)
    why = "; ".join(dict.fromkeys(step.why for step in steps if step.why))
    return Group(kind, one, other, why)


def _kind(
    steps: list[AlignmentMove], ends: tuple[State, State], copy: Side, source: Side
) -> GroupKind:
    start, end = ends
    first = steps[0].step
    if first == "wrong":
        return kind_of_wording(range(start.i, end.i), range(start.j, end.j))
    sorts = copy.sort[start.i : end.i] + source.sort[start.j : end.j]
    if first in KIND_OF_STEP and not (first == "repeat" and "kanji" in sorts):
        return KIND_OF_STEP[first]
    return "kana" if all(sort == "kana" for sort in sorts) else "spelling"


def joined(found: Iterable[Group], copy: Side, source: Side) -> tuple[Group, ...]:
    """Return ``found`` with neighbouring groups of equal signs made one."""
    result: list[Group] = []
    run: list[Group] = []
    for group in found:
        if run and not (group.kind == "same" and run[-1].source.end == group.source.start):
            result.append(_as_one(run, copy, source))
            run = []
        if group.kind == "same":
            run.append(group)
        else:
            result.append(group)
    if run:
        result.append(_as_one(run, copy, source))
    return tuple(result)


def _as_one(run: list[Group], copy: Side, source: Side) -> Group:
    one = span(copy, run[0].copy.start, run[-1].copy.end)
    other = span(source, run[0].source.start, run[-1].source.end)
    return Group("same", one, other)
