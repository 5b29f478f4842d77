"""Reading and writing files so that nothing is lost and nothing is half-written."""

from __future__ import annotations

import errno
import os
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from inscribe.encodings import WHAT_TO_DO, disguised, likely, read_twice
from inscribe.errors import InputError, Place

StrPath = str | os.PathLike[str]
MAX_BYTES = 64 * 1024 * 1024
# How files begin that are no text; from the registrations of their media types and file(1).
_NO_TEXT = {
    b"%PDF-": "a PDF file",
    b"PK\x03\x04": "a ZIP archive or an office document",
    b"PK\x05\x06": "a ZIP archive",
    b"\xd0\xcf\x11\xe0": "an old office document",
    b"{\\rtf": "an RTF document",
    b"\x89PNG": "a picture",
    b"\xff\xd8\xff": "a picture",
    b"GIF8": "a picture",
    b"II*\x00": "a picture",
    b"MM\x00*": "a picture",
    b"\x1f\x8b": "a compressed file",
    b"SQLite format 3\x00": "a library or another database",
}
_COPY_IT = "copy the words into a text file"
_MARKUP = re.compile(r"\s*<(\?xml|!doctype|!--|[a-z][^<>]*>)", re.IGNORECASE)
_LINE = re.compile(rb"[^\r\n]*(?:\r\n?|\n)|[^\r\n]+")


def read_text(path: Path, limit: int = MAX_BYTES) -> str:
    """Return the text of a UTF-8 file (a byte order mark is dropped, line ends become one newline).

    Raises:
        InputError: the file is missing, unreadable, larger than ``limit`` bytes, or not UTF-8.
    """
    return decode(read_bytes(path, limit), str(path))


def read_bytes(path: Path, limit: int = MAX_BYTES) -> bytes:
    """Return what a file holds.

    Raises:
        InputError: the file is missing, unreadable, or larger than ``limit`` bytes.
    """
    try:
        with path.open("rb") as file:  # a device or a pipe does not tell its size before
            data = file.read(limit + 1)
    except OSError as error:
        raise _unreadable(path, error) from error
    if len(data) > limit:
        raise InputError(
            f"the file is larger than the limit of {limit // 2**20} MiB",
            Place(str(path)),
            "split it into smaller files",
        )
    return data


def read_lines(path: Path) -> Iterator[str]:
    """Yield the lines of a UTF-8 file of any size, one at a time, without their line ends.

    Raises:
        InputError: the file cannot be read, is not UTF-8, or has a line longer than 64 MiB.
    """
    try:
        with path.open("rb") as file:
            for number, line in enumerate(bounded_lines(file, str(path)), start=1):
                try:
                    yield decode(line, str(path)).rstrip("\n")
                except InputError as error:
                    raise error.in_file(str(path), number) from error
    except OSError as error:
        raise _unreadable(path, error) from error


def _unreadable(path: Path, error: OSError) -> InputError:
    if isinstance(error, IsADirectoryError):
        wanted = "it is a folder, and a file is wanted"
        return InputError(wanted, Place(str(path)), "name a file in it")
    reason = error.strerror or "it cannot be read"
    return InputError(reason, Place(str(path)), "check the path and its permissions")


def bounded_lines(file: BinaryIO, name: str) -> Iterator[bytes]:
    """Yield the lines of an open file with their line ends, none of them endless.

    A lone carriage return ends a line too, as it does in editors.

    Raises:
        InputError: a line is longer than 64 MiB.
    """
    number = 0
    while read := file.readline(MAX_BYTES + 1):
        if len(read) > MAX_BYTES:
            limit = f"the line is longer than the limit of {MAX_BYTES // 2**20} MiB"
            raise InputError(limit, Place(name, number + 1), "write one text a line")
        for line in _LINE.findall(read) if b"\r" in read else (read,):
            number += 1
            yield line


def decode(data: bytes, name: str) -> str:
    """Return ``data`` as text, naming line and column of the first byte that is not UTF-8.

    Raises:
        InputError: ``data`` is not UTF-8 (the message names a likely encoding where one fits), or
            is no text at all, or was encoded twice.
    """
    for beginning, kind in _NO_TEXT.items():
        if data.startswith(beginning):
            raise InputError(f"this is {kind}, not text", Place(name), _COPY_IT)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = _with_newlines(data[: error.start].decode("utf-8", "replace"))
        raise _not_utf8(likely(data), _place(name, before)) from error
    if guess := disguised(text):
        raise _not_utf8(guess, Place(name, 1, 1))
    text = _with_newlines(text)
    if twice := read_twice(text):
        raise InputError(twice.said, _place(name, text[: twice.offset]), WHAT_TO_DO)
    return text


def _with_newlines(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def transcribed(text: str, name: str) -> str:
    """Return ``text``, which is to be a transcription and not a document of another kind.

    Raises:
        InputError: it is XML, HTML, JSON or a record.
    """
    start = text.lstrip("\ufeff \t\n")[:1]
    if start == "<" and (found := _MARKUP.match(text)):
        if found[1][0] in "?!" or "</" in text or "/>" in text:
            raise InputError("this is XML or HTML, not a transcription", Place(name), _COPY_IT)
    elif start in ("{", "[") and _is_json(text):
        raise InputError("this is JSON, not a transcription", Place(name), _COPY_IT)
    if "[[inscription]]" in text and re.search(r"^\s*\[\[inscription\]\]\s*$", text, re.MULTILINE):
        raise InputError("this is a record", Place(name), "name its file, which ends in .toml")
    return text


def _is_json(text: str) -> bool:
    """Whether the text is an object of JSON or a list of such, or JSON Lines; [3] is none."""
    import json

    try:
        value, _ = json.JSONDecoder().raw_decode(text.strip("\ufeff \t\n"))
    except (ValueError, RecursionError):
        return False
    return isinstance(value, dict) or (
        isinstance(value, list) and isinstance((value or [0])[0], dict)
    )


def _place(name: str, before: str) -> Place:
    """Return the place in a file of what stands after the text ``before``."""
    return Place(name, before.count("\n") + 1, len(before) - before.rfind("\n"))


def _not_utf8(guess: str, place: Place) -> InputError:
    how = "it looks like" if guess.startswith(("UTF", "ISO")) else "it may be"
    said = f" ({how} {guess})" if guess else ""
    return InputError(f"the text is not UTF-8{said}", place, "save it as UTF-8 and try again")


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
        reason = error.strerror or "it cannot be written"
        raise InputError(reason, Place(str(path)), "choose another place with -o") from error
    finally:
        if temporary is not None:
            Path(temporary).unlink(missing_ok=True)


def _refuse_existing(path: Path, *, force: bool) -> None:
    if path.exists() and not path.is_file():
        what = "it is a folder" if path.is_dir() else "it is a device, not a file"
        raise InputError(what, Place(str(path)), "choose another name with -o")
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
