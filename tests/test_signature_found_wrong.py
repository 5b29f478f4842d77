"""Signatures that were read wrong once, each with others of its like."""

from __future__ import annotations

import pytest

from inscribe import read_text

READINGS = {
    # a formula carved in kana after a bare name is no prose
    "嶺暁ニ倣フ": "Reigyō ni narau",
    "嶺暁に倣ふ": "Reigyō ni narau",
    "霰郷ヲ模ス": "Araresato o mosu",
    "霰郷ヲ写ス": "Araresato o utsusu",
    "霰郷ニ擬ス": "Araresato ni gisu",
    # what closes a formula though it may be another word too
    "倣嶺暁意匠霰郷作": "Reigyō no ishō ni naraite Araresato saku",
    "倣嶺暁流霰郷作": "Reigyō no ryū ni naraite Araresato saku",
    "倣嶺暁法霰郷作": "Reigyō no hō ni naraite Araresato saku",
    "右京霰郷作": "Ukyō Araresato saku",
    # a word that commonly ends a house, after a person of a clan
    "源義家": "Minamoto no Yoshiie",
    "平維家作": "Taira no Koreie saku",
    "藤原頼家作": "Fujiwara no Yoriie saku",
    "三輪家": "Miwa-ke",
    # a tradesman's house that is a family, before a name
    "金屋綾国作": "Kanaya Ayakuni saku",
    "鏡師綾国作": "kagamishi Ayakuni saku",
    # a place or a family by its sounds, or with its last sound written out
    "伊奈波住綾国作": "Inaba jū Ayakuni saku",
    "朝夷奈綾国作": "Asaina Ayakuni saku",
    # whom one does not name
    "某作": "Nanigashi saku",
    "三輪某作": "Miwa Bō saku",
    "某造之": "Nanigashi kore o tsukuru",
    "応某需綾国作": "nanigashi no motome ni ōjite Ayakuni saku",
    # staying somewhere, and then
    "在江戸時作之": "Edo ni aru toki kore o tsukuru",
    "寓京都日綾国作": "Kyōto ni gūsuru hi Ayakuni saku",
    "寓居京都時綾国作": "Kyōto ni gūkyo suru toki Ayakuni saku",
    "滞在長崎中綾国刻之": "Nagasaki ni taizai chū Ayakuni kore o kizamu",
    # a quarter after its town
    "於江戸新橋造之": "Edo Shinbashi ni oite kore o tsukuru",
    "於江戸新橋綾国造之": "Edo Shinbashi ni oite Ayakuni kore o tsukuru",
    "於江戸綾国造之": "Edo ni oite Ayakuni kore o tsukuru",
    # two things and what each is like are no two names
    "山高水長": "yama takaku mizu nagashi",
    "月白風清": "tsuki shiroku kaze kiyoshi",
    "竹直松堅": "take naoku matsu katashi",
    # craftsmen of old as models
    "古金工風写": "kokinkō fū utsushi",
    "古金工風写綾国作": "kokinkō fū utsushi Ayakuni saku",
    "倣古刀工綾国作": "kotōkō ni naraite Ayakuni saku",
    # for all posterity
    "子々孫々可伝": "shishi sonson tsutau beshi",
    "後世永可伝": "kōsei nagaku tsutau beshi",
    "子孫永宝": "shison eihō",
    "長寿万年": "chōju mannen",
    "亀寿万年": "kiju mannen",
}


@pytest.mark.parametrize("text", READINGS)
def test_it_is_read_right_first(text: str) -> None:
    assert read_text(text).proposals[0].romaji.lower() == READINGS[text].lower()


@pytest.mark.parametrize("name", ["宮内卿綾国作", "大納言綾国作", "宮内卿綾国"])
def test_a_title_that_a_poet_bore_begins_a_signature(name: str) -> None:
    assert [passage.kind for passage in read_text(name).passages] == ["signature"]


def test_a_poet_before_his_poem_is_a_passage_of_his_own() -> None:
    passages = read_text("宮内卿／うすくこき野辺のみどりの若草に跡まで見ゆる雪のむらぎえ").passages
    assert len(passages) == 2


def test_a_signature_and_a_wish_in_two_columns_are_two_passages() -> None:
    passages = read_text("嶺暁作／長壽萬年").passages
    assert [passage.text for passage in passages] == ["嶺暁作", "長壽萬年"]
    assert passages[0].romaji == "Reigyō saku"


@pytest.mark.parametrize(
    "signing", ["行年六十有一翁", "慶応元年閏五月廿八日行年六十有一翁", "依嶺暁好作", "七十有三翁"]
)
def test_no_other_reading_ends_in_an_empty_reason(signing: str) -> None:
    proposals = read_text(f"武州住露岳彫之／{signing}").proposals
    assert all(not reason.endswith(": ") for each in proposals for reason in each.reasons)
    if "有" in signing:
        assert any("有 is left unsaid" in reason for each in proposals for reason in each.reasons)
