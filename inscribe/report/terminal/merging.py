"""Two transcriptions side by side, sign by sign."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from inscribe.errors import harmless
from inscribe.record import Inscription
from inscribe.report import width
from inscribe.report.terminal.wrapping import in_columns
from inscribe.settling import ComparedPlace, Merging, written_in
from inscribe.signs import place_of

_LONGEST = 16  # columns of a cell, beyond which its middle is left out
NOTHING = "-"


def merging_as_text(a: str, b: str, found: Sequence[Merging], also: Sequence[str]) -> str:
    """Return what answers what in two records, and what else differs between them."""
    lines = [f"a  {a}", f"b  {b}"]
    for each in found:
        lines += ["", each.a.place, *in_columns([*_rows(each)])]
        kinds = [place.kind for place in each.places]
        counts = [f"{kinds.count(kind)} {kind}" for kind in _KINDS if kind in kinds]
        lines.append(f"to choose: {', '.join(counts)}" if counts else "agreed throughout")
    if also:
        lines += ["", f"differs too, and stays as a has it: {', '.join(also)}"]
    return "\n".join(map(harmless, lines))


_KINDS = ("different", "one legible", "one sure")


def _rows(each: Merging) -> Iterator[tuple[str, str, str, str]]:
    yield "where", "a", "b", ""
    for place in each.places:
        ours, theirs = _cell(each.a, place.a), _cell(each.b, place.b)
        yield where(each, place), ours, theirs, "" if place.kind == "agreed" else place.kind


def where(each: Merging, place: ComparedPlace) -> str:
    """Return where a place is, counted in the first transcription."""
    first, end = place.a
    t = each.a.transcription
    if first < end:
        return place_of(t, first, end - 1)
    return f"after {place_of(t, first - 1, first - 1)}" if first else "at the beginning"


def _cell(inscription: Inscription, span: tuple[int, int]) -> str:
    text = written_in(inscription, span).replace("\n", "／") or NOTHING
    if width(text) <= 2 * _LONGEST:
        return text
    return f"{text[: _LONGEST // 2]}…{text[-_LONGEST // 2 + 1 :]}"


def merged_place_as_text(each: Merging, place: ComparedPlace) -> str:
    """Return one place in which somebody is to choose, with the signs around it."""
    signs = each.a.transcription.signs
    first, end = place.a
    before = written_in(each.a, (max(0, first - _AROUND), first))
    after = written_in(each.a, (end, min(len(signs), end + _AROUND)))
    lines = [
        f"{where(each, place)}, {place.kind}:  …{before}【】{after}…",
        f"  a  {_cell(each.a, place.a)}",
        f"  b  {_cell(each.b, place.b)}",
    ]
    return "\n".join(map(harmless, lines)).replace("\n…", "…")


_AROUND = 4  # signs shown on each side
