"""Which letters of a word each of its signs says: 行年 gyōnen is gyō and nen.

Only where a word is read over several signs and one of them is worn must this be known, to put
brackets around what was not read but restored.

>>> kana_of_signs("行年六十歳", "ぎょうねん ろくじっさい")
['ぎょう', 'ねん', ' ろく', 'じっ', 'さい']
>>> letters_of_signs("Gyōnen", ["ぎょう", "ねん"])
['Gyō', 'nen']
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence

from inscribe import tables
from inscribe.forms import readings
from inscribe.reading.spelling import hepburn, hiragana, voiceless

# What a stretch costs as the reading of a sign.
_OWN, _CHANGED, _BEGUN, _OTHER, _NOTHING = 0.0, 0.3, 0.8, 3.0, 4.0
_USUAL_LENGTH, _OFF = 2, 0.5  # kana of a reading in no dictionary, and what each off it costs
_LONGEST = 7  # kana of one sign
_PARTICLES = ("の", "に", "を", "と")
_BETWEEN = " -'"


def kana_of_signs(signs: str, kana: str) -> list[str]:
    """Return the part of ``kana`` that each sign says, together all of it; spaces are kept."""
    best: dict[int, tuple[float, list[str]]] = {0: (0.0, [])}
    for at, sign in enumerate(signs):
        further: dict[int, tuple[float, list[str]]] = {}
        last = at + 1 == len(signs)
        for start, (cost, parts) in best.items():
            ends = [len(kana)] if last else range(start, min(len(kana), start + _LONGEST) + 1)
            for end in ends:
                total = cost + _cost(sign, kana[start:end])
                if end not in further or total < further[end][0]:
                    further[end] = (total, [*parts, kana[start:end]])
        best = further
    return best[len(kana)][1] if len(kana) in best else []


def _cost(sign: str, said: str) -> float:
    own = said.strip()
    if " " in own:
        return _OTHER * 3
    late = _CHANGED if said != said.rstrip() else 0.0  # a space belongs to what follows it
    if not own:
        return _NOTHING
    known = _readings(sign)
    if own in known:
        return _OWN + late
    if own[0] in _PARTICLES and own[1:] in known:
        return _CHANGED + late
    if voiceless(own) in {voiceless(each) for each in known}:
        return _CHANGED + late
    if len(own) > 1 and own[:-1] in {each[:-1] for each in known if own[-1] in "っんうくつ"}:
        return _CHANGED + late
    if any(each.startswith(own) or own.startswith(each) for each in known):
        return _BEGUN + late
    return _OTHER + late + _OFF * abs(len(own) - _USUAL_LENGTH)


@tables.cached(4096)
def _readings(sign: str) -> frozenset[str]:
    found = readings(sign)
    kun = (each.strip("-") for each in found.kun)
    stems = (part for each in kun for part in (each.partition(".")[0], each.replace(".", "")))
    return frozenset([*map(hiragana, found.on), *stems, *found.names, hiragana(sign)])


def letters_of_signs(romaji: str, kana: Sequence[str]) -> list[str]:
    """Return the Latin letters of each part of a word's kana; nothing where they cannot be parted.

    So where one long vowel belongs to two signs.
    """
    parts = [each.replace(" ", "") for each in kana]
    whole = "".join(parts)
    said = _plain(romaji)
    if _plain(hepburn(whole)) != said:
        return []
    cuts, before = [0], ""
    for part in parts[:-1]:
        before += part
        after = _plain(hepburn(whole[len(before) :]))
        if not said.endswith(after):
            return []
        cuts.append(_cut_after(romaji, len(said) - len(after)))
    return [romaji[start:end] for start, end in zip(cuts, [*cuts[1:], len(romaji)], strict=True)]


def _cut_after(romaji: str, count: int) -> int:
    seen = 0
    for at, letter in enumerate(romaji):
        if seen == count:
            return at
        seen += letter not in _BETWEEN
    return len(romaji)


def _plain(romaji: str) -> str:
    plain = unicodedata.normalize("NFD", romaji.lower())
    return "".join(_letters(plain))


def _letters(plain: str) -> Iterator[str]:
    for letter in plain:
        if letter.isalpha():
            yield letter
