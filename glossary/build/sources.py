"""Where the published data lies that the build scripts read, and how each file is read.

Everything here is needed only to rebuild tables: Debian's packages unicode-data, kanjidic-xml,
edict and enamdict, and the PyPI package kanjivg (installed without a module of its own, as a folder
``kanji``).
"""

from __future__ import annotations

import bz2
import gzip
import re
import sysconfig
import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from inscribe.descriptions import described
from inscribe.tables import SEPARATOR

UNICODE = Path("/usr/share/unicode")
KANJIDIC = Path("/usr/share/edict/kanjidic2.xml.gz")
EDICT = Path("/usr/share/edict/edict")
ENAMDICT = Path("/usr/share/edict/enamdict")
KANJIVG = Path(sysconfig.get_path("purelib")) / "kanji"
_ENTRY = re.compile(r"(\S+) \[([^]]+)\] /(.*)")
_CLASSES = re.compile(r"\(([a-z]+(?:,[a-z]+)*)\)")


def unihan(file: str, *properties: str) -> Iterator[tuple[str, str, str]]:
    """Yield (character, property, value) of the named properties of one Unihan file."""
    with bz2.open(UNICODE / f"Unihan_{file}.txt.bz2", "rt", encoding="utf-8") as lines:
        for line in lines:
            cells = line.rstrip("\n").split("\t")
            if len(cells) == 3 and cells[1] in properties:
                yield character(cells[0]), cells[1], cells[2]


def character(code: str) -> str:
    """Return the character of a code point written as U+XXXX (anything after ``<`` is dropped)."""
    return chr(int(code.split("<")[0][2:], 16))


def kanjidic() -> list[ET.Element]:
    """Return the entries of KANJIDIC2."""
    with gzip.open(KANJIDIC) as file:
        return list(ET.parse(file).getroot().iter("character"))


def lines_of(dictionary: Path) -> list[str]:
    """Return the entries of EDICT or ENAMDICT, a line each."""
    return dictionary.read_text(encoding="euc_jp", errors="replace").splitlines()


def enamdict() -> Iterator[tuple[str, str, set[str]]]:
    """Yield writing, kana and classes (s: surname, p: place, ...) of the entries of ENAMDICT."""
    with ENAMDICT.open(encoding="euc_jp", errors="ignore") as lines:
        for line in lines:
            if entry := _ENTRY.match(line):
                codes = ",".join(_CLASSES.findall(entry[3])).split(",")
                yield entry[1], entry[2], set(codes)


def table(name: str) -> Iterator[list[str]]:
    """Yield the cells of each packaged row of a glossary table."""
    lines = described(name).file.read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines if line and not line.startswith("#")]
    yield from rows[1:]


def by_hand(file: str) -> list[list[str]]:
    """Return the cells of each line of a file kept by hand in this folder, without remarks."""
    lines = (Path(__file__).parent / file).read_text(encoding="utf-8").splitlines()
    return [line.split("\t") for line in lines if line and not line.startswith("#")]


def listed(values: Iterable[str]) -> str:
    """Return a cell of several values."""
    return SEPARATOR.join(values)


def as_text(name: str, rows: Iterable[Sequence[str]]) -> str:
    """Return a table as it is written: the columns of its description, then its rows."""
    return "".join("\t".join(row) + "\n" for row in (tuple(described(name).columns), *rows))
