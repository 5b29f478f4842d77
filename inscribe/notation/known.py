"""The conventions that there are, by their names."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.notation.conventions import Convention


def convention(name: str) -> Convention:
    """Return the convention ``name``; the one that is not asked for is not loaded.

    Raises:
        InputError: there is no such convention.
    """
    if name == "japanese":
        from inscribe.notation.japanese import JAPANESE

        return JAPANESE
    if name == "leiden":
        from inscribe.notation.leiden import LEIDEN

        return LEIDEN
    raise InputError(f"there is no convention {name!r}", hint="expected japanese or leiden")
