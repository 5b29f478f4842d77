"""Readings of made names by their characters: 綾郷, 萩珉, 鶴梢斎, 源五郎.

>>> [reading.romaji for reading in made_readings("綾郷")][:1]
['Ayasato']
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.names.elements import Choice, Position, everyday_stem, has_stem_preference
from inscribe.reading.names.lists import surnames
from inscribe.reading.names.model import (
    MOST,
    UNREAD,
    NameKind,
    NameReading,
    element,
    ranked,
    romaji,
)
from inscribe.reading.names.sounds import joined_on, sounded
from inscribe.reading.spelling import morae

# Name readings and on-readings are seldom mixed in one name of two characters, and a name
# seldom says the same twice (俊寿 is not Toshitoshi).
_MIXED = 0.02
_TWICE = 0.05
# An everyday name of two characters (又八) against a made name of the same characters.
_SHORT = 0.3
_SHORT_OF_EVERYDAY_STEM = 1.5  # 与平, 甚七: the first sign is usual in everyday names
# A pen or studio name is read by on-readings the more likely, what follows a family by name
# readings (common practice; no source).
_LEANING = {"art": 6.0, "given": 0.2}
_UNSEEN = 1.5  # a reading that weighs less is in no name that was counted
# A noun of the dictionary in a name, and two of them: 岫濤 is Shūtō, hardly Misakinami.
_NONE_UNSEEN, _ONE_UNSEEN, _BOTH_UNSEEN = 1.0, 0.5, 0.1
_WELL_SHARED = 0.1  # a name reading that is rarer makes no name
_LONG = 0.3  # for each mora more than three of a name reading at the head
_LONG_END = 0.1  # and more than two at the end: 義旭 is Yoshiaki, 旭 alone Asahi
_LESS_USUAL = 0.4  # of two ways to join a stem and its ending
_SHORTENING = ("べい", "べえ")  # 太郎兵衛 is Tarobei in most such names of ENAMDICT
_NATIVE_BEFORE_GUARDS = 0.3  # of a name reading there, where ENAMDICT has no such name
# 甚平 Jinpei, 権八 Gonpachi, 新八郎 Shinpachirō.
_OF_GUARDS = ("兵衛", "衛門")  # names after the old guards: their first part is read by sound
_AFTER_N = {"へい": "ぺい", "はち": "ぱち", "はちろう": "ぱちろう"}
_USUAL = 0.3  # a reading that weighs this much of all in its place is a usual one


class Ending(NamedTuple):
    """The end of a studio or everyday name, as 斎 or 兵衛."""

    text: str
    kind: str
    kana: tuple[str, ...]
    weight: float


@tables.cached()
def _endings() -> dict[str, Ending]:
    found: dict[str, Ending] = {}
    for row in tables.rows("name_endings"):
        kana = (row["kana"], *tables.listed(row["also"]))
        ending = Ending(row["written"], row["kind"], kana, float(row["weight"]))
        found.setdefault(ending.text, ending)
    return found


def ending_of(name: str) -> Ending | None:
    """Return the studio or everyday ending of a name, the longest that leaves a stem."""
    endings = _endings()
    for length in (4, 3, 2, 1):
        if len(name) > length and (found := endings.get(name[-length:])):
            return found
    return None


def made_readings(name: str, kind: NameKind = "maker") -> list[NameReading]:
    """Return the readings of a made name by its characters, best first.

    A pen or studio name (``art``) of two characters is read by on-readings the more likely, a
    ``given`` name by name readings.
    """
    if len(name) == 1:
        return _single_readings(name)
    ending = ending_of(name)
    if ending and (len(name) > 2 or (ending.kind == "art" and ending.weight >= 1)):
        return _ending_readings(name, ending)
    if len(name) == 2 and name in _endings():
        return ranked([*_ending_alone(name), *_pair_readings(name)])
    if len(name) == 2:
        return _pair_readings(name, _LEANING.get(kind, 1.0))
    return _long_readings(name)


def _single_readings(name: str) -> list[NameReading]:
    return [
        NameReading(c.kana, romaji(c.kana), c.share, f"{name} alone as a name, {c.source}")
        for c in element(name, "alone")[:MOST]
    ]


def _ending_alone(name: str) -> list[NameReading]:
    """Return the readings of what may end a longer name and stands alone here: 三郎 Saburō."""
    ending = _endings()[name]
    reason = f"{name}, an everyday name as at the end of longer ones"
    return [
        NameReading(kana, romaji(kana), ending.weight / 4**rank, reason, ending.kind)
        for rank, kana in enumerate(ending.kana)
    ]


def _pair_readings(name: str, on_factor: float = 1.0) -> list[NameReading]:
    found = []
    open_sign = UNREAD in name
    heads, tails = element(name[0], "first"), element(name[1], "last")
    if not (_has_name_reading(heads) and _has_name_reading(tails)):
        on_factor = max(on_factor, 1.0)
    for head in heads:
        for tail in tails:
            mixed = head.is_on != tail.is_on and not open_sign
            score = head.share * tail.share * (_MIXED if mixed else 1.0)
            score *= on_factor if head.is_on and tail.is_on else _as_native(head, tail)
            if head.kana == tail.kana and name[0] != name[1]:
                score *= _TWICE
            reason = _pair_reason(name, head, tail, mixed)
            for kana, weight in sounded(head, tail):
                found.append(NameReading(kana, romaji(kana), score * weight, reason))
    if (ending := _endings().get(name[1])) and ending.kind == "common":
        weight = _SHORT_OF_EVERYDAY_STEM if has_stem_preference(name[0]) else _SHORT
        found += (r._replace(score=weight * r.score) for r in _ending_readings(name, ending))
    return ranked(found)


def _has_name_reading(readings: Sequence[Choice]) -> bool:
    return any(not each.is_on and each.share >= _WELL_SHARED for each in readings)


def _as_native(head: Choice, tail: Choice) -> float:
    """Return what two readings lose that are in no counted name, or long (not both are on)."""
    unseen = sum(not each.is_on and each.weight < _UNSEEN for each in (head, tail))
    long = _LONG ** max(0, morae(head.kana) - 3) * _LONG_END ** max(0, morae(tail.kana) - 2)
    return (_NONE_UNSEEN, _ONE_UNSEEN, _BOTH_UNSEEN)[unseen] * long


def _pair_reason(name: str, head: Choice, tail: Choice, mixed: bool) -> str:
    if UNREAD in name:
        return "one sign cannot be read" if name != UNREAD * 2 else "the signs cannot be read"
    if mixed:
        return f"{name}: a name reading and an on-reading mixed, which is rare"
    sort = "on-readings" if head.is_on else "name readings"
    return f"{sort}: {_how_usual(name[0], 'first', head)}, {_how_usual(name[1], 'last', tail)}"


def _how_usual(char: str, place: str, choice: Choice) -> str:
    """Return a share only where enough names were counted, else words."""
    if choice.counted is not None:
        return f"{char} {place} is {choice.kana} in {choice.counted:.0%} of names"
    usual = "usual" if choice.share >= _USUAL else "also read so"
    return f"{char} {place} is {choice.kana} ({usual})"


def _ending_readings(name: str, ending: Ending) -> list[NameReading]:
    ending = _endings().get(ending.text.removeprefix("郎"), ending)  # 三郎 before 兵衛, not 三
    stem = name[: -len(ending.text)]
    found = []
    for kana, share, on_only in _stem_readings(stem, ending):
        for rank, tail in enumerate(ending.kana):
            score = share * ending.weight / 4**rank
            reason = f"{ending.text} ends {_SORTS[ending.kind]} names, {stem} before it as usual"
            for whole, weight in _wholes(stem, kana, tail, ending, on_only):
                sounds = romaji(whole)
                found.append(NameReading(whole, sounds, score * weight, reason, ending.kind))
    return ranked(found)


def _wholes(
    stem: str, kana: str, tail: str, ending: Ending, on_only: bool
) -> list[tuple[str, float]]:
    """Return a stem with its ending, where sounds may be joined in both ways (Getsusai, Gessai).

    After one sign they are joined (鉄斎 Tessai), after more rather kept apart (聴雪斎 Chōsetsusai).
    """
    joined = _stem_and_ending(kana, tail, ending, on_only)
    if ending.kind != "art" or joined.replace("|", "") == f"{kana}{tail}":
        return [(joined, 1.0)]
    apart = f"{kana}|{tail}"
    ways = (joined, apart) if len(stem) == 1 else (apart, joined)
    return [(ways[0], 1.0), (ways[1], _LESS_USUAL)]


_SORTS = {"art": "studio", "common": "everyday"}


def _stem_readings(stem: str, ending: Ending) -> list[tuple[str, float, bool]]:
    if ending.text.endswith(_OF_GUARDS) and (counted := _counted_stems(stem, ending)):
        return counted
    everyday = all(map(has_stem_preference, stem))  # 弥源次 Yagenji
    if ending.kind == "common" and len(stem) == 2 and ending_of(stem) is None and not everyday:
        known = [(kana, 1.0, False) for kana, _ in surnames(stem)[:1]]  # 久米吉
        known += [(r.kana, r.score, False) for r in _pair_readings(stem)]
        return known[:4]
    options: list[tuple[str, float, bool]] = [("", 1.0, True)]
    for at, char in enumerate(stem):
        grown = []
        for kana, share, on_only in options:
            for choice in _stem_choices(char, at, ending)[:3]:
                before = Choice(kana, on_only and choice.is_on and bool(kana), 1.0, "")
                for text, weight in sounded(before, choice) if kana else [(choice.kana, 1.0)]:
                    part = share * choice.share * weight
                    grown.append((text, part, on_only and choice.is_on))
        options = sorted(grown, key=lambda option: -option[1])[:4]
    return options


def _counted_stems(stem: str, ending: Ending) -> list[tuple[str, float, bool]]:
    """Return the readings of a stem that is in everyday names, or has one of theirs (孫三郎)."""
    part = stem if everyday_stem(stem) else stem[-2:]
    before = stem.removesuffix(part)
    heads = _stem_readings(before, ending) if before else [("", 1.0, False)]
    found = [
        (head + each.kana, share * each.share, False)
        for head, share, _ in heads
        for each in everyday_stem(part)
    ]
    return sorted(found, key=lambda option: -option[1])[:4]


def _stem_choices(char: str, at: int, ending: Ending) -> list[Choice]:
    if ending.kind == "common":
        heard = 1.0 if not ending.text.endswith(_OF_GUARDS) else _NATIVE_BEFORE_GUARDS
        weighed = [
            c if c.is_on else c._replace(share=c.share * heard) for c in element(char, "stem")
        ]
        return sorted(weighed, key=lambda choice: -choice.share)
    places: tuple[Position, ...] = ("last", "first") if at else ("first", "last")
    for place in places:
        on_only = [c for c in element(char, place) if c.is_on or c.kana == UNREAD]
        total = sum(c.share for c in on_only)
        if total:
            return [Choice(c.kana, c.is_on, c.share / total, c.source) for c in on_only]
    return list(element(char, "first"))


def _stem_and_ending(stem: str, tail: str, ending: Ending, on_only: bool) -> str:
    if tail in _SHORTENING and morae(stem) == 1:
        return f"{stem}へ{tail[1]}"
    if tail in _SHORTENING and stem.endswith("ろう"):
        return stem.removesuffix("う") + tail
    if ending.kind == "common" and stem[-1:] == "ん" and tail in _AFTER_N:
        return stem + _AFTER_N[tail]
    if ending.kind == "art" and on_only and len(ending.text) == 1:
        return joined_on(stem, tail)
    return f"{stem}|{tail}" if tail[0] in "あいうえお" else stem + tail


def _long_readings(name: str) -> list[NameReading]:
    """Read a name of three characters or more without a known ending: on-readings, in a row."""
    kana = ""
    share = 1.0
    for char in name:
        options = [c for c in element(char, "stem") if c.is_on] or element(char, "first")
        kana = joined_on(kana, options[0].kana) if kana else options[0].kana
        share *= options[0].share
    reason = f"no known pattern of name; {name} by on-readings"
    return [NameReading(kana, romaji(kana), 0.3 * share, reason)]
