"""Records out of the TEI documents this program writes: the inverse of ``--format tei``.

What the elements tell of a record comes back: object, measurements, transcriptions with their
boxes, hand and execution, translation, remarks, source, pictures, and who read it when. What no
element tells (the readers' own texts, settled readings) stands beside them (``beside``).
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from datetime import date
from typing import get_args

from inscribe import notation, strict
from inscribe.errors import InputError, Place
from inscribe.record.model import (
    ColumnMeasure,
    CopiedText,
    Inscription,
    Maker,
    Measurements,
    Plate,
    Reader,
    Record,
    RecordImage,
    Register,
    SignBox,
)
from inscribe.record.tei.beside import with_record
from inscribe.record.tei.edition import TEI, transcription_of
from inscribe.record.tei.pictures import Pictures, pictures_of
from inscribe.signs import Box
from inscribe.terms import SourceKind

_ID = "{http://www.w3.org/XML/1998/namespace}id"
_NANOMETRE = 6  # decimals of a mm


def records_of_tei(content: str, name: str) -> tuple[Record, ...]:
    """Return the records in a TEI document or corpus that this program wrote.

    Args:
        content: the document.
        name: its file, for messages.

    Raises:
        InputError: the document is not well-formed, declares a document type, is nested too
            deeply, has no edition, or says of a sign what cannot be.

    >>> from inscribe import entries_as_tei, entry_of, load_record
    >>> written = entries_as_tei([entry_of(load_record("examples/DEMO-003.toml"))])
    >>> [record.id for record in records_of_tei(written, "DEMO-003.xml")]
    ['DEMO-003']
    """
    root = strict.xml_root(content, name)
    documents = [root] if root.tag == f"{TEI}TEI" else list(root.iter(f"{TEI}TEI"))
    try:
        found = tuple(with_record(_record(each), each, name) for each in documents)
    except ValueError as error:
        raise InputError(f"the document says what cannot be ({error})", Place(name)) from error
    if not any(record.inscriptions for record in found):
        hint = "expected a document of: inscribe entry --format tei"
        raise InputError("there is no edition of an inscription", Place(name), hint)
    return found


def _record(document: ET.Element) -> Record:
    header = f"{TEI}teiHeader//{TEI}"
    sizes = {
        "length": _size(document, "dim", "length"),
        "width": _size(document, "width"),
        "height": _size(document, "height"),
        "thickness": _size(document, "depth"),
        "diameter": _size(document, "dim", "diameter"),
    }
    pictures = pictures_of(document)
    return Record(
        id=_said(document, f"{header}msIdentifier/{TEI}idno"),
        kind=_said(document, f"{header}objectType"),
        inscriptions=tuple(_inscriptions(document, pictures)),
        title=_said(document, f"{header}msIdentifier/{TEI}msName"),
        measurements=Measurements(**sizes),
        maker=_maker(document.find(f"{header}particDesc//{TEI}person")),
        remarks=_said(document, f"{header}notesStmt/{TEI}note[@type='remarks']"),
        images=pictures.get((0,), ()),
    )


def _size(document: ET.Element, tag: str, kind: str = "") -> float | None:
    wanted = f"[@type='{kind}']" if kind else ""
    path = f"{TEI}teiHeader//{TEI}dimensions[@type='object']/{TEI}{tag}{wanted}"
    said = _said(document, path)
    return float(said) if said else None


def _maker(person: ET.Element | None) -> Maker | None:
    if person is None:
        return None

    def year(tag: str, key: str) -> int | None:
        element = person.find(f"{TEI}{tag}")
        said = element.get(key) if element is not None else None
        return int(said) if said else None

    return Maker(
        name=_said(person, f"{TEI}persName"),
        born=year("birth", "when"),
        died=year("death", "when"),
        active_from=year("floruit", "from"),
        active_to=year("floruit", "to"),
        remarks=_said(person, f"{TEI}note[@type='remarks']"),
    )


def _inscriptions(document: ET.Element, pictures: Pictures) -> Iterator[Inscription]:
    zones = {
        zone.get(_ID, ""): _box(zone)
        for zone in document.iter(f"{TEI}zone")
        if zone.get("type") == "sign"
    }
    for part in document.findall(f"{TEI}text/{TEI}body/{TEI}div[@type='edition']/{TEI}div"):
        head = part.find(f"{TEI}head")
        if head is not None:  # the readings have none
            yield _inscription(document, part, head.text or "", zones, pictures)


def _inscription(
    document: ET.Element,
    part: ET.Element,
    place: str,
    zones: Mapping[str, Box],
    pictures: Pictures,
) -> Inscription:
    number = part.get("n") or ""
    passages = ET.Element("passages")
    passages.extend(part.findall(f"{TEI}ab"))
    t = transcription_of(passages, zones)
    hand = f"{TEI}teiHeader//{TEI}handNote[@n='{number}']/{TEI}term"
    remarks = f"{_part('commentary', number)}/{TEI}note[@type='remarks']"
    sources = list(_sources(document, number, pictures))
    surface = document.find(f"{TEI}facsimile/{TEI}surface[@n='{number}']")
    return Inscription(
        place=place,
        text=notation.write_out(t, "\n"),
        hand=_said(document, f"{hand}[@type='hand']"),
        execution=_said(document, f"{hand}[@type='execution']"),
        register=_register(part.get("subtype") or ""),
        plate=_plate(document, number),
        columns=tuple(_columns(surface)) if surface is not None else (),
        boxes=tuple(SignBox(sign.index, *sign.box) for sign in t.signs if sign.box),
        source=sources[0] if sources else None,
        other_sources=tuple(sources[1:]),
        readers=tuple(_readers(document, number)),
        translation=_said(document, f"{_part('translation', number)}/{TEI}p"),
        remarks=_said(document, remarks),
        images=pictures.get((int(number),), ()) if number else (),
    )


def _part(kind: str, number: str) -> str:
    """Return the path of the part of a division that is about one inscription."""
    return f"{TEI}text/{TEI}body/{TEI}div[@type='{kind}']/{TEI}div[@n='{number}']"


def _register(said: str) -> Register:
    known: tuple[Register, ...] = get_args(Register)
    return next((register for register in known if register == said), "auto")


def _box(zone: ET.Element) -> Box:
    x, y = _corner(zone, "ulx"), _corner(zone, "uly")
    width, height = _corner(zone, "lrx") - x, _corner(zone, "lry") - y
    return Box(x, y, round(width, _NANOMETRE), round(height, _NANOMETRE))


def _corner(zone: ET.Element, key: str) -> float:
    return float(zone.get(key) or "")


def _columns(surface: ET.Element) -> Iterator[ColumnMeasure]:
    for zone in surface.findall(f"{TEI}zone[@type='column']"):
        left, right = zone.get("ulx"), zone.get("lrx")
        x = float(left) if left else None
        width = round(float(right) - x, _NANOMETRE) if right and x is not None else None
        yield ColumnMeasure(_corner(zone, "uly"), _corner(zone, "lry"), x, width)


def _plate(document: ET.Element, number: str) -> Plate | None:
    path = f"{TEI}teiHeader//{TEI}layout[@n='{number}']/{TEI}dimensions[@type='plate']"
    sizes = document.find(path)
    if sizes is None:
        return None
    return Plate(float(_said(sizes, f"{TEI}width")), float(_said(sizes, f"{TEI}height")))


def _sources(document: ET.Element, number: str, pictures: Pictures) -> Iterator[CopiedText]:
    books = document.findall(f"{_part('bibliography', number)}/{TEI}listBibl/{TEI}bibl")
    for of, book in enumerate(books, start=1):
        yield _source(book, pictures.get((int(number), of), ()))


def _source(book: ET.Element, images: tuple[RecordImage, ...]) -> CopiedText:
    words = book.find(f"{TEI}note[@type='words']")
    kind = _said(book, f"{TEI}note[@type='kind']")
    return CopiedText(
        siglum=book.get("n") or "",
        kind=next((known for known in get_args(SourceKind) if known == kind), None),
        text=notation.write_out(transcription_of(words), "\n") if words is not None else "",
        id=_said(book, f"{TEI}idno"),
        title=_said(book, f"{TEI}title[@level='a']"),
        author=_said(book, f"{TEI}author"),
        work=_said(book, f"{TEI}title[@level='m']"),
        number=_said(book, f"{TEI}biblScope"),
        remarks=_said(book, f"{TEI}note[@type='remarks']"),
        images=images,
    )


def _readers(document: ET.Element, number: str) -> Iterator[Reader]:
    for stated in document.findall(f"{TEI}teiHeader//{TEI}respStmt[@n='{number}']"):
        resp = stated.find(f"{TEI}resp")
        when = resp.get("when") if resp is not None else None
        on = date.fromisoformat(when) if when else None
        yield Reader(_said(stated, f"{TEI}name"), on)


def _said(element: ET.Element, path: str) -> str:
    """Return the text at a path, empty where there is none."""
    found = element.find(path)
    return "" if found is None else "".join(found.itertext())
