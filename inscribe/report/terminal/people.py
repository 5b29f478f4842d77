"""The user's list of persons, for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.persons import ListedPerson

_INDENT = 14


def people_as_text(people: Sequence[ListedPerson]) -> str:
    """Return each person with all names and what else the list says, a fact a line."""
    return "\n\n".join(
        "\n".join(fitted(printable(line), _INDENT) for line in _lines(person)) for person in people
    )


def _lines(person: ListedPerson) -> Iterator[str]:
    from inscribe.reading.names import SORTS

    years = f", {person.years}" if person.years else ""
    yield f"{person.id:{_INDENT - 1}} {person.name}{years}"
    for form in person.forms:
        yield f"  {SORTS[form.kind][0]:{_INDENT - 3}} {form.written}  {form.kana}".rstrip()
    for label, words in (
        ("place", person.places),
        ("title", person.titles),
        ("role", person.roles),
        ("teacher", person.teachers),
        ("house", person.houses),
        ("note", (person.note,)),
        ("source", (person.source,)),
    ):
        if said := ", ".join(filter(None, words)):
            yield f"  {label:{_INDENT - 3}} {said}"
