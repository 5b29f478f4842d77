"""Ranked readings of names as plain lines."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import in_columns

if TYPE_CHECKING:
    from inscribe.reading.signatures import NameLookUp


def names_as_text(found: Sequence[NameLookUp]) -> str:
    """Return each name with its readings, the best first, a reading and its reason a line."""
    lines: list[str] = []
    for name in found:
        if lines:
            lines.append("")
        lines.append(printable(_heading(name)))
        rows = [
            (f"{rank:>2}", *map(printable, (reading.romaji, reading.plain_kana, reading.reason)))
            for rank, reading in enumerate(name.readings, start=1)
        ]
        lines += in_columns(rows)
    return "".join(f"{line}\n" for line in lines)


def _heading(name: NameLookUp) -> str:
    return name.text if name.text == name.normalised else f"{name.text}  ({name.normalised})"
