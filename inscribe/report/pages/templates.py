"""How a page is filled: the templates of this room, and what they may ask."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from jinja2 import DictLoader, Environment, StrictUndefined
from markupsafe import Markup

from inscribe import tables
from inscribe.report import entries, safe
from inscribe.report.pages import markup, pictures

if TYPE_CHECKING:
    from inscribe.report import Style

_TEMPLATES = ("blocks", "frame", "entry", "site", "volume", "slides")
_KINDS = {
    "facts": entries.Facts,
    "lead": entries.Lead,
    "columns": entries.Columns,
    "drawing": entries.Drawing,
    "picture": entries.PictureBlock,
    "interlinear": entries.Interlinear,
    "grid": entries.Grid,
    "bullets": entries.Bullets,
    "chart": entries.Chart,
    "caution": entries.Caution,
}


def rendered(template: str, sheets: tuple[str, ...], style: Style, **values: Any) -> str:
    """Return a page made from a template and its style sheets (names of files in this room)."""
    held = [Markup(_file(name)) for name in sheets]
    sheet = Markup("\n").join([*held, *_of_style(style)])
    links = template != "slides.html.j2" and "differences" in style.order
    said = {"sheet": sheet, "label": style.label, "language": style.labels, "links": links}
    said["services"] = ""  # of images that the page may ask
    return safe(_environment().get_template(template).render(said | values))


def _file(name: str) -> str:
    return (files("inscribe.report.pages") / name).read_text("utf-8")


@tables.cached()
def _environment() -> Environment:
    """Return the templates, compiled once, with what they may ask."""
    environment = Environment(
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        loader=DictLoader({f"{name}.html.j2": _file(f"{name}.html.j2") for name in _TEMPLATES}),
    )
    environment.tests |= {
        name: lambda block, kind=kind: isinstance(block, kind) for name, kind in _KINDS.items()
    }
    environment.globals |= {
        "inline": markup.inline,
        "carved": markup.carved,
        "source_sign": markup.source_sign,
        "ratio": markup.ratio,
        "ruby": markup.ruby,
        "longest": markup.longest,
        "tallest": markup.tallest,
        "grouped": markup.grouped,
        "svg": Markup,
        "picture": pictures.embedded,
    }
    return environment


def _of_style(style: Style) -> Iterator[Markup]:
    """Yield what the house style says of fonts and paper, as rules."""
    if style.font:
        name = re.sub(r"[^\w .-]", "", style.font)
        yield Markup(f':root {{ --serif: "{name}", serif; --mincho: "{name}", serif; }}')
    if style.paper != "A4":
        across, down = style.page
        yield Markup(f"@media print {{ @page {{ size: {across}mm {down}mm; }} }}")
