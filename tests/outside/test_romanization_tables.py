"""Romanisation against the published tables.

Sources: the ALA-LC romanization table for Japanese (American Library Association and Library of
Congress: modified Hepburn; n before b, m and p; apostrophe; macrons) and ISO 3602:1989,
Documentation: romanization of Japanese (kana script). The rules and the forms below are given from
memory: each form is the romanisation by that table of a well-known word or place.
"""

from __future__ import annotations

import pytest

from inscribe.reading.spelling.letters import hepburn, iso3602

ALA_LC = [
    # macrons over long a, u, e, o; ii and ei written out
    ("とうきょう", "tōkyō"),
    ("きょうと", "kyōto"),
    ("おおさか", "ōsaka"),
    ("ほっかいどう", "hokkaidō"),
    ("きゅうしゅう", "kyūshū"),
    ("にいがた", "niigata"),
    ("めいじ", "meiji"),
    ("けいざい", "keizai"),
    # the syllabic nasal is n before every consonant, with an apostrophe before a vowel or y
    ("しんぶん", "shinbun"),
    ("さんぽ", "sanpo"),
    ("ぐんま", "gunma"),
    ("まんようしゅう", "man'yōshū"),
    ("しんいち", "shin'ichi"),
    ("けんいん", "ken'in"),
    # double consonants; tch
    ("にっぽん", "nippon"),
    ("がっこう", "gakkō"),
    ("ざっし", "zasshi"),
    ("にっちゅう", "nitchū"),
    # the rows where Hepburn and the kana table part ways
    ("ふじ", "fuji"),
    ("つるが", "tsuruga"),
    ("ちば", "chiba"),
    ("じゅうどう", "jūdō"),
    ("みかづき", "mikazuki"),
    ("はなぢ", "hanaji"),
]

ISO_3602 = [
    ("ふじさん", "huzisan"),
    ("とうきょう", "tôkyô"),
    ("しんぶん", "sinbun"),
    ("ちち", "titi"),
    ("つくし", "tukusi"),
    ("しゃしん", "syasin"),
    ("ちゅうしゃ", "tyûsya"),
    ("じゃま", "zyama"),
    ("はなぢ", "hanadi"),
    ("みかづき", "mikaduki"),
    ("を", "wo"),
    ("こんいろ", "kon'iro"),
    ("ざっし", "zassi"),
    ("こっち", "kotti"),
]

# The basic syllables in the order of the kana table, both systems side by side.
SYLLABLES = {
    "さしすせそ": ("sa shi su se so", "sa si su se so"),
    "たちつてと": ("ta chi tsu te to", "ta ti tu te to"),
    "はひふへほ": ("ha hi fu he ho", "ha hi hu he ho"),
    "ざじずぜぞ": ("za ji zu ze zo", "za zi zu ze zo"),
    "だぢづでど": ("da ji zu de do", "da di du de do"),
    "やゆよわを": ("ya yu yo wa o", "ya yu yo wa wo"),
}


@pytest.mark.parametrize(("kana", "letters"), ALA_LC)
def test_ala_lc(kana: str, letters: str) -> None:
    assert hepburn(kana) == letters


@pytest.mark.parametrize(("kana", "letters"), ISO_3602)
def test_iso_3602(kana: str, letters: str) -> None:
    assert iso3602(kana) == letters


@pytest.mark.parametrize("row", SYLLABLES)
def test_rows_of_the_kana_table(row: str) -> None:
    modified_hepburn, iso = SYLLABLES[row]
    assert " ".join(hepburn(kana) for kana in row) == modified_hepburn
    assert " ".join(iso3602(kana) for kana in row) == iso
