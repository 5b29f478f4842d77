"""Word-processor documents: styles to restyle, columns downwards, pictures, languages, fields."""

from __future__ import annotations

import io
import struct
import sys
from pathlib import Path
from typing import Any

import pytest
from test_entry import EXAMPLES, example
from test_pictures import photograph

from inscribe import remarks
from inscribe.entry import entry_of
from inscribe.record import Inscription, Record, RecordImage, load, loads
from inscribe.report.drawing import as_metafile, plate_drawing
from inscribe.report.entries.docx import entries_as_docx
from inscribe.report.entries.docx_sheet import OWN
from inscribe.report.entries.layout import laid_out
from inscribe.report.explaining import in_japanese
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.style import Style

docx: Any = pytest.importorskip("docx", reason="python-docx is not installed")


def document_of(*numbers: int, style: Style | None = None) -> Any:
    entries = [entry_of(load(EXAMPLES / f"DEMO-{n:03}.toml"), folder=EXAMPLES) for n in numbers]
    return docx.Document(io.BytesIO(entries_as_docx(entries, style or Style())))


def test_everything_is_set_in_styles_that_can_be_restyled() -> None:
    made = document_of(1, 4, 8)
    used = {p.style.name for p in made.paragraphs}
    used |= {p.style.name for t in made.tables for c in t._cells for p in c.paragraphs}
    assert set(OWN) <= used
    sized = [run for p in made.paragraphs for run in p.runs if run.font.size is not None]
    assert sized == []


def test_columns_run_downwards_and_from_right_to_left() -> None:
    table = document_of(5).tables[0]
    first, second = ["槙原露岳造之（花押）", "武州江戸住"], ["仲秋吉日", "嘉永五年壬子"]
    assert [cell.text for cell in table.rows[0].cells][:-1] == [*second, "", *first]
    assert table._tbl.xml.count('w:textDirection w:val="tbRl"') == 5


@pytest.mark.parametrize("number", [3, 5])
def test_the_drawing_stands_beside_the_columns(number: int) -> None:
    made = document_of(number)
    cell = made.tables[0].rows[0].cells[-1]
    assert "<w:drawing>" in cell._tc.xml
    assert "w:textDirection" not in cell._tc.xml
    assert cell.text.strip() in ("To scale", "Sketch")
    assert made.inline_shapes[0].height < made.tables[0].rows[0].height
    assert sum(column.width for column in made.tables[0].columns) <= docx.shared.Mm(210 - 2 * 22)


def test_columns_that_leave_no_room_for_the_drawing_stand_above_it() -> None:
    many = "\n".join("花の色は" for _ in range(16))
    place = "id = 'A-1'\nkind = 'kozuka'\n[[inscription]]\nplace = 'back'\n"
    plate = "[inscription.plate]\nwidth = 90\nheight = 95\n"
    record = loads(f"{place}text = '''\n{many}'''\n{plate}")
    made = docx.Document(io.BytesIO(entries_as_docx([entry_of(record)], Style())))
    assert "<w:drawing>" not in made.tables[0]._tbl.xml
    assert len(made.inline_shapes) == 1


def test_copy_and_source_stand_side_by_side_as_long_as_each_other() -> None:
    cells = [cell.text for cell in document_of(3).tables[0].rows[0].cells]
    assert cells[-2] == "世の中に【＿＿＿】桜のなかりせは春の"
    assert cells[-3] == "世の中に【たえて】桜のなかりせば春の"


def test_languages_page_numbers_and_contents() -> None:
    made = document_of(1, 5)
    assert 'w:eastAsia="ja-JP"' in made.styles.element.xml
    assert " PAGE " in made.sections[0].footer._element.xml
    assert "TOC " in made.element.body.xml
    assert "TOC " not in document_of(1).element.body.xml


def test_a_photograph_and_the_drawing_are_pictures_and_described() -> None:
    made = document_of(4)
    described = [shape._inline.docPr.get("descr") for shape in made.inline_shapes]
    assert described == [
        "The back plate, its writing rubbed away in the middle",
        "To scale",
        "A leaf of a printed book: the poem above a thatched hut on a bay",
    ]
    kinds = {part.content_type for part in made.part.package.iter_parts()}
    assert "image/x-emf" in kinds


def test_heads_of_tables_are_not_broken() -> None:
    table = document_of(3).tables[1]
    assert table.rows[0]._tr.xml.count("<w:noWrap/>") == len(table.columns)
    assert "<w:tblHeader/>" in table.rows[0]._tr.xml


def test_a_metafile_has_the_records_its_head_says() -> None:
    inscription = load(EXAMPLES / "DEMO-005.toml").inscriptions[0]
    made = as_metafile(plate_drawing(inscription))
    assert made[40:44] == b" EMF"
    size, records = struct.unpack("<II", made[48:56])
    at, kinds = 0, []
    while at < len(made):
        kind, length = struct.unpack("<II", made[at : at + 8])
        assert length % 4 == 0
        kinds.append(kind)
        at += length
    assert (at, len(kinds)) == (size, records)
    assert (kinds[0], kinds[-1]) == (1, 14)
    assert kinds.count(42) == 2  # the flats of the guard
    assert kinds.count(84) >= len(inscription.transcription.signs)


def test_paper_and_font_are_the_styles() -> None:
    style = Style(paper="A5", font="Test Mincho")
    made = document_of(1, style=style)
    assert round(made.sections[0].page_width.mm) == 148
    assert made.styles["Normal"].font.name == "Test Mincho"
    page = entries_as_html([example(1)], style)
    assert '--serif: "Test Mincho"' in page
    assert "148mm 210mm" in page


def test_days_are_told_as_the_style_says() -> None:
    def page(style: Style) -> str:
        return entries_as_html([example(5)], style)

    assert "14 September 1852 – 12 October 1852" in page(Style(days="words"))
    assert "1852年9月14日" in page(Style(days="words", labels="ja"))
    assert "1852-09-14" not in page(Style(days="none", order=("date",)))


def test_doubts_may_be_counted_alone() -> None:
    blocks = [b for b in laid_out(example(4), Style(doubts="count")) if hasattr(b, "items")]
    assert [block.folded for block in blocks if block.title == "Doubts"] == [True]


@pytest.mark.parametrize(
    ("said", "japanese"),
    [
        ("は and ば differ in the voicing mark", "はとばは濁点の有無が異なる"),
        ("夢 is read ゆめ (as manuscripts write it)", "夢は「ゆめ」と読む（写本の書き方による）"),
        ("very likely, 92%", "可能性が高い、92%"),
        ("cannot be read; something else", "判読できない；something else"),
        ("nothing the table has", "nothing the table has"),
    ],
)
def test_explanations_are_told_in_japanese(said: str, japanese: str) -> None:
    assert in_japanese(said) == japanese


def test_the_language_of_explanations_can_differ_from_that_of_labels() -> None:
    entry = example(1)
    both = {
        (labels, explained): entries_as_html([entry], Style(labels=labels, explanations=explained))
        for labels in ("en", "ja")
        for explained in ("en", "ja")
    }
    assert "濁点の有無" in both["en", "ja"]
    assert "Differences in writing only" in both["en", "ja"]
    assert "differ in the voicing mark" in both["ja", "en"]
    assert "濁点の有無" not in both["ja", "en"]


def test_the_reasons_of_space_are_told_in_japanese() -> None:
    page = entries_as_html([example(2)], Style(labels="ja"))
    reasons = page.split("<summary>余白不足の可否とその理由")[1].split("</details>")[0]
    assert " signs " not in reasons
    assert "ミリ" in reasons
    assert " mm " not in reasons


def document_with(folder: Path) -> Any:
    """Return the document of a record whose picture is ``p.jpg``."""
    image = RecordImage("p.jpg", shows="A heron")
    record = Record("A-1", "kozuka", (Inscription("back", "花"),), images=(image,))
    made = entries_as_docx([entry_of(record, folder=folder)], Style())
    return docx.Document(io.BytesIO(made))


def test_a_picture_that_word_processors_do_not_show_is_made_anew(tmp_path: Path) -> None:
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    image.new("CMYK", (60, 30)).save(tmp_path / "p.jpg")
    (shown, *_) = document_with(tmp_path).inline_shapes
    assert shown.width == pytest.approx(2 * shown.height, rel=0.01)
    photograph(tmp_path / "p.jpg", (60, 30), 6)
    (shown, *_) = document_with(tmp_path).inline_shapes
    assert shown.height == pytest.approx(2 * shown.width, rel=0.01)


def test_without_pillow_it_is_left_out_and_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    image = pytest.importorskip("PIL.Image", reason="pillow is not installed")
    image.new("CMYK", (60, 30)).save(tmp_path / "p.jpg")
    monkeypatch.setitem(sys.modules, "PIL", None)
    monkeypatch.setattr(remarks, "_wanted", True)  # another test may have asked for quiet
    made = document_with(tmp_path)
    said = [p.text for p in made.paragraphs]
    assert "The object. A heron. the picture cannot be shown here: p.jpg" in said
    assert capsys.readouterr().err.startswith("A-1: p.jpg is left out")
