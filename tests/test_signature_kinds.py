"""Kinds of signatures that are easily misread: unread verbs, relations, kana names, lone words.

All makers are invented. Formulas: common practice, no single source.
"""

from __future__ import annotations

import pytest

from inscribe.reading import read_text
from inscribe.reading.names import readings


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("於東都綾郷應需□之", "Tōto ni oite Ayasato motome ni ōjite kore o …"),
        ("翠葭□之", "Suika kore o …"),
        ("應好静葭", "konomi ni ōjite Seika"),
        ("依需静葭", "motome ni yorite Seika"),
        ("静葭倅綾春", "Seika segare Ayaharu"),
        ("静葭門萩汀", "Seika mon Shūtei"),
        ("静葭三男萩汀", "Seika sannan Shūtei"),
        ("萩汀自身作", "Shūtei jishin saku"),
        ("翠葭筆意", "Suika no hitsui"),
        ("還暦萩汀", "kanreki Shūtei"),
        ("静葭・萩汀合作", "Seika Shūtei gassaku"),
        ("橘綾晴", "Tachibana Ayaharu"),
        ("萩汀入道", "Shūtei nyūdō"),
        ("萩汀鐫之於東都", "Shūtei Tōto ni oite kore o horu"),
        ("戯静葭作", "tawamure ni Seika saku"),
        ("倣古圖", "kozu ni narau"),
        ("倣古圖萩汀", "kozu ni naraite Shūtei"),
        ("紋萩乗／綾美（花押）", "mon Haginori Ayayoshi"),
        ("あやさと作", "Ayasato saku"),
        ("武州住あやさと造之", "Bushū jū Ayasato kore o tsukuru"),
        ("はぎつぐ（花押）", "Hagitsugu"),
    ],
)
def test_kinds_of_signatures(text: str, romaji: str) -> None:
    found = read_text(text)
    assert found.register == "signature"
    assert found.proposals[0].romaji == romaji


def test_no_share_is_said_of_a_sign_that_cannot_be_read() -> None:
    assert readings("□親")[0].reason == "one sign cannot be read"


def test_a_share_is_said_only_of_many_counted_names() -> None:
    assert "%" not in readings("嶺暁")[0].reason  # a handful of counted names
    assert "花 last is か in " in readings("桜花")[0].reason


def test_an_unlisted_surname_is_read_by_kun() -> None:
    assert readings("霜村", "surname")[0].romaji == "Shimomura"
    assert {"Shimomura", "Sōson"} <= {reading.romaji for reading in readings("霜村")}


@pytest.mark.parametrize("text", ["忠孝", "松風", "つねみつ"])
def test_a_lone_word_is_in_doubt(text: str) -> None:
    assert any("may be a name or" in doubt.why for doubt in read_text(text).doubts)


def test_a_saying_has_no_maker() -> None:
    assert read_text("龍吟雲起虎嘯風生").register == "prose"


@pytest.mark.parametrize("heading", ["題しらず", "寄月恋", "藤原定家"])
def test_a_heading_leaves_the_poem_its_metre(heading: str) -> None:
    poem = "歎けとて月やは物を思はする／かこち顔なる我が涙かな"  # Senzaishu 929
    found = read_text(f"{heading}／{poem}")
    assert found.register == "verse"
    assert found.proposals[0].reasons[0] == "tanka of 5-7-5-7-7 morae"
