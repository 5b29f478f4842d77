"""What a report of a collation shows, before any format: rows, places and sentences."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from inscribe.collation import NO_DIFFERENCE, Collation, Group, Span
from inscribe.notation import print_signs, printed, written_out
from inscribe.report import common, reasons_said, verdict_said, where_in

if TYPE_CHECKING:
    from inscribe.collation import Judgement, SpaceAccount
    from inscribe.report import Common

NOT_THE_TEXT = "The source does not contain this text: hardly a word of the copy stands in it."
BLANK = "＿"  # stands for each sign that one side has not
LEVELS = (
    ("signs as carved", "as_carved"),
    ("characters", "characters"),
    ("sounds", "sounds"),
    ("words", "words"),
)


@dataclass(frozen=True, slots=True)
class AlignedCell:
    """One stretch of a column: the copy's signs, the source's beneath, the difference's number."""

    copy: str
    source: str
    number: int | None = None


@dataclass(frozen=True, slots=True)
class DifferenceRow:
    """One difference as a table shows it."""

    number: int
    kind: str
    copy: str
    source: str
    where: str
    why: str


def columns(result: Collation) -> list[list[AlignedCell]]:
    """Return the copy's columns as cells, the source's words beside what answers them."""
    ends = _column_ends(result)
    found: list[list[AlignedCell]] = [[] for _ in ends]
    number = 0
    for group in result.groups:
        if group.kind not in NO_DIFFERENCE:
            number += 1
        for place, cell in _cells(group, number, result, ends):
            found[place].append(cell)
    return found


def _column_ends(result: Collation) -> list[int]:
    ends, total = [], 0
    for column in result.copy.columns:
        total += len(column.signs)
        ends.append(total)
    return ends or [0]


def _cells(
    group: Group, number: int, result: Collation, ends: Sequence[int]
) -> Iterator[tuple[int, AlignedCell]]:
    start, source = group.copy.start, written_out(group.source.text) or BLANK * len(group.copy)
    first = next((n for n, end in enumerate(ends) if start < end), len(ends) - 1)
    if not len(group.copy):
        yield first, AlignedCell(BLANK * len(group.source), source, number)
        return
    for place in range(first, len(ends)):
        end = min(group.copy.end, ends[place])
        written = shown(result, start, end)
        if group.kind in NO_DIFFERENCE:
            yield place, AlignedCell(written, written if group.kind == "same" else "")
        else:
            yield place, AlignedCell(written, source, number)
            source = ""
        start = end
        if start >= group.copy.end:
            return


def shown(result: Collation, start: int, end: int) -> str:
    """Return signs of the copy as a transcriber writes them."""
    from inscribe.forms import UNREAD
    from inscribe.signs import Kind

    return "".join(
        (printed(sign) or UNREAD) if sign.kind is Kind.CHARACTER else print_signs([sign])
        for sign in result.copy.signs[start:end]
    )


def rows(result: Collation, *, substantive: bool) -> list[DifferenceRow]:
    """Return the differences in wording, or those in writing only, numbered in the copy's order."""
    return [
        DifferenceRow(
            n,
            g.kind,
            written_out(g.copy.text),
            written_out(g.source.text),
            where(g.copy, result),
            written_out(g.why),
        )
        for n, g in enumerate(result.differences, start=1)
        if g.is_substantive == substantive
    ]


def where(place: Span, result: Collation) -> str:
    """Return the place of signs of the copy as one counts on the metal: column and sign, from 1."""
    return where_in(place, result.copy)


def levels(result: Collation) -> list[tuple[str, str, str]]:
    """Return the levels of fidelity: name, count, share of the source."""
    total = result.fidelity.signs_in_source
    found = []
    for name, attribute in LEVELS:
        if attribute == "as_carved" and not result.fidelity.by_signs:
            continue
        count, share = getattr(result.fidelity, attribute)
        found.append((name, f"{count} of {total}", f"{share:.0%}" if total else "-"))
    return found


def verdict(result: Collation) -> str:
    """Return the collation in one sentence."""
    if not result.fidelity.signs_in_source:
        return "The source has no signs: there is nothing to hold the copy against."
    if not result.copy.signs:
        return "The copy has no signs: there is nothing to hold against the source."
    if not result.is_of_same_text:
        return NOT_THE_TEXT
    kinds = [group.kind for group in result.differences if group.is_substantive]
    if not kinds:
        unread = sum(group.kind == "unread" for group in result.differences)
        rest = f"; {_counted_words(unread, 'place')} cannot be read" if unread else ""
        part = " where it is from" if result.is_excerpt else ""
        return f"The copy has the words of the source{part}{rest}."
    parts = [f"{kinds.count(kind)} {kind}" for kind in dict.fromkeys(kinds)]
    return f"The wording differs in {_counted_words(len(kinds), 'place')}: {', '.join(parts)}."


def _counted_words(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"


def standing_beside(result: Collation) -> str:
    """Return what stands beside the copied text, or nothing."""
    said = [
        f"{each.kind} {each.text}" + (f" ({each.role})" if each.role else "")
        for each in result.beside
    ]
    return f"Stands beside the copied text: {'; '.join(said)}." if said else ""


def relineation(result: Collation) -> str:
    """Return where the columns end against the lines of the source, or nothing."""
    if not result.breaks or len(result.source.columns) < 2:
        return ""
    same = sum(b.at_line_end for b in result.breaks)
    return f"Column ends that fall where a line of the source ends: {same} of {len(result.breaks)}."


def judgements(account: SpaceAccount, result: Collation) -> Iterator[tuple[str, list[str]]]:
    """Yield the judgements on the want of space, each with a line for each side's reasons.

    What speaks for or against space in all differences is told first; differences of which the
    same is said stand together.
    """
    told = common(account)
    if lines := _sides(told):
        yield "all differences", lines
    alike = groupby(account.judgements, lambda item: (verdict_said(item), _sides(item, told)))
    for (verdict, lines), items in alike:
        named = [_named(item, result) for item in items]
        what = "differences" if len(named) > 1 else "difference"
        yield f"{what} {'; '.join(named)}: {verdict}", lines


def _named(item: Judgement, result: Collation) -> str:
    group = result.differences[item.difference]
    copied = f", copied {group.copy.text}" if group.copy.text else ""
    return f"{item.difference + 1}, {group.source.text}{copied}"


def _sides(item: Judgement | Common, told: Common | None = None) -> list[str]:
    return [f"{side}: {reason}" for side, reason in reasons_said(item, told)]
