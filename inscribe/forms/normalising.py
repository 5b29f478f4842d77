"""From what is carved to current forms, one traced step a sign.

>>> normal = normalise_text("國々の𛂞なゟ")
>>> normal.text, normal.origin
('国国のはなより', (0, 1, 2, 3, 4, 5, 5))
>>> [(c.sign, c.before, c.after, c.kind) for c in normal.changes][:2]
[(0, '國', '国', 'old form'), (1, '々', '国', 'repeat mark')]
"""

from __future__ import annotations

from functools import lru_cache

from inscribe.forms import repeats, sequences
from inscribe.forms.normal import Change, NormalText
from inscribe.forms.steps import LIGATURE, REPEAT_MARK, VOICING_MARK, Step, steps
from inscribe.signs import Certainty, Kind, Sign, Transcription

UNREAD = "□"
GAP = "［　　］"
KAO = "（花押）"


def normalise_text(text: str) -> NormalText:
    """Return a plain text in current forms, every change traced.

    Signs are counted as :func:`inscribe.forms.sequences.signs_of` counts them: a character with
    its combining or variation marks is one sign. Nothing is known of a transcriber's notation.
    """
    table = steps()
    if text.isascii() or (table.keys().isdisjoint(text) and sequences.JOINING.isdisjoint(text)):
        return NormalText(text, _identity(len(text)))
    if sequences.JOINING.isdisjoint(text):
        return _normalised(text, [], {})
    return _from_signs(sequences.signs_of(text))


def normalise(t: Transcription) -> NormalText:
    """Return an inscription in current forms, every change traced to its sign.

    A sign that cannot be read stands as ``□``, a gap as ``［　　］``, a kao as ``（花押）`` and a
    seal as ``（印「…」）`` with its legend in current forms; each character of such a mark has the
    sign's index as its origin.
    """
    return _from_signs([_shown(sign) for sign in t.signs])


def _shown(sign: Sign) -> str:
    if sign.kind is Kind.GAP:
        return GAP
    if sign.kind is Kind.KAO:
        return KAO
    if sign.kind is Kind.SEAL:
        return f"（印「{sign.text}」）"
    if sign.certainty is Certainty.UNREADABLE or not sign.text:
        return UNREAD
    return sign.text


@lru_cache(maxsize=512)
def _identity(length: int) -> tuple[int, ...]:
    return tuple(range(length))


def _from_signs(signs: list[str]) -> NormalText:
    """Return the normal text of signs that may be sequences or marks of several characters."""
    text = "".join(signs)
    if len(text) == len(signs):
        return _normalised(text, [], {})
    single: list[str] = []
    changes: list[Change] = []
    kept: dict[int, str] = {}
    for index, sign in enumerate(signs):
        if len(sign) == 1:
            single.append(sign)
            continue
        for step in sequences.joined(sign):
            changes.append(Change(index, *step))
            sign = step.after
        if len(sign) != 1:
            kept[index] = sign
        single.append(sign if len(sign) == 1 else UNREAD)
    return _normalised("".join(single), changes, kept)


def _normalised(text: str, joined: list[Change], kept: dict[int, str]) -> NormalText:
    """Return the normal text of one character a sign.

    ``joined`` are changes made before, ``kept`` the signs that stay as they are.
    """
    table = steps()
    hits = [(index, sign) for index, sign in enumerate(text) if sign in table]
    if not hits and not kept:
        return NormalText(text, _identity(len(text)), tuple(joined))
    stands = list(text)
    for index, mark in kept.items():
        stands[index] = mark
    changes = _stepped(hits, stands)
    if joined:
        changes = sorted(joined + changes, key=lambda change: change.sign)
    result = "".join(stands)
    if len(result) == len(stands) and "" not in stands:
        return NormalText(result, _identity(len(result)), tuple(changes))
    origin = tuple(index for index, shown in enumerate(stands) for _ in shown)
    return NormalText(result, origin, tuple(changes))


def _stepped(hits: list[tuple[int, str]], stands: list[str]) -> list[Change]:
    """Change the hit signs in ``stands``, in order, and return the changes."""
    table = steps()
    changes: list[Change] = []
    for index, sign in hits:
        step = table[sign]
        if step.kind in _BY_NEIGHBOURS:
            changes += _by_neighbours(index, step, stands)
        else:
            stands[index] = step.after
            changes.append(Change._make((index, *step)))
    return changes


_BY_NEIGHBOURS = frozenset((REPEAT_MARK, LIGATURE, VOICING_MARK))


def _by_neighbours(index: int, step: Step, stands: list[str]) -> list[Change]:
    """Change one sign whose meaning hangs on what stands around it."""
    if step.kind == LIGATURE:
        stands[index] = step.after
        return [Change(index, *step)]
    if step.kind == VOICING_MARK or stands[index] != step.before:
        return []
    marks = repeats.marks()
    end = index
    while end < len(stands) and stands[end] in marks:
        end += 1
    before = "".join(stands[max(0, index - repeats.REACH) : index])
    changes: list[Change] = []
    found = repeats.expansions("".join(stands[index:end]), before)
    for at, (after, note, doubtful) in enumerate(found, start=index):
        changes.append(Change(at, stands[at], after, step.kind, step.table, note, doubtful))
        stands[at] = after
    return changes
