"""Return marks: the school rules on invented and proverbial phrases, and laws for any text."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given, strategies as st

from inscribe.errors import NotationError
from inscribe.reading.chinese import marks as return_marks, order as kanbun


@pytest.mark.parametrize(
    ("marked", "read"),
    [
        ("造㆑之", "之造"),
        ("於㆓東都㆒造㆑之", "東都於之造"),
        ("登㆑高望㆓四海㆒", "高登四海望"),
        ("不㆑知㆓其一㆒", "其一知不"),  # one mark after another: 知 is called, and calls 不
        ("有㆘不㆑為㆓此事㆒者㆖", "此事為不者有"),
        ("我欲㆘行㆓江戸㆒刻㆗此詩㆖", "我江戸行此詩刻欲"),
        ("欲㆔作㆓百詩㆒", "百詩作欲"),
        ("見㆓子登㆒㆑山", "子山登見"),
        ("作㆓㆐造此刀㆒", "此刀作造"),
        ("応㆑需メニ彫㆑之ヲ", "需メニ応之ヲ彫"),
        ("花鳥風月", "花鳥風月"),
        ("", ""),
    ],
)
def test_rules(marked: str, read: str) -> None:
    assert kanbun.reorder(marked) == read


@pytest.mark.parametrize(
    ("marked", "column"),
    [
        ("㆑造之", 1),
        ("造之㆑", 3),
        ("於㆓東都造之", 2),
        ("造㆑㆑之", 3),
        ("造㆔之㆒", 2),
        ("造㆐", 2),
    ],
)
def test_a_mark_without_its_place(marked: str, column: int) -> None:
    with pytest.raises(NotationError) as caught:
        kanbun.reorder(marked)
    assert caught.value.place.column == column


SIGNS = st.sampled_from("花鳥風月刀造之ノ、。" + "".join(sorted(return_marks.MARKS)))


@given(st.text(SIGNS, max_size=14))
def test_every_sign_comes_once(text: str) -> None:
    with suppress(NotationError):
        order = kanbun.reading_order(text)
        assert sorted(order) == [i for i, sign in enumerate(text) if sign not in return_marks.MARKS]


@given(st.text(st.characters(exclude_characters=sorted(return_marks.MARKS)), max_size=20))
def test_a_text_without_marks_stays(text: str) -> None:
    assert kanbun.reorder(text) == text
    assert not return_marks.has_marks(text)


@given(st.integers(1, 8))
def test_a_chain_of_returns_turns_round(length: int) -> None:
    signs = "一二三四五六七八九"[: length + 1]
    assert kanbun.reorder("㆑".join(signs)) == signs[::-1]
