"""A reading turned from Hepburn into ISO 3602."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.reading import read_text
from inscribe.reading.inscription.iso import in_iso3602, iso_reading
from inscribe.reading.spelling.letters import hepburn, iso3602


@pytest.mark.parametrize(
    ("kana", "romaji", "iso"),
    [
        ("こうま を おう", "kouma o ou", "kouma wo ou"),
        ("おおさか へ", "Ōsaka e", "Ôsaka he"),
        ("いっ た", "itta", "itta"),
        ("こっち", "kotchi", "kotti"),
        ("まんようしゅう", "Man'yōshū", "Man'yôsyû"),
        ("むさし ぐん", "Musashi-gun", "Musasi-gun"),
        ("びーる", "bīru", "bîru"),
        ("… つき", "… tsuki", "… tuki"),
        ("ちいさい", "chiisai", "tiisai"),
        ("かたな", "something else", "something else"),
        ("", "", ""),
    ],
)
def test_letters(kana: str, romaji: str, iso: str) -> None:
    assert in_iso3602(kana, romaji) == iso


SYLLABLES = [*"かしちつづじはふをんおうえいやー", "きゃ", "しゅ", "ぢょ", "っか", "っち", "っしゃ"]


@given(st.lists(st.sampled_from(SYLLABLES), max_size=6))
def test_a_word_alone_is_written_as_by_the_table(syllables: list[str]) -> None:
    kana = "".join(syllables)
    assert in_iso3602(kana, hepburn(kana)) == iso3602(kana)


def test_a_whole_reading() -> None:
    found = iso_reading(read_text("於東都應需造之"))
    assert found.proposals[0].romaji == "Tôto ni oite motome ni ôzite kore wo tukuru"
    assert found.signature is not None
    assert found.signature["verb"].romaji == "tukuru"
