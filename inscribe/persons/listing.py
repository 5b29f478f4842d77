"""The user's list of persons: the rows of ``people.tsv``, taken apart.

>>> row = dict.fromkeys(COLUMNS, "") | {"id": "P-1", "pen": "雨蛙庵=うああん", "death": "1780"}
>>> person_of(row).name, person_of(row).years
('Uān', 'died 1780')
"""

from __future__ import annotations

from collections.abc import Mapping

from inscribe import tables
from inscribe.errors import InputError
from inscribe.forms import normalise_text
from inscribe.persons.model import ListedPerson, ListedYear
from inscribe.reading.names import SORTS, ListedForm, forms_in
from inscribe.reading.spelling import hepburn

_FACTS = ("birth", "death", "active", "place", "title", "role")
_MORE = ("teacher", "house", "note", "source")
COLUMNS = ("id", "name", *SORTS, *_FACTS, *_MORE)
_ABOUT = "about "
# Which of a person's own names is given where the list has no name for the person, after a surname.
_CALLED_BY = ("art", "pen", "given", "studio", "common", "priestly", "other")


@tables.cached()
def people() -> dict[str, ListedPerson]:
    """Return the persons of the user's lists by their ids, the first of an id.

    Raises:
        InputError: the years of a person contradict each other.
    """
    found: dict[str, ListedPerson] = {}
    for row in tables.rows("people"):
        found.setdefault(row["id"], person_of(row))
    return found


def person_of(row: Mapping[str, str]) -> ListedPerson:
    """Return the person that a row of the list is.

    Raises:
        InputError: the years contradict each other.
    """
    forms = forms_in(row)
    person = ListedPerson(
        row["id"],
        row["name"] or _called(forms) or row["id"],
        forms,
        *years_of(row),
        _in_current_forms(row["place"]),
        _in_current_forms(row["title"]),
        tables.listed(row["role"]),
        tables.listed(row["teacher"]),
        tables.listed(row["house"]),
        row["note"],
        row["source"],
    )
    if problem := contradiction(person.birth, person.death, person.active):
        raise InputError(f"{row['id']} in people.tsv: {problem}", hint="correct the years")
    return person


def contradiction(
    born: ListedYear | None,
    died: ListedYear | None,
    active: tuple[ListedYear, ListedYear] | None,
) -> str:
    """Return how the years of a person contradict each other; nothing if they do not."""
    if born and died and born.earliest > died.latest:
        return f"born {born} and died {died}"
    if active:
        first, last = active
        if first.earliest > last.latest:
            return f"active from {first} to {last}"
        if born and last.latest < born.earliest:
            return f"born {born} and active {first}-{last}"
        if died and first.earliest > died.latest:
            return f"active {first}-{last} and died {died}"
    return ""


def years_of(
    row: Mapping[str, str],
) -> tuple[ListedYear | None, ListedYear | None, tuple[ListedYear, ListedYear] | None]:
    """Return birth, death and the first and last year of work that a row gives."""
    return year_of(row["birth"]), year_of(row["death"]), _span(row["active"])


def year_of(cell: str) -> ListedYear | None:
    """Return the year in a cell, ``1712`` or ``about 1712``; None for an empty one."""
    if not cell:
        return None
    return ListedYear(int(cell.removeprefix(_ABOUT)), cell.startswith(_ABOUT))


def _span(cell: str) -> tuple[ListedYear, ListedYear] | None:
    first, _, last = cell.partition("-")
    begins, ends = year_of(first), year_of(last or first)
    return (begins, ends) if begins and ends else None


def _in_current_forms(cell: str) -> tuple[str, ...]:
    return tuple(normalise_text(word).text for word in tables.listed(cell))


def _called(forms: tuple[ListedForm, ...]) -> str:
    """Return surname and first name of a person, in Latin letters where the kana are known."""
    chosen = [next((f for f in forms if f.kind == "surname"), None)]
    chosen += [next((f for kind in _CALLED_BY for f in forms if f.kind == kind), None)]
    return " ".join(_in_letters(form) for form in chosen if form)


def _in_letters(form: ListedForm) -> str:
    letters = hepburn(form.kana) if form.kana else form.written
    return letters[:1].upper() + letters[1:]


def people_called(name: str) -> tuple[ListedPerson, ...]:
    """Return the persons of an id or a name, in any form of its signs."""
    written = normalise_text(name).text
    return tuple(
        person
        for person in people().values()
        if name in (person.id, person.name) or any(form.written == written for form in person.forms)
    )
