"""What the options of ``inscribe restore`` say of the sign and the places looked at."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.restoring import Seen


def seen_in(parts: str | None, strokes: str | None, like: str | None) -> Seen:
    """Return what the options say can be seen of the sign.

    Raises:
        InputError: an option says nothing that can be.
    """
    from inscribe.forms import found, signs_of
    from inscribe.restoring import Seen

    wanted = tuple(sign for word in re.split(r"[+＋\s]+", parts or "") for sign in signs_of(word))
    if parts is not None and not wanted:
        raise InputError("--parts names no part", hint="as in: --parts 氵")
    for part in wanted:
        if not found((part,)):
            raise InputError(f"{part} is no part of any known character", hint="as in: --parts 氵")
    if like is not None and len(signs_of(like)) != 1:
        raise InputError("--like takes one sign", hint="as in: --like 土")
    return Seen(wanted, _strokes(strokes) if strokes is not None else None, like or "")


def places_in(given: str, sign: int | None) -> range:
    """Return the worn places, counted from 0, that ``--places`` names.

    Raises:
        InputError: it names none, or ``--sign`` is given too.
    """
    if sign is not None:
        raise InputError("--sign and --places cannot be used together", hint="choose one of them")
    match = re.fullmatch(r"(\d{1,6})(?:-(\d{1,6}))?", given, re.ASCII)
    first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if not 1 <= first <= last:
        raise InputError(f"--places {given} names no worn places", hint="as in: --places 21-40")
    return range(first - 1, last)


def _strokes(given: str) -> tuple[int, int]:
    match = re.fullmatch(r"(\d{1,2})(?:-(\d{1,2}))?", given, re.ASCII)
    fewest, most = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if not 1 <= fewest <= most:
        raise InputError(f"--strokes {given} is no number of strokes", hint="as in: --strokes 8-11")
    return fewest, most
