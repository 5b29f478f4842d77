"""The files that entries of many records go to: all are named before any is written.

A record's entry is called as its file. Drawings, of which a record may have several, are numbered
from the second; a name that another record has is never given away.

>>> file_names([(Path("A.toml"), 2), (Path("A-2.toml"), 1)], "svg")
[[PosixPath('A.svg'), PosixPath('A-2-2.svg')], [PosixPath('A-2.svg')]]
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from pathlib import Path

from inscribe import writing
from inscribe.errors import InputError, Place, reason_of


def file_names(records: Sequence[tuple[Path, int]], ending: str) -> list[list[Path]]:
    """Return the files for each record, which is given with how many files it needs.

    No two are the same, also for a disk that tells neither capitals nor composed letters apart.
    """
    taken: set[str] = set()

    def reserved(names: Iterator[str], record: Path) -> Path:
        for name in names:
            path = record.with_name(f"{name}.{ending}")
            key = unicodedata.normalize("NFC", str(path)).casefold()
            if key not in taken:
                taken.add(key)
                return path
        raise AssertionError("names are counted up without end")

    first = [reserved(_names(record.stem), record) for record, _ in records]
    return [
        [path, *(reserved(_names(f"{record.stem}-{n}"), record) for n in range(2, count + 1))]
        for path, (record, count) in zip(first, records, strict=True)
    ]


def _names(name: str) -> Iterator[str]:
    """Yield a name, and then what to call a file where it is taken."""
    yield name
    number = 2
    while True:
        yield f"{name}-{number}"
        number += 1


def encoded(first: str, text: str) -> bytes:
    """Return what a file of a text holds, beginning with ``first``, as a byte-order mark."""
    end = "" if text.endswith("\n") else "\n"
    return f"{first}{text}{end}".encode("utf-8", "backslashreplace")


def is_written(path: Path, data: bytes) -> bool:
    """Whether the file is there and holds just this, as where a stopped run is taken up again."""
    try:
        return path.stat().st_size == len(data) and path.read_bytes() == data
    except OSError:
        return False


def refuse_others(others: Sequence[Path]) -> None:
    """Refuse to write over files that hold anything else.

    Raises:
        InputError: there are such files.
    """
    if others:
        many = f", as do {len(others) - 1} more of this run" * (len(others) > 1)
        raise InputError(
            f"the file exists already, and holds something else{many}",
            Place(str(others[0])),
            "choose another folder or use --force",
        )


def write_file(path: Path, data: bytes, *, force: bool) -> None:
    """Write one of the files, making its folder.

    Raises:
        InputError: it cannot be written.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = reason_of(error, "it cannot be made")
        raise InputError(reason, Place(str(path.parent)), "choose another folder") from error
    writing.write_bytes(path, data, force=force)
