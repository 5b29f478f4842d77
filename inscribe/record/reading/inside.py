"""Files that a record names: they lie in its folder, wherever links may lead."""

from __future__ import annotations

from pathlib import Path, PureWindowsPath
from typing import TYPE_CHECKING, NamedTuple

from inscribe.errors import InputError, Place, reason_of
from inscribe.pictures import PictureKind, picture_kind

if TYPE_CHECKING:
    from inscribe.record.model import RecordImage

MAX_PICTURE = 64 * 2**20  # bytes


class PictureFile(NamedTuple):
    """The bytes of a picture and what they are."""

    data: bytes
    kind: PictureKind


def inside(name: str, folder: Path | None, kind: str = "text file") -> Path:
    """Return the path of a file in ``folder``.

    Raises:
        InputError: the name is absolute, or leads out of the folder.
    """
    if folder is None:
        raise InputError("the record has no folder to look in", hint="give the source's text")
    require_relative(name)
    try:
        path = (folder / name).resolve()
        if not path.is_relative_to(folder.resolve()):
            raise InputError(
                "a link leads out of the record's folder", hint="copy the file into the folder"
            )
        if path.exists() and not path.is_file():
            raise InputError("it is not a file", hint=f"name a {kind}")
    except (OSError, RuntimeError, ValueError) as error:
        raise InputError("the path cannot be followed", hint="check its links") from error
    return path


def require_relative(name: str) -> None:
    """Refuse a name that leads out of the folder it is looked for in.

    Raises:
        InputError: it is a web address, absolute, goes upwards, or is written with backslashes.
    """
    if "://" in name:
        raise InputError(
            "it is a web address, and the name of a file is wanted",
            hint="copy it into the record's folder; an image service's address goes under iiif",
        )
    parts = PureWindowsPath(name)
    if parts.drive or parts.root or ".." in parts.parts or "\\" in name:
        raise InputError(
            "the path leads out of the record's folder",
            hint="give a path relative to it, with / between its parts",
        )


def picture_file(image: RecordImage, folder: Path | None) -> PictureFile:
    """Return the picture that a record names, from the record's ``folder``.

    Raises:
        InputError: it is not there, lies outside, is too large, or is no PNG, JPEG or GIF.
    """
    path = inside(image.file, folder, "picture")
    try:
        with path.open("rb") as file:
            data = file.read(MAX_PICTURE + 1)
    except OSError as error:
        reason = reason_of(error, "it cannot be read")
        raise InputError(reason, Place(str(path)), "check the path") from error
    if len(data) > MAX_PICTURE:
        limit = f"the picture is larger than the limit of {MAX_PICTURE // 2**20} MiB"
        raise InputError(limit, Place(str(path)), "make a smaller copy")
    kind = picture_kind(data)
    if kind is None:
        raise InputError("it is no picture", Place(str(path)), "give a PNG, JPEG or GIF file")
    return PictureFile(data, kind)
