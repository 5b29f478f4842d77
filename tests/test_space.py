"""The space account: measured plates, verdicts that follow the evidence, what is still wanted."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from inscribe.collation import collate
from inscribe.collation.model import Collation
from inscribe.collation.space.measures import measures_of
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Plate, load

EXAMPLES = Path(__file__).parent.parent / "examples"


def collated(name: str) -> Collation:
    inscription = load(EXAMPLES / f"{name}.toml").inscriptions[0]
    assert inscription.source is not None
    return collate(inscription.transcription, inscription.source.transcription, inscription)


def plate(text: str, *columns: tuple[float, float], height: float = 96.0) -> Inscription:
    measured = tuple(ColumnMeasure(top, bottom) for top, bottom in columns)
    return Inscription("back plate", text, plate=Plate(14.5, height), columns=measured)


def verdict(copy: str, source: str, *columns: tuple[float, float]) -> tuple[str, float | None]:
    inscription = plate(copy, *columns)
    found = collate(inscription.transcription, parse(source), inscription)
    assert found.space is not None
    judgement = found.space.judgements[-1]
    return judgement.verdict, judgement.weight


def test_words_lost_at_the_end_of_a_full_plate_are_explained_by_space() -> None:
    found = collated("DEMO-002")
    assert found.space is not None
    last = found.space.judgements[-1]
    assert found.differences[last.difference].kind == "omitted"
    assert last.verdict == "forced"
    assert last.weight is not None
    assert last.weight > 10
    assert any("mm" in line for line in last.evidence)


def test_a_word_lost_in_the_middle_of_a_roomy_plate_is_not() -> None:
    found = collated("DEMO-003")
    assert found.space is not None
    judgement = next(
        j for j in found.space.judgements if found.differences[j.difference].kind == "omitted"
    )
    assert judgement.verdict == "unexplained"
    assert judgement.weight is not None
    assert judgement.weight < 0.5


def test_the_same_loss_weighs_more_the_fuller_the_plate() -> None:
    source = "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくものそら"
    copy = "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくもの"
    roomy = verdict(copy, source, (5, 80), (5, 60))
    full = verdict(copy, source, (5, 91), (5, 91))
    assert roomy[0] == "unexplained"
    assert full[1] is not None
    assert roomy[1] is not None
    assert full[1] > roomy[1]


def test_without_measurements_it_says_what_to_measure() -> None:
    inscription = Inscription("back plate", "はるのよの")
    found = collate(inscription.transcription, parse("はるのよのゆめ"), inscription)
    assert found.space is not None
    assert {j.verdict for j in found.space.judgements} == {"unmeasured"}
    assert any("plate" in line for line in found.space.wanted)
    assert any("column 1" in line for line in found.space.wanted)


def test_capacity_counts_columns_at_the_carvers_pitch() -> None:
    inscription = plate("一二三四五六七八九十\n一二三四五", (5, 55), (5, 30), height=65)
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    assert measures.pitches == (5.0, 5.0)
    assert measures.column_length == 55
    assert measures.capacity(5.0) == 22


def test_texts_that_are_no_inscription_have_no_space_account() -> None:
    assert collate(parse("はな"), parse("はなの")).space is None


@given(
    signs=st.lists(st.integers(1, 20), min_size=1, max_size=5),
    height=st.floats(40, 120),
    share=st.floats(0.2, 1.0),
)
def test_room_never_grows_along_the_text(signs: list[int], height: float, share: float) -> None:
    text = "\n".join("字" * n for n in signs)
    inscription = plate(text, *[(5.0, 5.0 + (height - 6) * share) for _ in signs], height=height)
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    rooms = [measures.room_after(c, s) for c, n in enumerate(signs) for s in range(n)]
    assert all(a >= b - 1e-6 for a, b in pairwise(rooms))
    tight, wide = min(measures.pitches), max(measures.pitches)
    assert measures.capacity(tight) >= measures.capacity(wide)


@pytest.mark.parametrize("boxes", [True, False])
def test_boxes_serve_where_columns_were_not_measured(boxes: bool) -> None:
    from inscribe.record import SignBox

    places = tuple(SignBox(i, 5, 5 + 5 * i, 4, 4.5) for i in range(4)) if boxes else ()
    inscription = Inscription("back plate", "一二三四", plate=Plate(14, 60), boxes=places)
    measures = measures_of(inscription.transcription, inscription)
    assert (measures is not None) == boxes
    if measures:
        assert measures.columns[0].length == pytest.approx(19.5)


def test_an_excerpt_needs_no_more_room_than_its_part_of_the_source() -> None:
    source = "春すぎて夏来にけらし白妙の衣ほすてふ天の香具山"
    inscription = plate("衣ほすてふ", (2.0, 60.0))
    found = collate(inscription.transcription, parse(source), inscription)
    assert found.space is not None
    assert (found.window, found.space.need) == ((13, 18), 5)
    whole = collate(inscription.transcription, parse(source), inscription, extent="whole")
    assert whole.space is not None
    assert whole.space.need == 23
