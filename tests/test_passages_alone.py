"""What stands alone on a face or in a column is what it is: sayings, dedications, places, dates."""

import pytest

from inscribe.reading import Interpretation, read_text
from inscribe.reading.names import readings


def passages(found: Interpretation) -> list[tuple[str, str]]:
    return [(passage.kind, passage.text) for passage in found.passages]


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("南無阿弥陀仏」武運長久", ["chinese", "chinese"]),
        ("忠孝」一期一会", ["chinese", "chinese"]),
        ("忠孝」仁義", ["chinese"]),  # one saying over both faces
        ("龍吟／雲起」虎嘯／風生／汐崎波臣", ["chinese", "signature"]),  # the halves of a couplet
        ("武州住綾国作」南無妙法蓮華経為二親菩提", ["signature", "chinese", "dedication"]),
        ("天□七丙申年［　　］／讃岐高松住綾国彫", ["date", "signature"]),
        ("春霞たつをみすてゝ行鴈は／花なき里に住やならへる／伊勢／蓼坡書",
         ["verse", "signature", "signature"]),
        ("布袋図綾国", ["heading", "signature"]),
        ("東海道／綾国刻", ["heading", "signature"]),
        ("依鵜木君好模古圖於洛北櫟園鴨打雪篁作", ["signature"]),
    ],
)  # fmt: skip
def test_the_kinds_of_passages(text: str, kinds: list[str]) -> None:
    assert [kind for kind, _ in passages(read_text(text))] == kinds


@pytest.mark.parametrize(
    ("text", "kind", "romaji"),
    [
        ("為二親菩提", "dedication", "nishin bodai no tame"),
        ("應何某君需", "dedication", "nanigashi-kun no motome ni ōjite"),
        ("東大寺", "heading", "Tōdaiji"),
        ("東海道", "heading", "Tōkaidō"),
        ("江戸時代", "heading", "Edo jidai"),
        ("右瀟湘八景之内", "heading", "migi Shōshō hakkei no uchi"),
        ("左花の歌", "heading", "hidari hana no uta"),
        ("不㆑如㆓一見㆒", "chinese", "ikken ni shikazu"),
        ("武運長久", "chinese", "buun chōkyū"),
    ],
)
def test_what_stands_alone(text: str, kind: str, romaji: str) -> None:
    found = read_text(text)
    assert passages(found) == [(kind, text)]
    assert found.proposals[0].romaji == romaji


def test_return_marks_are_no_figures() -> None:
    assert not read_text("不㆑如㆓一見㆒").doubts


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("為鞍掛家重宝加州金沢住綾国作",
         "Kurakake-ke chōhō no tame ni Kashū Kanazawa jū Ayakuni saku"),
        ("応同藩鵜木君之嘱製之", "dōhan Unoki-kun no shoku ni ōjite kore o seisu"),
        ("為某野某君作之", "Soregashino bōkun no tame ni kore o tsukuru"),
        ("應鎗□氏需", "Yari…-shi no motome ni ōjite"),
        ("轟元敬鐫", "Todoroki Mototaka horu"),
        ("円位上人", "En'i-shōnin"),
        ("綾国作□政五年", "Ayakuni saku …sei gonen"),
        ("綾国作□化三丙□年", "Ayakuni saku …ka san hinoe … no toshi"),
        ("天□七年", "Ten… shichinen"),
    ],
)  # fmt: skip
def test_signatures_and_worn_dates(text: str, romaji: str) -> None:
    assert read_text(text).proposals[0].romaji == romaji


@pytest.mark.parametrize(
    ("surname", "romaji"),
    [("川田", "Kawada"), ("犬伏", "Inubushi"), ("鮎川", "Ayukawa"), ("安来", "Yasugi")],
)
def test_a_surname_is_read_as_most_are_called(surname: str, romaji: str) -> None:
    assert readings(surname, "surname")[0].romaji == romaji


def test_a_reading_by_persons_says_how_many() -> None:
    assert readings("川田", "surname")[0].reason == "surname, of 23 of 29 persons in ENAMDICT"


def test_a_family_in_no_list_is_a_doubt() -> None:
    why = "鵙沢 is in no list of surnames; it may be something else"
    assert why in [doubt.why for doubt in read_text("武州住鵙沢綾国刻").doubts]
    assert not read_text("武州住沢井綾国刻").doubts


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("明石浦／ほの〳〵とあかしの浦の朝霧に／島かくれ行舟をしそおもふ", "Akashi no ura "),
        ("龍田川／ほの〳〵とあかしの浦の朝霧に／島かくれ行舟をしそおもふ", "Tatsutagawa "),
        ("春ハ華夏ほとゝきす龝ハ月冬雪さえて冷しかりけり", "haru wa hana natsu hototogisu aki wa"),
        (
            "鉄ハ熱キニ打ツヘシ人ハ若キニ学フヘシ／沢井綾国刻",
            "tetsu wa atsuki ni utsubeshi hito wa",
        ),
        ("堪忍の二字をつねに忘るへからす", "kannin no niji o "),
    ],
)
def test_how_it_begins(text: str, begins: str) -> None:
    assert read_text(text).proposals[0].romaji.startswith(begins)
