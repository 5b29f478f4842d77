"""Build glossary/forms/parts.tsv: the parts of characters and where they stand, from KanjiVG.

Needs the PyPI package kanjivg; runs after the tables of forms.
"""

from __future__ import annotations

import unicodedata
import xml.etree.ElementTree as ET
from dataclasses import dataclass, field
from pathlib import Path

from sources import KANJIVG, by_hand, table

KVG = "{https://kanjivg.tagaini.net/}"
KVG_OLD = "{http://kanjivg.tagaini.net}"
POSITIONS = {
    "kamae": "around", "kamaec": "inside", "tarec": "inside", "nyoc": "inside",
    "⿵A": "around", "⿵B": "inside", "⿶1": "around", "⿶2": "inside",
}  # fmt: skip
OPERATORS = {
    "⿰": ("left", "right"), "⿱": ("top", "bottom"), "⿲": ("left", "middle", "right"),
    "⿳": ("top", "middle", "bottom"), "⿴": ("around", "inside"), "⿵": ("around", "inside"),
    "⿶": ("around", "inside"), "⿷": ("around", "inside"), "⿸": ("tare", "inside"),
    "⿹": ("around", "inside"), "⿺": ("nyo", "inside"), "⿻": ("part", "part"),
}  # fmt: skip

WHOLES = dict(
    zip("亻氵扌忄礻衤艹⻌⻏⻖灬刂犭⺮飠牜罒", "人水手心示衣艸辶邑阜火刀犬竹食牛网", strict=True)
)


@dataclass
class Part:
    """One part: its character (empty where it has none), position, whole form and own parts."""

    char: str
    position: str
    whole: str = ""
    parts: list[Part] = field(default_factory=list)

    def written(self) -> str:
        """Return the part as the table writes it."""
        inner = f"({written(self.parts)})" if self.parts else ""
        whole = f"={self.whole}" if self.whole and self.whole != self.char else ""
        return f"{self.position}:{self.char}{whole}{inner}"


def written(parts: list[Part]) -> str:
    """Return parts as one cell of the table."""
    return " ".join(part.written() for part in parts)


def attribute(group: ET.Element, name: str) -> str:
    """Return an attribute of KanjiVG, or an empty string."""
    return group.get(KVG + name) or group.get(KVG_OLD + name) or ""


def parts_in(group: ET.Element, position: str, seen: set[str]) -> list[Part]:
    """Return the named parts directly inside a group; unnamed groups are looked through."""
    found: list[Part] = []
    for child in group.findall("{http://www.w3.org/2000/svg}g"):
        stated = attribute(child, "position")
        where = POSITIONS.get(stated, stated) or position
        char = attribute(child, "element")
        if not char:
            found += parts_in(child, where, seen)
            continue
        if attribute(child, "part"):
            key = char + attribute(child, "number")
            if key in seen:
                continue
            seen.add(key)
        inner = parts_in(child, "part", set())
        found.append(Part(char, where, attribute(child, "original"), inner))
    return found


def from_kanjivg(file: Path) -> tuple[str, list[Part]]:
    """Return the character a drawing shows, and its parts."""
    char = chr(int(file.stem, 16))
    outer = ET.parse(file).getroot().find("{http://www.w3.org/2000/svg}g")
    root = outer[0] if outer is not None and len(outer) else None
    return char, parts_in(root, "part", set()) if root is not None else []


def from_description(text: str, known: dict[str, list[Part]]) -> list[Part]:
    """Return the parts of an ideographic description sequence such as ⿰糸⿱刀口.

    The parts of its parts are those they have as characters.
    """
    parts, rest = _described(text, "part", known)
    if rest:
        raise ValueError(f"{rest} is left over in {text}")
    return parts


def _described(text: str, position: str, known: dict[str, list[Part]]) -> tuple[list[Part], str]:
    head, rest = text[0], text[1:]
    if head not in OPERATORS:
        return [Part(head, position, WHOLES.get(head, ""), known.get(head, []))], rest
    found: list[Part] = []
    for where in OPERATORS[head]:
        parts, rest = _described(rest, where, known)
        found += parts
    return found, rest


def drawn() -> dict[str, list[Part]]:
    """Return the parts of every kanji that KanjiVG draws and divides."""
    found = dict(from_kanjivg(file) for file in sorted(KANJIVG.glob("?????.svg")))
    return {char: parts for char, parts in found.items() if char >= "\u3400" and parts}


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table.

    Raises:
        FileNotFoundError: kanjivg is not installed.
    """
    if not KANJIVG.is_dir():
        raise FileNotFoundError("the PyPI package kanjivg")
    known = drawn()
    source = dict.fromkeys(known, "KanjiVG")
    for char, description in by_hand("parts_by_hand.tsv"):
        if char not in known:
            known[char], source[char] = from_description(description, known), "hand"
    forms = {row[0] for name in ("old_forms", "variants") for row in table(name)}
    for form in sorted(forms - set(known)):
        plain = unicodedata.normalize("NFC", form)
        if plain in known:
            known[form], source[form] = known[plain], f"like {plain}"
    return {"parts": [(char, written(known[char]), source[char]) for char in sorted(known)]}
