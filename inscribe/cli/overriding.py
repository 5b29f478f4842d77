"""Readings settled on the command line, which win over those of the record and the program's."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

import click

from inscribe.errors import InputError

if TYPE_CHECKING:
    from inscribe.reading import Interpretation
    from inscribe.reading.words import Override

override_option = click.option(
    "--override",
    "settled",
    multiple=True,
    metavar="SIGNS=KANA",
    help="Read signs N to M (counted from 1) so: 4-5=みねあき, of a name 4-5=name:みねあき; may be "
    "given again.",
)
_GIVEN = r"(\d{1,6})(?:-(\d{1,6}))?=(name:)?([ぁ-ゖゝゞァ-ヺー]+)"


def overrides_of(given: Sequence[str]) -> tuple[Override, ...]:
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


def _override(given: str) -> Override:
    from inscribe.record import Override as Settled

    match = re.fullmatch(_GIVEN, given, re.ASCII)
    first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
    if match is None or not 1 <= first <= last:
        said = f"--override {given} does not say which signs are read how, in kana"
        raise InputError(said, hint="as in: --override 4-5=みねあき")
    kind: Literal["word", "name"] = "name" if match[3] else "word"
    return Settled(first - 1, last - 1, match[4], kind=kind, reason="given on the command line")


def refuse_beyond(overrides: Sequence[Override], found: Sequence[Interpretation]) -> None:
    """Refuse overrides of signs that no text has.

    Raises:
        InputError: an override begins or ends after the last sign.
    """
    if not overrides:
        return
    last = max(override.last for override in overrides)
    ends = [token.last for each in found for token in each.proposals[0].tokens]
    end = max(ends, default=0)
    if last > end:
        said = f"--override speaks of sign {last + 1}, and the text has {end + 1}"
        raise InputError(said, hint="count the signs from 1, marks included")


def merged(ours: Sequence[Override], recorded: Sequence[Override]) -> tuple[Override, ...]:
    """Return the overrides ``ours`` and those of the record that cover none of their signs."""
    kept = [o for o in recorded if all(o.last < e.first or o.first > e.last for e in ours)]
    return tuple(sorted([*ours, *kept], key=lambda each: each.first))
