"""The space account: measured plates, verdicts that follow the evidence, what is still wanted."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from itertools import pairwise
from pathlib import Path
from statistics import median

import pytest
from hypothesis import given, strategies as st

from inscribe.collation import Collation, Judgement, collate
from inscribe.collation.space.measures import measures_of
from inscribe.errors import InscribeError
from inscribe.notation import parse
from inscribe.record import ColumnMeasure, Inscription, Obstacle, Plate, dump, load, loads
from inscribe.report.drawing.plate import SCALE, plate_drawing
from inscribe.report.terminal import collation_as_text

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
    assert measures.column_length == 50  # his foot line is where the full column ends
    assert measures.capacity(5.0) == 20


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


SPRING = "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくものそら"
SKIPPED = "見わたせば花も紅葉もなかりけり\n浦のとまやの秋の夕ぐれの月を見る"


def last(copy: str, source: str, *columns: tuple[float, float], **more: object) -> Judgement:
    """Return the judgement on the last difference of a plate of 96 mm."""
    inscription = plate(copy, *columns)
    found = collate(inscription.transcription, parse(source), inscription, extent="whole")
    assert found.space is not None
    return found.space.judgements[-1]


def test_forced_the_end_is_missing_where_the_metal_ends() -> None:
    found = last(
        "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくもの", SPRING, (3, 94), (3, 95)
    )
    assert found.verdict == "forced"
    assert found.chance is not None
    assert found.chance > 0.9
    assert any("the end of the text" in reason for reason in found.speaks_for)


def test_eased_a_tighter_hand_had_found_room() -> None:
    copy = "春のよの夢のうきはしとたえして\nみねにわかるるよこ雲のそら"
    found = last(copy, SPRING, (3, 94), (3, 88.5))
    assert found.verdict == "eased"
    assert any("other place" in reason for reason in found.speaks_for)


def test_undecided_a_plate_written_to_its_foot_lacks_a_word_in_mid_text() -> None:
    copy = "はるのゆめのうきはしとたえして\nみねにわかるるよこくものそら"
    found = last(copy, SPRING, (3, 95), (3, 95.3))
    assert found.verdict == "undecided"
    assert any("too little for a sign" in reason for reason in found.speaks_for)
    assert any("in the middle of the text" in reason for reason in found.speaks_against)


def test_unexplained_half_the_text_is_skipped_above_an_empty_plate() -> None:
    found = last("はるのよのゆめの\nよこくものそら", SPRING, (5, 45), (5, 40))
    assert found.verdict == "unexplained"
    assert found.chance is not None
    assert found.chance < 0.1


def test_unmeasured_says_what_to_measure_and_no_chance() -> None:
    inscription = Inscription("back plate", "はるのよの")
    found = collate(inscription.transcription, parse("はるのよのゆめ"), inscription)
    assert found.space is not None
    (judgement,) = found.space.judgements
    assert (judgement.verdict, judgement.weight, judgement.chance) == ("unmeasured", None, None)
    assert judgement.evidence == found.space.wanted


def test_a_skip_from_one_word_to_the_same_word_has_a_rival_explanation() -> None:
    first = "はるのよのゆめのうきはしとたえして"
    copy = f"{first}\nみねのはなのそらを見る"
    ends = (3.0, 94.0), (3.0, 95.0)
    found = last(copy, f"{first}\nみねのゆきのはなのそらを見る", *ends)
    without = last(copy, f"{first}\nみねのゆきもはなのそらを見る", *ends)
    assert "eye-skip" in found.rival
    assert without.rival == ""
    assert found.weight is not None
    assert without.weight is not None
    assert found.weight < without.weight


def test_spelling_that_saves_no_sign_has_no_verdict() -> None:
    inscription = plate("春の夜のゆめ", (3, 95))
    found = collate(inscription.transcription, parse("春の夜の夢"), inscription)
    assert found.differences
    assert found.space is not None
    assert found.space.judgements == ()


def test_all_that_is_missing_counts_together() -> None:
    source = SPRING
    one = last(
        "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくもそら", source, (3, 94), (3, 87)
    )
    many = last(
        "春のよの夢のうき橋とたえして\nみねにわかるるよこくもそら", source, (3, 94), (3, 87)
    )
    assert one.weight is not None
    assert many.weight is not None
    assert many.weight > one.weight


def test_a_seal_at_the_foot_leaves_no_room_below_the_last_sign() -> None:
    copy = "はるのよのゆめのうきはしとたえして\nみねにわかるるよこくもの"
    bare = plate(copy, (3, 94), (3, 75))
    sealed = Inscription(
        "back plate",
        copy,
        plate=bare.plate,
        columns=bare.columns,
        takes_room=(Obstacle(1, 76, 94, "seal"),),
    )
    found = []
    for inscription in (bare, sealed):
        account = collate(inscription.transcription, parse(SPRING), inscription).space
        assert account is not None
        found.append(account)
    assert [account.judgements[-1].verdict for account in found] == ["unexplained", "forced"]
    assert any("to the seal" in reason for reason in found[1].judgements[-1].speaks_for)
    assert found[0].room is not None
    assert found[1].room == pytest.approx(found[0].room - 18)


@given(missing=st.integers(0, 13), left=st.floats(0, 60))
def test_less_room_never_speaks_against_space(missing: int, left: float) -> None:
    end = "みねにわかるるよこくものそら"
    copy = f"はるのよのゆめのうきはしとたえして\n{end[: max(4, 14 - missing)]}"
    if missing:
        roomy, tight = (last(copy, SPRING, (3, 94), (3, 95 - mm)) for mm in (left + 2, 0.5))
        assert roomy.weight is not None
        assert tight.weight is not None
        assert tight.weight >= roomy.weight


RECORD = """
id = "A-1"
kind = "kozuka"
[[inscription]]
place = "back plate"
text = "はるのよの"
[inscription.plate]
width = 14.5
height = 95.4
{tolerance}
[[inscription.column]]
top = 3
bottom = {bottom}
[[inscription.takes_room]]
column = 1
from = 70.5
to = 80
what = "seal"
"""


@pytest.mark.parametrize(
    ("bottom", "tolerance", "accepted"),
    [
        (95.5, "", True),
        (96.5, "", False),
        (96.3, "tolerance = 1", True),
        (95.6, "tolerance = 0", False),
    ],
)
def test_lengths_may_err_by_the_tolerance(bottom: float, tolerance: str, accepted: bool) -> None:
    text = RECORD.format(bottom=bottom, tolerance=tolerance)
    if accepted:
        record = loads(text)
        assert loads(dump(record)) == record
        assert record.inscriptions[0].takes_room == (Obstacle(0, 70.5, 80.0, "seal"),)
    else:
        with pytest.raises(InscribeError, match="below the plate"):
            loads(text)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("column = 1", "column = 2", "no column 2"),
        ("to = 80", "to = 60", "ends above its beginning"),
        ("from = 70.5", "from = 3", "covers all the writing"),
        ("to = 80", "to = 99", "below the plate"),
    ],
)
def test_what_takes_room_must_be_on_the_plate(old: str, new: str, said: str) -> None:
    text = RECORD.format(bottom=60, tolerance="").replace(old, new)
    with pytest.raises(InscribeError, match=said):
        loads(text)


def test_the_drawing_sets_what_is_missing_below_the_last_column_at_his_pitch() -> None:
    found = collated("DEMO-003")
    assert found.space is not None
    assert found.space.median_pitch is not None
    drawn = plate_drawing(load(EXAMPLES / "DEMO-003.toml").inscriptions[0], found)
    texts = [e for e in ET.fromstring(drawn).iter() if e.tag.endswith("text")]
    ghosts = [e for e in texts if e.get("class") == "ghost"]
    signs = [e for e in texts if e.get("class") == "sign"]
    assert [e.text for e in ghosts] == ["た", "え", "て"]
    assert {e.get("x") for e in ghosts} == {signs[-1].get("x")}
    heights = [float(e.get("y", "")) / SCALE for e in (signs[-1], *ghosts)]
    for upper, lower in pairwise(heights):
        assert lower - upper == pytest.approx(found.space.median_pitch, abs=0.05)


def test_the_plate_is_told_before_the_differences() -> None:
    found = collated("DEMO-003")
    said = collation_as_text(found, "copy", "source", columns=200)
    plate_at = said.index("The text wants 25 signs; at this carver's")
    assert plate_at < said.index("difference 1, たえて: space does not explain it (very unlikely")
    assert "against: " in said


def test_the_end_of_a_text_is_no_skip_though_it_ends_like_what_stands_before_it() -> None:
    source = "はるのよのゆめのうきはしとたえして\nみねのはなのそらとゆきのそら"
    found = last("はるのよのゆめのうきはしとたえして\nみねのはなのそら", source, (3, 94), (3, 95))
    assert (found.verdict, found.rival) == ("forced", "")


def test_an_eye_may_skip_from_the_very_first_words() -> None:
    found = last("はなのゆきをみる", "はなのそらはなのゆきをみる", (3, 94))
    assert found.rival.endswith("from one はなの to the next")


def test_an_eye_may_skip_late_in_a_long_text() -> None:
    before = "いろはにほへとちりぬるをわかよたれそつねならむうゐのおくやまけふこえて" * 4
    copy = f"{before}みねのはなのそらを見る"
    columns = [copy[at : at + 24] for at in range(0, len(copy), 24)]
    source = f"{before}みねのゆきのはなのそらを見る"
    found = last("\n".join(columns), source, *[(3.0, 94.0)] * len(columns))
    assert "eye-skip" in found.rival


def test_what_is_lost_in_mid_text_is_no_other_place_where_signs_are_saved() -> None:
    found = last("はるのよのゆめのとたえして\nみねによこくものそら", SPRING, (3, 94), (3, 95))
    assert not any("other place" in said for said in (*found.speaks_for, *found.speaks_against))
    dropped = "はるよのゆめのうきはしとたえして\nみねにわかるるよこくもの"
    told = last(dropped, SPRING, (3, 94), (3, 95)).speaks_for
    assert "he saves signs in one other place of the plate" in told


def test_a_last_column_of_four_signs_tells_how_close_it_is_and_one_of_three_does_not() -> None:
    first = "はるのよのゆめのうきはしとたえして"
    four = last(f"{first}\nみねにわ", SPRING, (3, 94), (3, 18))
    three = last(f"{first}\nみねに", SPRING, (3, 94), (3, 14))
    assert any("30% closer" in said for said in four.speaks_for)
    assert not any("closer" in said for said in three.speaks_for)


def test_what_is_signed_below_the_text_takes_room_and_a_heading_above_it_does_not() -> None:
    columns = (3.0, 80.0), (3.0, 70.0)
    signed = plate(f"{SPRING}\n露岳書之", *columns, (40.0, 60.0))
    headed = plate(f"春夜詠\n{SPRING}", (3.0, 20.0), *columns)
    below = collate(signed.transcription, parse(SPRING), signed).space
    above = collate(headed.transcription, parse(SPRING), headed).space
    assert below is not None
    assert above is not None
    assert (below.beside, above.beside) == (4, 3)
    assert above.room == pytest.approx(3 * 90.0)
    pitch = median(column.pitch or 0.0 for column in below.columns)
    assert below.room == pytest.approx(3 * 90.0 - 4 * pitch)


def test_of_two_lines_the_first_may_be_a_heading() -> None:
    source = "春夜\nはるのよのゆめのうきはしとたえしてみねにわかるる"
    found = last("はるのよのゆめのうきはし\nとたえしてみねにわかるる", source, (3, 94), (3, 95))
    assert "a whole line like a title or a name is missing" in found.speaks_for
