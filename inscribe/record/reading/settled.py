"""Names whose readings people settled in the records of a collection: to be read so elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from inscribe.errors import InscribeError
from inscribe.files import decode, read_bytes
from inscribe.forms import normalise_text
from inscribe.record.model import Inscription, Override
from inscribe.record.reading.loader import loads, paths_in


class SettledName(NamedTuple):
    """A name in current forms, its reading in kana, and who settled it in which record."""

    written: str
    kana: str
    why: str


def settled_names(folder: Path) -> list[SettledName]:
    """Return the names settled by overrides in the records of a folder.

    Raises:
        InputError: there is no such folder.
    """
    return [name for path in paths_in(folder) for name in settled_in(path)]


def settled_beside(record: Path) -> list[SettledName]:
    """Return the names settled in a record and in those that lie in the same folder."""
    return [name for path in sorted(record.parent.glob("*.toml")) for name in settled_in(path)]


@contextmanager
def as_settled(names: Sequence[SettledName]) -> Iterator[None]:
    """Read names, within, as they were settled."""
    if not names:
        yield
        return
    from inscribe.reading.names import settling

    with settling(names):
        yield


def settled_in(path: Path) -> list[SettledName]:
    """Return the names settled in a record; none of one that cannot be read.

    ``inscribe check`` tells of those.
    """
    try:
        data = read_bytes(path)
        if b'"name"' in data or b"'name'" in data:  # most records settle none
            return list(_settled_in(decode(data, str(path)), path))
    except InscribeError:
        pass
    return []


def _settled_in(text: str, path: Path) -> Iterator[SettledName]:
    for inscription in loads(text, str(path), path.parent).inscriptions:
        for override in inscription.overrides:
            if override.kind == "name" and override.kana:
                written = normalise_text(override.of or _signs(inscription, override)).text
                by = f" by {override.by}" if override.by else ""
                reason = f": {override.reason}" if override.reason else ""
                yield SettledName(written, override.kana, f"settled{by} in {path}{reason}")


def _signs(inscription: Inscription, override: Override) -> str:
    signs = inscription.transcription.signs[override.first : override.last + 1]
    return "".join(sign.text for sign in signs)
