"""Readings of names: their order, their reasons, the user's own lists, the command."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe.cli.name import command
from inscribe.errors import InscribeError
from inscribe.reading.names.dictionary import known
from inscribe.reading.names.elements import choices, usualness
from inscribe.reading.names.ranking import readings
from inscribe.reading.names.sounds import joined_on
from inscribe.reading.signatures.full_names import full_readings


def first(name: str, kind: str = "given") -> str:
    return readings(name, kind)[0].romaji  # type: ignore[arg-type]


# Made names: invented, each character read as usual in its place.
@pytest.mark.parametrize(
    ("name", "romaji"),
    [
        ("綾郷", "Ayasato"),
        ("綾国", "Ayakuni"),
        ("英次", "Hidetsugu"),
        ("朝興", "Tomooki"),  # two vowels that meet are no long one
        ("清氏", "Kiyouji"),
        ("俊寿", "Toshihisa"),  # not the same reading twice
        ("萩珉", "Shūmin"),
        ("一硯", "Ikken"),
        ("玄峰", "Genpō"),
        ("春庵", "Shun'an"),
    ],
)
def test_made_names(name: str, romaji: str) -> None:
    assert first(name) == romaji


def test_what_sort_of_name_it_is_says_how_its_signs_are_read() -> None:
    assert first("雪峰", "art") == "Seppō"
    assert first("雪峰", "given") == "Yukimine"
    assert first("岫濤", "given") == "Kōtō"  # both signs are in no given name that was counted


@pytest.mark.parametrize(
    ("name", "kind", "romaji"),
    [
        ("鶴梢斎", "art", "Kakushōsai"),
        ("一雲斎", "art", "Ichiunsai"),
        ("一渓斎", "art", "Ikkeisai"),
        ("竹梢堂", "art", "Chikushōdō"),
        ("源五郎", "common", "Gengorō"),
        ("喜兵衛", "common", "Kihē"),
        ("清左衛門", "common", "Seizaemon"),
        ("五郎左衛門尉", "common", "Gorōzaemon no jō"),
        ("又八", "common", "Matahachi"),
        ("井上", "surname", "Inoue"),
        ("大橋", "surname", "Ōhashi"),
        ("佐佐木", "surname", "Sasaki"),
    ],
)
def test_other_names(name: str, kind: str, romaji: str) -> None:
    found = readings(name, kind)  # type: ignore[arg-type]
    assert romaji in [reading.romaji for reading in found[:3]]


def test_a_name_is_divided_before_it_is_read() -> None:
    assert full_readings("三輪綾国")[0].romaji == "Miwa Ayakuni"
    assert full_readings("椋雲斎")[0].romaji == "Ryōunsai"


def test_every_reading_has_its_reason_and_falls_in_weight() -> None:
    for name in ("綾郷", "鶴梢斎", "清兵衛", "三輪", "清", "渡部"):
        found = readings(name)
        scores = [reading.score for reading in found]
        assert scores == sorted(scores, reverse=True)
        assert all(reading.reason for reading in found)
        assert len({reading.romaji for reading in found}) == len(found)


def test_an_unreadable_sign_stays() -> None:
    assert readings("□親")[0].kana.startswith("□")


def test_the_users_own_list_comes_first(user_table: Callable[..., None]) -> None:
    assert readings("綾郷")[0].romaji == "Ayasato"  # what was made before is forgotten
    user_table("names", "綾郷\tはれ|ちか\tgiven\tas he spelled it in kana himself")
    found = readings("綾郷")
    assert (found[0].romaji, found[1].romaji) == ("Harechika", "Ayasato")
    assert "as he spelled it in kana himself" in found[0].reason
    assert full_readings("綾郷")[0].romaji == "Harechika"


def test_shares_of_a_character_make_a_whole() -> None:
    for char in "正広寿珉鐫":
        for position in ("first", "last", "stem", "alone"):
            found = choices(char, position)  # type: ignore[arg-type]
            assert sum(choice.share for choice in found) == pytest.approx(1.0)
    assert usualness("正", "first") > usualness("汽", "first")


@given(st.text(alphabet="正広次寿珉一斎堂兵衛門三輪□々のア", max_size=8))
@settings(max_examples=200, deadline=None)
def test_any_name_has_a_reading(name: str) -> None:
    for kind in ("auto", "given", "surname", "art", "common", "place"):
        found = readings(name, kind)  # type: ignore[arg-type]
        assert bool(found) == bool(name)
    assert bool(full_readings(name)) == bool(name)


@given(
    st.sampled_from(["いち", "しゅん", "とく", "せき", "こう"]),
    st.sampled_from(["さい", "ほう", "けん", "あん"]),
)
def test_joined_readings_keep_their_length(head: str, tail: str) -> None:
    joined = joined_on(head, tail).replace("|", "")
    assert len(joined) == len(head) + len(tail)


def test_command_ranks_and_explains() -> None:
    result = CliRunner().invoke(command, ["三輪綾國"])
    assert result.exit_code == 0
    lines = result.output.splitlines()
    assert lines[0] == "三輪綾國  (三輪綾国)"
    assert lines[1].split()[:3] == ["1", "Miwa", "Ayakuni"]


def test_command_gives_json() -> None:
    result = CliRunner().invoke(command, ["--format", "json", "--kind", "given", "綾郷"])
    found = json.loads(result.output)
    assert (found["normalised"], found["readings"][0]["rank"]) == ("綾郷", 1)
    assert set(found["readings"][0]) == {"rank", "kana", "romaji", "kind", "score", "reason"}


@pytest.mark.parametrize("name", ["", " ", "花" * 21])
def test_command_refuses_what_is_no_name(name: str) -> None:
    result = CliRunner().invoke(command, [name])
    assert isinstance(result.exception, InscribeError)


# Surnames that the table of families lacks; their readings as ENAMDICT has them.
@pytest.mark.parametrize(
    ("name", "romaji"),
    [("薬袋", "Minai"), ("鶏冠井", "Kaide"), ("糀谷", "Kōjiya"), ("樫出", "Kashiide")],
)
def test_surnames_of_the_dictionary(name: str, romaji: str) -> None:
    found = readings(name, "surname")
    assert found[0].romaji == romaji
    assert "ENAMDICT" in found[0].reason


def test_the_dictionary_adds_readings_and_ranks_none() -> None:
    for name, kind in (("綾郷", "given"), ("閑紀", "given"), ("雪峰", "art"), ("三輪", "surname")):
        found = readings(name, kind)  # type: ignore[arg-type]
        own = [reading for reading in found if "does not say" not in reading.reason]
        assert own == list(found[: len(own)])
    added = [r.romaji for r in readings("閑紀", "given") if "does not say" in r.reason]
    assert added == ["Shizuki", "Shizutoshi"]
    assert "ENAMDICT has it too" in readings("雪峰", "art")[0].reason


def test_kana_in_a_family_is_written_either_way() -> None:
    assert known("塩ノ崎").surname
    assert known("久ヶ谷") == known("久ケ谷")
    assert known("久ケ谷").surname
