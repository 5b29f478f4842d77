"""The texts a library begins with: found on the first day, and known by heart by no stage."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

import inscribe
from inscribe.cli import cli
from inscribe.errors import InputError
from inscribe.notation import parse
from inscribe.sources import Library, SourceText, find, starter_texts
from inscribe.sources.starter import _FOLDER

PACKAGE = Path(inscribe.__file__).parent
TEXTS = {text.id: text for text in starter_texts()}
KANA = re.compile("[ぁ-ゖー／]+")


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("starter") / "sources.sqlite"
    result = CliRunner().invoke(cli, ["source", "add", "--starter", "--library", str(path)])
    assert result.exit_code == 0, result.output
    assert f"{len(TEXTS)} added" in result.stderr
    return path


def test_adding_them_again_changes_nothing(library: Path) -> None:
    result = CliRunner().invoke(cli, ["source", "add", "--starter", "--library", str(library)])
    assert f"0 added, 0 replaced, {len(TEXTS)} already there" in result.stderr


@pytest.mark.parametrize("file", sorted(_FOLDER.glob("*.tsv")), ids=lambda path: path.stem)
def test_each_file_says_its_age_and_licence(file: Path) -> None:
    lines = file.read_text("utf-8").splitlines()
    head = " ".join(line.lstrip("# ") for line in lines if line.startswith("#"))
    assert re.search("before 1[0-6]00", head)
    assert "public domain" in head
    assert "from memory" in head
    assert "CC0-1.0" in head


@pytest.mark.parametrize("text", TEXTS.values(), ids=lambda text: text.id)
def test_each_text_has_its_work_and_the_kana_of_each_line(text: SourceText) -> None:
    said = dict(text.extra)
    assert text.title
    assert text.licence == "CC0-1.0"
    assert KANA.fullmatch(said["kana"])
    assert said["kana"].count("／") + 1 == len(text.lines)


TANKA = [
    text
    for text in TEXTS.values()
    if re.search("hyakunin|thirty|shu-|sanka|kinkai|shui", text.id) and len(text.lines) == 5
]


@pytest.mark.parametrize("text", TANKA, ids=lambda text: text.id)
def test_a_poem_has_the_morae_of_its_metre(text: SourceText) -> None:
    counts = [len(line) for line in dict(text.extra)["kana"].split("／")]
    over = [count - wanted for count, wanted in zip(counts, (5, 7, 5, 7, 7), strict=True)]
    assert all(0 <= each <= 1 for each in over), counts


def test_there_are_a_hundred_poems_and_thirty_six() -> None:
    assert sum("hyakunin" in each for each in TEXTS) == 100
    assert sum("thirty_six" in each for each in TEXTS) == 36


@pytest.mark.parametrize(
    ("copy", "title"),
    [
        ("花の色ハ移りにけりないたつらに我身世にふる詠せしまに", "小野小町 小倉百人一首 9"),
        ("世の中に桜のなかりせは春の心はのとけからまし", "在原業平 三十六歌仙 7"),
        ("ほの〲と□石の浦の朝霧に嶋かくれ行舟をしそ思ふ", "柿本人麻呂"),
        ("春眠不覺曉處處聞啼鳥", "孟浩然 春暁"),
        ("祇園精舎の鐘の聲諸行無常のひゝきあり", "平家物語 祇園精舎"),
        ("つれ〲なるまゝに日くらし硯に向ひて", "兼好 徒然草 序段"),
        ("見渡せは花も紅葉もなかりけり浦の苫屋の秋の夕くれ", "藤原定家 新古今和歌集 363"),
        ("不動如山", "孫子 軍争篇"),
        ("行く川のなかれはたえすしてしかも本の水にあらす", "鴨長明 方丈記 冒頭"),
    ],
)
def test_a_copy_is_found_on_the_first_day(library: Path, copy: str, title: str) -> None:
    with Library(library) as opened:
        hits = find(opened, parse(copy))
    assert hits, copy
    assert title in hits[0].text.title


def test_what_is_copied_from_elsewhere_is_not_forced_on_a_text(library: Path) -> None:
    with Library(library) as opened:
        hits = find(opened, parse("鷺草の露の音聞く夜半の庵に独りともせる燈火の色"))
    assert not [hit for hit in hits if hit.score >= 0.5]


def test_nothing_to_add_is_said() -> None:
    result = CliRunner().invoke(cli, ["source", "add"])
    assert isinstance(result.exception, InputError)
    assert "--starter" in (result.exception.hint or "")


WATCH = """
import json, sys
opened = []
def note(event, arguments):
    if event == "open" and "often_copied" in str(arguments[0]):
        opened.append(str(arguments[0]))
sys.addaudithook(note)
from click.testing import CliRunner
from inscribe.cli import cli
for arguments in json.loads(sys.argv[1]):
    result = CliRunner().invoke(cli, arguments)
    assert result.exit_code in (0, 1), result.output
print(opened)
"""


def test_no_stage_but_the_library_opens_the_texts(tmp_path: Path) -> None:
    poem = "".join(TEXTS["starter:hyakunin-9"].lines)
    runs = [
        ["read", "--text", poem, "--why", "--gloss"],
        ["read", "--text", "国破山河在城春草木深"],
        ["collate", "--text", poem, poem],
        ["restore", "--text", f"□{poem[1:]}"],
        ["entry", "examples/DEMO-003.toml"],
        ["check", "examples"],
        ["concord", "examples", "夢", "--no-cache"],
    ]
    command = [sys.executable, "-c", WATCH, json.dumps(runs)]
    out = subprocess.run(command, capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"
    adding = [["source", "add", "--starter", "--library", str(tmp_path / "a.sqlite")]]
    command = [sys.executable, "-c", WATCH, json.dumps(adding)]
    out = subprocess.run(command, capture_output=True, text=True, check=True)
    assert "hyakunin.tsv" in out.stdout  # the watch would have seen it


def test_no_benchmark_and_no_table_uses_them() -> None:
    roots = (PACKAGE.parent / "tests" / "benchmarks", PACKAGE.parent / "glossary" / "build")
    scripts = [path for root in roots for path in root.rglob("*.py")]
    assert scripts
    assert not [p for p in scripts if re.search("starter|often_copied", p.read_text("utf-8"))]
