"""From what is carved to current forms, one traced step a sign.

>>> normal = normalise_text("國々の𛂞なゟ")
>>> normal.text, normal.origin
('国国のはなより', (0, 1, 2, 3, 4, 5, 5))
>>> [(c.sign, c.before, c.after, c.kind) for c in normal.changes][:2]
[(0, '國', '国', 'old form'), (1, '々', '国', 'repeat mark')]
"""

from __future__ import annotations

import unicodedata
from collections import ChainMap
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from inscribe import tables
from inscribe.forms import neighbours
from inscribe.forms.normal import NormalText
from inscribe.forms.rewriting import Rewriting, identity, rewritten_evenly
from inscribe.forms.sequences import joined, signs_of
from inscribe.forms.steps import (
    EVEN_KINDS,
    HENTAIGANA,
    JOINING,
    SEAL_LEGEND,
    UNICODE,
    VOICING_MARK,
    FormStep,
    common_steps,
    steps,
)
from inscribe.notation import SPACING_VOICING, is_mark
from inscribe.signs import Certainty, Kind, Sign, Transcription

UNREAD = "□"
GAP = "［　　］"
KAO = "（花押）"

_NOT_NOTED: Mapping[int, str] = MappingProxyType({})
_REMEMBERED = 64  # inscriptions: reading one asks again, for what is suspicious in it
_SEVERAL = "\ue000"  # stands for a sign of several characters while the rest is rewritten


def normalise_text(text: str) -> NormalText:
    """Return a plain text in current forms, every change traced.

    A character with its combining or variation marks is one sign, as is a repeat mark in two
    halves; every other character is one, line breaks included. Nothing is known of a
    transcriber's notation.

    Raises:
        TableError: a glossary table cannot be used.

    >>> normalise_text("應需造之").text
    '応需造之'
    """
    common = common_steps(text)
    if common is not None and common.leave(text):
        return NormalText(text, identity(len(text)))
    parts, known = _divided(text, steps() if common is None else common)
    if common is not None and not known:
        return NormalText(text, identity(len(text)))
    kinds = {step.kind for step in known}
    if JOINING in kinds or VOICING_MARK in kinds or (common is None and any(map(is_mark, text))):
        return _of_signs(signs_of(text))
    if kinds <= EVEN_KINDS:
        return rewritten_evenly(parts, known)
    rewriting = Rewriting(parts, known)
    neighbours.rewrite(rewriting)
    return rewriting.finished()


def normalise(t: Transcription) -> NormalText:
    """Return an inscription in current forms, every change traced to its sign.

    A sign that cannot be read stands as ``□``, a gap as ``［　　］``, a kao as ``（花押）``, a seal
    as ``（印）``, one with a legend as ``（印「…」）`` in current forms; each character of such a
    mark has the sign's index as its origin.

    Raises:
        TableError: a glossary table cannot be used.

    >>> from inscribe import parse
    >>> current = normalise(parse("應需造之"))
    >>> current.text, [(change.before, change.after) for change in current.changes]
    ('応需造之', [('應', '応')])
    """
    return normalise_signs(t.signs)


def normalise_signs(signs: Sequence[Sign]) -> NormalText:
    """Return signs in current forms as :func:`normalise` does, numbered as they stand here."""
    noted = {at: sign.noted for at, sign in enumerate(signs) if sign.noted}
    shown = tuple([_shown(sign) for sign in signs])
    return _of_signs(shown, noted) if noted else _of_plain_signs(shown)


@tables.cached(_REMEMBERED)
def _of_plain_signs(signs: tuple[str, ...]) -> NormalText:
    return _of_signs(signs)


def _divided(text: str, usual: Mapping[str, FormStep]) -> tuple[list[str], list[FormStep]]:
    """Return the stretches of a text with the signs that change between them, and their steps."""
    parts, known = [""], []
    for sign in text:
        if step := usual.get(sign):
            known.append(step)
            parts += (sign, "")
        else:
            parts[-1] += sign
    return parts, known


def _shown(sign: Sign) -> str:
    if sign.kind is Kind.GAP:
        return GAP
    if sign.kind is Kind.KAO:
        return KAO
    if sign.kind is Kind.SEAL:
        return f"（印「{sign.text}」）" if sign.text else "（印）"
    if sign.certainty is Certainty.UNREADABLE or not sign.text:
        return UNREAD
    return sign.text


def _of_signs(signs: Sequence[str], noted: Mapping[int, str] = _NOT_NOTED) -> NormalText:
    """Return the normal text of signs, some of which may be of several characters.

    ``noted`` has, by the sign's index, the kana and parent that a transcriber wrote for it.
    """
    common = common_steps("".join(signs))
    usual = steps() if common is None else common
    parts = [""]
    last: list[FormStep] = []
    earlier: dict[int, list[FormStep]] = {}
    for index, sign in enumerate(signs):
        table = _as_noted(sign, noted[index], usual) if index in noted else usual
        step = table.get(sign)
        known = [step] if step else _steps_of(sign, table) if len(sign) > 1 else []
        if not known:
            parts[-1] += sign
            continue
        if len(known) > 1:
            earlier[len(last)] = known[:-1]
        last.append(known[-1])
        parts += (sign if len(sign) == 1 else _SEVERAL, "")
    rewriting = Rewriting(parts, last)
    for at, step in enumerate(last):
        if step.kind == JOINING:
            rewriting.replace(at, step.after, [])
    neighbours.rewrite(rewriting)
    return rewriting.finished(earlier)


def _as_noted(sign: str, noted: str, usual: dict[str, FormStep]) -> Mapping[str, FormStep]:
    """Return the usual steps with a hentaigana read as its transcriber noted it: を(惡), not あ."""
    step = usual.get(sign[0])
    if step is None or step.kind != HENTAIGANA:
        return usual
    kana, _, parent = noted.rstrip(")").partition("(")
    plain = unicodedata.normalize("NFD", kana)[0]
    said = step._replace(after=plain, note=f"from {parent}, as noted", doubtful=False)
    return ChainMap({step.before: said}, usual)


def _steps_of(sign: str, table: Mapping[str, FormStep]) -> list[FormStep]:
    """Return the steps a sign of several characters goes through; the last may change nothing."""
    if sign.startswith("（印"):
        normal = normalise_text(sign)
        if normal.text == sign:
            return [_unchanged(sign)]
        kinds = ", ".join(dict.fromkeys(change.kind for change in normal.changes))
        sources = ", ".join(dict.fromkeys(change.table for change in normal.changes))
        return [FormStep(sign, normal.text, SEAL_LEGEND, sources, kinds)]
    if sign[0] in SPACING_VOICING:  # with marks of its own, it goes or stays with them
        return [FormStep(sign, sign, VOICING_MARK, UNICODE)]
    found = [] if sign in (GAP, KAO) else joined(sign, table)
    after = found[-1].after if found else sign
    return [*found, table.get(after) or _unchanged(after)]


def _unchanged(sign: str) -> FormStep:
    return FormStep(sign, sign, JOINING, "")
