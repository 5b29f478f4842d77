"""What the space account says, in words: of the plate, and of each difference."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from inscribe import notebook

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inscribe.collation import Judgement, SpaceAccount

VERDICTS = {
    "forced": "space explains it",
    "eased": "space explains it, though a tighter hand had found room",
    "undecided": "undecided",
    "unexplained": "space does not explain it",
    "unmeasured": "not measured",
}
# The least chance that is called so; common usage, no source.
CHANCES = ((0.9, "very likely"), (2 / 3, "likely"), (1 / 3, "open"), (0.1, "unlikely"))
SEVERAL = 2  # differences from which on what they have in common is told once
CLOSER = 2  # signs more that the plate holds at his closest, from which on it is told
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


class Common(NamedTuple):
    """The reasons for and against space, and the rival, that all differences of a plate have."""

    speaks_for: tuple[str, ...] = ()
    speaks_against: tuple[str, ...] = ()
    rival: str = ""


def plate_said(account: SpaceAccount) -> str:
    """Return what the text wants and what the plate gives, or nothing where it was not measured."""
    wanted, given = account.length_wanted, account.room
    if wanted is None or given is None or account.median_pitch is None:
        return ""
    count = len(account.columns)
    columns = _NUMBERS[count] if count < len(_NUMBERS) else str(count)
    gives = f"the {columns} columns give" if count > 1 else "the one column gives"
    signs = notebook.counted(account.need, "sign")
    room = notebook.counted(account.capacity or 0, "sign")
    if (account.tightest or 0) - (account.capacity or 0) >= CLOSER:
        room += f", {account.tightest} where he writes closest"
    beside = f", and what stands beside it {account.beside}" if account.beside else ""
    return (
        f"The text wants {signs}{beside}; at this carver's {account.median_pitch:.1f} mm that is"
        f" {wanted:.0f} mm, and {gives} {given:.0f} mm ({room})."
    )


def chance_said(judgement: Judgement) -> str:
    """Return the chance that space explains a difference, in words and per cent."""
    if judgement.chance is None:
        return ""
    if judgement.verdict == "undecided" and judgement.chance < CHANCES[2][0]:
        return f"{judgement.chance:.0%}, but the plate is written to its foot"
    words = next((name for least, name in CHANCES if judgement.chance >= least), "very unlikely")
    return f"{words}, {judgement.chance:.0%}"


def verdict_said(judgement: Judgement) -> str:
    """Return the verdict on one difference with its chance."""
    chance = chance_said(judgement)
    return VERDICTS[judgement.verdict] + (f" ({chance})" if chance else "")


def reasons_said(
    judgement: Judgement | Common, told: Common | None = None
) -> Iterator[tuple[str, str]]:
    """Yield what speaks for space, against it, and for something else, each with its heading.

    What is ``told`` of all differences together is not told again.
    """
    for side, reasons, known in (
        ("for", judgement.speaks_for, told.speaks_for if told else ()),
        ("against", judgement.speaks_against, told.speaks_against if told else ()),
    ):
        if new := [reason for reason in reasons if reason not in known]:
            yield side, "; ".join(new)
    if judgement.rival and judgement.rival != (told and told.rival):
        yield "or", judgement.rival


def common(account: SpaceAccount) -> Common:
    """Return the reasons that every difference has: what the plate as a whole says."""
    judged = account.judgements
    if len(judged) < SEVERAL:
        return Common()
    first = judged[0]
    return Common(
        tuple(s for s in first.speaks_for if all(s in each.speaks_for for each in judged)),
        tuple(s for s in first.speaks_against if all(s in each.speaks_against for each in judged)),
        first.rival if all(first.rival == each.rival for each in judged) else "",
    )
