"""The labelled facts of an inscription: how it is cut, what it says, who read it."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from typing import TYPE_CHECKING

from inscribe.notation import print_signs
from inscribe.report import phrased
from inscribe.report.entries.blocks import (
    JAPANESE as JAPANESE,
    ROMANISED as ROMANISED,
    Block,
    Inline,
    Lead,
    Run,
    plain,
)
from inscribe.report.entries.glossed import passage_name

if TYPE_CHECKING:
    from inscribe.collation import Collation
    from inscribe.dates import DateReading
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.report import Style

COLUMN_END = "／"
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip

Rows = Iterator[tuple[str, Inline]]


def object_rows(entry: Entry, style: Style) -> Rows:
    """Yield what the object is and measures."""
    record, sizes = entry.record, entry.record.measurements
    yield style.label("kind"), plain(style.word("kind", record.kind))
    measured = [
        f"{style.label(name)} {getattr(sizes, name):g} mm"
        for name in ("length", "width", "height", "thickness", "diameter")
        if getattr(sizes, name) is not None
    ]
    if measured:
        yield style.label("measurements"), plain(style.listed(*measured))


def place_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield hand and execution."""
    inscription = each.inscription
    for key in ("hand", "execution"):
        if value := getattr(inscription, key):
            yield style.label(key), plain(style.word(key, value))


def current_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield the text in current forms."""
    yield style.label("current"), plain(each.interpretation.normalised, JAPANESE)


def passage_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield each passage of several: what it is, what its person did, what it says."""
    passages = each.interpretation.passages
    for passage in passages if len(passages) > 1 else ():
        said = [Run(style.quoted(passage.text), lang=JAPANESE)]
        if romaji := phrased(passage.proposals[0], "romaji"):
            said += [Run(" "), Run(romaji, style.italics, ROMANISED)]
        yield passage_name(passage, style), tuple(said)


def kana_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield the reading in kana."""
    if kana := " ".join(phrased(each.reading, "kana").split()):
        yield style.label("kana"), plain(kana, JAPANESE)


def romaji_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield the reading in Latin letters."""
    if text := phrased(each.reading, "romaji"):
        said = Run(text[:1].upper() + text[1:], style.italics, ROMANISED)
        yield Lead(style.label("romaji"), (said,))


def alternative_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield the readings ranked second and third, with their reasons."""
    for proposal in each.interpretation.proposals[1:3]:
        reasons = style.joined(*map(style.explained, proposal.reasons))
        romaji = Run(phrased(proposal, "romaji"), style.italics, ROMANISED)
        yield style.label("alternatives"), (romaji, Run(f" ({reasons})" if reasons else ""))


def translation_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield the cataloguer's translation."""
    if each.inscription.translation:
        yield Lead(style.label("translation"), plain(each.inscription.translation.strip()))


def date_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield every date of the text, resolved; how it was reckoned is told apart."""
    for date in each.interpretation.dates:
        quoted = Run(style.quoted(date.text), lang=JAPANESE)
        yield style.label("date"), (quoted, Run(f" {date_text(date, style)}"))


def date_workings(each: InscriptionEntry, style: Style) -> Iterator[Inline]:
    """Yield how each date was reckoned, and the ways out of a contradiction."""
    for date in each.interpretation.dates:
        if date.why and _known(date, style):
            ways = style.joined(*map(style.explained, (date.why, *date.suggestions)))
            yield (Run(style.quoted(date.text), lang=JAPANESE), Run(f" {ways}"))


def person_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield whom of the user's list the inscription may name, and why."""
    for named in each.interpretation.persons:
        quoted = Run(style.quoted(named.text), lang=JAPANESE)
        yield (
            style.label("persons"),
            (quoted, Run(f" {style.explained(named.why)} ({named.chance:.2f})")),
        )


def date_text(date: DateReading, style: Style) -> str:
    """Return what a date was resolved to, in the style's way of dating.

    A date that contradicts itself says so, with the year it would otherwise be.
    """
    known = _known(date, style)
    if date.agreement != "conflict" or not known:
        return known or style.explained(date.why)
    others = [e.year for e in date.explanations[:1] if e.year not in (None, date.year)]
    said = style.label("date_conflict")
    return style.joined(known, said) + (f": {date.year} / {others[0]}" if others else "")


def _known(date: DateReading, style: Style) -> str:
    era = _era_year(date, style)
    year = f"{date.year or ''}{'年' * (style.labels == 'ja' and bool(date.year))}"
    western = style.listed(year, _days(date, style))
    first, second = (western, era) if style.dates == "western" else (era, western)
    return style.bracketed(first, second) if first and second else first or second


def _era_year(date: DateReading, style: Style) -> str:
    """Return the era and its year: ``Kaei 6``, in Japanese 嘉永6年."""
    number = date.year_of_era
    if not (date.era_romaji and number):
        return ""
    if style.labels == "ja":
        return f"{date.era}{'元' if number == 1 else number}年"
    return f"{date.era_romaji} {number}"


def _days(date: DateReading, style: Style) -> str:
    if date.first_day is None or date.last_day is None or style.days == "none":
        return ""
    first, last = _day(date.first_day, style), _day(date.last_day, style)
    return first if first == last else f"{first} – {last}"


def _day(day: datetime.date, style: Style) -> str:
    if style.days == "iso":
        return day.isoformat()
    if style.labels == "ja":
        return f"{day.year}年{day.month}月{day.day}日"
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def source_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield the source, and its words where they are known."""
    if each.inscription.source is None:
        return
    for at, source in enumerate(each.inscription.sources):
        named = ", ".join(filter(None, (source.author, source.work, source.number, source.title)))
        named = named or source.id
        if siglum := each.siglum_of(at):
            kind = style.explained(source.kind or "" if named or source.kind else "untitled")
            named = ": ".join(filter(None, (siglum, ", ".join(filter(None, (named, kind))))))
        if named:
            yield style.label("source"), plain(named)
    if each.collation:
        words = style.quoted(COLUMN_END.join(source_lines(each.collation)))
        yield style.label("source_words"), plain(words, JAPANESE)
        if beside := "; ".join(style.quoted(passage.text) for passage in each.collation.beside):
            yield style.label("beside"), plain(beside, JAPANESE)
    if each.missing_source:
        yield style.label("collation"), plain(style.explained(each.missing_source))


def source_lines(collation: Collation) -> Iterator[str]:
    """Yield the lines of the source."""
    for column in collation.source.columns:
        yield print_signs(column.signs)


def reader_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield who read the inscription, when, and what each made of it."""
    for reader in each.inscription.readers:
        when = f", {reader.on.isoformat()}" if reader.on else ""
        said = [Run(reader.by + when)]
        for text in filter(None, (reader.text, reader.kana)):
            columns = COLUMN_END.join(text.strip().split("\n"))
            said.append(Run(f" {style.quoted(columns)}", lang=JAPANESE))
        if reader.romaji:
            said += [Run(" "), Run(reader.romaji.strip(), style.italics, ROMANISED)]
        if reader.remarks:
            said.append(Run(f" {reader.remarks.strip()}"))
        yield style.label("readers"), tuple(said)


def remark_rows(each: InscriptionEntry, style: Style) -> Rows:
    """Yield the remarks on the inscription."""
    if each.inscription.remarks:
        yield style.label("remarks"), plain(each.inscription.remarks.strip())
