"""The folders that tables lie in, the user's before the packaged one; what is kept of tables."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import ParamSpec, TypeVar

from inscribe.errors import InputError, Place, TableError

P = ParamSpec("P")
T = TypeVar("T")


_PACKAGE = Path(__file__).parent.parent
_INSTALLED = _PACKAGE / "glossary"
PACKAGED = _INSTALLED if _INSTALLED.is_dir() else _PACKAGE.parent / "glossary"
_NO_SUBJECT = "build"  # the folder of the scripts that make tables
IN_XML = {"people": "inscribe.persons:lines_of_tei"}  # tables that a user may have as TEI
_user_folders: list[Path] = []
_forgetters: list[Callable[[], None]] = []


def folders() -> tuple[Path, ...]:
    """Return the folders tables are read from, the user's before the packaged one."""
    return (*_user_folders, PACKAGED)


def add_folder(folder: str | os.PathLike[str]) -> None:
    """Read tables from ``folder`` too, its rows before all others, whatever they hold.

    ``inscribe.add_glossary`` does the same with tables that are to be checked first.

    Raises:
        InputError: ``folder`` is not a folder.
    """
    path = Path(folder)
    if not path.is_dir():
        raise InputError("there is no such glossary folder", Place(str(path)), "check the path")
    if path not in _user_folders:
        _user_folders.insert(0, path)
        forget()


def remove_folder(folder: str | os.PathLike[str]) -> None:
    """Read no tables from ``folder`` any more."""
    _user_folders.remove(Path(folder))
    forget()


def forget() -> None:
    """Let everything that was made of tables be made anew when it is next asked for."""
    for clear in _forgetters:
        clear()


def cached(most: int | None = None) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Return a decorator that keeps what a function returned, for at most so many arguments.

    What it kept is forgotten when the folders of tables change, so every function that reaches a
    table, however far away, may be decorated so.

    >>> @cached()
    ... def greetings(name: str) -> list[str]:
    ...     print("loading")
    ...     return [f"hello {name}"]
    >>> greetings("you") is greetings("you")
    loading
    True
    """

    def decorate(function: Callable[P, T]) -> Callable[P, T]:
        kept = lru_cache(most)(function)
        _forgetters.append(kept.cache_clear)
        return kept  # type: ignore[return-value]  # it takes the same arguments

    return decorate


def tables_in(folder: Path) -> dict[str, Path]:
    """Return the files of the tables in a folder and its folders of subjects, by their names.

    A list of persons may lie there as TEI, ``people.xml``.

    Raises:
        TableError: a folder has a table in both forms.
    """
    found: dict[str, Path] = {}
    for place in (folder, *(folder / subject for subject in subjects())):
        if place.is_dir():
            with os.scandir(place) as entries:
                names = sorted(entry.name for entry in entries if entry.name.endswith(".tsv"))
            for name in names:
                found.setdefault(name.removesuffix(".tsv"), place / name)
    if folder != PACKAGED:
        for file in (folder / f"{name}.xml" for name in IN_XML):
            if file.is_file() and (other := found.setdefault(file.stem, file)) != file:
                said = f"{file.stem} stands in two files"
                raise TableError(said, Place(str(file)), f"keep it or {other.name}")
    return found


@cached()
def subjects() -> tuple[str, ...]:
    """Return the names of the folders that the packaged tables lie in."""
    with os.scandir(PACKAGED) as entries:
        return tuple(sorted(e.name for e in entries if e.is_dir() and e.name != _NO_SUBJECT))


def files(name: str) -> tuple[Path, ...]:
    """Return the files of the table ``name``, the user's first."""
    return tuple(found[name] for found in _found_in_folders() if name in found)


def packaged_tables() -> dict[str, Path]:
    """Return the files of the packaged tables, by their names."""
    return _found_in_folders()[-1]


@cached()
def _found_in_folders() -> tuple[dict[str, Path], ...]:
    return tuple(map(tables_in, folders()))


def has_own(name: str) -> bool:
    """Whether a folder of the user's has the table ``name``; nothing is read where there is none.

    >>> has_own("people")
    False
    """
    return bool(_user_folders) and len(files(name)) > (name in packaged_tables())


def files_about(subject: str) -> tuple[Path, ...]:
    """Return the files of every table of a subject, the user's too."""
    packaged = packaged_tables()
    names = sorted(name for name, path in packaged.items() if path.parent.name == subject)
    return tuple(path for name in names for path in files(name))
