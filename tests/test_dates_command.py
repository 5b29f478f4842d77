"""``inscribe date``: results, formats and refusals."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.errors import InputError

CONTRACT = [
    *("text", "era", "era_romaji", "year_of_era", "sexagenary", "year", "month", "leap", "day"),
    *("day_word", "first_day", "last_day", "agreement", "suggestions", "why"),
]


def run(*arguments: str, given: str | None = None) -> Result:
    return CliRunner().invoke(cli, ["date", *arguments], input=given)


def test_the_keys_of_the_contract_come_first() -> None:
    found = json.loads(run("嘉永六年癸丑仲秋", "--format", "json").output)
    assert list(found)[: len(CONTRACT)] == CONTRACT
    assert (found["first_day"], found["last_day"]) == ("1853-09-03", "1853-10-02")
    assert found["year_sexagenary"] == "癸丑"
    assert (found["era_romaji"], found["agreement"], found["others"]) == ("Kaei", "agrees", [])


def test_the_text_names_year_days_and_ways_out() -> None:
    output = run("嘉永六年甲寅").output
    assert "1853 (Kaei 6, 嘉永)" in output
    assert "1. read 嘉永七年 (1854)" in output


def test_a_twelfth_month_is_shown_in_the_western_year_it_falls_in() -> None:
    found = json.loads(run("安政元年十二月吉日", "--format", "json").output)
    assert (found["year"], found["western_years"]) == (1854, [1855])
    assert "the days lie in 1855" in run("安政元年十二月吉日").output


@pytest.mark.parametrize(
    ("day", "era", "month", "in_month"),
    [("1853-07-08", "嘉永", 6, 3), ("1855-01-15", "安政", 11, 27), ("1930-05-01", "昭和", 5, 1)],
)
def test_a_gregorian_date_is_answered_in_the_japanese_calendar(
    day: str, era: str, month: int, in_month: int
) -> None:
    found = json.loads(run(day, "--format", "json").output)
    assert (found["era"], found["month"], found["day"]) == (era, month, in_month)
    assert found["first_day"] == found["last_day"] == day


@pytest.mark.parametrize("day", ["1853-13-08", "1500-01-01"])
def test_a_gregorian_date_that_is_none_or_too_early_is_refused(day: str) -> None:
    assert isinstance(run(day).exception, InputError)


def test_standard_input_is_read() -> None:
    assert json.loads(run("-", "--format", "json", given="嘉永六年\n").output)["year"] == 1853


def test_further_dates_of_a_text_follow() -> None:
    found = json.loads(run("嘉永六年八月吉日同年十一月", "--format", "json").output)
    assert [each["month"] for each in found["others"]] == [11]


@pytest.mark.parametrize(
    "text", ["嘉永六（カ）年癸丑", "嘉永［六］年／癸丑」", "嘉永[六]年癸(損)丑"]
)
def test_the_marks_of_a_transcription_are_read_over(text: str) -> None:
    found = json.loads(run(text, "--format", "json").output)
    assert (found["year"], found["agreement"]) == (1853, "agrees")


def test_lines_go_on_after_a_bad_one() -> None:
    result = run("--lines", "--format", "jsonl", given="嘉永六年\nno date\n安政二年\n")
    first, second, third = (json.loads(line) for line in result.stdout.splitlines())
    assert (first["year"], third["year"]) == (1853, 1855)
    assert second["line"] == 2
    assert "no date" in second["error"]


def test_several_dates_are_held_against_each_other() -> None:
    found = json.loads(run("嘉永六年行年七十", "乙卯行年七十二", "--format", "json").output)
    assert [each["year"] for each in found["dates"]] == [1853, 1855]
    assert found["birth_years"] == [1784]
    assert "the ages agree" in run("嘉永六年行年七十", "乙卯行年七十二").output


def test_a_range_narrows_a_bare_year() -> None:
    result = run("癸丑", "--between", "1820", "1870", "--format", "jsonl")
    assert json.loads(result.output)["year"] == 1853


def test_the_makers_years_narrow_the_dates_of_a_record(tmp_path: Path) -> None:
    record = tmp_path / "r.toml"
    record.write_text(
        'id = "DEMO-901"\nkind = "fuchi"\n[maker]\nactive_from = 1820\nactive_to = 1870\n'
        '[[inscription]]\nplace = "tenjo-gane"\ntext = "癸丑仲秋"\n',
        "utf-8",
    )
    assert "1853 (Kaei 6, 嘉永)" in run("--record", str(record)).output


def test_the_same_year_refers_to_the_inscription_before(tmp_path: Path) -> None:
    record = tmp_path / "r.toml"
    places = [("omote", "嘉永六年八月日"), ("ura", "同年十一月吉日")]
    record.write_text(
        'id = "DEMO-902"\nkind = "tsuba"\n'
        + "".join(f'[[inscription]]\nplace = "{p}"\ntext = "{t}"\n' for p, t in places),
        "utf-8",
    )
    found = json.loads(run("--record", str(record), "--format", "json").output)
    assert [each["first_day"] for each in found["dates"]] == ["1853-09-03", "1853-12-01"]
    assert "inscription 1 (omote: 嘉永六年八月日) is earlier" in found["statements"][0]


def test_a_result_can_be_written_to_a_file(tmp_path: Path) -> None:
    target = tmp_path / "date.json"
    run("嘉永六年", "--format", "json", "-o", str(target))
    assert json.loads(target.read_text("utf-8"))["year"] == 1853


def test_control_characters_are_not_shown() -> None:
    assert "\x1b" not in run("嘉永\x1b六年 嘉永六年").output


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((), "no date or age"),
        (("山",), "no date or age"),
        (("癸丑", "--between", "1870", "1750"), "no range of years"),
        (("嘉永六年", "--record", "x.toml"), "give a date"),
        (("--lines",), "--lines"),
    ],
)
def test_wrong_use_is_refused_with_a_sentence(arguments: tuple[str, ...], message: str) -> None:
    result = run(*arguments)
    assert isinstance(result.exception, InputError)
    assert message in str(result.exception)
