"""Variants against Unihan and KANJIDIC2, the two published tables that relate them.

Sources: kSemanticVariant, kZVariant and kSpecializedSemanticVariant of Unihan (Debian package
unicode-data, Unicode licence v3); variants of KANJIDIC2 (Debian package kanjidic-xml, CC BY-SA).
"""

from __future__ import annotations

import bz2
import gzip
import unicodedata
import xml.etree.ElementTree as ET
from collections import defaultdict
from functools import cache
from pathlib import Path

import debian
import pytest

from inscribe import tables
from inscribe.forms import normalise_text, relation

VARIANTS = debian.FOLDER / "unicode/Unihan_Variants.txt.bz2"
KANJIDIC = debian.FOLDER / "edict/kanjidic2.xml.gz"
BUILD = Path(__file__).parents[2] / "glossary" / "build"

# Sources that state a pair elsewhere than in the properties of variants.
NOT_RELATED_BY_PROPERTY = ("common practice", "Unihan definition", "IVD Adobe-Japan1")

Pair = frozenset[str]


@cache
def of_unihan() -> dict[str, set[Pair]]:
    if not VARIANTS.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    found: dict[str, set[Pair]] = defaultdict(set)
    with bz2.open(VARIANTS, "rt", encoding="utf-8") as lines:
        for line in lines:
            cells = line.rstrip("\n").split("\t")
            if len(cells) == 3:
                for code in cells[2].split():
                    both = cells[0], code.split("<")[0]
                    found[cells[1]].add(frozenset(chr(int(c[2:], 16)) for c in both))
    return found


@cache
def of_kanjidic() -> set[Pair]:
    if not KANJIDIC.exists():
        pytest.skip("the Debian package kanjidic-xml is not installed")
    with gzip.open(KANJIDIC) as file:
        entries = list(ET.parse(file).getroot().iter("character"))
    codes = {
        (code.get("cp_type"), code.text): entry.findtext("literal", "")
        for entry in entries
        for code in entry.iter("cp_value")
    }
    found = set()
    for entry in entries:
        for variant in entry.iter("variant"):
            kind, text = variant.get("var_type"), variant.text or ""
            other = chr(int(text, 16)) if kind == "ucs" else codes.get((kind, text))
            if other:
                found.add(frozenset((entry.findtext("literal", ""), other)))
    return found


def published() -> set[Pair]:
    unihan = of_unihan()
    kinds = ("kSemanticVariant", "kZVariant", "kSpecializedSemanticVariant")
    return set().union(of_kanjidic(), *(unihan[kind] for kind in kinds))


def old_forms_of(current: str) -> set[str]:
    return {row["written"] for row in tables.rows("old_forms") if row["current"] == current}


def test_the_source_each_variant_names_is_right() -> None:
    known = published()
    wrong = []
    for form, current, source, _ in rows_of("variants"):
        found = any(frozenset((form, o)) in known for o in {current} | old_forms_of(current))
        if found == (source in NOT_RELATED_BY_PROPERTY):
            wrong.append(form + current)
    assert wrong == []


def test_definitions_of_unihan_name_the_current_form() -> None:
    file = VARIANTS.with_name("Unihan_Readings.txt.bz2")
    if not file.exists():
        pytest.skip("the Debian package unicode-data is not installed")
    with bz2.open(file, "rt", encoding="utf-8") as lines:
        cells = (line.rstrip("\n").split("\t") for line in lines if "\tkDefinition\t" in line)
        says = {chr(int(code[2:], 16)): text for code, _, text in cells}
    rows = [row for row in rows_of("variants") if row[2] == "Unihan definition"]
    assert len(rows) > 8
    for form, current, *_ in rows:
        named = {current, *old_forms_of(current), "焰"}
        assert any(sign in says[form] for sign in named), form


def test_few_variants_rest_on_common_practice_alone() -> None:
    sources = [row["source"] for row in tables.rows("variants")]
    assert sources.count("common practice") < len(sources) / 8


def test_every_pair_of_unihan_and_kanjidic_is_related_or_refused_with_a_reason() -> None:
    lines = (BUILD / "not_variants.tsv").read_text("utf-8").splitlines()
    refused = {frozenset(line[:2]) for line in lines if not line.startswith("#")}
    merged = [row["written"] for row in tables.rows("merged")]
    chinese = {sign for sign, _ in rows_of("simplified")}  # a warning, no form
    unihan = of_unihan()
    pairs = unihan["kSemanticVariant"] | unihan["kZVariant"] | of_kanjidic()
    apart = []
    for pair in pairs:
        if len(pair) != 2 or pair in refused or pair <= set(merged) or pair & chinese:
            continue
        first, second = pair
        current = frozenset(normalise_text(sign).text for sign in pair)
        if current not in refused and not relation(first, second).is_same_character:
            apart.append(first + second)
    assert len(pairs) > 3000
    assert apart == []


def test_compatibility_ideographs_are_what_unicode_says() -> None:
    for code in (*range(0xF900, 0xFADA), *range(0x2F800, 0x2FA1E)):
        sign = chr(code)
        plain = unicodedata.normalize("NFC", sign)
        if plain != sign:
            assert normalise_text(sign).text == normalise_text(plain).text
            assert relation(sign, plain).is_same_character


def test_simplified_characters_are_what_unihan_says() -> None:
    pairs = of_unihan()["kTraditionalVariant"]
    current = {row[0]: row[1] for name in ("old_forms", "variants") for row in rows_of(name)}
    for sign, meant in rows_of("simplified"):
        traditional = {c for pair in pairs if sign in pair for c in pair}
        assert set(tables.listed(meant)) <= {current.get(c, c) for c in traditional}
        with pytest.raises(UnicodeEncodeError):
            sign.encode("euc_jisx0213")


def rows_of(name: str) -> list[tuple[str, ...]]:
    return [tuple(row.values()) for row in tables.rows(name)]
