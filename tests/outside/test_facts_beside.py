"""Small tables of facts against libraries that reckon or know them apart from this program.

Sources: jaconv (PyPI, MIT licence) and pykakasi (PyPI, GPL) for syllables; Python's unicodedata;
ephem (PyPI, MIT licence) for the longitude of the sun. What they have otherwise is listed.
"""

from __future__ import annotations

import math
from datetime import date, timedelta

import jaconv
import pykakasi
import pytest

from inscribe import tables

# Old kana and foreign sounds: jaconv spells them sign by sign.
NOT_OF_JACONV = {
    "ゐ": "i", "ゑ": "e", "を": "o", "ぢゃ": "ja", "ぢゅ": "ju", "ぢょ": "jo", "くゎ": "ka",
    "ぐゎ": "ga", "くゐ": "ki", "くゑ": "ke", "しぇ": "she", "じぇ": "je", "ちぇ": "che",
    "てぃ": "ti", "でぃ": "di", "とぅ": "tu", "どぅ": "du", "つぁ": "tsa", "うぃ": "wi",
    "うぇ": "we", "うぉ": "wo", "でゅ": "dyu", "ふゅ": "fyu", "いぇ": "ye",
}  # fmt: skip
# ISO 3602 strict keeps ぢ づ ゐ ゑ apart; pykakasi writes them as they sound, and some as Hepburn.
NOT_OF_PYKAKASI = {
    "ぢ": "di", "づ": "du", "ふ": "hu", "ゐ": "wi", "ゑ": "we", "じゃ": "zya", "じゅ": "zyu",
    "じょ": "zyo", "ぢゃ": "dya", "ぢゅ": "dyu", "ぢょ": "dyo", "くゎ": "kwa", "ぐゎ": "gwa",
    "くゐ": "kwi", "くゑ": "kwe", "しぇ": "sye", "じぇ": "zye", "てぃ": "t'i", "でぃ": "d'i",
    "とぅ": "t'u", "どぅ": "d'u", "ふぁ": "hua", "ふぃ": "hui", "ふぇ": "hue", "ふぉ": "huo",
    "でゅ": "d'yu", "ふゅ": "huyu", "いぇ": "ye",
}  # fmt: skip
LONGITUDES = {  # degrees of the sun at each term; the definition of the terms, from memory
    "立春": 315, "雨水": 330, "啓蟄": 345, "春分": 0, "清明": 15, "穀雨": 30, "立夏": 45,
    "小満": 60, "芒種": 75, "夏至": 90, "小暑": 105, "大暑": 120, "立秋": 135, "処暑": 150,
    "白露": 165, "秋分": 180, "寒露": 195, "霜降": 210, "立冬": 225, "小雪": 240, "大雪": 255,
    "冬至": 270, "長至": 270, "小寒": 285, "大寒": 300, "入梅": 80, "半夏生": 100,
}  # fmt: skip
AFTER_SPRING = {"節分": -1, "八十八夜": 87}  # days from 立春
WIDEST = 7  # days between the earliest and the latest day of a term


def test_every_syllable_is_spelt_as_by_jaconv_and_pykakasi() -> None:
    kunrei = pykakasi.kakasi()
    hepburn, iso = {}, {}
    for row in tables.rows("romanisation"):
        kana = row["kana"]
        if row["hepburn"] != jaconv.kana2alphabet(kana):
            hepburn[kana] = row["hepburn"]
        if row["iso"] != "".join(part["kunrei"] for part in kunrei.convert(kana)):
            iso[kana] = row["iso"]
    assert hepburn == NOT_OF_JACONV
    assert iso == NOT_OF_PYKAKASI


def test_a_ligature_is_the_same_in_both_kana() -> None:
    for row in tables.rows("kana_ligatures"):
        assert jaconv.hira2kata(row["hiragana"]) == row["katakana"]


def _term(year: int, name: str) -> date:
    """Return the day of a term at Kyoto by the true sun."""
    ephem = pytest.importorskip("ephem")
    day = date(year, 1, 1)
    if name in AFTER_SPRING:
        return _term(year, "立春") + timedelta(AFTER_SPRING[name])
    wanted = LONGITUDES[name]

    def past(noon: date) -> bool:
        moment = ephem.Date(noon.isoformat()) + 1 - 135.77 / 360  # the day's end at Kyoto
        place = math.degrees(ephem.Ecliptic(ephem.Sun(moment), epoch=moment).lon)
        return (place - wanted) % 360 < 180

    while past(day) or not past(day + timedelta(1)):
        day += timedelta(1)
    return day + timedelta(1)


def test_solar_terms_fall_where_the_sun_stands() -> None:
    names = {row["written"] for row in tables.rows("solar_terms")}
    assert names == {*LONGITUDES, *AFTER_SPRING}
    for row in tables.rows("solar_terms"):
        first, last = (date.fromisoformat(f"1801-{row[key]}") for key in ("earliest", "latest"))
        assert 0 <= (last - first).days <= WIDEST, row
        for year in (1845, 1872, 1896, 1903):
            found = _term(year, row["written"])
            assert row["earliest"] <= f"{found:%m-%d}" <= row["latest"], (row, found)
