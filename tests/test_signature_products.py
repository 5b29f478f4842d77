"""The grammar of signatures over its whole product, with a name that no table has (霰郷)."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from inscribe import read_text, tables
from inscribe.reading.words import words_of

NAME, READ = "霰郷", "Araresato"
CLOSINGS = ["", "之", "也", "者也", "之也", "畢", "矣"]
# No verbs but beside another sign (揮毫, 推敲); 霰郷図 may as well be a picture of a place.
ARGUED = {"図", "覆", "墨", "毫", "裂", "敲", "斎戒", "斎沐"}
# Signs that rather end or begin a name beside another: 理成, 頼之.
NAMED_BY = {"理", "進", "頼", "正", "定", "知"}
OFFICES = {
    "守": "no kami",
    "介": "no suke",
    "掾": "no jō",
    "大掾": "no daijō",
    "少掾": "no shōjō",
    "目": "no sakan",
    "権守": "no gon no kami",
    "権介": "no gon no suke",
}


def parts(sort: str) -> list[str]:
    rows = tables.rows("signature_parts")
    return [row["written"] for row in rows if sort in tables.listed(row["sort"])]


def of_class(*kinds: str) -> list[str]:
    rows = tables.rows("signature_words")
    return [
        r["written"]
        for r in rows
        if r["class"] in kinds and all("一" <= c <= "龠" for c in r["written"])
    ]


def misses(texts: list[str], right: Callable[[str], bool]) -> list[str]:
    read = ((text, read_text(text).proposals[0].romaji) for text in texts)
    return [f"{text} {romaji}" for text, romaji in read if not right(romaji)]


def verbs() -> list[str]:
    listed = [word for word in of_class("verb") if len(word) < 3 and word[-1] != "之"]
    return [verb for verb in dict.fromkeys((*parts("act"), *listed)) if verb not in ARGUED]


@pytest.mark.parametrize("closing", CLOSINGS)
def test_every_verb_closes_a_signature(closing: str) -> None:
    texts = [f"{NAME}{verb}{closing}" for verb in verbs()]
    assert not misses(texts, lambda read: read.startswith(READ))


def test_every_word_that_wants_an_object_closes_a_signature_with_it() -> None:
    texts = [f"{NAME}{word}之" for word in of_class("transitive") if word != "貫"]  # 貫之: a poet
    assert not misses(texts, lambda read: read.startswith(READ) and " kore " in read)


@pytest.mark.parametrize("frame", ["奉{}", "奉{}之", "所{}", "所{}也", "令{}之", "謹{}", "{}成之"])
def test_every_verb_is_done_humbly_by_order_or_is_what_one_did(frame: str) -> None:
    once = [*parts("act"), *parts("doing")]
    texts = [NAME + frame.format(verb) for verb in once if verb not in ARGUED | NAMED_BY]
    assert not misses(texts, lambda read: read.startswith(f"{READ} "))


@pytest.mark.parametrize("link", ["之", "ノ", "の", "氏之"])
@pytest.mark.parametrize("deed", ["ニ応シ", "ニ応ジテ", "ニ依テ", "ニヨリ", "に応じて", "ニ任セ"])
def test_every_wish_is_answered_in_japanese_order(link: str, deed: str) -> None:
    texts = [f"三輪{link}{wish}{deed}{NAME}作" for wish in parts("wish")]
    assert not misses(texts, lambda r: r.startswith("Miwa") and r.endswith(f"{READ} saku"))


def test_every_model_is_followed_in_japanese_order() -> None:
    rows = [row for row in tables.rows("signature_parts") if row["sort"] == "modelling"]
    followed = [("ニ" if row["particle"] == "に" else "ヲ") + row["written"] for row in rows]
    texts = [f"嶺暁ノ{noun}{verb}テ{NAME}作" for noun in parts("model_noun") for verb in followed]
    assert not misses(texts, lambda r: r.startswith("Reigyō no") and r.endswith(f"{READ} saku"))


@pytest.mark.parametrize("frame", ["{}", "之ヲ{}", "コレヲ{}", "之を{}"])
def test_every_verb_may_have_its_ending_in_kana(frame: str) -> None:
    ends = {
        "つくる": "ル",
        "ほる": "ル",
        "きざむ": "ム",
        "うつす": "ス",
        "しるす": "ス",
        "うつ": "ツ",
    }
    acts = [row for row in tables.rows("signature_parts") if row["sort"] == "act"]
    texts = [
        NAME + frame.format(r["written"] + ends[r["native"]]) for r in acts if r["native"] in ends
    ]
    assert len(texts) > 15
    assert not misses(texts, lambda read: read.startswith(READ))


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("作ル", "つくる"),
        ("造レリ", "つくれり"),
        ("鐫リテ", "ほりて"),
        ("製シ", "せいし"),
        ("謹製ス", "つつしんで せいす"),
        ("鍛フ", "きたう"),
    ],
)
def test_an_ending_in_kana_tells_the_form(carved: str, said: str) -> None:
    assert words_of(carved)[0].kana == said


def test_kana_that_is_no_ending_of_the_word_makes_no_verb() -> None:
    assert not words_of("作ム")
    assert not words_of("刻ヘ")


def test_every_office_of_every_province_is_a_title() -> None:
    rows = [row["written"] for row in tables.rows("provinces") if row["kind"] == "province"]
    for office, said in OFFICES.items():
        texts = [f"{province}{office}{NAME}" for province in rows]
        assert not misses(texts, lambda read, said=said: read.endswith(f"{said} {READ}"))


def test_every_relation_stands_between_two_names() -> None:
    texts = [f"嶺暁{relation}{NAME}作" for relation in of_class("relation")]
    assert not misses(texts, lambda r: r.startswith("Reigyō") and r.endswith(f"{READ} saku"))


def test_every_ordinal_of_generations_stands_after_a_name() -> None:
    ordinals = [n + unit for n in "二三四五六七八九十" for unit in parts("generation_unit")]
    whose = ["", *parts("descendant")]
    texts = [f"嶺暁{ordinal}{each}{NAME}作" for ordinal in ordinals for each in whose]
    assert not misses(texts, lambda r: r.startswith("Reigyō") and r.endswith(f"{READ} saku"))


@pytest.mark.parametrize("frame", ["応三輪{}需霰郷作", "為三輪{}霰郷作"])
def test_every_word_of_respect_stands_after_a_family(frame: str) -> None:
    texts = [frame.format(word) for word in of_class("honorific")]
    assert not misses(
        texts,
        lambda r: (
            r.startswith("Miwa")
            and r.endswith(f" ni ōjite {READ} saku" if "応" in frame else f" tame ni {READ} saku")
        ),
    )


def test_a_bare_name_after_an_occasion_is_the_makers() -> None:
    assert read_text("為記念霰郷作").proposals[0].romaji.endswith("tame ni Araresato saku")


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("霰郷一刀彫", "Araresato ittōbori"),
        ("霰郷百日而成之", "Araresato hyakunichi ni shite kore o nasu"),
        ("三輪家重器", "Miwa-ke jūki"),
        ("改嶺暁霰郷彫", "Reigyō aratame Araresato horu"),
        ("孟冬二本松住霰郷作", "mōtō Nihonmatsu jū Araresato saku"),
    ],
)
def test_classes_of_formulas_a_second_author_showed(carved: str, said: str) -> None:
    assert read_text(carved).proposals[0].romaji == said


def test_every_relation_and_prefix_needs_no_verb() -> None:
    relations = [each for each in of_class("relation") if each != "子"]  # 嶺暁子: a pen name
    between = [f"嶺暁{relation}{NAME}" for relation in relations]
    assert not misses(between, lambda r: r.startswith("Reigyō ") and r.endswith(f" {READ}"))
    before = [f"{prefix}{NAME}" for prefix in of_class("prefix")]
    assert not misses(before, lambda r: r.endswith(f" {READ}"))


@pytest.mark.parametrize("joint", ["合作", "共作", "同刻", "合彫"])
@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("与霰郷{}", "Araresato to "),
        ("永近霰郷{}", "Nagachika Araresato "),
        ("霰郷永近嶺暁{}", "Araresato Nagachika Reigyō "),
        ("三輪霰郷鵜殿永近{}", "Miwa Araresato Udono Nagachika "),
    ],
)
def test_persons_who_worked_together_are_all_named(carved: str, joint: str, said: str) -> None:
    assert read_text(carved.format(joint)).proposals[0].romaji.startswith(said)


def test_every_verb_is_done_by_whom_another_ordered() -> None:
    texts = [f"令{NAME}{verb}之" for verb in parts("act") if verb not in ARGUED]
    assert not misses(texts, lambda r: r.startswith(f"{READ} o shite kore ") and r[-5:] == "shimu")


def test_every_feast_may_stand_before_a_name_without_a_year() -> None:
    feasts = [row["written"] for row in tables.rows("festivals") if len(row["written"]) > 1]
    texts = [f"{feast}{NAME}作" for feast in (*feasts, *parts("turn_of_year"))]
    assert not misses(texts, lambda r: r.endswith(f" {READ} saku"))


@pytest.mark.parametrize("frame", ["{}トシテ", "三輪氏ノ{}トシテ"])
def test_every_occasion_is_told_in_japanese_order(frame: str) -> None:
    texts = [frame.format(occasion) + f"{NAME}作" for occasion in parts("occasion")]
    assert not misses(texts, lambda r: f" to shite {READ}" in r)


@pytest.mark.parametrize("first", ["作", "地", "下地", "地金", "造", "彫"])
@pytest.mark.parametrize(("elder", "younger"), [("兄", "弟"), ("師", "弟子"), ("養父", "養子")])
def test_two_of_one_house_sign_together(elder: str, younger: str, first: str) -> None:
    read = read_text(f"{elder}{NAME}{first}{younger}永近彫").proposals[0].romaji
    assert f" {READ} " in read
    assert read.endswith(" Nagachika horu")


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("父磯棟下地子鞆苗彫", "chichi Isomune shitaji ko Tomonae horu"),
        ("磯棟女綾作", "Isomune jo Aya saku"),
        ("従霰郷学", "Araresato ni shitagaite manabu"),
        ("古金工風写栃木住", "kokinkō fū utsushi Tochigi jū"),
        ("霰郷彫ラシム", "Araresato horashimu"),
        ("霰郷ホル", "Araresato horu"),
        ("古画ヲ模ス", "koga o mosu"),
        ("縮写古図", "kozu o shukushasu"),
        ("竜天", "Ryūten"),
    ],
)
def test_classes_of_formulas_found_by_grammar(carved: str, said: str) -> None:
    assert read_text(carved).proposals[0].romaji == said
