"""Six plates as a curator argues them, and what the space account says of each.

The arguments were written down before the program was asked; each plate is invented. What is
tested is the verdict, the side on which the decisive measurement is told, and the rival.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from inscribe.collation import SpaceAccount, collate
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Plate
from inscribe.report.terminal import collation_as_text

WINTER = "やまさとは\nふゆそさひしさ\nまさりける\nひとめもくさも\nかれぬとおもへは"
SPRING = "春の夜の\n夢の浮橋\nとだえして\n峰にわかるる\n横雲の空"


class Argued(NamedTuple):
    """A plate, and what a curator says of each difference."""

    why: str
    copy: str
    source: str
    height: float
    ends: tuple[tuple[float, float], ...]
    verdicts: set[str]
    decisive: tuple[str, str]  # the side, and a word of the reason
    rival: str = ""


PLATES = (
    Argued(
        "Both columns go to the metal's edge, and the last four signs are missing: he ran out.",
        "やまさとはふゆそさひしさまさり\nけるひとめもくさもかれぬと",
        WINTER,
        96,
        ((3.2, 93.5), (3.0, 94.6)),
        {"forced"},
        ("for", "too little for a sign"),
    ),
    Argued(
        "Fifteen of 32 signs are missing above 56 mm of empty metal: nobody was short of room.",
        "やまさとはふゆそさひ\nくさもかれぬと",
        WINTER,
        96,
        ((4, 58), (4, 40)),
        {"unexplained"},
        ("against", "enough for 10 signs"),
    ),
    Argued(
        "Written to its foot, and 横 of 横雲 is missing: half a word is hardly given up, but with"
        " no room left nobody can rule it out.",
        "春の夜の夢の浮橋とだえして\n峰にわかるる雲の空",
        SPRING,
        96,
        ((3, 94), (3, 94.8)),
        {"undecided"},
        ("against", "missing in the middle"),
    ),
    Argued(
        "Ten signs saved all over a small face, every column to one foot line: he reckoned before"
        " he cut.",
        "山里は冬そさひし\nさまさりける人\nめ草かれぬと思",
        WINTER,
        50,
        ((3, 47.5), (3, 46.8), (3, 47)),
        {"forced", "eased"},
        ("for", "other places"),
    ),
    Argued(
        "From 花の to the next 花の, with 36 mm left: his eye skipped.",
        "花のちりける\nゆふくれの空",
        "花のいろは\nうつりにけりな\n花のちりける\nゆふくれの空",
        96,
        ((4, 60), (4, 58)),
        {"unexplained"},
        ("against", "same words"),
        "eye-skip",
    ),
    Argued(
        "夢 for ゆめ on a plate half empty: his way of writing, it saved him nothing he needed.",
        "春の夜の夢のうきはしと\nたえして",
        "春の夜の\nゆめのうきはし\nとたえして",
        96,
        ((4, 60), (4, 28)),
        {"unexplained"},
        ("against", "enough for 11 signs"),
    ),
)


def account(plate: Argued) -> SpaceAccount:
    columns = tuple(ColumnMeasure(top, bottom) for top, bottom in plate.ends)
    inscription = Inscription(
        "back plate", plate.copy, plate=Plate(14.5, plate.height), columns=columns
    )
    found = collate(inscription.transcription, parse(plate.source), inscription)
    assert found.space is not None
    return found.space


@pytest.mark.parametrize("plate", PLATES, ids=lambda plate: plate.why[:30])
def test_the_verdict_is_the_curators(plate: Argued) -> None:
    judged = account(plate).judgements
    assert judged
    assert {judgement.verdict for judgement in judged} <= plate.verdicts
    side, words = plate.decisive
    for judgement in judged[:1]:
        told = judgement.speaks_for if side == "for" else judgement.speaks_against
        assert any(words in reason for reason in told)
        assert plate.rival in judgement.rival


def test_what_all_differences_share_is_told_once() -> None:
    plate = PLATES[3]
    columns = tuple(ColumnMeasure(top, bottom) for top, bottom in plate.ends)
    inscription = Inscription("back plate", plate.copy, plate=Plate(14.5, 50), columns=columns)
    found = collate(inscription.transcription, parse(plate.source), inscription)
    said = collation_as_text(found, "plate", "print", columns=200)
    assert said.count("signs missing on the plate would have taken") == 1
    assert said.index("\nall differences") < said.index("\ndifference")


def said_of(copy: str, source: str, height: float, ends: tuple[tuple[float, float], ...]) -> str:
    columns = tuple(ColumnMeasure(top, bottom) for top, bottom in ends)
    inscription = Inscription("back plate", copy, plate=Plate(14.5, height), columns=columns)
    found = collate(inscription.transcription, parse(source), inscription)
    return collation_as_text(found, "plate", "print", columns=200)


def test_shorter_writings_of_one_kind_are_told_together_with_habit_as_their_rival() -> None:
    said = said_of(
        "月見れは千々に物\nこそ悲しけれ我\n身一の秋ならねと",
        "つき見れは\nちちにものこそ\nかなしけれ\nわか身ひとつの\n秋にはあらねと",
        52,
        ((3, 49), (3, 48.6), (3, 49.2)),
    )
    together = next(line for line in said.splitlines() if line.startswith("differences "))
    assert all(sign in together for sign in "月物悲我")
    assert said.count("or: habit") == 2  # 一, late on the plate, has a reason of its own
    assert said.count("or: other wording") == 1


@pytest.mark.parametrize(
    ("last", "is_heading"), [("雪そふりける", False), ("定家", True), ("秋の夕暮", False)]
)
def test_the_last_line_of_a_poem_is_no_name(last: str, is_heading: bool) -> None:
    copy = "さくらちるこのしたかせは\nさむからて空にしられぬ"
    source = f"さくらちる\nこのしたかせは\nさむからて\n空にしられぬ\n{last}"
    said = said_of(copy, source, 94, ((4, 70), (4, 62)))
    assert ("like a title or a name" in said) == is_heading
    assert ("it is the end of the text that is missing" in said) != is_heading


def test_a_drawn_out_column_is_seen_from_what_the_plate_holds_at_his_closest() -> None:
    said = said_of(PLATES[2].copy, PLATES[2].source, 96, PLATES[2].ends)
    assert "(21 signs, 26 where he writes closest)" in said
    assert "where he writes closest" not in said_of(
        PLATES[1].copy, PLATES[1].source, 96, PLATES[1].ends
    )
