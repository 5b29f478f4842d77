"""Entries as TEI P5 after the EpiDoc conventions.

The edition keeps the metal's columns as ``lb``; certainty is ``unclear``, ``supplied``, ``gap``
and ``del``; a sign in an old or variant form is ``choice`` with ``orig`` (as carved) and ``reg``;
the collation with the source is an apparatus of ``app`` with ``lem`` (source), ``rdg`` (copy).
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from inscribe.report.entries.style import Style
from inscribe.report.entries.xml import XML_ID, XML_LANG, add, append_text, document, identifier
from inscribe.signs import Certainty, Intervention, Kind

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.signs import Sign, Transcription

TEI = "http://www.tei-c.org/ns/1.0"


def entries_as_tei(entries: list[Entry]) -> str:
    """Return one TEI document, or a ``teiCorpus`` where there are several entries."""
    if len(entries) == 1:
        root = _tei(entries[0], identifier(entries[0].record.id))
    else:
        root = ET.Element("teiCorpus")
        _header(root, "Inscriptions", [])
        root.extend(map(_tei, entries, _names(entries)))
    root.set("xmlns", TEI)
    return document(root)


def _names(entries: list[Entry]) -> Iterator[str]:
    """Yield an XML id for each entry, different even where two records bear one id."""
    seen: Counter[str] = Counter()
    for entry in entries:
        name = identifier(entry.record.id)
        seen[name] += 1
        yield name if seen[name] == 1 else f"{name}_k{seen[name]}"


def _tei(entry: Entry, name: str) -> ET.Element:
    root = ET.Element("TEI", {XML_ID: name})
    title = f"{entry.record.id} {entry.record.title}".strip()
    _header(root, title, [entry])
    body = add(add(root, "text"), "body")
    _add_parts(body, entry, name)
    return root


def _header(root: ET.Element, title: str, entries: list[Entry]) -> None:
    description = add(add(root, "teiHeader"), "fileDesc")
    add(add(description, "titleStmt"), "title", title)
    add(add(description, "publicationStmt"), "p", "Exported from records; not published.")
    cautions = [caution for entry in entries for caution in entry.cautions]
    notes = add(description, "notesStmt") if cautions else description
    for caution in cautions:
        add(notes, "note", Style().caution(caution))
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


def _add_parts(body: ET.Element, entry: Entry, name: str) -> None:
    """Add the divisions of EpiDoc, in each of them a part for each inscription that has one."""
    for attributes, fill in _DIVISIONS:
        division = ET.Element("div", attributes)
        for number, each in enumerate(entry.inscriptions, start=1):
            part = ET.Element("div", type="textpart", n=str(number))
            fill(part, each, f"{name}_i{number}")
            if len(part):
                division.append(part)
        if len(division):
            body.append(division)


def _fill_edition(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    add(part, "head", each.inscription.place)
    block = add(part, "ab")
    block.set(XML_LANG, "ja")
    _edition(block, each.inscription.transcription, _regular_forms(each), name)


def _fill_reading(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    for lang, text in (("ja-Hira", each.reading.kana), ("ja-Latn", each.reading.romaji)):
        if text:
            add(part, "ab", text).set(XML_LANG, lang)


def _fill_apparatus(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    if each.collation and each.collation.differences:
        _apparatus(part, each, name)


def _fill_translation(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    if each.inscription.translation.strip():
        add(part, "p", each.inscription.translation.strip())


def _fill_commentary(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    for date in each.interpretation.dates:
        note = add(part, "p", "Date: ")
        dated = add(note, "date", date.text)
        dated.set(XML_LANG, "ja")
        if date.first_day and date.last_day:
            dated.set("notBefore", date.first_day.isoformat())
            dated.set("notAfter", date.last_day.isoformat())
        append_text(note, f" {date.why}")
    if each.inscription.remarks.strip():
        add(part, "p", each.inscription.remarks.strip())


def _regular_forms(each: InscriptionEntry) -> dict[int, str]:
    return {c.sign: c.after for c in each.interpretation.changes if c.after}


def _edition(block: ET.Element, t: Transcription, regular: dict[int, str], name: str) -> None:
    line = 0
    for number, face in enumerate(t.faces, start=1):
        if len(t.faces) > 1:
            add(block, "milestone", unit="face", n=str(number))
        for column in face.columns:
            line += 1
            add(block, "lb", n=str(line)).set(XML_ID, f"{name}-lb{line}")
            for sign in column.signs:
                _sign(block, sign, regular.get(sign.index, ""))


def _sign(block: ET.Element, sign: Sign, regular: str) -> None:
    block = add(block, "sic") if sign.sic else block
    if sign.intervention is Intervention.EXPANDED:
        expansion = add(_by_certainty(block, sign), "expan")
        _carved(add(expansion, "ex") if sign.is_legible else expansion, sign, "")
    elif sign.intervention is Intervention.SUPPLIED:
        _carved(_by_certainty(add(block, "supplied", reason="omitted"), sign), sign, regular)
    elif sign.intervention is Intervention.SUPERFLUOUS:
        _carved(_by_certainty(add(block, "surplus"), sign), sign, regular)
    else:
        _carved(_by_certainty(block, sign), sign, regular)


def _by_certainty(block: ET.Element, sign: Sign) -> ET.Element:
    """Return the element, new or ``block`` itself, that says how sure the sign is."""
    if sign.certainty is Certainty.DAMAGED:
        return add(block, "unclear", reason="damage")
    if sign.certainty is Certainty.DOUBTFUL:
        return add(block, "unclear", cert="low")
    if sign.certainty is Certainty.RESTORED:
        return add(block, "supplied", reason="lost")
    if sign.certainty is Certainty.STRUCK:
        return add(block, "del", rend="struck")
    return block


def _carved(holder: ET.Element, sign: Sign, regular: str) -> None:
    if sign.kind is Kind.GAP:
        add(holder, "gap", reason="lost", extent="unknown", unit="character")
    elif sign.kind is Kind.KAO:
        add(holder, "seg", "花押", type="kao")
    elif sign.kind is Kind.SEAL:
        seal = add(holder, "seg", sign.text, type="seal")
        if not sign.text:
            add(seal, "gap", reason="illegible", extent="unknown", unit="character")
    elif not sign.text:
        add(holder, "gap", reason="illegible", quantity="1", unit="character")
    elif regular and regular != sign.text:
        choice = add(holder, "choice")
        add(choice, "orig", sign.text)
        add(choice, "reg", regular)
    else:
        append_text(holder, sign.text)


def _apparatus(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    """Add witnesses and readings; each reading names the line of the copy where it stands."""
    assert each.collation is not None
    source = each.inscription.source
    named = ", ".join(filter(None, (source.author, source.work, source.number))) if source else ""
    witnesses = add(part, "listWit")
    for witness, said in (("source", named or "source text"), ("copy", each.inscription.place)):
        add(witnesses, "witness", said).set(XML_ID, f"{name}-{witness}")
    readings = add(part, "listApp")
    signs = each.inscription.transcription.signs
    for group in each.collation.differences:
        at = min(group.copy.start, len(signs) - 1)
        app = add(readings, "app", type=group.kind)
        if signs:
            app.set("from", f"#{name}-lb{signs[at].column + 1}")
        for tag, witness, span in (("lem", "source", group.source), ("rdg", "copy", group.copy)):
            add(app, tag, span.text, wit=f"#{name}-{witness}").set(XML_LANG, "ja")
        if group.why:
            add(app, "note", group.why)


_DIVISIONS: tuple[tuple[dict[str, str], Callable[[ET.Element, InscriptionEntry, str], None]], ...]
_DIVISIONS = (
    ({"type": "edition"}, _fill_edition),
    ({"type": "edition", "subtype": "reading"}, _fill_reading),
    ({"type": "apparatus"}, _fill_apparatus),
    ({"type": "translation", XML_LANG: "en"}, _fill_translation),
    ({"type": "commentary"}, _fill_commentary),
)
