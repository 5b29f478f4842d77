"""What kind of word a candidate for a worn sign makes is told beside it."""

from __future__ import annotations

import pytest

from inscribe import parse
from inscribe.restoring import restore


@pytest.mark.parametrize(
    ("text", "candidate", "evidence"),
    [
        ("行年六十八□", "歳", "word after an age 歳"),
        ("六十八□嶺暁作", "翁", "word after an age 翁"),
        ("行□六十八歳", "年", "word before an age 行年"),
        ("行年六十□歳", "二", "age 六十二"),
        ("嘉□六年癸丑", "永", "year 嘉永六年癸丑"),
        ("嘉永六年癸□", "丑", "the year agrees with its sexagenary sign"),
        ("嘉永六年□月", "八", "number of a month 八"),
        ("嘉永六年八□吉日", "月", "word for month 月"),
        ("嘉永六年仲□嶺暁", "春", "name of a month 仲春"),
        ("嘉永六年八月□日", "吉", "word for an auspicious day 吉日"),
        ("嘉永六年秋八月十□日", "一", "number of a day 十一"),
        ("嘉永六年八月十五□", "日", "word for day 日"),
        ("武□住嶺暁", "州", "place 武州"),
        ("武州□嶺暁", "住", "residence 住"),
        ("武州住嶺暁□", "作", "verb 作"),
        ("應□嶺暁作", "需", "commission 応需"),
        ("法□嶺暁", "橋", "title 法橋"),
        ("松翠□嶺暁", "斎", "art name 松翠斎"),
        ("於□都嶺暁作", "東", "city 東都"),
        ("□東都嶺暁作", "於", "opener 於"),
    ],
)
def test_the_kind_of_word_is_told(text: str, candidate: str, evidence: str) -> None:
    first = restore(parse(text)).lacunae[0].candidates[0]
    assert first.text == candidate
    assert evidence in {each.text for each in first.evidence}
