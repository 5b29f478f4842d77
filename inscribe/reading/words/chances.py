"""The chance that a reading is right, from what speaks for and against it.

What is known of a word or of a whole reading (how much dearer the next reading is, whether its
okurigana is written) is added up with weights fitted on texts whose readings are known
(``reading_chances.tsv``; ``tests/benchmarks/chances.py`` fits and measures them).

>>> far, near = (chance("verse word", {"margin": margin}) for margin in (4.5, 0.2))
>>> far > 0.9, far > near  # a word is the surer, the dearer its nearest rival
(True, True)
>>> chance("verse word", {"margin": 0.2, "no okurigana": 1.0}) < near
True
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from inscribe import tables
from inscribe.reading.words.tokens import Chances

CERTAIN = "certain"  # the weight of what always speaks
_LEAST, _MOST = 0.001, 0.999
_NOT_FITTED = {CERTAIN: 0.0, "words": 1.0}  # as sure as its words together


def chance(kind: str, evidence: Mapping[str, float]) -> float:
    """Return the chance of a word or a whole of a kind; evidence without a weight says nothing."""
    weights = _weights().get(kind, _NOT_FITTED)
    odds = weights[CERTAIN]
    odds += sum(weights.get(each, 0.0) * much for each, much in evidence.items())
    return 1 / (1 + math.exp(-max(-30.0, min(30.0, odds))))


def chances_of(register: str, words: Sequence[float], evidence: Mapping[str, float]) -> Chances:
    """Return the chances of a whole reading whose words have these chances."""
    told = {"words": together(words), **evidence}
    whole = chance(f"{register} whole", told)
    return Chances(whole, tuple(max(whole, word) for word in words))  # no word is less sure


def together(words: Iterable[float]) -> float:
    """Return the logarithm of the odds that all of some words are right, each by itself.

    >>> round(together([0.9, 0.5]), 2)
    -0.2
    """
    all_right = math.prod(words)
    held = max(_LEAST, min(_MOST, all_right))
    return math.log(held / (1 - held))


@tables.cached()
def _weights() -> dict[str, dict[str, float]]:
    found: dict[str, dict[str, float]] = {}
    for row in tables.rows("reading_chances"):
        found.setdefault(row["kind"], {})[row["evidence"]] = float(row["weight"])
    return found
