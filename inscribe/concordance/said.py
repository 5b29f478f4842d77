"""What an inscription says of persons, places and dates, as plain data for the indexes.

Everything is as the metal has it and as the program reads it; a signature is no attribution.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from inscribe.dates import Age
    from inscribe.reading.words import Interpretation, SignaturePart
    from inscribe.record import Inscription, Record

# Parts of a signature that together are the name, and those that stand for something else.
NAME = ("clan", "surname", "common_name", "art_name", "name", "generation")
_STANDS_FOR = {
    **dict.fromkeys(NAME, "name"),
    "place": "place",
    "title": "title",
    "age": "age",
    "date": "date",
    "kao": "",
    "seal": "",
}


class Signing(NamedTuple):
    """One person's signing: what that person did, the name, and what stands with it.

    ``form`` is the name as carved, ``name`` the same in current forms; ``formula`` the signing in
    current forms with 〔name〕, 〔place〕 and the like in their places.
    """

    role: str
    form: str
    name: str
    romaji: str
    title: str
    place: str
    place_romaji: str
    formula: str
    age: int | None = None
    at_birth: int = 1


class Dated(NamedTuple):
    """One date as carved; ``year`` is the western year in which the Japanese year began."""

    text: str
    year: int | None
    day: str
    sure: bool


class PassageSaid(NamedTuple):
    """One passage: what it is, its signs (from 0), and how it is read."""

    kind: str
    first: int
    last: int
    role: str
    romaji: str


class SaidThere(NamedTuple):
    """What a record and its inscription say beyond the words; each part may be empty.

    ``maker`` is the record's own (name, year of birth, year of death), ``source`` the text that is
    copied (id, title, author), ``sizes`` the object's measurements in mm.
    """

    title: str = ""
    hand: str = ""
    translation: str = ""
    maker: tuple[str, int | None, int | None] = ("", None, None)
    source: tuple[str, str, str] = ("", "", "")
    sizes: tuple[float | None, ...] = ()
    passages: tuple[PassageSaid, ...] = ()
    signings: tuple[Signing, ...] = ()
    dates: tuple[Dated, ...] = ()


def said_of(read: Interpretation) -> SaidThere:
    """Return what a reading says of persons, places and dates."""
    passages = tuple(
        PassageSaid(p.kind, p.first, p.last, p.role or "", p.romaji) for p in read.passages
    )
    ages = [date.age for date in read.dates if date.age and not date.age.about]
    signings = tuple(
        _signing(p.role or "", p.signature, ages) for p in read.passages if p.signature
    )
    dates = tuple(
        Dated(
            date.text,
            date.year,
            date.first_day.isoformat() if date.first_day else "",
            date.sure,
        )
        for date in read.dates
        if not date.age or date.year is not None
    )
    return SaidThere(passages=passages, signings=signings, dates=dates)


def of_record(said: SaidThere, record: Record, inscription: Inscription) -> SaidThere:
    """Return the same with what the record itself says."""
    maker, source = record.maker, inscription.source
    return said._replace(
        title=record.title,
        hand=inscription.hand,
        translation=inscription.translation,
        maker=(maker.name, maker.born, maker.died) if maker else ("", None, None),
        source=(source.id, source.title, source.author) if source else ("", "", ""),
        sizes=tuple(record.measurements),
    )


def _signing(role: str, signature: Mapping[str, SignaturePart], ages: Sequence[Age]) -> Signing:
    from inscribe.forms import normalise_text

    names = sorted((signature[key] for key in NAME if key in signature), key=lambda n: n.first)
    form = "".join(each.text for each in names)
    place, title = signature.get("place"), signature.get("title")
    dated = [normalise_text(signature[k].text).text for k in ("age", "date") if k in signature]
    age = next((age for age in ages if any(age.text in text for text in dated)), None)
    return Signing(
        role,
        form,
        normalise_text(form).text,
        " ".join(each.romaji for each in names),
        title.text if title else "",
        normalise_text(place.text).text if place else "",
        place.romaji if place else "",
        normalise_text(_formula(signature)).text,
        age.years if age else None,
        0 if age and age.western else 1,
    )


def _formula(signature: Mapping[str, SignaturePart]) -> str:
    """Return a signature with words for what differs from one to the next.

    >>> from inscribe.reading.words import SignaturePart
    >>> name, verb = SignaturePart("嶺暁", "", "", 0, 1), SignaturePart("作", "", "", 2, 2)
    >>> _formula({"name": name, "verb": verb})
    '〔name〕作'
    """
    whole = {key: each for key, each in signature.items() if key != "residence"}
    ordered = sorted(whole.items(), key=lambda keyed: keyed[1].first)
    made: list[str] = []
    for key, each in ordered:
        word = _STANDS_FOR.get(key)
        said = each.text if word is None else f"〔{word}〕" if word else ""
        if said and made[-1:] != [said]:
            made.append(said)
        if key == "place" and (home := signature.get("residence")):
            made.append(home.text[len(each.text) :])
    return "".join(made)


def said_from(row: object) -> SaidThere:
    """Return what was kept as plain data.

    Raises:
        TypeError, ValueError: it is something else.
    """
    if not isinstance(row, list | tuple):
        raise TypeError("a row is damaged")
    said = SaidThere(*row)
    name, born, died = said.maker
    identity, title, author = said.source
    return said._replace(
        maker=(name, born, died),
        source=(identity, title, author),
        sizes=tuple(said.sizes),
        passages=tuple(PassageSaid(*each) for each in said.passages),
        signings=tuple(Signing(*each) for each in said.signings),
        dates=tuple(Dated(*each) for each in said.dates),
    )
