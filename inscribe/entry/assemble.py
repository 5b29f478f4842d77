"""From a record to an entry: each inscription read, dated and collated."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import notation, reading, tables
from inscribe.collation import Collation, WitnessSource, collate, testimony
from inscribe.entry.model import Entry, InscriptionEntry
from inscribe.errors import InscribeError
from inscribe.glossing import with_glosses
from inscribe.signs import Certainty, Intervention
from inscribe.sources import kana_of, opened, words_of

if TYPE_CHECKING:
    from inscribe.files import StrPath
    from inscribe.reading import Interpretation
    from inscribe.record import CopiedText, Inscription, Record
    from inscribe.signs import Transcription
    from inscribe.sources import Library


MORE_THAN_ONE = 2  # sources, of which an apparatus is made


def entry_of(
    record: Record, library: Library | StrPath | None = None, folder: Path | None = None
) -> Entry:
    """Return the entry for a record.

    Args:
        record: the record of one object.
        library: where sources named by id only are looked up: an open library, or its file.
        folder: that of the record's file, in which its pictures are.

    Raises:
        InputError: there is no such library.

    >>> from inscribe import load_record
    >>> entry = entry_of(load_record("examples/DEMO-003.toml"))
    >>> entry.inscriptions[0].interpretation.register
    'verse'
    """
    with opened(library) as held:
        return _entry_of(record, held, folder)


def _entry_of(record: Record, library: Library | None, folder: Path | None) -> Entry:
    made = [_inscription_entry(each, record, library) for each in record.inscriptions]
    if tables.has_own("people"):
        made = _with_persons(made)
    return Entry(record, tuple(made), tuple(_cautions(made)), folder)


def _with_persons(made: Sequence[InscriptionEntry]) -> list[InscriptionEntry]:
    """Return the inscriptions with the persons of the user's list that they may name."""
    from inscribe.persons import with_persons

    named = with_persons([each.interpretation for each in made])
    return [replace(each, interpretation=n) for each, n in zip(made, named, strict=True)]


def _inscription_entry(
    inscription: Inscription, record: Record, library: Library | None
) -> InscriptionEntry:
    source = _source_text(inscription, library)
    kana = kana_of(inscription.source, library)
    interpretation = with_glosses(_read(inscription, record.between, source, kana or source))
    found = [_collation(inscription, each, library) for each in inscription.sources]
    held = {number: one for number, (one, _) in enumerate(found) if one is not None}
    missing = "; ".join(filter(None, (said for _, said in found)))
    several = None
    if len(held) >= MORE_THAN_ONE:
        sources = [witness_of(inscription.sources[number]) for number in held]
        several = testimony(list(held.values()), sources)
    first = next(iter(held.values()), None)
    against = tuple(held)
    return InscriptionEntry(
        inscription, interpretation, first, missing, several, against, record.kind
    )


def _source_text(inscription: Inscription, library: Library | None) -> str:
    """Return the words of the source, those of the library where it is named by its id only."""
    if inscription.source is None:
        return ""
    if inscription.source.text and inscription.source.notation != "japanese":
        return notation.render(inscription.source.transcription)  # the reading stage knows one
    if inscription.source.text or not inscription.source.id or library is None:
        return inscription.source.text
    found = library.text_of_id(inscription.source.id)
    return found.text if found else ""


def _read(
    inscription: Inscription, between: tuple[int, int] | None, source: str, spelled: str
) -> Interpretation:
    """Return what an inscription says, with readings of its worn signs where these are likely."""
    text = inscription.transcription

    def read(text: Transcription) -> Interpretation:
        return reading.read(
            text,
            inscription.register,
            inscription.overrides,
            between=between,
            passages=inscription.passages,
            source=spelled,
        )

    if not any(sign.is_worn for sign in text.signs):
        return read(text)
    from inscribe.restoring import with_restored

    return with_restored(read(text), text, read, copied=source)


def _collation(
    inscription: Inscription, copied: CopiedText, library: Library | None
) -> tuple[Collation | None, str]:
    try:
        source = words_of(copied, library)
        if source is None:
            return None, f"the library has no text {copied.id}"
        return collate(inscription.transcription, source, inscription, kind=copied.kind), ""
    except InscribeError as error:
        return None, str(error)


def witness_of(source: CopiedText) -> WitnessSource:
    """Return what an apparatus is told of a source that a record names."""
    title = source.title or " ".join(filter(None, (source.work, source.number))) or source.id
    return WitnessSource(source.siglum, title, source.kind)


def _cautions(inscriptions: Sequence[InscriptionEntry]) -> Iterator[str]:
    signs = [s for each in inscriptions for s in each.inscription.transcription.signs]
    if any(each.interpretation.names_a_person for each in inscriptions):
        yield "attribution"
    if any(
        s.certainty is Certainty.RESTORED or s.intervention is Intervention.SUPPLIED for s in signs
    ):
        yield "restored"
    if any(s.is_worn for s in signs):
        yield "handling"
