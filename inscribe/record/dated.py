"""The dates of a record's inscriptions, held against each other and against the maker's life."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import dates, forms

if TYPE_CHECKING:
    from inscribe.dates import Comparison, DateReading
    from inscribe.record.model import Record


def dates_of(record: Record, between: tuple[int, int] | None = None) -> Comparison:
    """Return every date and age of a record's inscriptions, and what they say together.

    ``between`` are the western years, both included, that a sexagenary year without an era may
    mean; the maker's years where none are given. "The same year" refers to the inscription before.
    The readings are none where no inscription bears a date.

    >>> from inscribe import dates_of_record, load_record
    >>> [date.year for date in dates_of_record(load_record("examples/DEMO-008.toml")).readings]
    [1824]
    """
    between = between or record.between
    found: list[DateReading] = []
    names: list[str] = []
    for number, inscription in enumerate(record.inscriptions, 1):
        before = next((each for each in reversed(found) if each.year is not None), None)
        here = dates.find(forms.normalise(inscription.transcription).text, between, before=before)
        found += here
        names += [f"inscription {number} ({inscription.place}: {each.text})" for each in here]
    return dates.compared(found, names, record.maker.born if record.maker else None)
