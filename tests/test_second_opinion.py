"""The second opinion: said of the signs it read, in whatever order our reading takes them."""

from __future__ import annotations

from pathlib import Path

import pytest

from inscribe import read_text
from inscribe.reading.inscription.second_opinion import _converter, with_second_opinion

DATA = Path(__file__).parent / "data"


def opinions(text: str) -> list[tuple[str, str]]:
    """Return the signs and the reading of each statement."""
    found = with_second_opinion(read_text(text))
    said = [doubt for doubt in found.doubts if "pykakasi" in doubt.why]
    return [(text[d.first : d.last + 1], d.why.split()[2].rstrip(",")) for d in said]


def test_a_turned_order_puts_no_reading_on_other_signs() -> None:
    assert opinions("於東都應需造之") == [
        ("於", "お"),
        ("應需", "おうじゅ"),
        ("造", "ぞう"),
        ("之", "ゆき"),
    ]


def test_a_kao_is_no_word() -> None:
    assert all("（" not in signs for signs, _ in opinions("嶺暁（花押）"))


def signatures() -> list[str]:
    lines = (DATA / "signatures.tsv").read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines if not line.startswith("#")]
    column = next(n for n, name in enumerate(rows[0]) if name in ("text", "carved", "written"))
    return [row[column] for row in rows[1:]]


@pytest.mark.parametrize("text", signatures())
def test_what_is_said_of_signs_is_what_pykakasi_reads_there(text: str) -> None:
    found = with_second_opinion(read_text(text))
    if len(found.normalised) != len(found.text):
        pytest.skip("a mark is no single sign")
    spans, end = [], 0
    for word in _converter().convert(found.normalised):
        spans.append((end, end + len(word["orig"]), word["hira"]))
        end += len(word["orig"])
    for doubt in found.doubts:
        if "pykakasi" not in doubt.why:
            continue
        first, stop = doubt.first, doubt.last + 1
        there = "".join(read for start, end, read in spans if first <= start and end <= stop)
        assert (doubt.why.split()[2].rstrip(","), first < stop) == (there, True)
