"""What is written is safe to show: HTML without tags of the data, well-formed XML, tame cells."""

from __future__ import annotations

import csv
import io
import json
import re
import sqlite3
import xml.etree.ElementTree as ET
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hostile.running import run
from hypothesis import given, settings, strategies as st
from strategies import records

from inscribe.entry import Entry, entry_of
from inscribe.errors import InscribeError
from inscribe.notation import parse
from inscribe.record import CopiedText, Inscription, Reader, Record, dump, loads
from inscribe.report.entries.annotation import entries_as_annotations
from inscribe.report.entries.as_json import entries_as_json
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.entries.table import FORMULA_STARTS, entries_as_csv, safe_cell
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.style import Style
from inscribe.report.tei.entry import entries_as_tei
from inscribe.sources import library as library_room

PACKAGE = Path(library_room.__file__).parents[1]
ATTACKS = (
    "<script>fetch('http://192.0.2.1/')</script>",
    "<img src=x onerror=alert(1)>",
    '"><svg onload=alert(1)>',
    "</style><link rel=stylesheet href=http://192.0.2.1/>",
    "]]><!--",
    "{{ 7 * 7 }}{% for x in y %}",
    "javascript:alert(1)",
    "&lt;b&gt;&#x3c;i",
    '=HYPERLINK("http://192.0.2.1/")',
)
CARVED = "花の〈script〉［色］は\\<b\\>"
VOID = {"meta", "br", "link", "img", "base"}
HARMLESS_TAGS = re.compile(
    "html|head|meta|title|style|body|main|article|section|header|footer|h[1-4]|dl|div|dt|dd|figure"
    "|figcaption|p|span|br|ruby|rt|rp|table|caption|thead|tbody|tr|th|td|ul|li|i|b|svg|g|text|line"
    "|rect|path|circle|tspan|desc|details|summary|ol|sub|a|ellipse|polygon"
)


def attacked(attack: str) -> Entry:
    """Return the entry of a record that holds the attack wherever it may hold text."""
    said = attack
    source = CopiedText("花の色は", said, "", "japanese", said, said, said, said, said)
    reader = Reader(said, None, "花の色は", said, said, said)
    found = Inscription(
        said,
        CARVED,
        hand=said,
        execution=said,
        source=source,
        readers=(reader,),
        translation=said,
        remarks=said,
    )
    record = Record(said, said, (found,), said, remarks=said)
    return entry_of(loads(dump(record)))


class Tags(HTMLParser):
    """Gathers the tags and attributes of a page, and whether they close as they open."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def assert_tame(page: str) -> None:
    found = Tags()
    found.feed(page)
    found.close()
    assert found.open == []
    assert all(HARMLESS_TAGS.fullmatch(tag) for tag, _ in found.seen)
    for _, attributes in found.seen:
        assert not any(name.startswith("on") or name == "src" for name in attributes)
        assert re.fullmatch(r"#r-[^<>\"]*i\d+d\d+", attributes.get("href") or "#r-i1d1")
    policies = [a for tag, a in found.seen if tag == "meta" and "http-equiv" in a]
    assert "default-src 'none'" in str(policies[0]["content"])


@pytest.mark.parametrize("attack", ATTACKS)
def test_no_text_of_a_record_becomes_a_tag(attack: str) -> None:
    entry = attacked(attack)
    page = entries_as_html([entry], Style())
    assert_tame(page)
    for document in (entries_as_tei([entry]), entries_as_lido([entry])):
        assert attack in "".join(ET.fromstring(document).itertext())
    assert json.loads(entries_as_json([entry]))["title"] == attack
    assert "<script" not in entry_as_markdown(entry, Style()).replace("\\<", "")
    if "<" in attack:
        assert attack not in page


@pytest.mark.parametrize(
    "attack", ["=1+1", "+1", "-1", "@x", "＝1", " =1", "\u3000＝1", "\u00a0@a"]
)
def test_no_cell_is_a_formula(attack: str) -> None:
    entry = attacked(f"{attack}&x")
    rows = list(csv.reader(io.StringIO(entries_as_csv([entry], Style()))))
    assert all(not cell.lstrip().startswith(FORMULA_STARTS) for row in rows for cell in row)


@given(st.text())
def test_a_safe_cell_is_never_a_formula(text: str) -> None:
    assert not safe_cell(text).lstrip().startswith(FORMULA_STARTS)


@settings(max_examples=60, deadline=None)
@given(records)
def test_every_accepted_record_goes_out_whole(record: Record) -> None:
    try:
        entry = entry_of(loads(dump(record)))
    except InscribeError:
        return
    for document in (entries_as_tei([entry, entry]), entries_as_lido([entry])):
        root = ET.fromstring(document.encode())
        assert record.id in "".join(root.itertext())
    assert_tame(entries_as_html([entry], Style()))
    json.loads(entries_as_json([entry]))
    json.loads(entries_as_annotations([entry]))
    rows = list(csv.reader(io.StringIO(entries_as_csv([entry], Style()))))
    assert {len(row) for row in rows} == {len(rows[0])}
    assert len(rows) == 1 + len(record.inscriptions)


@settings(max_examples=50, deadline=None)
@given(st.text(max_size=60))
def test_whatever_is_typed_the_terminal_gets_no_control_character(text: str) -> None:
    for command in (("date", "--", text), ("sign", "--", text), ("name", "--", text)):
        found = run(command)
        assert found.status in (0, 2)
        assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f]", found.said)
    found = run(("read", "--text", text))
    assert found.status in (0, 2)
    assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f]", found.said)


def test_the_library_takes_values_as_parameters_only() -> None:
    """Every statement is a literal; what is put into one is a row of question marks."""
    for module in (PACKAGE / "sources").glob("*.py"):
        for put_in in re.findall(r'execute\w*\(\s*f"[^)]*?"', module.read_text("utf-8")):
            assert set(re.findall(r"{(\w+)}", put_in)) <= {"marks", "columns"}, put_in


@settings(max_examples=25, deadline=None)
@given(st.lists(st.text(min_size=1, max_size=20), min_size=1, max_size=4))
def test_any_id_and_title_is_kept_as_it_is(values: list[str]) -> None:
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        path = str(Path(folder, "l.sqlite"))
        lines = [
            json.dumps({"id": f"{n}{v}", "text": "花の色は", "title": v, "x'\"": v})
            for n, v in enumerate(values)
        ]
        added = run(("source", "add", "-", "--library", path), "\n".join(lines).encode())
        if added.status:
            assert re.search("which is no text|has no id", added.said)
            return
        held = sqlite3.connect(path).execute("SELECT id, title FROM texts ORDER BY number")
        assert list(held) == [(f"{n}{v}".strip(), v) for n, v in enumerate(values)]


def test_a_transcription_of_tags_is_still_one() -> None:
    assert parse(CARVED).signs
