"""Texts out of the usual shapes of files: TEI of several texts, folders, tables with odd heads."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from test_sources import cli

from inscribe.entry import entry_of
from inscribe.errors import InputError
from inscribe.record import Inscription, Record
from inscribe.report.tei.entry import entries_as_tei
from inscribe.sources import importers

NAMESPACE = "http://www.tei-c.org/ns/1.0"
HEADER = "<teiHeader><fileDesc><titleStmt><title>T</title></titleStmt></fileDesc></teiHeader>"


def tei(inside: str, *, name: str = "", of_text: str = "", root: str = "TEI") -> str:
    identity = f' xml:id="{name}"' if name else ""
    opened = f'<{root} xmlns="{NAMESPACE}"{identity}>{HEADER}'
    return f"{opened}<text{of_text}><body>{inside}</body></text></{root}>"


def corpus(*parts: str) -> str:
    return f'<teiCorpus xmlns="{NAMESPACE}">{HEADER}{"".join(parts)}</teiCorpus>'


VERSES = ("<lg><l>はな</l><l>いろ</l></lg>", "<lg><l>つき</l></lg>")


@pytest.mark.parametrize(
    ("content", "found"),
    [
        (tei('<p xml:id="a">はな</p><p xml:id="b">つき</p>'), {"a": "はな", "b": "つき"}),
        (tei('<ab xml:id="a">は<lb/>な</ab><ab xml:id="b">つき</ab>'), {"a": "は/な", "b": "つき"}),
        (tei('<div xml:id="a"><head>x</head><ab>はな</ab></div>'), {"a": "はな"}),
        (tei("<p>はな</p><p>つき</p>"), {"f": "はな/つき"}),
        (tei("<p>はな</p><p>つき</p>", name="t"), {"t": "はな/つき"}),
        (tei(f"<p>むかし</p>{VERSES[0]}"), {"f:1": "はな/いろ", "f": "むかし"}),
        (
            corpus(*(tei(v, name=n) for v, n in zip(VERSES, "ab", strict=True))),
            {"a": "はな/いろ", "b": "つき"},
        ),
        (
            corpus(*(tei(v, of_text=f' xml:id="{n}"') for v, n in zip(VERSES, "ab", strict=True))),
            {"a": "はな/いろ", "b": "つき"},
        ),
        (corpus(tei("<p>はな</p>"), tei("<p>つき</p>")), {"f:1": "はな", "f:2": "つき"}),
        (
            f'<TEI xmlns="{NAMESPACE}">{HEADER}<text><group>'
            '<text xml:id="a"><body><p>はな</p></body></text>'
            "<text><body><p>つき</p></body></text></group></text></TEI>",
            {"a": "はな", "f:2": "つき"},
        ),
        (tei("<lg><l><ruby><rb>花</rb><rt>はな</rt></ruby>の</l></lg>", name="t"), {"t": "花の"}),
    ],
)
def test_every_text_of_a_tei_file_is_read(
    content: str, found: dict[str, str], tmp_path: Path
) -> None:
    path = tmp_path / "f.xml"
    path.write_text(content, "utf-8")
    assert {t.id: "/".join(t.lines) for t in importers.texts_in(path)} == found


@pytest.mark.parametrize(
    ("inside", "found"),
    [
        ('<p>はな<gap reason="lost" quantity="2" unit="character"/>いろ</p>', "はな□□いろ"),
        ('<p>はな<gap reason="illegible" quantity="1" unit="chars"/></p>', "はな□"),
        ('<p>はな<gap reason="lost" extent="3 characters"/>いろ</p>', "はな□□□いろ"),
        ('<p>はな<gap reason="lost" extent="unknown" unit="character"/></p>', "はな［　　］"),
        ("<p>はな<gap/>いろ</p>", "はな［　　］いろ"),
        ('<p>はな<gap quantity="9000" unit="character"/></p>', "はな［　　］"),
        ('<p>はな<gap quantity="2" unit="line"/>いろ</p>', "はな/［　　］/［　　］/いろ"),
        ('<gap quantity="1" unit="character"/><p>いろ</p>', "□/いろ"),
        ('<p>はな<supplied reason="lost"><gap quantity="1"/></supplied></p>', "はな□"),
        ('<p>は<g ref="#flower"/>な<g>〻</g></p>', "は□な〻"),
        ("<p>は<sic>ま</sic>な<orig>ゝ</orig><abbr>也</abbr></p>", "はまなゝ也"),
        ("<p><choice><sic>ま</sic><corr>な</corr></choice>は</p>", "なは"),
        ("<p><choice><unclear>な</unclear><unclear>ま</unclear></choice>は</p>", "なは"),
        ("<p><app><lem>な</lem><rdg>ま</rdg></app>は</p>", "なは"),
        ("<p><app><rdg>な</rdg><rdg>ま</rdg></app>は</p>", "なは"),
        ("<list><item>はな</item><item>いろ</item></list>", "はな/いろ"),
        ("<quote>はな</quote>", "はな"),
        ("<sp><speaker>x</speaker><l>はな</l></sp>", "はな"),
        ('<div type="translation"><p>Flowers</p></div><p>はな</p>', "はな"),
        ('<div type="edition" subtype="reading"><ab>hana</ab></div><ab>花</ab>', "花"),
        ('<ab xml:lang="ja">花</ab><ab xml:lang="ja-Latn">hana</ab>', "花"),
    ],
)
def test_nothing_of_a_text_is_lost_and_nothing_beside_it_taken(
    inside: str, found: str, tmp_path: Path
) -> None:
    path = tmp_path / "f.xml"
    path.write_text(tei(inside), "utf-8")
    assert ["/".join(text.lines) for text in importers.texts_in(path)] == [found]


@pytest.mark.parametrize(
    "text", ["花の□色［　　］は", "うつりに\nけり", "花(カ)の色［は］な(ママ)〔り〕"]
)
def test_our_own_tei_comes_back_as_what_was_carved(text: str, tmp_path: Path) -> None:
    record = Record("x", "tsuba", inscriptions=(Inscription("front", text),))
    path = tmp_path / "f.xml"
    path.write_text(entries_as_tei([entry_of(record)]), "utf-8")
    plain = re.sub(r"\(..?\)|［(?!　)|(?<!　)］|[〔〕]", "", text)
    assert ["\n".join(found.lines) for found in importers.texts_in(path)] == [plain]


def test_files_of_one_name_do_not_share_their_ids(tmp_path: Path) -> None:
    for name in ("poems.txt", "poems.CSV", "sub/poems.txt"):
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text("text\nはな\n", "utf-8")
    library = str(tmp_path / "l.sqlite")
    run = cli("add", str(tmp_path), str(tmp_path / "sub"), "--library", library)
    assert (run.returncode, run.stderr[:7]) == (0, "3 added")


def test_heads_of_tables_may_have_capitals(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_text("ID, Text,Title\nx,はな,y\n", "utf-8")
    assert [(t.id, t.lines, t.title) for t in importers.texts_in(path)] == [("x", ("はな",), "y")]


@pytest.mark.parametrize(("name", "content"), [("a.toml", "[[poem]]\n"), ("a.csv", "id,text\n")])
def test_an_input_without_a_text_is_told(name: str, content: str, tmp_path: Path) -> None:
    path = tmp_path / name
    path.write_text(content, "utf-8")
    run = cli("add", str(path), "--library", str(tmp_path / "l.sqlite"))
    assert run.returncode == 2
    assert "there is no text in" in run.stderr


def test_the_file_of_a_repeated_id_is_named(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_text("id,text\nx,はな\nx,つき\n", "utf-8")
    run = cli("add", str(path), "--library", str(tmp_path / "l.sqlite"))
    assert run.returncode == 2
    assert "a.csv" in run.stderr


def test_an_unknown_kind_of_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "a.odt"
    path.write_text("x", "utf-8")
    with pytest.raises(InputError, match="kind of file is not known"):
        list(importers.texts_in(path))


def test_signs_an_editor_cannot_give_keep_their_place_in_tei(tmp_path: Path) -> None:
    page = (
        '<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader/><text><body><p>花の'
        '<space quantity="2" unit="character"/>色<unclear/>は<damage/></p></body></text></TEI>'
    )
    path = tmp_path / "a.xml"
    path.write_text(page, encoding="utf-8")
    (text,) = importers.texts_in(path)
    assert text.lines == ("花の□□色□は□",)
