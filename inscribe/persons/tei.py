"""A list of persons made from the ``listPerson`` of a TEI document.

Each ``person`` gives its ``xml:id``; its ``persName`` elements, whose type (or that of the
``surname``, ``forename``, ``addName`` in them) is the sort of name; ``birth``, ``death`` and
``floruit``; ``residence``, ``occupation``, ``roleName``, ``affiliation``; ``note``, ``bibl``. A
name in kana (``xml:lang`` ja-Hira, ja-Kana, ja-Hrkt) is the reading of the name before it; one in
Latin letters is how the list calls the person. A ``relation`` of the name teacher goes from its
active person to its passive ones. What else stands in a person is kept in the note.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe import strict
from inscribe.errors import InputError, Place
from inscribe.files import read_text
from inscribe.persons.importing import ImportedPeople, PeopleTable, as_table
from inscribe.reading.names import SORTS

if TYPE_CHECKING:
    import xml.etree.ElementTree as ET

_TEI = "{http://www.tei-c.org/ns/1.0}"
_XML = "{http://www.w3.org/XML/1998/namespace}"
_IN_KANA = ("ja-Hira", "ja-Kana", "ja-Hrkt")
_PARTS = {"surname": "surname", "forename": "given", "addName": "other", "genName": "other"}
_DATED = {"birth": "birth", "death": "death", "floruit": "active"}
_SAID = {
    "residence": "place",
    "roleName": "title",
    "occupation": "role",
    "affiliation": "house",
    "note": "note",
    "bibl": "source",
}
_ATTRIBUTES = ("when", "notBefore", "from", "notAfter", "to")

Cell = tuple[str, str, str]  # column, what it is called there, what it says


def people_of_tei(content: str, name: str) -> ImportedPeople:
    """Return the list of persons that a TEI document holds.

    Raises:
        InputError: it is not well-formed, or holds no person.
    """
    root = strict.xml_root(content, name)
    persons = list(root.iter(f"{_TEI}person"))
    if not persons:
        hint = "expected listPerson with person elements, in the namespace of TEI P5"
        raise InputError("there is no person in it", Place(name), hint)
    table = PeopleTable()
    teachers = _teachers(root)
    for number, person in enumerate(persons, start=1):
        identity = person.get(f"{_XML}id", "")
        cells = [("id", "xml:id", identity)] if identity else []
        cells += _cells(person)
        cells += [("teacher", "relation", each) for each in teachers.get(identity, ())]
        table.add(number, cells)
    return table.finished({})


def lines_of_tei(path: Path) -> list[str]:
    """Return the lines of ``people.tsv`` that a ``people.xml`` in a glossary folder stands for.

    Raises:
        InputError: it is not well-formed, or holds no person.
    """
    return as_table(people_of_tei(read_text(path), str(path)).rows).rstrip("\n").split("\n")


def _cells(person: ET.Element) -> Iterator[Cell]:
    for child in person:
        tag = str(child.tag).removeprefix(_TEI)
        if tag == "persName":
            yield from _names(child)
        elif tag in _DATED:
            yield _DATED[tag], tag, _date(child)
        elif text := _words(child):
            yield _SAID.get(tag, "note"), tag, text


def _names(name: ET.Element) -> Iterator[Cell]:
    lang = name.get(f"{_XML}lang", "ja")
    parts = [child for child in name if str(child.tag).removeprefix(_TEI) in _PARTS]
    if not parts:
        yield from _name(name, name.get("type", "other"), lang)
        return
    loose = [name.text or "", *(child.tail or "" for child in name)]
    if any(text.strip() for text in loose) or len(parts) < len(name) or _is_latin(lang):
        yield "name", "persName", _words(name)
    if not _is_latin(lang):
        for part in parts:
            sort = part.get("type") or _PARTS[str(part.tag).removeprefix(_TEI)]
            yield from _name(part, sort, part.get(f"{_XML}lang", lang))


def _name(element: ET.Element, sort: str, lang: str) -> Iterator[Cell]:
    words = _words(element)
    if not words:
        return
    known = sort if sort in SORTS else "other"
    if _is_latin(lang):
        yield "name", "persName", words
    elif lang in _IN_KANA:
        yield f"{known} kana", "persName", words
    else:
        yield known, f"persName {sort}", words


def _is_latin(lang: str) -> bool:
    return lang.endswith("-Latn") or lang.partition("-")[0] != "ja"


def _date(element: ET.Element) -> str:
    """Return the years of an element: those of its attributes, else what it says."""
    when = [element.get(key, "") for key in _ATTRIBUTES]
    years = list(dict.fromkeys(date.partition("-")[0].lstrip("0") for date in when if date))
    if not years:
        return _words(element)
    about = "about " if element.get("cert") in ("low", "medium") else ""
    return "-".join(f"{about}{year}" for year in years)


def _words(element: ET.Element) -> str:
    return " ".join("".join(element.itertext()).split())


def _teachers(root: ET.Element) -> dict[str, list[str]]:
    """Return the teachers of each person, by ids."""
    found: dict[str, list[str]] = {}
    for relation in root.iter(f"{_TEI}relation"):
        if relation.get("name") == "teacher":
            for pupil in relation.get("passive", "").split():
                active = relation.get("active", "").split()
                found.setdefault(pupil.lstrip("#"), []).extend(t.lstrip("#") for t in active)
    return found
