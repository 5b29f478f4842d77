"""Measuring from photographs: what is proposed, what is refused, and what people put right."""

from __future__ import annotations

from itertools import product
from typing import Any

import numpy as np
import pytest
from drawn_plates import HEIGHT, TEXT, WIDTH, Drawn, photographed
from hypothesis import given, settings, strategies as st

pytest.importorskip("cv2")

from inscribe.errors import InputError
from inscribe.measuring import Asked, Measured, Picture, measure
from inscribe.measuring.cutting import ROWS, USUAL, ColumnInk, _Table, cells
from inscribe.measuring.model import Cut
from inscribe.measuring.rhythm import Expected
from inscribe.measuring.view import View
from inscribe.record import Inscription, Plate, SignBox

PLATE = Plate(WIDTH, HEIGHT)


def measured(drawn: Drawn, text: str = TEXT, **asked: Any) -> Measured:
    wanted = Asked(**{"plate": PLATE, **asked})
    return measure(Picture("it.png", drawn.pixels), Inscription("back", text), wanted)


def worst(found: Measured, drawn: Drawn) -> float:
    sides = np.array([sign[1:5] for sign in found.signs])
    return float(np.abs(sides - np.array(drawn.boxes)).max())


@pytest.mark.parametrize("askew", [0.0, 0.05])
@pytest.mark.parametrize("are_given", [True, False])
def test_signs_are_found_where_they_were_drawn(askew: float, are_given: bool) -> None:
    drawn = photographed(askew=askew)
    found = measured(drawn, corners=drawn.corners if are_given else None)
    assert [sign.sign for sign in found.signs] == list(range(7))
    assert worst(found, drawn) < 0.55


def test_columns_have_their_ends_and_their_pitch() -> None:
    found = measured(photographed())
    assert [column.signs for column in found.columns] == [3, 4]
    for column in found.columns:
        length = 4.2 * (1 + 1.3 * (column.signs - 1))
        assert column.top == pytest.approx(4.0, abs=0.3)
        assert column.bottom == pytest.approx(4.0 + length, abs=0.3)
        assert column.pitch == pytest.approx(length / column.signs, rel=0.03)
        assert 0 < column.error < 0.5


def test_the_scale_gives_the_size_of_the_plate() -> None:
    drawn = photographed()
    found = measured(drawn, plate=None, corners=drawn.corners, scale=14.0)
    assert found.plate.width == pytest.approx(WIDTH, abs=0.05)
    assert found.plate.height == pytest.approx(HEIGHT, abs=0.05)
    assert worst(found, drawn) < 0.55


def test_signs_of_an_editor_are_not_looked_for() -> None:
    drawn = photographed()
    found = measured(drawn, text="夢見花〔ママ〕\n山川月日".replace("〔ママ〕", "(ママ)"))
    assert len(found.signs) == 7
    inscription = Inscription("back", "夢見花\n山川<や>月日", "leiden")
    found = measure(Picture("it.png", drawn.pixels), inscription, Asked(PLATE))
    assert [sign.sign for sign in found.signs] == [0, 1, 2, 3, 4, 6, 7]


REFUSED = [
    ("scale is missing", {}, {"plate": None}, TEXT),
    ("scale is missing", {}, {"plate": None, "scale": 14.0}, TEXT),
    ("not whole", {}, {"corners": ((-9, 56), (252, 56), (252, 616), (56, 616))}, TEXT),
    ("do not go round", {}, {"corners": ((252, 56), (56, 56), (252, 616), (56, 616))}, TEXT),
    ("blurred", {"blur": 0.8}, {}, TEXT),
    ("not flat", {"bow": 0.06}, {}, TEXT),
    ("burnt out", {"glare": 0.6}, {"corners": ((56, 56), (252, 56), (252, 616), (56, 616))}, TEXT),
    ("pixels per mm", {"scale": 4.0}, {}, TEXT),
    ("picture shows more", {}, {}, TEXT.replace("\n", "")),
    ("picture shows fewer", {}, {}, "夢見花\n山川\n月日"),
    ("no face 2", {}, {"face": 1}, TEXT),
]


@pytest.mark.parametrize(("said", "how", "asked", "text"), REFUSED)
def test_a_picture_that_cannot_be_measured_is_refused(
    said: str, how: dict[str, Any], asked: dict[str, Any], text: str
) -> None:
    with pytest.raises(InputError, match=said) as caught:
        measured(photographed(**how), text, **asked)
    assert caught.value.hint or "face" in said


@pytest.mark.parametrize("side", ["top", "bottom"])
def test_a_plate_that_runs_out_of_the_picture_is_not_whole(side: str) -> None:
    drawn = photographed()
    rows = slice(140, None) if side == "top" else slice(None, -140)
    cut = replace_pixels(drawn, np.ascontiguousarray(drawn.pixels[rows]))
    with pytest.raises(InputError, match=f"not whole.*{side}"):
        measured(cut)


def test_bare_metal_has_no_strokes() -> None:
    drawn = photographed("", top=90)
    with pytest.raises(InputError, match="no strokes"):
        measured(drawn)


def test_cloth_without_a_plate_has_no_outline() -> None:
    cloth = np.random.default_rng(2).normal(120, 9, (600, 300, 3)).clip(0, 255)
    with pytest.raises(InputError, match="no outline"):
        measured(replace_pixels(photographed(), cloth.astype(np.uint8)))


def replace_pixels(drawn: Drawn, pixels: Any) -> Drawn:
    return drawn._replace(pixels=pixels)


def test_a_cut_is_kept_and_the_rest_goes_by_it() -> None:
    drawn = photographed()
    free = measured(drawn)
    held = measured(drawn, cuts={1: Cut(10.5, 12.0)})
    assert held.signs[1].y >= 10.4
    assert held.signs[1].y + held.signs[1].height <= 12.1
    for one, other in zip(held.signs[3:], free.signs[3:], strict=True):
        assert np.abs(np.array(one.box) - other.box).max() < 0.15


def test_boxes_of_a_person_are_taken_as_they_are() -> None:
    drawn = photographed()
    box = SignBox(2, 9.0, 15.0, 3.0, 3.5)
    found = measured(drawn, boxes=(box,))
    assert found.signs[2].box == box
    assert found.signs[2].is_given
    assert found.signs[2].certainty == 1.0
    assert not found.signs[1].is_given
    assert found.columns[0].bottom == pytest.approx(18.5, abs=0.3)


expectations = st.builds(
    Expected,
    st.floats(0.3, 2.5),
    st.floats(0.2, 0.7),
    st.just(0.9),
    st.just(()) | st.just((0.125,) * 64),
    st.booleans(),
)


@given(
    st.lists(st.floats(0, 1.3), min_size=60, max_size=120),
    st.lists(expectations, min_size=1, max_size=4),
    st.integers(0, 40),
)
@settings(max_examples=30)
def test_cells_follow_one_another(rows: list[float], signs: list[Expected], width: int) -> None:
    pixels = np.multiply.outer(np.outer(rows, np.linspace(0, 1, width)), [0.3, 0.7])
    (found,) = cells([(ColumnInk(np.array(rows), pixels if width else None), signs)])
    assert len(found) == len(signs)
    ends = [end for cell in found for end in (cell.top, cell.bottom)]
    assert ends == sorted(ends)
    assert ends[0] >= 0
    assert ends[-1] <= len(rows) / ROWS
    assert all(cell.top < cell.bottom for cell in found)
    assert all(0 <= c.sure_top <= 1 and 0 <= c.sure_bottom <= 1 for c in found)


@given(st.lists(st.floats(0, 1.3), min_size=8, max_size=11), st.integers(1, 2))
@settings(max_examples=25)
def test_the_cheapest_telling_is_the_cheapest_of_all(rows: list[float], count: int) -> None:
    signs = [Expected(1.0, 0.3)] * count
    table = _Table(ColumnInk(np.array(rows)), signs, 4.0, {}, USUAL)
    tops, bottoms, cost = table.cheapest()
    price = table.sign_prices[signs[0]]
    all_costs = []
    for ends in product(range(len(rows) + 1), repeat=2 * count):
        pairs = list(zip(ends[::2], ends[1::2], strict=True))
        total = USUAL.outside * (sum(rows[: ends[0]]) + sum(rows[ends[-1] :])) / ROWS
        if any(b - a not in table.sizes for a, b in pairs):
            continue
        if any(ends[i + 1] - ends[i] not in table.gaps for i in range(1, len(ends) - 1, 2)):
            continue
        total += sum(price[b, b - a - 1] for a, b in pairs)
        total += sum(
            table.gap_prices[ends[i + 1], ends[i + 1] - ends[i]] for i in range(1, len(ends) - 1, 2)
        )
        all_costs.append(total)
    assert cost == pytest.approx(min(all_costs))
    assert len(tops) == len(bottoms) == count


@given(
    st.lists(st.tuples(st.floats(0, 14), st.floats(0, 90)), min_size=1, max_size=4),
    st.floats(-0.02, 0.04),
)
def test_pixels_and_mm_are_each_others_reverse(
    points: list[tuple[float, float]], barrel: float
) -> None:
    corners = ((130.0, 110.0), (420.0, 90.0), (450.0, 1900.0), (100.0, 1880.0))
    view = View(corners, 14.0, 90.0, (560, 2000), barrel)
    there = view.to_pixels(points)
    assert np.abs(view.to_mm(there) - np.array(points)).max() < 0.01
    assert np.abs(view.to_pixels([[0, 0], [14, 90]]) - np.array(corners)[[0, 2]]).max() < 0.1


def test_measuring_the_same_twice_says_the_same() -> None:
    drawn = photographed(askew=0.03)
    first = measured(drawn)
    again = measured(drawn, corners=first.corners, barrel=first.barrel)
    assert again == first
