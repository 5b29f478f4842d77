"""Signs that cannot be read, and gaps: what they may stand for in the other text."""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.collation.align.searching import pairs
from inscribe.collation.align.searching.costs import prices
from inscribe.collation.align.searching.states import AlignmentMove, State
from inscribe.collation.align.sides import Side

MOST_UNREAD = 3  # signs that one unreadable sign may stand for
NOTHING = 2  # signs, as dear as which it is that it stands for none


def unread_moves(copy: Side, source: Side, i: int, j: int) -> Iterator[AlignmentMove]:
    """Yield the moves over a sign that cannot be read, or into a gap, on either side."""
    ours = copy.sort[i] if i < len(copy) else ""
    theirs = source.sort[j] if j < len(source) else ""
    if ours == "unread":
        yield _unread(State(i + 1, j), NOTHING, copy.raw[i])
        for width in range(1, min(MOST_UNREAD, len(source) - j) + 1):
            yield _unread(State(i + 1, j + width), width, copy.raw[i])
    if theirs == "unread":
        yield _unread(State(i, j + 1), NOTHING, source.raw[j])
        for width in range(1, min(MOST_UNREAD, len(copy) - i) + 1):
            yield _unread(State(i + width, j + 1), width, source.raw[j])
    if ours == "gap":
        yield AlignmentMove(
            State(i + 1, j, "copy gap"), prices()["gap"], "gap", "a gap in the copy"
        )
    if theirs == "gap":
        why = "a gap in the source"
        yield AlignmentMove(State(i, j + 1, "source gap"), prices()["gap"], "gap", why)


def _unread(state: State, width: int, sign: str) -> AlignmentMove:
    price = prices()["unread"] + prices()["unread_more"] * (width - 1)
    is_mark = sign in pairs.REPEAT_MARKS
    why = "the sign that it repeats cannot be read" if is_mark else "the sign cannot be read"
    return AlignmentMove(state, price, "unread", why)


def moves_in_gap(state: State, copy: Side, source: Side) -> Iterator[AlignmentMove]:
    """Yield the moves inside a gap: out of it, or over one more sign that it would hold."""
    i, j = state.i, state.j
    yield AlignmentMove(State(i, j), 0, "close")
    if state.mode == "copy gap" and j < len(source):
        yield AlignmentMove(State(i, j + 1, "copy gap"), prices()["gap_sign"], "gap")
    if state.mode == "source gap" and i < len(copy):
        yield AlignmentMove(State(i + 1, j, "source gap"), prices()["gap_sign"], "gap")
