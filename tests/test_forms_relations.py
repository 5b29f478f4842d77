"""Relations by cases: the same character in another form, another character, another word."""

from __future__ import annotations

import pytest

from inscribe.forms import related, relation, same_character

RELATED = [
    ("國", "国", "old form", "old_forms"),
    ("鐵", "鉄", "old form", "old_forms"),
    ("濱", "浜", "old form", "old_forms"),
    ("\ufa19", "神", "old form", "old_forms"),
    ("堯", "尭", "old form", "related_forms"),
    ("舩", "船", "variant", "variants"),
    ("嶋", "嶌", "variant", "variants"),
    ("圀", "國", "variant", "variants"),
    ("廻", "回", "variant", "related_forms"),
    ("鷗", "鴎", "variant", "related_forms"),
    ("匘", "脳", "variant", "related_forms"),
    ("东", "東", "variant", "simplified"),
    ("⼰", "己", "compatibility form", "Unicode"),
    ("ﾊ", "は", "compatibility form", "Unicode"),
    ("は", "ハ", "kana form", "Unicode"),
    ("\U0001b09e", "は", "kana form", "hentaigana"),
    ("\U0001b09e", "\U0001b09f", "kana form", "hentaigana"),
    ("\U0001b11d", "も", "kana form", "hentaigana"),
    ("壱", "一", "number form", "numbers"),
    ("貳", "二", "number form", "numbers"),
    ("己", "巳", "look-alike", "look_alikes"),
    ("未", "末", "look-alike", "look_alikes"),
    ("土", "士", "look-alike", "look_alikes"),
    ("日", "曰", "look-alike", "look_alikes"),
    ("千", "于", "look-alike", "look_alikes"),
    ("侍", "待", "look-alike", "look_alikes"),
    ("か\u3099", "が", "same", "Unicode"),
    ("葛\U000e0100", "葛", "same", "Unicode"),
    ("山", "川", "unrelated", ""),
    ("は", "ば", "unrelated", ""),
]
MERGED = ["辨弁", "辯弁", "瓣弁", "餘余", "藝芸", "豫予", "臺台", "缺欠", "絲糸", "蟲虫", "濱浜"]
OTHER_WORDS = ["辨辯", "辯瓣", "瓣辨", "辮辨", "余予", "餘豫", "芸云", "台颱", "予矛"]


@pytest.mark.parametrize(("a", "b", "kind", "table"), RELATED)
def test_relation(a: str, b: str, kind: str, table: str) -> None:
    for one, other in ((a, b), (b, a)):
        found = relation(one, other)
        assert (found.kind, found.table) == (kind, table)


@pytest.mark.parametrize("pair", MERGED)
def test_a_merged_form_is_related_to_what_is_printed_today(pair: str) -> None:
    found = relation(*pair)
    assert found.kind == "old form"
    assert pair[0] in found.note
    assert pair[1] in found.note


@pytest.mark.parametrize("pair", OTHER_WORDS)
def test_words_that_share_a_form_stay_apart(pair: str) -> None:
    assert not relation(*pair).is_same_character
    assert not same_character(*pair)


def test_the_reason_why_merged_words_are_apart_is_told() -> None:
    found = relation("辨", "辯")
    assert (found.kind, found.table) == ("unrelated", "merged")
    assert "弁" in found.note


def test_related_lists_other_forms_before_look_alikes() -> None:
    kinds = [found.kind for found in related("己").values()]
    assert kinds == ["compatibility form", "look-alike", "look-alike"]
    assert set(related("国")) >= {"國", "圀", "囯"}


@pytest.mark.parametrize(("one", "other"), [pair[:2] for pair in RELATED])
def test_a_relation_holds_both_ways(one: str, other: str) -> None:
    assert relation(one, other).kind == relation(other, one).kind
    assert same_character(one, other) == same_character(other, one)


@pytest.mark.parametrize(("simplified", "current"), [("东", "東"), ("历", "歴"), ("历", "暦")])
def test_a_simplified_form_and_what_it_may_be_know_each_other(
    simplified: str, current: str
) -> None:
    for one, other in ((simplified, current), (current, simplified)):
        assert related(one)[other].note == "a Chinese simplified form"
