"""Signs put into a text, and what counts its signs moved with them.

Overrides, passages, boxes and decisions name signs by number; whoever puts other signs into a text
changes the numbers of those behind. What stands beside ``of`` tells where they belong.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any, NamedTuple, TypeVar

from inscribe import notation
from inscribe.errors import InputError, NotationError
from inscribe.record.model import Decision, Inscription, Override, SettledPassage
from inscribe.signs import Sign, Transcription, transcription

Spanning = TypeVar("Spanning", Override, SettledPassage, Decision)


def with_signs(inscription: Inscription, first: int, end: int, written: str) -> Inscription:
    """Return an inscription with ``written`` in place of the signs ``first`` to ``end``.

    ``end`` is not counted in: where it equals ``first``, the signs are put in before that sign.
    What is settled of other signs stays settled of them; a box of a sign that goes, goes too.

    Raises:
        InputError: with these signs the text could not be read.

    >>> with_signs(Inscription("front", "武州□岳作"), 2, 3, "［住露］").text
    '武州［住露］岳作'
    """
    before = inscription.transcription
    text, after = _rewritten(inscription, first, end, written)
    grown = len(after.signs) - len(before.signs)
    inside = (first, end, grown)
    same_columns = len(after.columns) == len(before.columns)
    return replace(
        inscription,
        text=text,
        columns=inscription.columns if same_columns else (),
        boxes=tuple(
            box._replace(sign=_moved(box.sign, *inside))
            for box in inscription.boxes
            if not (first <= box.sign < end and grown)
        ),
        overrides=_spans(inscription.overrides, after, inside),
        passages=_spans(inscription.passages, after, inside),
        decisions=_spans(inscription.decisions, after, inside),
    )


def _rewritten(
    inscription: Inscription, first: int, end: int, written: str
) -> tuple[str, Transcription]:
    """Return the text with other signs in one place, and what it says.

    Only those signs are written anew, unless the brackets around them forbid it; then all are.
    """
    text, convention = inscription.text, inscription.notation
    signs = inscription.transcription.signs
    try:
        new = notation.parse(written, convention)
    except NotationError as error:
        said = f"{written} cannot be written there: {error.message}"
        raise InputError(said, hint=error.hint) from error
    wanted = [_bare(sign) for sign in (*signs[:first], *new.signs, *signs[end:])]
    extents = notation.extents_of_signs(text, convention)
    start = extents[first][0] if first < end else extents[first - 1][1] if first else extents[0][0]
    stop = extents[end - 1][1] if first < end else start
    changed = text[:start] + written + text[stop:]
    try:
        found = notation.parse(changed, convention)
    except NotationError:
        found = None
    if found is None or [_bare(sign) for sign in found.signs] != wanted:
        changed = _written_anew(inscription, first, end, new)
        found = notation.parse(changed, convention)
    if [_bare(sign) for sign in found.signs] != wanted:
        raise InputError(
            f"{written or 'nothing'} cannot stand there without changing the signs around it",
            hint="change the text in the record's file",
        )
    return changed, found


def _bare(sign: Sign) -> Sign:
    return replace(sign, index=0, column=0, box=None)


def _written_anew(inscription: Inscription, first: int, end: int, new: Transcription) -> str:
    """Return the whole text as the notation writes it, with other signs in one place."""
    t = inscription.transcription
    column_of_new = t.signs[min(first, len(t.signs) - 1)].column
    faces = []
    for face in t.faces:
        columns = []
        for column in face.columns:
            signs = [sign for sign in column.signs if sign.index < first]
            signs += new.signs if column.index == column_of_new else ()
            signs += [sign for sign in column.signs if sign.index >= end]
            columns.append(signs)
        faces.append(columns)
    column_end = "\n" if "\n" in inscription.text else None
    return notation.render(transcription(faces), inscription.notation, column_end)


def _moved(sign: int, first: int, end: int, grown: int) -> int:
    """Return the number of a sign after others were put in place of ``first`` to ``end``."""
    if sign >= end:
        return sign + grown
    return sign if sign < first else min(sign, end + grown - 1)


def _spans(
    spans: Sequence[Spanning], after: Transcription, inside: tuple[int, int, int]
) -> tuple[Spanning, ...]:
    """Return what is settled of signs with their new numbers, without what has no sign left."""
    _, end, grown = inside
    found = []
    for span in spans:
        start = _moved(span.first, *inside)
        last = _moved(span.last, *inside) if span.last != end - 1 else span.last + grown
        if isinstance(span, Decision):  # it stays, beside the sign before
            start = max(0, min(start, last, len(after.signs) - 1))
            last = min(max(start, last), len(after.signs) - 1)
        elif start > last or last < 0:
            continue
        moved = span._replace(first=start, last=last)
        if not isinstance(moved, Decision) and moved.of:
            moved = moved._replace(of=_legible(after, start, last))
        found.append(moved)
    return tuple(found)


def _legible(t: Transcription, first: int, last: int) -> str:
    return "".join(sign.text for sign in t.signs[first : last + 1] if sign.is_legible)


class Mended(NamedTuple):
    """Something settled whose signs stand elsewhere now; signs are counted from 1."""

    key: str
    of: str
    before: tuple[int, int]
    after: tuple[int, int]


def mended(text: str, file: str) -> tuple[str, tuple[Mended, ...]]:
    """Return a record's text with overrides and passages moved to where their signs stand now.

    Only what was made for signs that stand in one other place, and not in its own, is moved; where
    nothing is, the text is as it was. A text that is no record is left as it is too.
    """
    try:
        data = tomllib.loads(text)
        moves = list(_moves(data))
    except (ValueError, RecursionError, NotationError, AttributeError, TypeError, KeyError):
        return text, ()
    if not moves:
        return text, ()
    import tomlkit

    document: Any = tomlkit.parse(text)
    for inscription, key, place, move in moves:
        document["inscription"][inscription][key][place]["signs"] = list(move.after)
    return tomlkit.dumps(document), tuple(move for *_, move in moves)


def _moves(data: dict[str, Any]) -> Iterator[tuple[int, str, int, Mended]]:
    for number, inscription in enumerate(data.get("inscription", [])):
        t = notation.parse(
            inscription["text"].rstrip("\n"), inscription.get("notation", "japanese")
        )
        for key in ("override", "passage"):
            spans = inscription.get(key, [])
            stale = [n for n, span in enumerate(spans) if not _holds(t, span)]
            taken = {
                sign
                for n, span in enumerate(spans)
                if n not in stale
                for sign in range(span["signs"][0], span["signs"][1] + 1)
            }
            for place in stale:
                first, last = spans[place]["signs"]
                found = [each for each in _places(t, spans[place]["of"]) if each[0] not in taken]
                if len(found) == 1:
                    moved = Mended(key, spans[place]["of"], (first, last), found[0])
                    taken.update(range(found[0][0], found[0][1] + 1))
                    yield number, key, place, moved


def _holds(t: Transcription, span: dict[str, Any]) -> bool:
    first, last = span["signs"]
    return not span.get("of") or _legible(t, first - 1, last - 1) == span["of"]


def _places(t: Transcription, of: str) -> Iterator[tuple[int, int]]:
    """Yield where signs that say ``of`` begin and end, counted from 1."""
    for start in range(len(t.signs)):
        said = ""
        for end in range(start, len(t.signs)):
            sign = t.signs[end]
            said += sign.text if sign.is_legible else ""
            if said == of and sign.is_legible:
                yield start + 1, end + 1
                break
            if not of.startswith(said) or (end == start and not sign.is_legible):
                break
