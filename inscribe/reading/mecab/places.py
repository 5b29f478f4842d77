"""The folders that compiled dictionaries may lie in, and what to say where the cache is of no use.

The first is the cache. Where it cannot be written, has no room, belongs to another user or lies
where MeCab cannot read it, a temporary folder takes its place for as long as the process, and one
sentence on standard error says so, unless ``--quiet`` forbids it.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

from inscribe import remarks
from inscribe.errors import InputError, Place, harmless
from inscribe.reading.mecab.sealing import is_own

_HINT = "name a folder with room for it in INSCRIBE_CACHE"

Trouble = OSError | InputError  # why a dictionary cannot be made in a folder


def places(troubles: list[Trouble]) -> Iterator[Path]:
    """Yield the cache folder and a temporary one, or add why MeCab could not read from it."""
    for place in (cache_folder, _temporary_folder):
        folder = place()
        if folder.is_dir() and not is_own(folder):
            said = "it belongs to another user, or everybody may write into it"
            troubles.append(InputError(said, Place(str(folder)), _HINT))
        elif "," in str(folder):  # MeCab takes it for the end of the path
            troubles.append(InputError("there is a comma in its path", Place(str(folder)), _HINT))
        else:
            yield folder


def tell_of(troubles: Sequence[Trouble]) -> None:
    """Say on standard error why a dictionary is not in the cache, once in a process."""
    if troubles and sys.stderr is not None and remarks.are_wanted() and not _told():
        _told().append(True)
        said = f"the cache folder {cache_folder()} cannot be used ({_reason(troubles[0])})"
        print(harmless(f"{said}, so this run goes without it; {_HINT}"), file=sys.stderr)


@cache
def _told() -> list[bool]:
    return []


def nowhere(troubles: Sequence[Trouble]) -> InputError:
    """Return the error to raise where none of the folders would do."""
    last = troubles[-1]
    if isinstance(last, InputError):
        return last
    return InputError(
        f"no dictionary can be written: {_reason(last)}", Place(str(cache_folder())), _HINT
    )


def _reason(trouble: Trouble) -> str:
    if isinstance(trouble, InputError):
        return trouble.message
    return trouble.strerror or str(trouble)


def cache_folder() -> Path:
    """Return the folder compiled dictionaries lie in: ``INSCRIBE_CACHE``, or the system's place.

    Written out because importing platformdirs takes a fifth of the time a reading may take.
    """
    if chosen := os.environ.get("INSCRIBE_CACHE"):
        return Path(chosen)
    if sys.platform == "win32":
        base = os.environ.get("LOCALAPPDATA")
        return (Path(base) if base else Path.home() / "AppData" / "Local") / "inscribe" / "Cache"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "inscribe"
    base = os.environ.get("XDG_CACHE_HOME")
    return (Path(base) if base else _home() / ".cache") / "inscribe"


def _home() -> Path:
    try:
        return Path.home()
    except RuntimeError:  # a process without a home
        return _temporary_folder()


@cache
def _temporary_folder() -> Path:
    import atexit
    import shutil
    import tempfile

    folder = tempfile.mkdtemp(prefix="inscribe-")
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return Path(folder)
