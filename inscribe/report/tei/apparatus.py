"""The apparatus: where the copy differs from its source, sign by sign, and the source's title.

The lemma is what the edition has; the reading is that of the source, which ``source`` names. EpiDoc
has no list of witnesses: an inscription is its own and only one.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report import XML_ID, XML_LANG, add
from inscribe.report.entries import JAPANESE, printed_sides
from inscribe.report.tei.edition import Marks, add_edition, anchor_id

if TYPE_CHECKING:
    from inscribe.collation import Collation, Group
    from inscribe.entry import InscriptionEntry


def anchored(each: InscriptionEntry) -> tuple[frozenset[int], frozenset[int]]:
    """Return the signs before which a difference begins, and those after which one ends."""
    differences = each.collation.differences if each.collation else ()
    count = len(each.inscription.transcription.signs)
    starts = {group.copy.start for group in differences if group.copy.start < count}
    ends = {group.copy.end - 1 for group in differences if len(group.copy)}
    if any(group.copy.start >= count for group in differences):
        ends.add(count - 1)
    return frozenset(starts), frozenset(ends)


def add_apparatus(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    """Add the differences from the source; each names the signs of the edition it is about."""
    if each.collation is None or not each.collation.differences:
        return
    listed = add(part, "listApp")
    for group in each.collation.differences:
        first, last = _ends(group, name, len(each.inscription.transcription.signs))
        app = add(listed, "app", type=group.kind, **({"from": first, "to": last} if first else {}))
        copied, source = printed_sides(group, each.collation)
        add(app, "lem", copied).set(XML_LANG, JAPANESE)
        add(app, "rdg", source, source=f"#{name}-source").set(XML_LANG, JAPANESE)
        if group.why:
            add(app, "note", group.why)


def _ends(group: Group, name: str, count: int) -> tuple[str, str]:
    """Return the anchors between which a difference stands in the edition; none if it is empty."""
    if not count:
        return "", ""
    if group.copy.start >= count:  # left out after the last sign
        last = "#" + anchor_id(name, count - 1, end=True)
        return last, last
    first = "#" + anchor_id(name, group.copy.start)
    if not len(group.copy):
        return first, first
    return first, "#" + anchor_id(name, group.copy.end - 1, end=True)


def add_bibliography(part: ET.Element, each: InscriptionEntry, name: str) -> None:
    """Add the source that is copied, with its words where they are known."""
    source = each.inscription.source
    if source is None:
        return
    book = add(add(part, "listBibl"), "bibl", type="source")
    book.set(XML_ID, f"{name}-source")
    for tag, text, attributes in (
        ("author", source.author, {}),
        ("title", source.work, {"level": "m"}),
        ("biblScope", source.number, {"unit": "number"}),
        ("title", source.title, {"level": "a"}),
        ("idno", source.id, {"type": "library"}),
        ("note", source.remarks.strip(), {"type": "remarks"}),
    ):
        if text:
            add(book, tag, text, **attributes)
    if each.collation:
        _add_words(book, each.collation, name)
    elif not len(book):
        add(book, "note", each.missing_source or "a source without a title")


def _add_words(book: ET.Element, held: Collation, name: str) -> None:
    words = add(book, "note", type="words")
    words.set(XML_LANG, JAPANESE)
    add_edition(words, held.source, Marks(f"{name}-source"))
