"""The changes made to a record, kept beside it, so that the last can be taken back.

``.NAME.toml.history`` holds a line of JSON a change: what, who, when, the record's text before it,
and the mark (SHA-256) of the text after it. It is written whole, and before the record: a change
that was stopped between the two never came about, which the marks tell.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime, timezone
from pathlib import Path
from typing import NamedTuple

from inscribe import files, writing
from inscribe.errors import InputError, Place, reason_of

MOST_KEPT = 50  # changes of one record
_CHANGED = "the record was changed meanwhile"


class PastChange(NamedTuple):
    """One change: ``batch`` is common to the changes that one command made to several records."""

    what: str
    by: str
    when: str  # in UTC, to the second
    batch: str
    before: str
    after: str  # the mark of the text after it


def history_of(record: Path) -> Path:
    """Return where the changes of a record are kept."""
    return record.with_name(f".{record.name}.history")


def past_changes(record: Path) -> list[PastChange]:
    """Return the changes that came about, oldest first.

    Raises:
        InputError: the history or the record cannot be read.
    """
    path = history_of(record)
    if not path.exists():
        return []
    try:
        rows = [json.loads(line) for line in files.read_text(path).splitlines() if line.strip()]
        changes = [PastChange(**row) for row in rows]
    except (ValueError, TypeError, RecursionError) as error:
        hint = "move it away to begin a new one"
        raise InputError("the history cannot be read", Place(str(path)), hint) from error
    now = _text(record)
    while changes and changes[-1].before == now:  # stopped before the record was written
        changes.pop()
    return changes


def new_batch() -> str:
    """Return a name for the changes of one command: its time, and what tells it from another."""
    import secrets

    return f"{_now()} {secrets.token_hex(4)}"


def change(record: Path, before: str, after: str, *, what: str, by: str, batch: str) -> None:
    """Write a record's new text, and what it was before into its history.

    ``before`` is the text that was read, with newlines for line ends; the record's own line ends
    and byte order mark are kept.

    Raises:
        InputError: the record is not what was read any more, or cannot be written.
    """
    with _held(record):
        now = _text(record)
        if files.decode(now.encode("utf-8"), str(record)) != before:
            raise InputError(_CHANGED, Place(str(record)), "give the command again")
        written = _like(now, after)
        made = PastChange(what, by, _now(), batch, now, _mark(written))
        _keep(record, [*past_changes(record), made])
        _write(record, written)


def undo(record: Path, *, force: bool = False) -> PastChange:
    """Take the last change of a record back, and return it.

    Raises:
        InputError: there is none, or the record was changed since and ``force`` is false.
    """
    with _held(record):
        last = last_change(record)
        if last is None:
            raise InputError("there is no change to take back", Place(str(record)), _NO_HISTORY)
        if not force and not is_as_left(record, last):
            raise InputError(
                "the record was changed since by other means, which would be lost",
                Place(str(record)),
                "see what would go with --dry-run; --force takes the change back all the same",
            )
        changes = past_changes(record)
        _write(record, last.before)
        _keep(record, changes[:-1])
        return last


_NO_HISTORY = "only changes by inscribe settle, merge and new --again can be taken back"


def last_change(record: Path) -> PastChange | None:
    """Return the last change of a record, or None."""
    changes = past_changes(record)
    return changes[-1] if changes else None


def is_as_left(record: Path, last: PastChange) -> bool:
    """Whether a record is what its last change left."""
    return _mark(_text(record)) == last.after


def _keep(record: Path, changes: Sequence[PastChange]) -> None:
    path = history_of(record)
    if not changes:
        path.unlink(missing_ok=True)
        return
    rows = (json.dumps(each._asdict(), ensure_ascii=False) for each in changes[-MOST_KEPT:])
    writing.write_text(path, "".join(f"{row}\n" for row in rows), force=True)


def _text(record: Path) -> str:
    """Return a record's text as it is, line ends and byte order mark too."""
    try:
        return record.read_bytes().decode("utf-8")
    except UnicodeDecodeError:
        files.read_text(record)
        raise
    except OSError as error:
        reason = reason_of(error, "it cannot be read")
        raise InputError(reason, Place(str(record)), "check the path") from error


def _write(record: Path, text: str) -> None:
    target = record.resolve()  # a link stays a link
    mode = target.stat().st_mode
    writing.write_bytes(target, text.encode("utf-8"), force=True)
    target.chmod(mode)


def _like(before: str, after: str) -> str:
    """Return a text with the line ends and the byte order mark of the one before it."""
    ends = after.replace("\n", "\r\n") if "\r\n" in before else after
    return f"\ufeff{ends}" if before.startswith("\ufeff") else ends


def _mark(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def _now() -> str:
    return datetime.now(timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")  # noqa: UP017


@contextmanager
def _held(record: Path) -> Iterator[None]:
    """Keep other commands from changing the records of the folder meanwhile."""
    with writing.held(record.parent):
        yield
