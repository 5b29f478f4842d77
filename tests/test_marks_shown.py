"""What is no word: seals, gaps, worn signs, and the transcriber's notes of how sure a sign is."""

from __future__ import annotations

import json
import re

import pytest

from inscribe import notation, reading
from inscribe.collation import collate
from inscribe.entry import entry_of
from inscribe.reading import read_text
from inscribe.record import Override, loads
from inscribe.record.boxes.tables import boxes_of
from inscribe.report.collations.layout import shown
from inscribe.report.entries.annotation import entries_as_annotations
from inscribe.report.entries.blocks import Columns
from inscribe.report.entries.collated import printed_sides
from inscribe.report.entries.layout import laid_out
from inscribe.report.entries.markdown import entry_as_markdown
from inscribe.report.entries.table import entries_as_csv
from inscribe.report.explaining import in_japanese
from inscribe.report.lido import entries_as_lido
from inscribe.report.linked.manifest import entry_as_manifest
from inscribe.report.style import Style
from inscribe.report.tei import entries_as_tei
from inscribe.report.terminal.reading import reading_as_text


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("（印「寿」）", "the legend of a seal"),
        ("（花押）", "marks alone: they have no words"),
        ("□□（花押）", "no word can be read"),
        ("［　　］", "nothing can be read"),
        ("□□□", "nothing can be read"),
        ("武州住□□作", "every legible word is a usual one of signatures"),
    ],
)
def test_nothing_is_said_of_words_that_are_not_there(text: str, reason: str) -> None:
    assert read_text(text).proposals[0].reasons == (reason,)
    assert not re.search("[a-z]{3}", in_japanese(reason))


@pytest.mark.parametrize(
    ("legend", "romaji"),
    [("露岳", "Rogaku"), ("露岳之印", "Rogaku no in"), ("寿", "Ju"), ("□", ""), ("", "")],
)
def test_the_legend_of_a_seal_is_read(legend: str, romaji: str) -> None:
    seal = f"（印「{legend}」）" if legend else "（印）"
    parts = read_text(f"露岳作{seal}").signature
    assert parts is not None
    assert parts["seal"].romaji == romaji


def test_the_transcription_is_shown_with_its_notes() -> None:
    found = read_text("花の色は／うつ■［や］に(尓)な(カ)")
    assert found.noted == "花の色は／うつ■［や］𛂋な(カ)"
    assert "as carved     花の色は／うつ■［や］に(爾)な(カ)\n" in reading_as_text(found)


def test_what_is_clear_and_in_one_column_needs_no_notes() -> None:
    assert read_text("花の色はうつりにけりな（花押）").noted == ""


def test_signs_one_is_not_sure_of_are_doubts() -> None:
    doubts = read_text("花(カ)の色は□つり［に］けりな").doubts
    assert [(doubt.first, doubt.last, doubt.why) for doubt in doubts] == [
        (0, 0, "the sign is doubtful"),
        (4, 4, "cannot be read"),
        (7, 7, "lost, and restored by an editor"),
    ]


def test_a_date_at_odds_with_itself_is_a_doubt() -> None:
    (doubt,) = read_text("嘉永六年甲寅").doubts
    assert doubt.why.startswith("the date contradicts itself; perhaps read 嘉永七年")


def test_a_settled_reading_gives_its_reason_once() -> None:
    t = notation.parse("武州住露岳作之")
    settled = Override(3, 4, "ろがく", "露岳", reason="family papers")
    found = reading.read(t, "signature", (settled,))
    told = [
        proposal for proposal in found.proposals if "settled: family papers" in proposal.reasons
    ]
    assert len(found.proposals) > 1
    assert told == [found.proposals[0]]


@pytest.mark.parametrize(
    ("text", "current"),
    [
        ("作（印）", "作（印）"),
        ("作（印「國山」）", "作（印「国山」）"),
        ("作（花押）", "作（花押）"),
    ],
)
def test_a_seal_in_current_forms_says_no_more_than_was_transcribed(text: str, current: str) -> None:
    assert read_text(text).normalised == current


MARKED = """
id = "M-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = "作（印「山」）□(暮カ)（花押）□"
box = [
  { sign = 1, x = 1, y = 2, width = 4, height = 5 },
  { sign = 2, x = 1, y = 8, width = 4, height = 5 },
  { sign = 3, x = 1, y = 14, width = 4, height = 5 },
  { sign = 4, x = 1, y = 20, width = 4, height = 5 },
  { sign = 5, x = 1, y = 26, width = 4, height = 5 },
]
[inscription.plate]
width = 14
height = 95
[inscription.source]
text = "作（印「山」）［　　］（花押）□"
"""


def test_annotations_of_single_signs_say_what_the_marks_are_and_keep_every_box() -> None:
    entry = entry_of(loads(MARKED))
    said = ["作", "（印「山」）", "暮(カ)", "（花押）", "□"]
    page = json.loads(entries_as_annotations([entry]))
    assert [item["body"]["value"] for item in page["items"]] == said
    assert boxes_of(json.dumps(page), "x", 20).signs == entry.inscriptions[0].inscription.boxes
    manifest = json.loads(entry_as_manifest(entry, Style()))
    (signs,) = (p for p in manifest["items"][0]["annotations"] if p["id"].endswith("/signs"))
    assert [item["body"]["value"] for item in signs["items"]] == said


def test_a_source_is_told_with_its_gaps_and_seals() -> None:
    entry = entry_of(loads(MARKED))
    assert "作（印「山」）［　　］（花押）□" in entry_as_markdown(entry, Style())
    assert "作（印「山」）［　　］（花押）□" in entries_as_lido([entry], Style())
    told = [row for row in entries_as_csv([entry], Style()).splitlines() if "M-1" in row]
    assert "（印「山」）" in told[0]


def test_differences_tell_a_seal_as_a_seal() -> None:
    found = loads(MARKED.replace("作（印「山」）［", "作（印「川」）［")).inscriptions[0]
    held = collate(found.transcription, found.source.transcription)
    groups = [group for group in held.groups if "山" in group.copy.text]
    assert groups
    assert [printed_sides(group, held) for group in groups] == [("（印「山」）", "（印「川」）")]
    assert "（印「山」）" in shown(held, 0, len(held.copy.signs))


@pytest.mark.parametrize(
    ("text", "is_told"), [("（印）", False), ("［　　］", False), ("□", True), ("（印）□", True)]
)
def test_the_key_tells_the_open_square_where_one_is_shown(text: str, is_told: bool) -> None:
    made = f'id = "K"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "{text}"\n'
    blocks = laid_out(entry_of(loads(made)), Style())
    (columns,) = [block for block in blocks if isinstance(block, Columns)]
    assert ("□: cannot be read" in columns.key) is is_told


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("さらま(カ)し□(をカ)", "さらま(カ)しを(カ)"),
        ("應［需］ゟ（花押）［　　］□", "応［需］より（花押）［　　］□"),
        ("國々の花(損)", "国国の花"),
    ],
)
def test_current_forms_are_marked_as_the_words_are(text: str, said: str) -> None:
    made = f'id = "K"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "{text}"\n'
    entry = entry_of(loads(made))
    assert f"- **In current forms:** {said}\n" in entry_as_markdown(entry, Style())
    assert "(カ)" not in entry.inscriptions[0].interpretation.normalised


def test_an_age_in_one_word_with_its_date_is_told_beside_it() -> None:
    text = "慶応元年閏五月廿八日行年六十有一翁"
    made = f'id = "K"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "{text}"\n'
    entry = entry_of(loads(made))
    told = re.findall("Date:.*", entry_as_markdown(entry, Style()))
    assert told[0].endswith("aged 61 (by calendar years, one at birth): born 1805")
    (line,) = re.findall("年紀:.*", entry_as_markdown(entry, Style(labels="ja")))
    assert line.endswith("61歳（数え年）：1805年生まれ")


def test_the_reading_of_tei_marks_a_conjecture() -> None:
    made = (
        'id = "K"\nkind = "kozuka"\n[[inscription]]\nplace = "back"\ntext = "春の夢さら(カ)まし"\n'
    )
    written = entries_as_tei([entry_of(loads(made))])
    reading = written.rpartition('type="textpart"')[2]
    assert '<unclear cert="low">ら</unclear>' in reading, reading


def test_a_seal_without_legend_may_stand_in_a_difference() -> None:
    held = collate(notation.parse("花の（印）色は"), notation.parse("花の山色は"))
    assert "（印）" in "".join(printed_sides(group, held)[0] for group in held.groups)


def test_old_kana_in_the_legend_of_a_seal_are_written_out_in_a_difference() -> None:
    held = collate(notation.parse("花の（印「𛂥」）"), notation.parse("花の"))
    told = "".join(printed_sides(group, held)[0] for group in held.groups)
    assert "（印「は(者)」）" in told
