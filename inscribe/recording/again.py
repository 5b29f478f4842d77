"""A finished record opened again: its answers as they would have been given, and the way back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import fields, replace
from typing import Any, TypeVar

from inscribe.errors import InputError
from inscribe.record import Inscription, Override, Record, SettledPassage
from inscribe.recording.measures import sizes_of
from inscribe.recording.questions import FACE_ENDS


def answers_of(record: Record) -> dict[str, str]:
    """Return the answers that would make a record, as far as they are asked for.

    Raises:
        InputError: an inscription is written in another convention than the prompts take.
    """
    return dict(_answers(record))


def _answers(record: Record) -> Iterator[tuple[str, str]]:
    yield "id", record.id
    yield "kind", record.kind
    yield "title", record.title
    yield "drawer", record.drawer
    for name in sizes_of(record.kind):
        yield name, _size(getattr(record.measurements, name))
    for number, each in enumerate(record.inscriptions, start=1):
        yield from _answers_of_inscription(f"inscription.{number}", each)
        yield f"more.{number}", "y" if number < len(record.inscriptions) else "n"
    yield "remarks", record.remarks


def _size(size: float | None) -> str:
    return "" if size is None else f"{size:g}"


def _answers_of_inscription(part: str, each: Inscription) -> Iterator[tuple[str, str]]:
    if each.notation != "japanese":
        hint = "change it in an editor, then: inscribe check RECORD"
        raise InputError(f"the text is in the {each.notation} convention", hint=hint)
    yield f"{part}.place", each.place
    yield f"{part}.hand", each.hand
    yield f"{part}.execution", each.execution
    lines = [line for line in _columns(each.text) if line]
    for number, line in enumerate([*lines, ""], start=1):
        yield f"{part}.column.{number}", line
        if line and line != FACE_ENDS:
            yield f"{part}.column.{number}.kept", "y"
    yield f"{part}.plate.width", _size(each.plate.width if each.plate else None)
    yield f"{part}.plate.height", _size(each.plate.height if each.plate else None)
    for number in range(1, len(each.transcription.columns) + 1):
        measured = each.columns[number - 1] if each.columns else None
        said = f"{measured.top:g} {measured.bottom:g}" if measured else ""
        yield f"{part}.measure.{number}", said
    yield f"{part}.source", each.source.id if each.source else ""
    for number, line in enumerate([*each.translation.split("\n"), ""], start=1):
        if line or number > 1:
            yield f"{part}.translation" + (f".{number}" if number > 1 else ""), line
        else:
            yield f"{part}.translation", ""
            break
    reader = each.readers[0] if each.readers else None
    yield f"{part}.reader", reader.by if reader else ""
    yield f"{part}.on", reader.on.isoformat() if reader and reader.on else ""


def _columns(text: str) -> Iterator[str]:
    """Yield the lines of a text; an end of a face is a line of its own, as it is typed."""
    for line in text.split("\n"):
        if line.endswith(FACE_ENDS):
            yield line.removesuffix(FACE_ENDS)
            yield FACE_ENDS
        else:
            yield line


def with_changes(record: Record, before: Record, after: Record) -> Record:
    """Return a record with what differs between two sets of answers, and all else as it was.

    ``before`` is what the record's own answers make, ``after`` what they make now.
    """
    inscriptions = []
    for number, new in enumerate(after.inscriptions):
        if number < len(record.inscriptions):
            old = record.inscriptions[number]
            inscriptions.append(_inscription_with(old, before.inscriptions[number], new))
        else:
            inscriptions.append(new)
    changed: dict[str, Any] = {
        key: getattr(after, key)
        for key in ("id", "kind", "title", "remarks", "measurements", "drawer")
        if getattr(after, key) != getattr(before, key)
    }
    if "measurements" in changed:
        sizes = after.measurements._asdict()
        old_sizes, asked = record.measurements._asdict(), before.measurements._asdict()
        changed["measurements"] = record.measurements._replace(
            **{key: sizes[key] if sizes[key] != asked[key] else old_sizes[key] for key in sizes}
        )
    return record._replace(inscriptions=tuple(inscriptions), **changed)


def _inscription_with(record: Inscription, before: Inscription, after: Inscription) -> Inscription:
    changed: dict[str, Any] = {
        each.name: getattr(after, each.name)
        for each in fields(Inscription)
        if getattr(after, each.name) != getattr(before, each.name)
    }
    if "readers" in changed:
        changed["readers"] = (*after.readers, *record.readers[1:])
    if "columns" in changed and len(after.columns) == len(record.columns):
        changed["columns"] = tuple(
            old._replace(top=new.top, bottom=new.bottom)
            for old, new in zip(record.columns, after.columns, strict=True)
        )
    if "plate" in changed and record.plate and after.plate:
        changed["plate"] = after.plate._replace(tolerance=record.plate.tolerance)
    if "source" in changed and record.source and after.source:
        changed["source"] = replace(record.source, id=after.source.id)
    if "text" in changed:
        changed |= _settled(record, after)
    elif "overrides" in changed:
        settled = {(o.first, o.last) for o in after.overrides}
        kept = (o for o in record.overrides if (o.first, o.last) not in settled)
        changed["overrides"] = tuple(sorted((*kept, *after.overrides), key=lambda o: o.first))
    return replace(record, **changed)


def _settled(record: Inscription, after: Inscription) -> dict[str, Any]:
    """Return what counts signs, moved to where they stand in the text as it is now.

    What was settled of signs that are others now is left out.
    """
    from difflib import SequenceMatcher

    from inscribe.record import with_signs

    old, new = record.transcription.signs, after.transcription.signs
    moved = replace(record, text=_ANY * len(old), columns=())
    steps = SequenceMatcher(None, [s.text for s in old], [s.text for s in new], autojunk=False)
    for kind, first, end, start, stop in reversed(steps.get_opcodes()):
        if kind != "equal":
            moved = with_signs(moved, first, end, _ANY * (stop - start))
    ours = {at for each in after.overrides for at in range(each.first, each.last + 1)}
    kept = [o for o in _fitting(moved.overrides, record.overrides, after) if o.first not in ours]
    return {
        "overrides": tuple(sorted((*kept, *after.overrides), key=lambda each: each.first)),
        "passages": tuple(_fitting(moved.passages, record.passages, after)),
        "decisions": moved.decisions,
        "boxes": moved.boxes,
    }


Spanning = TypeVar("Spanning", Override, SettledPassage)
_ANY = "花"  # a sign like any other: only how many there are counts


def _fitting(
    moved: Sequence[Spanning], before: Sequence[Spanning], after: Inscription
) -> Iterator[Spanning]:
    """Yield what is settled of signs that are still there."""
    wanted = {each[2:]: each.of for each in before}
    for each in moved:
        signs = after.transcription.signs[each.first : each.last + 1]
        of = "".join(sign.text for sign in signs if sign.is_legible)
        was = next((o for key, o in wanted.items() if key[:1] == each[2:3] and _like(o, of)), None)
        if not each.of or was is not None:
            yield each._replace(of=of if each.of else "")


def _like(one: str, other: str) -> bool:
    from inscribe.forms import normalise_text

    return normalise_text(one).text == normalise_text(other).text
