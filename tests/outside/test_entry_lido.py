"""Entries as LIDO against the schema of its working group.

Source: LIDO 1.1, XML Schema of the CIDOC working group LIDO (CC BY 4.0), with the GML 3.1.1
schemas it imports; the copy refers to its parts by relative paths, so that nothing is fetched.
"""

from __future__ import annotations

import functools
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st
from schemas import schema_file
from strategies import pictured, records

from inscribe.entry import entries_in, entry_of
from inscribe.record import Inscription, Record, load
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.style import Style

etree = pytest.importorskip("lxml.etree", reason="lxml is not installed")

EXAMPLES = Path(__file__).parents[2] / "examples"
FILES = sorted(EXAMPLES.glob("*.toml"))


@functools.cache
def lido() -> Any:
    file = schema_file("lido", "lido-v1.1.xsd")
    return etree.XMLSchema(etree.parse(str(file), etree.XMLParser(no_network=True)))


def problems(text: str) -> list[str]:
    schema = lido()
    tree = etree.fromstring(text.encode("utf-8"))
    return [] if schema.validate(tree) else [f"{e.line}: {e.message}" for e in schema.error_log]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_is_valid(path: Path) -> None:
    assert problems(entries_as_lido([entry_of(load(path))])) == []


def test_a_folder_is_valid() -> None:
    assert problems(entries_as_lido([entry for _, entry in entries_in(EXAMPLES)])) == []


HOUSE = Style(institution="Sōsonkan <&>", rights="CC BY 4.0", language="de-CH")


@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
@given(records, st.sampled_from([Style(), HOUSE]))
def test_any_record_is_valid(made: Record, style: Style) -> None:
    assert problems(entries_as_lido([entry_of(made)], style)) == []


SIGNED = [
    "武州江戸住／槙原露岳造之（花押）」嘉永五年壬子／仲秋吉日",
    "於東都応需法橋露岳彫之／文政七年乙酉三月日",
    "天保三年壬辰仲秋吉日武州住人霜村左衛門尉嶺暁",
]


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(records, st.lists(st.sampled_from(SIGNED), min_size=1, max_size=3))
def test_any_record_that_is_signed_is_valid(made: Record, texts: list[str]) -> None:
    signed = tuple(Inscription("back plate", text) for text in texts)
    entry = entry_of(made._replace(inscriptions=(*signed, *made.inscriptions)))
    assert problems(entries_as_lido([entry], HOUSE)) == []


def test_what_is_not_lido_is_found() -> None:
    text = entries_as_lido([entry_of(load(FILES[0]))])
    assert problems(text.replace("lido:titleSet>", "lido:titleSets>"))
    assert problems(text.replace("lido:measurementValue>", "lido:measurementSize>"))


def test_pictures_are_valid_resources() -> None:
    text = entries_as_lido([entry_of(pictured())])
    assert problems(text) == []
    assert text.count("linkResource>p/plate one.jpg<") == 2
    assert text.count("creditLine") == 4
    assert "objectWebResource>print.png<" in text
