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

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.spelling.old_rules import Cell, SpellingStep, by_rule

_LONG_VOWEL = {
    "う": "うくすつぬふむゆるぐずぶぷゅおこそとのほもよろごぞどぼぽょ",
    "お": "おこそとのほもよろごぞどぼぽょ",
}
_LONG_VOWEL |= {"あ": "あかさたなはまやらわがざだばぱゃ", "え": "えけせてねへめれげぜでべぺ"}


class Respelling(NamedTuple):
    """A word in current kana spelling, and the steps that led there."""

    kana: str
    steps: tuple[SpellingStep, ...]


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


def _respelt(part: str, offset: int, part_of_speech: str) -> tuple[list[Cell], list[SpellingStep]]:
    known = _words().get(part)
    if known and known.is_for(part_of_speech):
        return _known(offset, part, known.modern, known.why)
    for length in range(len(part) - 1, 0, -1):
        if found := _words().get(part[:length] + "-"):
            cells, steps = _known(offset, part[:length], found.modern[:-1], found.why)
            rest = [Cell(sign, offset + i, offset + i) for i, sign in enumerate(part)][length:]
            return by_rule([*cells, *rest], steps, part_of_speech)
    return by_rule(
        [Cell(sign, offset + i, offset + i) for i, sign in enumerate(part)], [], part_of_speech
    )


def _known(offset: int, before: str, after: str, why: str) -> tuple[list[Cell], list[SpellingStep]]:
    last = offset + len(before) - 1
    steps = [SpellingStep(offset, last, before, after, why)] if before != after else []
    return [Cell(after, offset, last)], steps
