"""The words of the installed UniDic, with the connection classes and costs MeCab gives them.

MeCab keeps a dictionary as one binary file (header, double array, tokens of 16 bytes, feature
strings; the layout is documented by MeCab's own source, ``dictionary.cpp``) and a matrix of
connection costs. Reading both lets new entries be given the classes and costs of their like.

Every reading asks for the folder, and hardly any for what lies in it: what only that needs is
imported where it is used.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from inscribe.errors import InputError, Place

if TYPE_CHECKING:
    from array import array

HEADER = "<10I"
HEADER_SIZE = 72  # the ten numbers and the name of the character set
TOKEN = "<HHHhII"
_SIDES = 4  # bytes of the numbers of rows and columns before the connection costs
_OTHER_SCRIPTS = r"[^\u3005-\u3007\u3041-\u3096\u3400-\u9fff\U00020000-\U0003ffff]"


class UnidicEntry(NamedTuple):
    """One entry: what is written, its connection class, its cost (lower is likelier)."""

    surface: str
    connection: int
    cost: int
    fields: list[str]  # UniDic's features, in its own order

    @property
    def conjugation(self) -> str:
        """The conjugation type, as 文語四段-ハ行."""
        return self.fields[4]

    @property
    def form(self) -> str:
        """The inflected form, as 連用形-一般."""
        return self.fields[5]


class Classes(NamedTuple):
    """UniDic's connection classes: part of speech, conjugation, form, word, origin."""

    rows: tuple[tuple[str, ...], ...]

    def numbers(self, wanted: Callable[[tuple[str, ...]], bool]) -> frozenset[int]:
        """Return the numbers of the classes that ``wanted`` accepts."""
        return frozenset(number for number, row in enumerate(self.rows) if wanted(row))


def folder() -> Path:
    """Return the folder of the installed UniDic."""
    import unidic_lite

    return Path(unidic_lite.DICDIR)


def version_files() -> list[Path]:
    """Return the files that tell which version of UniDic is installed."""
    return [path for path in (folder() / "version", folder() / "dicrc") if path.exists()]


def classes(dictionary: Path) -> Classes:
    """Return the connection classes (left and right classes are the same in UniDic)."""
    import csv

    lines = (dictionary / "left-id.def").read_text(encoding="utf-8").splitlines()
    return Classes(tuple(tuple(next(csv.reader([line.split(" ", 1)[1]]))) for line in lines))


def words(
    dictionary: Path, connections: frozenset[int], without: str | re.Pattern[str] = _OTHER_SCRIPTS
) -> Iterator[UnidicEntry]:
    """Yield the entries whose class is in ``connections`` and whose writing ``without`` is not in.

    By default these are the words written in kanji and hiragana only.

    Raises:
        InputError: the dictionary is not in MeCab's format of version 102.
    """
    import csv
    import mmap
    import struct

    unwanted = re.compile(without)
    with (dictionary / "sys.dic").open("rb") as file:
        data = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
    _, version, _, _, _, _, double_array, tokens, features, _ = struct.unpack_from(HEADER, data)
    if version != 102 or HEADER_SIZE + double_array + tokens + features != len(data):
        raise InputError(
            "the dictionary is in an unknown format",
            Place(str(dictionary)),
            "reinstall unidic-lite",
        )
    first_token = HEADER_SIZE + double_array
    first_feature = first_token + tokens
    for left, _, _, cost, offset, _ in struct.iter_unpack(TOKEN, data[first_token:first_feature]):
        if left not in connections:
            continue
        start = first_feature + offset
        feature = data[start : data.find(b"\0", start)].decode()
        fields = feature.split(",") if '"' not in feature else next(csv.reader([feature]))
        if len(fields) > 17 and fields[8] and not unwanted.search(fields[8]):
            yield UnidicEntry(fields[8], left, cost, fields)


def connection_costs(dictionary: Path) -> tuple[int, array[int]]:
    """Return the matrix of connection costs: its side, and its cells.

    A word of class ``right`` after one of class ``left`` costs ``cells[left + side * right]``.

    Raises:
        InputError: the matrix is not square.
    """
    import struct
    from array import array

    cells = array("h")
    path = dictionary / "matrix.bin"
    with path.open("rb") as file:
        side, other = struct.unpack("<HH", file.read(_SIDES))
        if side != other:
            raise InputError(
                "the connection matrix is not square",
                Place(str(dictionary)),
                "reinstall unidic-lite",
            )
        cells.fromfile(file, (path.stat().st_size - _SIDES) // cells.itemsize)
    return side, cells
