"""What ``library`` means wherever a function takes one: an open library, or its file."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.files import StrPath

if TYPE_CHECKING:  # a reading without a library does without all that one needs
    from inscribe.sources.library import Library


@contextmanager
def opened(library: Library | StrPath | None) -> Iterator[Library | None]:
    """Give a library as it is, the library in a file while it is needed, or none.

    This is what ``library`` means wherever a function takes one.

    Raises:
        InputError: there is no such file, or it is no library.
    """
    if library is None:
        yield None
        return
    from inscribe.sources.library import Library

    if isinstance(library, Library):
        yield library
        return
    with Library(library) as found:
        yield found


def file_of(library: Library | StrPath | None) -> Path | None:
    """Return the file of a library, for work that is done in several processes."""
    if library is None:
        return None
    return Path(library) if isinstance(library, (str, os.PathLike)) else library.path
