"""How many letters of verse are read right, on poems whose accepted reading is known.

The Ogura Hyakunin Isshu (13th century, public domain) lies beside the project as test data; the
other poems are those of tests/data/verse_dev.tsv. The benchmark tests/benchmarks/reading.py
prints the same figures beside those of general-purpose converters.
"""

from __future__ import annotations

import re
import unicodedata
from pathlib import Path

import pytest
from rapidfuzz.distance import Levenshtein

from inscribe import reading

HYAKUNIN = Path(__file__).parents[3] / "shared" / "data" / "hyakunin.tsv"
DEVELOPMENT = Path(__file__).parents[1] / "data" / "verse_dev.tsv"


def letters(romaji: str) -> str:
    plain = unicodedata.normalize("NFD", romaji.lower())
    return re.sub("mu", "n", re.sub("[^a-z]", "", plain))


def rates(
    path: Path, text_cell: int, romaji_cell: int, *, voiced: bool = True
) -> tuple[float, float]:
    """Return the share of wrong letters and the share of poems without one."""
    lines = [
        line.split("\t") for line in path.read_text("utf-8").splitlines() if line[:1].isdigit()
    ]
    errors = total = exact = 0
    for row in lines:
        text, truth = row[text_cell].replace("／", ""), letters(row[romaji_cell])
        if not voiced:
            bare = unicodedata.normalize("NFD", text).replace("\u3099", "")
            text = unicodedata.normalize("NFC", bare)
        found = reading.read_text(text)
        distance = Levenshtein.distance(letters(found.proposals[0].romaji), truth)
        errors, total, exact = errors + distance, total + len(truth), exact + (not distance)
    return errors / total, exact / len(lines)


@pytest.mark.skipif(not HYAKUNIN.exists(), reason="the Hyakunin Isshu is not beside the project")
def test_the_hyakunin_isshu() -> None:
    wrong, exact = rates(HYAKUNIN, 1, 3)
    assert wrong <= 0.007
    assert exact >= 0.85


@pytest.mark.skipif(not HYAKUNIN.exists(), reason="the Hyakunin Isshu is not beside the project")
def test_the_hyakunin_isshu_without_voicing_marks() -> None:
    assert rates(HYAKUNIN, 1, 3, voiced=False)[0] <= 0.03


def test_poems_of_other_anthologies() -> None:
    wrong, exact = rates(DEVELOPMENT, 2, 4)
    assert wrong <= 0.015
    assert exact >= 0.75
