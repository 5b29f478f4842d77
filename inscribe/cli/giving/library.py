"""Where the user's library of source texts is."""

from __future__ import annotations

import sys
from contextlib import nullcontext
from pathlib import Path
from typing import Any

from inscribe.settings import own_folder


def library_path(given: str | None) -> Path:
    """Return the library file to use: that of the option or the settings, or the user's own."""
    if given:
        return Path(given)
    own = own_folder("data", ".local/share", xdg=sys.platform == "linux")
    return own / "sources.sqlite"


def opened_library(given: str | None) -> Any:
    """Return the library, opened, or nothing where the user has none."""
    path = library_path(given)
    if given is None and not path.is_file():
        return nullcontext()
    from inscribe.sources import Library

    return Library(path)


def library_if_any(given: str | None) -> Any:
    """Return the library, opened, or nothing where there is none, be it named or not."""
    return opened_library(given) if library_path(given).is_file() else nullcontext()
