"""How far the work on a collection is: its records counted by state, kind and drawer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple, get_args

from inscribe.record import State

if TYPE_CHECKING:
    from inscribe.checking.findings import Looked

UNSAID = "not said"
UNREAD = "cannot be read"
STATES: tuple[str, ...] = (*get_args(State), UNSAID, UNREAD)


class ProgressTally(NamedTuple):
    """How many records there are of each value of one key (state, kind, drawer)."""

    of: str
    counts: tuple[tuple[str, int], ...]


def tallies(records: Sequence[Looked]) -> list[ProgressTally]:
    """Return the records counted by state, by kind and by drawer.

    States stand in the order of the work, kinds with the most frequent first, drawers by name; a
    key that no record has is left out.
    """
    made = []
    for key in ("state", "kind", "drawer"):
        counted = Counter(
            UNREAD if each.about is None else getattr(each.about, key) or UNSAID for each in records
        )
        if counted.keys() - {UNSAID, UNREAD}:
            made.append(
                ProgressTally(key, tuple((name, counted[name]) for name in _in_order(key, counted)))
            )
    return made


def _in_order(key: str, counted: Counter[str]) -> list[str]:
    if key == "state":
        return [state for state in STATES if counted[state]]
    last = {UNSAID: 1, UNREAD: 2}
    by_count = key == "kind"
    return sorted(
        counted, key=lambda name: (last.get(name, 0), -counted[name] if by_count else 0, name)
    )
