"""Readings and passages settled on the command line, which win over those of the record."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Literal, TypeVar, cast, get_args

import click

from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.reading import Interpretation
    from inscribe.reading.words import OverrideLike
    from inscribe.record import Override, SettledPassage

Settled = TypeVar("Settled", bound=Any)
_REASON = "given on the command line"

override_option = click.option(
    "--override",
    "settled",
    multiple=True,
    metavar="SIGNS=KANA",
    help="Read signs N to M (counted from 1) so: 4-5=みねあき, of a name 4-5=name:みねあき; may be "
    "given again.",
)


def overrides_of(given: Sequence[str]) -> tuple[OverrideLike, ...]:
    """Return the overrides given as ``4-5=みねあき``, in the order of their signs.

    Raises:
        InputError: one is not written so, or two cover the same sign.

    >>> overrides_of(["4-5=name:みねあき"])[0][:3]
    (3, 4, 'みねあき')
    """
    return _in_order(map(_override, given), "overrides")


def _override(given: str) -> Override:
    from inscribe.record import Override

    said = f"--override {given} does not say which signs are read how, in kana"
    first, last, match = _signs_of(
        given, "(name:)?([ぁ-ゖゝゞァ-ヺー]+)", said, "as in: --override 4-5=みねあき"
    )
    kind: Literal["word", "name"] = "name" if match[3] else "word"
    return Override(first, last, match[4], kind=kind, reason=_REASON)


passage_option = click.option(
    "--passage",
    "divided",
    multiple=True,
    metavar="SIGNS=KIND",
    help="Take signs N to M (counted from 1) for one passage: 29-34=signature, with what its "
    "person did 29-34=signature:carved; may be given again.",
)


def passages_of(given: Sequence[str]) -> tuple[SettledPassage, ...]:
    """Return the passages given as ``29-34=signature``, in the order of their signs.

    Raises:
        InputError: one is not written so, or two cover the same sign.

    >>> passages_of(["29-34=signature:carved"])[0][:4]
    (28, 33, 'signature', 'carved')
    """
    return _in_order(map(_passage, given), "passages")


def _passage(given: str) -> SettledPassage:
    from inscribe.reading.words import Kind, Role
    from inscribe.record import SettledPassage

    said = f"--passage {given} does not say which signs are what"
    first, last, match = _signs_of(
        given, "([a-z]+)(?::([a-z]+))?", said, "as in: --passage 29-34=signature"
    )
    if match[3] not in get_args(Kind):
        said = f"--passage {given} names no kind of passage"
        raise InputError(said, hint=f"use {', '.join(get_args(Kind))}")
    if match[4] is not None and match[4] not in get_args(Role):
        said = f"--passage {given} does not say what the person did"
        raise InputError(said, hint=f"use {', '.join(get_args(Role))}")
    kind, role = cast("Kind", match[3]), cast("Role | None", match[4])
    return SettledPassage(first, last, kind, role, reason=_REASON)


def _signs_of(given: str, pattern: str, said: str, hint: str) -> tuple[int, int, re.Match[str]]:
    """Return the first and last sign, from 0, of ``4-5=...``, and what is given of them.

    Raises:
        InputError: it is not written so; ``said`` and ``hint`` are the message.
    """
    match = re.fullmatch(rf"(\d{{1,6}})(?:-(\d{{1,6}}))?={pattern}", given, re.ASCII)
    first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if match is None or not 1 <= first <= last:
        raise InputError(said, hint=hint)
    return first - 1, last - 1, match


def _in_order(settled: Iterable[Settled], called: str) -> tuple[Settled, ...]:
    """Return what is settled in the order of its signs, no sign of which two speak."""
    found = sorted(settled, key=lambda each: each.first)
    if any(after.first <= before.last for before, after in pairwise(found)):
        raise InputError(f"two {called} cover the same sign", hint="keep one")
    return tuple(found)


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
