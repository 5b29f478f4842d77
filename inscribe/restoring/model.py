"""What restoring hands on: worn places, and what may have stood there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from inscribe.reading.words import Register
    from inscribe.sources import Hit

EvidenceKind = Literal[
    "source", "formula", "collection", "date", "metre", "lexicon", "frequency", "seen"
]


@dataclass(frozen=True, slots=True)
class Evidence:
    """One reason for or against a candidate: what kind of thing speaks, and what it says."""

    kind: EvidenceKind
    text: str


@dataclass(frozen=True, slots=True)
class Candidate:
    """What may have stood in a worn place, in current forms unless a source has another form.

    ``probability`` (0 to 1) is that of all candidates weighed, not only of those shown; how far it
    can be trusted is measured in ``tests/benchmarks/restore.py``. ``forms`` are other forms of the
    same character that a carver may have used.
    """

    rank: int
    text: str
    probability: float
    evidence: tuple[Evidence, ...]
    forms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Lacuna:
    """One worn place: the sign it is (counted from 0), what stands around it, what may fill it.

    ``sign`` counts the signs of the inscription, ``sign_in_column`` those of the column.

    ``kind`` is ``sign`` for one sign, ``gap`` for a lost stretch. ``missing`` is how many morae
    the metre wants there, where there is a metre to go by.
    """

    sign: int
    column: int
    sign_in_column: int
    kind: Literal["sign", "gap"]
    before: str
    after: str
    missing: int | None
    candidates: tuple[Candidate, ...]
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Restoration:
    """The worn places of one inscription that were looked at, and the texts it may be from.

    ``worn`` is how many worn places there are: one run looks at some of them only.
    """

    text: str  # in current forms
    register: Register
    lacunae: tuple[Lacuna, ...]
    sources: tuple[Hit, ...] = ()
    worn: int = 0
