"""Settings: a file upwards of the work, the environment, and the command line, in that order."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from inscribe.errors import InputError
from inscribe.settings import Setting, defaults, settings


@pytest.fixture(autouse=True)
def _alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for key in [key for key in os.environ if key.startswith("INSCRIBE_")]:
        if key != "INSCRIBE_CACHE":
            monkeypatch.delenv(key)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.chdir(tmp_path)


def write(text: str, folder: str = ".") -> Path:
    path = Path(folder) / "inscribe.toml"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    return path.absolute()


def values(beside: Path | None = None) -> dict[str, object]:
    return {each.key: each.value for each in settings(beside)}


def test_the_nearest_file_above_the_work_holds() -> None:
    write('labels = "ja"\nletters = "iso3602"', "config/inscribe")
    write('labels = "en"')
    inner = write('letters = "hepburn"', "drawers/1")
    Path("drawers/1/deep").mkdir()
    assert values() == {"labels": "en"}
    assert settings(Path("drawers/1/deep")) == (Setting("letters", "hepburn", str(inner)),)
    inner.unlink()
    assert values(Path("drawers/1/deep")) == {"labels": "en"}
    Path("inscribe.toml").unlink()
    assert values() == {"labels": "ja", "letters": "iso3602"}


def test_the_environment_goes_before_the_file(monkeypatch: pytest.MonkeyPatch) -> None:
    write('labels = "ja"\nreader = "H. Quist"')
    monkeypatch.setenv("INSCRIBE_LABELS", "en")
    assert values() == {"labels": "en", "reader": "H. Quist"}


def test_paths_are_taken_from_the_folder_of_the_file() -> None:
    folder = write('library = "s.sqlite"\nglossary = ["a", "b"]', "x").parent
    found = values(Path("x"))
    assert found["library"] == str(folder / "s.sqlite")
    assert found["glossary"] == (str(folder / "a"), str(folder / "b"))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("libary = 'x'", "did you mean library?"),
        ("labels = 'de'", "use one of en, ja"),
        ("reader = 3", "write it in quotes"),
        ("labels = ", "mend it"),
    ],
)
def test_a_mistake_is_named_with_its_file(text: str, said: str) -> None:
    path = write(text)
    with pytest.raises(InputError) as caught:
        settings()
    assert caught.value.hint == said
    assert caught.value.place.file == str(path)


def test_each_setting_reaches_its_commands() -> None:
    made = defaults((Setting("library", "l", "x"), Setting("letters", "iso3602", "x")))
    assert made["read"] == {"letters": "iso3602", "library_file": "l"}
    assert made["collate"] == {"library_file": "l"}
    assert made["source"]["find"] == {"library_file": "l"}
    assert made["entry"] == {"library_file": "l"}


def inscribe(*arguments: str) -> str:
    root = str(Path(__file__).parent.parent)
    done = subprocess.run(
        [sys.executable, "-m", "inscribe", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
        env={**os.environ, "PYTHONPATH": root},
    )
    return done.stdout


def test_the_command_line_wins_over_all() -> None:
    write('letters = "iso3602"')
    romaji = [
        json.loads(inscribe("read", "--text", "しのぶ", "--format", "json", *more))["romaji"]
        for more in ((), ("--letters", "hepburn"))
    ]
    assert romaji == ["Sinobu", "Shinobu"]


def test_a_glossary_of_the_settings_is_read() -> None:
    write('glossary = ["tables"]')
    Path("tables").mkdir()
    row = "written\tkana\tkind\tnote\n嶺曉\tみねあき\tart\ton a box\n"
    Path("tables/names.tsv").write_text(row, "utf-8")
    found = json.loads(inscribe("name", "嶺曉", "--format", "json"))
    assert "みねあき" in json.dumps(found, ensure_ascii=False)[:200]
    assert "glossary" in inscribe("settings")


def test_a_source_named_by_id_is_looked_up_in_the_library_of_the_settings() -> None:
    text = '{"id": "poem-1", "text": "はなのいろは"}\n'
    Path("poems.jsonl").write_text(text, "utf-8")
    write('library = "poems.sqlite"')
    inscribe("source", "add", "poems.jsonl")
    record = 'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\ntext = "花の色は"\n'
    Path("A.toml").write_text(record + '[inscription.source]\nid = "poem-1"\n', "utf-8")
    assert Path("poems.sqlite").is_file()
    groups = json.loads(inscribe("collate", "A.toml", "--format", "json"))["groups"]
    assert {group["kind"] for group in groups} <= {"same", "spelling"}


def test_a_library_named_for_once_wins_in_reading_as_in_collating() -> None:
    Path("poems.jsonl").write_text('{"id": "poem-1", "text": "わかばのいろは"}\n', "utf-8")
    inscribe("source", "add", "poems.jsonl", "--library", "own.sqlite")
    record = 'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "若葉の色は"\n'
    Path("A.toml").write_text(record + '[inscription.source]\nid = "poem-1"\n', "utf-8")
    for command in ("read", "collate"):
        assert inscribe(command, "A.toml", "--library", "own.sqlite", "--format", "json")
    how = ("--library", "own.sqlite", "--format", "json")
    assert json.loads(inscribe("read", "A.toml", *how))["kana"].startswith("わかば")
    assert len(json.loads(inscribe("collate", "A.toml", *how))["groups"]) > 0


def test_the_library_that_holds_is_told_and_what_is_not_there() -> None:
    def shown() -> str:
        done = subprocess.run(
            [sys.executable, "-m", "inscribe", "settings"],
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=True,
            env={**os.environ, "XDG_DATA_HOME": "/nowhere"},
        )
        return done.stdout

    if sys.platform == "linux":
        default = "library  /nowhere/inscribe/sources.sqlite  (the default; there is none yet)"
        assert default in shown()
    style = write('style = "house.toml"').with_name("house.toml")
    assert f"inscribe.toml; not there: {style})" in shown()
    style.touch()
    assert "not there" not in shown()
