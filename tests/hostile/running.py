"""Running the command line inside this process, as ``inscribe`` would from a shell."""

from __future__ import annotations

import io
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from inscribe import cli, tables


class Result(NamedTuple):
    """What a command printed, and its exit status."""

    status: int
    out: bytes
    err: bytes

    @property
    def said(self) -> str:
        return (self.out + self.err).decode("utf-8", "backslashreplace")


def run(arguments: tuple[str, ...], stdin: bytes = b"") -> Result:
    """Run ``inscribe`` with these arguments; any error but an exit is a failure of the program."""
    with _streams(stdin) as (out, err):
        held, sys.argv = sys.argv, ["inscribe", *arguments]
        status = 0
        try:
            cli.main()
        except SystemExit as end:
            status = end.code if isinstance(end.code, int) else 0
        finally:
            sys.argv = held
            sys.stdout.flush()
            sys.stderr.flush()
            _forget_glossaries()
        return Result(status, out.getvalue(), err.getvalue())


@contextmanager
def _streams(stdin: bytes) -> Iterator[tuple[io.BytesIO, io.BytesIO]]:
    out, err = io.BytesIO(), io.BytesIO()
    held = sys.stdin, sys.stdout, sys.stderr
    sys.stdin = io.TextIOWrapper(io.BytesIO(stdin), encoding="utf-8", errors="surrogateescape")
    sys.stdout = io.TextIOWrapper(out, encoding="utf-8", errors="strict")
    sys.stderr = io.TextIOWrapper(err, encoding="utf-8", errors="backslashreplace")
    try:
        yield out, err
    finally:
        sys.stdin, sys.stdout, sys.stderr = held


def _forget_glossaries() -> None:
    for folder in tables.folders()[:-1]:
        tables.remove_folder(folder)


def held_in(folder: Path) -> dict[str, bytes | None]:
    """Return the name and content of everything in ``folder``."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() else None
        for path in folder.rglob("*")
    }
