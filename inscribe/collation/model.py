"""A collation: a copy held against its source, and what follows from the groups of both."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.collation.accounts import SpaceAccount
from inscribe.collation.parts import Beside, Break, Fidelity, Group, Printed, Span
from inscribe.signs import Transcription

if TYPE_CHECKING:
    from inscribe.keys import (
        CollationKeys,
        DifferenceKeys,
        PrintedKeys,
    )

NO_DIFFERENCE: frozenset[str] = frozenset({"same", "beside"})


SHORT = 5  # signs below which two texts are never called different texts
SAME_TEXT = 0.3  # share of the signs that have an answer in the other text


def _of_copy(group: Group) -> Span:
    return group.copy


def _of_source(group: Group) -> Span:
    return group.source


@dataclass(frozen=True, repr=False)
class Collation:
    """A copy held against its source.

    ``groups`` tile both texts in the order of the copy; all spans count signs from 0, the end not
    included, column ends not counted.

    >>> from inscribe.collation import collate_texts
    >>> found = collate_texts("世の中に桜のなかりせは", "世の中にたえて桜のなかりせば")
    >>> found
    <Collation of '世の中に桜のなかりせは' with '世の中にたえて桜のなかりせば': 1 omitted, 1 kana>
    >>> [(group.kind, group.source.text) for group in found.differences]
    [('omitted', 'たえて'), ('kana', 'ば')]
    >>> found.to_dict()["fidelity"]["omitted"]
    3
    """

    copy: Transcription
    source: Transcription
    groups: tuple[Group, ...]
    fidelity: Fidelity
    cost: int  # of the alignment, in thousandths (see glossary/collation/collation_costs.tsv)
    window: tuple[int, int]  # the signs of the source the copy was held against
    breaks: tuple[Break, ...] = ()
    space: SpaceAccount | None = None
    notes: tuple[str, ...] = ()  # doubts a reader must be told of
    work: int = 0  # states the alignment looked at
    beside: tuple[Beside, ...] = ()  # what stands beside the copied text
    # Both texts must be read for it, so it is done when it is first asked for.
    printing: Callable[[Collation], tuple[Printed, ...]] | None = None

    @cached_property
    def printed(self) -> tuple[Printed, ...]:
        """The differences in wording as an edition prints them, in the order of the copy."""
        return self.printing(self) if self.printing else ()

    @property
    def differences(self) -> tuple[Group, ...]:
        """The groups of the copied text that are not the same on both sides."""
        return tuple(group for group in self.groups if group.kind not in NO_DIFFERENCE)

    @property
    def is_excerpt(self) -> bool:
        """Whether the copy was held against a part of the source only."""
        return self.window != (0, len(self.source.signs))

    @property
    def is_of_same_text(self) -> bool:
        """Whether copy and source are one text, however much they differ.

        Of poems that have nothing to do with each other at most a fifth of the signs have an
        answer; of copies with a line left out or put elsewhere more than two fifths (measured on
        tests/data/verse_dev.tsv). Very short texts are always taken for one.
        """
        read = [group for group in self.groups if group.kind not in ("unread", "beside")]
        sizes = [sum(len(side(g)) for g in read) for side in (_of_copy, _of_source)]
        if min(sizes) < SHORT:
            return True
        told = [group for group in read if not group.is_substantive or group.kind == "moved"]
        shares = [
            sum(len(side(g)) for g in told) / size
            for side, size in zip((_of_copy, _of_source), sizes, strict=True)
        ]
        return max(shares) >= SAME_TEXT

    @property
    def is_faithful_in_wording(self) -> bool:
        """Whether no group is a difference in wording."""
        return not any(group.is_substantive for group in self.groups)

    def to_dict(self) -> CollationKeys:
        """Return it as ``inscribe collate --format json`` prints it."""
        return {
            "groups": [group.to_dict() for group in self.groups],
            "fidelity": self.fidelity.to_dict(),
            "differences": self._differences(),
            "space": self.space.to_dict() if self.space else None,
            "window": list(self.window),
            "breaks": [each.to_dict() for each in self.breaks],
            "beside": [each.to_dict() for each in self.beside],
            "notes": list(self.notes),
            "same_text": self.is_of_same_text,
        }

    def __repr__(self) -> str:
        kinds = Counter(group.kind for group in self.differences)
        said = ", ".join(f"{count} {kind}" for kind, count in kinds.items()) or "no difference"
        copy, source = notebook.short(self.copy.text), notebook.short(self.source.text)
        return f"<Collation of {copy} with {source}: {said}>"

    def _repr_html_(self) -> str:
        """Return the groups as a table, a column each, as notebooks show it."""
        groups = [group for group in self.groups if group.copy.text or group.source.text]
        rows = (
            ["source", *(group.source.text or "-" for group in groups)],
            ["", *("" if group.kind == "same" else group.kind for group in groups)],
        )
        return notebook.grid(["copy", *(group.copy.text or "-" for group in groups)], rows)

    def _differences(self) -> list[DifferenceKeys]:
        entries = {self.groups[at]: entry for entry in self.printed for at in entry.groups}
        found: list[DifferenceKeys] = []
        for group in self.differences:
            entry = entries.get(group, group)
            printed: PrintedKeys = {
                "copy": entry.copy.to_dict(),
                "source": entry.source.to_dict(),
            }
            found.append({**group.to_dict(), "printed": printed})
        return found
