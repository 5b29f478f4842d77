"""Entries read again by programs that are not this one.

Sources: RFC 4180 through Python's csv and through pandas; the HTML Standard's parsing rules through
html5lib; Office Open XML through python-docx; the JSON Schemas the program publishes.
"""

from __future__ import annotations

import csv
import io
import json
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st
from strategies import records

from inscribe.entry import entry_of
from inscribe.keys import schema_of
from inscribe.record import Record
from inscribe.report.drawing.plate import plate_drawing
from inscribe.report.entries.annotation import entries_as_annotations
from inscribe.report.entries.as_json import entries_as_json
from inscribe.report.entries.docx import entries_as_docx
from inscribe.report.entries.layout import laid_out
from inscribe.report.entries.table import FORMULA_STARTS, entries_as_csv
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.style import Style

some_records = st.lists(records, min_size=1, max_size=2)
few = settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
labels = st.sampled_from([Style(), Style(labels="ja", brackets="", italics=False, law_note=True)])


def rows_of(made: list[Record]) -> tuple[str, list[dict[str, str]]]:
    text = entries_as_csv([entry_of(record) for record in made], Style())
    return text, list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


@few
@given(some_records)
def test_a_table_has_a_row_for_each_inscription(made: list[Record]) -> None:
    _, rows = rows_of(made)
    expected = [(record.id, each.place) for record in made for each in record.inscriptions]
    assert [(unsafe(row["id"]), unsafe(row["place"])) for row in rows] == expected
    for row in rows:
        assert all(value is not None and None not in row for value in row.values())
        assert not any(value.strip(" \u3000").startswith(FORMULA_STARTS) for value in row.values())


def unsafe(cell: str) -> str:
    after = cell[1:].lstrip(" \u3000")
    return cell[1:] if cell[:1] == "'" and after.startswith(FORMULA_STARTS) else cell


@few
@given(some_records)
def test_pandas_reads_the_same_table(made: list[Record]) -> None:
    pandas = pytest.importorskip("pandas", reason="pandas is not installed (too large to require)")
    text, rows = rows_of(made)
    held = io.BytesIO(text.encode("utf-8"))
    frame = pandas.read_csv(held, dtype=str, keep_default_na=False, engine="python")
    assert list(frame.columns) == list(rows[0])
    assert len(frame) == len(rows)


@few
@given(some_records, labels)
def test_a_page_obeys_the_parsing_rules_of_html(made: list[Record], style: Style) -> None:
    html5lib = pytest.importorskip("html5lib", reason="html5lib is not installed")
    page = entries_as_html([entry_of(record) for record in made], style)
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree = parser.parse(page)
    assert len(tree.findall(".//article")) == len(made)
    assert not tree.findall(".//script")
    heads = [head.text or "" for head in tree.findall(".//h1")]
    assert [" ".join(head.split()) for head in heads] == [
        " ".join(f"{record.id} {record.title}".split()) for record in made
    ]


@few
@given(some_records, labels)
def test_a_document_holds_every_word_of_the_entry(made: list[Record], style: Style) -> None:
    docx = pytest.importorskip("docx", reason="python-docx is not installed")
    entries = [entry_of(record) for record in made]
    document = docx.Document(io.BytesIO(entries_as_docx(entries, style)))
    blocks = [block for entry in entries for block in laid_out(entry, style)]
    columns = [table for table in document.tables if "w:textDirection" in table._tbl.xml]
    grids = [block for block in blocks if hasattr(block, "header")]
    assert len(document.tables) - len(columns) == len(grids)
    carved = [block for block in blocks if hasattr(block, "faces")]
    faces = sum(1 if each.strips else len(each.faces) for each in carved)
    assert len(carved) <= len(columns) <= faces  # side by side where the sheet is wide enough
    words = "".join("".join(paragraph.text for paragraph in document.paragraphs).split())
    for record in made:
        assert "".join(record.id.split()) in words
        for each in record.inscriptions:
            assert "".join(each.translation.split()) in words


@few
@given(some_records)
def test_json_keeps_its_schema(made: list[Record]) -> None:
    jsonschema: Any = pytest.importorskip("jsonschema", reason="jsonschema is not installed")
    validator = jsonschema.Draft202012Validator(schema_of("entry"))
    for record in made:
        found = json.loads(entries_as_json([entry_of(record)]))
        assert [error.message for error in validator.iter_errors(found)] == []


@few
@given(some_records)
def test_the_other_formats_are_well_formed(made: list[Record]) -> None:
    entries = [entry_of(record) for record in made]
    assert len(ET.fromstring(entries_as_lido(entries))) == len(made)
    assert json.loads(entries_as_annotations(entries))["type"] == "AnnotationPage"
    for entry in entries:
        for each in entry.inscriptions:
            assert ET.fromstring(plate_drawing(each.inscription, each.collation)).tag.endswith(
                "svg"
            )
