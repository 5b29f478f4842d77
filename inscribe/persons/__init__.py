"""Whom may an inscription name? The user's own list of persons, held against what is read.

In: interpretations, and the table ``people.tsv`` of a glossary folder. Out: the same
interpretations, with the persons they may name, ranked, each with its reasons. The program ships no
person. Only where there is such a list is anything of this room imported.

In reading order: ``model`` (a person), ``listing`` (the list), ``naming`` (the names in an
inscription), ``life`` (a date against a life), ``weighing`` (who is the likelier), ``whom`` (all of
it). Making a list of another: ``importing``, ``headings``, ``tei``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.persons.importing import (
        Imported as Imported,
        imported_people as imported_people,
    )
    from inscribe.persons.listing import people as people
    from inscribe.persons.model import Person as Person
    from inscribe.persons.whom import with_persons as with_persons
else:
    __getattr__ = late.door(
        __name__,
        {
            "importing": "Imported imported_people",
            "listing": "people",
            "model": "Person",
            "whom": "with_persons",
        },
    )
