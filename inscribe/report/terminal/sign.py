"""Signs looked up, as plain lines for a terminal, a pipe or a file."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.report import width
from inscribe.report.terminal.reading import printable
from inscribe.report.terminal.wrapping import fitted

if TYPE_CHECKING:
    from inscribe.forms import CharacterPart, Description

_LABEL = 20
_REPEATED = {"kanji": "one kanji", "kana": "one kana", "several": "two or more morae, or a word"}
_MOST_LIKE = 24  # look-alikes named before the rest are counted


def signs_as_text(found: Sequence[Description]) -> str:
    """Return all that is known of each sign, a fact a line, the signs parted by empty lines."""
    return "\n".join("".join(map(_shown, _lines(each))) for each in found)


def _shown(line: str) -> str:
    return f"{fitted(printable(line), _LABEL)}\n"


def list_as_text(found: Sequence[Description], left_out: int) -> str:
    """Return one line a sign: strokes, current form, readings and senses."""
    if not found:
        return ""
    rows = [_row(each) for each in found]
    sizes = [max(map(width, column)) for column in zip(*rows, strict=True)]
    lines = [
        "  ".join(cell + " " * (size - width(cell)) for cell, size in zip(row, sizes, strict=True))
        for row in rows
    ]
    if left_out:
        lines.append(f"and {left_out} more; use --limit, or say more of the character")
    return "".join(f"{printable(line).rstrip()}\n" for line in lines)


def _lines(found: Description) -> Iterator[str]:
    yield f"{found.char}  {' '.join(found.code_points)}  {found.name}"
    yield from _written_today(found)
    yield from _kana(found)
    if found.merged:
        yield _fact("as a word", f"{found.merged.word}: {found.merged.meaning}")
    if found.repeats:
        voiced = ", the first voiced" if found.repeats.voiced else ""
        yield _fact("repeats", _REPEATED[found.repeats.repeats] + voiced)
    if found.number is not None:
        yield _fact("number", str(found.number))
    yield from _readings(found)
    if found.character.strokes:
        first, *others = found.character.strokes
        counted = f" (also counted {', '.join(map(str, others))})" if others else ""
        yield _fact("strokes", f"{first}{counted}")
    if found.parts:
        yield _fact("parts", _layout(found.parts))
    yield from _relations(found)
    if (
        not found.step
        and not found.readings.on
        and not found.character.strokes
        and _is_kanji(found)
    ):
        yield "no more is known of this sign"


def _is_kanji(found: Description) -> bool:
    return found.name.startswith("CJK UNIFIED")


def _written_today(found: Description) -> Iterator[str]:
    step = found.step
    if step and found.current != found.char:
        note = f", {step.note}" if step.note else ""
        yield _fact("today", f"{found.current}  ({step.kind}{note}; {step.table})")
    elif step and step.note:
        yield _fact(step.kind, step.note)


def _kana(found: Description) -> Iterator[str]:
    if found.parent:
        yield _fact("parent", f"{found.parent} {_said(found.parent)}".rstrip())
    if len(found.kana) > 1:
        yield _fact("read as", " or ".join(found.kana))
    if found.hentaigana:
        yield _fact("hentaigana", ", ".join(map(_with_parent, found.hentaigana)))
    if found.sounds:
        yield _fact("for the sound", " ".join(found.sounds))


def _with_parent(hentaigana: str) -> str:
    """Return the sign with the kanji it was written from: few screens can show the sign."""
    from inscribe.forms import parent_of

    parent = parent_of(hentaigana)
    return f"{hentaigana} from {parent}" if parent else hentaigana


def _said(kanji: str) -> str:
    from inscribe.forms import readings

    return " ".join(readings(kanji).on[:2])


def _readings(found: Description) -> Iterator[str]:
    of = f"  (of {found.readings_of})" if found.readings_of != found.char else ""
    readings = found.readings
    for label, values in (("on", readings.on), ("kun", readings.kun), ("in names", readings.names)):
        if values:
            yield _fact(label, " ".join(values) + of)
    if found.character.senses:
        yield _fact("senses", "; ".join(found.character.senses))


def _relations(found: Description) -> Iterator[str]:
    by_kind: dict[str, list[str]] = defaultdict(list)
    alike: list[str] = []
    for other, relation in found.relations.items():
        if relation.is_same_character:
            by_kind[relation.kind].append(other + _meaning(other))
        else:
            alike.append(f"{other} ({relation.note})")
    for kind, others in by_kind.items():
        yield _fact(kind, " ".join(others))
    if alike:
        rest = f" and {len(alike) - _MOST_LIKE} more" if len(alike) > _MOST_LIKE else ""
        yield _fact("looks like", ", ".join(alike[:_MOST_LIKE]) + rest)


def _meaning(sign: str) -> str:
    """Return what a form merged with others means, in brackets, or nothing."""
    from inscribe.forms import merged_word

    merged = merged_word(sign)
    return f" ({merged.meaning})" if merged and merged.word != merged.current else ""


def _layout(parts: Sequence[CharacterPart]) -> str:
    return ", ".join(_part(part) for part in parts)


def _part(part: CharacterPart) -> str:
    whole = f" = {part.whole}" if part.whole and part.whole != part.char else ""
    inner = f" ({_layout(part.parts)})" if part.parts else ""
    where = "" if part.position == "part" else f" {part.position}"
    return f"{part.char}{whole}{where}{inner}"


def _row(found: Description) -> tuple[str, ...]:
    today = f"today {found.current}" if found.current != found.char else ""
    strokes = str(next(iter(found.character.strokes), ""))
    readings = found.readings
    said = " ".join((*readings.on[:3], *readings.kun[:3]))
    return (found.char, strokes, today, said, "; ".join(found.character.senses[:2]))


def _fact(label: str, text: str) -> str:
    return label + " " * (_LABEL - width(label)) + text
