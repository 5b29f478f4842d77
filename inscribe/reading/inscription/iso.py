"""A reading in ISO 3602 (strict) instead of Hepburn.

Word division, capitals and long vowels were decided when the reading was romanised; the kana say
which sign each letter stands for. So both are walked through together, and only letters change:

>>> in_iso3602("みかづき は しずか", "mikazuki wa shizuka")
'mikaduki ha sizuka'
>>> in_iso3602("とうきょう", "Tōkyō"), in_iso3602("おもう", "omou")
('Tôkyô', 'omou')
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from inscribe.reading.spelling import hepburn, hiragana, iso3602, units

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation, Proposal, SignaturePart, Token

_PLAIN = dict(zip("āīūēō", "aiueo", strict=True))
_HAT = dict(zip("aiueo", "âîûêô", strict=True))
_AS_PARTICLE = {"は": "wa", "へ": "e"}


def iso_reading(found: Interpretation) -> Interpretation:
    """Return an interpretation with all its Latin letters in ISO 3602."""
    parts = found.signature
    return replace(
        found,
        proposals=tuple(_proposal(each) for each in found.proposals),
        signature=None if parts is None else {key: _part(part) for key, part in parts.items()},
        passages=tuple(
            replace(
                passage,
                proposals=tuple(_proposal(each) for each in passage.proposals),
                signature=passage.signature
                and {key: _part(part) for key, part in passage.signature.items()},
            )
            for passage in found.passages
        ),
    )


def _proposal(proposal: Proposal) -> Proposal:
    tokens: list[Token] = [
        replace(token, romaji=in_iso3602(token.kana, token.romaji)) for token in proposal.tokens
    ]
    romaji = in_iso3602(proposal.kana, proposal.romaji)
    return replace(proposal, tokens=tuple(tokens), romaji=romaji)


def _part(part: SignaturePart) -> SignaturePart:
    return part._replace(romaji=in_iso3602(part.kana, part.romaji))


def in_iso3602(kana: str, romaji: str) -> str:
    """Return Hepburn letters in ISO 3602; ``kana`` is the reading they were made from.

    What does not fit together (letters nobody made from these kana) stays as it is.
    """
    out: list[str] = []
    position = 0
    long_vowel = doubled = False
    for unit in units(hiragana(kana.replace(" ", "").replace("|", ""))):
        if long_vowel:
            long_vowel = False
            continue
        if unit == "っ":
            doubled = True
            continue
        found = _fitting(unit, romaji, position, doubled)
        if found is None:
            return "".join(out) + romaji[position:]
        start, end = found
        letters = iso3602(unit)
        divider = romaji[position:start]
        out.append(divider if letters[0] in "aiueoy" else divider.replace("'", ""))  # n'o, nwo
        letters = letters[0] + letters if doubled else letters
        long_vowel = romaji[end - 1].lower() in _PLAIN
        letters = letters[:-1] + _HAT.get(letters[-1], letters[-1]) if long_vowel else letters
        out.append(letters.capitalize() if romaji[start].isupper() else letters)
        position, doubled = end, False
    return "".join(out) + romaji[position:]


def _fitting(unit: str, romaji: str, position: int, doubled: bool) -> tuple[int, int] | None:
    """Return where the letters of a unit stand from ``position`` on, dividers passed over."""
    start = position
    while start < len(romaji) and not romaji[start].isalpha() and romaji[start] != unit:
        start += 1
    for letters in (hepburn(unit), _AS_PARTICLE.get(unit, "")):
        wanted = hepburn("っ" + unit) if doubled else letters
        here = "".join(_PLAIN.get(sign, sign) for sign in romaji[start:].lower()[: len(wanted)])
        if wanted and here == wanted:
            return start, start + len(wanted)
    return None
