"""Openers as they are said, and those of staying somewhere: 在 江戸 時, Edo ni aru toki.

Unlike other openers 在 and 寓居 stand, in Japanese order, between the place and what closes them.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.signatures.objects import ALSO_READ
from inscribe.reading.signatures.options import Option, Unit, option
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.signatures.scope import as_closer
from inscribe.reading.signatures.units import unit
from inscribe.reading.words import SignatureWord

STAY = "stay"
_DURING, _DOES, _OF = "中", " する", "之"  # 滞在長崎中, taizai chū


def stay(
    opener: SignaturePiece, place: Sequence[Unit], closers: Sequence[SignaturePiece]
) -> list[Unit]:
    """Return the units of a stay in reading order: where, staying, when or how long."""
    if opener.word is None:
        return list(place)
    during = any(closer.text == _DURING for closer in closers)
    patterns = (opener.word.kana, *opener.word.alternatives)
    said = [pattern.removesuffix(_DOES) if during else pattern for pattern in patterns]
    alone = opener.word._replace(alternatives=())
    links = [each for each in place if each.text == _OF]
    closing = [(closer, as_closer(closer, STAY)) for closer in closers]
    return [
        *(each for each in place if each.text != _OF),
        unit(opener, opener_options(alone, said[0], said[-1])),
        *links,
        *(unit(closer, (option(word.kana if word else closer.text),)) for closer, word in closing),
    ]


def _template(pattern: str) -> str:
    return pattern.replace("{}", "").strip()


def opener_options(opener: SignatureWord, main: str, other: str) -> tuple[Option, ...]:
    """Return how an opener is said: by its main pattern, by another, or as it may be said too."""
    patterns = dict.fromkeys(_template(p) for p in (main, other, *opener.alternatives))
    return tuple(
        option(p, 1.5 + 0.5 * rank if rank else 0.0, ALSO_READ.format(opener.text) if rank else "")
        for rank, p in enumerate(patterns)
    )
