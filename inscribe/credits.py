"""Whose works the tables are built from, under what licences, and what was changed.

``glossary/sources.toml`` lists the works; the texts of the licences lie in ``licences``.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from inscribe import tables

LICENCES = Path(__file__).parent / "licences"


@dataclass(frozen=True, slots=True)
class SourceWork:
    """A published work that tables are built from; ``licence`` is that of the work itself."""

    title: str
    author: str
    link: str
    licence: str
    version: str
    changed: str
    tables: tuple[str, ...]


@tables.cached()
def source_works() -> tuple[SourceWork, ...]:
    """Return the works, in the order of their list.

    >>> [work.licence for work in source_works() if work.title == "KanjiVG"]
    ['CC-BY-SA-3.0']
    """
    said = tomllib.loads((tables.PACKAGED / "sources.toml").read_text(encoding="utf-8"))
    return tuple(
        SourceWork(**{**work, "tables": tuple(work["tables"])}) for work in said["works"].values()
    )


def credits_as_text() -> str:
    """Return what is owed to whom, as lines for a reader."""
    return "\n".join(_lines())


def _lines() -> Iterator[str]:
    yield "inscribe is free software under GPL-3.0-or-later. Its tables are built from these works:"
    for work in source_works():
        passed_on = " (adapted, passed on under CC-BY-SA-4.0)" * (work.licence == "CC-BY-SA-3.0")
        yield ""
        yield f"{work.title}, by {work.author}"
        yield f"  {work.link}"
        yield f"  version  {work.version}"
        yield f"  licence  {work.licence}{passed_on}"
        yield f"  changed  {work.changed}"
        yield f"  tables   {', '.join(work.tables)}"
    yield ""
    yield "All other tables are this project's own; inscribe glossary show NAME tells where each is"
    yield f"from. The texts of the licences: {LICENCES}"
