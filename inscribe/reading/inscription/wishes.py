"""What the caller of the reading stage wants besides the text."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from inscribe.reading.words import OverrideLike

if TYPE_CHECKING:
    from inscribe.reading.passages import PassageLike


class Wishes(NamedTuple):
    """What the caller wants besides the text."""

    register: str = "auto"
    overrides: Sequence[OverrideLike] = ()
    between: tuple[int, int] | None = None
    alternatives: bool | None = None  # None: only where the reading is in doubt
    passages: Sequence[PassageLike] = ()  # what a person has settled
    source: str = ""  # the words that are copied, where they are known
    among_others: bool = False  # whether other passages stand beside what is read
