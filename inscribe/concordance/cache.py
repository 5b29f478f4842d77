"""What a concordance keeps between two runs: the texts of a folder as they were read.

The texts may be of a private folder: only their owner can read the files, whatever the folder of
the cache allows (``INSCRIBE_CACHE``, else the system's place). Those used longest ago go first.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from pathlib import Path
from typing import Any

from inscribe import __version__, files, tables
from inscribe.concordance.documents import of_rows
from inscribe.errors import InputError
from inscribe.reading.mecab import cache_folder

LAYOUT = 7
MOST_FILES = 30  # folders whose texts are kept
ABANDONED = 24 * 3600  # seconds after which a file begun is not being written any more
MOST_BYTES = 512 * 2**20  # of all of them

Stamp = tuple[int, int]  # size, time of change in ns


def stamp_of(path: Path) -> Stamp:
    """Return what tells whether a file has changed; (-1, -1) where there is none."""
    try:
        found = path.stat()
    except OSError:
        return (-1, -1)
    return found.st_size, found.st_mtime_ns


def cache_file(folder: Path, cache: Path | None = None) -> Path | None:
    """Return the file that keeps the texts of ``folder``; ``cache`` is another folder for it."""
    where = cache or cache_folder()
    try:
        name = hashlib.sha256(str(folder.resolve()).encode("utf-8", "surrogatepass")).hexdigest()
    except OSError:
        return None
    return where / f"concord-{name[:24]}.json"


def _made_by() -> str:
    """Return a mark of the program and its tables: readings change with either."""
    mark = hashlib.sha256(f"{LAYOUT} {__version__}".encode())
    for folder in tables.folders():
        for path in tables.tables_in(folder).values():
            mark.update(f"{path} {stamp_of(path)}".encode("utf-8", "surrogatepass"))
    return mark.hexdigest()


def kept(file: Path) -> dict[str, Any]:
    """Return what the cache holds; nothing if it is missing, damaged or out of date."""
    try:
        held = json.loads(file.read_bytes())
        if held["made_by"] != _made_by():
            return {}
        records: dict[str, Any] = held["records"]
        for stamp, rows, problem in records.values():
            if len(stamp) != 2 or not isinstance(problem, str):
                return {}
            of_rows(rows)
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return {}
    with contextlib.suppress(OSError):
        os.utime(file)  # it was of use
    return records


def keep_in(file: Path, held: dict[str, Any]) -> None:
    """Write the cache whole, or leave it: the concordance does not need it."""
    content = {"made_by": _made_by(), "records": held}
    try:
        file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        text = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
        files.write_bytes(file, text.encode("utf-8", "surrogatepass"), force=True, private=True)
        _prune(file)
    except (OSError, InputError):
        return


def _prune(file: Path) -> None:
    """Remove the files used longest ago where there are too many, and what was half-written."""
    found = [(path.stat(), path) for path in file.parent.glob("concord-*.json") if path != file]
    size = file.stat().st_size
    for number, (stat, path) in enumerate(sorted(found, key=_last_used, reverse=True), start=2):
        size += stat.st_size
        open_to_others = os.name == "posix" and stat.st_mode & 0o077  # an older version's
        if number > MOST_FILES or size > MOST_BYTES or open_to_others:
            path.unlink(missing_ok=True)
    for path in file.parent.glob(".concord-*"):
        if path.stat().st_mtime < file.stat().st_mtime - ABANDONED:
            path.unlink(missing_ok=True)


def _last_used(found: tuple[os.stat_result, Path]) -> float:
    return found[0].st_mtime
