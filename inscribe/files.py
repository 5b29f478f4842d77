"""Reading files so that nothing is lost: size, encoding, line ends, and what is no text at all."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from inscribe.encodings import WHAT_TO_DO, disguised, likely, read_twice
from inscribe.errors import InputError, Place, reason_of

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
    reason = reason_of(error, "it cannot be read")
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
