"""What the legend of a seal may be read: a name, with the word for seal after it or without.

Legends give art names more often than not, which are read by their Chinese sounds first.

>>> [reading.romaji for reading in legend_readings("露岳之印")][:2]
['Rogaku no in', 'Rōgaku no in']
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe import tables
from inscribe.forms import normalise_text
from inscribe.reading import names
from inscribe.reading.signatures.options import letters

_LONGEST_NAME = 4  # signs; a longer legend is a phrase
_MOST = 6


class LegendReading(NamedTuple):
    """One reading of a legend."""

    kana: str  # words divided by spaces
    romaji: str


def legend_readings(legend: str) -> list[LegendReading]:
    """Return the readings of a legend as carved, the likeliest first; none for an illegible one."""
    name, ending = _divided(normalise_text(legend).text)
    if "□" in name or not name:
        return []
    after = f" {letters(ending)}" if ending else ""
    kana_after = f" {ending}" if ending else ""
    if len(name) > _LONGEST_NAME:
        from inscribe.reading.chinese import sign_by_sign

        signs = sign_by_sign(name)
        kana = " ".join([sign.kana for sign in signs])
        return [LegendReading(kana + kana_after, " ".join([s.romaji for s in signs]) + after)]
    return [
        LegendReading(reading.plain_kana + kana_after, reading.romaji + after)
        for reading in names.readings(name, "art")[:_MOST]
    ]


def _divided(legend: str) -> tuple[str, str]:
    """Return the name in a legend, and the reading of what follows it."""
    for written, kana in _endings().items():
        if legend.endswith(written) and len(legend) > len(written):
            return legend[: -len(written)], kana
    return legend, ""


@tables.cached()
def _endings() -> dict[str, str]:
    """Return the readings of the endings, the longest first."""
    rows = sorted(tables.rows("seal_endings"), key=lambda row: -len(row["written"]))
    return {row["written"]: row["kana"] for row in rows}
