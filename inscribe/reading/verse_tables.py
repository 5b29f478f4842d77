"""The glossary's tables of classical words as dictionary entries.

Every table is optional but the particles: a table that is not there adds nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.entries import Entry
from inscribe.reading.verse_words import ClassIndex

PARTICLES = (
    "written",
    "kana_historical",
    "kana_modern",
    "part_of_speech",
    "conjugation",
    "form",
    "gloss",
)
TABLES = (
    "paradigms",
    "verse_particles",
    "verse_nouns",
    "verse_verbs",
    "verse_adjectives",
    "verse_phrases",
    "verse_places",
)

_PARTICLE_COST = {"格助詞": 6500, "係助詞": 6500, "接続助詞": 7000, "副助詞": 7500, "終助詞": 8500}


def particle_entries(index: ClassIndex, costs: dict[tuple[str, int], int]) -> Iterator[Entry]:
    """Yield the particles and auxiliaries; ``costs`` are UniDic's, by spelling and class."""
    for (written, _, kana, pos, conjugation, form, gloss), _place in tables.rows(
        "verse_particles", PARTICLES
    ):
        if "連語" in pos:
            continue
        pos = pos.replace(",", "-")
        number = _function_class(index, pos, conjugation, form, written)
        if number is None:
            continue
        default = _PARTICLE_COST.get(pos.partition("-")[2], 8500)
        cost = costs.get((written, number), default)
        yield Entry(written, number, cost, kana, pos, conjugation, form, written, "和", gloss)


# Auxiliaries UniDic has under another name, or not at all: the class that stands where they stand.
_LIKE = {
    "文語助動詞-ル": "文語下二段-ラ行",
    "文語助動詞-ラル": "文語下二段-ラ行",
    "文語助動詞-ス": "文語下二段-サ行",
    "文語助動詞-サス": "文語下二段-サ行",
    "文語助動詞-シム": "文語下二段-マ行",
    "文語助動詞-ムズ": "文語助動詞-ム",
    "文語助動詞-マシ": "文語助動詞-ム",
    "文語助動詞-マシジ": "文語助動詞-マジ",
    "文語助動詞-メリ": "文語助動詞-ナリ-伝聞",
    "文語助動詞-ユ": "文語下二段-ラ行",
    "文語助動詞-ラユ": "文語下二段-ラ行",
    "文語助動詞-タシ": "文語形容詞-ク",
    "文語助動詞-マホシ": "文語形容詞-ク",
}


def _function_class(
    index: ClassIndex, pos: str, conjugation: str, form: str, written: str
) -> int | None:
    for name in (conjugation, _LIKE.get(conjugation, conjugation)):
        for shape in (form, "終止形-一般", "連体形-一般"):
            if (number := index.number(pos, name, shape, written)) is not None:
                return number
    return index.number(pos, "文語助動詞-ム", "終止形-一般")
