"""Composition and width against Python's unicodedata (NFC and NFKC)."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, strategies as st

from inscribe.forms import normalise_text
from inscribe.forms.steps import CommonSteps, steps

KANA = [chr(code) for code in range(0x3041, 0x30FB)]
HALF_WIDTH = [chr(code) for code in range(0xFF66, 0xFF9E)]


@pytest.mark.parametrize("mark", ["\u3099", "\u309a"])
def test_voiced_kana_are_composed_as_nfc_does(mark: str) -> None:
    marks = set("ゝゞヽヾ")
    for kana in KANA:
        if kana not in marks and unicodedata.category(kana) == "Lo" and kana not in "ゟヿ":
            assert normalise_text(kana + mark).text == unicodedata.normalize("NFC", kana + mark)


@pytest.mark.parametrize("mark", ["", "\uff9e", "\uff9f"])
def test_half_width_kana_become_what_nfkc_makes_them(mark: str) -> None:
    for kana in HALF_WIDTH:
        wide = unicodedata.normalize("NFKC", kana + mark)
        assert normalise_text(kana + mark).text == (wide if len(wide) == 1 else normal(kana, mark))


def normal(kana: str, mark: str) -> str:
    """A mark that joins to nothing stays as a mark after the wide kana."""
    return unicodedata.normalize("NFKC", kana) + mark


@given(st.text(st.sampled_from("かはばウｱ゙゚がé") | st.characters(max_codepoint=0x2FF), max_size=8))
def test_texts_of_kana_and_letters_end_in_nfc(text: str) -> None:
    assert unicodedata.is_normalized("NFC", normalise_text(text).text)


def test_full_width_letters_and_digits_become_narrow_and_punctuation_stays() -> None:
    for code in range(0xFF01, 0xFF5F):
        sign = chr(code)
        narrow = unicodedata.normalize("NFKC", sign)
        if sign != "＼":
            assert normalise_text(sign).text == (narrow if narrow.isalnum() else sign)


def test_a_common_text_needs_no_step_of_the_rare_characters() -> None:
    """Every character of JIS X 0213 has the same step whichever steps are loaded."""
    whole, common = steps(), CommonSteps()
    for sign, step in whole.items():
        try:
            sign.encode("euc_jisx0213")
        except UnicodeEncodeError:
            continue
        assert common.get(sign) == step
