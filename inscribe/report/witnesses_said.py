"""A copy against several sources in words: sources, places, the entries of an apparatus."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.notation import written_out
from inscribe.report.parents import with_parents
from inscribe.signs import short_place_of

if TYPE_CHECKING:
    from inscribe.collation import ApparatusPlace, Collation, Span, Testimony, Witness
    from inscribe.signs import Transcription

TOLD = 0.01  # the least chance that none of the sources was copied, which is told
NO_TEXT = "does not contain this text"
WITNESS_COLUMNS = (
    "siglum",
    "source",
    "kind",
    "places that differ",
    "shared with it alone",
    "chance",
)


def printed_lines(result: Collation) -> list[str]:
    """Return the differences as an edition prints them, where that is more than the table has."""
    wider = any(
        (entry.copy, entry.source) not in ((g.copy, g.source) for g in result.differences)
        for entry in result.printed
    )
    if not wider:
        return []
    lines = (
        f"{where_in(entry.copy, result.copy)}: {entry.source.text or 'om.'} ]"
        f" {entry.copy.text or 'om.'}"
        for entry in result.printed
    )
    return [with_parents(line, result.copy, result.source) for line in lines]


def where_in(place: Span, held: Transcription) -> str:
    """Return the place of signs of a text: column and sign, from 1."""
    return short_place_of(held, place.start, place.end)


def followed(found: Testimony) -> str:
    """Return which source the copy follows, in one sentence."""
    nearest = found.nearest
    if nearest is None or nearest.chance is None:
        return "None of the sources contains this text."
    chance = f"{nearest.chance:.0%}"
    if found.followed:
        return f"It follows {nearest.siglum}, {nearest.title} (chance {chance})."
    other = 1 - sum(witness.chance or 0.0 for witness in found.witnesses)
    none = f", none of these {other:.0%}" if other >= TOLD else ""
    return f"Which source it follows is undecided; likeliest {nearest.siglum} ({chance}){none}."


def witness_row(witness: Witness, places: Sequence[ApparatusPlace]) -> tuple[str, ...]:
    """Return the row of one source, as ``WITNESS_COLUMNS`` says."""
    alone = "、".join(written_out(places[at].copy.text) or "-" for at in witness.shared_alone)
    chance = "-" if witness.chance is None else f"{witness.chance:.0%}"
    differences = str(witness.differences) if witness.has_text else NO_TEXT
    return witness.siglum, witness.title, witness.kind or "", differences, alone, chance


def place_row(place: ApparatusPlace, sigla: Sequence[str], held: Transcription) -> tuple[str, ...]:
    """Return where a place is, the copy's words there, and what each source has instead."""
    said = {
        each.siglum: "=" if each.agrees else each.source.text or "om." for each in place.readings
    }
    lemma = place.copy.text or (f"after {place.after}" if place.after else "at the beginning")
    cells = (with_parents(said.get(siglum, ""), held) for siglum in sigla)
    return where_in(place.copy, held), with_parents(lemma, held), *cells


def apparatus_lines(found: Testimony, held: Transcription) -> list[str]:
    """Return the entries as an edition prints them, each with column and sign."""
    return [
        f"{where_in(place.copy, held)}: {with_parents(str(place), held)}" for place in found.places
    ]
