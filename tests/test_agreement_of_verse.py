"""What stands further off decides an ending, a voicing mark or a reading in verse.

The sentences are this project's own.
"""

from __future__ import annotations

import pytest

from inscribe.reading import read_text


def reading(text: str) -> str:
    """Return the first reading in the language of verse."""
    return read_text(text, register="verse").proposals[0].romaji


@pytest.mark.parametrize(
    ("text", "part"),
    [
        # が where no verb answers か as a question; か where one does, and in doubles.
        ("君か行く野辺の薄の穂に出てて招くと見しは風にそ有ける", "kimi ga yuku"),
        ("夢か現か知らぬ間に花の散りぬる夕暮の空", "yume ka utsutsu ka"),
        # ごと behind の without a particle, こと with one.
        ("虫のこと声をは立てぬ思ひとて月にそ袖は濡れまさりける", "mushi no goto"),
        ("虫のことを思ひ出てつつ袖濡れて帰る野末の秋の夕暮", "mushi no koto o"),
        # じ where a sentence ends that asks for no attributive; し where ぞ asks for it.
        ("年経れと契りし人を待つ宿の松の緑は色も忘れし", "wasureji"),
        # な … そ forbids.
        ("山風よ梅な散らしそ待つ人の来て見む春も近しと思へは", "na chirashi so"),
        # ども where all is fact, とも where something is only thought of.
        ("鳴虫の声は聞ゆと思とも月の光に影は見えけり", "omoedomo"),
        # what sounds by itself has a ne, what is struck by the wind an oto.
        ("笛の音の遠く聞えて月影に舟漕き渡る秋の浦人", "fue no ne"),
        ("滝の音の遠く聞えて月影に舟漕き渡る秋の浦人", "taki no oto"),
        # waga is who does what describes a noun, ware who does what is said.
        ("都鳥我思ふ人は有明の月に鳴くらむ声そ悲しき", "waga omou hito"),
    ],
)
def test_what_stands_further_off_decides(text: str, part: str) -> None:
    assert part in reading(text)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("具足櫃開けば梅の匂ひかな", "gusokubitsu"),
        ("道連れに柿をもらひぬ秋日和", "akibiyori"),
        ("窓ひとつ開けて見送る雁の声", "mado hitotsu"),
    ],
)
def test_the_second_of_two_nouns_is_voiced_in_haiku(text: str, part: str) -> None:
    proposals = read_text(text, register="verse", alternatives=True).proposals
    assert part in proposals[0].romaji


def test_the_clear_consonant_is_the_alternative() -> None:
    proposals = read_text("具足櫃開けば梅の匂ひかな", register="verse", alternatives=True).proposals
    assert any("gusoku hitsu" in each.romaji for each in proposals[1:])
    assert proposals[0].chance > 0.5


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("秋来ぬと風の音には不見共桐の一葉の落つる夕暮", "mienedomo"),
        ("今日散ると昨日は人の不思しを花の夕に雨は降りつつ", "omowazarishi"),
        ("待つ人は不来て更けゆく夜半の月", "kozute"),
    ],
)
def test_what_is_written_before_a_verb_bends(text: str, part: str) -> None:
    assert part in reading(text)
