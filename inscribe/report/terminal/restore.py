"""Worn places and what may fill them, for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted, in_columns

if TYPE_CHECKING:
    from inscribe.keys import RefusedKeys
    from inscribe.restoring import Candidate, Lacuna, Restoration


def restorations_as_text(results: Sequence[Restoration | RefusedKeys]) -> str:
    """Return the worn places of each inscription, and the cautions once at the end."""
    lines: list[str] = []
    for result in results:
        if isinstance(result, dict):
            lines += [printable(f"line {result['line']}: {result['error']}"), ""]
        else:
            lines += [*_inscription(result), ""]
    said = dict.fromkeys(
        caution for each in results if not isinstance(each, dict) for caution in each.cautions
    )
    lines += [fitted(caution, 0) for caution in said]
    return "\n".join(lines).rstrip("\n") + "\n"


def _inscription(found: Restoration) -> Iterator[str]:
    yield printable(f"{found.text}  ({found.register})")
    if not found.lacunae:
        yield "no character is worn; to doubt one, name it with --sign N"
    for hit in found.sources:
        names = " ".join(dict.fromkeys(filter(None, (hit.text.id, hit.text.title))))
        chance = f" (probability {hit.score:.2f})" if hit.text.id else ""
        yield printable(f"source: {names}{chance}")
    if (count := len(found.lacunae)) < found.worn:
        yield f"{count} of {found.worn} worn places; name others with --places FIRST-LAST"
    for lacuna in found.lacunae:
        yield ""
        yield printable(_heading(lacuna))
        if lacuna.remark:
            yield fitted(printable(f"   {lacuna.remark}"), 3)
        yield from in_columns([_row(each) for each in lacuna.candidates])
        if not lacuna.candidates:
            yield "   no candidate"


def _heading(lacuna: Lacuna) -> str:
    place = f"column {lacuna.column + 1}, sign {lacuna.sign_in_column + 1}"
    if lacuna.sign != lacuna.sign_in_column:
        place += f" (sign {lacuna.sign + 1} of the inscription)"
    mark = "［　　］" if lacuna.kind == "gap" else "□"
    shown = f"{place}: …{lacuna.before}【{mark}】{lacuna.after}…"
    morae = "" if lacuna.missing is None else f"  {lacuna.missing} mora by the metre"
    morae = morae.replace("mora", "morae") if (lacuna.missing or 0) > 1 else morae
    return shown + morae


def _row(candidate: Candidate) -> tuple[str, ...]:
    forms = f" ({' '.join(candidate.forms)})" if candidate.forms else ""
    evidence = "; ".join(each.text for each in candidate.evidence)
    share = f"{candidate.probability:6.1%}" if candidate.probability >= 0.001 else " <0.1%"
    row = (f"{candidate.rank:3}. {candidate.text}{forms}", share, evidence)
    return tuple(map(printable, row))
