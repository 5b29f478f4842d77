"""Every reading says how likely it is right, whole and word by word, whatever kind it is of."""

from __future__ import annotations

import pytest

from inscribe import reading

TEXTS = [
    "春過て夏来にけらし白妙の衣ほすてふ天の香具山",  # a tanka
    "雪なから山本かすむ夕かな",  # a hokku (Sōgi, 1488)
    "武州住嶺暁作",  # a signature
    "和光同塵",  # a known saying
    "孤村煙雨暗",  # Chinese read by the rules
    "花咲山",  # a word
    "飛梅之図",  # a heading
    "油断は大敵と心得べし",  # classical prose
    "人気の無い所",  # modern prose
    "天保三年壬辰仲秋吉日",  # a date
    "春の夜の夢／露岳書",  # two passages
    "□",  # nothing that can be read
]


@pytest.mark.parametrize("text", TEXTS)
def test_the_chances_lie_between_0_and_1_and_there_is_one_a_word(text: str) -> None:
    found = reading.read_text(text, alternatives=True)
    for proposal in found.proposals:
        assert 0 <= proposal.chance <= 1
        assert all(0 <= chance <= 1 for _, chance in proposal.words_weighed())
    best, *others = found.proposals
    assert all(other.chance <= 0.9 for other in others) or best.chance == 1


def test_homographs_are_offered_in_prose() -> None:
    found = reading.read_text("人気の無い所", alternatives=True)
    assert any("hitoke" in proposal.romaji for proposal in found.proposals[1:])


def test_a_reading_that_is_not_sure_never_stands_without_a_warning() -> None:
    for text in TEXTS[:10]:
        found = reading.read_text(text, alternatives=True)
        sure = found.proposals[0].chance >= 0.94
        assert sure or found.doubts or len(found.proposals) > 1


def test_a_copy_is_read_by_its_source_where_that_is_in_kana() -> None:
    from inscribe.notation import parse

    copy = "白雲に羽打交し飛雁の数さへ見ゆる秋夜の月"  # Kokinshu 191
    source = "しらくもにはねうちかはしとぶかりのかずさへみゆるあきのよのつき"
    found = reading.read(parse(copy), "verse", source=source)
    assert "read as the source spells it in kana" in found.proposals[0].reasons
    assert "hane uchikawashi" in found.proposals[0].romaji


@pytest.mark.parametrize("text", [*TEXTS, "明月松間照／清泉石上流／朧谷鐫之"])
def test_no_word_is_less_sure_than_the_whole(text: str) -> None:
    best = reading.read_text(text).proposals[0]
    assert all(word >= best.chance for word in best.chances.words)


@pytest.mark.parametrize("text", [*TEXTS, "露岡作", "千種一蝶作", "清水作", "水府住霜村嶺暁"])
def test_the_chances_of_rival_readings_add_up_to_one_at_most(text: str) -> None:
    found = reading.read_text(text, alternatives=True)
    assert sum(proposal.chance for proposal in found.proposals) <= 1 + 1e-9
