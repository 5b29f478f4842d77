"""Where an alignment is, and one move of it."""

from __future__ import annotations

from typing import Literal, NamedTuple

Mode = Literal[
    "closed", "copy ahead", "source ahead", "wrong", "added", "omitted", "copy gap", "source gap"
]


class State(NamedTuple):
    """A place in copy and source, and what is going on there."""

    i: int
    j: int
    mode: Mode = "closed"
    owed: str = ""  # letters the side that is behind has yet to supply


class AlignmentMove(NamedTuple):
    """One move of the alignment: where it leads, what it costs, and its reason."""

    state: State
    price: int
    step: str  # row of the cost table
    why: str = ""
