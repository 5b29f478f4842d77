"""Numbers that run into one another are cut where what follows allows it."""

from __future__ import annotations

import pytest

from inscribe.dates import resolve


@pytest.mark.parametrize(
    ("carved", "kana", "signs"),
    [
        ("天保十二十二月", "てんぽう じゅうに じゅうにがつ", [0, 6]),
        ("一七十三翁嶺暁", "ななじゅうさんおう", [1, 4]),
    ],
)
def test_a_run_of_numerals_is_two_numbers(carved: str, kana: str, signs: list[int]) -> None:
    found = resolve(carved).to_dict()
    assert (found["kana"], found["signs"]) == (kana, signs)
