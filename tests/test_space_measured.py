"""What is measured of a plate, where measurements are odd: tiny signs, columns at one place."""

from __future__ import annotations

import pytest

from inscribe.collation.space.measures import measures_of
from inscribe.record import ColumnMeasure, Inscription, Plate, SignBox


@pytest.mark.parametrize("scale", [5.0, 0.5])
def test_a_column_measured_sign_by_sign_tells_how_it_draws_together(scale: float) -> None:
    tops = [0.0, 1.0, 2.0, 3.0, 4.0, 4.8, 5.6, 6.4, 7.2]
    boxes = tuple(SignBox(i, 5, 5 + scale * top, 4, 0.4) for i, top in enumerate(tops))
    inscription = Inscription("back plate", "一二三四五六七八九", plate=Plate(14, 60), boxes=boxes)
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    assert measures.columns[0].trend == pytest.approx(0.2)


def test_columns_measured_at_one_place_leave_no_room_for_more() -> None:
    columns = tuple(ColumnMeasure(3, 60, x=6, width=4) for _ in range(2))
    inscription = Inscription("back plate", "一二三\n四五六", plate=Plate(14, 96), columns=columns)
    measures = measures_of(inscription.transcription, inscription)
    assert measures is not None
    assert measures.more_columns == 0


def test_the_trend_is_a_share_with_three_decimals_and_none_where_nothing_moves() -> None:
    def trend(tops: list[float]) -> float | None:
        boxes = tuple(SignBox(i, 5, 5 + top, 4, 0.4) for i, top in enumerate(tops))
        text = "一二三四五六七八九"
        found = Inscription("back plate", text, plate=Plate(14, 60), boxes=boxes)
        measures = measures_of(found.transcription, found)
        return measures.columns[0].trend if measures else None

    assert trend([0, 3, 6, 9, 12, 14, 16, 18, 20]) == 0.333
    assert trend([0.0] * 5 + [1, 2, 3, 4]) is None
