"""The user's own list of persons: whom an inscription may name, why, and what contradicts it."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from inscribe import add_glossary, read_text, tables
from inscribe.cli import cli
from inscribe.errors import InscribeError
from inscribe.persons import people, with_persons
from inscribe.reading.words import MayName

HERE = Path(__file__).parent / "data" / "people"
LIST, RECORDS = HERE / "list", HERE / "records"


@pytest.fixture
def listed() -> Iterator[None]:
    add_glossary(LIST)
    yield
    tables.remove_folder(LIST)


def named(text: str) -> list[MayName]:
    return list(with_persons([read_text(text)])[0].persons)


def run(*arguments: str) -> str:
    result = CliRunner().invoke(cli, ["--glossary", str(LIST), *arguments])
    if LIST in tables.folders():
        tables.remove_folder(LIST)
    assert result.exit_code in (0, 1), result.output
    return result.stdout


def run_json(*arguments: str) -> Any:
    return json.loads(run(*arguments, "--format", "json"))


@pytest.mark.usefixtures("listed")
@pytest.mark.parametrize("form", ["雨蛙庵", "雨蛙菴"])
def test_a_pen_name_beside_a_poem_is_found_in_any_form_of_its_signs(form: str) -> None:
    (found,) = named(f"春の夜の夢ばかりなる手枕にかひなくたゝむ名こそをしけれ／{form}")
    assert (found.id, found.kinds, found.first) == ("P-1", ("pen name",), 27)
    assert "in your list: pen name of Uan, 1712-1780" in found.why
    assert "composed the text, as the list says" in found.why
    assert 0.5 < found.chance < 1


@pytest.mark.usefixtures("listed")
def test_a_word_of_a_poem_is_no_name() -> None:
    assert named("雨庵の夢ばかりなる手枕にかひなくたゝむ名こそをしけれ") == []


@pytest.mark.usefixtures("listed")
@pytest.mark.parametrize(
    ("text", "best", "because"),
    [
        ("葎田露岳作", "P-3", "with surname beside it"),
        ("稗抜露岳作", "P-2", "with surname beside it"),
        ("於東都法橋露嶽彫之", "P-2", "東都 stands there, a place of the list"),
        ("武州住浅霧軒露岳刻之", "P-2", "with studio name beside it"),
        ("露岳刻元禄十年丁丑", "P-3", "1697 lies in that life"),
        ("露岳刻天保三年壬辰", "P-2", "1832 lies in that life"),
        ("嶺暁門人露岳作", "P-2", "a teacher of the list, stands there"),
        ("露岳行年四十三歳天保三年", "P-2", "born 1790 by the age, as in the list"),
    ],
)
def test_what_agrees_ranks_the_candidates(text: str, best: str, because: str) -> None:
    found = [each for each in named(text) if "露岳" in each.text]
    assert {each.id for each in found} == {"P-2", "P-3"}
    assert found[0].id == best
    assert found[0].chance > 3 * found[1].chance
    assert because in found[0].why


@pytest.mark.usefixtures("listed")
def test_chances_leave_room_for_somebody_who_is_in_no_list() -> None:
    found = named("露岳作")
    assert [each.chance for each in found] == pytest.approx([0.4, 0.4])


@pytest.mark.usefixtures("listed")
def test_a_surname_with_anothers_name_after_it_names_nobody() -> None:
    assert named("三輪綾国作") == []
    (patron,) = named("應三輪君需綾国作之")
    assert (patron.id, patron.kinds) == ("P-4", ("surname",))
    assert "ordered it, as the list says" in patron.why


@pytest.mark.usefixtures("listed")
def test_a_sign_that_cannot_be_read_may_be_any() -> None:
    assert [each.id for each in named("鷺□書")] == ["P-6"]
    assert "a sign of it cannot be read" in named("鷺□書")[0].why


def test_the_kana_of_the_list_reads_the_name_and_an_override_wins() -> None:
    assert run_json("read", "--text", "鷺風書")["romaji"] == "Sagikaze sho"
    out = run("read", "--text", "鷺風書", "--override", "1-2=name:ろふう", "--format", "json")
    assert json.loads(out)["romaji"] == "Rofū sho"


@pytest.mark.usefixtures("listed")
def test_a_poem_may_be_cut_after_its_poets_death_but_not_before_his_birth() -> None:
    poem = "春の夜の夢ばかりなる手枕にかひなくたゝむ名こそをしけれ／雨庵詠"
    late, early = named(f"{poem}／天保三年壬辰"), named(f"{poem}／元禄十年丁丑")
    assert late[0].life == ""
    assert "before the life of Uan" in early[0].life
    assert "after the life of Uan" in named("雨庵書 天保三年壬辰")[0].life


def test_read_says_whom_a_record_may_name() -> None:
    found = run_json("read", str(RECORDS / "P-001.toml"))["persons"]
    assert [(p["id"], p["as"], p["signs"]) for p in found] == [("P-1", "pen name", [27, 29])]
    assert "may name" in run("read", str(RECORDS / "P-001.toml"))


def test_a_date_on_the_back_counts_for_the_front() -> None:
    front, _ = run_json("read", str(RECORDS / "P-002.toml"))
    assert front["persons"][0]["id"] == "P-2"
    assert "1832 lies in that life" in front["persons"][0]["why"]


def test_check_warns_of_a_date_outside_the_life_of_everyone() -> None:
    findings = run_json("check", str(RECORDS))["findings"]
    (found,) = [each for each in findings if each["code"] == "life-dates"]
    assert found["record"] == "P-005"
    assert "1772 is before the life of Hienuki Tsuyutake" in found["message"]
    assert "1772 is after the life of Mugurada Rogaku" in found["message"]


@pytest.mark.parametrize("form", ["md", "html", "json", "csv", "tei", "lido"])
def test_every_entry_says_so_and_none_attributes(form: str) -> None:
    out = run("entry", str(RECORDS / "P-001.toml"), "--format", form)
    assert "Uan" in out
    assert "pen name of Uan" in out or form == "csv"
    assert any(word in out for word in ("attribution", "may_name"))


def test_concord_says_so() -> None:
    found = run_json("concord", str(RECORDS), "露岳", "--no-cache")["hits"]
    assert found[0]["persons"][0]["name"] in ("Mugurada Rogaku", "Hienuki Tsuyutake")
    assert "may name: P-002" in run("concord", str(RECORDS), "露岳", "--no-cache")
    out = run("concord", str(RECORDS), "露岳", "--format", "csv", "--no-cache")
    assert all("露岳: " in row["may_name"] for row in csv.DictReader(io.StringIO(out)))


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("P-1\t\t\t\t\t露岳=Rogaku", "露岳=ろがく"),
        ("P-1\t\t\t\t\t露岳\t\t\t\t\t1712?", "a western year"),
        ("P-1\t\t\t\t\t露岳\nP-1\t\t\t\t\t露渓", "stands in line 2 already"),
    ],
)
def test_a_list_is_held_to_its_description(tmp_path: Path, row: str, said: str) -> None:
    columns = (LIST / "people.tsv").read_text("utf-8").splitlines()[1]
    width = columns.count("\t")
    rows = "\n".join(line + "\t" * (width - line.count("\t")) for line in row.split("\n"))
    (tmp_path / "people.tsv").write_text(f"{columns}\n{rows}\n", "utf-8")
    with pytest.raises(InscribeError, match=said):
        add_glossary(tmp_path)


def test_years_that_contradict_each_other_are_refused(tmp_path: Path) -> None:
    (tmp_path / "people.tsv").write_text("id\tart\tbirth\tdeath\nP-1\t露岳\t1800\t1712\n", "utf-8")
    add_glossary(tmp_path)
    try:
        with pytest.raises(InscribeError, match="born 1800 and died 1712"):
            people()
    finally:
        tables.remove_folder(tmp_path)


def test_the_program_ships_no_person() -> None:
    assert list(tables.rows("people")) == []


def test_without_a_list_nothing_of_this_room_is_imported() -> None:
    record = str(RECORDS / "P-001.toml")
    code = (
        "import sys; from click.testing import CliRunner; from inscribe.cli import cli\n"
        f"assert CliRunner().invoke(cli, ['read', {record!r}]).exit_code == 0\n"
        "print([m for m in sys.modules if '.persons.' in m or m.endswith('.persons')])"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"


def test_people_show_finds_a_person_by_any_name() -> None:
    assert "Uan, 1712-1780" in run("people", "show", "雨蛙菴")
    assert run("people", "show").count("invented") == 6


TWO = """\
id\tname\tart\tbirth\tdeath
Q-1\tHyōga\t瓢霞=ひょうが\t1650\t1710
Q-2\tHisagasumi\t瓢霞=ひさがすみ\t1800\t1860
"""


@pytest.mark.parametrize(
    ("text", "romaji"),
    [("瓢霞作天保三年壬辰", "Hisagasumi"), ("瓢霞作元禄十年丁丑", "Hyōga")],
)
def test_two_persons_who_read_a_name_differently_are_both_proposed(
    tmp_path: Path, text: str, romaji: str
) -> None:
    (tmp_path / "people.tsv").write_text(TWO, encoding="utf-8")
    add_glossary(tmp_path)
    try:
        (found,) = with_persons([read_text(text)])
        first, *others = [proposal.romaji for proposal in found.proposals]
        assert first.startswith(romaji)
        assert any(romaji not in other for other in others[:2])
        assert found.proposals[0].chance > 0.6
        assert found.signature["name"].romaji == romaji
        assert any("your list of persons reads 瓢霞" in doubt.why for doubt in found.doubts)
    finally:
        tables.remove_folder(tmp_path)
