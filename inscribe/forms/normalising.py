"""From what is carved to current forms, one traced step a sign.

>>> normal = normalise_text("國々の𛂞なゟ")
>>> normal.text, normal.origin
('国国のはなより', (0, 1, 2, 3, 4, 5, 5))
>>> [(c.sign, c.before, c.after, c.kind) for c in normal.changes][:2]
[(0, '國', '国', 'old form'), (1, '々', '国', 'repeat mark')]
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from inscribe.forms import neighbours, sequences
from inscribe.forms.normal import Change, NormalText
from inscribe.forms.steps import Step, steps
from inscribe.signs import Certainty, Kind, Sign, Transcription

UNREAD = "□"
GAP = "［　　］"
KAO = "（花押）"


def normalise_text(text: str) -> NormalText:
    """Return a plain text in current forms, every change traced.

    A character with its combining or variation marks is one sign, as is a repeat mark in two
    halves; every other character is one, line breaks included. Nothing is known of a
    transcriber's notation.

    Raises:
        TableError: a glossary table cannot be used.
    """
    if not sequences.JOINING.isdisjoint(text):
        return _from_signs(sequences.signs_of(text))
    if steps().keys().isdisjoint(text):
        return NormalText(text, _identity(len(text)))
    return _normalised(text, [], [])


def normalise(t: Transcription) -> NormalText:
    """Return an inscription in current forms, every change traced to its sign.

    A sign that cannot be read stands as ``□``, a gap as ``［　　］``, a kao as ``（花押）`` and a
    seal as ``（印「…」）`` with its legend in current forms; each character of such a mark has the
    sign's index as its origin.

    Raises:
        TableError: a glossary table cannot be used.
    """
    return _from_signs([_shown(sign) for sign in t.signs])


def _shown(sign: Sign) -> str:
    if sign.kind is Kind.GAP:
        return GAP
    if sign.kind is Kind.KAO:
        return KAO
    if sign.kind is Kind.SEAL:
        return f"（印「{sign.text or UNREAD}」）"
    if sign.certainty is Certainty.UNREADABLE or not sign.text:
        return UNREAD
    return sign.text


@lru_cache(maxsize=512)
def _identity(length: int) -> tuple[int, ...]:
    return tuple(range(length))


def _from_signs(signs: Sequence[str]) -> NormalText:
    """Return the normal text of signs that may be sequences or marks of several characters."""
    joined: list[Change] = []
    brought = list(signs)
    for index, sign in enumerate(signs):
        if len(sign) > 1:
            for step in _steps_of(sign):
                joined.append(Change(index, *step))
                brought[index] = step.after
    return _normalised(brought, joined, [sign for sign in brought if len(sign) > 1])


def _steps_of(sign: str) -> list[Step]:
    if sign in (GAP, KAO):
        return []
    if not sign.startswith("（印「"):
        return sequences.joined(sign)
    normal = normalise_text(sign)
    kinds = [change for change in normal.changes if change.before != change.after]
    return [Step(sign, normal.text, *kinds[0][3:])] if kinds else []


def _normalised(signs: Sequence[str], joined: list[Change], several: Sequence[str]) -> NormalText:
    """Return the normal text of signs, after the changes ``joined``.

    ``several`` are those of the signs that are of more than one character.
    """
    table = steps()
    hits = [(index, sign) for index, sign in enumerate(signs) if sign in table]
    stands = list(signs)
    changes = joined + _stepped(hits, stands) if hits else joined
    if joined and hits:
        changes.sort(key=_sign_of)
    text = "".join(stands)
    if not several and len(text) == len(stands) and "" not in stands:
        origin = _identity(len(text)) if len(text) < 4096 else tuple(range(len(text)))
    else:
        origin = tuple([index for index, shown in enumerate(stands) for _ in shown])
    return NormalText(text, origin, tuple(changes))


def _sign_of(change: Change) -> int:
    return change.sign


def _stepped(hits: list[tuple[int, str]], stands: list[str]) -> list[Change]:
    """Change the hit signs in ``stands``, in order, and return the changes."""
    table = steps()
    changes: list[Change] = []
    for index, sign in hits:
        step = table[sign]
        if step.kind in neighbours.KINDS:
            changes += neighbours.changes(index, step, stands)
        else:
            stands[index] = step.after
            changes.append(Change._make((index, *step)))
    return changes
