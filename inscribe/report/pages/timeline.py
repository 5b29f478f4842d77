"""A small timeline: a dot for each dated object, one above the other where years are close."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import NamedTuple

from inscribe.report import add

WIDTH = 900.0
EDGE = 30.0  # units left and right of the first and last year
DOT = 5.0  # radius


class DatedPage(NamedTuple):
    """An object with its year and the page that tells of it."""

    year: int
    name: str
    page: str


def timeline(dated: list[DatedPage]) -> str:
    """Return an SVG of objects along the years, each a link to its page; nothing without any."""
    if not dated:
        return ""
    first = min(each.year for each in dated) // 10 * 10
    last = max(each.year for each in dated) // 10 * 10 + 10
    scale = (WIDTH - 2 * EDGE) / (last - first)
    columns: dict[int, list[DatedPage]] = {}
    for each in sorted(dated):
        columns.setdefault(int((each.year - first) * scale // (2 * DOT)), []).append(each)
    height = max(map(len, columns.values())) * 2 * DOT + 30
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "viewBox": f"0 0 {WIDTH:g} {height:g}",
            "class": "timeline",
            "role": "group",
            "aria-label": f"{first}–{last}",
        },
    )
    base = height - 22
    add(root, "line", x1=f"{EDGE:g}", x2=f"{WIDTH - EDGE:g}", y1=f"{base:g}", y2=f"{base:g}")
    step = 10 if last - first <= 120 else 50
    for year in range(first - first % -step, last + 1, step):
        at = f"{EDGE + (year - first) * scale:.1f}"
        add(root, "line", x1=at, x2=at, y1=f"{base:g}", y2=f"{base + 5:g}")
        add(root, "text", str(year), x=at, y=f"{base + 19:g}")
    for column, some in columns.items():
        for nth, each in enumerate(some):
            link = add(root, "a", href=each.page)
            link.set("aria-label", f"{each.year} {each.name}")
            x, y = EDGE + (column + 0.5) * 2 * DOT, base - (nth + 0.5) * 2 * DOT
            dot = add(link, "circle", cx=f"{x:.1f}", cy=f"{y:.1f}", r=f"{DOT - 1:g}")
            add(dot, "title", f"{each.year} {each.name}")
    return ET.tostring(root, encoding="unicode")
