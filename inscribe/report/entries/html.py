"""Entries as one HTML page: no scripts, nothing fetched, every word of the data escaped."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Sized
from importlib.resources import files
from itertools import groupby
from operator import itemgetter
from typing import TYPE_CHECKING

from jinja2 import Environment, StrictUndefined
from markupsafe import Markup, escape

from inscribe import notation
from inscribe.reading.spelling import is_kanji
from inscribe.report import safe
from inscribe.report.entries.blocks import Bullets, Caution, Columns, Facts, Grid, Heading, Inline
from inscribe.report.entries.layout import laid_out
from inscribe.signs import Certainty, Intervention, Kind, Sign, transcription

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

_TESTS = {
    "heading": Heading,
    "facts": Facts,
    "columns": Columns,
    "grid": Grid,
    "bullets": Bullets,
    "caution": Caution,
}
_STATES = {
    Certainty.DAMAGED: "damaged",
    Certainty.DOUBTFUL: "doubtful",
    Certainty.RESTORED: "restored",
    Certainty.STRUCK: "struck",
}
_INTERVENTIONS = {
    Intervention.SUPPLIED: "supplied",
    Intervention.SUPERFLUOUS: "superfluous",
    Intervention.EXPANDED: "supplied",
}


def entries_as_html(entries: list[Entry], style: Style) -> str:
    """Return a page with an article for each entry."""
    room = files("inscribe.report.entries")
    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True)
    environment.tests |= {
        name: lambda block, kind=kind: isinstance(block, kind) for name, kind in _TESTS.items()
    }
    environment.globals |= {
        "inline": _inline,
        "carved": _carved,
        "ruby": _ruby,
        "drawing": Markup,
        "longest": _longest,
        "grouped": _grouped,
    }
    template = environment.from_string((room / "entry.html.j2").read_text("utf-8"))
    title = entries[0].record.id if len(entries) == 1 else f"{len(entries)} objects"
    page = template.render(
        language=style.labels,
        title=title,
        sheet=Markup((room / "entry.css").read_text("utf-8")),
        entries=[laid_out(entry, style) for entry in entries],
    )
    return safe(page)


def _inline(inline: Inline) -> Markup:
    return Markup("").join(_run(run.text, italic=run.italic, lang=run.lang) for run in inline)


def _run(text: str, *, italic: bool, lang: str) -> Markup:
    body = Markup("<br>").join(text.split("\n"))
    mark = Markup(' lang="{}"').format(lang) if lang else Markup("")
    if italic:
        return Markup("<i{}>{}</i>").format(mark, body)
    return Markup("<span{}>{}</span>").format(mark, body) if lang else body


def _grouped(rows: tuple[tuple[str, Inline], ...]) -> Iterator[tuple[str, list[Inline]]]:
    """Yield each label once, with all that stands against it."""
    for label, group in groupby(rows, key=itemgetter(0)):
        yield label, [said for _, said in group]


def _longest(columns: Sequence[Sized]) -> int:
    """Return the number of signs in the longest column, by which the sheet sizes them."""
    return max(map(len, columns), default=1)


def _carved(sign: Sign) -> Markup:
    if sign.kind is not Kind.CHARACTER or not sign.text:
        return escape(notation.render(transcription([[[sign]]])))
    states = [_STATES.get(sign.certainty, ""), _INTERVENTIONS.get(sign.intervention, "")]
    names = " ".join(filter(None, states))
    shown = _with_parent(sign)
    return Markup('<span class="{}">{}</span>').format(names, shown) if names else shown


def _with_parent(sign: Sign) -> Markup:
    """Return a sign; of a hentaigana, which few fonts have, its kana with the parent beside it."""
    shown = notation.printed(sign)
    if shown == sign.text:
        return escape(shown)
    kana, _, parent = shown.partition("(")
    return Markup("<ruby>{}<rt>{}</rt></ruby>").format(kana, parent.rstrip(")"))


def _ruby(word: str, kana: str) -> Markup:
    if not any(map(is_kanji, word)):
        return escape(word)
    tail = 0
    while tail < min(len(word), len(kana)) - 1 and word[-1 - tail] == kana[-1 - tail]:
        tail += 1
    head, said = word[: len(word) - tail], kana[: len(kana) - tail]
    shown = Markup("<ruby>{}<rp>(</rp><rt>{}</rt><rp>)</rp></ruby>{}")
    return shown.format(head, said, word[len(word) - tail :])
