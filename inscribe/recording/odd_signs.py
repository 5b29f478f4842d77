"""Signs that are probably not what is carved: worth a second look before they are believed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inscribe import forms
from inscribe.forms import look_alikes
from inscribe.notation import written_out
from inscribe.signs import Sign

MODERN_KANA = frozenset("ぁぃぅぇぉっゃゅょゎゔァィゥェォッャュョヮヴヵヶー")
COMMONER = 3  # how much commoner a look-alike must be to be worth a word
RARE = 1000  # the place by frequency after which a character is rare enough to be doubted
RANKED = 2501  # the dictionary ranks this many characters by frequency


@dataclass(frozen=True, slots=True)
class Suspicion:
    """One sign that deserves a second look, why, and what else it may be."""

    sign: int
    text: str
    why: str
    instead: tuple[str, ...] = ()


def suspicions(signs: Sequence[Sign]) -> tuple[Suspicion, ...]:
    """Return what is suspicious in signs as typed: forms, look-alikes, impossible kana."""
    return tuple(found for sign in signs if sign.is_legible for found in _of(sign))


def _of(sign: Sign) -> Iterator[Suspicion]:
    text = sign.text
    if text in MODERN_KANA:
        why = "small and long kana are modern; carvers wrote the full sign"
        yield Suspicion(sign.index, text, why, _full_sized(text))
        return
    if text[0].isascii() or "\uff01" <= text[0] <= "\uff5e":
        yield Suspicion(sign.index, text, "a Latin letter or mark is hardly carved")
        return
    for change in forms.normalise_text(text).changes:
        if "simplified" in change.kind:
            known = (change.after,) if change.after != text else ()
            yield Suspicion(
                sign.index, text, "a Chinese simplified form; type what is carved", known
            )
            return
    if alike := tuple(_commoner_look_alikes(text)):
        yield Suspicion(sign.index, text, "it looks like a commoner sign", alike[:4])
    if old := tuple(_old_forms(text)):
        yield Suspicion(sign.index, text, "a current form; is the old one carved?", old)


def _full_sized(kana: str) -> tuple[str, ...]:
    small = "ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ"
    full = "あいうえおつやゆよわアイウエオツヤユヨワカケ"
    return (full[small.index(kana)],) if kana in small else ()


def _commoner_look_alikes(text: str) -> Iterator[str]:
    own = _rank(text)
    for other in look_alikes(text) if own > RARE else ():
        if COMMONER * _rank(other) < own:
            yield other


def _rank(text: str) -> int:
    """Return a character's place by frequency, a high number where it is not known."""
    return forms.character(text).rank or RANKED


def _old_forms(text: str) -> Iterator[str]:
    for other, relation in forms.related(text).items():
        if relation.kind == "old form" and forms.normalise_text(other).text == text:
            yield written_out(other)
