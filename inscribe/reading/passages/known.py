"""What is known of a division beforehand: what a person settled, and the extent of a source."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from inscribe.reading.passages.stretches import Known
from inscribe.reading.words import Doubt, Kind, Role, Text


class SettledPassage(Protocol):
    """Signs that are one passage, whatever the engine proposes (``inscribe.record.Passage``)."""

    @property
    def first(self) -> int:
        """The index of the first sign."""

    @property
    def last(self) -> int:
        """The index of the last sign."""

    @property
    def kind(self) -> Kind:
        """Its kind."""

    @property
    def role(self) -> Role | None:
        """What the person did whom it names, where that was set down."""

    @property
    def reason(self) -> str:
        """The reader's reason."""


def spans_settled(
    settled: Sequence[SettledPassage], text: Text
) -> tuple[list[Known], list[Doubt]]:
    """Return the settled passages as offsets of a text, and a doubt for each that does not fit."""
    found: list[Known] = []
    doubts: list[Doubt] = []
    end = len(text.carved) - 1
    for each in sorted(settled, key=lambda passage: passage.first):
        inside = [i for i, s in enumerate(text.normal.origin) if each.first <= s <= each.last]
        taken = bool(found) and bool(inside) and inside[0] < found[-1].end
        if each.last > end or not inside or taken:
            why = f"the settled passage ({each.kind}) no longer fits what is carved"
            doubts.append(Doubt(min(each.first, end), min(each.last, end), why))
            continue
        why = f"settled: {each.reason}" if each.reason else "settled by a reader"
        found.append(Known(inside[0], inside[-1] + 1, each.kind, each.role, why))
    return found, doubts


def source_extent(text: Text, source: str) -> tuple[int, int] | None:
    """Return the offsets between which a text copies ``source``; None where it hardly does."""
    raise NotImplementedError
