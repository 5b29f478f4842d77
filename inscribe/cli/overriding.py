"""Readings and passages settled on the command line, which win over those of the record."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Literal, TypeVar, cast, get_args

import click

from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.reading import Interpretation
    from inscribe.reading.words import OverrideLike
    from inscribe.record import SettledPassage

Settled = TypeVar("Settled", bound=Any)

override_option = click.option(
    "--override",
    "settled",
    multiple=True,
    metavar="SIGNS=KANA",
    help="Read signs N to M (counted from 1) so: 4-5=みねあき, of a name 4-5=name:みねあき; may be "
    "given again.",
)
_GIVEN = r"(\d{1,6})(?:-(\d{1,6}))?=(name:)?([ぁ-ゖゝゞァ-ヺー]+)"


def overrides_of(given: Sequence[str]) -> tuple[OverrideLike, ...]:
    """Return the overrides given as ``4-5=みねあき``, in the order of their signs.

    Raises:
        InputError: one is not written so, or two cover the same sign.

    >>> overrides_of(["4-5=name:みねあき"])[0][:3]
    (3, 4, 'みねあき')
    """
    found = sorted(map(_override, given), key=lambda each: each.first)
    if any(after.first <= before.last for before, after in pairwise(found)):
        raise InputError("two overrides cover the same sign", hint="keep one")
    return tuple(found)


def _override(given: str) -> OverrideLike:
    from inscribe.record import Override as Settled

    match = re.fullmatch(_GIVEN, given, re.ASCII)
    first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if match is None or not 1 <= first <= last:
        said = f"--override {given} does not say which signs are read how, in kana"
        raise InputError(said, hint="as in: --override 4-5=みねあき")
    kind: Literal["word", "name"] = "name" if match[3] else "word"
    return Settled(first - 1, last - 1, match[4], kind=kind, reason="given on the command line")


passage_option = click.option(
    "--passage",
    "divided",
    multiple=True,
    metavar="SIGNS=KIND",
    help="Take signs N to M (counted from 1) for one passage: 29-34=signature, with what its "
    "person did 29-34=signature:carved; may be given again.",
)
_DIVIDED = r"(\d{1,6})(?:-(\d{1,6}))?=([a-z]+)(?::([a-z]+))?"


def passages_of(given: Sequence[str]) -> tuple[SettledPassage, ...]:
    """Return the passages given as ``29-34=signature``, in the order of their signs.

    Raises:
        InputError: one is not written so, or two cover the same sign.

    >>> passages_of(["29-34=signature:carved"])[0][:4]
    (28, 33, 'signature', 'carved')
    """
    found = sorted(map(_passage, given), key=lambda each: each.first)
    if any(after.first <= before.last for before, after in pairwise(found)):
        raise InputError("two passages cover the same sign", hint="keep one")
    return tuple(found)


def _passage(given: str) -> SettledPassage:
    from inscribe.reading.words import Kind, Role
    from inscribe.record import SettledPassage as Settled

    match = re.fullmatch(_DIVIDED, given, re.ASCII)
    first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if match is None or not 1 <= first <= last:
        said = f"--passage {given} does not say which signs are what"
        raise InputError(said, hint="as in: --passage 29-34=signature")
    if match[3] not in get_args(Kind):
        said = f"--passage {given} names no kind of passage"
        raise InputError(said, hint=f"use {', '.join(get_args(Kind))}")
    if match[4] is not None and match[4] not in get_args(Role):
        said = f"--passage {given} does not say what the person did"
        raise InputError(said, hint=f"use {', '.join(get_args(Role))}")
    kind, role = cast("Kind", match[3]), cast("Role | None", match[4])
    return Settled(first - 1, last - 1, kind, role, reason="given on the command line")


def refuse_beyond(
    key: str, settled: Sequence[OverrideLike | SettledPassage], found: Sequence[Interpretation]
) -> None:
    """Refuse what is settled of signs that no text has; ``key`` is the option.

    Raises:
        InputError: an override or a passage begins or ends after the last sign.
    """
    if not settled:
        return
    last = max(each.last for each in settled)
    ends = [token.last for each in found for token in each.proposals[0].tokens]
    ends += [passage.last for each in found for passage in each.passages]
    end = max(ends, default=0)
    if last > end:
        said = f"--{key} speaks of sign {last + 1}, and the text has {end + 1}"
        raise InputError(said, hint="count the signs from 1, marks included")


def merged(ours: Sequence[Settled], recorded: Sequence[Settled]) -> tuple[Settled, ...]:
    """Return what is settled here, and what the record settles of other signs."""
    kept = [o for o in recorded if all(o.last < e.first or o.first > e.last for e in ours)]
    return tuple(sorted([*ours, *kept], key=lambda each: each.first))
