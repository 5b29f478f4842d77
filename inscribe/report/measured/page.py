"""A proposal as one HTML page: the overlay, the columns, the signs to be looked at. No scripts."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from importlib.resources import files
from typing import TYPE_CHECKING

from inscribe.report.measured.over_picture import drawn
from inscribe.report.measured.text import HEAD

if TYPE_CHECKING:
    from inscribe.measuring import Measured
    from inscribe.record import Inscription


def measured_as_html(
    found: Measured, inscription: Inscription, plate: bytes, picture: str, title: str
) -> str:
    """Return the page; ``plate`` is the rectified plate as JPEG."""
    from jinja2 import Environment, StrictUndefined
    from markupsafe import Markup

    t = inscription.transcription
    drawing = ET.tostring(drawn(found, inscription, plate), encoding="unicode")
    columns = [
        [str(column.column + 1), str(column.signs)] + [f"{value:.2f}" for value in column[2:]]
        for column in found.columns
    ]
    doubtful = [
        [
            str(sign.sign + 1),
            t.signs[sign.sign].text or "□",
            str(t.signs[sign.sign].column + 1),
            f"{sign.y:.2f}",
            f"{sign.y + sign.height:.2f}",
            f"{sign.certainty:.2f}",
        ]
        for sign in found.doubtful
    ]
    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True)
    template = files("inscribe.report.measured").joinpath("page.html.j2").read_text("utf-8")
    return environment.from_string(template).render(
        title=title,
        picture=picture,
        height=f"{found.plate.height:g}",
        width=f"{found.plate.width:g}",
        scale=f"{found.scale:.1f}",
        signs=len(found.signs),
        drawing=Markup(drawing),  # built element by element, so that no data can become markup
        head=HEAD,
        columns=columns,
        doubtful=doubtful,
    )
