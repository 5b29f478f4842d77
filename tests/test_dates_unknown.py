"""Dates that cannot be as they are written: the name of no era, the number of no year."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from inscribe.checking import check_folder
from inscribe.dates import find, resolve
from inscribe.dates.calendar.eras import by_name
from inscribe.dates.written.numerals import as_kanji
from inscribe.dates.written.unknown_eras import eras_like


@pytest.mark.parametrize(
    ("carved", "first"),
    [
        ("元緑三年", "元禄三年"),
        ("元録三年", "元禄三年"),
        ("喜永六年", "嘉永六年"),
        ("嘉氷六年癸丑仲秋", "嘉永六年"),
        ("明冶廿年", "明治二十年"),
        ("亨保十年", "享保十年"),
        ("安改二乙卯歳", "安政二年"),
        ("□緑三年", "元禄三年"),
        ("元緑元年", "元禄元年"),
        ("夫明八年", "天明八年"),
        ("慶鷹二年", "慶応二年"),
    ],
)
def test_the_name_of_no_era_is_kept_with_the_eras_it_is_like(carved: str, first: str) -> None:
    found = resolve(carved)
    assert found.text == carved
    assert found.agreement == "conflict"
    assert f"{carved[:2]} is the name of no era" in found.why
    assert found.explanations[0].read == first[:2]
    assert found.suggestions[0].startswith(f"read {first} ")


@pytest.mark.parametrize(
    ("carved", "likes"),
    [("□緑三年", "文禄 or 元禄"), ("元緑三年", "元禄"), ("嘉氷六年", "嘉永")],
)
def test_every_era_that_a_name_is_as_like_as_any_is_named(carved: str, likes: str) -> None:
    assert resolve(carved).why.endswith(f"is the name of no era; it is most like {likes}")


def test_without_a_number_the_eras_are_named_all_the_same() -> None:
    for carved in ("元緑□年", "元緑廿年", "元緑十□年"):
        assert resolve(carved).suggestions[0].startswith("read 元禄"), carved


@pytest.mark.parametrize(
    ("carved", "said"),
    [
        ("天明零年", "no era had a year 零"),
        ("天明〇年", "no era had a year 〇"),
        ("天明○年五月", "no era had a year ○"),
        ("天明零", "no era had a year 零"),
        ("〇年三月", "no era had a year 〇"),
        ("天保△年", "△ is no number"),
        ("天保十ニ年", "十ニ is no number"),
        ("天保二十年", "Tenpō had only 15 years"),
        ("天保□十年", "Tenpō had only 15 years, none of them □十"),
        ("天保廿三年", "Tenpō had only 15 years"),
    ],
)
def test_the_number_of_no_year_is_named_as_such(carved: str, said: str) -> None:
    found = resolve(carved)
    assert found.text == carved
    assert found.agreement == "conflict"
    assert said in found.why


def test_a_sign_that_looks_like_a_number_is_proposed_as_one() -> None:
    assert resolve("天保十ニ年三月").suggestions[0].startswith("read 天保十二年 (1841)")
    assert resolve("天保入年").suggestions[0].startswith("read 天保八年 (1837)")


def test_two_signs_that_cannot_be_read_may_be_any_era_that_fits() -> None:
    assert resolve("□□三年壬辰").year == 1832
    assert len(resolve("□□三年").candidates) > 20
    assert resolve("□□三年").agreement == "unchecked"


def test_the_pair_decides_between_eras_that_are_as_like() -> None:
    assert resolve("元緑三庚午歳").year == 1690
    assert resolve("喜永六年癸丑").year == 1853


@pytest.mark.parametrize(
    "text",
    [
        "桃栗三年柿八年",
        "武州住露岳三年作",
        "鶴千年亀万年",
        "嘉永某年",
        "石の上にも三年",
        "皇紀二千六百年",
        "同年六月",
        "明治三〇年",
        "天保辰年",
        "行年六十年",
    ],
)
def test_what_is_like_no_era_is_no_conflict_in_a_text(text: str) -> None:
    assert [date for date in find(text) if date.agreement == "conflict"] == []


def test_a_signature_keeps_the_date_and_check_names_it(tmp_path) -> None:  # type: ignore[no-untyped-def]
    (found,) = find("武州住嶺暁元緑三年作")
    assert (found.text, found.first) == ("元緑三年", 5)
    (tmp_path / "a.toml").write_text(
        'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\n'
        'text = "元緑三年嶺暁作"\n',
        encoding="utf-8",
    )
    findings = check_folder(tmp_path).findings
    assert any(each.code == "date-conflict" and "元禄三年" in each.message for each in findings)


@given(st.sampled_from(sorted(by_name())), st.integers(1, 20))
def test_no_era_is_taken_for_an_unknown_one(era: str, number: int) -> None:
    found = resolve(f"{era}{as_kanji(number)}年")
    assert found.era == era
    assert "name of no era" not in found.why


@given(st.text("元嘉永緑氷天明露岳", min_size=2, max_size=2))
def test_eras_are_ranked_by_likeness(name: str) -> None:
    shares = [like.share for like in eras_like(name)]
    assert shares == sorted(shares, reverse=True)
    assert all(0.5 <= share <= 1 for share in shares)
