"""The names in the user's own list of persons, ``people.tsv``: how each is written and read.

A column of the list for each sort of name holds all its written forms, each with its kana where
that is known. Who it is that such a name may name is asked in the room ``persons``.

>>> [form.written for form in forms_in({"pen": "雨蛙菴=うああん;雨庵", "surname": ""})]
['雨蛙庵', '雨庵']
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from inscribe import tables
from inscribe.forms import normalise_text

# The columns of names, what each sort is called, and what sort of name it is read as.
SORTS = {
    "surname": ("surname", "surname"),
    "given": ("given name", "given"),
    "common": ("common name", "common"),
    "art": ("art name", "art"),
    "studio": ("studio name", "art"),
    "pen": ("pen name", "given"),
    "priestly": ("priestly name", "given"),
    "other": ("name", "given"),
}


class ListedForm(NamedTuple):
    """One written form of a name: in current forms, its kana (or nothing), and its sort."""

    written: str
    kana: str
    kind: str


def forms_in(row: Mapping[str, str]) -> tuple[ListedForm, ...]:
    """Return the names in a row of the list, in the order of its columns."""
    return tuple(
        ListedForm(normalise_text(written).text, kana, kind)
        for kind in SORTS
        for written, _, kana in (
            form.partition("=") for form in tables.listed(row.get(kind, "")) if form
        )
    )


def names_of_people() -> Iterator[tuple[str, str, str, str]]:
    """Yield the names of the list whose kana it gives: written, kana, why, sort of name."""
    for row in tables.rows("people"):
        for form in forms_in(row):
            if form.kana:
                called, kind = SORTS[form.kind]
                whose = row["name"] or row["id"]
                yield form.written, form.kana, f"in your list of persons: {called} of {whose}", kind
