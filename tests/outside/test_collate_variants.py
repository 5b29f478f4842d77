"""Collation against variants that scholars note, and against pairs that others made.

``known_variants.tsv``: well-known textual variants of classical verse, from memory. The shared
hundred poems: two columns collected from open data by others, mixed text and historical kana; a
few differ in wording, which no one has marked, so only the number that is flagged is bounded.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.collation import Collation, collate_texts

TABLE = Path(__file__).parent / "known_variants.tsv"
SHARED = Path(__file__).parents[3] / "shared" / "data" / "hyakunin.tsv"
ROWS = [
    line.split("\t")
    for line in TABLE.read_text(encoding="utf-8").splitlines()
    if line and line[0] != "#"
][1:]


def places(copy: str, source: str, variants: str) -> list[tuple[range, range]]:
    """Return where each variant stands in both texts; either text has its words once."""
    found = []
    for variant in variants.split(" "):
        one, other = variant.split("=")
        assert copy.count(one) == source.count(other) == 1
        i, j = copy.index(one), source.index(other)
        found.append((range(i, i + len(one)), range(j, j + len(other))))
    return found


def found_places(result: Collation) -> list[tuple[range, range]]:
    return [
        (range(g.copy.start, g.copy.end), range(g.source.start, g.source.end))
        for g in result.groups
        if g.is_substantive
    ]


def meet(one: range, other: range) -> bool:
    return one.start < other.stop and other.start < one.stop


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_each_known_variant_is_found_and_nothing_else(row: list[str]) -> None:
    _, copy, source, variants = row
    told = found_places(collate_texts(copy, source))
    known = places(copy, source, variants)
    for one, other in known:
        assert any(meet(one, i) or meet(other, j) for i, j in told)
    for i, j in told:
        assert any(meet(one, i) or meet(other, j) for one, other in known)


@pytest.mark.skipif(not SHARED.exists(), reason="the shared poems are not here")
def test_text_and_kana_of_the_shared_poems_agree_but_for_a_few() -> None:
    lines = SHARED.read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines if line[:1].isdecimal()]
    flagged = [
        number
        for number, text, kana, *_ in rows
        if not collate_texts(text.replace(" / ", "").replace("／", ""), kana).is_faithful_in_wording
    ]
    assert len(rows) == 100
    assert len(flagged) <= 8
