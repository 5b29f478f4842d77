"""What an entry holds: the record and, for each inscription, what the stages made of it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, cast

from inscribe import notation, notebook
from inscribe.collation import Collation, Testimony
from inscribe.reading.words import Interpretation, Proposal
from inscribe.record import Inscription, Record

if TYPE_CHECKING:
    from inscribe.keys import EntryKeys, InscriptionEntryKeys, SizesKeys, SourceNamedKeys


@dataclass(frozen=True)
class InscriptionEntry:
    """One inscription, read and held against its source where it has one.

    >>> from inscribe import entry_of, load_record
    >>> inscription = entry_of(load_record("examples/DEMO-003.toml")).inscriptions[0]
    >>> inscription.collation.fidelity.omitted
    3
    """

    inscription: Inscription
    interpretation: Interpretation
    collation: Collation | None = None
    missing_source: str = ""  # why it is not held against a source that is named
    testimony: Testimony | None = None  # where it is held against several sources
    held_against: tuple[int, ...] = ()  # the numbers of those sources in the record, from 0
    kind: str = ""  # of the object that bears it

    def __repr__(self) -> str:
        return f"<InscriptionEntry: {self.interpretation!r}, {self.collation!r}>"

    @property
    def reading(self) -> Proposal:
        """The first-ranked reading, after the overrides of the record."""
        return self.interpretation.proposals[0]

    def collation_with(self, number: int) -> Collation | None:
        """Return how it answers to one of the record's sources (from 0), None where unknown."""
        if number not in self.held_against or self.testimony is None:
            return self.collation if number in self.held_against else None
        return self.testimony.as_given[self.held_against.index(number)].collation

    def siglum_of(self, number: int) -> str:
        """Return the siglum of one of the record's sources (from 0) where there are several."""
        if self.testimony is None or number not in self.held_against:
            return self.inscription.sources[number].siglum if self.testimony else ""
        return self.testimony.as_given[self.held_against.index(number)].siglum

    def to_dict(self) -> InscriptionEntryKeys:
        """Return it as printed in JSON."""
        inscription = self.inscription
        return {
            "place": inscription.place,
            "hand": inscription.hand,
            "execution": inscription.execution,
            "as_carved": notation.render(inscription.transcription),
            "reading": self.interpretation.to_dict(),
            "translation": inscription.translation.strip(),
            "source": _source_named(inscription),
            "missing_source": self.missing_source,
            "collation": self.collation.to_dict() if self.collation else None,
            "testimony": self.testimony.to_dict() if self.testimony else None,
            "readers": [
                {
                    "by": reader.by,
                    "on": reader.on.isoformat() if reader.on else None,
                    "text": reader.text,
                    "romaji": reader.romaji,
                    "remarks": reader.remarks,
                }
                for reader in inscription.readers
            ],
            "remarks": inscription.remarks.strip(),
        }


def _source_named(inscription: Inscription) -> SourceNamedKeys | None:
    keys = ("id", "title", "author", "work", "number")
    named = {key: value for key in keys if (value := getattr(inscription.source, key, ""))}
    return cast("SourceNamedKeys", named) if named else None


@dataclass(frozen=True, repr=False)
class Entry:
    """The entry for one object; ``cautions`` are keys of ``cautions.tsv``, each once.

    ``folder`` is that of the record's file, in which its pictures are.

    >>> from inscribe import entry_of, load_record
    >>> entry_of(load_record("examples/DEMO-003.toml"))
    <Entry of DEMO-003: 1 inscription>
    """

    record: Record
    inscriptions: tuple[InscriptionEntry, ...]
    cautions: tuple[str, ...] = ()
    folder: Path | None = None

    def to_dict(self) -> EntryKeys:
        """Return it as ``inscribe entry --format json`` prints it."""
        record = self.record
        return {
            "id": record.id,
            "kind": record.kind,
            "title": record.title,
            "measurements_mm": _sizes(record),
            "inscriptions": [each.to_dict() for each in self.inscriptions],
            "remarks": record.remarks.strip(),
            "cautions": list(self.cautions),
        }

    def __repr__(self) -> str:
        inscriptions = notebook.counted(len(self.inscriptions), "inscription")
        return f"<Entry of {self.record.id}: {inscriptions}>"

    def _repr_html_(self) -> str:
        """Return the record, its readings and its collations as tables, as notebooks show it."""
        shown = [self.record._repr_html_()]
        for each in self.inscriptions:
            shown.append(each.interpretation._repr_html_())
            shown += [each.collation._repr_html_()] if each.collation else []
        return "".join(shown)


def _sizes(record: Record) -> SizesKeys:
    names = ("length", "width", "height", "thickness", "diameter")
    sizes = {
        name: value for name in names if (value := getattr(record.measurements, name)) is not None
    }
    return cast("SizesKeys", sizes)
