"""A record, a file, a text as typed, or what is piped in: the same rules in every command."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe.cli import cli
from inscribe.errors import InputError

RECORD = 'id = "A-1"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\ntext = "國澤作"\n'


def run(*arguments: str, given: str | None = None) -> Result:
    return CliRunner().invoke(cli, arguments, input=given, catch_exceptions=True)


def answer(*arguments: str, given: str | None = None) -> str:
    result = run(*arguments, given=given)
    assert result.exit_code == 0, result.exception
    return result.stdout


@pytest.mark.parametrize(
    ("command", "text"),
    [
        (("read",), "國澤作"),
        (("restore",), "武州住□親作"),
        (("date",), "嘉永六年"),
        (("name",), "綾郷"),
        (("sign",), "舩"),
    ],
    ids=lambda each: str(each),
)
def test_a_text_may_be_typed_or_piped(command: tuple[str, ...], text: str) -> None:
    typed = answer(*command, text, "--format", "json")
    assert answer(*command, "-", "--format", "json", given=text) == typed
    assert answer(*command, "--format", "json", given=text) == typed


def test_two_texts_are_collated_as_typed_and_one_may_be_piped() -> None:
    typed = answer("collate", "ゆめかうつゝか", "夢か現か", "--format", "json")
    literal = answer("collate", "--text", "ゆめかうつゝか", "夢か現か", "--format", "json")
    piped = answer("collate", "--text", "ゆめかうつゝか", "-", "--format", "json", given="夢か現か")
    assert typed == literal
    assert json.loads(piped)["groups"] == json.loads(typed)["groups"]


def test_what_exists_is_a_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("国").write_text("綾郷作", "utf-8")
    Path("a.toml").write_text(RECORD, "utf-8")
    assert "綾郷作" in answer("read", "国")
    assert "國澤作" in answer("read", "a.toml")
    assert "國" in answer("read", "國")


@pytest.mark.parametrize("name", ["花.toml", "箱/花", "花.txt"])
def test_what_looks_like_a_file_is_one_that_is_missing(name: str) -> None:
    result = run("read", name)
    assert isinstance(result.exception, InputError)
    assert result.exception.message == "there is no such file"


def test_a_file_with_nearly_that_name_is_suggested(tmp_path: Path) -> None:
    (tmp_path / "A-0412.toml").write_text(RECORD, "utf-8")
    result = run("read", str(tmp_path / "A-412.toml"))
    assert isinstance(result.exception, InputError)
    assert result.exception.hint == "did you mean A-0412.toml?"


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("read", "國", "--text", "國"), "a text is given twice"),
        (("read", "."), "it is a folder, and a file is wanted"),
        (("read", "hello"), "there is no such file"),
        (("collate", "-", "-"), "only one text can come from standard input"),
    ],
)
def test_what_cannot_be_taken_is_said(arguments: tuple[str, ...], message: str) -> None:
    result = run(*arguments)
    assert isinstance(result.exception, InputError)
    assert result.exception.message == message


def test_a_text_longer_than_any_file_name_is_a_text() -> None:
    assert run("read", "花" * 300, "--format", "json").exit_code == 0


@pytest.mark.parametrize("command", ["read", "restore"])
def test_the_text_of_an_option_may_be_piped(command: str) -> None:
    text = "武州住□親作"
    typed = answer(command, "--text", text, "--format", "json")
    assert answer(command, "--text", "-", "--format", "json", given=text) == typed


def test_the_word_of_a_concordance_may_be_piped() -> None:
    typed = answer("concord", "examples", "人")
    assert answer("concord", "examples", "-", given="人\n") == typed
    assert answer("concord", "examples", given="人\n") == typed


def test_a_copy_is_piped_beside_the_one_source_that_is_named() -> None:
    source = "examples/sources/kokinshu-053.txt"
    named = answer("collate", "-", source, given="世の中に")
    assert answer("collate", source, given="世の中に") == named


NAMING = {
    "check": ("check", "{}"),
    "entry": ("entry", "{}"),
    "index": ("index", "{}"),
    "next": ("next", "{}"),
    "concord": ("concord", "{}", "人"),
    "settle": ("settle", "{}", "花=はな"),
    "undo": ("undo", "{}"),
    "merge": ("merge", "{}", "examples/DEMO-001.toml"),
    "new": ("new", "{}"),
    "example": ("example", "{}"),
    "import": ("import", "{}"),
    "measure": ("measure", "{}", "--record", "examples/DEMO-001.toml"),
    "settings": ("settings", "{}"),
    "source remove": ("source", "remove", "{}"),
    "people import": ("people", "import", "{}"),
    "glossary check": ("glossary", "check", "{}"),
}


@pytest.mark.parametrize("arguments", NAMING.values(), ids=NAMING)
def test_an_empty_name_is_no_folder_and_a_stroke_no_file(arguments: tuple[str, ...]) -> None:
    for name, said in ("", "an argument is empty"), ("-", "standard input is not taken here"):
        result = run(*(each.format(name) for each in arguments), given="花")
        assert isinstance(result.exception, InputError), name
        assert result.exception.message == said
        assert result.exception.hint.startswith("name it: ")
