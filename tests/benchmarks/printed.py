"""Differences as an edition prints them, against a second author's apparatus.

Run: python tests/benchmarks/printed.py [--list] [FILE...]

Each line of a file is a copy, its source, and the entries of an edition that another author wrote
without knowing the program: lemma, reading and their signs. An entry is found if a span touches
it, exact if one has just its signs on both sides; a span is outside if it touches no entry. Rules
were set on ``spans_d_look.jsonl``; ``spans_d_measure.jsonl`` is for measuring alone.
"""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Callable, Iterator
from difflib import SequenceMatcher
from itertools import accumulate
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from authors import told

if TYPE_CHECKING:
    from inscribe.collation import Collation, Span

DATA = Path(__file__).parent.parent / "data"
FILES = (DATA / "spans_d_look.jsonl", DATA / "spans_d_measure.jsonl")


class Pair(NamedTuple):
    """The signs of a copy and of its source that differ, each from..to."""

    copy: tuple[int, int]
    source: tuple[int, int]


def by_phrases_of_words(copy: str, source: str) -> list[Pair]:
    from inscribe.collation import collate_texts

    result = collate_texts(copy, source)
    return [in_characters(each.copy, each.source, result) for each in result.printed]


def in_characters(copy: Span, source: Span, result: Collation) -> Pair:
    """Return spans of signs as spans of characters, of which 〳〵 has two."""
    one, other = (
        [0, *accumulate(len(sign.text) or 1 for sign in text.signs)]
        for text in (result.copy, result.source)
    )
    return Pair((one[copy.start], one[copy.end]), (other[source.start], other[source.end]))


def as_groups(copy: str, source: str) -> list[Pair]:
    from inscribe.collation import collate_texts

    result = collate_texts(copy, source)
    substantive = (group for group in result.groups if group.is_substantive)
    return [in_characters(group.copy, group.source, result) for group in substantive]


def by_characters(copy: str, source: str) -> list[Pair]:
    codes = SequenceMatcher(None, copy, source, autojunk=False).get_opcodes()
    return [Pair((a, b), (c, d)) for tag, a, b, c, d in codes if tag != "equal"]


def by_phrases(copy: str, source: str) -> list[Pair]:
    """Cut crudely: a phrase ends where kana are followed by a Chinese character, or at a mark."""
    one, other = phrases(copy), phrases(source)
    starts, ends = [0, *lengths(one)], [0, *lengths(other)]
    codes = SequenceMatcher(None, one, other, autojunk=False).get_opcodes()
    return [
        Pair((starts[a], starts[b]), (ends[c], ends[d]))
        for tag, a, b, c, d in codes
        if tag != "equal"
    ]


def phrases(text: str) -> list[str]:
    return re.findall(r"[^ぁ-ゖ、。]*[ぁ-ゖ]*[、。]?", text)[:-1]


def lengths(parts: list[str]) -> Iterator[int]:
    at = 0
    for part in parts:
        at += len(part)
        yield at


METHODS: dict[str, Callable[[str, str], list[Pair]]] = {
    "as printed": by_phrases_of_words,
    "minimal groups": as_groups,
    "difflib, characters": by_characters,
    "difflib, crude phrases": by_phrases,
}


def touches(one: Pair, other: Pair) -> bool:
    """Whether two pairs share a sign, or a place where one is empty, on either side."""
    return any(
        (a < d and c < b) or (min(b - a, d - c) == 0 and a <= d and c <= b)
        for (a, b), (c, d) in zip(one, other, strict=True)
    )


def figures(rows: list[dict[str, Any]], method: Callable[[str, str], list[Pair]]) -> list[float]:
    entries = exact = found = outside = told = 0
    for row in rows:
        truth = [Pair(tuple(e["copy_span"]), tuple(e["source_span"])) for e in row["entries"]]
        spans = method(row["copy"], row["source"])
        entries += len(truth)
        exact += len(set(truth) & set(spans))
        found += sum(any(touches(t, s) for s in spans) for t in truth)
        outside += sum(not any(touches(t, s) for t in truth) for s in spans)
        told += len(spans)
    return [exact / entries, found / entries, outside / max(told, 1)]


def list_wrong(rows: list[dict[str, Any]]) -> None:
    """Print the pairs whose entries are not exact."""
    for row in rows:
        copy, source = row["copy"], row["source"]
        truth = {Pair(tuple(e["copy_span"]), tuple(e["source_span"])) for e in row["entries"]}
        spans = set(by_phrases_of_words(copy, source))
        if truth != spans:
            print(copy, source, sep="\n")
            for name, pairs in (("edition", truth - spans), ("told", spans - truth)):
                shown = [f"{source[slice(*p.source)]} ] {copy[slice(*p.copy)]}" for p in pairs]
                print(f"  {name}: {'; '.join(shown)}")


def main() -> None:
    files = [Path(a) for a in sys.argv[1:] if a[0] != "-"] or [f for f in FILES if f.exists()]
    for file in files:
        rows = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]
        entries = sum(len(row["entries"]) for row in rows)
        print(told(file.stem))
        print(f"{file.name}: {len(rows)} pairs, {entries} entries")
        print(f"{'':24}{'exact':>8}{'found':>8}{'outside':>9}")
        for name, method in METHODS.items():
            print(f"{name:24}" + "{:8.2f}{:8.2f}{:9.2f}".format(*figures(rows, method)))
        if "--list" in sys.argv and "measure" not in file.name:
            list_wrong(rows)


if __name__ == "__main__":
    main()
