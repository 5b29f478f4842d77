"""Signatures come apart where their formulas say: after places, openers and before verbs."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from inscribe.reading.signatures.split import divisions

sys.path.append(str(Path(__file__).parent / "benchmarks"))
import division

WANTED = 0.995  # of the signatures, as the issue has it


@pytest.mark.parametrize(
    "pieces",
    [
        "京都 住 芦屋 永近 作",  # after a known place 住 is no surname's
        "江戸 住 田村 綾郷 造 之",
        "桐生 住 綾郷 作",  # 生 is a word of residence too
        "上州 桐生 住 田屋 綾郷",
        "応 需 戸屋 綾郷 作",  # an opener and its closer hold together
        "応 志水 氏 需 綾郷 作",  # but a family may begin with a word for a request
        "久保吉 国正 作",  # the name has its last sign, the text its verb
        "綾国 敬刻",
        "越後 国 蒲原 郡 三条 町 澹堂",
        "上毛 高崎 住 綾郷",
        "播陽 姫路 住 綾郷",
        "大宰府 住 綾郷 作",
        "武州 住 薬袋 綾郷 作",  # in no table of families, but in the dictionary
        "武州 住 塩ノ崎 綾郷 作",
    ],
)
def test_a_signature_comes_apart(pieces: str) -> None:
    best = divisions(pieces.replace(" ", ""))[0].pieces
    assert " ".join(piece.text for piece in best) == pieces


def test_families_come_apart_from_what_stands_around_them() -> None:
    for surnames in (division.listed_surnames()[::150], division.listed_surnames()[75::150]):
        total, misses, _ = division.measured(division.made(surnames, full=False))
        assert total >= 800
        assert 1 - misses.total() / total >= WANTED


def test_houses_and_towns_come_apart() -> None:
    houses = [name for name in division.listed_surnames() if name[-1] == "屋"]
    for texts in (division.made(houses, full=False), division.with_towns(houses)):
        total, misses, _ = division.measured(texts)
        assert total >= 160
        assert 1 - misses.total() / total >= WANTED
