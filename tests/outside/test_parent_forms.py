"""The parents of hentaigana, held against Unihan (Unicode 15.0, Debian package unicode-data)."""

from __future__ import annotations

import bz2

import debian
import pytest

from inscribe import tables

UNIHAN = debian.FOLDER / "unicode/Unihan_Variants.txt.bz2"
FIELDS = ("kTraditionalVariant", "kSimplifiedVariant", "kSemanticVariant", "kZVariant")
# Japanese current and handwritten forms that Unihan does not relate to their old forms.
NOT_IN_UNIHAN = {
    ("悪", "惡"), ("児", "兒"), ("伝", "傳"), ("転", "轉"), ("気", "氣"), ("満", "滿"),
    ("遅", "遲"), ("辺", "邊"), ("邉", "邊"), ("豊", "豐"), ("隠", "隱"), ("恵", "惠"),
    ("曽", "曾"), ("袮", "禰"), ("尓", "爾"), ("旡", "无")
}  # fmt: skip


def _related() -> set[tuple[str, str]]:
    if not UNIHAN.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    pairs: set[tuple[str, str]] = set()
    for line in bz2.decompress(UNIHAN.read_bytes()).decode().splitlines():
        cells = line.split("\t")
        if len(cells) == 3 and cells[1] in FIELDS:
            one = chr(int(cells[0][2:], 16))
            for target in cells[2].split():
                other = chr(int(target.split("<")[0][2:], 16))
                pairs |= {(one, other), (other, one)}
    return pairs


def test_each_form_is_a_variant_of_its_parent() -> None:
    related = _related()
    forms = {(row["written"], row["parent"]) for row in tables.rows("parent_forms")}
    unrelated = {pair for pair in forms if pair not in related}
    assert unrelated == NOT_IN_UNIHAN


def test_each_form_leads_to_a_parent_of_a_hentaigana() -> None:
    parents = {row["parent"] for row in tables.rows("hentaigana")}
    for row in tables.rows("parent_forms"):
        assert row["parent"] in parents, row
