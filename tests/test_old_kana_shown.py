"""Hentaigana can be read without a font for them: in every format, in every line of it."""

from __future__ import annotations

import io
import json
import re
import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe import parse, tables
from inscribe.cli import cli
from inscribe.entry import entry_of
from inscribe.notation import written_out
from inscribe.record import load
from inscribe.report.tei.entry import entries_as_tei

SIGNS = re.compile("[\U0001b000-\U0001b16f\U0002a708]")
# Old kana as the sign itself and noted with their parents, wherever a record can have them: verse
# and its sources, names, dates, a heading, a reader's own text, what is settled, a word restored.
RECORD = """
id = "H-1"
kind = "kozuka"
title = "Reeds"
[[inscription]]
place = "back plate"
text = '''
右𛂥るの歌
思ひつ〻ぬれ𛂥や人の見えつらむ
ゆめとしりせ𛂥さ𛀸さらま𛁅を
ゆきな𛀙書𛀁𛄟𛀀𛅐𛅕𪜈
嘉永六年𛂦る吉日
'''
box = [{ sign = 7, x = 1, y = 2, width = 4, height = 5 }]
[inscription.plate]
width = 14
height = 95
[[inscription.column]]
top = 5
bottom = 20
x = 11
width = 2
[[inscription.column]]
top = 5
bottom = 90
x = 8
width = 2
[[inscription.column]]
top = 5
bottom = 90
x = 5
width = 2
[[inscription.column]]
top = 5
bottom = 40
x = 3
width = 2
[[inscription.column]]
top = 5
bottom = 40
x = 1
width = 2
[[inscription.source]]
siglum = "A"
title = "The 𛂥 print"
text = '''
思ひつつぬれは(者)や人の見えつらん
𛀸めとしり𛁍はさめさらましを
'''
[[inscription.source]]
siglum = "B"
title = "Another"
text = "おもひつつぬれ𛂥や人の𛀙えつらむゆめと知せばさめ𛀙らましを"
[[inscription.reading]]
by = "A. Reader"
text = "思ひつ〻ぬれ𛂥や"
remarks = "The sign 𛂥 is doubtful, 𛀁 and 𛅐 are clear."
[[inscription.passage]]
signs = [40, 49]
kind = "signature"
role = "wrote"
by = "A. Reader"
reason = "𛀙 is clear"
"""
FORMATS = (
    "md html handout slides volume docx csv lido iiif annotation svg linked".split()  # noqa: SIM905
)
COMMANDS = (
    ["read", "H-1.toml"],
    ["collate", "H-1.toml"],
    ["collate", "H-1.toml", "--format", "md"],
    ["concord", ".", "人"],
    ["index", "."],
    ["index", ".", "--format", "csv"],
    ["check", "."],
    ["next", "."],
    ["restore", "H-1.toml"],
    ["source", "find", "思ひつ〻ぬれ𛂥や"],
)


@pytest.fixture(scope="module")
def record(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("h") / "H-1.toml"
    path.write_text(RECORD, "utf-8")
    return path


def lines_with_signs(data: bytes, name: str) -> list[str]:
    """Return the lines of a file, or of all parts of a document, that have the signs themselves."""
    if data[:2] == b"PK":
        with zipfile.ZipFile(io.BytesIO(data)) as held:
            return [
                line for each in held.namelist() for line in lines_with_signs(held.read(each), each)
            ]
    text = (
        data.decode("utf-16-le", "replace")
        if name.endswith(".emf")
        else data.decode("utf-8", "replace")
    )
    if name.endswith(".json"):
        text = json.dumps(json.loads(text), ensure_ascii=False, indent=1)
    return [
        f"{name}: {line.strip()[:300]}"
        for line in re.split(r"\n|>\s*<", text)
        if SIGNS.search(line)
    ]


@pytest.mark.parametrize("labels", ["en", "ja"])
@pytest.mark.parametrize("form", FORMATS)
def test_no_format_has_a_sign_that_few_fonts_have(record: Path, form: str, labels: str) -> None:
    folder = record.parent
    style = folder / f"{labels}.toml"
    style.write_text(f'labels = "{labels}"\n', "utf-8")
    out = folder / f"{form}-{labels}"
    asked = ["entry", str(record), "--format", form, "--style", str(style), "-o", f"{out}/"]
    done = CliRunner().invoke(cli, asked)
    assert done.exit_code in (0, 1), done.output
    files = [path for path in out.rglob("*") if path.is_file()]
    assert files
    assert [said for path in files for said in lines_with_signs(path.read_bytes(), path.name)] == []


@pytest.mark.parametrize("asked", COMMANDS, ids=" ".join)
def test_no_command_shows_one_on_the_terminal(
    record: Path, asked: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(record.parent)
    done = CliRunner().invoke(cli, asked)
    assert done.exit_code in (0, 1), done.output
    assert [line for line in done.output.splitlines() if SIGNS.search(line)] == []


def test_the_data_formats_keep_the_sign_and_name_its_parent(record: Path) -> None:
    entry = entry_of(load(record))
    said = json.dumps(entry.to_dict(), ensure_ascii=False)
    assert "ぬれ𛂥や" in said
    document = entries_as_tei([entry])
    assert "𛂥 is は(者)" in document


@pytest.mark.parametrize("row", list(tables.rows("hentaigana")), ids=lambda row: row["name"])
def test_every_old_kana_is_written_out_and_what_is_written_out_is_read_back(
    row: tables.Row,
) -> None:
    shown = written_out(row["written"])
    assert not SIGNS.search(shown)
    assert tables.listed(row["kana"])[0] == shown.partition("(")[0]
    (sign,) = parse(shown).signs
    assert written_out(sign.text) == sign.noted == shown


def test_a_ligature_is_written_out_and_what_common_fonts_have_stays() -> None:
    assert written_out("𪜈ゟヿ\U00020b9f") == "トモ(合字)ゟヿ\U00020b9f"
