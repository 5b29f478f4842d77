"""Each table of weights decides something: one example that a single changed cell turns.

The packaged table is laid aside for a copy with the one changed line; dictionaries compiled from
tables (of verse) are not tried so, for compiling takes long.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from inscribe import add_glossary, tables
from inscribe.collation import collate
from inscribe.notation import parse
from inscribe.persons import with_persons
from inscribe.reading import read
from inscribe.record import load
from inscribe.restoring import restore
from inscribe.tables import glossary_folders

EXAMPLES = Path(__file__).parent.parent / "examples"


@contextmanager
def changed(table: str, old: str, new: str, folder: Path) -> Iterator[None]:
    """Let the packaged table have one line otherwise; tabs are written as ``|``."""
    packaged = glossary_folders.PACKAGED
    made = folder / "glossary"
    made.mkdir()
    for path in packaged.iterdir():
        (made / path.name).symlink_to(path)
    subject = table.partition("/")[0]
    (made / subject).unlink()
    shutil.copytree(packaged / subject, made / subject)
    file = made / f"{table}.tsv"
    lines = file.read_text("utf-8").split("\n")
    at = [n for n, line in enumerate(lines) if line.startswith(old.replace("|", "\t"))]
    assert len(at) == 1, at
    lines[at[0]] = new.replace("|", "\t")
    file.write_text("\n".join(lines), "utf-8")
    glossary_folders.PACKAGED = made
    tables.forget()
    try:
        yield
    finally:
        glossary_folders.PACKAGED = packaged
        tables.forget()


def kinds(text: str) -> list[str]:
    return [passage.kind for passage in read(parse(text)).passages]


def romaji(text: str) -> str:
    return str(read(parse(text)).to_dict()["romaji"])


def chance(text: str) -> float:
    return round(read(parse(text)).proposals[0].chance or 0.0, 2)


def differences(text: str) -> list[str]:
    copy, source = text.split("｜")
    return [group.kind for group in collate(parse(copy), parse(source)).differences]


def verdict(name: str) -> str:
    inscription = load(EXAMPLES / f"{name}.toml").inscriptions[0]
    assert inscription.source is not None
    found = collate(inscription.transcription, inscription.source.transcription, inscription)
    assert found.space is not None
    return str(found.space.judgements[-1].verdict)


def likely(text: str) -> list[tuple[str, float]]:
    (lacuna,) = restore(parse(text)).lacunae
    return [(each.text, round(each.probability, 2)) for each in lacuna.candidates[:3]]


def person(text: str) -> str | None:
    people = EXAMPLES.parent / "tests/data/people/list"
    add_glossary(people)
    try:
        return with_persons([read(parse(text))])[0].persons[0].id
    finally:
        tables.remove_folder(people)


Case = tuple[str, str, str, Callable[[str], object], str]
CASES: list[Case] = [
    ("collation/space_weights", "intercept|", "intercept|9|", verdict, "DEMO-003"),
    ("collation/collation_costs", "kun|", "kun|5000|", differences, "春のゆめ｜春の夢"),
    ("passages/passage_order", "start|heading|any|0.3", "start|heading|any|30", kinds,
     "霧山之図／春の夜の夢ばかりなる手枕に／嶺暁刻"),
    ("names/name_preferences", "嶺|first|", "嶺|first|みね:99;レイ:1", romaji, "嶺暁作"),
    ("chances/reading_chances", "signature whole|certain|", "signature whole|certain|-9", chance,
     "嶺暁作"),
    ("signatures/signature_chances", "class|name|", "class|name|0.01", likely, "武州住［　　］作"),
    ("signatures/signature_compounds", "manner act|verb|",
     "manner act|verb||{0}+{1}|{0} {1}|9|made, in the manner named|謹刻", romaji, "嶺暁謹刻"),
    ("signatures/signature_formulas", "於|opener|place|",
     "於|opener|place|{} に おいて|{} に おいて||at|30", romaji, "於霧山作"),
    ("signatures/signature_order", "start|surname;clan;common_name|",
     "start|surname;clan;common_name|60", romaji, "霜村嶺暁作"),
    ("names/name_endings", "軒|art|", "軒|art|けん||90", likely, "霜村松翠□嶺暁作"),
    ("signatures/signature_date_order", "date>year|date>season_month|",
     "date>year|date>season_month|0.1", likely, "嘉永六年□八月吉日"),
    ("passages/passage_frames", "dedication|奉納||1|10|any|",
     "dedication|奉納||1|10|any|-9|に ほうのう す||turned", kinds, "奉納霧山社／嶺暁作"),
    ("names/person_evidence", "place-agrees|", "place-agrees|0.01|{} stands there", person,
     "於東都法橋露嶽彫之"),
    ("verse/verse_signs", "70|", "0.001|の", likely, "春□夜の夢ばかりなる手枕に"),
]  # fmt: skip


@pytest.mark.parametrize(("table", "old", "new", "asked", "of"), CASES, ids=[c[0] for c in CASES])
def test_one_changed_weight_turns_an_example(
    table: str, old: str, new: str, asked: Callable[[str], object], of: str, tmp_path: Path
) -> None:
    before = asked(of)
    with changed(table, old, new, tmp_path):
        after = asked(of)
    assert asked(of) == before
    assert after != before, before
