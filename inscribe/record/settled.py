"""Names whose readings people settled in the records of a collection: to be read so elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from inscribe.errors import InscribeError
from inscribe.files import read_text
from inscribe.forms import normalise_text
from inscribe.record.loader import loads, paths_in
from inscribe.record.model import Inscription, Override


class SettledName(NamedTuple):
    """A name in current forms, its reading in kana, and who settled it in which record."""

    written: str
    kana: str
    why: str


def settled_names(folder: Path) -> list[SettledName]:
    """Return the names settled by overrides in the records of a folder.

    Records that cannot be read are passed over: ``inscribe check`` tells of them.

    Raises:
        InputError: there is no such folder.
    """
    found: list[SettledName] = []
    for path in paths_in(folder):
        try:
            text = read_text(path)
            if '"name"' in text or "'name'" in text:  # most records settle none
                found += _settled_in(text, path)
        except InscribeError:
            continue
    return found


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
