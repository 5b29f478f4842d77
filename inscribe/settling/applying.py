"""What was said put into a record: where its signs stand, and what was settled of them before."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import NamedTuple

from inscribe import forms
from inscribe.errors import InputError
from inscribe.record import Inscription, Override, Record, SettledPassage
from inscribe.settling.saying import Settlement
from inscribe.signs import Transcription, place_of


class Who(NamedTuple):
    """Who says so, when, and why."""

    by: str
    on: date
    reason: str = ""


@dataclass
class Settled:
    """A record with what was settled, and what is to be told of it, each as one clause."""

    record: Record
    done: list[str] = field(default_factory=list)
    already: list[str] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)  # settled otherwise before, and left so
    found: set[Settlement] = field(default_factory=set)  # what stands in the record at all


def settle(
    record: Record,
    sayings: Sequence[Settlement],
    who: Who,
    *,
    inscription: int | None = None,
    replace_settled: bool = False,
) -> Settled:
    """Return a record in which is settled what was said.

    What other signs stand for stays; what was settled of the same signs before and otherwise is
    only replaced on wish. ``inscription`` (from 0) is the only one that is looked at.

    Raises:
        InputError: signs are given by number, and the record has several inscriptions or no such
            signs.
    """
    settled = Settled(record)
    for number, each in enumerate(record.inscriptions):
        if inscription is not None and number != inscription:
            continue
        for saying in sayings:
            if saying.signs and inscription is None and len(record.inscriptions) > 1:
                raise InputError(
                    "the record has several inscriptions, and signs are given by number",
                    hint="say which with --inscription N",
                )
            each = _with(each, saying, who, settled, replace_settled)
        settled.record = _with_inscription(settled.record, number, each)
    return settled


def _with_inscription(record: Record, number: int, made: Inscription) -> Record:
    before, after = record.inscriptions[:number], record.inscriptions[number + 1 :]
    return record._replace(inscriptions=(*before, made, *after))


def _with(
    inscription: Inscription, saying: Settlement, who: Who, settled: Settled, replace_settled: bool
) -> Inscription:
    t = inscription.transcription
    for first, last in _places(t, saying):
        settled.found.add(saying)
        of = "".join(sign.text for sign in t.signs[first : last + 1] if sign.is_legible)
        clause = f"{place_of(t, first, last)}: {of or '□'} = {saying.shown}"
        new: Override | SettledPassage
        if saying.kind is None:
            kind = "name" if saying.is_name else "word"
            new = Override(first, last, saying.kana, of, kind, who.by, who.reason, who.on)  # type: ignore[arg-type]
        else:
            new = SettledPassage(
                first, last, saying.kind, saying.role, of, who.by, who.reason, who.on
            )
        inscription = _put(inscription, new, clause, settled, replace_settled)
    return inscription


def _put(
    inscription: Inscription,
    new: Override | SettledPassage,
    clause: str,
    settled: Settled,
    replace_settled: bool,
) -> Inscription:
    """Return an inscription with one more thing settled, unless it is so or otherwise already."""
    key = "overrides" if isinstance(new, Override) else "passages"
    held: tuple[Override | SettledPassage, ...] = getattr(inscription, key)
    touched = [each for each in held if each.first <= new.last and each.last >= new.first]
    if any(_says_same(each, new) for each in touched):
        settled.already.append(clause)
        return inscription
    if touched and not replace_settled:
        settled.kept.append(f"{clause}, but settled before: {'; '.join(map(_shown, touched))}")
        return inscription
    gone = f" (before: {'; '.join(map(_shown, touched))})" if touched else ""
    settled.done.append(clause + gone)
    rest = [each for each in held if each not in touched]
    made = tuple(sorted([*rest, new], key=lambda each: each.first))
    return replace(inscription, **{key: made})  # type: ignore[arg-type]


def _says_same(one: Override | SettledPassage, other: Override | SettledPassage) -> bool:
    if isinstance(one, Override) and isinstance(other, Override):
        return (*one[:3], one.kind) == (*other[:3], other.kind)
    return (
        isinstance(one, SettledPassage)
        and isinstance(other, SettledPassage)
        and one[:4] == other[:4]
    )


def _shown(each: Override | SettledPassage) -> str:
    said = each.kana if isinstance(each, Override) else each.kind
    of = f"{each.of} = " if each.of else f"signs {each.first + 1}-{each.last + 1} = "
    return of + said + (f", by {each.by}" if each.by else "")


def _places(t: Transcription, saying: Settlement) -> Iterator[tuple[int, int]]:
    """Yield the first and last sign of each place that is meant.

    Raises:
        InputError: the text has no signs of these numbers.
    """
    if saying.signs is not None:
        if saying.signs[1] >= len(t.signs):
            said = f"there is no sign {saying.signs[1] + 1}"
            raise InputError(said, hint=f"the text has {len(t.signs)}, marks included")
        yield saying.signs
        return
    yield from places_of(t, saying.written)


def places_of(t: Transcription, written: str) -> Iterator[tuple[int, int]]:
    """Yield the first and last sign of each place where something is written, in whatever forms.

    >>> from inscribe.notation import parse
    >>> list(places_of(parse("露岳斎嶺曉／嶺暁"), "嶺暁"))
    [(3, 4), (5, 6)]
    """
    normal = forms.normalise(t)
    wanted = forms.normalise_text(written).text
    origin = normal.origin
    start = normal.text.find(wanted) if wanted else -1
    while start >= 0:
        end = start + len(wanted)
        begins = start == 0 or origin[start - 1] != origin[start]
        ends = end == len(origin) or origin[end] != origin[end - 1]
        if begins and ends:
            yield origin[start], origin[end - 1]
        start = normal.text.find(wanted, end if begins and ends else start + 1)
