"""Entries as TEI P5 after the EpiDoc conventions.

The edition keeps the metal's columns as ``lb``; certainty is ``unclear``, ``supplied``, ``gap``
and ``del``; a sign in an old or variant form is ``choice`` with ``orig`` (as carved) and ``reg``;
the collation with the source is an apparatus of ``app`` with ``lem`` (source), ``rdg`` (copy).
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report.xml import XML_ID, XML_LANG, add, append_text, document, identifier
from inscribe.signs import Certainty, Intervention, Kind

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.signs import Sign, Transcription

TEI = "http://www.tei-c.org/ns/1.0"


def entries_as_tei(entries: list[Entry]) -> str:
    """Return one TEI document, or a ``teiCorpus`` where there are several entries."""
    if len(entries) == 1:
        root = _tei(entries[0])
    else:
        root = ET.Element("teiCorpus")
        _header(root, "Inscriptions", [])
        root.extend(_tei(entry) for entry in entries)
    root.set("xmlns", TEI)
    return document(root)


def _tei(entry: Entry) -> ET.Element:
    root = ET.Element("TEI", {XML_ID: identifier(entry.record.id)})
    title = f"{entry.record.id} {entry.record.title}".strip()
    _header(root, title, [entry])
    body = add(add(root, "text"), "body")
    for number, each in enumerate(entry.inscriptions, start=1):
        _inscription(body, each, number, f"{identifier(entry.record.id)}-{number}")
    return root


def _header(root: ET.Element, title: str, entries: list[Entry]) -> None:
    description = add(add(root, "teiHeader"), "fileDesc")
    add(add(description, "titleStmt"), "title", title)
    add(add(description, "publicationStmt"), "p", "Exported from records; not published.")
    source = add(description, "sourceDesc")
    if not entries:
        add(source, "p", "Objects described in the documents of this corpus.")
    for entry in entries:
        described = add(source, "msDesc")
        add(add(described, "msIdentifier"), "idno", entry.record.id)
        physical = add(described, "physDesc")
        form = add(add(physical, "objectDesc"), "supportDesc")
        support = add(add(form, "support"), "p")
        add(support, "objectType", entry.record.kind)
        _dimensions(support, entry)
        hands = [i.inscription for i in entry.inscriptions if i.inscription.hand]
        if hands:
            notes = add(physical, "handDesc")
            for inscription in hands:
                said = ", ".join(filter(None, (inscription.hand, inscription.execution)))
                add(notes, "handNote", said)


def _dimensions(support: ET.Element, entry: Entry) -> None:
    sizes = entry.record.measurements
    known = {"height": sizes.height or sizes.length, "width": sizes.width or sizes.diameter}
    known["depth"] = sizes.thickness
    if any(known.values()):
        dimensions = add(support, "dimensions", unit="mm")
        for name, value in known.items():
            if value:
                add(dimensions, name, f"{value:g}")


def _inscription(body: ET.Element, each: InscriptionEntry, number: int, name: str) -> None:
    part = add(body, "div", type="textpart", subtype="inscription", n=str(number))
    add(part, "head", each.inscription.place)
    edition = add(part, "div", type="edition")
    edition.set(XML_LANG, "ja")
    _edition(add(edition, "ab"), each.inscription.transcription, _regular_forms(each))
    reading = add(part, "div", type="textpart", subtype="reading")
    for lang, text in (("ja-Hira", each.reading.kana), ("ja-Latn", each.reading.romaji)):
        add(reading, "p", text).set(XML_LANG, lang)
    if each.collation and each.collation.differences:
        _apparatus(part, each, name)
    if each.inscription.translation:
        add(add(part, "div", type="translation"), "p", each.inscription.translation.strip())
    if each.inscription.remarks:
        add(add(part, "div", type="commentary"), "p", each.inscription.remarks.strip())


def _regular_forms(each: InscriptionEntry) -> dict[int, str]:
    return {c.sign: c.after for c in each.interpretation.changes if c.after}


def _edition(block: ET.Element, t: Transcription, regular: dict[int, str]) -> None:
    line = 0
    for number, face in enumerate(t.faces, start=1):
        if len(t.faces) > 1:
            add(block, "milestone", unit="face", n=str(number))
        for column in face.columns:
            line += 1
            add(block, "lb", n=str(line))
            for sign in column.signs:
                _sign(block, sign, regular.get(sign.index, ""))


def _sign(block: ET.Element, sign: Sign, regular: str) -> None:
    if sign.kind is Kind.GAP:
        add(block, "gap", reason="lost", extent="unknown", unit="character")
    elif sign.kind is Kind.KAO:
        add(block, "seg", "花押", type="kao")
    elif sign.kind is Kind.SEAL:
        seal = add(block, "seg", sign.text, type="seal")
        if not sign.text:
            add(seal, "gap", reason="illegible", extent="unknown", unit="character")
    elif not sign.text:
        holder = add(block, "del", rend="struck") if sign.certainty is Certainty.STRUCK else block
        add(holder, "gap", reason="illegible", quantity="1", unit="character")
    else:
        _character(_holder(block, sign), sign, regular)


def _holder(block: ET.Element, sign: Sign) -> ET.Element:
    """Return the element, new or ``block`` itself, that says how sure the sign is."""
    if sign.intervention is Intervention.SUPPLIED:
        return add(block, "supplied", reason="omitted")
    if sign.intervention is Intervention.SUPERFLUOUS:
        return add(block, "surplus")
    if sign.intervention is Intervention.EXPANDED:
        return add(add(block, "expan"), "ex")
    if sign.certainty is Certainty.DAMAGED:
        return add(block, "unclear", reason="damage")
    if sign.certainty is Certainty.DOUBTFUL:
        return add(block, "unclear", cert="low")
    if sign.certainty is Certainty.RESTORED:
        return add(block, "supplied", reason="lost")
    if sign.certainty is Certainty.STRUCK:
        return add(block, "del", rend="struck")
    return block


def _character(holder: ET.Element, sign: Sign, regular: str) -> None:
    if sign.sic:
        holder = add(holder, "sic")
    if regular and regular != sign.text:
        choice = add(holder, "choice")
        add(choice, "orig", sign.text)
        add(choice, "reg", regular)
    else:
        append_text(holder, sign.text)


def _apparatus(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    assert each.collation is not None
    source = each.inscription.source
    named = ", ".join(filter(None, (source.author, source.work, source.number))) if source else ""
    apparatus = add(part, "div", type="apparatus")
    listed = add(apparatus, "listWit")
    for witness, said in (("source", named or "source text"), ("copy", each.inscription.place)):
        add(listed, "witness", said).set(XML_ID, f"{name}-{witness}")
    readings = add(apparatus, "listApp")
    for group in each.collation.differences:
        app = add(readings, "app", type=group.kind)
        for tag, witness, span in (("lem", "source", group.source), ("rdg", "copy", group.copy)):
            add(app, tag, span.text, wit=f"#{name}-{witness}")
        if group.why:
            add(app, "note", group.why)
