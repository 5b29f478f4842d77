"""Which files of a folder are records, and what of it cannot be looked into.

Every ``.toml`` file in the folder and the folders in it is taken for a record, but in hidden
folders and those named styles, and but the settings, ``inscribe.toml``. Links to folders are not
followed, so that no loop of links has no end; pipes and devices are not opened, for they may never
end.
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path

from inscribe.errors import InputError, Place, reason_of
from inscribe.settings import FILE as SETTINGS

STYLES = "styles"


@dataclass(frozen=True, slots=True)
class Survey:
    """The record files, in the order of their names, and what was passed over.

    ``closed`` are folders that may not be read and names of records that stand for no file, each
    as what is to be said of it; ``linked`` the links to folders, which are not followed.
    """

    records: list[Path] = field(default_factory=list)
    closed: list[InputError] = field(default_factory=list)
    linked: list[Path] = field(default_factory=list)


def survey(folder: Path) -> Survey:
    """Return what a folder and the folders in it hold.

    Raises:
        InputError: there is no such folder.
    """
    if not folder.is_dir():
        raise InputError("there is no such folder", Place(str(folder)), "check the path")
    found = Survey()

    def closed(error: OSError) -> None:
        reason = reason_of(error, "it cannot be opened")
        place = Place(str(error.filename or folder))
        message = f"the folder cannot be looked into ({reason})"
        found.closed.append(InputError(message, place, "check its permissions"))

    for root, folders, names in os.walk(folder, onerror=closed):
        folders[:] = sorted(name for name in folders if not _is_left_out(name))
        found.linked.extend(path for name in folders if (path := Path(root, name)).is_symlink())
        for name in sorted(names):
            if name.endswith(".toml") and not name.startswith(".") and name != SETTINGS:
                _sort(Path(root, name), found)
    return found


def _is_left_out(folder: str) -> bool:
    return folder.startswith(".") or folder == STYLES


def _sort(path: Path, found: Survey) -> None:
    """Put a path among the records, or among what cannot be looked into."""
    if _may_be_read(path):
        found.records.append(path)
    else:
        message = "it is a pipe or a device, not a file"
        found.closed.append(InputError(message, Place(str(path)), "put the record in its place"))


def _may_be_read(path: Path) -> bool:
    """Whether a path is a file; a link that leads nowhere counts, for it is to be reported."""
    try:
        return path.is_file() or not path.exists()
    except OSError:
        return True
