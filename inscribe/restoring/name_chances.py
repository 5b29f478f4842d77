"""How likely a stretch is the name of a maker: made names, art names, families, places.

A made name is drawn sign by sign: the first from the signs that begin such names, the second from
those that end them (``name_elements.tsv``, ``signature_chances.tsv``).
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from inscribe import tables
from inscribe.reading.names import usualness
from inscribe.restoring.chances import weights

UNREAD = "□"
_OWN_SHARE = 0.75  # of a made name's signs, by the table of signatures; the rest by counts
_MADE = 0.86  # a name is a made name of two signs, rather than an art name read in on ...
_ART = 0.12
_EXPECTED = 0.5  # a name is one that a large collection has already ...
_LARGE = 10  # ... and half as often one that a collection of so many names has
_SINGLE = 0.02  # ... or a single sign
_SAME_TWICE = 0.02
_STEM_OF_ONE = 0.4  # a studio name has one sign before its ending, rather than two
_KNOWN_FAMILIES = 2 / 3  # share of all whose names glossary/signatures/signature_chances.tsv lists
_UNLISTED = 0.02  # share of families, and of signs in art names, that no table lists
_SIGNS = 3000.0  # signs in use, among which the unlisted share is spread

Shares = dict[str, float]
# A way to fill a stretch: its chance, and what stands in it.
Filling = tuple[float, str]


@tables.cached()
def _shares() -> dict[str, Shares]:
    """Return the share of each sign at each place of a name."""
    found: dict[str, Shares] = {}
    for place in ("first", "last"):
        counted = {c: math.expm1(usualness(c, place)) for c in _counted_signs()}
        found[place] = _mixed(weights().get(place, {}), counted, _OWN_SHARE)
    for place in ("art_first", "art_last", "art_stem", "common_stem"):
        found[place] = _mixed(weights().get(place, {}), dict.fromkeys(_counted_signs(), 1.0), 0.9)
    found["alone"] = _mixed({}, {c: math.expm1(usualness(c, "alone")) for c in _counted_signs()}, 0)
    return found


@tables.cached()
def _counted_signs() -> tuple[str, ...]:
    return tuple(dict.fromkeys(row["written"] for row in tables.rows("name_elements")))


def _mixed(one: Shares, other: Shares, share: float) -> Shares:
    found: Shares = defaultdict(float)
    for part, weight in ((one, share), (other, 1 - share)):
        total = sum(part.values()) or 1.0
        for sign, value in part.items():
            if value > 0:
                found[sign] += weight * value / total
    return dict(found)


# Names to be expected in a collection, with how often each occurs in it.
Names = Mapping[str, int]
NO_NAMES: Names = MappingProxyType({})


def fillings(stretch: str, kind: str, names: Names = NO_NAMES) -> Iterator[Filling]:
    """Yield the ways a stretch, □ standing for what cannot be read, can be a name of a kind."""
    if kind == "name":
        total = sum(names.values())
        expected = _EXPECTED * total / (total + _LARGE)
        for chance, word in _made_names(stretch):
            yield (1.0 - expected) * chance, word
        for name, count in names.items():
            if len(name) == len(stretch) and _agrees(stretch, name):
                yield expected * count / total, name
    elif kind in ("art_name", "common_name"):
        yield from _ended_names(stretch, kind.removesuffix("_name"))


def _made_names(stretch: str) -> Iterator[Filling]:
    shares = _shares()
    if len(stretch) == 2:
        for places, part in ((("first", "last"), _MADE), (("art_first", "art_last"), _ART)):
            firsts = _signs(stretch[0], shares[places[0]])
            lasts = _signs(stretch[1], shares[places[1]])
            if len(firsts) * len(lasts) > 10_000:  # both unread: each by itself is enough
                firsts, lasts = _likeliest(firsts), _likeliest(lasts)
            for one, chance in firsts:
                for two, other in lasts:
                    same = _SAME_TWICE if one == two else 1.0
                    yield part * chance * other * same, one + two
    elif len(stretch) == 1:
        for sign, chance in _signs(stretch, shares["alone"]):
            yield _SINGLE * chance, sign


def _likeliest(signs: list[tuple[str, float]]) -> list[tuple[str, float]]:
    return sorted(signs, key=lambda pair: -pair[1])[:100]


def _signs(sign: str, shares: Shares) -> list[tuple[str, float]]:
    if sign != UNREAD:
        return [(sign, (1 - _UNLISTED) * shares.get(sign, 0.0) + _UNLISTED / _SIGNS)]
    return [(each, (1 - _UNLISTED) * share) for each, share in shares.items()]


@tables.cached()
def _endings() -> dict[str, Shares]:
    """Return the shares of the endings of studio and of everyday names."""
    found: dict[str, Shares] = {"art": {}, "common": {}}
    for row in tables.rows("name_endings"):
        ending, usual = row["written"], weights().get(f"{row['kind']}_ending", {})
        often = usual.get(ending, usual.get("*", 1.0))
        found[row["kind"]].setdefault(ending, float(row["weight"]) * often)
    return {
        kind: {ending: weight / (sum(ends.values()) or 1.0) for ending, weight in ends.items()}
        for kind, ends in found.items()
    }


def _ended_names(stretch: str, kind: str) -> Iterator[Filling]:
    """Yield a stem of one or two signs with an ending: 松翠軒, 彦四郎."""
    shares = _shares()["art_stem" if kind == "art" else "common_stem"]
    for ending, share in _endings()[kind].items():
        length = len(stretch) - len(ending)
        if not 1 <= length <= 2 or not _agrees(stretch[length:], ending):
            continue
        chance = share * (_STEM_OF_ONE if length == 1 else 1 - _STEM_OF_ONE)
        stems = [("", 1.0)]
        for sign in stretch[:length]:
            drawn = _signs(sign, shares)
            if len(stems) > 1:
                drawn, stems = _likeliest(drawn), _likeliest(stems)
            stems = [(s + c, p * q) for s, p in stems for c, q in drawn]
        for before, other in stems:
            yield chance * other, before + ending


def _agrees(stretch: str, word: str) -> bool:
    return all(one in (UNREAD, other) for one, other in zip(stretch, word, strict=True))


@tables.cached()
def surname_chances() -> dict[str, float]:
    """Return the share of each listed family; those whose share is not known are alike.

    UniDic's costs of names say how they differ from other words, not how common they are.
    """
    known = weights().get("surname", {})
    others = _listed("surnames").keys() - known.keys()
    total = sum(known.values()) or 1.0
    shares = {name: _KNOWN_FAMILIES * weight / total for name, weight in known.items()}
    return shares | dict.fromkeys(others, (1 - _KNOWN_FAMILIES) / max(1, len(others)))


@tables.cached()
def place_chances() -> dict[str, float]:
    """Return the share of each listed place."""
    return _listed("place_names")


def _listed(table: str) -> dict[str, float]:
    """Return shares from UniDic's costs: 700 more is e times rarer."""
    found: dict[str, float] = {}
    for row in tables.rows(table):
        for item in tables.listed(row["names"]):
            written, _, readings = item.partition("=")
            cost = int(readings.partition("/")[0].partition(":")[2])
            if len(written) <= 4:
                found.setdefault(written, math.exp(-cost / 1400))
    total = sum(found.values()) or 1.0
    return {written: weight / total for written, weight in found.items()}
