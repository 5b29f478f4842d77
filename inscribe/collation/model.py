"""What a collation says: groups of signs that answer each other, and figures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.collation.accounts import SpaceAccount
from inscribe.signs import Transcription
from inscribe.terms import GroupKind as GroupKind, Kind, Role

if TYPE_CHECKING:
    from inscribe.keys import (
        BesideKeys,
        BreakKeys,
        CollationKeys,
        DifferenceKeys,
        FidelityKeys,
        GroupKeys,
        LevelKeys,
        PrintedKeys,
        SpanKeys,
    )

NO_DIFFERENCE: frozenset[str] = frozenset({"same", "beside"})
# Differences in wording; all other kinds leave the words as they are or cannot be judged.
SUBSTANTIVE: frozenset[str] = frozenset({"replaced", "omitted", "added", "moved"})


SHORT = 5  # signs below which two texts are never called different texts
SAME_TEXT = 0.3  # share of the signs that have an answer in the other text


@dataclass(frozen=True, slots=True)
class Span:
    """Signs ``start`` to ``end`` (exclusive) of one text, and what they say as carved."""

    start: int
    end: int
    text: str

    def __len__(self) -> int:
        return self.end - self.start

    def to_dict(self) -> SpanKeys:
        """Return it as printed in JSON."""
        return {"start": self.start, "end": self.end, "text": self.text}


@dataclass(frozen=True, slots=True)
class Group:
    """One stretch of the copy and the stretch of the source it answers to.

    Groups stand in the order of the copy and tile both texts: every sign of the copy and every
    sign of the source (within its window) is in exactly one group. Only a moved group may answer
    to a stretch that stands elsewhere in the source. A group "beside" is of signs that were not
    copied from the source and stand beside the text (see :class:`Beside`). ``order`` is "Chinese"
    where one side has the same words in Chinese order.
    """

    kind: GroupKind
    copy: Span
    source: Span
    why: str = ""
    order: str = ""

    @property
    def is_substantive(self) -> bool:
        """Whether the group is a difference in wording."""
        return self.kind in SUBSTANTIVE

    def to_dict(self) -> GroupKeys:
        """Return it as printed in JSON."""
        keys: GroupKeys = {
            "kind": self.kind,
            "copy": self.copy.to_dict(),
            "source": self.source.to_dict(),
            "why": self.why,
        }
        return {**keys, "order": self.order} if self.order else keys


def kind_of_wording(copy: Span, source: Span) -> GroupKind:
    """Return what a difference in wording is: both sides have signs, or one of them has."""
    if len(copy) and len(source):
        return "replaced"
    return "added" if len(copy) else "omitted"


def _of_copy(group: Group) -> Span:
    return group.copy


def _of_source(group: Group) -> Span:
    return group.source


@dataclass(frozen=True, slots=True)
class Printed:
    """One entry of an edition: the copy's words, the source's, and the groups they are made of."""

    copy: Span
    source: Span
    groups: tuple[int, ...]  # indexes into the collation's groups


@dataclass(frozen=True, slots=True)
class Beside:
    """A passage that stands beside the copied text; ``first`` and ``last`` are its signs."""

    kind: Kind
    first: int
    last: int
    text: str  # as carved
    role: Role | None = None  # what the person did whom it names

    def to_dict(self) -> BesideKeys:
        """Return it as printed in JSON."""
        signs = [self.first, self.last]
        return {"kind": self.kind, "signs": signs, "text": self.text, "role": self.role}


@dataclass(frozen=True, slots=True)
class Fidelity:
    """How much of the source stands in the copy, counted in signs of the source by kind.

    ``added`` counts signs of the copy, all others signs of the source.
    """

    signs_in_source: int
    same: int = 0
    form: int = 0
    kana: int = 0
    spelling: int = 0
    replaced: int = 0
    omitted: int = 0
    added: int = 0
    moved: int = 0
    unread: int = 0
    # Whether the signs of the source are its own; those of a modern edition are its editor's.
    by_signs: bool = True

    def level(self, *kinds: str) -> tuple[int, float]:
        """Return count and share (0 to 1) of the source's signs in groups of these kinds."""
        count = sum(getattr(self, kind) for kind in kinds)
        if not self.signs_in_source:  # nothing to be faithful to
            return 0, 0.0 if self.added else 1.0
        return count, count / self.signs_in_source

    @property
    def as_carved(self) -> tuple[int, float]:
        """Signs that stand in the copy exactly as in the source."""
        return self.level("same")

    @property
    def characters(self) -> tuple[int, float]:
        """Signs whose character is the same, in whatever form."""
        return self.level("same", "form")

    @property
    def sounds(self) -> tuple[int, float]:
        """Signs whose sound is the same, however it is written."""
        return self.level("same", "form", "kana", "spelling")

    @property
    def words(self) -> tuple[int, float]:
        """Signs whose word stands in the copy, however it is written and wherever it stands."""
        return self.level("same", "form", "kana", "spelling", "moved")

    def to_dict(self) -> FidelityKeys:
        """Return it as printed in JSON."""
        return {
            "signs_in_source": self.signs_in_source,
            "same": self.same,
            "form": self.form,
            "kana": self.kana,
            "spelling": self.spelling,
            "replaced": self.replaced,
            "omitted": self.omitted,
            "added": self.added,
            "moved": self.moved,
            "unread": self.unread,
            "levels": {
                "as_carved": _level(self.as_carved) if self.by_signs else None,
                "characters": _level(self.characters),
                "sounds": _level(self.sounds),
                "words": _level(self.words),
            },
        }


def _level(level: tuple[int, float]) -> LevelKeys:
    signs, share = level
    return {"signs": signs, "share": round(share, 4)}


@dataclass(frozen=True, slots=True)
class Break:
    """One end of a column of the copy: before its sign ``copy`` and the source's ``source``."""

    copy: int
    source: int
    at_line_end: bool  # whether the source's line ends there too

    def to_dict(self) -> BreakKeys:
        """Return it as printed in JSON."""
        return {"copy": self.copy, "source": self.source, "at_line_end": self.at_line_end}


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
