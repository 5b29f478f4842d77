"""The texts that inscriptions copy, as works related to the object."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import TYPE_CHECKING

from inscribe.report.entries import COLUMN_END, JAPANESE, source_lines
from inscribe.report.lido.parts import add_concept, add_part, add_text
from inscribe.report.lido.resources import addresses

if TYPE_CHECKING:
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.record import CopiedText
    from inscribe.report import Style

RELATION = "text copied in the inscription"


def add_related_works(described: ET.Element, entry: Entry, style: Style) -> None:
    """Add the source of each inscription that names one."""
    copied = [each for each in entry.inscriptions if each.inscription.source]
    if copied:
        works = add_part(add_part(described, "objectRelationWrap"), "relatedWorksWrap")
        for each in copied:
            _add_work(works, each, style)


def _add_work(works: ET.Element, each: InscriptionEntry, style: Style) -> None:
    source = each.inscription.source
    assert source is not None
    related = add_part(works, "relatedWorkSet")
    add_text(related, "displayRelatedWork", _named(source), style.language)
    work = add_part(add_part(related, "relatedWork"), "object")
    for image in source.images:
        for _, address in addresses(image):
            add_part(work, "objectWebResource", address)
    if source.id:
        add_part(work, "objectID", source.id, **{"lido:type": "local"})
    if title := source.title or source.work:
        add_text(add_part(work, "objectName"), "appellationValue", title, style.language)
    if source.author:
        note = {"lido:type": "author"}
        add_text(work, "objectNote", source.author, style.language, **note)
    if each.collation:
        words = COLUMN_END.join(source_lines(each.collation))
        add_text(work, "objectNote", words, JAPANESE, **{"lido:type": "words"})
    add_concept(related, "relatedWorkRelType", "relation", RELATION)
    if source.remarks.strip():
        add_text(related, "sourceRelatedWorkSet", source.remarks.strip(), style.language)


def _named(source: CopiedText) -> str:
    """Return what a source is called: author, work, number and title, as far as they are known."""
    said = (source.author, source.work, source.number, source.title)
    return ", ".join(filter(None, said)) or source.id or "a text without a title"
