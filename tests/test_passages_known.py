"""What is known of a division: settled passages, a source named by its id, worn signs, wishes.

The texts are invented, or verse from before 1600.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe.notation import parse
from inscribe.reading import read, read_text
from inscribe.record import SettledPassage
from inscribe.restoring import restore
from inscribe.sources import Library, text_of

POEM = "春の夜の夢の浮橋とたえして／峯にわかるゝ横雲の空"


def doubts(text: str, *settled: tuple[int, int, str]) -> list[str]:
    passages = [SettledPassage(first, last, kind) for first, last, kind in settled]  # type: ignore[arg-type]
    return [doubt.why for doubt in read(parse(text), passages=passages).doubts]


@pytest.mark.parametrize(
    ("kind", "odd"),
    [
        ("seal", "there is no seal in it"),
        ("date", "it is no date"),
        ("chinese", "it has kana"),
        ("signature", "most of it is kana"),
    ],
)
def test_a_settled_kind_that_cannot_be_is_told_and_kept(kind: str, odd: str) -> None:
    text = "はなのいろはうつりにけりないたつらに／蓼径書"
    settled = [SettledPassage(0, 17, kind)]  # type: ignore[arg-type]
    found = read(parse(text), passages=settled)
    assert f"settled as {kind}, although {odd}" in [doubt.why for doubt in found.doubts]
    assert found.passages[0].kind == kind


def test_a_settled_kind_that_may_be_is_not_doubted() -> None:
    text = f"{POEM}／蓼径書／文化七庚午年三月"
    told = doubts(text, (0, 22, "verse"), (23, 25, "signature"), (26, 33, "date"))
    assert not [why for why in told if "settled" in why]


def test_settled_passages_that_overlap_are_told() -> None:
    told = doubts(f"{POEM}／蓼径書", (0, 22, "verse"), (20, 25, "signature"))
    assert "the settled passage (signature) overlaps the one before it and is left aside" in told


def test_a_sign_that_settled_passages_leave_out_is_told() -> None:
    told = doubts(f"{POEM}／蓼径書", (0, 21, "verse"), (23, 25, "signature"))
    assert "空 stands in no settled passage" in told


def test_a_source_named_by_its_id_gives_its_words(tmp_path: Path) -> None:
    from inscribe.record import CopiedText
    from inscribe.sources import SourceText

    file = tmp_path / "sources.sqlite"
    with Library(file, create=True) as library:
        library.add([(SourceText("shinkokin-38", (POEM.replace("／", ""),)), ())])
    assert text_of(CopiedText(id="shinkokin-38"), file) == POEM.replace("／", "")
    assert text_of(CopiedText(id="shinkokin-38"), tmp_path / "none.sqlite") == ""
    assert text_of(None, file) == ""


def test_a_worn_sign_is_weighed_as_its_passage() -> None:
    found = restore(parse("春の夜の夢の浮橋とたえして／峯にわかるゝ横雲の□／武州住鷺坂苗道刻□"))
    poem, signature = found.lacunae
    assert poem.missing == 2
    assert signature.missing is None
    assert signature.candidates[0].text == "之"
    assert signature.candidates[0].evidence[0].kind == "formula"


@pytest.mark.parametrize("text", ["花の色はうつりにけりな", "しのふれと色に出にけり"])
def test_the_opening_of_a_poem_is_verse(text: str) -> None:
    assert read_text(text).register == "verse"


def test_a_precept_as_long_is_prose() -> None:
    assert read_text("刀は抜かぬを手柄とす").register == "prose"


def test_a_name_split_over_two_faces_is_one() -> None:
    found = read_text("蕉」磯")
    assert [(each.first, each.last) for each in found.passages] == [(0, 1)]
    assert found.proposals[0].romaji == "Shōki"


def test_a_poet_a_writer_and_a_carver_are_three() -> None:
    text = "月に柄をさしたらはよき団かな／宗鑑蓼磯書／鶉野千鞆刻"
    found = read_text(text).passages
    assert [(each.kind, each.text, each.role) for each in found[1:]] == [
        ("signature", "宗鑑", "composed"),
        ("signature", "蓼磯書", "wrote"),
        ("signature", "鶉野千鞆刻", "carved"),
    ]


def test_a_title_before_a_signature_is_a_heading() -> None:
    kinds = [each.kind for each in read_text("寒山拾得図／於京都蓼原種苗刻之").passages]
    assert kinds == ["heading", "signature"]


@pytest.mark.parametrize(
    ("text", "romaji"),
    [
        ("蓼原種苗刻之／應霧坂氏需", "motome ni ōzu"),  # a sentence of its own
        ("應霧坂氏需蓼原種苗刻之", "motome ni ōjite"),  # it goes on
        ("應需", "motome ni ōjite"),  # all that is carved hangs in the air
    ],
)
def test_a_wish_ends_where_nothing_follows(text: str, romaji: str) -> None:
    assert romaji in read_text(text).proposals[0].romaji
