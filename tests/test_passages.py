"""An inscription is made of passages: where they meet, what each is, who did what."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st
from strategies import transcriptions

from inscribe import notation, record
from inscribe.reading import read, read_text
from inscribe.record import SettledPassage
from inscribe.signs import Transcription

POEM = "春すぎて夏来にけらし白妙の／衣ほすてふ天の香具山"  # Shinkokinshu 175
_SAID = f"{POEM} 春の夜の夢 温故知新 飛梅之図 朧谷刻之 霞汀翁書 文化七年三月 為某君"
_PARTS = st.sampled_from([*_SAID.split(), "（花押）", "（印「朧谷」）"])
texts = st.lists(st.tuples(_PARTS, st.sampled_from(["", "／", "」"])), min_size=1, max_size=5).map(
    lambda parts: "".join(part + end for part, end in parts[:-1]) + parts[-1][0]
)


def divided(text: str) -> list[tuple[str, str]]:
    """Return the kinds and the texts of the passages of a text."""
    return [(passage.kind, passage.text) for passage in read_text(text).passages]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "明月松間照／清泉石上流／朧谷鐫之",
            [("chinese", "明月松間照清泉石上流"), ("signature", "朧谷鐫之")],
        ),
        (
            f"{POEM}／霞汀翁書／朧谷刻之（花押）",
            [
                ("verse", POEM.replace("／", "")),
                ("signature", "霞汀翁書"),
                ("signature", "朧谷刻之（花押）"),
            ],
        ),
        (
            f"{POEM}／朧谷刻之／文化七庚午年三月",
            [
                ("verse", POEM.replace("／", "")),
                ("signature", "朧谷刻之"),
                ("date", "文化七庚午年三月"),
            ],
        ),
        (
            "飛梅之図／南無妙法蓮華経／朧谷作」為蕗屋君",
            [
                ("heading", "飛梅之図"),
                ("chinese", "南無妙法蓮華経"),
                ("signature", "朧谷作"),
                ("dedication", "為蕗屋君"),
            ],
        ),
        ("武州住朧谷作（印「汀」）", [("signature", "武州住朧谷作"), ("seal", "（印「汀」）")]),
    ],
)
def test_an_inscription_is_divided(text: str, expected: list[tuple[str, str]]) -> None:
    assert divided(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "武州住霞汀斎朧谷綾国行年六十三歳／應某氏需作之（花押）",  # one person, one formula
        "朧」谷",  # a name on the two pieces of a pair
        "於東都綾国造之文化七／庚午年三月吉日",  # a date that runs on
    ],
)
def test_one_person_is_one_passage(text: str) -> None:
    assert [kind for kind, _ in divided(text)] == ["signature"]


@pytest.mark.parametrize(
    "text",
    ["秋ふかみ鹿の音きゝて山賤の／柴の庵に／斧作る也", POEM, "世にふるも更に時雨のやとりかな"],
)
def test_a_poem_stays_whole(text: str) -> None:
    assert divided(text) == [("verse", text.replace("／", ""))]


def test_who_did_what_is_told() -> None:
    found = read_text(f"{POEM}持統天皇／霞汀翁書／朧谷刻之」応蕗屋氏需").passages
    assert [each.role for each in found] == [None, "composed", "wrote", "carved", "ordered"]


def test_the_reading_is_that_of_the_passages_in_order() -> None:
    found = read_text(f"{POEM}／霞汀翁書／朧谷刻之（花押）（印「汀」）")
    whole = found.proposals[0].romaji.split()
    assert whole == [word for each in found.passages for word in each.romaji.split()]
    assert found.proposals[0].romaji.endswith("Rōkoku kore o kizamu (kaō) Tei")


def test_a_register_that_is_asked_for_is_that_of_all() -> None:
    found = read_text("明月松間照／朧谷鐫之", "signature")
    assert [each.kind for each in found.passages] == ["signature"]
    assert found.register == "signature"


def test_a_near_second_division_is_a_doubt() -> None:
    doubts = [doubt.why for doubt in read_text("春の夜露岳書").doubts]
    assert any(why.startswith("may be divided otherwise") for why in doubts)


def test_a_source_tells_where_the_copy_ends() -> None:
    text = notation.parse("しら露に風の吹しく秋の野は／つらぬきとめぬ玉／そちりける朝康")
    source = "白露に風の吹きしく秋の野はつらぬきとめぬ玉ぞ散りける"  # Gosenshu 308
    found = read(text, source=source).passages
    assert found[0].text == "しら露に風の吹しく秋の野はつらぬきとめぬ玉そちりける"


def test_what_a_person_settles_wins() -> None:
    text = notation.parse("春の夜露岳書")
    settled = (SettledPassage(0, 1, "heading"), SettledPassage(2, 5, "signature", "composed"))
    found = read(text, passages=settled).passages
    assert [(each.kind, each.first, each.last) for each in found] == [
        ("heading", 0, 1),
        ("signature", 2, 5),
    ]
    assert found[1].role == "composed"


def test_a_settled_passage_that_no_longer_fits_is_a_doubt() -> None:
    found = read(notation.parse("綾国作"), passages=(SettledPassage(2, 7, "date"),))
    assert any("no longer fits" in doubt.why for doubt in found.doubts)


@settings(max_examples=40, deadline=None)
@given(transcriptions)
def test_passages_tile_the_signs_of_any_transcription(text: Transcription) -> None:
    found = read(text).passages
    places = [at for each in found for at in range(each.first, each.last + 1)]
    assert places == list(range(len(text.signs)))


@settings(max_examples=40, deadline=None)
@given(texts)
def test_passages_tile_composed_texts_and_are_found_again(text: str) -> None:
    signs = len(notation.parse(text).signs)
    found = read_text(text).passages
    assert [at for e in found for at in range(e.first, e.last + 1)] == list(range(signs))
    settled = tuple(SettledPassage(e.first, e.last, e.kind, e.role) for e in found)
    again = read_text(text, passages=settled).passages
    assert [(e.kind, e.first, e.last) for e in again] == [(e.kind, e.first, e.last) for e in found]


@settings(max_examples=40, deadline=None)
@given(texts, st.data())
def test_settled_passages_stand(text: str, data: st.DataObject) -> None:
    signs = len(notation.parse(text).signs)
    first = data.draw(st.integers(0, signs - 1))
    last = data.draw(st.integers(first, signs - 1))
    kind = data.draw(st.sampled_from(["verse", "prose", "chinese", "heading", "signature", "date"]))
    found = read_text(text, passages=(SettledPassage(first, last, kind),)).passages
    assert (kind, first, last) in [(e.kind, e.first, e.last) for e in found]
    assert [at for e in found for at in range(e.first, e.last + 1)] == list(range(signs))


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Return what a command did."""
    command = [sys.executable, "-m", "inscribe", *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, encoding="utf-8")


RECORD = """
id = "X"
kind = "tsuba"
[[inscription]]
place = "front"
text = "春の夜露岳書"
[[inscription.passage]]
signs = [4, 6]
kind = "signature"
role = "composed"
of = "露岳書"
reason = "the pen name is known"
"""


def test_a_record_settles_passages(tmp_path: Path) -> None:
    path = tmp_path / "X.toml"
    path.write_text(RECORD, encoding="utf-8")
    loaded = record.load(path)
    assert loaded.inscriptions[0].passages[0].kind == "signature"
    assert record.loads(record.dump(loaded)) == loaded
    out = run("read", str(path), "--format", "json")
    last = json.loads(out.stdout)["passages"][-1]
    assert (last["kind"], last["role"], last["signs"]) == ("signature", "composed", [3, 5])
    assert "settled: the pen name is known" in last["reasons"]


def test_the_command_line_settles_passages() -> None:
    out = run("read", "--text", "春の夜露岳書", "--passage", "4-6=signature:wrote")
    assert out.returncode == 0
    assert "signature     露岳書  (wrote)" in out.stdout


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("4-6", "does not say which signs are what"),
        ("4-6=poem", "names no kind of passage"),
        ("4-6=signature:sold", "does not say what the person did"),
        ("4-60=signature", "the text has 6"),
    ],
)
def test_a_passage_that_makes_no_sense_is_refused(given: str, said: str) -> None:
    out = run("read", "--text", "春の夜露岳書", "--passage", given)
    assert out.returncode == 2
    assert said in out.stderr


@pytest.mark.parametrize(
    ("text", "romaji"), [("源氏物語", "Genji monogatari"), ("平家物語", "Heike monogatari")]
)
def test_the_title_of_a_work_alone_is_read_as_such(text: str, romaji: str) -> None:
    reading = read_text(text)
    assert reading.proposals[0].romaji == romaji
    assert [passage.kind for passage in reading.passages] == ["heading"]


@pytest.mark.parametrize("unknown", ["読人不知", "よみ人しらす", "読人しらず", "よみひと知らず"])
def test_a_poet_unknown_stands_under_the_poem_as_a_heading(unknown: str) -> None:
    found = read(notation.parse("花の色は移りにけりないたつらに／" + unknown))
    assert [passage.kind for passage in found.passages] == ["verse", "heading"]
    assert found.proposals[0].romaji.endswith("yomibito shirazu")


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("右貫之歌", "migi Tsurayuki no uta"),  # 之 belongs to the name
        ("右人丸歌", "migi Hitomaro no uta"),
        ("右花之歌", "migi hana no uta"),  # 之 belongs to the title
    ],
)
def test_the_no_before_poem_is_said_once(text: str, romaji: str) -> None:
    assert read_text(text).proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("逢坂関", "Ōsaka no seki"),
        ("題逢坂関", "Ōsaka no seki ni daisu"),
        ("佐夜中山", "Saya no Nakayama"),
        ("竜田川", "Tatsutagawa"),
        ("那智滝", "Nachi no taki"),
        ("志賀都", "Shiga no miyako"),
        ("静夜思", "Seiyashi"),  # of Li Bai
        ("長恨歌", "Chōgonka"),  # of Bai Juyi
    ],
)
def test_a_place_of_verse_and_a_chinese_poem_are_titles(text: str, romaji: str) -> None:
    found = read_text(text)
    assert found.proposals[0].romaji == romaji
    assert [passage.kind for passage in found.passages] == ["heading"]


@pytest.mark.parametrize("family", ["三浦", "杉浦", "小松", "小野寺", "松浦", "浜松"])
def test_a_family_named_like_a_place_is_no_title(family: str) -> None:
    assert [passage.kind for passage in read_text(family).passages] == ["signature"]


@pytest.mark.parametrize(
    ("text", "passages"),
    [
        ("武州住苔沢凪嶂作／天保三年八月", ["武州住苔沢凪嶂作", "天保三年八月"]),
        ("嘉永六年癸丑仲秋／於東都苔沢鷺郷彫之", ["嘉永六年癸丑仲秋", "於東都苔沢鷺郷彫之"]),
        ("武州住楓畦書綾国刻之", ["武州住楓畦書", "綾国刻之"]),
        ("江戸住□□綾国作", ["江戸住□□綾国作"]),
    ],
)
def test_however_rare_the_names_a_place_and_a_deed_enclose_one_signing(
    text: str, passages: list[str]
) -> None:
    assert [passage.text for passage in read_text(text).passages] == passages
