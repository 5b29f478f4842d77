"""What a collation is made of: spans of both texts, groups that answer each other, figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe.terms import GroupKind as GroupKind, Kind, Role

if TYPE_CHECKING:
    from collections.abc import Sized

    from inscribe.keys import (
        BesideKeys,
        BreakKeys,
        FidelityKeys,
        GroupKeys,
        LevelKeys,
        SpanKeys,
    )

# Differences in wording; all other kinds leave the words as they are or cannot be judged.
SUBSTANTIVE: frozenset[str] = frozenset({"replaced", "omitted", "added", "moved"})


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

    >>> from inscribe import collate_texts
    >>> groups = collate_texts("花のいろ", "花の色").groups
    >>> [(group.kind, group.copy.text, group.source.text) for group in groups]
    [('same', '花の', '花の'), ('spelling', 'いろ', '色')]
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


def kind_of_wording(copy: Sized, source: Sized) -> GroupKind:
    """Return what a difference in wording is: both sides have signs, or one of them has."""
    if len(copy) and len(source):
        return "replaced"
    return "added" if len(copy) else "omitted"


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

    >>> from inscribe import collate_texts
    >>> found = collate_texts("世の中に桜のなかりせは", "世の中にたえて桜のなかりせば").fidelity
    >>> found.same, found.kana, found.omitted, found.signs_in_source
    (10, 1, 3, 14)
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
