"""``inscribe check``: one minimal bad record for each code, and a good one that stays silent."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from inscribe import reading
from inscribe.checking import Finding, check_folder
from inscribe.checking.findings import kinds
from inscribe.notation import parse

GOOD = """
id = "X-1"
kind = "tsuba"
[[inscription]]
place = "front"
text = "武州住／嶺暁作"
[[inscription.override]]
signs = [4, 5]
kana = "れいぎょう"
kind = "name"
[[inscription.reading]]
by = "A. Reader"
"""


def record(text: str, more: str = "", reader: str = "A. Reader") -> str:
    read = f'[[inscription.reading]]\nby = "{reader}"\n' if reader else ""
    return f"""
id = "X-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = "{text}"
{read}{more}
"""


MAKER = '[maker]\nname = "x"\nborn = 1700\ndied = 1750\n'
TWO_READERS = '[[inscription.reading]]\nby = "B"\ntext = "武州住"\n'
BAD = {
    "record": "id = 3\n",
    "source-missing": record("はるのよの", '[inscription.source]\nid = "nowhere-1"\n'),
    "date-conflict": record("文政七年乙酉三月日"),
    "maker-dates": record("文政七年三月日").replace("[[inscription]]", MAKER + "[[inscription]]"),
    "age-and-life": record("嘉永五年行年六十八歳嶺暁作").replace(
        "[[inscription]]", '[maker]\nname = "x"\nborn = 1800\n[[inscription]]'
    ),
    "dates-disagree": record("文政七年三月日")
    + '[[inscription]]\nplace = "edge"\ntext = "元禄三年八月日"\n'
    + '[[inscription.reading]]\nby = "A. Reader"\n',
    "readers-differ": record("武州住")
    + TWO_READERS.replace("武州住", "武洲住")
    + TWO_READERS.replace('"B"', '"C"'),
    "unreadable": record("武州□"),
    "doubtful": record("武州住(カ)"),
    "restored": record("武州［住］"),
    "simplified-form": record("龙泉"),
    "suspicious": record("武州住△暁作"),
    "reading": record("武州住／嶺暁作"),
    "unmeasured": record("はるのよの", '[inscription.source]\ntext = "はるのよの"\n'),
    "part-boxed": record(
        "武州住", "[[inscription.box]]\nsign = 2\nx = 1\ny = 5\nwidth = 4\nheight = 4\n"
    ),
    "image-missing": record("武州住", '[[inscription.image]]\nfile = "nowhere.png"\n'),
    "no-reader": record("武州住", reader=""),
    "unusual-word": record("武州住").replace("kozuka", "kozka"),
}


def found_in(tmp_path: Path, *records: str) -> list[Finding]:
    for number, text in enumerate(records):
        (tmp_path / f"{number}.toml").write_text(text, "utf-8")
    checked = check_folder(tmp_path)
    count, found = checked.records, list(checked.findings)
    assert count == len(records)
    return found


def test_a_good_record_stays_silent(tmp_path: Path) -> None:
    assert found_in(tmp_path, GOOD) == []


@pytest.mark.parametrize("code", sorted(BAD))
def test_each_code_has_a_record_that_calls_it(code: str, tmp_path: Path) -> None:
    found = [each for each in found_in(tmp_path, BAD[code]) if each.code == code]
    assert found
    assert found[0].line is not None
    assert found[0].message
    assert found[0].todo


def test_two_records_may_not_share_an_id(tmp_path: Path) -> None:
    found = found_in(tmp_path, GOOD, GOOD)
    assert [each.code for each in found] == ["duplicate-id"]


def test_every_code_of_the_table_is_tested() -> None:
    between = {"births-differ", "same-object", "other-words", "nearly-same-id", "leads-out"}
    elsewhere = {"duplicate-id", "closed", "linked"}  # see test_broken_records
    assert set(kinds()) == {*BAD, *elsewhere, *between, "life-dates", "read-two-ways"}
    # those between records: test_check_across; the last two: test_persons, test_settled_names


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "inscribe", "check", *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, encoding="utf-8")


def test_exit_status_tells_contradictions_from_doubts(tmp_path: Path) -> None:
    good, doubt, bad = (tmp_path / name for name in ("good", "doubt", "bad"))
    for folder, text in ((good, GOOD), (doubt, BAD["no-reader"]), (bad, BAD["date-conflict"])):
        folder.mkdir()
        (folder / "a.toml").write_text(text, "utf-8")
    assert [run(str(folder)).returncode for folder in (good, doubt, bad)] == [0, 0, 1]
    missing = run(str(tmp_path / "nowhere"))
    assert missing.returncode == 2
    assert "no such folder" in missing.stderr


def test_json_and_csv_hold_the_same_findings(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text(BAD["unreadable"], "utf-8")
    data = json.loads(run(str(tmp_path), "--format", "json").stdout)
    rows = list(csv.DictReader(io.StringIO(run(str(tmp_path), "--format", "csv").stdout)))
    assert [each["code"] for each in data["findings"]] == [row["code"] for row in rows]
    assert data["records"] == 1
    assert data["counts"] == {"doubt": len(rows)}


def test_a_doubt_of_division_is_a_finding(tmp_path: Path) -> None:
    """A picture title that may be a signature too: the other division is named, and its chance."""
    text = "嶺暁／雪月花"
    read = reading.read(parse(text))
    doubts = [each.why for each in read.doubts if "may be divided otherwise" in each.why]
    found = found_in(tmp_path, record(text))
    said = [each.message for each in found if "may be divided otherwise" in each.message]
    assert len(said) == len(doubts) == 1
