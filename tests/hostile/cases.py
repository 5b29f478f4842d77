"""One hostile or sloppy input: what is typed, what lies in the folder, and what must come of it."""

from __future__ import annotations

from dataclasses import dataclass, field

FLOWER = "花の色はうつりにけりな"
REFUSED = 2
DONE = 0
PARTLY = 1  # a line was refused, and the rest went on

RECORD = """\
id = "X-1"
kind = "tsuba"
{top}
[[inscription]]
place = "front"
text = "花の色は"
{inner}
"""


@dataclass(frozen=True)
class Case:
    """A command and the files beside it; ``said`` must stand in what it prints."""

    name: str
    arguments: tuple[str, ...]
    said: str
    status: int = REFUSED
    files: dict[str, bytes] = field(default_factory=dict)
    stdin: bytes = b""
    links: dict[str, str] = field(default_factory=dict)
    writes: tuple[str, ...] = ()  # files the command may make


def record(top: str = "", inner: str = "") -> bytes:
    """Return a small record with something added at the top, or in its inscription."""
    return RECORD.format(top=top, inner=inner).encode("utf-8", "surrogatepass")


def of_record(name: str, content: bytes, said: str, status: int = REFUSED) -> Case:
    """Return the case of a record of which an entry is asked."""
    return Case(name, ("entry", "r.toml"), said, status, {"r.toml": content})


def of_source(name: str, file: str, content: bytes, said: str, status: int = REFUSED) -> Case:
    """Return the case of a file added to the library."""
    made = ("l.sqlite", "l.sqlite-wal", "l.sqlite-shm") if status == DONE else ()
    return Case(name, ("source", "add", file), said, status, {file: content}, writes=made)
