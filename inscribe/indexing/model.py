"""What an index is made of."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, get_args

from inscribe.terms import IndexKind as IndexKind

if TYPE_CHECKING:
    from inscribe.keys import IndexFormKeys, IndexHeadingKeys, WhereKeys

INDEXES: tuple[IndexKind, ...] = get_args(IndexKind)


class Where(NamedTuple):
    """One inscription of a record, as an index points to it; ``inscription`` counts from 1."""

    object: str
    file: str
    inscription: int
    place: str

    def to_dict(self) -> WhereKeys:
        """Return it as printed in JSON."""
        return {
            "object": self.object,
            "file": self.file,
            "inscription": self.inscription,
            "place": self.place,
        }


class IndexForm(NamedTuple):
    """One form of a heading as it is carved, and where."""

    text: str
    where: tuple[Where, ...]

    def to_dict(self) -> IndexFormKeys:
        """Return it as printed in JSON."""
        return {"form": self.text, "where": [each.to_dict() for each in self.where]}


class IndexHeading(NamedTuple):
    """One heading: the word in current forms, what is said of it, and its forms.

    ``romaji`` is how it is read first, for a person's name as for a place; ``note`` says more
    where there is more: what a person did, the year of a date, the author of a work.
    """

    kind: IndexKind
    text: str
    romaji: str
    note: str
    forms: tuple[IndexForm, ...]

    @property
    def records(self) -> int:
        """How many records bear it."""
        return len({where.file for form in self.forms for where in form.where})

    def to_dict(self) -> IndexHeadingKeys:
        """Return it as printed in JSON."""
        return {
            "heading": self.text,
            "romaji": self.romaji,
            "note": self.note,
            "records": self.records,
            "forms": [each.to_dict() for each in self.forms],
        }
