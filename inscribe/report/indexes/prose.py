"""Indexes and translations for reading: for a terminal, and as Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from inscribe import notebook
from inscribe.cautions import caution
from inscribe.report.entries import escaped

if TYPE_CHECKING:
    from inscribe.indexing import IndexHeading, IndexKind, TranslatedText, Where

TITLES: Mapping[str, str] = {
    "persons": "Persons who signed",
    "places": "Places",
    "dates": "Dates",
    "works": "Works copied",
    "lines": "First lines",
    "formulas": "Formulas of signatures",
    "hands": "Hands",
}


def heading_of(heading: IndexHeading) -> str:
    """Return a heading with its reading and what is said of it."""
    note = f" ({heading.note})" if heading.note else ""
    return f"{heading.romaji}  {heading.text}{note}" if heading.romaji else f"{heading.text}{note}"


def places_of(where: Iterable[Where]) -> str:
    """Return the objects of some places, each once; the inscription where it is not the first."""
    named = (
        each.object if each.inscription == 1 else f"{each.object} ({each.inscription})"
        for each in where
    )
    return ", ".join(dict.fromkeys(named))


def indexes_as_text(
    found: Mapping[IndexKind, Sequence[IndexHeading]], records: int, unread: Sequence[str] = ()
) -> str:
    """Return the indexes one below the other, each heading with its forms."""
    from inscribe.report.terminal import printable, room, wrapped

    lines = []
    for kind, headings in found.items():
        lines += [f"{TITLES[kind]} ({len(headings)})", ""]
        for heading in headings:
            lines.append(wrapped(f"  {printable(heading_of(heading))}", room(), 4))
            for text, where in _forms(heading):
                said = f"{text}: {where}" if text else where
                lines.append(wrapped(f"      {printable(said)}", room(), 8))
        lines.append("")
    if "persons" in found:
        lines.append(wrapped(caution("attribution"), room(), 0))
    lines.append(
        notebook.counted(records, "record") + (f", {len(unread)} left out" if unread else "")
    )
    return "\n".join(lines) + "\n"


def _forms(heading: IndexHeading) -> Iterator[tuple[str, str]]:
    """Yield each form as carved, empty where it is the heading itself, and where it stands."""
    for form in heading.forms:
        yield "" if form.text == heading.text else form.text, places_of(form.where)


def indexes_as_markdown(found: Mapping[IndexKind, Sequence[IndexHeading]]) -> str:
    """Return the indexes as Markdown lists."""
    parts = []
    for kind, headings in found.items():
        parts.append(f"# {TITLES[kind]}")
        items = []
        for heading in headings:
            forms = "; ".join(
                f"{text}: {where}" if text else where for text, where in _forms(heading)
            )
            items.append(f"- **{escaped(heading_of(heading))}** {escaped(forms)}")
        parts.append("\n".join(items))
    if "persons" in found:
        parts.append(f"> ⚠ {escaped(caution('attribution'))}")
    return "\n\n".join(filter(None, parts)) + "\n"


def translations_as_text(found: Sequence[TranslatedText]) -> str:
    """Return each text or formula with its translations, and the records that have none."""
    from inscribe.report.terminal import printable, room, wrapped

    lines = []
    for each in found:
        lines.append(printable(each.text))
        for words, where in each.translations:
            said = " / ".join(words.splitlines())
            lines.append(
                wrapped(f"  {printable(said)}  ({printable(places_of(where))})", room(), 4)
            )
        if each.without:
            lines.append(wrapped(f"  none yet: {printable(places_of(each.without))}", room(), 4))
        lines.append("")
    of = "text or formula" if len(found) == 1 else "texts and formulas"
    lines.append(f"{len(found)} {of} with a translation")
    return "\n".join(lines) + "\n"
