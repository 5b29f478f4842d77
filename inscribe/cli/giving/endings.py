"""The format of a file that is written: as asked, or as its name ends."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from inscribe.errors import InputError

_JSON = frozenset(("json", "jsonld"))  # linked data is JSON: a file of it may be called either
_ENDINGS = {"text": "txt", "annotation": "json"}


def endings_of(formats: tuple[str, ...]) -> dict[str, str]:
    """Return how files of the formats end, where that is not the format's own name."""
    return {name: _ENDINGS.get(name, name) for name in formats}


def format_for(form: str | None, output: str | None, endings: Mapping[str, str], usual: str) -> str:
    """Return the format that is asked for, by name or by how the file to write ends.

    ``endings`` says how the files of each format end; ``usual`` is taken for a file without ending.

    >>> ends = {"text": "txt", "json": "json"}
    >>> format_for(None, "a.json", ends, "text"), format_for(None, "a", ends, "text")
    ('json', 'text')

    Raises:
        InputError: the two contradict each other, or no format has such an ending.
    """
    ending = Path(output).suffix.lstrip(".").lower() if output else ""
    if not ending:
        return form or usual
    fitting = [name for name, end in endings.items() if end == ending]
    if form is None and fitting:
        return fitting[0]
    if form is None:
        known = list(dict.fromkeys(f".{end}" for end in endings.values()))
        meant = [end for end in known if end.startswith(f".{ending}")]
        several = ", or say which with --format" if len(endings) > 1 else ""
        raise InputError(
            f"no format is written into files that end in .{ending}",
            hint=f"did you mean {meant[0]}?" if meant else f"use {', '.join(known)}{several}",
        )
    if fitting and form not in fitting and not {ending, endings[form]} <= _JSON:
        raise InputError(
            f"{form} does not go into a file that ends in .{ending}",
            hint=f"name it .{endings[form]}, or leave --format away",
        )
    return form
