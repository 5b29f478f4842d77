"""A copy against several sources: one entry a place, what is shared alone, what is followed."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given, settings, strategies as st

from inscribe import collation
from inscribe.cli import cli
from inscribe.collation import Testimony, WitnessSource, collate, collate_texts
from inscribe.entry import entry_of
from inscribe.notation import parse
from inscribe.record import dump, loads
from inscribe.report.tei import entries_as_tei

COPY = "さひしさはその色としもなかりけり\n松たつ山の秋のゆふくれの空"
PRINT = "さびしさはその色としもなかりけり真木立つ山の秋の夕暮"
MANUSCRIPT = "さひしさに其色としもなかりけり松たつ山の秋のゆふくれの空"
EDITION = "寂しさはその色としもなかりけり松立つ山の深き秋の夕暮れ"
RECORD = f"""id = "DEMO-020"
kind = "kozuka"

[[inscription]]
place = "back plate"
text = '''
{COPY}
'''

[[inscription.source]]
siglum = "P"
kind = "print"
title = "an invented print"
text = "{PRINT}"

[[inscription.source]]
siglum = "M"
kind = "manuscript"
title = "an invented manuscript"
text = "{MANUSCRIPT}"

[[inscription.source]]
kind = "modern edition"
title = "an invented edition"
text = "{EDITION}"
"""


def held(copy: str, *sources: str) -> Testimony:
    collations = [collate_texts(copy, each) for each in sources]
    return collation.testimony(collations, [WitnessSource()] * len(sources))


@pytest.fixture
def record(tmp_path: Path) -> Path:
    path = tmp_path / "x.toml"
    path.write_text(RECORD, encoding="utf-8")
    return path


def test_the_apparatus_of_three_sources() -> None:
    found = held(COPY.replace("\n", ""), PRINT, MANUSCRIPT, EDITION)
    assert [str(place) for place in found.places] == [
        "さひしさは ] さひしさに B",
        "松 ] 真木 A",
        "after 山の ] 深き C",
        "ゆふくれの空 ] 夕暮 A C",  # 夕暮れ is the same words
    ]
    assert {w.siglum: w.shared_alone for w in found.witnesses} == {"A": (), "B": (3,), "C": ()}


def test_shared_with_one_alone_is_shared_with_no_other() -> None:
    copy, other = "風の音にそおとろく", "風の音におどろく"
    found = held(copy, "風の音にぞおどろく", other, "風の音にぞおどろく")
    assert all(not witness.shared_alone for witness in found.witnesses)
    found = held(copy, "風の音にぞおどろく", other, "風の声におどろく")
    assert [w.siglum for w in found.witnesses if w.shared_alone] == ["A"]


def test_one_place_decides_nothing_and_several_do() -> None:
    one = held("花の色は雪にましりて", "花の色は雪にまじりて", "花の香は雪にまじりて")
    assert one.followed is None
    assert one.nearest is not None
    assert one.nearest.siglum == "A"
    several = held(
        "花の色は雪にましりて見えすとも香をたに匂へ人のしるへく",
        "花の色は雪にまじりて見えずとも香をだに匂へ人のしるべく",
        "花の香は霞にこめて見せずとも色をだに盗め春の山風",
    )
    assert several.followed is not None
    assert several.followed.siglum == "A"
    assert (several.followed.chance or 0) > 0.9


def test_a_source_without_the_text_says_nothing() -> None:
    poem = "春の夜の夢の浮橋とたえして"
    found = held(poem, "春の夜の夢の浮橋とだえして", "不如帰山河草木青雲白日流水行")
    assert [w.chance is None for w in found.witnesses] == [False, True]
    assert all(len(place.readings) == 1 for place in found.places)


words = st.sampled_from(["花の", "色は", "うつり", "にけり", "な", "山", "風に", "夢", "ぞ"])
lines = st.lists(words, min_size=2, max_size=7).map("".join)


@settings(max_examples=40, deadline=None)
@given(lines, st.lists(lines, min_size=2, max_size=3))
def test_places_do_not_overlap_and_stand_in_order(copy: str, sources: list[str]) -> None:
    found = held(copy, *sources)
    for one, other in zip(found.places, found.places[1:], strict=False):
        assert one.copy.end <= other.copy.start
        assert one.copy != other.copy
    for place in found.places:
        assert any(not each.agrees for each in place.readings)
        for siglum, each in ((w.siglum, w.collation) for w in found.witnesses if w.has_text):
            reading = next(r for r in place.readings if r.siglum == siglum)
            first, end = reading.source.start, reading.source.end
            assert each.source.text[first:end] == reading.source.text


def test_a_record_names_several_sources_and_keeps_them() -> None:
    made = loads(RECORD)
    inscription = made.inscriptions[0]
    assert [each.siglum for each in inscription.sources] == ["P", "M", ""]
    assert inscription.source == inscription.sources[0]
    assert loads(dump(made)) == made
    assert "[[inscription.source]]" in dump(made)


def test_signs_as_carved_are_no_figure_against_a_modern_edition() -> None:
    against = collate(parse("花の色は"), parse("花の色は"), kind="modern edition")
    assert against.to_dict()["fidelity"]["levels"]["as_carved"] is None
    assert against.to_dict()["fidelity"]["levels"]["characters"]["share"] == 1


def test_the_terminal_and_json_give_all_of_it(record: Path) -> None:
    shown = CliRunner().invoke(cli, ["collate", str(record)]).output
    assert "col. 2, before 6: after 山の ] 深き A" in shown
    assert "undecided" in shown
    printed = CliRunner().invoke(cli, ["collate", str(record), "--format", "json"]).output
    found = json.loads(printed)
    assert [each["siglum"] for each in found["witnesses"]][-1] == "A"
    assert found["follows"] is None
    assert len(found["collations"]) == 3


def test_the_entry_and_tei_have_lemma_readings_and_sources(record: Path) -> None:
    shown = CliRunner().invoke(cli, ["entry", str(record)]).output
    assert "ゆふくれの空 \\] 夕暮 P A" in shown
    tei = entries_as_tei([entry_of(loads(RECORD))])
    assert tei.count("<bibl ") == 3
    assert 'source="#r-DEMO-020_i1-source #r-DEMO-020_i1-source-3" xml:lang="ja">夕暮</rdg>' in tei
    assert "listWit" not in tei


GUIDE = Path(__file__).parent.parent / "inscribe/guide/differences.md"


def of_the_guide(kind: str) -> str:
    """Return the block of that kind under "Several sources"."""
    section = GUIDE.read_text("utf-8").split("## Several sources")[1]
    return section.split(f"```{kind}\n")[1].split("```")[0]


def test_the_guides_apparatus_is_what_every_format_says(tmp_path: Path) -> None:
    path = tmp_path / "DEMO-020.toml"
    path.write_text(of_the_guide("toml"), encoding="utf-8")
    places = of_the_guide("text").strip().splitlines()
    lemmas = [line.split(": ", 1)[1] for line in places]
    text = CliRunner().invoke(cli, ["collate", str(path)]).output
    assert all(line in text for line in places)
    assert "undecided; likeliest M (66%)" in text
    found = json.loads(CliRunner().invoke(cli, ["collate", str(path), "--format", "json"]).output)
    assert [place["printed"] for place in found["places"]] == lemmas
    assert found["follows"] is None
    entry = CliRunner().invoke(cli, ["entry", str(path)]).output
    assert all(line.replace(" ]", " \\]") in entry for line in places)
    tei = CliRunner().invoke(cli, ["entry", str(path), "--format", "tei"]).output
    for reading in ("さひしさに", "真木", "深き", "夕暮"):
        assert re.search(f"<rdg [^>]*>{reading}</rdg>", tei)
    assert tei.count("<app ") == len(places)


def test_an_entry_has_no_heading_twice(record: Path) -> None:
    for style in ([], ["--labels", "ja"]):
        said = CliRunner().invoke(cli, ["entry", str(record), *style]).output
        headings = re.findall(r"^\*\*(.+)\*\*$", said, re.MULTILINE)
        assert len(headings) == len(set(headings)), headings


def test_the_spelling_of_a_modern_edition_is_no_reading_of_it(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    for kind, entries in (("modern edition", 0), ("print", 1)):
        path.write_text(
            'id = "A"\nkind = "kozuka"\n[[inscription]]\nplace = "back plate"\ntext = "秋の夕暮"\n'
            f'[[inscription.source]]\nsiglum = "E"\nkind = "{kind}"\ntext = "秋の夕暮れ"\n',
            encoding="utf-8",
        )
        said = CliRunner().invoke(cli, ["entry", str(path), "--format", "tei"]).output
        assert said.count("<app ") == entries
