"""What the XML formats share: elements built safely, and text without forbidden characters."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
XML_ID = "{http://www.w3.org/XML/1998/namespace}id"
_FORBIDDEN = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
# Of what XML allows in a name, what stands in ids of objects; _ marks all else.
_NOT_NAME = re.compile("[^A-Za-z0-9.\\-\u3005-\u3007\u3041-\u3096\u30a1-\u30fa\u4e00-\u9fa5]")


def safe(text: str) -> str:
    r"""Return ``text`` with every character that XML 1.0 forbids replaced by U+FFFD.

    >>> safe("a\x00b")
    'a\ufffdb'
    """
    return _FORBIDDEN.sub("\ufffd", text)


def identifier(text: str) -> str:
    """Return ``text`` as an XML id; other texts have other ids.

    >>> identifier("DEMO-001"), identifier("甲 1/2")
    ('r-DEMO-001', 'r-甲_20_1_2f_2')
    """
    return "r-" + _NOT_NAME.sub(lambda match: f"_{ord(match[0]):x}_", text)


def add(parent: ET.Element, tag: str, text: str = "", **attributes: str) -> ET.Element:
    """Append an element with text to ``parent`` and return it."""
    child = ET.SubElement(parent, tag, {key: safe(value) for key, value in attributes.items()})
    child.text = safe(text) or None
    return child


def append_text(element: ET.Element, text: str) -> None:
    """Append ``text`` after whatever ``element`` holds already."""
    text = safe(text)
    if len(element):
        element[-1].tail = (element[-1].tail or "") + text
    else:
        element.text = (element.text or "") + text


def document(root: ET.Element) -> str:
    """Return an XML document with its declaration."""
    body = ET.tostring(root, encoding="unicode")
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{body}\n'
