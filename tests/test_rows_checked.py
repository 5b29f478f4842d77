"""Rows of tables that were once wrong, each held to its source; tests that tables claim exist.

Sources: JMdict, ENAMDICT and KANJIDIC2 (EDRDG), named beside each row; else common practice.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from inscribe import read_text, tables
from inscribe.forms import normalise_text, readings
from inscribe.reading.names import place_names
from inscribe.reading.words import words_of

ROOT = Path(__file__).parents[1]
CLAIMED = re.compile(r"tests/[a-z_/]+\.py")


@pytest.mark.parametrize(
    ("written", "kind", "kana"),
    [
        ("大宰府", "city", "だざいふ"),  # JMdict
        ("太宰府", "city", "だざいふ"),  # JMdict
        ("監", "title", "げん"),  # common practice: the office of Dazaifu
        ("紫銅", "material", "しどう"),  # common practice
        ("緋銅", "material", "ひどう"),  # common practice
    ],
)
def test_words_are_read_as_their_sources_have_them(written: str, kind: str, kana: str) -> None:
    found = {word.kind: word.kana for word in words_of(written)}
    assert found[kind].removeprefix("の ") == kana


def test_a_bull_is_read_as_jmdict_has_it() -> None:
    rows = {row["written"]: row["also"] for row in tables.rows("jukujikun")}
    assert "こというし" in tables.listed(rows["特牛"])  # JMdict


def test_tosa_by_one_sign_is_first_read_doshu() -> None:
    assert read_text("土州住綾郷作").proposals[0].romaji == "Doshū jū Ayasato saku"


def test_what_is_no_town_stands_in_no_list_of_towns() -> None:
    assert "常府" not in {row["written"] for row in tables.rows("cities")}
    assert not place_names("常府")


def test_a_rare_sign_is_not_taken_for_a_common_one() -> None:
    assert normalise_text("岢").text == "岢"  # KANJIDIC2 has it as a character of its own


def test_the_fourth_month_is_the_month_of_pure_light() -> None:
    months = {row["written"]: row["month"] for row in tables.rows("month_names")}
    assert months["正陽月"] == "4"  # JMdict: fourth lunar month


def test_the_hackberry_is_read_by_its_kun() -> None:
    assert "えのき" in readings("榎").kun  # KANJIDIC2


def test_a_worn_province_keeps_every_province_that_has_the_town() -> None:
    rows = {row["province"]: tables.listed(row["cities"]) for row in tables.rows("city_provinces")}
    assert {"豊後"} <= {province for province, towns in rows.items() if "高田" in towns}


@pytest.mark.parametrize("row", tables.rows("word_division"), ids=lambda row: row["example"])
def test_words_are_divided_as_the_table_shows(row: dict[str, str]) -> None:
    assert row["example"]
    kana_or_hyphen = row["kind"] == "hyphen"
    assert ("-" in row["example"]) is kana_or_hyphen


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("奈良市", "Nara-shi"),
        ("長野県", "Nagano-ken"),
        ("京都府", "Kyōto-fu"),
        ("東京都", "Tōkyō-to"),
        ("港区", "Minato-ku"),
        ("多摩郡", "Tama-gun"),
        ("本所町", "Honjo-machi"),
        ("小野村", "Ono-mura"),
    ],
)
def test_a_place_is_joined_to_what_it_is(text: str, romaji: str) -> None:
    said = [p.romaji for p in read_text(f"{text}住綾郷作", "signature").proposals]
    assert said[0].removesuffix(" jū Ayasato saku") in {
        romaji,
        romaji.replace("-gun", "-gōri"),
        romaji.replace("-machi", "-chō"),
    }


def test_every_test_that_a_description_claims_exists() -> None:
    claiming = [ROOT / "glossary" / "tables.toml", *(ROOT / "glossary" / "build").glob("*.py")]
    claimed = {name for path in claiming for name in CLAIMED.findall(path.read_text("utf-8"))}
    assert claimed
    assert not {name for name in claimed if not (ROOT / name).exists()}
