"""Build glossary/manyogana.tsv: kanji used for their sound, from hentaigana and a hand list.

Run after hentaigana.tsv: python glossary/build/manyogana.py
"""

from __future__ import annotations

from sources import GLOSSARY, table, write

HEADER = """\
# Man'yogana: kanji used for their sound alone, as the hentaigana grew out of them.
# Columns: char; kana; use (on = by its Sino-Japanese sound, kun = by the native word it writes,
#   kana = the parent of a hentaigana, so of old the commonest way to write the kana); source.
# Sources: the parents of the hentaigana in NamesList.txt of Unicode 15.0 (Unicode licence v3);
#   the common table of man'yogana, from memory (glossary/build/manyogana_by_hand.txt).
# Rebuild: python glossary/build/manyogana.py
char\tkana\tuse\tsource
"""


def main() -> None:
    """Write the table."""
    found: dict[tuple[str, str], tuple[str, str]] = {}
    for _, kana, parent, name in table("hentaigana"):
        for sound in kana.split() if parent and "KATAKANA" not in name else []:
            found[sound, parent] = ("kana", "Unicode")
    lines = (GLOSSARY / "build" / "manyogana_by_hand.txt").read_text("utf-8").splitlines()
    for line in lines:
        if line.startswith("#"):
            continue
        kana, _, kanji = line.partition(" ")
        for use, chars in zip(("on", "kun"), kanji.split("|"), strict=True):
            for char in chars:
                found.setdefault((kana, char), (use, "common practice"))
    write("manyogana", HEADER, [(char, kana, *row) for (kana, char), row in sorted(found.items())])


if __name__ == "__main__":
    main()
