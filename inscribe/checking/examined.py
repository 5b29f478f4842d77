"""What is kept of a record that was examined: plain data, from which its findings are made."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple, Self

from inscribe.concordance import Document


class Remark(NamedTuple):
    """A finding as it is kept: its code, the line, and what is the matter."""

    code: str
    line: int | None
    message: str


class About(NamedTuple):
    """What a folder's check needs to know of a record beside its remarks.

    ``sources`` are the ids of texts that only the library has, each with its line; ``unsourced``
    tells whether a poem or saying stands there without a source; ``unsettled`` are the names that
    may be read in two ways and of which nobody has said how; ``pictures`` are the files of pictures
    that it names, each with its line; ``names`` are those that sign it, in current forms, with
    their readings.
    """

    id: str = ""
    kind: str = ""
    state: str = ""
    drawer: str = ""
    box: str = ""
    with_whom: str = ""
    title: str = ""
    sources: tuple[tuple[str, int | None], ...] = ()
    unsourced: bool = False
    unsettled: tuple[str, ...] = ()
    pictures: tuple[tuple[str, int | None], ...] = ()
    names: tuple[tuple[str, str], ...] = ()

    @classmethod
    def kept(cls, row: Sequence[Any]) -> Self:
        """Return what was kept as plain data."""
        about = cls(*row)
        sources = tuple((identity, line) for identity, line in about.sources)
        pictures = tuple((name, line) for name, line in about.pictures)
        names = tuple((written, romaji) for written, romaji in about.names)
        unsettled = tuple(about.unsettled)
        return about._replace(sources=sources, unsettled=unsettled, pictures=pictures, names=names)


class Examined(NamedTuple):
    """One record: what it is (None if it cannot be read), the remarks on it, and what it says."""

    about: About | None
    remarks: list[Remark]
    documents: list[Document]
