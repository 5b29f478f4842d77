"""Entries as CSV, one row an inscription, for spreadsheets and museum systems.

A cell that a spreadsheet would take for a formula is preceded by an apostrophe.
"""

from __future__ import annotations

import csv
import io
import unicodedata
from collections.abc import Iterator
from datetime import date
from typing import TYPE_CHECKING

from inscribe import notation, tables
from inscribe.report import signatures, signers
from inscribe.report.entries.collated import printed_sides
from inscribe.report.entries.facts import date_text
from inscribe.report.entries.glossed import passages_in_a_line, words_in_a_line

if TYPE_CHECKING:
    from inscribe.collation import Collation
    from inscribe.entry import Entry, InscriptionEntry
    from inscribe.report import Style

# The full-width signs too: a spreadsheet set up for Japanese takes them for the others.
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n")


def entries_as_csv(entries: list[Entry], style: Style) -> str:
    """Return a table with a header line; lines end as RFC 4180 says.

    >>> from inscribe import Style, entry_of, load_record
    >>> table = entries_as_csv([entry_of(load_record("examples/DEMO-003.toml"))], Style())
    >>> [line[:15] for line in table.splitlines()]
    ['id,kind,title,p', 'DEMO-003,kozuka']
    """
    rows = [_row(entry, each, style) for entry in entries for each in entry.inscriptions]
    return csv_table(rows, list(rows[0]) if rows else ["id"])


def csv_table(rows: list[dict[str, str]], columns: list[str]) -> str:
    """Return rows as CSV, safe to open in a spreadsheet."""
    held = io.StringIO()
    writer = csv.writer(held, lineterminator="\r\n")
    writer.writerow(columns)
    writer.writerows([_as_cell(row.get(column, "")) for column in columns] for row in rows)
    return held.getvalue()


@tables.cached(50_000)  # of a long table most cells recur: files, places, kinds
def _as_cell(text: str) -> str:
    return safe_cell(notation.written_out(text))


def safe_cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    >>> safe_cell("=1+1"), safe_cell("花")
    ("'=1+1", '花')
    """
    clean = text.replace("\x00", "\ufffd")
    begins = clean[:1] in FORMULA_STARTS or clean.lstrip()[:1] in FORMULA_STARTS
    return f"'{clean}" if clean and begins else clean


def _row(entry: Entry, each: InscriptionEntry, style: Style) -> dict[str, str]:
    record, inscription, found = entry.record, each.inscription, each.interpretation
    dates = [each for each in found.dates if each.year is not None or each.first_day]
    source, collation = inscription.source, each.collation
    return {
        "id": record.id,
        "kind": record.kind,
        "title": record.title,
        "place": inscription.place,
        "hand": inscription.hand,
        "execution": inscription.execution,
        "as_carved": notation.print_out(inscription.transcription),
        "current_forms": found.normalised,
        "kana": each.reading.kana,
        "romaji": each.reading.romaji,
        "romaji_plain": without_marks(each.reading.romaji),
        "words": words_in_a_line(each),
        "passages": passages_in_a_line(each, style),
        "register": found.register,
        "translation": inscription.translation.strip(),
        **{
            f"{name}_mm": f"{size:g}" if (size := getattr(record.measurements, name)) else ""
            for name in ("length", "width", "height", "thickness", "diameter")
        },
        "maker": record.maker.name if record.maker else "",
        "persons": "; ".join(person.text for person in signers(each)),
        "date": "; ".join(date_text(each_date, style) for each_date in dates),
        "year": str(dates[0].year) if dates and dates[0].year is not None else "",
        "first_day": _day(dates[0].first_day) if dates else "",
        "last_day": _day(dates[0].last_day) if dates else "",
        "date_agrees": dates[0].agreement if dates else "",
        "signature": " / ".join(
            "; ".join(f"{key}: {part.romaji}" for key, part in parts.items())
            for _, parts in signatures(found)
        ),
        "may_name": "; ".join(
            f"{named.text}: {named.name} ({named.chance:.2f})" for named in found.persons
        ),
        "source": ", ".join(filter(None, (source.work, source.number, source.id)))
        if source
        else "",
        "same_words": f"{collation.fidelity.words[1]:.3f}" if collation else "",
        "differences": "; ".join(
            f"{kind}: {copied or '–'} for {of_source or '–'}"
            for kind, copied, of_source in _differing(collation, wording=True)
        ),
        "differences_in_writing": "; ".join(
            f"{copied or '–'} for {of_source or '–'}"
            for _, copied, of_source in _differing(collation, wording=False)
        ),
        "space": "; ".join(_verdicts(collation, style)) if collation else "",
        "doubts": "; ".join(style.explained(doubt.why) for doubt in found.doubts),
        "readers": "; ".join(reader.by for reader in inscription.readers),
        "remarks": inscription.remarks.strip(),
    }


def _differing(collation: Collation | None, *, wording: bool) -> Iterator[tuple[str, str, str]]:
    """Yield each difference: its kind, what the copy has, what the source has."""
    for group in collation.differences if collation else ():
        if collation and group.is_substantive == wording:
            yield (group.kind, *printed_sides(group, collation))


def _verdicts(collation: Collation, style: Style) -> Iterator[str]:
    """Yield what space has to do with each difference that may have saved some."""
    for judgement in collation.space.judgements if collation.space else ():
        copied, source = printed_sides(collation.differences[judgement.difference], collation)
        yield f"{source or copied}: {style.label(judgement.verdict)}"


def _day(day: date | None) -> str:
    return day.isoformat() if day else ""


def without_marks(romaji: str) -> str:
    """Return Latin letters without macrons and other marks, to sort by.

    >>> without_marks("Tōto ni oite")
    'Toto ni oite'
    """
    return "".join(c for c in unicodedata.normalize("NFD", romaji) if not unicodedata.combining(c))
