"""Writing files so that nothing is half-written, and holding them against other processes."""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from inscribe.errors import InputError, Place, reason_of


def write_text(path: Path, text: str, *, force: bool = False) -> None:
    r"""Write a whole file or nothing: a temporary file beside it is synced, then put in its place.

    Half of a character, as a file's name may hold it, is written as its code (``\udcff``), as on
    standard output.

    Raises:
        InputError: the file exists and ``force`` is false, or it cannot be written.
    """
    write_bytes(path, text.encode("utf-8", "backslashreplace"), force=force)


def write_bytes(path: Path, data: bytes, *, force: bool = False, private: bool = False) -> None:
    """Write ``data`` as :func:`write_text` does; only its owner can read a ``private`` file."""
    with written(path, force=force, private=private) as file:
        file.write(data)


@contextmanager
def written(path: Path, *, force: bool = False, private: bool = False) -> Iterator[BinaryIO]:
    """Give a file to write into that is put in its place, whole, when all is written.

    Raises:
        InputError: the file exists and ``force`` is false, or it cannot be written.
    """
    import tempfile  # of no use to the many commands that only read

    temporary: str | None = None
    try:
        _refuse_existing(path, force=force)
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.")
        with os.fdopen(handle, "wb") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        if not private:
            _allow_as_usual(Path(temporary))
        _put_in_place(temporary, path, force=force)
        temporary = None
        sync_folder(path.parent)
    except OSError as error:
        reason = reason_of(error, "it cannot be written")
        raise InputError(
            reason, Place(str(path)), "choose another place, or let it be written to"
        ) from error
    finally:
        if temporary is not None:
            Path(temporary).unlink(missing_ok=True)


def _refuse_existing(path: Path, *, force: bool) -> None:
    if path.exists() and not path.is_file():
        what = "it is a folder" if path.is_dir() else "it is a device, not a file"
        raise InputError(what, Place(str(path)), "choose another name")
    if path.exists() and not force:
        raise InputError(
            "the file exists already", Place(str(path)), "choose another name or use --force"
        )


def _allow_as_usual(file: Path) -> None:
    """Give a temporary file, which is its owner's only, the permissions any new file has."""
    mask = os.umask(0)
    os.umask(mask)
    file.chmod(0o666 & ~mask)


def _put_in_place(temporary: str, path: Path, *, force: bool) -> None:
    if force or not _linked(temporary, path):
        Path(temporary).replace(path)
        return
    Path(temporary).unlink()


def _linked(temporary: str, path: Path) -> bool:
    """Link the finished file to its place; false where the disk knows no links, as USB sticks.

    Raises:
        FileExistsError: another process made the file meanwhile.
    """
    try:
        os.link(temporary, path)
    except OSError as error:
        if error.errno in (errno.EPERM, errno.ENOTSUP, errno.ENOSYS, errno.EOPNOTSUPP):
            return False
        raise
    return True


def sync_folder(folder: Path) -> None:
    """Let what was put into a folder, or taken out of it, be on the disk."""
    if os.name != "posix":
        return
    try:
        handle = os.open(folder, os.O_RDONLY)
    except PermissionError:  # a folder one may write to and not list
        return
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


@contextmanager
def held(path: Path, *, wait: bool = True) -> Iterator[bool]:
    """Hold a file or folder against other processes that hold it too; false where one does already.

    With ``wait`` it waits for them. A process that ends, however it ends, lets go. Where the system
    knows no such locks, nothing is held.
    """
    if os.name != "posix":
        yield True
        return
    import fcntl  # of no use to the many commands that only read

    handle = os.open(path, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except BlockingIOError:
        os.close(handle)
        yield False
        return
    try:
        yield True
    finally:
        os.close(handle)
