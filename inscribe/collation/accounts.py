"""What the metal had room for: each column, and a judgement of each difference."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.terms import Verdict as Verdict

if TYPE_CHECKING:
    from inscribe.keys import ColumnSpaceKeys, JudgementKeys, SpaceKeys


@dataclass(frozen=True, slots=True)
class ColumnSpace:
    """What one column holds, lengths in mm; None where it was not measured."""

    index: int
    signs: int
    length: float | None
    pitch: float | None  # mean distance from sign to sign
    crowding: float | None  # the uncrowded pitch divided by this column's: above 1 = crowded
    trend: float | None = None  # share by which the pitch shrinks from the first half to the second
    free: float | None = None  # mm left below the column, the carver's own margin taken off

    def to_dict(self) -> ColumnSpaceKeys:
        """Return it as printed in JSON."""
        return {
            "column": self.index,
            "signs": self.signs,
            "length": self.length,
            "pitch": self.pitch,
            "crowding": self.crowding,
            "trend": self.trend,
            "free": self.free,
        }


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the metal has to do with one difference, and the reasons for and against."""

    difference: int  # index into the differences
    verdict: Verdict
    weight: float | None  # odds of "given up for space" against anything else
    speaks_for: tuple[str, ...] = ()
    speaks_against: tuple[str, ...] = ()
    rival: str = ""  # another explanation that the texts suggest
    wanted: tuple[str, ...] = ()  # what to measure, where nothing can be said

    @property
    def chance(self) -> float | None:
        """The chance that want of space explains the difference, 0 to 1."""
        return None if self.weight is None else self.weight / (1 + self.weight)

    @property
    def evidence(self) -> tuple[str, ...]:
        """All reasons, and what is wanted where there are none."""
        return (*self.speaks_for, *self.speaks_against, *self.wanted)

    def to_dict(self) -> JudgementKeys:
        """Return it as printed in JSON."""
        return {
            "difference": self.difference,
            "verdict": self.verdict,
            "weight": self.weight,
            "chance": None if self.chance is None else round(self.chance, 3),
            "for": list(self.speaks_for),
            "against": list(self.speaks_against),
            "rival": self.rival,
            "evidence": list(self.evidence),
        }


@dataclass(frozen=True, slots=True)
class SpaceAccount:
    """How many signs the plate holds, and how many the source needs in its own spelling.

    ``capacity`` counts signs at the carver's median pitch, ``uncrowded`` at the widest of his
    columns, ``tightest`` at the narrowest; pitches are in mm from sign to sign. ``room`` is the
    length in mm that his columns give, from their head to his foot line.

    >>> from inscribe import entry_of, load_record
    >>> space = entry_of(load_record("examples/DEMO-003.toml")).inscriptions[0].collation.space
    >>> space.need, space.capacity, space.median_pitch
    (25, 31, 5.55)
    """

    capacity: int | None
    need: int
    median_pitch: float | None
    columns: tuple[ColumnSpace, ...] = ()
    judgements: tuple[Judgement, ...] = ()
    wanted: tuple[str, ...] = ()  # measurements that would decide what is unmeasured
    uncrowded: int | None = None
    tightest: int | None = None
    room: float | None = None
    missing: int = 0  # signs saved on the whole plate
    beside: int = 0  # signs cut for what stands beside the copied text; ``need`` has them not

    def __repr__(self) -> str:
        signs = f"{self.need} signs wanted, room for {self.capacity}"
        return f"<SpaceAccount: {signs}, {notebook.counted(len(self.judgements), 'verdict')}>"

    @property
    def length_wanted(self) -> float | None:
        """The length in mm that all the signs want at the carver's median pitch."""
        signs = self.need + self.beside
        return None if self.median_pitch is None else signs * self.median_pitch

    def to_dict(self) -> SpaceKeys:
        """Return it as printed in JSON."""
        return {
            "capacity": self.capacity,
            "need": self.need,
            "beside": self.beside,
            "crowding": [column.to_dict() for column in self.columns],
            "median_pitch": self.median_pitch,
            "capacity_uncrowded": self.uncrowded,
            "capacity_tightest": self.tightest,
            "length_wanted": _rounded(self.length_wanted),
            "length_given": _rounded(self.room),
            "missing": self.missing,
            "verdicts": [judgement.to_dict() for judgement in self.judgements],
            "wanted": list(self.wanted),
        }


def _rounded(mm: float | None) -> float | None:
    return None if mm is None else round(mm, 1)
