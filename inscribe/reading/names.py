"""Ranked readings of a name: never one reading without its rank and its reason.

Which reading a maker used is known only for known makers. What can be said of any other name is
how its characters are read in names: in made names of two characters by name readings (政広
Masahiro) or by on-readings (宗珉 Sōmin), in studio names by on-readings before 斎, 軒, 堂 (東雲斎
Tōunsai), in everyday names before 兵衛, 五郎, 助 (清兵衛 Seibee). The user's own list, a table
``names.tsv`` (written, kana, kind, note) in a glossary folder, always comes first.

>>> [reading.romaji for reading in readings("政広")][:1]
['Masahiro']
>>> readings("東雲斎", "art")[0].romaji, readings("源五郎")[0].romaji
('Tōunsai', 'Gengorō')
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from inscribe import tables
from inscribe.errors import TableError
from inscribe.reading.name_elements import Choice, choices
from inscribe.reading.name_lists import Listed, place_names, surnames
from inscribe.reading.romanise import hepburn

NameKind = Literal["auto", "given", "surname", "art", "common", "place"]
KINDS: tuple[NameKind, ...] = ("auto", "given", "surname", "art", "common", "place")

MOST = 8  # readings given of one name
UNREAD = "□"
# Name readings and on-readings are seldom mixed in one name of two characters, and a name
# seldom says the same twice (利寿 is not Toshitoshi).
_MIXED = 0.03
_TWICE = 0.05
# An everyday name of two characters (又七) against a made name of the same characters.
_SHORT = 0.3
# A studio name is read by on-readings the more likely.
_STUDIO_ON = 6.0
_OWN_LIST = 100.0


@dataclass(frozen=True, slots=True)
class NameReading:
    """One reading of a name; ``score`` is its weight against the others (higher is likelier)."""

    kana: str  # current kana spelling, | where two characters' readings meet
    romaji: str
    score: float
    reason: str
    kind: str = "given"

    @property
    def plain_kana(self) -> str:
        """The kana without marks of division."""
        return self.kana.replace("|", "")


@dataclass(frozen=True, slots=True)
class Ending:
    """The end of a studio or everyday name, as 斎 or 兵衛."""

    text: str
    kind: str
    kana: tuple[str, ...]
    weight: float


@tables.compiled
def _endings() -> dict[str, Ending]:
    found: dict[str, Ending] = {}
    for (text, kind, kana, others, _, weight), place in tables.rows(
        "name_endings", ("ending", "kind", "kana", "alternatives", "stem", "weight")
    ):
        if kind not in ("art", "common"):
            raise TableError(f"“{kind}” is no kind of name", place, "use art or common")
        try:
            strength = float(weight)
        except ValueError:
            raise TableError("the weight is not a number", place, "give 0 to 1") from None
        readings_ = (kana, *filter(None, others.split("/")))
        found.setdefault(text, Ending(text, kind, readings_, strength))
    return found


@tables.compiled
def own_names() -> dict[str, tuple[NameReading, ...]]:
    """Return the names of the user's own lists (``names.tsv``) with their readings."""
    found: dict[str, tuple[NameReading, ...]] = {}
    if not tables.files("names"):
        return found
    for (written, kana, kind, note), place in tables.rows(
        "names", ("written", "kana", "kind", "note")
    ):
        if not written or not kana:
            raise TableError("a name needs its writing and its kana", place, "fill both cells")
        reason = f"from your own list of names{f': {note}' if note else ''}"
        reading = NameReading(kana, romaji(kana), _OWN_LIST, reason, kind or "given")
        found[written] = (*found.get(written, ()), reading)
    return found


def romaji(kana: str) -> str:
    """Return a name in kana as Latin letters, capitalised.

    >>> romaji("とも|おき"), romaji("とう|うん|さい")
    ('Tomooki', 'Tōunsai')
    """
    letters = hepburn(kana)
    return letters[:1].upper() + letters[1:]


def ending_of(name: str) -> Ending | None:
    """Return the studio or everyday ending of a name, the longest that leaves a stem."""
    endings = _endings()
    for length in (4, 3, 2, 1):
        if len(name) > length and (found := endings.get(name[-length:])):
            return found
    return None


def readings(name: str, kind: NameKind = "auto") -> tuple[NameReading, ...]:
    """Return the readings of a name, best first, each with its weight and its reason.

    ``name`` is in current forms; ``kind`` says what sort of name it is where that is known. A
    sign that cannot be read (□) stays so. Empty only for an empty name.
    """
    if not name:
        return ()
    own = own_names().get(name, ())
    if kind == "surname":
        found = _surname_readings(name)
    elif kind == "place":
        found = _place_readings(name)
    elif kind == "auto":
        found = _merged(_made_readings(name), _surname_readings(name, composed=False))
    else:
        found = _made_readings(name, _STUDIO_ON if kind == "art" else 1.0)
    return _distinct((*own, *found))[:MOST]


def _merged(*groups: Iterable[NameReading]) -> list[NameReading]:
    return sorted(itertools.chain(*groups), key=lambda reading: -reading.score)


def _distinct(found: Iterable[NameReading]) -> tuple[NameReading, ...]:
    seen: dict[str, NameReading] = {}
    for reading in found:
        seen.setdefault(reading.romaji, reading)
    return tuple(seen.values())


def _made_readings(name: str, on_factor: float = 1.0) -> list[NameReading]:
    if len(name) == 1:
        return _single_readings(name)
    ending = ending_of(name)
    if ending and (len(name) > 2 or (ending.kind == "art" and ending.weight >= 1)):
        return _ending_readings(name, ending)
    if len(name) == 2:
        return _pair_readings(name, on_factor)
    return _long_readings(name)


def _single_readings(name: str) -> list[NameReading]:
    return [
        NameReading(c.kana, romaji(c.kana), c.share, f"{name} alone as a name, {c.source}")
        for c in _element(name, "alone")[:MOST]
    ]


def _element(char: str, position: Literal["first", "last", "stem", "alone"]) -> tuple[Choice, ...]:
    if char == UNREAD:
        return (Choice(UNREAD, False, 1.0, "unreadable"),)
    return choices(char, position) or (Choice(char, False, 1.0, "not a kanji"),)


def _pair_readings(name: str, on_factor: float = 1.0) -> list[NameReading]:
    found = []
    open_sign = UNREAD in name
    for head in _element(name[0], "first"):
        for tail in _element(name[1], "last"):
            mixed = head.is_on != tail.is_on and not open_sign
            score = head.share * tail.share * (_MIXED if mixed else 1.0)
            if head.is_on and tail.is_on:
                score *= on_factor
            if head.kana == tail.kana and name[0] != name[1]:
                score *= _TWICE
            kana = joined_on(head.kana, tail.kana) if head.is_on else f"{head.kana}|{tail.kana}"
            found.append(
                NameReading(kana, romaji(kana), score, _pair_reason(name, head, tail, mixed))
            )
    if (ending := _endings().get(name[1])) and ending.kind == "common":
        found += (replace(r, score=_SHORT * r.score) for r in _ending_readings(name, ending))
    return sorted(found, key=lambda reading: -reading.score)[:MOST]


def _pair_reason(name: str, head: Choice, tail: Choice, mixed: bool) -> str:
    if mixed:
        return f"{name}: a name reading and an on-reading mixed, which is rare"
    sort = "on-readings" if head.is_on else "name readings"
    shares = f"{name[0]} at the head {head.kana} {head.share:.0%}, {name[1]} at the end {tail.kana}"
    return f"{sort}, {shares} {tail.share:.0%} ({head.source})"


def joined_on(head: str, tail: str) -> str:
    """Return two on-readings as they sound together.

    >>> joined_on("いち", "さい"), joined_on("しゅん", "ほう"), joined_on("とく", "けん")
    ('いっさい', 'しゅんぽう', 'とっけん')
    """
    half_voiced = dict(zip("はひふへほ", "ぱぴぷぺぽ", strict=True))
    first = tail[:1]
    if len(head) > 1 and head[-1] in "つち" and first in "かきくけこさしすせそたちつてとはひふへほ":
        return f"{head[:-1]}っ{half_voiced.get(first, first)}{tail[1:]}"
    if len(head) > 1 and head[-1] in "くき" and first in "かきくけこ" and first:
        return f"{head[:-1]}っ{tail}"
    if head.endswith("ん") and first in half_voiced:
        return f"{head}{half_voiced[first]}{tail[1:]}"
    return f"{head}|{tail}"


def _ending_readings(name: str, ending: Ending) -> list[NameReading]:
    stem = name[: -len(ending.text)]
    found = []
    for kana, share, on_only in _stem_readings(stem, ending):
        for rank, tail in enumerate(ending.kana):
            whole = _stem_and_ending(kana, tail, ending, on_only)
            score = share * ending.weight / 4**rank
            reason = f"{ending.text} ends {_SORTS[ending.kind]} names, {stem} before it as usual"
            found.append(NameReading(whole, romaji(whole), score, reason, ending.kind))
    return sorted(found, key=lambda reading: -reading.score)[:MOST]


_SORTS = {"art": "studio", "common": "everyday"}


def _stem_readings(stem: str, ending: Ending) -> list[tuple[str, float, bool]]:
    if ending.kind == "common" and len(stem) == 2 and ending_of(stem) is None:
        known = [(r.kana, r.score, False) for r in _pair_readings(stem)]
        return known[:4]
    options: list[tuple[str, float, bool]] = [("", 1.0, True)]
    for char in stem:
        grown = []
        for kana, share, on_only in options:
            for choice in _stem_choices(char, ending)[:3]:
                joined = joined_on(kana, choice.kana) if kana and choice.is_on else kana
                text = joined if kana and choice.is_on else kana + choice.kana
                grown.append((text, share * choice.share, on_only and choice.is_on))
        options = sorted(grown, key=lambda option: -option[1])[:4]
    return options


def _stem_choices(char: str, ending: Ending) -> list[Choice]:
    if ending.kind == "common":
        return list(_element(char, "stem"))
    on_first = [c for c in _element(char, "first") if c.is_on or c.kana == UNREAD]
    known = {c.kana for c in on_first}
    on_first += [c for c in _element(char, "last") if c.is_on and c.kana not in known]
    total = sum(c.share for c in on_first) or 1.0
    chosen = [Choice(c.kana, c.is_on, c.share / total, c.source) for c in on_first]
    return sorted(chosen, key=lambda c: -c.share) or list(_element(char, "first"))


def _stem_and_ending(stem: str, tail: str, ending: Ending, on_only: bool) -> str:
    if tail == "べえ" and len(stem) == 1:
        return f"{stem}へえ"
    if ending.kind == "art" and on_only and len(ending.text) == 1:
        return joined_on(stem, tail)
    return f"{stem}|{tail}" if tail[0] in "あいうえお" else stem + tail


def _long_readings(name: str) -> list[NameReading]:
    """Read a name of three characters or more without a known ending: on-readings, in a row."""
    kana = ""
    share = 1.0
    for char in name:
        options = [c for c in _element(char, "stem") if c.is_on] or _element(char, "first")
        kana = joined_on(kana, options[0].kana) if kana else options[0].kana
        share *= options[0].share
    reason = f"no known pattern of name; {name} by on-readings"
    return [NameReading(kana, romaji(kana), 0.3 * share, reason)]


def _surname_readings(name: str, *, composed: bool = True) -> list[NameReading]:
    found = _listed_readings(surnames(name), "surname")
    if not found and composed:
        found = _composed_readings(name, "surname")
    return found


def _place_readings(name: str) -> list[NameReading]:
    found = _listed_readings(place_names(name), "place")
    return found or _surname_readings(name, composed=False) or _composed_readings(name, "place")


def _listed_readings(known: Listed, kind: str) -> list[NameReading]:
    found = []
    for kana, cost in known:
        weight = math.exp((known[0][1] - cost) / 1000)
        reason = f"{kind} as in UniDic{'' if cost == known[0][1] else ', less usual'}"
        found.append(NameReading(kana, romaji(kana), 0.9 * weight, reason, kind))
    return found


def _composed_readings(name: str, kind: str) -> list[NameReading]:
    options = [
        [c for c in _element(char, "first" if i == 0 else "last") if not c.is_on][:2]
        or list(_element(char, "first"))[:2]
        for i, char in enumerate(name)
    ]
    found = []
    for combination in itertools.product(*options):
        kana = "|".join(c.kana for c in combination)
        share = math.prod(c.share for c in combination)
        reason = f"{name} is in no list of {kind}s; read by its characters"
        found.append(NameReading(kana, romaji(kana), 0.2 * share, reason, kind))
    return sorted(found, key=lambda reading: -reading.score)[:MOST]
