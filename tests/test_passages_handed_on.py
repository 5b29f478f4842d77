"""What comes after reading takes an inscription by its passages: a poem, its writer, its carver."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from inscribe import record
from inscribe.cli import cli

POEM = "ひとはいさ心も知らず古郷は花そ昔の香に匂ひける"  # Ki no Tsurayuki, before 945
RECORD = '''\
id = "H-001"
kind = "kozuka"

[maker]
name = "Rōkoku"
born = 1801

[[inscription]]
place = "back plate"
text = """
右貫之歌
ひとはいさ心もしらす古郷は
花そ昔の香に匂ひける
武州住霞汀翁書
雲州松江住朧谷刻之"""

[inscription.source]
text = "人はいさ／心も知らず／ふるさとは／花ぞ昔の／香ににほひける"
'''


def run(*arguments: object) -> Result:
    done = CliRunner().invoke(cli, [str(each) for each in arguments])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done


@pytest.fixture
def path(tmp_path: Path) -> Path:
    made = tmp_path / "H-001.toml"
    made.write_text(RECORD, "utf-8")
    return made


@pytest.fixture
def worn(path: Path) -> Path:
    """Return the record with a sign of the poem worn, and one of a signature."""
    text = RECORD.replace("昔の香", "昔□香").replace("雲州松江住", "雲州松江□")
    path.write_text(text, "utf-8")
    return path


def test_each_kind_of_passage_is_typed_in_tei(path: Path) -> None:
    tei = run("entry", path, "--format", "tei").output
    edition = tei[tei.index('<div type="edition">') : tei.index('subtype="reading"')]
    found = re.findall(r'<ab type="(\w+)"(?: subtype="(\w+)")?', edition)
    assert found == [
        ("heading", ""),
        ("verse", ""),
        ("signature", "wrote"),
        ("signature", "carved"),
    ]


def test_writer_and_carver_are_both_named_in_tei_with_their_roles(path: Path) -> None:
    tei = run("entry", path, "--format", "tei").output
    people = re.findall(r'<persName type="attested" role="(\w+)"[^>]*>(\w+)</persName>', tei)
    assert people == [("wrote", "霞汀翁"), ("signer", "朧谷")]
    places = re.findall(r'<placeName type="attested">(\w+)</placeName>', tei)
    assert {"武州", "雲州松江"} <= set(places)


def test_lido_names_both_and_gives_the_makers_years_to_the_carver_alone(path: Path) -> None:
    lido = run("entry", path, "--format", "lido").output
    actors = re.findall(r"<lido:eventActor>.*?</lido:eventActor>", lido, re.DOTALL)
    assert len(actors) == 2
    wrote, carved = actors
    assert "霞汀翁" in wrote
    assert ">wrote<" in wrote
    assert "1801" not in wrote
    assert "朧谷" in carved
    assert "1801" in carved


def test_a_table_and_linked_data_name_both(path: Path) -> None:
    assert "霞汀翁; 朧谷" in run("entry", path, "--format", "csv").output
    linked = run("entry", path, "--format", "linked").output
    labels = re.findall(r'"type": "Person",\s*"_label": "([^"]+)"', linked)
    assert labels == ["Kateiō", "Rōkoku"]


def test_an_entry_has_the_parts_of_both_signatures(path: Path) -> None:
    told = run("entry", path).output
    assert "**Signature, part by part (wrote)**" in told
    assert "| name | 霞汀翁 | *Kateiō* |" in told
    assert "**Signature, part by part (carved)**" in told
    assert "| name | 朧谷 | *Rōkoku* |" in told
    table = run("entry", path, "--format", "csv").output
    assert re.search(r"name: Kateiō; verb: sho / .*name: Rōkoku; verb: kizamu", table)


def test_the_index_has_two_persons_with_what_they_did(path: Path) -> None:
    index = run("index", path).output
    assert re.search(r"Kateiō +霞汀翁 \(wrote\)", index)
    assert re.search(r"Rōkoku +朧谷 \(carved\)", index)
    assert index.rstrip().endswith("1 record")


def test_a_concordance_counts_two_signatures(path: Path) -> None:
    told = run("concord", path, "朧谷").output
    assert "by signature: 朧谷 1, 霞汀翁 1" in told


def test_a_source_is_looked_for_by_the_poem_alone(path: Path, tmp_path: Path) -> None:
    text = tmp_path / "t.txt"
    text.write_text(POEM, "utf-8")
    library = tmp_path / "l.sqlite"
    assert run("source", "add", text, "--library", library).exit_code == 0
    found = json.loads(run("source", "find", path, "--library", library, "--format", "json").output)
    hits = found["hits"] if isinstance(found, dict) else found[0]["hits"]
    assert hits[0]["score"] > 0.95


def test_the_copy_under_a_heading_and_over_names_is_faithful(path: Path) -> None:
    held = run("collate", path, "--strict")
    assert held.exit_code == 0
    assert "heading 右貫之歌" in " ".join(held.output.split())


def test_worn_signs_are_restored_in_every_passage_and_counted_in_the_whole(worn: Path) -> None:
    found = json.loads(run("restore", worn, "--format", "json").output)
    places = [
        (each["sign"], each["column"], each["sign_in_column"], each["candidates"][0]["text"])
        for each in found["lacunae"]
    ]
    assert places == [(20, 2, 3, "の"), (38, 4, 4, "住")]
    assert found["worn_places"] == 2


def test_one_worn_sign_is_asked_for_by_its_column(worn: Path) -> None:
    told = run("restore", worn, "--column", "5", "--sign", "5", "--most", "1").output
    assert re.search(r"column 5, sign 5 \(sign 39 of the inscription\)", told)
    assert "1. 住" in told


def test_what_restore_offers_is_what_settle_takes(worn: Path) -> None:
    found = json.loads(run("restore", worn, "--format", "json").output)
    offered = found["lacunae"][0]["candidates"][0]
    done = run("settle", worn, "--accept", "1", "--from", "restore", "--sign", "21")
    assert done.exit_code == 0
    made = record.load(worn).inscriptions[0]
    assert made.transcription.signs[20].text == offered["text"] == "の"
    assert made.decisions[0].reason == "; ".join(each["text"] for each in offered["evidence"])
    assert "the source of the record" in made.decisions[0].reason


def test_the_source_of_a_record_is_not_told_twice(worn: Path, tmp_path: Path) -> None:
    (tmp_path / "t.txt").write_text("人はいさ心も知らずふるさとは花ぞ昔の香ににほひける", "utf-8")
    library = tmp_path / "l.sqlite"
    assert run("source", "add", tmp_path / "t.txt", "--library", library).exit_code == 0
    told = run("restore", worn, "--library", library, "--most", "1").output
    assert "source: the source of the record\n" in told
    assert told.count("has の here") == 1


def test_settled_passages_hold_in_restoring(worn: Path) -> None:
    whole = json.loads(run("restore", worn, "--format", "json").output)
    text = worn.read_text("utf-8").replace("\n[inscription.source]", SETTLED)
    worn.write_text(text[: text.index("[inscription.source]")], "utf-8")
    assert run("check", worn, "--quiet").exit_code in (0, 1)
    found = json.loads(run("restore", worn, "--format", "json").output)
    before, after = (each["lacunae"][1]["candidates"][0] for each in (whole, found))
    assert before["probability"] > 0.5
    assert after["probability"] < before["probability"]  # prose knows no formula of residence


SETTLED = """
[[inscription.passage]]
signs = [5, 27]
kind = "verse"

[[inscription.passage]]
signs = [28, 43]
kind = "prose"

[inscription.source]"""
