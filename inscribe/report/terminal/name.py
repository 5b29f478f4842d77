"""Ranked readings of names as plain lines."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import in_columns

if TYPE_CHECKING:
    from inscribe.report.json import Found


def names_as_text(found: Sequence[Found]) -> str:
    """Return each name with its readings, the best first, a reading and its reason a line."""
    lines: list[str] = []
    for text, normalised, readings in found:
        if lines:
            lines.append("")
        lines.append(printable(text if text == normalised else f"{text}  ({normalised})"))
        rows = [
            (f"{rank:>2}", *map(printable, (reading.romaji, reading.plain_kana, reading.reason)))
            for rank, reading in enumerate(readings, start=1)
        ]
        lines += in_columns(rows)
    return "".join(f"{line}\n" for line in lines)
