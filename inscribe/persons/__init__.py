"""Whom may an inscription name? The user's own list of persons, held against what is read.

In: interpretations, and the table ``people.tsv`` of a glossary folder, or ``people.xml`` (a TEI
document with listPerson). Out: the same
interpretations, with the persons they may name, ranked, each with its reasons. The program ships no
person. Only where there is such a list is anything of this room imported.

In reading order: ``model`` (a person), ``listing`` (the list), ``naming`` (the names in an
inscription), ``life`` (a date against a life), ``weighing`` (who is the likelier), ``telling``
(one name read in two ways), ``whom`` (all of it). Making a list of another: ``cells``,
``importing``, ``mapping``, ``tei``.

``people.tsv`` of a user's folder: a row a person, a column a sort of name (``names/people.py``
takes them apart and reads them). ``persons/`` is imported only where there is one
(``tables.has_own``), by ``read``, ``entry``, ``check`` and ``concord`` alike, after reading: names
in current forms, in the passages that name people; what agrees weighs as ``person_evidence.tsv``
says, against the others of the list and against somebody who is in none. Import: ``importing.py``;
a heading is a row in ``people_headings.tsv``, a profession one in ``people_roles.tsv``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.persons.importing import (
        ImportedPeople as ImportedPeople,
        as_table as as_table,
        imported_people as imported_people,
        proposed_mapping as proposed_mapping,
    )
    from inscribe.persons.listing import people as people, people_called as people_called
    from inscribe.persons.mapping import as_toml as as_toml, of_toml as of_toml
    from inscribe.persons.model import ListedPerson as ListedPerson
    from inscribe.persons.tei import (
        lines_of_tei as lines_of_tei,
        people_of_tei as people_of_tei,
    )
    from inscribe.persons.whom import with_persons as with_persons
else:
    __getattr__ = late.door(
        __name__,
        {
            "importing": "ImportedPeople as_table imported_people proposed_mapping",
            "listing": "people people_called",
            "mapping": "as_toml of_toml",
            "model": "ListedPerson",
            "tei": "lines_of_tei people_of_tei",
            "whom": "with_persons",
        },
    )
