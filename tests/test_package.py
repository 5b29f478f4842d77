"""What is shipped: tables and examples, the works they are from, and the texts of the licences."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe import tables
from inscribe.cli import cli
from inscribe.credits import LICENCES, source_works
from inscribe.descriptions import described, described_tables

ROOT = Path(__file__).parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
OURS = {"GPL-3.0-or-later", "CC0-1.0"}  # licences of tables that are from memory
WORKS = source_works()


def test_the_expression_names_every_licence_of_a_table() -> None:
    named = set(PROJECT["project"]["license"].split(" AND "))
    assert named == {described(name).licence for name in described_tables()} | OURS


@pytest.mark.parametrize("licence", sorted({work.licence for work in WORKS} | {"CC-BY-SA-4.0"}))
def test_the_text_of_each_licence_is_shipped(licence: str) -> None:
    assert len((LICENCES / f"{licence}.txt").read_text(encoding="utf-8")) > 1000


@pytest.mark.parametrize("work", WORKS, ids=lambda work: work.title)
def test_each_work_is_told_whole(work: object) -> None:
    told = " ".join(CliRunner().invoke(cli, ["--sources"]).stdout.split())  # as wide as may be
    assert work in WORKS
    for said in (work.title, work.author, work.link, work.version, work.changed):  # type: ignore[attr-defined]
        assert said
        assert said in told


def test_each_table_under_the_licence_of_a_work_is_named_by_one() -> None:
    fitting = {"CC-BY-SA-3.0": "CC-BY-SA-4.0"}
    for name in described_tables():
        licence = described(name).licence
        from_works = {fitting.get(w.licence, w.licence) for w in WORKS if name in w.tables}
        assert licence in OURS or licence in from_works, name
    assert all(name in described_tables() for work in WORKS for name in work.tables)


@pytest.mark.parametrize(
    ("word", "title"),
    [
        ("KANJIDIC2", "KANJIDIC2"),
        ("KanjiVG", "KanjiVG"),
        ("ENAMDICT", "ENAMDICT"),
        ("CLDR", "Unicode Common Locale Data Repository, calendar data"),
        ("unidic-lite", "UniDic 2.1.2, as in unidic-lite 1.0.8"),
    ],
)
def test_a_table_that_says_it_is_from_a_work_is_named_by_it(word: str, title: str) -> None:
    (work,) = [work for work in WORKS if work.title == title]
    said = {name for name in described_tables() if word in described(name).source}
    assert said <= set(work.tables)


def test_the_wheel_takes_every_table_and_no_script() -> None:
    taken = PROJECT["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    folders = {f"glossary/{each}" for each in tables.subjects()}
    assert set(taken) == folders | {"glossary/tables.toml", "glossary/sources.toml", "examples"}
    assert not list((ROOT / "examples").rglob("*.py"))
