"""What is kept from one text to the next is bounded by bytes, whatever the texts."""

from __future__ import annotations

import tracemalloc

from inscribe.reading.verse import tagger
from inscribe.restoring.stretches import MOST_BYTES, WornStretches

FIRST = "武州住作於江戸之彫天保三年春日行六十八歳嶺暁霜村露岳"


def test_worn_stretches_kept_are_bounded_by_bytes() -> None:
    """Each of these has some 3,000 names; all of them together would take 80 MiB and more."""
    for worn in ("嶺□", "□嶺"):  # the tables are loaded
        WornStretches().worn(worn)
    stretches = WornStretches()
    tracemalloc.start()
    try:
        for sign in FIRST:
            for worn in (f"{sign}□", f"□{sign}", f"{sign}□斎"):
                for _, found in stretches.worn(worn):
                    found.signs_at(worn.index("□"))
        kept, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert kept < 1.2 * MOST_BYTES
    assert most < 1.5 * MOST_BYTES


def test_a_stretch_used_often_is_kept() -> None:
    stretches = WornStretches()
    always = stretches.worn("□")
    for sign in FIRST:
        stretches.worn(f"{sign}□")
        stretches.worn(f"□{sign}")
        assert stretches.worn("□") is always


def test_signs_no_dictionary_has_are_not_kept_for_ever() -> None:
    tagger.verse_words("春")
    before = {id(line) for line in tagger._verse_lines}
    for number in range(5):
        written = chr(ord("A") + number) * 5_000
        assert "".join(word.written for word in tagger.verse_words(written)) == written
    longest = max((len(line) for line in tagger._verse_lines if id(line) not in before), default=0)
    assert longest < 2_000
