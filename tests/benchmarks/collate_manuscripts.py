"""Which poems of a manuscript are said to differ in wording from a print wholly in kana.

Run: python tests/benchmarks/collate_manuscripts.py [--list]

The poems are those of ``tests/data/manuscript_poems.tsv`` and, where it is there, the shared set of
a hundred, mixed text against historical kana, with voicing marks and without; its odd-numbered
poems alone may be listed. In a manuscript where one poem in twenty-five truly differs, one false
alarm in a hundred leaves four flags in five right.
"""

from __future__ import annotations

import sys
import unicodedata
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

DATA = Path(__file__).parent.parent / "data" / "manuscript_poems.tsv"
SHARED = Path(__file__).parents[3] / "shared" / "data" / "hyakunin.tsv"


class Case(NamedTuple):
    """A text, the kana it is held against, and whether they truly differ."""

    group: str
    copy: str
    source: str
    differs: bool
    may_be_seen: bool = True


def manuscript_poems() -> Iterator[Case]:
    lines = DATA.read_text(encoding="utf-8").splitlines()
    for line in [line for line in lines if line[0] != "#"][1:]:
        number, _, written, kana, changed = line.split("\t")
        yield Case(f"set {number}", written, kana, False)
        yield Case(f"set {number}, changed", changed, kana, True)


def shared_poems() -> Iterator[Case]:
    """Yield the shared poems; where its two columns are of two traditions they do differ."""
    if not SHARED.exists():
        return
    for line in SHARED.read_text(encoding="utf-8").splitlines():
        number, *cells = line.split("\t")
        if number.isdecimal():
            text, kana = cells[0].replace(" / ", "").replace("／", "").replace(" ", ""), cells[1]
            odd = int(number) % 2 == 1
            half = "odd" if odd else "even"
            yield Case(f"shared, {half}", text, kana, False, odd)
            yield Case(f"shared, {half}, unvoiced", voiceless(text), voiceless(kana), False, odd)


def voiceless(text: str) -> str:
    return "".join(unicodedata.normalize("NFD", c)[0] if "ぁ" <= c <= "ゖ" else c for c in text)


def main() -> None:
    from inscribe.collation import collate_texts

    flagged: dict[str, list[bool]] = {}
    for case in (*manuscript_poems(), *shared_poems()):
        found = [g for g in collate_texts(case.copy, case.source).groups if g.is_substantive]
        flagged.setdefault(case.group, []).append(bool(found))
        if "--list" in sys.argv and bool(found) != case.differs and case.may_be_seen:
            told = [(group.copy.text, group.source.text) for group in found]
            print(case.group, case.copy, case.source, told)
    print(f"{'':24}{'poems':>8}{'flagged':>9}{'share':>8}")
    for group, flags in flagged.items():
        print(f"{group:24}{len(flags):8}{sum(flags):9}{sum(flags) / len(flags):8.3f}")


if __name__ == "__main__":
    main()
