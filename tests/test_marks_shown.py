"""What is no word: seals, gaps, worn signs, and the transcriber's notes of how sure a sign is."""

from __future__ import annotations

import pytest

from inscribe import notation, reading
from inscribe.reading import read_text
from inscribe.record import Override
from inscribe.report.terminal.reading import reading_as_text


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("（印「寿」）", "a seal alone"),
        ("（花押）", "marks alone: they have no words"),
        ("□□（花押）", "no word can be read"),
        ("［　　］", "nothing can be read"),
        ("□□□", "nothing can be read"),
        ("武州住□□作", "every legible word is a usual one of signatures"),
    ],
)
def test_nothing_is_said_of_words_that_are_not_there(text: str, reason: str) -> None:
    assert read_text(text).proposals[0].reasons == (reason,)


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
