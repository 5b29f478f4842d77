"""The rules that lead from historical to current kana spelling, in the order they are applied.

Each takes the cells of a part of a word and returns them changed, and tells what it did in a step.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from itertools import pairwise
from typing import NamedTuple

_OLD_KANA = {"ゐ": "い", "ゑ": "え", "を": "お"}
_MEDIAL_H = dict(zip("はひふへほ", "わいうえお", strict=True))
_VOICED = {"ぢ": "じ", "づ": "ず"}
_AU = dict(zip("あかさたなはまやらわがざだばぱ", "おこそとのほもよろおごぞどぼぽ", strict=True))
_IU = dict(zip("いきしちにひみりぎじぢびぴ", "ゆきしちにひみりぎじじびぴ", strict=True))
_EU = dict(zip("えけせてねへめれげぜでべぺ", "よきしちにひみりぎじじびぴ", strict=True))


class SpellingStep(NamedTuple):
    """One rule at work: the kana from ``first`` to ``last`` of the historical spelling."""

    first: int
    last: int
    before: str
    after: str
    why: str


class Cell(NamedTuple):
    """Kana as they stand now, and the historical kana they came from."""

    kana: str
    first: int
    last: int


def by_rule(
    cells: list[Cell], steps: list[SpellingStep], part_of_speech: str
) -> tuple[list[Cell], list[SpellingStep]]:
    """Return the cells of a part of a word as all rules leave them, and the steps so far."""
    for rule in (_kwa, _old_kana, _voiced, _medial_h, _long_vowels, _auxiliary_n):
        cells = rule(cells, steps, part_of_speech)
    return cells, steps


def _kwa(cells: list[Cell], steps: list[SpellingStep], _: str) -> list[Cell]:
    """くわ and ぐわ of Chinese words are か and が today."""
    return _pairs(
        cells,
        steps,
        lambda a, b: {"くわ": "か", "ぐわ": "が", "くゎ": "か", "ぐゎ": "が"}.get(a + b),
        "kwa of Chinese words is said ka",
    )


def _pairs(
    cells: list[Cell],
    steps: list[SpellingStep],
    change: Callable[[str, str], str | None],
    why: str,
    apart: Collection[int] = (),
) -> list[Cell]:
    """Return the cells with every pair for which ``change`` knows a new spelling made one.

    A kana that came from an offset in ``apart`` is left out.
    """
    out: list[Cell] = []
    for cell in cells:
        may_change = out and out[-1].kana and out[-1].last not in apart
        new = change(out[-1].kana[-1:], cell.kana) if may_change else None
        if new is None:
            out.append(cell)
            continue
        before = out.pop()
        steps.append(SpellingStep(before.first, cell.last, before.kana[-1:] + cell.kana, new, why))
        out.append(Cell(before.kana[:-1] + new, before.first, cell.last))
    return out


def _old_kana(cells: list[Cell], steps: list[SpellingStep], _: str) -> list[Cell]:
    return [_single(c, _OLD_KANA, steps, "wi, we, wo are said i, e, o") for c in cells]


def _single(cell: Cell, change: dict[str, str], steps: list[SpellingStep], why: str) -> Cell:
    new = change.get(cell.kana)
    if new is None:
        return cell
    steps.append(SpellingStep(cell.first, cell.last, cell.kana, new, why))
    return Cell(new, cell.first, cell.last)


def _voiced(cells: list[Cell], steps: list[SpellingStep], _: str) -> list[Cell]:
    """ぢ and づ are じ and ず, unless they repeat the sign before (つづく) or begin a part."""
    out = cells[:1]
    for before, cell in pairwise(cells):
        repeats = before.kana + cell.kana in ("ちぢ", "つづ")
        out.append(cell if repeats else _single(cell, _VOICED, steps, "ぢ, づ are said ji, zu"))
    return out


def _medial_h(cells: list[Cell], steps: list[SpellingStep], part_of_speech: str) -> list[Cell]:
    begins_anew = _begins_anew(cells, part_of_speech)
    return [
        cell
        if number == 0 or number in begins_anew
        else _single(cell, _MEDIAL_H, steps, "は行 inside a word is said as わ行")
        for number, cell in enumerate(cells)
    ]


def _begins_anew(cells: list[Cell], part_of_speech: str) -> set[int]:
    """Return where a doubled word begins again, and where a verb follows another (打ちふるふ)."""
    kana = "".join(cell.kana for cell in cells)
    places = {
        half for half in (2, 3) if len(kana) == len(cells) and kana[:half] == kana[half : 2 * half]
    }
    if part_of_speech.startswith("動詞"):
        inner = range(1, len(cells) - 2)
        places |= {n for n in inner if cells[n].kana == "ふ" and cells[n - 1].kana in _IU}
    return places


def _long_vowels(cells: list[Cell], steps: list[SpellingStep], part_of_speech: str) -> list[Cell]:
    """Join a vowel and the う after it, but not a verb's ending."""
    kept: list[Cell] = []
    ending = _verb_ending(cells, {step.last for step in steps if step.before == "ふ"})
    if ending and _stands_apart(cells[-ending - 1].kana, part_of_speech):
        cells, kept = cells[:-ending], cells[-ending:]
    from_hi = {step.last for step in steps if step.before == "ひ"}
    cells = _pairs(
        cells,
        steps,
        _long,
        "the vowels run together into one long vowel",
        apart=from_hi,
    )
    return _contracted(cells, steps) + kept


def _verb_ending(cells: list[Cell], from_fu: set[int]) -> int:
    """Return how many signs at the end could be a verb's ふ, ふる or ふれ, now う, うる, うれ."""
    for length in (1, 2):
        if len(cells) > length and cells[-length].kana == "う" and cells[-length].last in from_fu:
            return length if length == 1 or cells[-1].kana in "るれ" else 0
    return 0


def _stands_apart(before: str, part_of_speech: str) -> bool:
    """Say whether an ending after ``before`` is a verb's; without part of speech, after a only."""
    return part_of_speech.startswith("動詞") if part_of_speech else before in _AU


def _long(before: str, after: str) -> str | None:
    if after != "う":
        return None
    if before in _AU:
        return _AU[before] + "う"
    if before in _IU:
        return "ゆう" if before == "い" else _IU[before] + "ゅう"
    if before in _EU:
        return "よう" if before == "え" else _EU[before] + "ょう"
    return None


def _contracted(cells: list[Cell], steps: list[SpellingStep]) -> list[Cell]:
    """きよう out of きやう, しゆう: the second kana is written small today."""
    small = {"よう": "ょう", "ゆう": "ゅう"}
    out: list[Cell] = []
    for number, cell in enumerate(cells):
        lone_yuu = (
            cell.kana == "ゆ" and cells[number + 1 : number + 2] and cells[number + 1].kana == "う"
        )
        before = out[-1] if out else None
        if (
            before
            and before.kana[-1:] in "きしちにひみりぎじびぴ"
            and (cell.kana == "よう" or lone_yuu)
        ):
            new = small.get(cell.kana, "ゅ")
            steps.append(
                SpellingStep(
                    before.first,
                    cell.last,
                    before.kana + cell.kana,
                    before.kana + new,
                    "one sound, written small today",
                )
            )
            out[-1] = Cell(before.kana + new, before.first, cell.last)
        else:
            out.append(cell)
    return out


def _auxiliary_n(cells: list[Cell], steps: list[SpellingStep], part_of_speech: str) -> list[Cell]:
    if part_of_speech.startswith("助動詞") and cells and cells[-1].kana == "む":
        return [
            *cells[:-1],
            _single(cells[-1], {"む": "ん"}, steps, "む of an auxiliary is said n"),
        ]
    return cells
