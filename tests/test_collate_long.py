"""Texts of any length and likeness: the work stays bounded, every sign is accounted for once."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings, strategies as st

from inscribe.collation import Collation, collate_texts

KANA = [chr(code) for code in range(0x3042, 0x3094)]
KANJI = [chr(code) for code in range(0x4E00, 0x9FA0)]
VERSE = (
    "花春秋風月山雪露人心夢袖涙霞霧鶯鹿雁松梅桜萩空雲水川海浪舟里宿道野夜年色影世身君物命恋衣草木"
)
POEM = "春すぎて夏来にけらし白妙の衣ほすてふ天の香具山"
KANA_POEM = "はるすぎてなつきにけらししろたへのころもほすてふあまのかぐやま"
OTHER = "秋の田のかりほの庵の苫をあらみわが衣手は露にぬれつつ"
# States looked at, for each sign of both texts, whatever they say; and what any search may take.
PER_SIGN, AT_ONCE = 7, 30_000


def drawn(signs: list[str] | str, length: int, seed: int) -> str:
    return "".join(random.Random(seed).choices(signs, k=length))


def assert_tiles(result: Collation) -> None:
    at = 0
    for group in result.groups:
        assert group.copy.start == at
        at = group.copy.end
    assert at == len(result.copy.signs)
    taken = sorted(i for g in result.groups for i in range(g.source.start, g.source.end))
    assert taken == list(range(*result.window))


def unlike(length: int) -> dict[str, tuple[str, str]]:
    """Return pairs of texts that have little in common, or too much in too many ways."""
    text = (KANA_POEM * (length // len(KANA_POEM) + 1))[:length]
    written = (POEM * (length // len(POEM) + 1))[:length]
    other = (OTHER * (length // len(OTHER) + 1))[:length]
    return {
        "kanji": (drawn(KANJI, length, 1), drawn(KANJI, length, 2)),
        "words of verse": (drawn(VERSE, length, 1), drawn(VERSE, length, 2)),
        "kana": (drawn(KANA, length, 1), drawn(KANA, length, 2)),
        "four kana": (drawn("のにはを", length, 1), drawn("のにはを", length, 2)),
        "kanji and kana": (drawn(VERSE, length, 1), drawn(KANA, length, 2)),
        "one sign": ("の" * length, "花" * length),
        "unreadable": ("□" * length, text),
        "half unreadable": ("".join("□" + c for c in text[::2])[:length], text),
        "gaps": ("［　　］".join(text[i : i + 5] for i in range(0, length, 10)), text),
        "reversed": (written[::-1], written),
        "half alike": (written[: length // 2] + other[length // 2 :], written),
        "one poem in two": ((POEM + OTHER) * (length // 50), (POEM + KANA_POEM) * (length // 56)),
        "repeat marks": ("花" + "ゝ" * (length - 1), text),
        "poem and its kana over and over": (written, text),
    }


@pytest.mark.parametrize("name", unlike(60))
def test_the_work_is_bounded_however_unlike_the_texts_are(name: str) -> None:
    for length in (70, 300, 1500):
        copy, source = unlike(length)[name]
        result = collate_texts(copy, source)
        assert_tiles(result)
        signs = len(result.copy.signs) + len(result.source.signs)
        assert result.work <= AT_ONCE + PER_SIGN * signs


def test_ten_thousand_signs_without_anything_in_common_take_no_search() -> None:
    result = collate_texts(drawn(VERSE, 10_000, 1), drawn(KANA, 10_000, 2))
    assert result.work == 0
    assert [group.kind for group in result.groups] == ["replaced"]
    assert "only roughly" in result.notes[0]
    assert "10,000 signs" in result.notes[0]


def test_what_cannot_be_read_is_no_difference_however_long() -> None:
    result = collate_texts("□" * 400, KANA_POEM * 12)
    assert [group.kind for group in result.groups] == ["unread"]
    assert result.notes == ()
    result = collate_texts("［　　］", KANA_POEM * 12)
    assert [group.kind for group in result.groups] == ["unread"]


def test_texts_that_go_together_are_never_held_roughly() -> None:
    copy, source = (POEM + OTHER) * 30, KANA_POEM + OTHER
    result = collate_texts(copy, source * 30)
    assert_tiles(result)
    assert result.is_faithful_in_wording
    assert result.notes == ()


def test_an_unlike_half_leaves_the_other_half_as_it_is() -> None:
    unlike_part = drawn(VERSE, 400, 5)
    result = collate_texts(POEM * 10 + unlike_part, KANA_POEM * 10 + drawn(KANA, 400, 6))
    assert_tiles(result)
    told = [group for group in result.groups if group.is_substantive]
    assert len(told) == 1
    assert unlike_part[10:] in told[0].copy.text


def test_a_short_text_is_placed_in_a_long_one() -> None:
    before, behind = drawn(KANA, 4000, 3), drawn(KANA, 4000, 4)
    result = collate_texts(POEM + "花", before + KANA_POEM + "はな" + behind)
    assert result.is_faithful_in_wording
    assert result.window == (4000, 4000 + len(KANA_POEM) + 2)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.sampled_from([POEM, OTHER, KANA_POEM, "□□", "［　　］", "花花花", "の"]), max_size=9
    ),
    st.lists(st.sampled_from([POEM, OTHER, KANA_POEM, "□□", "花花花", "の"]), max_size=9),
)
def test_groups_tile_long_texts(copy: list[str], source: list[str]) -> None:
    assert_tiles(collate_texts("".join(copy), "".join(source)))


def test_near_words_are_not_exchanged_over_what_came_from_afar() -> None:
    copy = OTHER + "の" + 4 * POEM + "花花花" + OTHER + POEM
    assert_tiles(collate_texts(copy, "花花花" + 2 * OTHER + "花花花" + KANA_POEM + OTHER))


def test_differences_of_long_texts_are_widened_as_those_of_short_ones() -> None:
    poem = "花の色はうつりにけりないたつらに我身世にふるなかめせしまに"
    other = "花の色はうつりにけるないたつらに我身世にふるなかめせしまは"
    few, many = collate_texts(poem * 3, other * 3), collate_texts(poem * 170, other * 170)
    assert not any("widened" in note for note in (*few.notes, *many.notes))
    told = [(group.copy.text, group.source.text) for group in few.groups if group.is_substantive]
    assert {(g.copy.text, g.source.text) for g in many.groups if g.is_substantive} == set(told)
