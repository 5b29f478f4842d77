"""Manifests and linked data read by programs that are not this one.

Sources: the IIIF Presentation API 3.0 through iiif-prezi3; JSON-LD 1.1 through pyld; classes and
properties of CIDOC CRM 7.1 by their published names.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st
from strategies import records

from inscribe.entry import entries_in, entry_of
from inscribe.record import Record
from inscribe.report.linked.crm import entries_as_linked
from inscribe.report.linked.manifest import entry_as_manifest
from inscribe.report.style import Style

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
few = settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))


def model_of(manifest: str) -> Any:
    prezi: Any = pytest.importorskip("iiif_prezi3", reason="iiif-prezi3 is not installed")
    return prezi.Manifest(**json.loads(manifest))


def test_every_example_is_a_manifest() -> None:
    for _, entry in entries_in(EXAMPLES):
        made = model_of(entry_as_manifest(entry, Style()))
        painted = [each for each in made.items[len(entry.inscriptions) :] if each.items]
        assert len(made.items) == len(entry.inscriptions) + len(painted)


@few
@given(records)
def test_every_record_is_a_manifest(record: Record) -> None:
    made = model_of(entry_as_manifest(entry_of(record), Style()))
    for canvas, each in zip(made.items, record.inscriptions, strict=True):
        signs = [page for page in canvas.annotations or [] if str(page.id).endswith("/signs")]
        boxed = [sign for sign in each.transcription.signs if sign.box]
        assert sum(len(page.items) for page in signs) == len(boxed)


@few
@given(st.lists(records, min_size=1, max_size=2))
def test_linked_data_has_a_node_for_each_object_and_text(made: list[Record]) -> None:
    jsonld: Any = pytest.importorskip("pyld.jsonld", reason="pyld is not installed")
    text = entries_as_linked([entry_of(record) for record in made], Style())
    expanded = json.dumps(jsonld.expand(json.loads(text)))
    crm = "http://www.cidoc-crm.org/cidoc-crm/"
    assert expanded.count(f"{crm}E22_Human-Made_Object") == len(made)
    terms = set(re.findall(rf'"({crm}[^"]+)"', expanded))
    assert all(re.fullmatch(rf"{crm}[EP]\d+[a-z]?_[A-Za-z_-]+", term) for term in terms)
    # Whatever the document says is said in terms of its context: expansion drops all others.
    keys = set(re.findall(r'"([a-z_]+)":', json.dumps(json.loads(text)["@graph"])))
    known = set(json.loads(text)["@context"])
    assert keys <= known
