"""Ranked readings of names as plain lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable, width
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.report.as_json.name import Found


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
        lines += _aligned(rows)
    return "".join(f"{line}\n" for line in lines)


def _aligned(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    widths = [max(map(width, column)) for column in zip(*rows, strict=True)]
    before_reason = sum(widths[:-1]) + 2 * (len(widths) - 1)
    for row in rows:
        cells = (cell + " " * (size - width(cell)) for cell, size in zip(row, widths, strict=True))
        yield fitted("  ".join(cells).rstrip(), before_reason)
