"""A sign is found by a reading, whole or without its kana, and so are its forms without one."""

from __future__ import annotations

import pytest

from inscribe.forms.characters import with_reading
from inscribe.forms.search import found


@pytest.mark.parametrize(
    ("reading", "sign"), [("きざむ", "刻"), ("きざ", "刻"), ("つくる", "作"), ("せん", "船")]
)
def test_a_kanji_is_found_by_its_reading(reading: str, sign: str) -> None:
    assert sign in with_reading(reading)


def test_a_form_without_a_reading_is_found_by_that_of_its_current_form() -> None:
    signs = found(reading="つる")
    assert signs[0] == "鶴"
    assert "靍" in signs
    assert len(set(signs)) == len(signs)
