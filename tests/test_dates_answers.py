"""Whole answers about dates, each looked at: what every key says of some sixty carved dates.

``tests/data/answers/dates.jsonl`` has an answer a line, as ``inscribe date --format json`` prints
it. Days were looked over against the published days of tests/outside and by reckoning; a change
of an answer has to be looked at as well, and then written there.
"""

import json
from itertools import product
from pathlib import Path

import pytest

from inscribe.dates import find, resolve
from inscribe.keys.dates import DateKeys

LINES = (Path(__file__).parent / "data/answers/dates.jsonl").read_text("utf-8").splitlines()
ANSWERS = [json.loads(line) for line in LINES]
FOUND = (Path(__file__).parent / "data/answers/dates_found.jsonl").read_text("utf-8").splitlines()
NUMBERS = "一二三四五六七八九十"


@pytest.mark.parametrize("answer", ANSWERS, ids=[answer["text"] for answer in ANSWERS])
def test_all_that_is_said_of_a_date(answer: dict[str, object]) -> None:
    assert json.loads(json.dumps(resolve(str(answer["text"])).to_dict())) == answer


@pytest.mark.parametrize("line", FOUND, ids=[json.loads(line)["text"] for line in FOUND])
def test_every_date_of_a_text_is_found(line: str) -> None:
    case = json.loads(line)
    found = [each.to_dict() for each in find(case["text"])]
    kept = [{key: each[key] for key in case["answer"][0]} for each in found]  # type: ignore[literal-required]
    assert json.loads(json.dumps(kept)) == case["answer"]


def test_every_key_of_a_date_has_a_value_in_some_answer() -> None:
    empty = (None, [], "", False)
    assert {k for answer in ANSWERS for k, v in answer.items() if v not in empty} == set(
        DateKeys.__annotations__
    )


def month_name(month: int) -> str:
    return f"{NUMBERS[month - 1]}月" if month <= 10 else f"十{NUMBERS[month - 11]}月"


@pytest.mark.parametrize(("month", "season"), product(range(1, 13), range(4)))
def test_a_month_lies_in_one_season(month: int, season: int) -> None:
    found = resolve(f"嘉永六年{'春夏秋冬'[season]}{month_name(month)}")
    assert (found.month, found.season) == (month, "春夏秋冬"[season])
    if season == (month - 1) // 3:
        assert (found.agreement, found.explanations) == ("unchecked", ())
    else:
        same_place = 3 * season + (month - 1) % 3 + 1
        assert found.conflicts == ("month",)
        assert [each.read for each in found.explanations] == [
            "春夏秋冬"[(month - 1) // 3],
            month_name(same_place),
        ]


@pytest.mark.parametrize(("written", "off"), [("安政廿三年", 20), ("文政十五年", 10)])
def test_a_number_off_by_ten_or_twenty_is_likelier_than_any_other(written: str, off: int) -> None:
    found = resolve(written)
    numbers = [each for each in found.explanations if each.kind == "era year"]
    assert [each.weight for each in numbers] == [0.65]
    assert found.year is not None
    assert numbers[0].year == found.year - off
    assert f"off by {off}" in numbers[0].text


def test_two_ages_are_two_dates() -> None:
    first, second = find("行年七十一天保三年 時年七十三天保五年")
    assert (first.age, second.age) != (None, None)
    assert [d.age.years for d in (first, second) if d.age] == [71, 73]
    assert (first.birth_year, second.birth_year) == (1762, 1762)
