"""The places of an apparatus: where a copy and its sources differ, and what each source has there.

The differences of each source, as an edition prints them, are laid over one another. Where two
overlap they are one place, widened until every source answers it with whole words. At each place a
source has the copy's wording, however spelled, or a reading of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.collation.model import Collation
from inscribe.collation.parts import Printed, Span
from inscribe.collation.phrases import phrase_ends
from inscribe.errors import InscribeError
from inscribe.signs import counted

if TYPE_CHECKING:
    from inscribe.keys import PlaceKeys, WitnessReadingKeys


class WitnessReading(NamedTuple):
    """What one source has at a place; ``agrees``: it is the copy's wording, however spelled."""

    siglum: str
    source: Span
    agrees: bool

    def to_dict(self) -> WitnessReadingKeys:
        """Return it as printed in JSON."""
        return {"siglum": self.siglum, "source": self.source.to_dict(), "agrees": self.agrees}


@dataclass(frozen=True, slots=True)
class ApparatusPlace:
    """One entry of the apparatus: the copy's words, and what each source has there.

    ``after`` are the words of the copy that stand before a place where the copy has nothing.
    """

    copy: Span
    readings: tuple[WitnessReading, ...]
    after: str = ""
    where: tuple[int, int] | None = None  # column and sign in it, from 1

    @property
    def differing(self) -> frozenset[str]:
        """The sigla of the sources whose wording is not the copy's."""
        return frozenset(each.siglum for each in self.readings if not each.agrees)

    @property
    def variants(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """Each reading that is not the copy's, with the sigla of the sources that have it.

        Readings that are spellings of the same words are one, shown as the first source has it.
        """
        found: list[tuple[str, tuple[str, ...]]] = []
        for each in self.readings:
            if each.agrees:
                continue
            text = each.source.text
            at = next((n for n, (known, _) in enumerate(found) if _same_words(known, text)), None)
            if at is None:
                found.append((text, (each.siglum,)))
            else:
                found[at] = (found[at][0], (*found[at][1], each.siglum))
        return tuple(found)

    def __str__(self) -> str:
        said = ", ".join(f"{text or 'om.'} {' '.join(sigla)}" for text, sigla in self.variants)
        if self.copy.text:
            return f"{self.copy.text} ] {said}"
        return f"after {self.after} ] {said}" if self.after else f"at the beginning ] {said}"

    def to_dict(self) -> PlaceKeys:
        """Return it as printed in JSON."""
        column, sign = self.where or (None, None)
        return {
            "copy": self.copy.to_dict(),
            "column": None if column is None else column - 1,
            "sign": None if sign is None else sign - 1,
            "after": self.after,
            "readings": [each.to_dict() for each in self.readings],
            "printed": str(self),
        }


@tables.cached(1024)
def _same_words(one: str, other: str) -> bool:
    from inscribe.collation.collating import collate_texts

    if not one or not other:
        return one == other
    try:
        return collate_texts(one, other).is_faithful_in_wording
    except InscribeError:  # signs that are marks of a convention
        return False


class _Answers:
    """What one source has for stretches of the copy."""

    def __init__(self, collation: Collation) -> None:
        self.collation = collation
        self.printed = collation.printed
        self._points: dict[int, list[int]] = {}
        for group in collation.groups:
            if group.kind in ("moved", "beside"):
                continue
            inner = range(1, len(group.copy)) if group.kind == "same" else ()
            for n in (0, *inner):
                self._add(group.copy.start + n, group.source.start + n)
            self._add(group.copy.end, group.source.end)

    def _add(self, i: int, j: int) -> None:
        known = self._points.setdefault(i, [])
        if j not in known:
            known.append(j)

    def widened(self, start: int, end: int) -> tuple[int, int]:
        """Return the stretch of the copy widened to where the source may be cut, too."""
        while start > 0 and start not in self._points:
            start -= 1
        while end < len(self.collation.copy.signs) and end not in self._points:
            end += 1
        return start, end

    def reading(self, siglum: str, start: int, end: int) -> WitnessReading:
        own = [each for each in self.printed if _within(each, start, end)]
        first = min((each.source.start for each in own if each.copy.start == start), default=None)
        last = max((each.source.end for each in own if each.copy.end == end), default=None)
        if first is None:
            known = self._points.get(start, [0])
            first = max(known) if start < end else min(known)
        if last is None:
            known = self._points.get(end, [first])
            last = min(known) if start < end else first
        signs = self.collation.source.signs[first : max(first, last)]
        text = "".join(sign.text for sign in signs)
        return WitnessReading(siglum, Span(first, max(first, last), text), not own)


def _within(each: Printed, start: int, end: int) -> bool:
    if start == end or not len(each.copy):
        return (each.copy.start == start and each.copy.end == end) or (
            start < each.copy.start < end and not len(each.copy)
        )
    return start <= each.copy.start and each.copy.end <= end


def apparatus_places(collations: dict[str, Collation]) -> Iterator[ApparatusPlace]:
    """Yield the places of collations of one copy, by their sigla, in the order of the copy."""
    answers = {siglum: _Answers(collation) for siglum, collation in collations.items()}
    if not answers:
        return
    copy = next(iter(collations.values())).copy
    ends = sorted(phrase_ends(copy)) if any(each.printed for each in answers.values()) else [0]
    spans = {(e.copy.start, e.copy.end) for each in answers.values() for e in each.printed}
    for start, end in _apart(spans, answers):
        readings = tuple(each.reading(siglum, start, end) for siglum, each in answers.items())
        text = "".join(sign.text for sign in copy.signs[start:end])
        before = max((at for at in ends if at < start), default=0)
        after = "" if start < end else "".join(sign.text for sign in copy.signs[before:start])
        at = min(start, len(copy.signs) - 1)
        yield ApparatusPlace(Span(start, end, text), readings, after, counted(copy, at))


def _apart(spans: set[tuple[int, int]], answers: dict[str, _Answers]) -> list[tuple[int, int]]:
    """Return stretches of the copy that do not overlap and may be cut out of every source."""
    found: list[tuple[int, int]] = []
    for start, end in sorted(spans):
        found.append((start, end))
        while True:
            wide = found[-1]
            if wide[0] < wide[1]:
                for each in answers.values():
                    wide = each.widened(*wide)
            before = found[-2] if len(found) > 1 else None
            if before and (before[1] > wide[0] or before == wide):
                found[-2:] = [(min(before[0], wide[0]), max(before[1], wide[1]))]
            elif wide == found[-1]:
                break
            else:
                found[-1] = wide
    return found
