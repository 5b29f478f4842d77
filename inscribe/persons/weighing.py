"""Who is the likelier of those whom a name may name: what agrees and what does not.

The odds of each person against somebody who is in no list are the product of the weights of
``person_evidence.tsv``; among persons who may be named by the same signs, and that somebody, the
chances add up to one. A chance is a rank with a measure, no attribution.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.persons.life import Evidence, evidence_of_dates, outside
from inscribe.persons.naming import Naming, SignOfWord, other_surname
from inscribe.reading.names import SORTS
from inscribe.reading.words import MayName, SignaturePart

if TYPE_CHECKING:
    from inscribe.dates import DateReading

# Parts of a signature in which somebody else than the signer is named, and what that one did.
_OF_OTHERS = {"patron": "ordered", "model": "model", "relation": "relation"}
_PLACES = ("place", "city", "quarter")
_TITLES = ("title", "office", "honorific")
_DID = {
    "composed": "composed the text",
    "wrote": "wrote it",
    "carved": "carved it",
    "ordered": "ordered it",
}


class Weighed(NamedTuple):
    """A person whom signs may name, and the odds that it is so."""

    named: MayName
    odds: float


@tables.cached()
def _evidence() -> dict[str, tuple[float, str]]:
    rows = tables.rows("person_evidence")
    return {row["key"]: (float(row["weight"]), row["en"]) for row in rows}


def weighed(
    found: Naming,
    signs: Sequence[SignOfWord],
    dates: Sequence[DateReading],
    beside: Sequence[Naming],
) -> Weighed:
    """Return whom a stretch may name and the odds of it.

    Args:
        found: the stretch, and the person.
        signs: those of its passage.
        dates: all dates on the object.
        beside: the other namings of the passage.
    """
    role, signing = _role(found, signs)
    evidence = [
        *((key, "") for key in found.how),
        *_further_forms(found),
        *evidence_of_dates(found.person, role, dates, signs=signing),
        *_evidence_beside(found, signs, signing=signing),
        *_evidence_of_role(found, role),
        *_evidence_of_teacher(found, beside),
    ]
    known = _evidence()
    odds = math.prod(known[key][0] for key, _ in _once(evidence))
    said = [known[key][1].format(word) for key, word in _once(evidence) if known[key][1]]
    return Weighed(_may_name(found, signs, said, outside(evidence, found.person)), odds)


def _once(evidence: Sequence[Evidence]) -> list[Evidence]:
    """Return evidence with each form counted once; what is beside the first is further evidence."""
    forms = [each for each in evidence if each[0] in SORTS]
    strongest = max(forms, key=lambda each: _evidence()[each[0]][0])
    return [strongest, *dict.fromkeys(each for each in evidence if each[0] not in SORTS)]


def _further_forms(found: Naming) -> Iterator[Evidence]:
    sorts = list(dict.fromkeys(SORTS[form.kind][0] for form in found.forms))
    if len(found.forms) > 1:
        yield "further-form", sorts[0] if sorts[1:] else "another form"
    if sum(len(form.written) for form in found.forms) > 2 and "surname" not in found.how:
        yield "longer-form", ""


def _role(found: Naming, signs: Sequence[SignOfWord]) -> tuple[str | None, bool]:
    """Return what the one who is named did, and whether it is the one who signs."""
    first, last = signs[found.first].first, signs[found.last].last
    for key, part in (found.passage.signature or {}).items():
        if key in _OF_OTHERS and part.first <= first and last <= part.last:
            return _OF_OTHERS[key], False
    if found.passage.kind == "dedication":
        return "ordered", False
    if found.passage.kind == "heading":
        return "model", False
    return found.passage.role, True


def _evidence_beside(
    found: Naming, signs: Sequence[SignOfWord], *, signing: bool
) -> Iterator[Evidence]:
    if other := other_surname(found, signs):
        yield "surname-differs", other
    parts = (found.passage.signature or {}) if signing else {}
    yield from _agreeing("place-agrees", [parts.get(k) for k in _PLACES], found.person.places)
    yield from _agreeing("title-agrees", [parts.get(k) for k in _TITLES], found.person.titles)


def _agreeing(
    key: str, parts: Sequence[SignaturePart | None], listed: Sequence[str]
) -> Iterator[Evidence]:
    from inscribe.forms import normalise_text

    for part in parts:
        written = normalise_text(part.text).text if part else ""
        if written and any(_is_same(written, word) for word in listed):
            yield key, written


def _is_same(written: str, word: str) -> bool:
    """Whether two words for places or titles are one, or say the same: 東都 and 江戸, Edo."""
    return written == word or bool(_senses(written) & _senses(word))


def _senses(word: str) -> set[str]:
    from inscribe.reading.words import words_of

    senses = (found.gloss.partition(",")[0] for found in words_of(word))
    return {sense for sense in senses if sense[:1].isupper()}


def _evidence_of_role(found: Naming, role: str | None) -> Iterator[Evidence]:
    if role in _DID and found.person.roles:
        agrees = role in found.person.roles
        yield ("role-agrees" if agrees else "role-differs"), f"{_DID[role]}"


def _evidence_of_teacher(found: Naming, beside: Sequence[Naming]) -> Iterator[Evidence]:
    for other in beside:
        if other.person.id in found.person.teachers:
            yield "teacher-agrees", other.person.name
            return


def _may_name(
    found: Naming, signs: Sequence[SignOfWord], said: Sequence[str], life: str
) -> MayName:
    person = found.person
    kinds = tuple(dict.fromkeys(SORTS[form.kind][0] for form in found.forms))
    years = f", {person.years}" if person.years else ""
    listed = f"in your list: {' and '.join(kinds)} of {person.name}{years}"
    some = signs[found.first : found.last + 1]
    return MayName(
        min(sign.first for sign in some),
        max(sign.last for sign in some),
        "".join(sign.text for sign in some),
        person.id,
        person.name,
        kinds,
        (listed, *said),
        0.0,
        life,
    )
