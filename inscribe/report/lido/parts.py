"""The elements LIDO is made of: parts, texts in a language, and concepts."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

from inscribe.report import XML_LANG, add, concepts

_URI = re.compile(r"https?://\S+")


def add_part(parent: ET.Element, tag: str, text: str = "", **attributes: str) -> ET.Element:
    """Append an element of LIDO with text to ``parent`` and return it."""
    return add(parent, f"lido:{tag}", text, **attributes)


def add_text(
    parent: ET.Element, tag: str, text: str, language: str, **attributes: str
) -> ET.Element:
    """Append an element whose text is in a language, given as a BCP 47 tag."""
    made = add_part(parent, tag, text, **attributes)
    made.set(XML_LANG, language)
    return made


def add_concept(parent: ET.Element, tag: str, field: str, word: str) -> ET.Element:
    """Append a concept: its identifiers from the user's table, and the word for it.

    A word that is a URI is its own identifier.
    """
    made = add_part(parent, tag)
    for concept in concepts(field, word):
        attributes = {"lido:type": "URI"} | (
            {"lido:source": concept.source} if concept.source else {}
        )
        add_part(made, "conceptID", concept.identifier, **attributes)
    if _URI.fullmatch(word):
        add_part(made, "conceptID", word, **{"lido:type": "URI"})
    add_part(made, "term", word)
    return made
