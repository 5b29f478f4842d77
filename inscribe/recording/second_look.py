"""What a column just typed reads, and which of its signs deserve a second look."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from inscribe import notation, reading
from inscribe.reading.suspicious import suspicions
from inscribe.record import Inscription, Override
from inscribe.recording.older import old_forms
from inscribe.recording.questions import with_readings
from inscribe.signs import Sign


class ColumnSeen(NamedTuple):
    """The reading of the text so far, and remarks on its last column."""

    kana: str
    romaji: str
    remarks: tuple[str, ...]


def seen(column: str, before: str, readings: Sequence[str] = ()) -> ColumnSeen:
    """Return what the text reads with a column after what stands before it.

    ``readings`` are those given on the spot (嶺曉=みねあき). Signs are judged in the whole text, so
    that what begins in the column before explains what ends in this one.
    """
    text = f"{before}\n{column}" if before else column
    made = with_readings(Inscription("-", text), tuple(readings))
    signs = made.transcription.signs
    read = reading.read(made.transcription, "auto", made.overrides)
    first = len(notation.parse(before).signs) if before else 0
    best = read.proposals[0]
    remarks = (*_second_looks(signs, first, made.overrides), *_dates(read, column, before))
    older = old_forms(signs[first:])
    listed = ", ".join(f"{text} ({' '.join(old)})" for text, old in older)
    told = (f"older forms, if one is carved: {listed}",) if older else ()
    return ColumnSeen(best.kana, best.romaji, (*remarks, *told))


def _second_looks(
    signs: Sequence[Sign], first: int, overrides: Sequence[Override]
) -> Iterator[str]:
    by_reason: dict[str, list[str]] = {}
    settled = {at for each in overrides for at in range(each.first, each.last + 1)}
    for found in suspicions(signs):
        if found.sign >= first and found.sign not in settled:
            instead = f" ({' '.join(found.instead)})" if found.instead else ""
            place = f"sign {found.sign - first + 1} {found.text}{instead}"
            by_reason.setdefault(found.why, []).append(place)
    for why, places in by_reason.items():
        yield f"look again, {why}: {', '.join(places)}"


def _dates(read: reading.Interpretation, column: str, before: str) -> Iterator[str]:
    """Yield the dates that contradict themselves, once the column with their end is typed."""
    for date in read.dates:
        if date.agreement == "conflict" and not (before and date.text in before.replace("\n", "")):
            way_out = f"; perhaps {date.suggestions[0]}" if date.suggestions else ""
            yield f"look again, {date.text}: {date.why}{way_out}"


def is_name_at(written: str, column: str, before: str) -> bool:
    """Whether signs of a column are read as a name, so that a reading given for them is one's."""
    from inscribe.settling import places_of

    text = f"{before}\n{column}" if before else column
    t = notation.parse(text)
    tokens = reading.read(t).proposals[0].tokens
    return any(
        token.romaji[:1].isupper() and token.first <= last and first <= token.last
        for first, last in places_of(t, written)
        for token in tokens
    )
