"""Historical kana spelling to current kana spelling to what is said, rule by rule.

Until 1946 kana were written as words had been said a thousand years before: けふ for kyō, かは for
kawa. The general rules are applied to a word, or to each of its parts where ``boundaries`` are
known, after the exceptions of ``historical_words.tsv``. What the spelling does not show
(voicing left unmarked, small ゃ ゅ ょ っ written large in native words) is the dictionary's task.

Source of the rules: the correspondences of the Cabinet order on current kana usage (現代仮名遣い,
1986, appendix), written down from memory.

>>> modern_kana("けふ"), modern_kana("くわんぱく"), modern_kana("あはれ"), modern_kana("あさひ")
('きょう', 'かんぱく', 'あわれ', 'あさひ')
>>> for step in explain("てふてふ", boundaries=(2,)).steps[:1]:
...     print(step.before, step.after, step.why)
てふ ちょう noun or particle: ふ said u, the vowels run together
>>> pronunciation("あふ", "動詞"), pronunciation("あふぎ", "名詞"), pronunciation("は", "助詞")
('あう', 'おーぎ', 'わ')
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe import tables

_OLD_KANA = {"ゐ": "い", "ゑ": "え", "を": "お"}
_MEDIAL_H = dict(zip("はひふへほ", "わいうえお", strict=True))
_VOICED = {"ぢ": "じ", "づ": "ず"}
_AU = dict(zip("あかさたなはまやらわがざだばぱ", "おこそとのほもよろおごぞどぼぽ", strict=True))
_IU = dict(zip("いきしちにひみりぎじぢびぴ", "ゆきしちにひみりぎじじびぴ", strict=True))
_EU = dict(zip("えけせてねへめれげぜでべぺ", "よきしちにひみりぎじじびぴ", strict=True))
_LONG_VOWEL = {
    "う": "うくすつぬふむゆるぐずぶぷゅおこそとのほもよろごぞどぼぽょ",
    "お": "おこそとのほもよろごぞどぼぽょ",
}
_LONG_VOWEL |= {"あ": "あかさたなはまやらわがざだばぱゃ", "え": "えけせてねへめれげぜでべぺ"}


class SpellingStep(NamedTuple):
    """One rule at work: the kana from ``first`` to ``last`` of the historical spelling."""

    first: int
    last: int
    before: str
    after: str
    why: str


class Respelling(NamedTuple):
    """A word in current kana spelling, and the steps that led there."""

    kana: str
    steps: tuple[SpellingStep, ...]


class _Cell(NamedTuple):
    """Kana as they stand now, and the historical kana they came from."""

    kana: str
    first: int
    last: int


@tables.cached(8192)
def modern_kana(historical: str, part_of_speech: str = "", boundaries: tuple[int, ...] = ()) -> str:
    """Return the current kana spelling of a word written in historical hiragana spelling.

    ``part_of_speech`` begins with UniDic's term (動詞, 助詞 ...); a verb's last ふ is its ending
    and stands apart (逢ふ あう), a noun's runs together with the vowel before it (塔 たふ とう).
    ``boundaries`` are the offsets where a part of the word begins anew.
    """
    return explain(historical, part_of_speech, boundaries).kana


def explain(
    historical: str, part_of_speech: str = "", boundaries: Sequence[int] = ()
) -> Respelling:
    """Return the current spelling of a word with every step, in the order of the rules."""
    if part_of_speech.startswith("助詞") and historical in (
        "は",
        "へ",
        "を",
        "には",
        "とは",
        "をば",
    ):
        return Respelling(historical, ())
    cuts = [0, *(cut for cut in sorted(boundaries) if 0 < cut < len(historical)), len(historical)]
    kana, steps = "", []
    for first, end in pairwise(cuts):
        last_part = end == len(historical)
        cells, made = _respelt(historical[first:end], first, part_of_speech if last_part else "")
        kana += "".join(cell.kana for cell in cells)
        steps += made
    return Respelling(kana, tuple(steps))


@tables.cached(8192)
def pronunciation(
    historical: str, part_of_speech: str = "", boundaries: tuple[int, ...] = ()
) -> str:
    """Return a word as it is said, in hiragana, long vowels as ``ー`` (ii and ei as spelt)."""
    said = modern_kana(historical, part_of_speech, boundaries)
    if part_of_speech.startswith("助詞"):
        return said.translate({ord("は"): "わ", ord("へ"): "え", ord("を"): "お"})
    verb = part_of_speech.startswith("動詞") and said.endswith("う")
    body = said[:-1] if verb else said
    out = "".join(
        "ー" if before and sign in _LONG_VOWEL and before in _LONG_VOWEL[sign] else sign
        for before, sign in zip(" " + body, body, strict=False)
    )
    return (out + "う" * verb).translate({ord("ぢ"): "じ", ord("づ"): "ず", ord("を"): "お"})


class _Exception(NamedTuple):
    """A word, or the beginning of one, with a spelling of its own."""

    modern: str
    part_of_speech: str
    why: str

    def is_for(self, part_of_speech: str) -> bool:
        return not part_of_speech or part_of_speech.startswith(self.part_of_speech)


@tables.cached()
def _words() -> dict[str, _Exception]:
    words: dict[str, _Exception] = {}
    for row in tables.rows("historical_words"):
        exception = _Exception(row["kana"], row["pos"], row["note"])
        words.setdefault(row["historical"], exception)
    return words


def _respelt(part: str, offset: int, part_of_speech: str) -> tuple[list[_Cell], list[SpellingStep]]:
    known = _words().get(part)
    if known and known.is_for(part_of_speech):
        return _known(offset, part, known.modern, known.why)
    for length in range(len(part) - 1, 0, -1):
        if found := _words().get(part[:length] + "-"):
            cells, steps = _known(offset, part[:length], found.modern[:-1], found.why)
            rest = [_Cell(sign, offset + i, offset + i) for i, sign in enumerate(part)][length:]
            return _by_rule([*cells, *rest], steps, part_of_speech)
    return _by_rule(
        [_Cell(sign, offset + i, offset + i) for i, sign in enumerate(part)], [], part_of_speech
    )


def _known(
    offset: int, before: str, after: str, why: str
) -> tuple[list[_Cell], list[SpellingStep]]:
    last = offset + len(before) - 1
    steps = [SpellingStep(offset, last, before, after, why)] if before != after else []
    return [_Cell(after, offset, last)], steps


def _by_rule(
    cells: list[_Cell], steps: list[SpellingStep], part_of_speech: str
) -> tuple[list[_Cell], list[SpellingStep]]:
    for rule in (_kwa, _old_kana, _voiced, _medial_h, _long_vowels, _auxiliary_n):
        cells = rule(cells, steps, part_of_speech)
    return cells, steps


def _kwa(cells: list[_Cell], steps: list[SpellingStep], _: str) -> list[_Cell]:
    """くわ and ぐわ of Chinese words are か and が today."""
    return _pairs(
        cells,
        steps,
        lambda a, b: {"くわ": "か", "ぐわ": "が", "くゎ": "か", "ぐゎ": "が"}.get(a + b),
        "kwa of Chinese words is said ka",
    )


def _pairs(
    cells: list[_Cell],
    steps: list[SpellingStep],
    change: Callable[[str, str], str | None],
    why: str,
    apart: Collection[int] = (),
) -> list[_Cell]:
    """Return the cells with every pair for which ``change`` knows a new spelling made one.

    A kana that came from an offset in ``apart`` is left out.
    """
    out: list[_Cell] = []
    for cell in cells:
        may_change = out and out[-1].kana and out[-1].last not in apart
        new = change(out[-1].kana[-1:], cell.kana) if may_change else None
        if new is None:
            out.append(cell)
            continue
        before = out.pop()
        steps.append(SpellingStep(before.first, cell.last, before.kana[-1:] + cell.kana, new, why))
        out.append(_Cell(before.kana[:-1] + new, before.first, cell.last))
    return out


def _old_kana(cells: list[_Cell], steps: list[SpellingStep], _: str) -> list[_Cell]:
    return [_single(c, _OLD_KANA, steps, "wi, we, wo are said i, e, o") for c in cells]


def _single(cell: _Cell, change: dict[str, str], steps: list[SpellingStep], why: str) -> _Cell:
    new = change.get(cell.kana)
    if new is None:
        return cell
    steps.append(SpellingStep(cell.first, cell.last, cell.kana, new, why))
    return _Cell(new, cell.first, cell.last)


def _voiced(cells: list[_Cell], steps: list[SpellingStep], _: str) -> list[_Cell]:
    """ぢ and づ are じ and ず, unless they repeat the sign before (つづく) or begin a part."""
    out = cells[:1]
    for before, cell in pairwise(cells):
        repeats = before.kana + cell.kana in ("ちぢ", "つづ")
        out.append(cell if repeats else _single(cell, _VOICED, steps, "ぢ, づ are said ji, zu"))
    return out


def _medial_h(cells: list[_Cell], steps: list[SpellingStep], part_of_speech: str) -> list[_Cell]:
    begins_anew = _begins_anew(cells, part_of_speech)
    return [
        cell
        if number == 0 or number in begins_anew
        else _single(cell, _MEDIAL_H, steps, "は行 inside a word is said as わ行")
        for number, cell in enumerate(cells)
    ]


def _begins_anew(cells: list[_Cell], part_of_speech: str) -> set[int]:
    """Return where a doubled word begins again, and where a verb follows another (打ちふるふ)."""
    kana = "".join(cell.kana for cell in cells)
    places = {
        half for half in (2, 3) if len(kana) == len(cells) and kana[:half] == kana[half : 2 * half]
    }
    if part_of_speech.startswith("動詞"):
        inner = range(1, len(cells) - 2)
        places |= {n for n in inner if cells[n].kana == "ふ" and cells[n - 1].kana in _IU}
    return places


def _long_vowels(cells: list[_Cell], steps: list[SpellingStep], part_of_speech: str) -> list[_Cell]:
    """Join a vowel and the う after it, but not a verb's ending."""
    kept: list[_Cell] = []
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


def _verb_ending(cells: list[_Cell], from_fu: set[int]) -> int:
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


def _contracted(cells: list[_Cell], steps: list[SpellingStep]) -> list[_Cell]:
    """きよう out of きやう, しゆう: the second kana is written small today."""
    small = {"よう": "ょう", "ゆう": "ゅう"}
    out: list[_Cell] = []
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
            out[-1] = _Cell(before.kana + new, before.first, cell.last)
        else:
            out.append(cell)
    return out


def _auxiliary_n(cells: list[_Cell], steps: list[SpellingStep], part_of_speech: str) -> list[_Cell]:
    if part_of_speech.startswith("助動詞") and cells and cells[-1].kana == "む":
        return [
            *cells[:-1],
            _single(cells[-1], {"む": "ん"}, steps, "む of an auxiliary is said n"),
        ]
    return cells
