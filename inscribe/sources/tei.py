"""Source texts out of TEI P5 files.

Each outermost ``lg`` with an id, ``head`` or ``l`` of its own is one text, its ``l`` its lines;
a file without verse is one text, its ``p`` and ``ab`` its lines. ``lb`` begins a new line.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator

from inscribe.errors import InputError, Place
from inscribe.sources.texts import SourceText, source_text

_TEI = "{http://www.tei-c.org/ns/1.0}"
_ID = "{http://www.w3.org/XML/1998/namespace}id"
MAX_DEPTH = 100  # elements within elements
_LEFT_OUT = {_TEI + name for name in ("note", "rdg", "sic", "orig", "abbr", "del")}


def tei_texts(content: str, name: str, stem: str) -> Iterator[SourceText]:
    """Yield the texts of a TEI file.

    Raises:
        InputError: the file is not well-formed XML, declares a document type, is nested more
            than a hundred elements deep, or is not TEI.
    """
    if "<!DOCTYPE" in content or "<!ENTITY" in content:
        raise InputError(
            "document type declarations are not read", Place(name), "remove the DOCTYPE"
        )
    try:
        root = ET.fromstring(content)
    except ET.ParseError as error:
        line, column = error.position
        raise InputError(
            "the file is not well-formed XML", Place(name, line, column + 1)
        ) from error
    if _depth(root) > MAX_DEPTH:
        limit = f"elements are nested deeper than the limit of {MAX_DEPTH}"
        raise InputError(limit, Place(name), "flatten the file")
    body = root.find(f".//{_TEI}text")
    if body is None:
        raise InputError(
            "there is no TEI text element", Place(name), "expected TEI P5 with its namespace"
        )
    title = _words(root.find(f".//{_TEI}titleStmt/{_TEI}title"))
    licence = _words(root.find(f".//{_TEI}licence"))
    stanzas = list(_outermost_stanzas(body))
    for number, stanza in enumerate(stanzas, start=1):
        head = _words(stanza.find(f"{_TEI}head"))
        yield source_text(
            stanza.get(_ID, f"{stem}:{number}"),
            "\n".join(_lines(stanza, ("l",))),
            Place(name),
            title=head or title,
            provenance=title,
            licence=licence,
        )
    if not stanzas:
        text = "\n".join(_lines(body, ("p", "ab", "l")))
        yield source_text(root.get(_ID, stem), text, Place(name), title=title, licence=licence)


def _depth(root: ET.Element) -> int:
    depth, level = 0, [root]
    while level:
        depth, level = depth + 1, [child for element in level for child in element]
        if depth > MAX_DEPTH:
            break
    return depth


def _outermost_stanzas(element: ET.Element) -> Iterator[ET.Element]:
    for child in element:
        if child.tag == f"{_TEI}lg":
            yield child
        else:
            yield from _outermost_stanzas(child)


def _lines(element: ET.Element, names: tuple[str, ...]) -> Iterator[str]:
    tags = {_TEI + name for name in names}
    for child in element.iter():
        if child.tag in tags:
            yield from (line for line in _plain(child).split("\n") if line)


def _plain(element: ET.Element | None) -> str:
    return "" if element is None else "".join(_pieces(element)).strip()


def _words(element: ET.Element | None) -> str:
    return "" if element is None else " ".join("".join(element.itertext()).split())


def _pieces(element: ET.Element) -> Iterator[str]:
    if element.tag == f"{_TEI}lb":
        yield "\n"
    if element.tag not in _LEFT_OUT:
        yield "".join((element.text or "").split())
        for child in element:
            yield from _pieces(child)
            yield "".join((child.tail or "").split())
