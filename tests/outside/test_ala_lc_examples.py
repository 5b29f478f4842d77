"""Whole words and names as the ALA-LC romanization table divides and capitalises them.

Source: the ALA-LC romanization table for Japanese (American Library Association and Library of
Congress, 2012): its rules on word division, hyphens (jurisdictions, terms of address), capitals of
names, and titles of works. The examples are typed from memory of the table and of catalogues that
follow it, not from its text. Those in ``NOT_YET`` are read otherwise by the program.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.notation import parse
from inscribe.reading import read

NOT_YET = {
    "新古今和歌集": "a further title inside a title has its capital",
    "小野村": "the hyphen before a village",
    "多摩郡": "a district",
    "日本文学": "a capital too many",
    "日本史": "a subject of study",
    "厳島神社": "the capital of a shrine",
    "関ヶ原の戦い": "the capital of an event",
    "藤原定家": "both readings are in use; the table's catalogues have Teika",
}


def examples() -> list[object]:
    lines = Path(__file__).with_name("ala_lc_examples.tsv").read_text("utf-8").splitlines()[1:]
    found = []
    for written, romaji, _ in (line.split("\t") for line in lines):
        why = NOT_YET.get(written)
        marks = [pytest.mark.xfail(reason=why, strict=True)] if why else []
        found.append(pytest.param(written, romaji, marks=marks, id=written))
    return found


@pytest.mark.parametrize(("written", "romaji"), examples())
def test_it_is_divided_as_in_the_table(written: str, romaji: str) -> None:
    assert read(parse(written)).to_dict()["romaji"] == romaji
