"""Source texts out of TEI P5 files.

Each outermost ``lg`` is one text, its ``l`` its lines. Outside verse, each innermost ``div``,
``ab``, ``p`` or ``l`` with an ``xml:id`` is one text; all that has no such name is one more text.
``lb`` begins a new line. A corpus, or a group of texts, is read text by text; a text without a name
of its own has that of the ``text`` or ``TEI`` element it fills.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator

from inscribe.errors import InputError, Place
from inscribe.sources.texts import SourceText, source_text

_TEI = "{http://www.tei-c.org/ns/1.0}"
_ID = "{http://www.w3.org/XML/1998/namespace}id"
MAX_DEPTH = 100  # elements within elements
_LEFT_OUT = {_TEI + name for name in ("note", "rdg", "sic", "orig", "abbr", "del", "rt", "fw")}
_BLOCKS = {_TEI + name for name in ("p", "ab", "l")}


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
    bodies = list(_bodies(root, []))
    if not bodies:
        raise InputError(
            "there is no TEI text element", Place(name), "expected TEI P5 with its namespace"
        )
    number = 0
    for body, within in bodies:
        named = _name_of([*within, body])
        title, licence = _heading(within, "titleStmt/title"), _heading(within, "licence")
        texts = _texts(body)
        for element, lines in texts:
            number += 1
            made = f"{stem}:{number}"
            whole = element is body
            if whole and len(bodies) == 1:
                made = stem
            head = "" if whole else _words(element.find(f"{_TEI}head"))
            yield source_text(
                ("" if whole else element.get(_ID))
                or (named if len(texts) == 1 or whole else "")
                or made,
                "\n".join(lines),
                Place(name),
                title=head or title,
                provenance="" if whole else title,
                licence=licence,
            )


def _bodies(
    element: ET.Element, within: list[ET.Element]
) -> Iterator[tuple[ET.Element, list[ET.Element]]]:
    """Yield each innermost ``text`` and the ``TEI``, ``teiCorpus`` and ``text`` it stands in."""
    if element.tag == f"{_TEI}text" and element.find(f".//{_TEI}text") is None:
        yield element, within
        return
    for child in element:
        yield from _bodies(child, [*within, element])


def _name_of(elements: list[ET.Element]) -> str:
    """Return the ``xml:id`` of the last element, or of the ``TEI`` around it alone."""
    body = elements[-1]
    tei = next((each for each in elements if each.tag == f"{_TEI}TEI"), body)
    alone = sum(1 for _ in tei.iter(f"{_TEI}text")) == 1
    return body.get(_ID, "") or (tei.get(_ID, "") if alone else "")


def _heading(within: list[ET.Element], path: str) -> str:
    """Return what the nearest header around a text says."""
    steps = "/".join(_TEI + step for step in path.split("/"))
    for element in reversed(within):
        if found := _words(element.find(f"{_TEI}teiHeader//{steps}")):
            return found
    return ""


def _texts(body: ET.Element) -> list[tuple[ET.Element, list[str]]]:
    """Return the elements of a ``text`` that are texts by themselves, with their lines."""
    rest = list[str]()
    texts = list(_divided(body, rest))
    return [*texts, (body, rest)] if rest or not texts else texts


def _divided(element: ET.Element, rest: list[str]) -> Iterator[tuple[ET.Element, list[str]]]:
    """Yield the texts within ``element``; lines that belong to none are added to ``rest``."""
    for child in element:
        if child.tag in _LEFT_OUT:
            continue
        if child.tag == f"{_TEI}lg" or (child.tag in _BLOCKS and child.get(_ID)):
            yield child, _lines(child)
        elif child.tag == f"{_TEI}div" and child.get(_ID):
            own = list[str]()
            yield from _divided(child, own)
            if own:
                yield child, own
        elif child.tag in _BLOCKS:
            rest += _lines(child)
        else:
            yield from _divided(child, rest)


def _depth(root: ET.Element) -> int:
    depth, level = 0, [root]
    while level:
        depth, level = depth + 1, [child for element in level for child in element]
        if depth > MAX_DEPTH:
            break
    return depth


def _lines(element: ET.Element) -> list[str]:
    """Return the lines of a stanza or of a block."""
    blocks = [element] if element.tag in _BLOCKS else list(_blocks(element))
    return [line for block in blocks for line in _plain(block).split("\n") if line]


def _blocks(element: ET.Element) -> Iterator[ET.Element]:
    for child in element:
        if child.tag in _BLOCKS:
            yield child
        elif child.tag not in _LEFT_OUT:
            yield from _blocks(child)


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
