"""Every colour of pages and drawings can be read on every ground that it may stand on.

WCAG 2.2, 1.4.3 and 1.4.11: text 4.5 to 1, marks that mean something 3 to 1. The luminance is
reckoned here from the definition given there. Lines that only divide (``--rule``) mean nothing.
"""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path

import pytest

from inscribe.report.drawing import plate, room_chart
from inscribe.report.measured import over_picture

PAGES = Path(plate.__file__).parents[1] / "pages"
SHEETS = {path.name: path.read_text("utf-8") for path in PAGES.glob("*.css")}
SCHEMES = ("light", "dark", "print")
GROUNDS = ("paper", "metal", "panel")
TEXTS = ("ink", "quiet", "accent")
DIVIDES = re.compile(r"border(?:-top|-bottom|-left)?:[^;}]*var\(--rule\)")
OTHER = {
    "plate": (plate.SHEET, ("#eceae3", "#fff")),
    "chart": (room_chart.SHEET, ("#fff",)),
    "over a picture": (over_picture.STYLE, ("#fff",)),
}


def palettes() -> dict[str, dict[str, str]]:
    """Return the colours of each scheme by name."""
    blocks = re.findall(r":root \{([^}]*)\}", SHEETS["page.css"])
    assert len(blocks) == len(SCHEMES)
    named = [dict(re.findall(r"--(\w+): (#[0-9a-f]+)", block)) for block in blocks]
    return dict(zip(SCHEMES, named, strict=True))


def luminance(colour: str) -> float:
    digits = colour.lstrip("#")
    whole = digits if len(digits) == 6 else "".join(sign * 2 for sign in digits)
    parts = [int(whole[start : start + 2], 16) / 255 for start in (0, 2, 4)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_reckoning_itself() -> None:
    assert contrast("#000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize(("scheme", "name", "ground"), list(product(SCHEMES, TEXTS, GROUNDS)))
def test_text_can_be_read_on_every_ground(scheme: str, name: str, ground: str) -> None:
    colours = palettes()[scheme]
    assert contrast(colours[name], colours[ground]) >= 4.5


@pytest.mark.parametrize("sheet", sorted(SHEETS))
def test_a_page_takes_its_colours_from_the_palette(sheet: str) -> None:
    """What is neither text nor ground only divides, so that the test above sees every colour."""
    text = re.sub(r":root \{[^}]*\}", "", SHEETS[sheet])
    assert not re.search(r"#[0-9a-f]{3}|rgba?\(|hsla?\(|opacity", text)
    text = DIVIDES.sub("", text)
    used = re.findall(r"([\w-]+):[^;{}]*?var\(--(\w+)\)", text)
    for key, name in used:
        if name in ("serif", "mincho", "signs", "ratio", "n"):
            continue
        assert name in (*TEXTS, *GROUNDS), f"{key}: {name}"
        assert name in TEXTS or key in ("background", "fill"), f"{key}: {name}"


@pytest.mark.parametrize("name", OTHER)
def test_a_drawing_by_itself_can_be_read(name: str) -> None:
    sheet, grounds = OTHER[name]
    rules = re.findall(r"([.\w, -]+) \{([^}]*)\}", sheet)
    colours = [
        (selector.strip(), key, colour)
        for selector, body in rules
        for key, colour in re.findall(r"(fill|stroke): (#[0-9a-f]+)", body)
        if colour not in grounds and not selector.strip().startswith(".light")
    ]
    assert colours
    for selector, key, colour in colours:
        least = 4.5 if key == "fill" else 3
        assert all(contrast(colour, ground) >= least for ground in grounds), (selector, colour)
