"""Build glossary/hentaigana.tsv from the Unicode names list.

Run: python glossary/build/hentaigana.py [/usr/share/unicode/NamesList.txt]
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

NAMES_LIST = Path("/usr/share/unicode/NamesList.txt")
TABLE = Path(__file__).parent.parent / "hentaigana.tsv"

HEADER = """\
# Hentaigana and archaic kana: the ordinary kana each is read as, and the kanji it comes from.
# Columns: sign; kana (the usual value first, others after it, separated by spaces); parent (kanji,
#   empty where the names list gives none); name (Unicode).
# Source: NamesList.txt of Unicode 15.0 (Unicode licence v3; Debian package unicode-data): names
#   give the sound (Kunrei spelling), the notes "derived from" the parent. U+1B001 HIRAGANA LETTER
#   ARCHAIC YE is hentaigana E-1.
# Rebuild: python glossary/build/hentaigana.py
sign\tkana\tparent\tname
"""

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


def entries(names_list: str) -> list[tuple[str, str, str, str]]:
    """Return (sign, kana, parent, name) for every sign of the historic kana blocks."""
    found: list[tuple[str, str, str, str]] = []
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
        found.append((chr(int(code, 16)), " ".join(sounds), parent, name))
    return found


def main() -> None:
    """Write the table."""
    source = Path(sys.argv[1]) if len(sys.argv) > 1 else NAMES_LIST
    rows = entries(source.read_text(encoding="utf-8"))
    TABLE.write_text(HEADER + "".join("\t".join(row) + "\n" for row in rows), encoding="utf-8")
    print(f"{TABLE}: {len(rows)} rows")


if __name__ == "__main__":
    main()
