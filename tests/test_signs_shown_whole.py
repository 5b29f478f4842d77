"""Signs are shown whole and as noted: in entries, in the drawing, in the columns of a terminal."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from zipfile import ZipFile

import pytest
from hypothesis import given, strategies as st
from rich.cells import cell_len
from strategies import transcriptions

from inscribe import notation
from inscribe.collation import collate
from inscribe.concordance.answers import concord
from inscribe.concordance.documents import document_of_text
from inscribe.concordance.finding import query_of
from inscribe.concordance.folder import Collection
from inscribe.entry import Entry, entry_of
from inscribe.notation import parse, printed, render
from inscribe.notation.cutting import segments
from inscribe.record import Inscription, loads
from inscribe.report.drawing.plate import plate_drawing
from inscribe.report.entries.collated import printed_sides
from inscribe.report.entries.docx import entries_as_docx
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.entries.table import entries_as_csv
from inscribe.report.lido.entry import entries_as_lido
from inscribe.report.pages.entry import entries_as_html
from inscribe.report.style import Style
from inscribe.report.terminal.concord import CONTEXT, concordance_as_text
from inscribe.report.widths import width
from inscribe.signs import Kind, Transcription

RECORD = """
id = "A-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
register = "verse"
text = "{copy}"
[inscription.plate]
width = 14.5
height = 96.0
[inscription.source]
text = "{source}"
"""


def entry(copy: str, source: str = "夢") -> Entry:
    return entry_of(loads(RECORD.format(copy=copy, source=source)))


def _docx(made: Entry) -> str:
    pytest.importorskip("docx", reason="python-docx is not installed")
    with ZipFile(io.BytesIO(entries_as_docx([made], Style()))) as held:
        return held.read("word/document.xml").decode()


FORMATS = {
    "md": lambda made: entry_as_markdown(made, Style()),
    "html": lambda made: entries_as_html([made], Style()),
    "docx": _docx,
    "csv": lambda made: entries_as_csv([made], Style()),
    "lido": lambda made: entries_as_lido([made]),
}


@pytest.mark.parametrize("form", FORMATS)
@pytest.mark.parametrize(
    ("written", "of_unicode"), [("に(尓)", "爾"), ("ほ(宝)", "寶"), ("と(登)し(之)", "志")]
)
def test_the_parent_the_transcriber_wrote_is_kept(form: str, written: str, of_unicode: str) -> None:
    shown = FORMATS[form](entry(f"夢{written}はな", f"{written}夢のはな"))
    assert all(parent in shown for parent in written[2::4])
    assert of_unicode not in shown


@pytest.mark.parametrize("form", ["md", "csv", "docx"])
def test_a_bracket_that_is_carved_is_no_parent(form: str) -> None:
    assert "(" in FORMATS[form](entry("花\\\\(の"))


def test_a_bracket_that_is_carved_stands_in_the_page() -> None:
    assert "<ruby><rt>" not in FORMATS["html"](entry("花\\\\(の"))


@given(transcriptions, transcriptions)
def test_both_sides_of_a_difference_are_printed_as_the_text_itself(
    copy: Transcription, source: Transcription
) -> None:
    held = collate(copy, source)
    for group in held.groups:
        sides = ((group.copy, held.copy), (group.source, held.source))
        for side, (span, t) in zip(printed_sides(group, held), sides, strict=True):
            seals = [s for s in t.signs[span.start : span.end] if s.kind is Kind.SEAL]
            if not seals:
                assert side == notation.written_out(span.text)
            assert side.count("（印") >= len(seals)  # told as seals


def drawn(copy: str, source: str | None = None) -> dict[str, list[str]]:
    """Return the words of a drawing by what they are."""
    held = collate(parse(copy), parse(source)) if source else None
    root = ET.fromstring(plate_drawing(Inscription("back plate", copy), held))
    found: dict[str, list[str]] = {}
    for element in root.iter("{http://www.w3.org/2000/svg}text"):
        found.setdefault(element.get("class", ""), []).append(element.text or "")
    return found


@pytest.mark.parametrize(
    "sign", ["⿰木黑", "⿱⿰日月皿", "〳〵", "／＼", "葛\U000e0100", "か\u3099"]
)
def test_a_sign_is_drawn_whole(sign: str) -> None:
    assert "".join(drawn(f"花{sign}の")["sign"]) == f"花{sign}の"
    assert "".join(drawn("花の色は", f"花の{sign}色は")["ghost"]) == sign


def test_a_tall_repeat_mark_is_drawn_one_half_below_the_other() -> None:
    root = ET.fromstring(plate_drawing(Inscription("back plate", "花〳〵")))
    halves = [e for e in root.iter("{http://www.w3.org/2000/svg}text") if e.text in ("〳", "〵")]
    assert halves[0].get("x") == halves[1].get("x")
    assert float(halves[0].get("y", 0)) < float(halves[1].get("y", 0))


def test_a_noted_kana_is_drawn_as_its_kana() -> None:
    assert drawn("ば(者)に(尓)")["sign"] == ["ば", "に"]


def test_a_struck_sign_is_not_drawn_as_an_unread_one() -> None:
    assert drawn("■□")["sign"] == ["■", "□"]


@given(transcriptions)
def test_every_sign_of_any_inscription_is_drawn_whole(t: Transcription) -> None:
    root = ET.fromstring(plate_drawing(Inscription("back plate", render(t))))
    texts = root.iter("{http://www.w3.org/2000/svg}text")
    shown = "".join(e.text or "" for e in texts if e.get("class") == "sign")
    assert all(printed(sign).partition("(")[0] in shown for sign in t.signs if sign.is_legible)


SHOWN = "花の葛𛂥𠮷々〱〳〵ｶﾞ゛ōaé…—①□■［］（）⿰　" + "\U000e0100\ufe00\u3099\u309a\u0301"


# Against the tables of rich, which are those of Unicode's EastAsianWidth.txt.
@given(st.text(st.sampled_from(SHOWN)))
def test_a_sign_takes_the_columns_that_a_terminal_gives_it(text: str) -> None:
    assert width(text) == cell_len(text)


@pytest.mark.parametrize("sign", ["葛\U000e0100", "⿰木黑", "か\u3099"])
def test_the_context_of_a_word_cuts_no_sign(sign: str) -> None:
    held = Collection((document_of_text("A", f"{sign * 30}夢{sign * 30}"),), 1)
    line = concordance_as_text(concord(held, query_of("夢"))).splitlines()[0]
    before, after = line.removeprefix("A").split("【夢】")
    for context in (before.strip(), after.strip()):
        assert set(segments(context)) == {sign}
        assert width(context) <= CONTEXT < width(context + sign)
