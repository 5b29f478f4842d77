"""Checks across records, by example: what is named, what is left out, and how ids differ."""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.checking import check_folder
from inscribe.checking.naming import how_they_differ, missing_sources, nearly_the_same
from inscribe.reading import read_text
from inscribe.reading.inscription.iso import iso_reading
from inscribe.record import load
from inscribe.sources import adding
from inscribe.sources.library import Library
from inscribe.sources.texts import SourceText

COMPOSED, APART = "A-\u00e9", "A-e\u0301"
DIFFER = {
    ("A-1", "a-1"): "capitals",
    ("A-1", "Ａ-1"): "width of characters",
    ("A-1", "ａ-1"): "capitals and width of characters",
    ("A-1", "A-1 "): "spaces",
    (COMPOSED, APART): "how letters are composed",
}


@pytest.mark.parametrize(("one", "other"), DIFFER)
def test_how_two_ids_differ(one: str, other: str) -> None:
    assert how_they_differ(one, other) == how_they_differ(other, one) == DIFFER[one, other]
    assert dict(nearly_the_same([one, "B-2", other])) == {one: [other], other: [one]}


def test_a_source_that_is_missing_is_named_with_what_may_be_meant(tmp_path: Path) -> None:
    file = tmp_path / "l.sqlite"
    assert missing_sources([], file) == {}
    assert missing_sources(["kokin-53"], file) == {"kokin-53": ""}
    assert missing_sources(["kokin-53"], None) == {"kokin-53": ""}
    with Library(file, create=True) as held:
        adding.add_texts(held, [SourceText("kokin-053", ("世の中に",))], 1)
    asked = ["kokin-53", "kokin-053", "shinkokin-1201"]
    assert missing_sources(asked, file) == {"kokin-53": "kokin-053", "shinkokin-1201": ""}


def write(folder: Path, name: str, text: str, more: str = "") -> None:
    head = f'id = "{name}"\nkind = "tsuba"\n[[inscription]]\nplace = "front"\ntext = "{text}"\n'
    (folder / f"{name}.toml").write_text(head + more, "utf-8")


def said(folder: Path, code: str) -> dict[str, str]:
    found = check_folder(folder).findings
    return {each.record: each.message for each in found if each.code == code}


@pytest.mark.parametrize(("records", "more"), [(5, ""), (6, " and 1 more"), (8, " and 3 more")])
def test_a_name_read_in_two_ways_names_five_records(
    records: int, more: str, tmp_path: Path
) -> None:
    other = '[[inscription.override]]\nsigns = [4, 5]\nkana = "みねあき"\n'
    for number in range(records):
        write(tmp_path, f"A-{number}", "武州住嶺暁作")
    write(tmp_path, "B-1", "武州住嶺暁作", other)
    found = said(tmp_path, "read-two-ways")
    named = ", ".join(f"A-{number}" for number in range(min(records, 5)))
    assert found["B-1"] == f"嶺暁 is read Mineaki here, and Reigyō in {named}{more}"
    assert found["A-0"] == "嶺暁 is read Reigyō here, and Mineaki in B-1"
    checked = [f for f in check_folder(tmp_path).findings if f.code == "read-two-ways"]
    assert {f.line for f in checked} == {1}


def test_who_signed_a_copy_is_no_other_wording(tmp_path: Path) -> None:
    poem = "世の中に絶えて桜のなかりせば春の心はのどけからまし"
    for name, text in (("A", poem), ("B", poem), ("C", poem.replace("心は", "心も"))):
        write(tmp_path, name, f"{text}／嶺暁刻之" if name != "B" else f"{text}／露岳造之")
    found = said(tmp_path, "other-words")
    assert list(found) == ["C"]
    assert "も" in found["C"]
    assert "露岳" not in found["C"]


@pytest.mark.parametrize(
    "text", ["於東都應需嶺暁造之", "武州住嶺暁作／嘉永五年壬子仲秋", "和泉守嶺暁十七歳作之"]
)
def test_all_of_a_reading_is_in_iso_3602(text: str) -> None:
    found = iso_reading(read_text(text))
    words = [word for each in found.proposals[:1] for word in each.romaji.split()]
    parts = [part for each in (found, *found.passages) for part in (each.signature or {}).values()]
    words += [part.romaji for part in parts]
    words += [each.romaji for p in found.passages for each in p.proposals[:1]]
    assert parts
    for word in words:
        assert not set("āīūēō") & set(word.lower()), word
        assert not any(each in word.lower() for each in ("sh", "ch", "ts", "j", "fu")), word


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("../a.png", "the path leads out of the record's folder"),
        ("https://example.org/a.png", "it is a web address, and the name of a file is wanted"),
    ],
)
def test_a_picture_elsewhere_is_a_finding_and_the_record_is_read(
    name: str, said: str, tmp_path: Path
) -> None:
    record = tmp_path / "a.toml"
    record.write_text(
        f'id = "A"\nkind = "tsuba"\n[[image]]\nfile = "{name}"\n'
        '[[inscription]]\nplace = "front"\ntext = "花の色は"\n',
        "utf-8",
    )
    (found,) = (each for each in check_folder(tmp_path).findings if each.code == "image-missing")
    assert said in found.message
    assert load(record).images[0].file == name
