"""Seed syllables in Siddham letters: the letters in Latin ones, where no table knows the seed."""

from __future__ import annotations

import unicodedata

import pytest

from inscribe.forms.siddham import is_siddham, seed, spelt


def letters(*names: str) -> str:
    return "".join(unicodedata.lookup(f"SIDDHAM {name}") for name in names)


@pytest.mark.parametrize(
    ("names", "said"),
    [
        (("LETTER A",), "a"),
        (("LETTER AA",), "ā"),
        (("LETTER II",), "ī"),
        (("LETTER UU",), "ū"),
        (("LETTER VOCALIC R",), "r̥"),
        (("LETTER NGA",), "ṅa"),
        (("LETTER NYA",), "ña"),
        (("LETTER KA", "VOWEL SIGN I"), "ki"),
        (("LETTER HA", "VOWEL SIGN UU", "SIGN ANUSVARA"), "hūṃ"),
        (("LETTER A", "SIGN VISARGA"), "aḥ"),
        (("LETTER O", "SIGN CANDRABINDU"), "om̐"),
        (("LETTER VA", "SIGN NUKTA"), "va"),
        (("LETTER BA", "SIGN VIRAMA"), "b"),
        (("LETTER TA", "SIGN VIRAMA", "LETTER RA", "VOWEL SIGN AA"), "trā"),
    ],
)
def test_letters_are_spelt_by_their_names(names: tuple[str, ...], said: str) -> None:
    assert spelt(letters(*names)) == said


def test_a_seed_the_table_knows_is_said_and_another_is_not() -> None:
    known = letters("LETTER A", "SIGN ANUSVARA")
    assert (seed(known).kana, seed(known).written) == ("アン", known)
    assert seed(known).gloss.startswith("Fugen")
    assert seed(letters("LETTER BA", "SIGN VIRAMA")).kana == ""
    assert is_siddham(known)
    assert not is_siddham("阿")
