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
    "日本文学": "two words of prose by the rule; on a fitting a place and the art name Bungaku",
    "関ヶ原の戦い": "an event: words have their letters one by one, this capital is the phrase's",
}
# Written alone, these have two readings; the rule divides and joins the one that the table means.
OPEN = {
    "小野村": "Onomura",  # a family too; in 小野村住 it is the village
    "多摩郡": "Tama-gōri",  # as a district was called before 1868
    "藤原定家": "Fujiwara no Sadaie",  # both readings are in use
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
    said = read(parse(written)).to_dict()
    if written in OPEN:
        assert said["romaji"] == OPEN[written]
        assert romaji in {other["romaji"] for other in said["alternatives"]}
    else:
        assert said["romaji"] == romaji
