"""A word that a source spells out may be worn on the plate in one of its kanji."""

from __future__ import annotations

import pytest

from inscribe import parse
from inscribe.restoring import restore

# Kokinshu 933 and 53, from memory, in kana without voicing marks.
ASUKA = "よのなかはなにかつねなるあすかかはきのふのふちそけふはせになる"
CHERRIES = "よのなかにたえてさくらのなかりせははるのこころはのとけからまし"


@pytest.mark.parametrize(
    ("text", "source", "truth"),
    [
        ("世の中は何か常なる飛□川きのふの淵ぞ今日は瀬になる", ASUKA, "鳥"),
        ("世の中は何か常なる飛鳥□きのふの淵ぞ今日は瀬になる", ASUKA, "川"),
        ("世の中に絶えて□のなかりせば春の心はのどけからまし", CHERRIES, "桜"),
        ("世の中に絶えて桜のなかり□ば春の心はのどけからまし", CHERRIES, "せ"),
    ],
)
def test_the_sign_that_the_source_spells_out_comes_first(
    text: str, source: str, truth: str
) -> None:
    (worn,) = restore(parse(text), copied=source).lacunae
    assert worn.candidates[0].text == truth
    total = sum(each.probability for each in worn.candidates)
    assert total == pytest.approx(1, abs=0.1)
