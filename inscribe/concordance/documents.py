"""What the concordance keeps of each inscription: its signs, its words by sound, who and when.

A document is plain data, so that it can be kept in the cache as it is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Literal, NamedTuple

from inscribe import notation, tables
from inscribe.concordance.said import SaidThere, of_record, said_from, said_of
from inscribe.sources import found_by_of_row, said_of_word, sound_key, stem_key

if TYPE_CHECKING:
    from pathlib import Path

    from inscribe.keys import DocumentKeys
    from inscribe.reading.inscription import Choice
    from inscribe.reading.words import Interpretation, SignaturePart
    from inscribe.record import Inscription, Record
    from inscribe.signs import Transcription
    from inscribe.sources import KeptWords

LONGEST_NAME = 40
_MOST_KEPT = 2_000  # texts read, kept for the records that bear the same ...
_LONGEST_KEPT = 200  # ... and the characters of such a text: signatures and poems recur


class Document(NamedTuple):
    """One inscription or source text.

    ``signs`` are the signs as carved (□ where unreadable), ``normal`` the text in current forms,
    ``origin[i]`` the sign ``normal[i]`` came from, ``words`` the words as read: first sign, last
    sign, sound key, and the stem of a verb or adjective (else empty). ``carver`` is the name the
    signature gives, in current forms: as read, no attribution; ``others`` are the names of other
    persons who signed (who wrote, who composed), in current forms and in Latin letters;
    ``persons`` are those of the user's list whom it may name: the name as it stands there, the
    person and the reasons, the likelier first; ``year`` is the western year of its first date;
    ``said`` is what it says of persons, places and dates.
    """

    object: str
    kind: str
    file: str
    inscription: int  # from 1
    place: str
    signs: tuple[str, ...]
    normal: str
    origin: tuple[int, ...]
    words: tuple[tuple[int, int, str, str], ...]
    register: str
    year: int | None
    carver: str
    carver_romaji: str
    others: tuple[tuple[str, str], ...] = ()
    persons: tuple[tuple[str, str, str], ...] = ()
    said: SaidThere = SaidThere()

    @property
    def names(self) -> tuple[str, ...]:
        """Everybody who signed, each once, the carver first."""
        found = (self.carver, *(name for name, _ in self.others))
        return tuple(dict.fromkeys(filter(None, found)))

    @property
    def names_a_person(self) -> bool:
        """Whether a name was read in it, or may be that of a person of the user's list."""
        return bool(self.names or self.persons)

    @property
    def carved(self) -> str:
        """The text as carved."""
        return "".join(self.signs)

    def to_dict(self) -> DocumentKeys:
        """Return it as printed in JSON."""
        return {
            "object": self.object,
            "kind": self.kind,
            "file": self.file,
            "inscription": self.inscription,
            "place": self.place,
            "year": self.year,
            "carver": self.carver,
            "carver_romaji": self.carver_romaji,
            "persons": [
                {"text": text, "name": name, "why": why} for text, name, why in self.persons
            ],
            "others": [{"name": name, "romaji": romaji} for name, romaji in self.others],
            "text": self.carved,
        }


def documents_of_record(record: Record, file: str, library: Path | None = None) -> list[Document]:
    """Return a document for each inscription of a record; the first date and name stand for all.

    ``library`` is the file that has the words of sources named by their id alone.
    """
    if tables.has_own("people"):
        read = _read_with_persons(record, library)
    else:
        read = [_read_inscription(each, record.between, library) for each in record.inscriptions]
    return documents_of_read(record, file, read)


def documents_of_read(record: Record, file: str, read: Sequence[Document]) -> list[Document]:
    """Return the documents of a record's inscriptions, read one by one, as those of one object."""
    years = [each.year for each in read if each.year is not None]
    names = [each.carver for each in read if each.carver]
    romaji = [each.carver_romaji for each in read if each.carver]
    return [
        each._replace(
            object=record.id,
            kind=record.kind,
            file=file,
            inscription=number,
            place=inscription.place,
            year=years[0] if years else None,
            carver=names[0] if names else "",
            carver_romaji=romaji[0] if names else "",
            said=of_record(each.said, record, inscription),
        )
        for number, (inscription, each) in enumerate(
            zip(record.inscriptions, read, strict=True), start=1
        )
    ]


def _read_with_persons(record: Record, library: Path | None) -> list[Document]:
    """Return a document for each inscription that says whom of the user's list it may name."""
    from inscribe.persons import with_persons

    read = [_interpretation(each, record.between, library) for each in record.inscriptions]
    return [
        document_of_read(each.transcription, found)
        for each, found in zip(record.inscriptions, with_persons(read), strict=True)
    ]


def _read_inscription(
    each: Inscription, between: tuple[int, int] | None, library: Path | None
) -> Document:
    settled = each.overrides or each.passages or each.source
    if settled or len(each.text) > _LONGEST_KEPT:
        return _read(each, between, library)
    return _read_text(each.text, each.notation, each.register, between)


@tables.cached(_MOST_KEPT)
def _read_text(
    text: str,
    convention: Literal["japanese", "leiden"],
    register: Choice,
    between: tuple[int, int] | None,
) -> Document:
    from inscribe.record import Inscription

    return _read(Inscription("", text, convention, register=register), between)


def _read(
    inscription: Inscription, between: tuple[int, int] | None, library: Path | None = None
) -> Document:
    read = _interpretation(inscription, between, library)
    return _document("", "", "", "", inscription.transcription, read)


def _interpretation(
    inscription: Inscription, between: tuple[int, int] | None, library: Path | None
) -> Interpretation:
    from inscribe import reading
    from inscribe.sources import spelling_of

    return reading.read(
        inscription.transcription,
        inscription.register,
        inscription.overrides,
        between=between,
        alternatives=False,
        doubts=False,
        passages=inscription.passages,
        source=spelling_of(inscription.source, library),
    )


def document_of_read(text: Transcription, read: Interpretation) -> Document:
    """Return an inscription that was read as a document, of no object as yet."""
    document = _document("", "", "", "", text, read)
    persons = tuple((named.text, named.name, named.why) for named in read.persons)
    return document._replace(persons=persons)


def document_of_source(kept: KeptWords, file: str) -> Document:
    """Return a text of the library as a document; its title stands for the place."""
    found = found_by_of_row(kept.row)
    return Document(kept.id, "source text", file, 1, kept.title, *found, "prose", None, "", "")


def document_of_text(identity: str, text: str) -> Document:
    """Return a literal text as a document."""
    from inscribe import reading

    parsed = notation.parse(text)
    read = reading.read(parsed, alternatives=False, doubts=False)
    return _document(identity, "text", "", "", parsed, read)


def _other_names(read: Interpretation, carver: str) -> tuple[tuple[str, str], ...]:
    """Return the names of those who signed beside the carver."""
    named = (_name(each.signature) for each in read.passages if each.kind == "signature")
    return tuple(dict.fromkeys(name for name in named if name and name[0] != carver))


def _name(signature: Mapping[str, SignaturePart] | None) -> tuple[str, str] | None:
    """Return the name a signature gives, in current forms and in Latin letters."""
    if signature is None:
        return None
    from inscribe.forms import normalise_text

    parts = [part for key in ("surname", "art_name", "name") if (part := signature.get(key))]
    if not parts:
        return None
    written = normalise_text("".join(part.text for part in parts)).text
    return written[:LONGEST_NAME], " ".join(part.romaji for part in parts)


def _document(
    identity: str, kind: str, file: str, place: str, text: Transcription, read: Interpretation
) -> Document:
    from inscribe.forms import normalise
    from inscribe.reading.words import shown

    normal = normalise(text)
    words = read.proposals[0].tokens if read.proposals else ()
    carver, romaji = _name(read.signature) or ("", "")
    year = next((date.year for date in read.dates if date.year is not None), None)
    return Document(
        identity,
        kind,
        file,
        1,
        place,
        tuple(map(shown, text.signs)),
        normal.text,
        normal.origin,
        tuple(
            sorted(
                (w.first, w.last, sound_key(said_of_word(w)), stem_key(w.lemma, w.part_of_speech))
                for w in words
            )
        ),
        read.register,
        year,
        carver,
        romaji,
        _other_names(read, carver),
        said=said_of(read),
    )


def rows_of(documents: Sequence[Document]) -> list[list[object]]:
    """Return documents as lists that JSON can hold."""
    return [list(document) for document in documents]


def of_rows(rows: Sequence[Sequence[object]]) -> list[Document]:
    """Return the documents that :func:`rows_of` wrote.

    Raises:
        TypeError, ValueError: the rows are not what it writes.
    """
    found = []
    for row in rows:
        document = Document(*row)  # type: ignore[arg-type]
        document = document._replace(
            signs=tuple(document.signs),
            origin=tuple(document.origin),
            words=tuple((first, last, key, stem) for first, last, key, stem in document.words),
            others=tuple((name, romaji) for name, romaji in document.others),
            persons=tuple((name, person, why) for name, person, why in document.persons),
            said=said_from(document.said),
        )
        if len(document.normal) != len(document.origin):
            raise ValueError("a row is damaged")
        found.append(document)
    return found
