"""Kinds of signatures that are easily misread: unread verbs, relations, kana names, lone words.

All makers are invented. Formulas: common practice, no single source.
"""

from __future__ import annotations

import pytest

from inscribe.reading import read_text
from inscribe.reading.names.ranking import readings


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
        ("橘綾晴", "Tachibana no Ayaharu"),
        ("萩汀入道", "Shūtei nyūdō"),
        ("萩汀鐫之於東都", "Shūtei Tōto ni oite kore o horu"),
        ("戯静葭作", "tawamure ni Seika saku"),
        ("倣古圖", "kozu ni narau"),
        ("倣古圖萩汀", "kozu ni naraite Shūtei"),
        ("紋萩乗／綾美（花押）", "mon Haginori Ayayoshi (kaō)"),
        ("あやさと作", "Ayasato saku"),
        ("武州住あやさと造之", "Bushū jū Ayasato kore o tsukuru"),
        ("はぎつぐ（花押）", "Hagitsugu (kaō)"),
    ],
)
def test_kinds_of_signatures(text: str, romaji: str) -> None:
    found = read_text(text)
    assert found.register == "signature"
    assert found.proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("霜村", "Sōson"),
        ("森綾郷", "Mori Ayasato"),
        ("はぎ女作", "Hagijo saku"),
        ("まさ綾", "Masaaya"),
        ("綾郷再拝", "Ayasato saihai"),
        ("綾春十七歳作", "Ayaharu jūnanasai saku"),
        ("綾郷翁七十歳", "Ayasato-ō nanajussai"),
        ("秋日綾郷作", "shūjitsu Ayasato saku"),
        ("綾郷行年□□歳", "Ayasato gyōnen …sai"),
        ("□州住綾郷", "…shū jū Ayasato"),
        ("□□軒綾郷", "……ken Ayasato"),
        ("江戸住□田綾郷", "Edo jū …ta Ayasato"),
        ("伊勢屋甚平", "Iseya Jinpei"),
        ("安藤三右衛門", "Andō San'emon"),
        ("岩田綾郷翠翁作", "Iwata Ayasato Suiō saku"),
        ("丹後宮津住綾郷", "Tango Miyazu jū Ayasato"),
        ("尾陽住綾郷", "Biyō jū Ayasato"),
        ("於隅田川之畔綾郷作", "Sumidagawa no hotori ni oite Ayasato saku"),
        ("静葭之圖ニ倣フ綾郷", "Seika no zu ni narau Ayasato"),
        ("静葭ノ図ヲ写ス綾郷", "Seika no zu o utsusu Ayasato"),
        ("山田氏之需ニ應シ綾郷作之", "Yamada-shi no motome ni ōji Ayasato kore o tsukuru"),
        ("南蛮鐵ヲ以テ綾郷作之", "nanbantetsu o motte Ayasato kore o tsukuru"),
        ("東都ニ於テ綾郷作", "Tōto ni oite Ayasato saku"),
        ("倣古法綾郷作", "kohō ni naraite Ayasato saku"),
        ("為父追善綾郷作", "chichi no tsuizen no tame ni Ayasato saku"),
        ("下絵翠亭 彫綾郷", "shitae Suitei horu Ayasato"),
        ("以綾", "Mochiaya"),
        ("依好", "konomi ni yorite"),
    ],
)
def test_more_kinds_of_signatures(text: str, romaji: str) -> None:
    found = read_text(text)
    assert found.register == "signature"
    assert found.proposals[0].romaji == romaji


@pytest.mark.parametrize(
    "text", ["一期一会", "明鏡止水", "山中無暦日", "布袋図", "平和", "夢のあと", "しら雪", "月の夜"]
)
def test_what_is_no_signature(text: str) -> None:
    assert read_text(text).register != "signature"


def test_a_clan_may_be_linked_to_the_name() -> None:
    said = [proposal.romaji for proposal in read_text("藤原綾郷").proposals[:3]]
    assert said[:2] == ["Fujiwara no Ayasato", "Fujiwara Ayasato"]


@pytest.mark.parametrize(
    ("text", "key", "part"),
    [
        ("静葭之圖ニ倣フ綾郷", "model", "静葭之圖ニ倣フ"),
        ("写静葭之図綾郷刻", "model", "写静葭之図"),
        ("山田氏之需ニ應シ綾郷作", "patron", "山田氏之需ニ應シ"),
        ("天保□年□月綾郷", "date", "天保□年□月"),
    ],
)
def test_a_formula_is_one_part(text: str, key: str, part: str) -> None:
    parts = read_text(text).signature or {}
    assert parts[key].text == part
    assert f"{key}_2" not in parts


@pytest.mark.parametrize("between", ["／", "　", ""])
def test_a_poem_may_be_signed_without_a_column_of_its_own(between: str) -> None:
    poem = "年の内に春は来にけり一年を去年とや言はむ今年とや言はむ"  # Kokinshu 1
    found = read_text(f"{poem}{between}武州住綾郷作之")
    assert found.register == "verse"
    assert found.proposals[0].romaji.endswith("Bushū jū Ayasato kore o tsukuru")
    assert (found.signature or {})["name"].romaji == "Ayasato"


def test_no_template_is_shown() -> None:
    for text in ("為父追善綾郷作", "為", "為之", "以", "倣之"):
        assert all("{" not in proposal.romaji for proposal in read_text(text).proposals)


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


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("右京進藤原綾郷", "Ukyō no jō Fujiwara no Ayasato"),
        ("右衛門尉綾郷", "Uemon no jō Ayasato"),
    ],
)
def test_an_office_of_the_right_is_no_heading_of_the_above(text: str, romaji: str) -> None:
    assert read_text(text).proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("text", "part", "romaji"),
    [
        ("汲霧山流嶺暁作", "relation", "Kiriyama no nagare o kumu"),
        ("与門人嶺暁作", "relation", "monjin to"),
        ("以南蛮鉄嶺暁作", "material", "nanbantetsu o motte"),
        ("為武運長久嶺暁作", "patron", "buun chōkyū no tame ni"),
        ("蒙君命嶺暁作", "patron", "kunmei o kōmurite"),
    ],
)
def test_what_a_formula_tells_is_named_after_what_it_is(text: str, part: str, romaji: str) -> None:
    parts = read_text(text).signature
    assert parts[part].romaji == romaji
    assert parts["name"].romaji == "Reigyō"


def test_an_office_without_its_province_is_said_without_no() -> None:
    assert read_text("大掾嶺暁作").proposals[0].romaji == "Daijō Reigyō saku"
    assert read_text("和泉大掾嶺暁作").proposals[0].romaji == "Izumi no daijō Reigyō saku"
