"""Parts of measuring by themselves: glare, the lens, boxes of worn signs, how square signs are."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from drawn_plates import HEIGHT, WIDTH, photographed

pytest.importorskip("cv2")

from inscribe.measuring import Picture, boxes, findings, glare, lens, strokes
from inscribe.measuring.cutting import SignExtent, cells
from inscribe.measuring.rhythm import Expected
from inscribe.measuring.strokes import PER_MM
from inscribe.measuring.view import View, barrelled

SIZE = 4 * PER_MM  # pixels of a sign


def written(count: int) -> Any:
    """Return the ink of a plate of 14 x 60 mm with one column of signs, each a frame."""
    ink = np.zeros((60 * PER_MM, 14 * PER_MM), np.float32)
    for place in range(count):
        top, left = round((3 + 4.6 * place) * PER_MM), 5 * PER_MM
        for row in (top, top + SIZE // 2, top + SIZE - 4):
            ink[row : row + 4, left : left + SIZE] = 1
        for column in (left, left + SIZE - 4):
            ink[top : top + SIZE, column : column + 4] = 1
    return ink


def seen(ink: Any, *burnt: slice) -> Any:
    """Return overexposed metal on which strokes are dark, but where glare lies."""
    pixels = np.repeat((255 - 160 * ink).astype(np.uint8)[..., None], 3, 2)
    for rows in burnt:
        pixels[rows] = 255
    return pixels


def test_bright_metal_hides_no_dark_strokes() -> None:
    ink = written(12)
    assert glare.burnt(seen(ink)) > 0.7
    assert glare.hidden(seen(ink), ink, [12]) == 0


@pytest.mark.parametrize(("first", "last"), [(0, 27), (20, 45), (33, 60)])
def test_glare_across_the_writing_hides_it(first: int, last: int) -> None:
    band = slice(first * PER_MM, last * PER_MM)
    ink = written(12)
    ink[band] = 0
    assert glare.hidden(seen(ink, band), ink, [12]) > 0.3


def test_bright_metal_below_a_short_text_is_no_glare() -> None:
    ink = written(5)
    assert glare.hidden(seen(ink), ink, [5]) == 0


def faint_edges(barrel: float) -> tuple[Any, Any]:
    """Return a plate whose long edges show here and there, and its corners in the picture."""
    size = (400, 900)
    rng = np.random.default_rng(3)
    rim = np.array([[50.0, 40.0], [350.0, 40.0], [350.0, 860.0], [50.0, 860.0]])
    rows, columns = np.mgrid[: size[1], : size[0]].astype(np.float64)
    picture = np.full((size[1], size[0]), 110.0)
    along = np.linspace(40, 860, 900)
    for side, sign in ((50.0, 1), (350.0, -1)):
        curve = barrelled(np.stack([np.full(900, side), along], -1), size, barrel)
        edge = np.interp(rows[:, 0], curve[:, 1], curve[:, 0])[:, None]
        shown = 40 * (np.sin(rows / 40 + sign) > -0.2)
        picture += shown / (1 + np.exp(-sign * (columns - edge) * 6))
    picture += rng.normal(0, 0.8, picture.shape)
    pixels = np.repeat(np.clip(picture, 0, 255).astype(np.uint8)[..., None], 3, 2)
    return pixels, barrelled(rim, size, barrel)


@pytest.mark.parametrize("barrel", [0.0, 0.012, 0.03])
def test_faint_long_sides_tell_how_the_lens_bends_them(barrel: float) -> None:
    found = lens.likeliest(lens.along_long_sides(*faint_edges(barrel)))
    assert found == pytest.approx(barrel, abs=0.006)


def test_a_worn_sign_fills_what_the_others_leave_free() -> None:
    ink = written(3)
    ink[round(7.6 * PER_MM) : round(11.7 * PER_MM)] *= 0.02
    told = [SignExtent(3 + 4.6 * n, 7 + 4.6 * n, 0.9, 0.9) for n in range(3)]
    hopes = [Expected(1, 0.2), Expected(1, 0.2, shows=False), Expected(1, 0.2)]
    first, worn, last = boxes.drawn(ink, (0, ink.shape[1]), told, hopes)
    assert first.shows
    assert last.shows
    assert not worn.shows
    middles = [x + width / 2 for x, _, width, _ in (first.sides, worn.sides)]
    assert middles[1] == pytest.approx(middles[0], abs=0.1)
    above, below = first.sides[1] + first.sides[3], last.sides[1]
    assert above < worn.sides[1] < above + 0.6
    assert below - 0.6 < worn.sides[1] + worn.sides[3] < below
    assert worn.sides[2] == pytest.approx(worn.sides[3], rel=0.1)


def test_ink_that_is_only_a_crumb_does_not_shrink_the_box() -> None:
    ink = np.zeros((10 * PER_MM, 8 * PER_MM), np.float32)
    ink[PER_MM : PER_MM + 8, 2 * PER_MM : 5 * PER_MM] = 1
    (found,) = boxes.drawn(ink, (0, ink.shape[1]), [SignExtent(1, 5, 0.9, 0.9)], [Expected(1, 0.2)])
    assert found.sides[1::2] == (1, 4)


@pytest.mark.parametrize("grain", [4.0, 8.0, 12.0])
def test_grain_all_over_the_metal_is_no_ink(grain: float) -> None:
    drawn = photographed("夢見\n山川", grain=grain)
    view = View(drawn.corners, WIDTH, HEIGHT, drawn.pixels.shape[1::-1])
    shown = strokes.ink(strokes.energy(view.rectified(drawn.pixels, PER_MM)))
    writing = shown[4 * PER_MM : 14 * PER_MM].mean()
    assert writing > 0.02
    assert shown[18 * PER_MM :].mean() < 0.02 * writing


def test_boxes_that_are_no_more_than_guesses_are_refused() -> None:
    picture = Picture("it.png", np.zeros((9, 9, 3), np.uint8))
    assert findings.unsure_problem(picture, [0.9, 0.2, 0.3]) is None
    problem = findings.unsure_problem(picture, [0.3, 0.3, 0.5])
    assert problem is not None
    assert "hardly be told from the metal" in problem.message
    assert "--cut" in (problem.hint or "")


def test_a_crumb_that_stands_apart_does_not_widen_the_box() -> None:
    ink = np.zeros((10 * PER_MM, 8 * PER_MM), np.float32)
    ink[PER_MM : 4 * PER_MM, 2 * PER_MM : 4 * PER_MM] = 1
    ink[2 * PER_MM : 2 * PER_MM + 5, 6 * PER_MM : 6 * PER_MM + 5] = 1
    (found,) = boxes.drawn(ink, (0, ink.shape[1]), [SignExtent(0, 5, 0.9, 0.9)], [Expected(1, 0.2)])
    assert found.sides[0] + found.sides[2] < 4.1


def test_a_stroke_that_fades_is_its_signs_to_the_end() -> None:
    ink = np.zeros((10 * PER_MM, 8 * PER_MM), np.float32)
    ink[PER_MM : 3 * PER_MM, 2 * PER_MM : 5 * PER_MM] = 1
    ink[3 * PER_MM : 4 * PER_MM, 2 * PER_MM : 3 * PER_MM] = 0.22
    ink[6 * PER_MM : 8 * PER_MM, 2 * PER_MM : 5 * PER_MM] = 1
    told = [SignExtent(1, 3.2, 0.9, 0.9), SignExtent(6, 8, 0.9, 0.9)]
    first, last = boxes.drawn(ink, (0, ink.shape[1]), told, [Expected(1, 0.2)] * 2)
    assert first.sides[1] + first.sides[3] == pytest.approx(4, abs=0.1)
    assert last.sides[1::2] == pytest.approx((6, 2), abs=0.2)


def test_specks_all_over_the_metal_are_no_strokes() -> None:
    drawn = photographed("夢見\n山川")
    view = View(drawn.corners, WIDTH, HEIGHT, drawn.pixels.shape[1::-1])
    face = view.rectified(drawn.pixels, PER_MM).copy()
    for y in range(18 * PER_MM, len(face) - 2 * PER_MM, 2 * PER_MM):
        for x in range(2 * PER_MM + y % 7, face.shape[1] - 2 * PER_MM, 2 * PER_MM):
            face[y : y + 4, x : x + 4] //= 3
    shown = strokes.ink(strokes.energy(face))
    assert shown[4 * PER_MM : 14 * PER_MM].mean() > 0.02
    assert shown[20 * PER_MM :].mean() < 0.02 * shown[4 * PER_MM : 14 * PER_MM].mean()


def test_signs_are_not_drawn_out_to_take_up_grain() -> None:
    grain = np.random.default_rng(1).uniform(0, 0.3, (60 * PER_MM, 14 * PER_MM))
    ink = np.maximum(written(4), grain.astype(np.float32))
    (held,) = boxes.column_inks(ink, np.full_like(ink, 0.5), [(4.5 * PER_MM, 9.5 * PER_MM)])
    even = (64**-0.5,) * 64
    (told,) = cells([(held, [Expected(1, 0.2, form=even)] * 4)])
    assert max(cell.bottom - cell.top for cell in told) < 6
