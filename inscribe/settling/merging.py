"""Two transcriptions of one object, side by side by sign, and the one made of both.

>>> from inscribe.notation import parse
>>> [(p.kind, p.a, p.b) for p in compared(parse("嶺曉□之"), parse("嶺暁彫(カ)之"))]
[('agreed', (0, 1), (0, 1)), ('different', (1, 2), (1, 2)), ('one legible', (2, 3), (2, 3)), \
('agreed', (3, 4), (3, 4))]
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal, NamedTuple

from inscribe.collation import prepared
from inscribe.collation.align import align_extent
from inscribe.keys import MergeInscriptionKeys, MergeSideKeys
from inscribe.notation import extents_of_signs, parse, render
from inscribe.record import Decision, Inscription, Reader, Record, with_signs
from inscribe.settling.applying import Who
from inscribe.signs import Certainty, Kind, Sign, Transcription, transcription
from inscribe.terms import ComparedKind

_OF_AN_INSCRIPTION = [
    "place",
    "hand",
    "execution",
    "translation",
    "remarks",
    "source",
    "overrides",
    "passages",
]
_UNSURE = (Certainty.DOUBTFUL, Certainty.RESTORED)


class ComparedPlace(NamedTuple):
    """Signs of both transcriptions that answer each other; each is first and end, from 0."""

    kind: ComparedKind
    a: tuple[int, int]
    b: tuple[int, int]


class MergeChoice(NamedTuple):
    """What is to stand in a place: the one side, the other, or something else (``written``)."""

    place: ComparedPlace
    take: Literal["a", "b", "other"]
    reason: str = ""
    written: str = ""


class Merging(NamedTuple):
    """Two inscriptions that are one, and what answers what in them."""

    a: Inscription
    b: Inscription
    number: int  # of the first, among those of its record
    places: tuple[ComparedPlace, ...]

    @property
    def open(self) -> tuple[ComparedPlace, ...]:
        """The places in which somebody must choose."""
        return tuple(place for place in self.places if place.kind != "agreed")

    def to_dict(self) -> MergeInscriptionKeys:
        """Return what is printed as JSON."""
        return {
            "place": self.a.place,
            "places": [
                {
                    "kind": place.kind,
                    "a": _side(self.a, place.a),
                    "b": _side(self.b, place.b),
                    "surer": surer_of(place, self.a.transcription),
                }
                for place in self.places
            ],
        }


def _side(inscription: Inscription, span: tuple[int, int]) -> MergeSideKeys:
    first, end = span
    side: MergeSideKeys = {"text": written_in(inscription, span)}
    if first < end:
        side["signs"] = [first, end - 1]
    return side


def mergings(a: Record, b: Record) -> Iterator[Merging]:
    """Yield the inscriptions that both records have, held against each other."""
    for number, other in pairs_of(a, b):
        if number is not None and other is not None:
            ours, theirs = a.inscriptions[number], b.inscriptions[other]
            yield Merging(ours, theirs, number, compared(ours.transcription, theirs.transcription))


def compared(a: Transcription, b: Transcription) -> tuple[ComparedPlace, ...]:
    """Return the places of two transcriptions of one text, in order; together all signs of both."""
    found: list[ComparedPlace] = []
    for group in align_extent(prepared(a), prepared(b), "whole").groups:
        ours, theirs = (group.copy.start, group.copy.end), (group.source.start, group.source.end)
        for place in _places(a.signs, b.signs, ours, theirs):
            if place.kind == "agreed" and found and _goes_on(found[-1], place):
                found[-1] = place._replace(
                    a=(found[-1].a[0], place.a[1]), b=(found[-1].b[0], place.b[1])
                )
            else:
                found.append(place)
    return tuple(found)


def _goes_on(before: ComparedPlace, place: ComparedPlace) -> bool:
    adjoins = before.a[1] == place.a[0] and before.b[1] == place.b[0]
    return before.kind == "agreed" and adjoins


def _places(
    a: Sequence[Sign], b: Sequence[Sign], ours: tuple[int, int], theirs: tuple[int, int]
) -> Iterator[ComparedPlace]:
    """Yield the places of a stretch: sign by sign where there are as many on both sides."""
    (i, end), (j, stop) = ours, theirs
    while i < end and j < stop and (end - i == stop - j or _kind(a[i], b[j]) == "agreed"):
        yield ComparedPlace(_kind(a[i], b[j]), (i, i + 1), (j, j + 1))
        i, j = i + 1, j + 1
    after = 0
    while end - after > i and stop - after > j and _same_from_end(a, b, end, stop, after):
        after += 1
    if i < end - after or j < stop - after:
        yield ComparedPlace(
            _kind_of_many(a[i : end - after], b[j : stop - after]),
            (i, end - after),
            (j, stop - after),
        )
    for back in range(after, 0, -1):
        yield ComparedPlace("agreed", (end - back, end - back + 1), (stop - back, stop - back + 1))


def _same_from_end(a: Sequence[Sign], b: Sequence[Sign], end: int, stop: int, after: int) -> bool:
    return _kind(a[end - after - 1], b[stop - after - 1]) == "agreed"


def _kind(one: Sign, other: Sign) -> ComparedKind:
    if is_unread(one) and is_unread(other):
        return "agreed" if one.kind is other.kind else "different"
    if is_unread(one) or is_unread(other):
        return "one legible"
    if (one.text, one.kind) != (other.text, other.kind):
        return "different"
    return "agreed" if (one.certainty in _UNSURE) == (other.certainty in _UNSURE) else "one sure"


def _kind_of_many(a: Sequence[Sign], b: Sequence[Sign]) -> ComparedKind:
    unread = [bool(side) and all(map(is_unread, side)) for side in (a, b)]
    return "one legible" if unread[0] != unread[1] and a and b else "different"


def is_unread(sign: Sign) -> bool:
    """Whether a sign, or a lost stretch, tells nothing."""
    return sign.kind is Kind.GAP or (sign.kind is Kind.CHARACTER and not sign.text)


def surer_of(place: ComparedPlace, a: Transcription) -> Literal["a", "b"]:
    """Return the side that reads more, or is surer; the first where both do alike."""
    ours = a.signs[slice(*place.a)]
    if place.kind == "one legible":
        return "b" if ours and all(map(is_unread, ours)) else "a"
    if place.kind == "one sure":
        return "b" if any(sign.certainty in _UNSURE for sign in ours) else "a"
    return "a"


def written_in(inscription: Inscription, span: tuple[int, int], convention: str = "") -> str:
    """Return signs as they are written in an inscription, or in a convention."""
    convention = convention or inscription.notation
    first, end = span
    signs = inscription.transcription.signs[first:end]
    if not signs:
        return ""
    extents = extents_of_signs(inscription.text, inscription.notation)[first:end]
    raw = inscription.text[extents[0][0] : extents[-1][1]]
    if convention == inscription.notation and "\n" not in raw and _says(raw, signs, convention):
        return raw
    return render(transcription([[signs]]), convention)


def _says(raw: str, signs: Sequence[Sign], convention: str) -> bool:
    from inscribe.errors import NotationError

    try:
        found = parse(raw, convention).signs
    except NotationError:
        return False
    return [replace(s, index=0, column=0, box=None) for s in found] == [
        replace(s, index=0, column=0, box=None) for s in signs
    ]


def merged(a: Inscription, b: Inscription, choices: Sequence[MergeChoice], who: Who) -> Inscription:
    """Return the first inscription with what was chosen, and each choice set down.

    ``choices`` stand in the order of their places.

    Raises:
        InputError: what is to stand in a place cannot be written there.
    """
    made = a
    for choice in reversed(choices):  # so that the places before keep their signs
        first, end = choice.place.a
        ours = written_in(a, choice.place.a)
        theirs = written_in(b, choice.place.b, a.notation)
        wanted = {"a": ours, "b": theirs, "other": choice.written}[choice.take]
        others = [each for each in (ours, theirs) if each != wanted]
        before = len(made.transcription.signs)
        if wanted != ours:
            made = with_signs(made, first, end, wanted)
        last = end - 1 + len(made.transcription.signs) - before
        at = min(first, last) if last >= 0 else 0
        reason = choice.reason or who.reason
        decision = Decision(
            max(0, at), max(0, last), wanted, " / ".join(others), "merged", who.by, reason, who.on
        )
        made = replace(made, decisions=(*made.decisions, decision))
    known = {(each.by, each.on) for each in a.readers}
    readers = [_with_text(reader, a, made) for reader in a.readers]
    readers += [_with_text(r, b, made) for r in b.readers if (r.by, r.on) not in known]
    decisions = sorted(made.decisions, key=lambda each: each.first)
    return replace(made, readers=tuple(readers), decisions=tuple(decisions))


def _with_text(reader: Reader, own: Inscription, made: Inscription) -> Reader:
    """Return a reader with the text as that reader had it, where it is another one now."""
    if reader.text or own.transcription.text == made.transcription.text:
        return reader
    if own.notation != made.notation:
        return reader._replace(text=render(own.transcription, made.notation, "\n"))
    return reader._replace(text=own.text)


def pairs_of(a: Record, b: Record) -> Iterator[tuple[int | None, int | None]]:
    """Yield which inscriptions of two records are one: of the same place, else in their order."""
    left = list(range(len(b.inscriptions)))
    rest: list[int] = []
    for number, each in enumerate(a.inscriptions):
        same = [n for n in left if b.inscriptions[n].place == each.place]
        if same:
            left.remove(same[0])
            yield number, same[0]
        else:
            rest.append(number)
    for number in rest:
        yield number, left.pop(0) if left else None
    for number in left:
        yield None, number


def told_otherwise(a: Record, b: Record) -> tuple[str, ...]:
    """Return what else differs between two records, which merging leaves as the first has it."""
    keys = ("id", "kind", "title", "measurements", "maker", "remarks")
    found = [key for key in keys if getattr(b, key) and getattr(a, key) != getattr(b, key)]
    for number, other in pairs_of(a, b):
        if number is None or other is None:
            continue
        ours, theirs = a.inscriptions[number], b.inscriptions[other]
        for key in _OF_AN_INSCRIPTION:
            if getattr(theirs, key) and getattr(ours, key) != getattr(theirs, key):
                found.append(f"{key} of inscription {number + 1}")
    return tuple(found)
