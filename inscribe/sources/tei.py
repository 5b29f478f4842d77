"""Source texts out of TEI P5 files.

Each outermost ``lg`` is one text, its ``l`` its lines. Outside verse, each innermost ``div``,
``ab``, ``p`` or ``l`` with an ``xml:id`` is one text; all that has no such name is one more text.
``lb`` begins a new line. A sign that is lost or cannot be typed (``gap``, an empty ``g``) is □, a
gap of unknown length ［　　］. Of alternatives (``choice``, ``app``) one is taken: what the editor
prefers. Headings, notes, translations and readings that stand beside a text are no part of it.
A corpus, or a group of texts, is read text by text; a text without a name
of its own has that of the ``text`` or ``TEI`` element it fills.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator

from inscribe import strict
from inscribe.errors import InputError, Place
from inscribe.sources.texts import SourceText, source_text

_TEI = "{http://www.tei-c.org/ns/1.0}"
_ID = "{http://www.w3.org/XML/1998/namespace}id"
_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
_ASIDE = "bibl del desc figure fw head label listApp listBibl listWit note rt speaker stage trailer"
_LEFT_OUT = {_TEI + name for name in _ASIDE.split()}
_BLOCKS = {_TEI + name for name in ("p", "ab", "l")}
_LOST_SPANS = {_TEI + name for name in ("gap", "space")}
# Elements around signs: with nothing in them, a sign stood there that the editor cannot give.
_SIGN_OR_NOTHING = {_TEI + name for name in ("g", "unclear", "damage", "supplied", "c")}
_SIGNS = _LOST_SPANS | _SIGN_OR_NOTHING
_ALTERNATIVES = {_TEI + name for name in ("choice", "app", "rdgGrp")}
_CHOSEN_LAST = {_TEI + name for name in ("sic", "orig", "abbr", "rdg")}  # of several alternatives
_BESIDE = ("apparatus", "bibliography", "commentary", "reading", "translation")  # divisions
_UNREAD, _LOST = "□", "［　　］"
_MOST_SIGNS = 100  # a gap of more is shown as one of unknown length


def tei_texts(content: str, name: str, stem: str) -> Iterator[SourceText]:
    """Yield the texts of a TEI file.

    Raises:
        InputError: the file is not well-formed XML, declares a document type, is nested more
            than a hundred elements deep, or is not TEI.
    """
    root = strict.xml_root(content, name)
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
        if _is_beside(child):
            continue
        if child.tag == f"{_TEI}lg" or (child.tag in _BLOCKS and child.get(_ID)):
            yield child, _lines(child)
        elif child.tag == f"{_TEI}div" and child.get(_ID):
            own = list[str]()
            yield from _divided(child, own)
            if own:
                yield child, own
        elif child.tag in _BLOCKS or _holds_text(child):
            rest += _lines(child)
        else:
            yield from _divided(child, rest)


def _is_beside(element: ET.Element) -> bool:
    """Whether the element is no part of the text: a note, a translation, Latin letters."""
    kinds = (element.get("type"), element.get("subtype")) if element.tag == f"{_TEI}div" else ()
    if element.tag in _LEFT_OUT or not isinstance(element.tag, str):
        return True
    return any(kind in _BESIDE for kind in kinds) or element.get(_LANG) == "ja-Latn"


def _holds_text(element: ET.Element) -> bool:
    """Whether signs stand in the element itself, so that none is lost between known elements."""
    own = [element.text, *(child.tail for child in element)]
    return any(text and text.strip() for text in own) or element.tag in _SIGNS


def _lines(element: ET.Element) -> list[str]:
    """Return the lines of a stanza or of a block."""
    blocks = [element] if _is_block(element) else list(_blocks(element))
    return [line for block in blocks for line in _plain(block).split("\n") if line]


def _is_block(element: ET.Element) -> bool:
    return element.tag in _BLOCKS or _holds_text(element)


def _blocks(element: ET.Element) -> Iterator[ET.Element]:
    for child in element:
        if _is_beside(child):
            continue
        if _is_block(child):
            yield child
        else:
            yield from _blocks(child)


def _plain(element: ET.Element | None) -> str:
    return "" if element is None else "".join(_pieces(element)).strip()


def _words(element: ET.Element | None) -> str:
    return "" if element is None else " ".join("".join(element.itertext()).split())


def _pieces(element: ET.Element) -> Iterator[str]:
    if _is_beside(element):
        return
    if element.tag == f"{_TEI}lb" or element.tag in _BLOCKS:
        yield "\n"
    elif element.tag in _LOST_SPANS:
        yield _gap(element)
    elif element.tag in _SIGN_OR_NOTHING and not len(element) and not (element.text or "").strip():
        yield _UNREAD
    yield "".join((element.text or "").split())
    for child in _chosen(element):
        yield from _pieces(child)
        yield "".join((child.tail or "").split())


def _chosen(element: ET.Element) -> list[ET.Element]:
    """Return the parts of an element; of alternatives, the one that the editor prefers."""
    parts = [child for child in element if not _is_beside(child)]
    if element.tag not in _ALTERNATIVES:
        return list(element)
    return sorted(parts, key=lambda part: part.tag in _CHOSEN_LAST)[:1]


def _gap(element: ET.Element) -> str:
    r"""Return the marks for what a ``gap`` says is missing: a sign each where it says how many.

    >>> _gap(ET.fromstring('<gap quantity="3" unit="character"/>'))
    '□□□'
    >>> _gap(ET.fromstring('<gap extent="unknown" unit="line"/>'))
    '\n［\u3000\u3000］\n'
    """
    unit = element.get("unit", "character")
    said = element.get("quantity") or element.get("extent") or ""
    many = re.match(r"\s*(\d+)", said)
    count = int(many[1]) if many and len(many[1]) < 4 else 0
    if unit.startswith("line"):
        return f"\n{_LOST}" * max(1, count) + "\n"
    if unit.startswith(("char", "sign", "glyph")) and 0 < count <= _MOST_SIGNS:
        return _UNREAD * count
    return _LOST
