"""Indexes of a collection, and translations found again."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import html5lib
import pytest
from click.testing import CliRunner

from inscribe.cli import cli
from inscribe.concordance import collection
from inscribe.indexing import (
    INDEXES,
    FolderIndexes,
    folder as index_module,
    index_folder,
    index_of,
    indexes,
)

POEM = "思ひつつぬればや人の見えつらむ夢としりせばさめざらましを"


def record(identity: str, *inscriptions: tuple[str, str]) -> str:
    parts = [f'[[inscription]]\nplace = "back"\ntext = "{t}"\n{more}\n' for t, more in inscriptions]
    return f'id = "{identity}"\nkind = "kozuka"\n' + "".join(parts)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("records")
    source = '[inscription.source]\nid = "old-552"\ntitle = "Old songs 552"\nauthor = "x"\n'
    for name, text in {
        "a": record(
            "A", (POEM, 'hand = "cursive"\ntranslation = "Was it because"\n' + source),
            ("武州住嶺曉作", 'translation = "Made by Reigyō, living in Bushū"'),
        ),
        "b": record("B", ("おもひつゝぬれはや人の見えつらむ夢としりせはさめさらましを", source)),
        "c": record("C", ("武州住嶺暁作嘉永五年八月日", 'hand = "regular"')),
        "d": record("D", ("江戸住露岳作", "")),
    }.items():  # fmt: skip
        (made / f"{name}.toml").write_text(text, "utf-8")
    return made


def heads(folder: Path, kind: str) -> dict[str, tuple[str, set[str]]]:
    held = collection(folder, keep=False)
    return {
        each.text: (each.romaji, {where.object for form in each.forms for where in form.where})
        for each in index_of(held.documents, kind)  # type: ignore[arg-type]
    }


def test_persons_stand_under_one_form_with_all_their_forms(folder: Path) -> None:
    held = collection(folder, keep=False)
    persons = index_of(held.documents, "persons")
    assert [each.romaji for each in persons] == ["Reigyō", "Rogaku"]
    reigyo = persons[0]
    assert {form.text: [w.object for w in form.where] for form in reigyo.forms} == {
        "嶺曉": ["A"],
        "嶺暁": ["C"],
    }
    assert reigyo.records == 2
    assert reigyo.forms[0].where[0].inscription == 2


def test_each_index_has_what_stands_on_the_objects(folder: Path) -> None:
    assert heads(folder, "places") == {"武州": ("Bushū", {"A", "C"}), "江戸": ("Edo", {"D"})}
    assert {text: where for text, (_, where) in heads(folder, "dates").items()} == {
        "嘉永五年八月日": {"C"}
    }
    assert heads(folder, "works") == {"Old songs 552": ("", {"A", "B"})}
    assert heads(folder, "hands") == {"cursive": ("", {"A"}), "regular": ("", {"C"})}
    formulas = {text: where for text, (_, where) in heads(folder, "formulas").items()}
    assert formulas == {
        "〔place〕住〔name〕作": {"A", "D"},
        "〔place〕住〔name〕作〔date〕": {"C"},
    }
    assert all(romaji.startswith("omoi") for romaji, _ in heads(folder, "lines").values())


def test_dates_stand_in_the_order_of_time(tmp_path: Path) -> None:
    for name, text in {"a": "文政七年甲申", "b": "天保三年壬辰", "c": "寛政六年甲寅"}.items():
        (tmp_path / f"{name}.toml").write_text(record(name, (text, "")), "utf-8")
    found = index_of(collection(tmp_path, keep=False).documents, "dates")
    assert [each.note for each in found] == ["1794", "1824", "1832"]


def test_what_was_gathered_is_kept_until_a_record_changes(tmp_path: Path) -> None:
    records, cache = tmp_path / "records", tmp_path / "cache"
    records.mkdir()
    (records / "a.toml").write_text(record("A", ("武州住嶺曉作", 'hand = "regular"')), "utf-8")
    (records / "b.toml").write_text(record("B", ("江戸住露岳作", "")), "utf-8")
    (records / "c.toml").write_text("id = ", "utf-8")
    anew = index_folder(records, keep=False)
    looked_at: list[int] = []

    def again() -> tuple[FolderIndexes, int]:
        looked_at.clear()
        found = index_folder(records, progress=lambda done, _: looked_at.append(done), cache=cache)
        assert looked_at == sorted(looked_at)  # one bar, which never goes back
        return found, len(set(looked_at) - {0})

    assert again() == (anew, 3)
    assert again() == (anew, 0)
    assert (anew.records, len(anew.unread)) == (3, 1)
    assert [each.text for each in anew.headings["persons"]] == ["嶺暁", "露岳"]
    (records / "b.toml").write_text(record("B", ("江戸住露岳刻之", "")), "utf-8")
    changed, count = again()
    assert count == 1
    assert changed == index_folder(records, keep=False) != anew
    (records / "a.toml").unlink()
    assert [each.text for each in again()[0].headings["persons"]] == ["露岳"]


def test_headings_are_not_gathered_twice(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = index_folder(folder, cache=tmp_path)
    monkeypatch.setattr(index_module, "indexes", None)
    assert index_folder(folder, cache=tmp_path) == first


def run(*arguments: str) -> str:
    result = CliRunner().invoke(cli, [*arguments], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.stdout


def test_every_format_holds_every_place(folder: Path) -> None:
    found = indexes(collection(folder, keep=False).documents)
    places = sum(len(form.where) for some in found.values() for h in some for form in h.forms)
    rows = list(csv.DictReader(io.StringIO(run("index", str(folder), "--format", "csv"))))
    assert len(rows) == places
    data = json.loads(run("index", str(folder), "--format", "json"))
    assert list(data["indexes"]) == list(INDEXES)
    told = [
        w for some in data["indexes"].values() for h in some for f in h["forms"] for w in f["where"]
    ]
    assert len(told) == places
    page = html5lib.HTMLParser(strict=True).parse(run("index", str(folder), "--format", "html"))
    said = "".join(page.itertext())
    for text in (run("index", str(folder)), run("index", str(folder), "--format", "md"), said):
        for some in found.values():
            for heading in some:
                assert heading.text in text.replace("\\[", "[")
        assert "no attribution" in text or "not an attribution" in text


def test_one_index_alone(folder: Path) -> None:
    data = json.loads(run("index", str(folder), "--of", "places", "--format", "json"))
    assert list(data["indexes"]) == ["places"]


def test_translations_are_found_again(folder: Path) -> None:
    data = json.loads(run("concord", str(folder), "--translations", "--format", "json"))["texts"]
    found = {(each["kind"], each["translations"][0]["translation"]): each for each in data}
    text = found["text", "Was it because"]
    assert [where["object"] for where in text["without"]] == ["B"]
    formula = found["formula", "Made by Reigyō, living in Bushū"]
    assert [where["object"] for where in formula["without"]] == ["D"]
    shown = run("concord", str(folder), "--translations")
    assert "Was it because  (A)" in shown
    assert "none yet: B" in shown
    rows = list(
        csv.DictReader(
            io.StringIO(run("concord", str(folder), "--translations", "--format", "csv"))
        )
    )
    assert {row["object"]: row["translation"] for row in rows}["B"] == ""
