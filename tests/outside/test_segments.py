"""Signs held against the grapheme clusters of Unicode (UAX #29, Unicode 15.0).

GraphemeBreakTest.txt lists strings with their borders. Left out: what no carved sign contains or
what notation refuses (line ends, control and format characters, joiners) and what East Asian text
does not need (Hangul letters, flags, pictograms joined together, prefixed letters).
"""

from __future__ import annotations

import debian
import pytest

from inscribe.notation.cutting import refusal, segments

TEST = debian.FOLDER / "unicode/auxiliary/GraphemeBreakTest.txt"
BREAK, JOIN = "÷", "×"


def _foreign(char: str) -> bool:
    code = ord(char)
    hangul = 0x1100 <= code <= 0x11FF or 0xA960 <= code <= 0xA97F or 0xAC00 <= code <= 0xD7FF
    flags = 0x1F1E6 <= code <= 0x1F1FF
    skin_tones = 0x1F3FB <= code <= 0x1F3FF
    indic_prefix = char in "\u0600\u06dd\u070f\U000110bd"
    return hangul or flags or skin_tones or indic_prefix or bool(refusal(char)) or char in "\r\n"


def _cases() -> list[tuple[str, list[str]]]:
    if not TEST.exists():
        return []
    found = []
    for line in TEST.read_text(encoding="utf-8").splitlines():
        marks = line.partition("#")[0].split()
        clusters: list[str] = []
        for mark, code in zip(marks[::2], marks[1::2], strict=False):
            char = chr(int(code, 16))
            if mark == BREAK or not clusters:
                clusters.append(char)
            else:
                clusters[-1] += char
        if clusters and not any(_foreign(char) for char in "".join(clusters)):
            found.append(("".join(clusters), clusters))
    return found


CASES = _cases()


@pytest.mark.skipif(not CASES, reason="the Debian package unicode-data is not installed")
def test_enough_cases_remain() -> None:
    assert len(CASES) > 20


@pytest.mark.parametrize(
    ("text", "clusters"), CASES, ids=lambda x: ascii(x) if isinstance(x, str) else ""
)
def test_signs_are_grapheme_clusters(text: str, clusters: list[str]) -> None:
    assert list(segments(text)) == clusters
