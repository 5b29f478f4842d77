"""``inscribe sign``: looking signs up and finding the ones one cannot type."""

from __future__ import annotations

import json
from typing import Any

import pytest
from click.testing import CliRunner

from inscribe.cli.sign import command
from inscribe.errors import InputError


def run(*arguments: str, typed: str | None = None) -> str:
    result = CliRunner().invoke(command, arguments, input=typed, catch_exceptions=False)
    assert result.exit_code == 0
    return result.stdout


def plain(*arguments: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(run(*arguments, "--format", "json"))
    return found


def test_the_keys_of_the_contract() -> None:
    (sign,) = plain("舩")
    assert {"char", "relations", "on", "kun", "names", "parts", "strokes"} <= set(sign)
    assert (sign["char"], sign["current"], sign["strokes"]) == ("舩", "船", 10)
    assert sign["on"] == ["セン"]
    assert sign["parts"] == ["舟", "公", "八", "厶"]
    assert sign["layout"][0] == {"part": "舟", "position": "left", "whole": "舟", "parts": []}
    assert {"char": "船", "kind": "variant"}.items() <= sign["relations"][-1].items()


def test_signs_are_named_by_code_point_or_written_together() -> None:
    assert [each["char"] for each in plain("U+8229", "國澤", "葛\U000e0100")] == [
        *"舩國澤",
        "葛\U000e0100",
    ]
    assert "舩" in run("-", typed="舩\n")


def test_a_hentaigana_tells_its_parent() -> None:
    (sign,) = plain("U+1B09E")
    assert (sign["kana"], sign["parent"], sign["name"]) == (["は"], "八", "HENTAIGANA LETTER HA-1")


def test_a_repeat_mark_tells_what_it_repeats() -> None:
    marks = {each["char"]: each["repeats"] for each in plain("々ゞ〱舩")}
    assert marks["々"] == {"what": "kanji", "voiced": False}
    assert marks["ゞ"] == {"what": "kana", "voiced": True}
    assert (marks["〱"]["what"], marks["舩"]) == ("several", None)
    assert "one kanji" in run("々")


def test_a_form_without_readings_has_those_of_its_current_form() -> None:
    (sign,) = plain("㐂")
    assert sign["readings_of"] == "喜"
    assert "キ" in sign["on"]


def test_text_says_what_is_known() -> None:
    shown = run("弁", "廿")
    for said in ("old form", "辨 (to tell apart)", "strokes", "number", "20"):
        assert said in shown


@pytest.mark.parametrize(
    ("arguments", "found"),
    [
        (("--parts", "舟+公"), "舩"),
        (("--parts", "水+毎"), "海"),
        (("--parts", "金＋壽"), "鑄"),
        (("--parts", "山+鳥"), "嶋"),
        (("--parts", "七+七+七"), "㐂"),
        (("--reading", "ふね"), "舩"),
        (("--reading", "セン", "--strokes", "10"), "舩"),
        (("--reading", "よろこぶ"), "喜"),
        (("--reading", "くに", "--limit", "200"), "圀"),
        (("--reading", "は", "--limit", "5"), "\U0001b09e"),
        (("--strokes", "11", "--parts", "舟"), "船"),
        (("--strokes", "9-11", "--reading", "ふね"), "舩"),
    ],
)
def test_a_character_is_found(arguments: tuple[str, ...], found: str) -> None:
    chars = [each["char"] for each in plain(*arguments)]
    assert found in chars
    assert run(*arguments)


def test_a_search_without_an_answer_says_so() -> None:
    result = CliRunner().invoke(command, ["--parts", "舟+亀+口"])
    assert (result.exit_code, result.stdout.strip()) == (0, "")
    assert "no character" in result.stderr
    assert plain("--parts", "舟+亀+口") == []


def test_a_long_answer_is_cut_and_says_how_much_is_left() -> None:
    shown = run("--strokes", "11", "--limit", "3")
    assert len(shown.splitlines()) == 4
    assert "more; use --limit" in shown
    lines = run("--strokes", "11", "--limit", "3", "--format", "jsonl").splitlines()
    assert [json.loads(line)["strokes"] for line in lines] == [11] * 3


@pytest.mark.parametrize(
    "arguments",
    [
        (),
        ("国", "--parts", "木"),
        (" ",),
        ("U+110000",),
        ("U+D800",),
        ("U+zz",),
        ("--parts", "+"),
        ("--reading", "fune"),
        ("--reading", ""),
        ("--strokes", "0"),
        ("--strokes", "5-3"),
        ("--strokes", "many"),
        ("--strokes", "999"),
    ],
)
def test_wrong_use_is_one_sentence(arguments: tuple[str, ...]) -> None:
    with pytest.raises(InputError) as caught:
        CliRunner().invoke(command, arguments, catch_exceptions=False)
    assert "\n" not in str(caught.value)
