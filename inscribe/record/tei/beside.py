"""The record as it stands, beside the elements that tell it in a TEI document.

TEI has elements for what is carved, and none for who settled a reading, for a reader's own text, or
for the marks of a transcriber's convention. So the header bears the record itself (``xenoData``),
without what is only of the house: where the object lies, who has it, how far the work is, the list
it was imported from. A sum over the elements says whether they are as they were written. Where
they are, the record comes back as it was; where somebody changed them they win, and what no element
tells is kept (``unchanged``).
"""

from __future__ import annotations

import hashlib
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from inscribe.record.model import Inscription, Record
from inscribe.record.reading import loads
from inscribe.record.tei.unchanged import partners, with_untold
from inscribe.record.writing import dump

_TAG = "xenoData"
_HOUSE: dict[str, Any] = {"state": "", "drawer": "", "box": "", "with_whom": "", "imported": None}


def add_record(header: ET.Element, document: ET.Element, record: Record) -> None:
    """Add the record to the header of its finished document."""
    beside = ET.SubElement(header, _TAG, type="record", n=_sum(document))
    beside.text = dump(published(record))


def published(record: Record) -> Record:
    """Return the record without what is only of the house that keeps the object.

    >>> from inscribe import load_record
    >>> published(load_record("examples/DEMO-003.toml")._replace(drawer="2")).drawer
    ''
    """
    return record._replace(**_HOUSE, inscriptions=tuple(map(_in_itself, record.inscriptions)))


def _in_itself(inscription: Inscription) -> Inscription:
    """Return an inscription whose sources have their words, rather than naming a file."""
    sources = tuple(replace(s, file="") if s.text else s for s in inscription.sources)
    first = sources[0] if sources else None
    return replace(inscription, source=first, other_sources=sources[1:])


def with_record(told: Record, document: ET.Element, name: str) -> Record:
    """Return the record that stands beside the elements of a document, or what these tell.

    Raises:
        InscribeError: what stands beside them is no record.
    """
    beside = next((each for each in document.iter() if _local(each) == _TAG), None)
    if beside is None:
        return told
    kept = loads(beside.text or "", name)
    if beside.get("n") == _sum(document):
        return kept
    known = partners(told.inscriptions, kept.inscriptions)
    return told._replace(
        inscriptions=tuple(
            with_untold(each, partner) if partner else each
            for each, partner in zip(told.inscriptions, known, strict=True)
        )
    )


def _sum(document: ET.Element) -> str:
    """Return a sum over the elements of a document, their attributes and texts, without spaces."""
    parts = "\n".join(_parts(document))
    return hashlib.sha256(parts.encode("utf-8", "surrogatepass")).hexdigest()[:32]


def _parts(element: ET.Element) -> Iterator[str]:
    yield _local(element)
    for key, value in sorted(element.items()):
        if key != "xmlns":
            yield f"{key}={''.join(value.split())}"
    yield "".join((element.text or "").split())
    for child in element:
        if _local(child) == _TAG:
            continue
        yield from _parts(child)
        yield "".join((child.tail or "").split())


def _local(element: ET.Element) -> str:
    return element.tag.rpartition("}")[2]
