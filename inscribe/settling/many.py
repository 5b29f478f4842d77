"""One thing settled in many records: which they are, and what would change in each."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fnmatch import fnmatchcase
from pathlib import Path
from typing import Any, NamedTuple

from inscribe import files
from inscribe.errors import InputError, InscribeError
from inscribe.record import Record, loads, mended, paths_in, revised
from inscribe.settling.applying import Settled

KEYS = ("id", "kind", "title", "place", "hand", "execution", "register", "text", "reader")


class Revision(NamedTuple):
    """What would change in one record: its text before and after, and what is to be told."""

    path: Path
    before: str
    after: str
    settled: Settled
    mended: tuple[str, ...] = ()

    @property
    def changes(self) -> bool:
        """Whether anything changes."""
        return self.before != self.after


def revision(path: Path, settle: Callable[[Record], Settled]) -> Revision:
    """Return what ``settle`` changes in a record; what its moved signs left behind is mended first.

    Raises:
        InscribeError: the file is no record, or cannot be changed so.
    """
    before = files.read_text(path)
    text, moves = mended(before, str(path))
    told = tuple(
        f"the {move.key} of {move.of} stood at signs {move.before[0]}-{move.before[1]}, and is at "
        f"{move.after[0]}-{move.after[1]} now"
        for move in moves
    )
    record = loads(text, str(path), path.parent)
    settled = settle(record)
    after = revised(text, str(path), settled.record) if settled.record != record else text
    return Revision(path, before, after, settled, told)


def chosen(paths: Sequence[Path], conditions: Sequence[str]) -> Iterator[Path | InscribeError]:
    """Yield the records that are meant, or why one of a folder cannot be read.

    Folders stand for all records in them; each of ``conditions`` is KEY=PATTERN.

    Raises:
        InputError: a condition is none.
    """
    tests = [_condition(each) for each in conditions]
    for path in paths:
        named = not path.is_dir()
        for each in [path] if named else paths_in(path):
            if not tests:
                yield each
                continue
            try:
                text, _ = mended(files.read_text(each), str(each))
                record = loads(text, str(each), each.parent)
            except InscribeError as error:
                yield error
                continue
            if all(_holds(record, key, pattern) for key, pattern in tests):
                yield each


def _condition(given: str) -> tuple[str, str]:
    key, equals, pattern = given.partition("=")
    if not equals or key not in KEYS:
        hint = f"as in kind=kozuka or id=A-04*; keys: {', '.join(KEYS)}"
        raise InputError(f"--where {given} is no condition", hint=hint)
    return key, pattern


def _holds(record: Record, key: str, pattern: str) -> bool:
    return any(fnmatchcase(value, pattern) for value in _values(record, key))


def _values(record: Record, key: str) -> Iterator[str]:
    if key in ("id", "kind", "title"):
        yield str(getattr(record, key))
        return
    for inscription in record.inscriptions:
        if key == "reader":
            yield from (reader.by for reader in inscription.readers)
        elif key == "text":
            yield inscription.transcription.text
        else:
            value: Any = getattr(inscription, key)
            yield str(value)
