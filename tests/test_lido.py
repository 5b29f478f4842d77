"""What an entry as LIDO says: the making as inscribed, names without attribution, the source."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from click.testing import CliRunner

from inscribe import tables
from inscribe.cli import cli
from inscribe.entry import entry_of
from inscribe.errors import InputError
from inscribe.guide import chapter
from inscribe.record import load, loads
from inscribe.report import style as styles
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.linked import entries_as_linked
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent / "examples"
NAMES = {"lido": "http://www.lido-schema.org"}
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
HOUSE = Style(institution="Sōsonkan", rights="https://example.org/terms", language="de")


def exported(number: int, style: Style | None = None) -> ET.Element:
    entry = entry_of(load(EXAMPLES / f"DEMO-{number:03}.toml"))
    return ET.fromstring(entries_as_lido([entry], style))


def texts(root: ET.Element, *path: str) -> list[str]:
    steps = "/".join(f"lido:{step}" for step in path)
    return [element.text or "" for element in root.findall(f".//{steps}", NAMES)]


def test_the_making_is_dated_as_inscribed() -> None:
    root = exported(5)
    assert texts(root, "eventDate", "date", "earliestDate") == ["1852-09-14"]
    assert texts(root, "eventDate", "date", "latestDate") == ["1852-10-12"]
    (said,) = texts(root, "eventDate", "displayDate")
    assert said.startswith("嘉永五年壬子仲秋吉日, as inscribed: 1852")
    assert texts(root, "eventType", "term") == ["production"]


def test_a_date_that_contradicts_itself_says_so() -> None:
    (said,) = texts(exported(8), "eventDate", "displayDate")
    assert "its parts contradict each other" in said


def test_the_signer_is_named_and_nothing_is_attributed() -> None:
    root = exported(5)
    assert texts(root, "actor", "nameActorSet", "appellationValue") == [
        "槙原露岳",
        "Makihara Rogaku",
        "Makihara Rogaku",
    ]
    assert texts(root, "attributionQualifierActor") == ["named in the signature, no attribution"]
    assert texts(root, "roleActor", "term") == ["signer"]
    (shown,) = texts(root, "displayActorInRole")
    assert shown == "Makihara Rogaku (槙原露岳), named in the signature, no attribution"
    assert texts(root, "vitalDatesActor", "earliestDate") == ["1835"]


def test_the_place_is_the_one_named() -> None:
    assert texts(exported(5), "eventPlace", "displayPlace") == [
        "Bushū Edo (武州江戸), named in the inscription"
    ]


def test_an_inscription_that_names_nobody_has_no_making() -> None:
    assert texts(exported(1), "event") == []


def test_an_inscription_has_its_transcription_readings_and_translation() -> None:
    root = exported(1)
    found = root.findall(".//lido:inscriptionTranscription", NAMES)
    assert [element.get(LANGUAGE) for element in found] == ["ja", "ja-Hira", "ja-Latn", "en"]
    said = [element.text or "" for element in found]
    assert said[0].startswith("思ひつゝぬれは(者)や人の見え／つらん夢")
    assert "Had I known it for a dream" in said[3]


def test_the_text_that_is_copied_is_a_related_work() -> None:
    root = exported(1)
    assert texts(root, "displayRelatedWork") == ["Ono no Komachi, Kokin wakashu, 552"]
    assert texts(root, "relatedWork", "object", "objectID") == ["kokinshu-552"]
    assert any(text.startswith("思ひつつ") for text in texts(root, "object", "objectNote"))
    assert texts(root, "relatedWorkRelType", "term") == ["text copied in the inscription"]


def test_the_house_style_says_whose_records_these_are() -> None:
    root = exported(1, HOUSE)
    assert texts(root, "recordSource", "legalBodyName", "appellationValue") == ["Sōsonkan"]
    assert texts(root, "repositoryName", "legalBodyName", "appellationValue") == ["Sōsonkan"]
    assert texts(root, "recordRights", "rightsType", "conceptID") == ["https://example.org/terms"]
    described = root.find(".//lido:descriptiveMetadata", NAMES)
    assert described is not None
    assert described.get(LANGUAGE) == "de"
    plain = exported(1)
    assert texts(plain, "recordSource", "legalBodyName", "appellationValue") == ["not stated"]
    assert texts(plain, "repositoryName") == texts(plain, "recordRights") == []


def test_the_style_reaches_the_export(tmp_path: Path) -> None:
    house = tmp_path / "house.toml"
    house.write_text('institution = "Sōsonkan"\nrights = "CC0"\nlanguage = "fr"\n', "utf-8")
    arguments = ["entry", str(EXAMPLES / "DEMO-001.toml"), "--style", str(house)]
    shown = CliRunner().invoke(cli, [*arguments, "--format", "lido"]).stdout
    assert "Sōsonkan" in shown
    assert 'lang="fr"' in shown


@pytest.mark.parametrize(
    "line", ["institution = 3", 'rights = "a\\nb"', 'language = "x y"', 'language = "e"']
)
def test_a_style_that_says_something_else_is_refused(tmp_path: Path, line: str) -> None:
    house = tmp_path / "house.toml"
    house.write_text(line, "utf-8")
    with pytest.raises(InputError, match="; write"):
        styles.load(house)


def test_concepts_have_the_identifiers_of_the_users_table(tmp_path: Path) -> None:
    row = "kind\tkozuka\thttps://example.org/c/1\tHouse list"
    (tmp_path / "concepts.tsv").write_text(f"field\tword\tidentifier\tsource\n{row}\n", "utf-8")
    assert texts(exported(1), "objectWorkType", "conceptID") == []
    tables.add_folder(tmp_path)
    assert texts(exported(1), "objectWorkType", "conceptID") == ["https://example.org/c/1"]
    tables.remove_folder(tmp_path)


def test_the_guides_table_of_concepts_is_sound_and_reaches_the_exports(tmp_path: Path) -> None:
    (table,) = re.findall(r"```\n(field\tword.*?)```", chapter("glossary"), re.DOTALL)
    (tmp_path / "concepts.tsv").write_text(
        f"{table}resource\tdigital image\thttps://example.org/r\t\n", "utf-8"
    )
    record = loads(
        'id="A"\nkind="kozuka"\n[[image]]\nfile="a.png"\n[[inscription]]\nplace="back plate"\n'
        'hand="kaisho"\ntext="江戸住露岳作"'
    )
    tables.add_folder(tmp_path)
    try:
        lido = entries_as_lido([entry_of(record)])
        linked = entries_as_linked([entry_of(record)], Style())
    finally:
        tables.remove_folder(tmp_path)
    kind, hand, role = re.findall(r"https://\S+", table)
    assert kind in lido
    assert kind in linked
    assert hand in linked
    assert role in lido
    assert ">https://example.org/r<" in lido


def test_a_maker_in_the_record_alone_is_no_attribution_either() -> None:
    made = loads(
        'id="A"\nkind="tsuba"\n[maker]\nname="Rogaku"\n[[inscription]]\nplace="front"\ntext="花"'
    )
    root = ET.fromstring(entries_as_lido([entry_of(made)]))
    assert texts(root, "displayActorInRole") == ["Rogaku, named in the signature, no attribution"]


def test_a_date_that_agrees_goes_before_one_that_contradicts_itself() -> None:
    texts_of_two = ("文政七年乙酉三月日", "文政七年甲申三月日")
    inscriptions = "".join(f'[[inscription]]\nplace="front"\ntext="{t}"\n' for t in texts_of_two)
    made = loads(f'id="A"\nkind="tsuba"\n{inscriptions}')
    root = ET.fromstring(entries_as_lido([entry_of(made)]))
    (said,) = texts(root, "eventDate", "displayDate")
    assert said.startswith("文政七年甲申三月日, as inscribed")
    (other,) = texts(root, "eventDescriptionSet", "descriptiveNoteValue")
    assert "its parts contradict each other" in other
