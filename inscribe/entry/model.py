"""What an entry holds: the record and, for each inscription, what the stages made of it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from inscribe.collation import Collation
from inscribe.reading.words import Interpretation, Proposal
from inscribe.record import Inscription, Record


@dataclass(frozen=True)
class InscriptionEntry:
    """One inscription, read and held against its source where it has one."""

    inscription: Inscription
    interpretation: Interpretation
    collation: Collation | None = None
    missing_source: str = ""  # why there is no collation although a source is named

    @property
    def reading(self) -> Proposal:
        """The first-ranked reading, after the overrides of the record."""
        return self.interpretation.proposals[0]


@dataclass(frozen=True)
class Entry:
    """The entry for one object; ``cautions`` are keys of ``cautions.tsv``, each once.

    ``folder`` is that of the record's file, in which its pictures are.
    """

    record: Record
    inscriptions: tuple[InscriptionEntry, ...]
    cautions: tuple[str, ...] = ()
    folder: Path | None = None
