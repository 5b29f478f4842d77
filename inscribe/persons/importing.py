r"""A list of persons made from another list: a table (CSV or TSV) whose columns are mapped.

Every cell of the other list is in the new one: in the column it is mapped to, or, where it cannot
stand there, word for word in the note, and that is told with its row. Rows with one id are one
person, so a list that has a row for each name is taken too.

>>> text = "Nr;Name;俳号;生没年;Sammlung\n7;Uan;雨蛙庵（うああん）;1712–1780;Kabinett 3\n"
>>> made = imported_people(text, "list.csv")
>>> made.mapping
{'Nr': 'id', 'Name': 'name', '俳号': 'pen', '生没年': 'life', 'Sammlung': 'note'}
>>> row = made.rows[0]
>>> row["pen"], row["birth"], row["death"], row["note"]
('雨蛙庵=うああん', '1712', '1780', 'Sammlung: Kabinett 3')
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from inscribe import strict, tables
from inscribe.descriptions import described
from inscribe.errors import InputError, Place
from inscribe.persons import cells
from inscribe.persons.listing import COLUMNS, contradiction, years_of
from inscribe.reading.names import SORTS

KANA, LIFE, NOTE = "kana", "life", "note"
TARGETS = (*COLUMNS, KANA, LIFE, *(f"{sort} {KANA}" for sort in SORTS))
_DELIMITERS = ",;\t"
_YEARS = ("birth", "death")
_SEVERAL = frozenset({*SORTS, "place", "title", "role", "teacher", "house"})  # values in one cell
# What stands in these columns as it was written; of the others the note keeps how it was.
_WORD_FOR_WORD = _SEVERAL - {"role"} | {"id", "name", "source"}
_HEADS_OF_NOTES = frozenset({"note", "notes", "remark", "remarks", "備考", "注記"})
_BAR = " | "  # between notes

PeopleRow = dict[str, str]
MappedCell = tuple[str, str, str]  # the column it goes to, its heading, what it says


class ImportRemark(NamedTuple):
    """What was done with a cell that could not stand where it was mapped to."""

    row: int  # the line the row begins in, from 1
    heading: str
    said: str

    @property
    def told(self) -> str:
        """The remark with its place."""
        row = f"line {self.row}: " if self.row else ""
        return f"{row}{f'{self.heading}: ' if self.heading else ''}{self.said}"


class ImportedPeople(NamedTuple):
    """The rows of ``people.tsv``, the mapping they were made by, and what is to be looked at."""

    rows: tuple[PeopleRow, ...]
    mapping: dict[str, str]
    remarks: tuple[ImportRemark, ...]


def proposed_mapping(headings: Sequence[str]) -> dict[str, str]:
    """Return the column for each heading: what the table of headings has, else the note.

    >>> proposed_mapping(["ID", "Pen name", "Inv."])
    {'ID': 'id', 'Pen name': 'pen', 'Inv.': 'note'}
    """
    known = {row["heading"]: row["column"] for row in tables.rows("people_headings")}
    found: dict[str, str] = {}
    for heading in headings:
        plain = " ".join(cells.plain(heading).lower().replace("_", " ").split())
        column = known.get(plain, plain if plain in TARGETS else NOTE)
        once = column in ("id", "name") and column in found.values()
        found[heading] = NOTE if once else column
    return found


def imported_people(
    text: str, name: str, mapping: Mapping[str, str] | None = None
) -> ImportedPeople:
    """Return the list of persons that a table is.

    Args:
        text: the table; cells are divided by commas, semicolons or tabs.
        name: the file's name, for errors.
        mapping: the columns of ``people.tsv`` by heading, before those that are proposed.

    Raises:
        InputError: the table cannot be read, or the mapping names a heading or a column that there
            is not.
    """
    delimiter = _delimiter(text)
    headings = [each for each in strict.columns_of(text, name, delimiter, ()) if each]
    chosen = proposed_mapping(headings) | _checked(mapping or {}, headings, name)
    table = PeopleTable()
    for number, row in strict.table_rows(text, name, delimiter, ()):
        table.add(number, ((chosen[heading], heading, cell) for heading, cell in row.items()))
    return table.finished(chosen)


def _delimiter(text: str) -> str:
    head = next((line for line in text.split("\n") if line.strip() and line[:1] != "#"), "")
    return max(_DELIMITERS, key=head.count)


def _checked(mapping: Mapping[str, str], headings: Sequence[str], name: str) -> dict[str, str]:
    for heading, column in mapping.items():
        if heading not in headings:
            hint = f"the headings are {', '.join(headings)}"
            raise InputError(f"there is no column “{heading}”", Place(name, 1), hint)
        if column not in TARGETS:
            hint = f"use one of {', '.join(TARGETS)}"
            raise InputError(f"“{heading}” cannot go to “{column}”", Place(name, 1), hint)
    return dict(mapping)


class PeopleTable:
    """The list that is being made: persons by id, and what could not stand where it was to."""

    def __init__(self) -> None:
        self._people: dict[str, PeopleRow] = {}
        self._remarks: list[ImportRemark] = []

    def add(self, number: int, cells: Iterable[MappedCell]) -> None:
        """Add the cells of a row of the other list; ``number`` is told in remarks."""
        row = _RowReader(number, self._remarks)
        made = row.row(cells)
        identity = made["id"] or f"row-{number}"
        while not made["id"] and identity in self._people:
            identity += "-"
        made["id"] = identity
        if identity in self._people:
            self._join(self._people[identity], made, number)
        else:
            self._people[identity] = made

    def finished(self, mapping: dict[str, str]) -> ImportedPeople:
        """Return the list; years that contradict each other are put into the note."""
        for person in self._people.values():
            if problem := contradiction(*years_of(person)):
                for column in (*_YEARS, "active"):
                    _add_note(person, f"{column}: {person[column]}" if person[column] else "")
                    person[column] = ""
                said = f"{person['id']}: {problem}; the years are kept in the note"
                self._remarks.append(ImportRemark(0, "", said))
        return ImportedPeople(tuple(self._people.values()), mapping, tuple(self._remarks))

    def _join(self, person: PeopleRow, further: PeopleRow, number: int) -> None:
        """Add a further row of one person: more names; what differs is kept in the note."""
        for column, cell in further.items():
            if column == NOTE:
                _add_note(person, cell)
            elif column in _SEVERAL and cell:
                both = (*tables.listed(person[column]), *tables.listed(cell))
                person[column] = tables.SEPARATOR.join(dict.fromkeys(both))
            elif cell and not person[column]:
                person[column] = cell
            elif cell not in ("", person[column]):
                _add_note(person, f"{column}: {cell}")
                said = (
                    f"{person['id']} has {column} {person[column]} already; {cell} is in the note"
                )
                self._remarks.append(ImportRemark(number, column, said))


def _add_note(person: PeopleRow, text: str) -> None:
    person[NOTE] = _BAR.join(filter(None, (person[NOTE], text)))


class _RowReader:
    """Makes a row of ``people.tsv`` of the cells of another list."""

    def __init__(self, number: int, remarks: list[ImportRemark]) -> None:
        self._number = number
        self._remarks = remarks
        self._made: dict[str, list[str]] = {column: [] for column in COLUMNS}

    def row(self, cells: Iterable[MappedCell]) -> PeopleRow:
        """Return the cells by the columns of ``people.tsv``; one that does not fit is a note."""
        before = ""  # the sort of name of the cell before
        late: list[tuple[str, str, str]] = []
        for column, heading, cell in cells:
            before = column if column in SORTS else before
            text = _one_line(cell)
            if column.endswith(KANA):
                sort = column.removesuffix(KANA).strip() or before
                if text and not self._has_taken_kana(sort, text):
                    late.append((sort, heading, text))
            elif text:
                self._take(column, heading, cell if column in SORTS else text)
        for sort, heading, text in late:  # a reading may stand before the name
            if not self._has_taken_kana(sort, text):
                self._keep(KANA, heading, text)
        return {
            column: (_BAR if column == NOTE else tables.SEPARATOR).join(dict.fromkeys(some))
            for column, some in self._made.items()
        }

    def _take(self, column: str, heading: str, text: str) -> None:
        if column == NOTE:
            self._made[NOTE].append(_noted(heading, text))
            return
        found = _life(text) if column == LIFE else _values(column, text)
        if found is None or any(self._made[c] and c not in _SEVERAL for c in found):
            self._keep(column, heading, text)
            return
        for each, values in found.items():
            self._made[each] += values
        made = "-".join(value for values in found.values() for value in values)
        if column not in _WORD_FOR_WORD and made != cells.with_hyphens(text):
            self._made[NOTE].append(_noted(heading, text))  # as it stood, beside what it became

    def _has_taken_kana(self, sort: str, text: str) -> bool:
        found = cells.with_kana(self._made[sort], text) if sort else None
        if found is None or not all(map(_fits(sort), found)):
            return False
        self._made[sort] = found
        return True

    def _keep(self, column: str, heading: str, text: str) -> None:
        """Keep in the note what cannot stand in its column, and say so."""
        self._made[NOTE].append(_noted(heading, text))
        said = f"“{_one_line(text)}” cannot stand in {column}; it is kept in the note"
        self._remarks.append(ImportRemark(self._number, heading, said))


def _noted(heading: str, text: str) -> str:
    is_note = proposed_mapping([heading])[heading] == NOTE and heading.lower() in _HEADS_OF_NOTES
    return _one_line(text if is_note else f"{heading}: {text}")


def _one_line(text: str) -> str:
    """Return a text in one cell of a table: what ends lines and cells is a space."""
    return " ".join(text.split())


def _life(text: str) -> dict[str, list[str]] | None:
    years = cells.life_of_cell(text)
    if years is None:
        return None
    return {column: [year] for column, year in zip(_YEARS, years, strict=True) if year}


def _values(column: str, text: str) -> dict[str, list[str]] | None:
    """Return a cell as the values of a column; None where it cannot stand there."""
    found = _parsed(column, text)
    if found is None or not all(map(_fits(column), found)):
        return None
    return {column: found} if found else {}


def _fits(column: str) -> Callable[[str], bool]:
    """Return what tells whether a value may stand in a column, after the table's description."""
    kind = described("people").columns[column].kind

    def fits(value: str) -> bool:
        return bool(kind is None or kind.pattern.fullmatch(value))

    return fits


def _parsed(column: str, text: str) -> list[str] | None:
    if column in SORTS:
        return cells.forms_of_cell(text)
    if column in _YEARS or column == "active":
        year = cells.year_of_cell(text) if column in _YEARS else cells.span_of_cell(text)
        return None if year is None else [year] if year else []
    if column in ("place", "title"):
        return cells.words_of_cell(text)
    if column == "role":
        return cells.role_of_cell(text)
    if column in ("teacher", "house"):
        return [part.strip() for part in text.split(tables.SEPARATOR) if part.strip()]
    return [text] if column != "id" or text[0] != "#" else None


def as_table(rows: Sequence[PeopleRow]) -> str:
    """Return the text of ``people.tsv``."""
    return "".join(f"{line}\n" for line in _lines(rows))


def _lines(rows: Sequence[PeopleRow]) -> Iterator[str]:
    yield "\t".join(COLUMNS)
    for row in rows:
        yield "\t".join(row[column] for column in COLUMNS)
