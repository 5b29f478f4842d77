"""What records say against each other, what is nearly so, and how far the work is."""

from __future__ import annotations

import csv
import io
import json
import os
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe.checking import check_folder, tallies, work_list
from inscribe.checking.examine import examine
from inscribe.checking.findings import Finding
from inscribe.checking.readers import differences
from inscribe.cli import cli
from inscribe.concordance.documents import documents_of_record
from inscribe.notation import parse
from inscribe.record import load
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText

EXAMPLES = Path(__file__).parent.parent / "examples"
READER = '[[inscription.reading]]\nby = "A. Reader"\n'


def record(identity: str, text: str, head: str = "", more: str = "") -> str:
    return f"""id = "{identity}"
kind = "kozuka"
{head}
[[inscription]]
place = "back plate"
text = "{text}"
{more}
{READER}"""


def write(folder: Path, **records: str) -> None:
    folder.mkdir(exist_ok=True)
    for name, text in records.items():
        (folder / f"{name}.toml").write_text(text, "utf-8")


def found_in(folder: Path, code: str, library: Path | None = None) -> list[Finding]:
    found = check_folder(folder, library).findings
    return [each for each in found if each.code == code]


def test_one_name_with_birth_years_that_differ(tmp_path: Path) -> None:
    first, third = "嘉永五年行年六十八歳嶺暁作", "嘉永六年行年六十九歳嶺曉作"
    second = "天保三年行年六十八歳嶺暁作"
    write(tmp_path, a=record("A", first), b=record("B", second), c=record("C", third))
    found = {each.record: each.message for each in found_in(tmp_path, "births-differ")}
    assert set(found) == {"A", "B", "C"}
    assert "born about 1785" in found["A"]
    assert "B: 1765 (68 in 1832)" in found["A"]
    assert "C:" not in found["A"]  # an old form of the same name, and the same year of birth
    (tmp_path / "b.toml").unlink()
    assert found_in(tmp_path, "births-differ") == []


def test_an_age_counted_otherwise_by_a_year_is_no_contradiction(tmp_path: Path) -> None:
    one, other = "嘉永五年行年六十八歳嶺暁作", "嘉永六年行年六十八歳嶺暁作"
    write(tmp_path, a=record("A", one), b=record("B", other))
    assert found_in(tmp_path, "births-differ") == []


def test_the_age_at_the_date_against_the_years_of_the_person(tmp_path: Path) -> None:
    text = "嘉永五年行年六十八歳嶺暁作"
    write(tmp_path, a=record("A", text, '[maker]\nname = "x"\nborn = 1800'))
    (found,) = found_in(tmp_path, "age-and-life")
    assert "born about 1785" in found.message
    assert "in 1800" in found.message
    write(tmp_path, a=record("A", text, '[maker]\nname = "x"\nborn = 1785'))
    assert found_in(tmp_path, "age-and-life") == []


@pytest.mark.parametrize(
    ("own", "other", "expected"),
    [
        ("山の／花の色間", "山の／花の色ま", ["column 2, sign 4: 間, R has ま"]),
        ("山□の", "山里の", ["column 1, sign 2: □, R has 里"]),
        ("山の", "山のま", ["after column 1, sign 2: nothing, R has ま"]),
        ("山の", "大山の", ["before the first sign: nothing, R has 大"]),
        ("山川の", "山の", ["column 1, sign 2: 川, R has nothing"]),
        ("山／川の", "山川／の", ["R divides the same signs into other columns: 山川／の"]),
        ("國", "国", ["column 1, sign 1: 國, R has 国"]),
        ("山川の", "山川の", []),
    ],
)
def test_readers_differ_sign_by_sign(own: str, other: str, expected: list[str]) -> None:
    assert list(differences(parse(own), parse(other), "R")) == expected


def test_the_reader_who_differs_is_named(tmp_path: Path) -> None:
    second = '[[inscription.reading]]\nby = "H. Quist"\ntext = "山の／花の色うつりま"\n'
    write(tmp_path, a=record("A", "山の／花の色うつり間", more="") + second)
    (found,) = found_in(tmp_path, "readers-differ")
    assert found.message == "column 2, sign 7: 間, the second reader (H. Quist) has ま"


SIZES = "[measurements]\nlength = 97.1\nwidth = 14.2"


def test_two_records_of_one_object(tmp_path: Path) -> None:
    close = SIZES.replace("97.1", "97.2")
    write(
        tmp_path,
        a=record("A", "武州住嶺暁作", SIZES),
        b=record("B", "武州住嶺曉作", close),
        c=record("C", "武州住嶺暁作", SIZES.replace("97.1", "95.0")),
        d=record("D", "武州住嶺暁作"),
    )
    found = {each.record for each in found_in(tmp_path, "same-object")}
    assert found == {"A", "B"}


POEM = "春過ぎて夏来にけらし白妙の衣ほすてふ天の香具山"


def test_the_same_text_with_other_words(tmp_path: Path) -> None:
    other = POEM.replace("夏来にけらし", "夏来にけるか")
    spelled = POEM.replace("春過ぎて", "はるすきて")
    write(tmp_path, a=record("A", POEM), b=record("B", other), c=record("C", spelled))
    write(tmp_path, d=record("D", POEM))
    found = {each.record: each.message for each in found_in(tmp_path, "other-words")}
    assert set(found) == {"B"}  # another spelling is no other word
    assert "here" in found["B"]
    assert "A (" in found["B"]


@pytest.mark.parametrize(
    ("one", "other", "how"),
    [
        ("AB-1", "ab-1", "capitals"),
        ("AB-1", "ＡＢ-1", "width"),
        ("\u00e9-1", "e\u0301-1", "composed"),
    ],
)
def test_ids_that_are_nearly_the_same(tmp_path: Path, one: str, other: str, how: str) -> None:
    write(tmp_path, a=record(one, "武州住"), b=record(other, "武州住"), c=record("Z", "武州住"))
    found = found_in(tmp_path, "nearly-same-id")
    assert {each.record for each in found} == {one, other}
    assert all(how in each.message for each in found)


def test_a_source_id_that_exists_nearly_so(tmp_path: Path) -> None:
    library = tmp_path / "library.sqlite"
    with Library(library, create=True) as held:
        adding.add_texts(held, [SourceText("demo-songs-53", ("花の色は",))], 1)
    source = '[inscription.source]\nid = "{}"\n'
    folder = tmp_path / "records"
    write(
        folder,
        a=record("A", "花の色は", more=source.format("Demo-Songs-53")),
        b=record("B", "花の色は", more=source.format("nothing like it")),
        c=record("C", "花の色は", more=source.format("demo-songs-53")),
    )
    said = {each.record: each.message for each in found_in(folder, "source-missing", library)}
    assert said == {
        "A": "no text Demo-Songs-53; did you mean demo-songs-53?",
        "B": "no text nothing like it",
    }


@pytest.mark.skipif(os.name != "posix", reason="links as POSIX has them")
def test_a_link_out_of_the_folder_is_told(tmp_path: Path) -> None:
    folder = tmp_path / "records"
    write(tmp_path, outside=record("A", "武州住"))
    write(folder, inside=record("B", "武州住"))
    (folder / "a.toml").symlink_to(tmp_path / "outside.toml")
    (folder / "b.toml").symlink_to(folder / "inside.toml")
    (found,) = found_in(folder, "leads-out")
    assert found.file.endswith("a.toml")
    assert "outside.toml" in found.message


def test_what_is_kept_of_a_check_follows_every_change(tmp_path: Path) -> None:
    folder, cache = tmp_path / "records", tmp_path / "cache"
    write(folder, a=record("A", "武州□"), b=record("B", "武州住"))
    read: list[int] = []

    def heard(done: int, _count: int) -> None:
        read.append(done)

    def codes() -> list[str]:
        checked = check_folder(folder, None, heard, cache=cache, keep=True)
        assert checked == check_folder(folder)
        return [each.code for each in checked.findings]

    assert codes() == ["unreadable"]
    read.clear()
    assert codes() == ["unreadable"]
    assert read == []  # nothing was read again
    write(folder, b=record("A", "武州住"))
    assert codes() == ["unreadable", "duplicate-id"]
    assert read == [0, 1]  # one bar, from nothing to the record that changed
    source = folder / "words.txt"
    source.write_text("花の色は", "utf-8")
    write(folder, b=record("B", "花の色は", more='[inscription.source]\nfile = "words.txt"'))
    assert codes() == ["unreadable", "unmeasured"]
    source.unlink()  # a file that the record reads is looked at too
    assert codes() == ["unreadable", "record"]


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_a_check_keeps_for_the_concordance_what_that_would_read(path: Path) -> None:
    assert examine(path).documents == documents_of_record(load(path), str(path))


def test_how_far_the_work_is(tmp_path: Path) -> None:
    write(
        tmp_path,
        a=record("A", "武州住", 'state = "read"\ndrawer = "2"'),
        b=record("B", "武州住", 'state = "drafted"\ndrawer = "1"'),
        c=record("C", "武州住", 'state = "drafted"'),
        d="id = ",
    )
    made = {t.of: dict(t.counts) for t in tallies(check_folder(tmp_path).looked)}
    assert list(made["state"].items()) == [("drafted", 2), ("read", 1), ("cannot be read", 1)]
    assert made["drawer"] == {"1": 1, "2": 1, "not said": 1, "cannot be read": 1}
    shown = CliRunner().invoke(cli, ["check", str(tmp_path)]).stdout
    assert "  drafted         2\n" in shown
    assert "█" not in shown
    data = json.loads(CliRunner().invoke(cli, ["check", str(tmp_path), "--format", "json"]).stdout)
    assert data["progress"]["state"]["drafted"] == 2


def next_of(folder: Path, *arguments: str) -> str:
    result = CliRunner().invoke(cli, ["next", str(folder), *arguments], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.stdout


def test_the_record_to_do_next_is_what_blocks_most(tmp_path: Path) -> None:
    write(
        tmp_path,
        a=record("A", "武州住嶺暁作", 'drawer = "9"\nwith_whom = "T. Amberley"'),
        b=record("B", "武州□作"),
        c=record("C", "文政七年乙酉三月日"),
        d=record("D", POEM),
        e=record("E", "武州□作", 'state = "published"'),
        f=record("F", "文政七年乙酉三月日", 'state = "published"'),
        g=record("G", "武州住"),
    )
    (tmp_path / "h.toml").write_text("id = 3", "utf-8")
    tasks = work_list(check_folder(tmp_path).looked)
    assert [(t.record, t.blocked_by) for t in tasks] == [
        ("", "error"), ("C", "contradiction"), ("F", "contradiction"), ("B", "unreadable"),
        ("A", "name"), ("D", "source"),
    ]  # fmt: skip
    assert next_of(tmp_path).startswith(str(tmp_path / "h.toml"))
    assert next_of(tmp_path, "--blocked-by", "name").startswith("A  a name may be read in two ways")
    assert "with T. Amberley" in next_of(tmp_path, "--drawer", "9")
    rows = list(csv.DictReader(io.StringIO(next_of(tmp_path, "--all", "--format", "csv"))))
    assert [row["record"] for row in rows] == ["", "C", "F", "B", "A", "D"]
    data = json.loads(next_of(tmp_path, "--format", "json"))
    assert (data["left"], len(data["tasks"])) == (6, 1)


def test_the_next_record_is_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, a=record("A", "武州□作"))
    seen = tmp_path / "seen"
    editor = tmp_path / "editor"
    editor.write_text(f'#!/bin/sh\necho "$1" > "{seen}"\n', "utf-8")
    editor.chmod(0o755)
    monkeypatch.setenv("VISUAL", str(editor))
    monkeypatch.setenv("EDITOR", str(editor))
    next_of(tmp_path, "--open")
    assert seen.read_text("utf-8").strip() == str(tmp_path / "a.toml")
