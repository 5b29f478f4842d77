"""The apparatus: where the copy differs from its source, sign by sign, and the source's title.

The lemma is what the edition has; the reading is that of the source, which ``source`` names. EpiDoc
has no list of witnesses: an inscription is its own and only one.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import XML_ID, XML_LANG, add
from inscribe.report.entries import JAPANESE, printed_spans
from inscribe.report.tei.edition import Marks, add_edition, anchor_id

if TYPE_CHECKING:
    from inscribe.collation import Collation, Span, Testimony
    from inscribe.entry import InscriptionEntry
    from inscribe.record import CopiedText


def anchored(each: InscriptionEntry) -> tuple[frozenset[int], frozenset[int]]:
    """Return the signs before which a difference begins, and those after which one ends."""
    spans = [copied for _, copied, _, _ in told(each.collation)] if each.collation else []
    if each.testimony:
        spans = [place.copy for place in each.testimony.places]
    count = len(each.inscription.transcription.signs)
    starts = {span.start for span in spans if span.start < count}
    ends = {span.end - 1 for span in spans if len(span)}
    if any(span.start >= count for span in spans):
        ends.add(count - 1)
    return frozenset(starts), frozenset(ends)


def add_apparatus(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    """Add the differences from the source; each names the signs of the edition it is about.

    Where the record names several sources, every place where any of them differs is one entry: the
    sources that have the copy's wording stand with the lemma.
    """
    if each.testimony:
        _add_places(part, each, each.testimony, name)
        return
    held = each.collation
    if held is None or not (entries := told(held)):
        return
    listed = add(part, "listApp")
    witness = f"#{source_id(name, each.held_against[0])}"
    for kind, copied, source, why in entries:
        first, last = _ends(copied, name, len(each.inscription.transcription.signs))
        app = add(listed, "app", type=kind, **({"from": first, "to": last} if first else {}))
        lemma, reading = printed_spans(copied, source, held)
        add(app, "lem", lemma).set(XML_LANG, JAPANESE)
        add(app, "rdg", reading, source=witness).set(XML_LANG, JAPANESE)
        if why:
            add(app, "note", why)


def told(held: Collation) -> list[tuple[str, Span, Span, str]]:
    """Return kind, signs of the copy, signs of the source, and reason of each entry.

    A difference in wording stands as an edition prints it, and takes in those in writing only that
    stand inside it. Those of a modern edition are its editor's, and no readings.
    """
    found = []
    for entry in held.printed:
        groups = [held.groups[at] for at in entry.groups]
        why = "; ".join(dict.fromkeys(group.why for group in groups if group.why))
        found.append((groups[0].kind, entry.copy, entry.source, why))
    for group in held.differences if held.fidelity.by_signs else ():
        inside = (
            entry.copy.start <= group.copy.start and group.copy.end <= entry.copy.end
            for entry in held.printed
        )
        if not group.is_substantive and not any(inside):
            found.append((group.kind, group.copy, group.source, group.why))
    return sorted(found, key=lambda each: (each[1].start, each[1].end, each[2].start))


def _add_places(part: ET.Element, each: InscriptionEntry, found: Testimony, name: str) -> None:
    given = zip(each.held_against, found.as_given, strict=True)
    ids = {witness.siglum: f"#{source_id(name, number)}" for number, witness in given}
    count = len(each.inscription.transcription.signs)
    listed = add(part, "listApp") if found.places else part
    for place in found.places:
        first, last = _ends(place.copy, name, count)
        app = add(listed, "app", **({"from": first, "to": last} if first else {}))
        agreeing = " ".join(ids[r.siglum] for r in place.readings if r.agrees)
        lemma = add(app, "lem", place.copy.text, **({"source": agreeing} if agreeing else {}))
        lemma.set(XML_LANG, JAPANESE)
        for text, sigla in place.variants:
            sources = " ".join(ids[siglum] for siglum in sigla)
            add(app, "rdg", text, source=sources).set(XML_LANG, JAPANESE)
        if place.after:
            add(app, "note", f"after {place.after}")


def source_id(name: str, number: int) -> str:
    """Return the id of a source, counted from 0."""
    return f"{name}-source" if not number else f"{name}-source-{number + 1}"


def _ends(span: Span, name: str, count: int) -> tuple[str, str]:
    """Return the anchors between which a difference stands in the edition; none if it is empty."""
    if not count:
        return "", ""
    if span.start >= count:  # left out after the last sign
        last = "#" + anchor_id(name, count - 1, end=True)
        return last, last
    first = "#" + anchor_id(name, span.start)
    if not len(span):
        return first, first
    return first, "#" + anchor_id(name, span.end - 1, end=True)


def add_bibliography(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    """Add the source that is copied, with its words where they are known."""
    if each.inscription.source is None:
        return
    listed = add(part, "listBibl")
    for number, source in enumerate(each.inscription.sources):
        _add_source(listed, each, source, name, number)


def _add_source(
    listed: ET.Element, each: InscriptionEntry, source: CopiedText, name: str, number: int
) -> None:
    book = add(listed, "bibl", type="source", **({"n": source.siglum} if source.siglum else {}))
    book.set(XML_ID, source_id(name, number))
    held = each.collation_with(number)
    for tag, text, attributes in (
        ("author", source.author, {}),
        ("title", source.work, {"level": "m"}),
        ("biblScope", source.number, {"unit": "number"}),
        ("title", source.title, {"level": "a"}),
        ("idno", source.id, {"type": "library"}),
        ("note", source.kind or "", {"type": "kind"}),
        ("note", source.remarks.strip(), {"type": "remarks"}),
    ):
        if text:
            add(book, tag, text, **attributes)
    if held:
        _add_words(book, held, source_id(name, number))
    elif not len(book):
        add(book, "note", each.missing_source or "a source without a title")


def _add_words(book: ET.Element, held: Collation, name: str) -> None:
    words = add(book, "note", type="words")
    words.set(XML_LANG, JAPANESE)
    add_edition(words, held.source, Marks(name))
