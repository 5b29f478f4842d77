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
    assert said.index("all differences") < said.index("difference 1,")
