"""Whether a compiled dictionary in the cache is the one that was put there, and whose it is.

MeCab believes what it maps: a dictionary that is damaged ends the process, one that somebody else
wrote answers as he likes. So each is sealed with size and check sum of its files. All is read and
summed where a file was moved, copied or written since it was looked at last, as the system's own
time of change tells, which no program can set; else a look at these times is enough (milliseconds
instead of a tenth of a second). What belongs to another user is never used, unless the system's.
"""

from __future__ import annotations

import contextlib
import json
import os
import stat
import zlib
from pathlib import Path
from typing import Any

_PIECE = 1 << 20  # bytes read at a time


def seal(made: Path, place: Path) -> None:
    """Put what was made on the disk and write its seal, beside a file or into a folder.

    ``place`` is where it is going to lie.
    """
    sums = {}
    for path in _files(made):
        with path.open("rb+") as file:
            os.fsync(file.fileno())
        sums[path.name] = [path.stat().st_size, _sum(path)]
    inside = made if made.is_dir() else None
    target = _seal_of(place, inside)
    target.write_text(json.dumps({"sums": sums}), "utf-8")


def is_sealed(path: Path) -> bool:
    """Whether a dictionary is whole, as it was made, and of this user or the system."""
    try:
        kept = json.loads(_seal_of(path).read_text("utf-8"))
        if not kept["sums"] or not all(map(is_own, (path.parent, path, *_files(path)))):
            return False
        folder = path if path.is_dir() else path.parent
        seen = {name: _mark(folder / name) for name in kept["sums"]}
        if kept.get("seen") == seen:
            return True
        if any(
            [(folder / name).stat().st_size, _sum(folder / name)] != sealed
            for name, sealed in kept["sums"].items()
        ):
            return False
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return False
    with contextlib.suppress(OSError):  # a cache that cannot be written is looked through each time
        _rewrite(_seal_of(path), {"sums": kept["sums"], "seen": seen})
    return True


def is_own(path: Path) -> bool:
    """Whether a file or folder belongs to this user or the system, and is not open to everybody."""
    if not hasattr(os, "geteuid"):  # Windows keeps users' folders apart by itself
        return True
    found = path.stat()
    return found.st_uid in (os.geteuid(), 0) and not _is_open(found)


def seal_beside(path: Path) -> Path:
    """Return the seal of a dictionary that is one file."""
    return path.with_name(f".{path.name}.seal")


def _is_open(found: os.stat_result) -> bool:
    """Whether everybody may put another file in its place; a sticky folder (/tmp) forbids that."""
    return bool(found.st_mode & stat.S_IWOTH and not found.st_mode & stat.S_ISVTX)


def _seal_of(path: Path, inside: Path | None = None) -> Path:
    if inside is not None or path.is_dir():
        return (inside or path) / "seal"
    return seal_beside(path)


def _files(path: Path) -> list[Path]:
    if not path.is_dir():
        return [path]
    return [each for each in path.iterdir() if each.name != "seal"]


def _mark(path: Path) -> list[int]:
    found = path.stat()
    return [found.st_size, found.st_ino, found.st_mtime_ns, found.st_ctime_ns]


def _sum(path: Path) -> int:
    check = 0
    with path.open("rb") as file:
        while piece := file.read(_PIECE):
            check = zlib.crc32(piece, check)
    return check


def _rewrite(path: Path, kept: dict[str, Any]) -> None:
    part = path.with_name(f"{path.name}.{os.getpid()}")
    part.write_text(json.dumps(kept), "utf-8")
    part.replace(path)
