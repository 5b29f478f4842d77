"""The records of an import, written all or none.

Every file is written beside its place first; only when all are on the disk are they put there. If
one cannot be put, those before it are taken back. A process that is killed in between leaves some
records new and some as they were, each whole; the same command takes the rest up.
"""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from inscribe import writing
from inscribe.errors import InputError, Place, reason_of
from inscribe.importing.model import ImportPlan


def _refuse_others(plan: ImportPlan) -> None:
    """Refuse where a new record's file has come to be there meanwhile.

    Raises:
        InputError: there is such a file.
    """
    for outcome in plan.outcomes:
        if outcome.what == "new" and outcome.file and outcome.file.exists():
            hint = "nothing was written; import again"
            raise InputError("the file has come to be there", Place(str(outcome.file)), hint)


class _Staged(NamedTuple):
    """A file that is to be put in its place, and where what stands there is kept meanwhile."""

    target: Path
    made: Path
    before: Path


def write_plan(plan: ImportPlan, folder: Path) -> None:
    """Write the new and the changed records of a plan.

    Raises:
        InputError: they cannot be written; then none is.
    """
    wanted = [outcome for outcome in plan.outcomes if outcome.text and outcome.file]
    if not wanted:
        return
    new_folder = not folder.exists()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with (
            writing.held(folder),
            tempfile.TemporaryDirectory(dir=folder, prefix=".import-") as name,
        ):
            _refuse_others(plan)
            staged = [
                _staged(Path(name), number, outcome.file, outcome.text)
                for number, outcome in enumerate(wanted)
                if outcome.file
            ]
            _put(staged)
        writing.sync_folder(folder)
    except OSError as error:
        if new_folder:
            with contextlib.suppress(OSError):
                folder.rmdir()
        reason = reason_of(error, "it cannot be written")
        hint = "nothing was written; see whether there is room, and try again"
        raise InputError(reason, Place(str(error.filename or folder)), hint) from error


def _staged(stage: Path, number: int, target: Path, text: str) -> _Staged:
    made = stage / f"{number}.new"
    with made.open("wb") as file:
        file.write(text.encode())
        file.flush()
        os.fsync(file.fileno())
    return _Staged(target, made, stage / f"{number}.before")


def _put(staged: Sequence[_Staged]) -> None:
    """Put every file in its place, or none.

    Raises:
        OSError: one cannot be put; those before it have been taken back.
    """
    done: list[_Staged] = []
    try:
        for each in staged:
            done.append(each)
            if each.target.exists():
                each.target.replace(each.before)
            each.made.replace(each.target)
    except BaseException:
        for each in reversed(done):
            with contextlib.suppress(OSError):
                if each.before.exists():
                    each.before.replace(each.target)
                elif not each.made.exists():
                    each.target.unlink()
        raise
