"""Build glossary/kana/hentaigana.tsv from the Unicode names list.

Needs the Debian package unicode-data.
"""

from __future__ import annotations

import re

from sources import UNICODE, listed

_CONSONANTS = {
    "": "あいうえお", "K": "かきくけこ", "S": "さしすせそ", "T": "たちつてと", "N": "なにぬねの",
    "H": "はひふへほ", "M": "まみむめも", "Y": "やいゆえよ", "R": "らりるれろ", "W": "わゐうゑを",
}  # fmt: skip
_NAME = re.compile(
    r"(?P<script>HENTAIGANA|HIRAGANA|KATAKANA) LETTER "
    r"(ARCHAIC |SMALL )?(?P<sounds>[A-Z-]+?)(-\d+)?$"
)


def kana_of(sound: str) -> str:
    """Return the hiragana of a sound spelt as Unicode names spell it (KA, TI, WO, N)."""
    if sound == "N":
        return "ん"
    return _CONSONANTS[sound[:-1]]["AIUEO".index(sound[-1])]


def katakana(kana: str) -> str:
    """Return the katakana of a hiragana."""
    return chr(ord(kana) + 0x60)


def entries(names_list: str) -> list[tuple[str, ...]]:
    """Return (sign, kana, parent, name) for every sign of the historic kana blocks."""
    found: list[tuple[str, ...]] = []
    for block in re.split(r"\n(?=1B[01][0-9A-F]{2}\t)", names_list)[1:]:
        code, _, name = block.split("\n", 1)[0].partition("\t")
        match = _NAME.match(name)
        if match is None:
            continue
        sounds = [kana_of(sound) for sound in match["sounds"].split("-")]
        if match["script"] == "KATAKANA":
            sounds = [katakana(kana) for kana in sounds]
        parents = re.findall(r"derived from ([0-9A-F]{4,5})", block.split("\n@", 1)[0])
        if name == "HIRAGANA LETTER ARCHAIC YE":
            parents = ["6C5F"]
        parent = chr(int(parents[0], 16)) if parents else ""
        found.append((chr(int(code, 16)), listed(sounds), parent, name))
    return found


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"hentaigana": entries((UNICODE / "NamesList.txt").read_text(encoding="utf-8"))}
