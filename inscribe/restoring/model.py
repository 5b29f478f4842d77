"""What restoring hands on: worn places, and what may have stood there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from inscribe import notebook
from inscribe.cautions import caution
from inscribe.terms import EvidenceKind as EvidenceKind

if TYPE_CHECKING:
    from inscribe.keys import CandidateKeys, LacunaKeys, RestorationKeys
    from inscribe.reading.words import Register
    from inscribe.sources import Hit

CAUTIONS = ("restored", "handling")  # what must be said where candidates are shown


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

    >>> from inscribe import parse, restore
    >>> restore(parse("嘉永□年癸丑")).lacunae[0].candidates[0].text
    '六'
    """

    rank: int
    text: str
    probability: float
    evidence: tuple[Evidence, ...]
    forms: tuple[str, ...] = ()

    def to_dict(self) -> CandidateKeys:
        """Return it as printed in JSON."""
        return {
            "rank": self.rank,
            "text": self.text,
            "probability": round(self.probability, 4),
            "forms": list(self.forms),
            "evidence": [{"kind": each.kind, "text": each.text} for each in self.evidence],
        }


@dataclass(frozen=True, slots=True)
class Lacuna:
    """One worn place: the sign it is (counted from 0), what stands around it, what may fill it.

    ``sign`` counts the signs of the inscription, ``sign_in_column`` those of the column.

    ``kind`` is ``sign`` for one sign, ``gap`` for a lost stretch. ``missing`` is how many morae
    the metre wants there, where there is a metre to go by.

    >>> from inscribe import parse, restore
    >>> worn = restore(parse("嘉永□年癸丑")).lacunae[0]
    >>> worn.sign, worn.before, worn.after
    (2, '嘉永', '年癸丑')
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

    def __repr__(self) -> str:
        said = "".join(candidate.text for candidate in self.candidates[:3])
        return f"<Lacuna, sign {self.sign}, {self.before}□{self.after}: {said}>"

    def to_dict(self) -> LacunaKeys:
        """Return it as printed in JSON."""
        return {
            "sign": self.sign,
            "column": self.column,
            "sign_in_column": self.sign_in_column,
            "kind": self.kind,
            "before": self.before,
            "after": self.after,
            "missing_morae": self.missing,
            "remark": self.remark,
            "candidates": [each.to_dict() for each in self.candidates],
        }


@dataclass(frozen=True, slots=True)
class Restoration:
    """The worn places of one inscription that were looked at, and the texts it may be from.

    ``worn`` is how many worn places there are: one run looks at some of them only.

    >>> from inscribe import parse, restore
    >>> restore(parse("嘉永□年癸丑"))
    <Restoration of '嘉永□年癸丑': 1 worn place>
    """

    text: str  # in current forms
    register: Register
    lacunae: tuple[Lacuna, ...]
    sources: tuple[Hit, ...] = ()
    worn: int = 0

    def __repr__(self) -> str:
        worn = notebook.counted(self.worn, "worn place")
        return f"<Restoration of {notebook.short(self.text)}: {worn}>"

    @property
    def cautions(self) -> tuple[str, ...]:
        """What must be said with it, in English: nothing where no place was looked at."""
        return tuple(map(caution, CAUTIONS)) if self.lacunae else ()

    def to_dict(self) -> RestorationKeys:
        """Return it as ``inscribe restore --format json`` prints it."""
        return {
            "text": self.text,
            "register": self.register,
            "worn_places": self.worn,
            "lacunae": [each.to_dict() for each in self.lacunae],
            "sources": [
                {"id": hit.text.id, "title": hit.text.title, "score": round(hit.score, 4)}
                for hit in self.sources
            ],
            "cautions": list(self.cautions),
        }
