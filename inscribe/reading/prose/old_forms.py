"""The old spellings of one entry of UniDic, form by form.

What an ending can have been is told by the word's conjugation (思います was 思ひます, 書こう was
書かう); what stands in a stem or in a word that does not bend, by the general rules run backwards
(``old_spellings``).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.mecab import UnidicEntry
from inscribe.reading.spelling import Option, hiragana, old_spellings

_KANA = re.compile(r"[\u3041-\u3096]")
_ALL_KANA = re.compile(r"[\u3041-\u3096]+")
_RUNS = re.compile(r"[\u3041-\u3096]+|[^\u3041-\u3096]+")
_EVERY_KANA = "".join(map(chr, range(0x3041, 0x3097)))
_OLD_SIGNS = frozenset("はひふへほゐゑをぢづつやゆよ")
_ALIKE = {
    **{
        old: f"[{old}{now}]"
        for old, now in zip("はひふへほゐゑをぢづ", "わいうえおいえおじず", strict=True)
    },
    **{old: f"[{old}{now}]" for old, now in zip("つやゆよ", "っゃゅょ", strict=True)},
}
_KATAKANA = re.compile(r"[\u30a1-\u30fa]")
_CLOSED = frozenset(("助動詞", "感動詞"))  # their vowels are endings, and were spelt as today
_VOWELS = frozenset("ひふへほゐゑを")
_KATAKANA_HABITS = (
    str.maketrans("ッャュョァィゥェォ", "ツヤユヨアイウエオ"),
    str.maketrans("ッャュョ", "ツヤユヨ"),
    str.maketrans("ジズ", "ヂヅ"),
    str.maketrans("ッャュョァィゥェォジズ", "ツヤユヨアイウエオヂヅ"),
)
_VOICED = str.maketrans("ヂヅ", "ジズ")
_SAID_ALIKE = str.maketrans("ぢづ", "じず")
_WA_ENDINGS: dict[str, tuple[Option, ...]] = {
    "わ": (("は", -500),),
    "い": (("ひ", -500),),
    "う": (("ふ", -500),),
    "え": (("へ", -500),),
    "おう": (("はう", 0), ("ほう", 600)),
}
_A_TO_O = str.maketrans("かがさたなはばまやらわ", "こごそとのおぼもよろお")
_O_TO_A = str.maketrans("こごそとのぼもろよ", "かがさたなばまらや")
_HA_ROW = frozenset("はひふへほ")
_SHORT = 2  # kana
_LIKE_PARTICLES = 1500
_BEFORE_TA = -1200  # 立つた: only っ can stand before た, so つ is all but sure to be っ


def current_spelling(word: UnidicEntry) -> str:
    """Return the current spelling of an entry, which UniDic may have in an old or mistaken one.

    UniDic gives every entry its form in current kana; what is written in kana is respelt after it.

    >>> current_spelling(UnidicEntry("思ひ出す", 0, 0, [*"*" * 17, "オモヒダス", "", "オモイダス"]))
    '思い出す'
    """
    written, fields = word.surface, word.fields
    said, current = hiragana(fields[17]), hiragana(fields[19])
    if _KATAKANA.search(written):
        return fields[19] if written.translate(_VOICED) in _katakana_of(fields[19]) else written
    if not current or (current != said and current == said.replace("いう", "ゆう")):
        return written
    if word.form == "意志推量形" and written[-1] == "う":
        current = current[:-2] + current[-2:].translate(_A_TO_O)
    if _ALL_KANA.fullmatch(written):
        return current if current.translate(_SAID_ALIKE) != written else written
    tail = written[len(written.rstrip(_EVERY_KANA)) :]
    if current.endswith(tail) and _OLD_SIGNS.isdisjoint(written[: len(written) - len(tail)]):
        return written
    return _aligned(written, said, current)


def _aligned(written: str, said: str, current: str) -> str:
    """Return what is written with its kana respelt after ``current``, its kanji as they are."""
    runs = _RUNS.findall(written)
    pattern = "".join(
        "(.+?)" if not _ALL_KANA.match(run) else f"({''.join(_ALIKE.get(s, s) for s in run)})"
        for run in runs
    )
    match = re.fullmatch(pattern, current)
    if match is not None:
        pairs = zip(runs, match.groups(), strict=True)
        return "".join(new if _ALL_KANA.match(run) else run for run, new in pairs)
    before = len(said) - len(runs[-1])  # 美しう, うつくしう, うつくしゅう
    if said.endswith(runs[-1]) and said[:before] == current[:before]:
        return written[: -len(runs[-1])] + current[before:]
    return written


def _katakana_of(current: str) -> set[str]:
    """Return a loanword as it is and with large kana, as it was printed: ベッド, ベツド."""
    return {current, *(current.translate(habit) for habit in _KATAKANA_HABITS[:2])}


def old_forms(word: UnidicEntry) -> Iterator[Option]:
    """Yield the old spellings of an entry in current spelling, with what each costs more."""
    for old, cost in _forms(word):
        if not (old.startswith("つつ") and len(old) <= _SHORT + 1):  # つつ is itself, seldom っつ
            yield old, cost + (_LIKE_PARTICLES if _looks_like_particles(word, old) else 0)


def _looks_like_particles(word: UnidicEntry, old: str) -> bool:
    """Whether a short word in its old spelling is more likely particles: をば, ぞは, にや."""
    if len(old) > _SHORT:
        return False
    unbending = word.fields[0] in ("副詞", "感動詞", "助詞", "助動詞")
    return old[0] == "を" or old == "にや" or (unbending and not _HA_ROW.isdisjoint(old))


def _forms(word: UnidicEntry) -> Iterator[Option]:
    written = word.surface
    if _KATAKANA.search(written):
        yield from _katakana(written)
        return
    if word.fields[0] in _CLOSED:
        yield from (old for old in _whole(word) if not _VOWELS & set(old[0]) - set(written))
        return
    stem = None if word.form == "連用形-ウ音便" else _stem(word)
    if stem is None:
        yield from _whole(word)
        return
    ending = written[len(stem) :]
    stems = ((stem, 0), *_spellings(stem, word)) if _KANA.search(stem) else ((stem, 0),)
    endings = ((ending, 0), *_endings(ending, word.conjugation, word.form))
    for old_stem, stem_cost in stems:
        for old_ending, ending_cost in endings:
            if old_stem + old_ending != written:
                yield old_stem + old_ending, stem_cost + ending_cost


def _katakana(written: str) -> Iterator[Option]:
    for habit in _KATAKANA_HABITS:
        old = written.translate(habit)
        if old != written:
            yield old, 0


def _whole(word: UnidicEntry) -> tuple[Option, ...]:
    return _spellings(word.surface, word)


def _spellings(part: str, word: UnidicEntry) -> tuple[Option, ...]:
    wo = part.startswith("お") and word.surface.startswith(_wo_beginnings())
    return _cached_spellings(
        part, word.fields[0] == "接尾辞" and len(part) > 1, word.fields[12], wo
    )


@tables.cached(65536)
def _cached_spellings(part: str, inside: bool, origin: str, wo: bool) -> tuple[Option, ...]:
    return old_spellings(part, inside=inside, chinese=origin == "漢", wo=wo)


@tables.cached()
def _wo_beginnings() -> tuple[str, ...]:
    return tuple(row["kana"] for row in tables.rows("initial_wo"))


def _stem(word: UnidicEntry) -> str | None:
    """Return what stands before the ending of a verb or adjective, None for what does not bend."""
    conjugation, base = word.conjugation.removeprefix("文語"), word.fields[10]
    if conjugation == "*" or len(base) < 1:
        return None
    length = 2 if conjugation[:3] in ("上一段", "下一段") and _KANA.match(base[-2:-1]) else 1
    stem = base[:-length]
    return stem if word.surface.startswith(stem) else word.surface[: _common(stem, word.surface)]


def _common(first: str, second: str) -> int:
    length = 0
    while length < min(len(first), len(second)) and first[length] == second[length]:
        length += 1
    return length


def _endings(ending: str, conjugation: str, form: str) -> tuple[Option, ...]:
    """Return how the ending of a form was spelt; nothing where it was spelt as today."""
    if conjugation == "五段-ワア行" and ending in _WA_ENDINGS:
        return _WA_ENDINGS[ending]
    if conjugation == "下一段-ア行":
        return _first_changed(ending, "え", (("へ", 0), ("ゑ", 100)))
    if conjugation == "上一段-ア行":
        return _first_changed(ending, "い", (("ゐ", 0), ("ひ", 200)))
    if conjugation == "上一段-ザ行":
        return _first_changed(ending, "じ", (("ぢ", 0),))
    if conjugation == "形容詞":
        return _adjective_endings(ending, form)
    if form == "意志推量形" and ending.endswith("う"):
        if conjugation.startswith("五段"):
            return ((ending.translate(_O_TO_A), 0),)
        return ((ending.replace("よう", "やう"), 600),) if ending.endswith("よう") else ()
    return _with_large_tsu(ending, form)


def _with_large_tsu(ending: str, form: str) -> tuple[Option, ...]:
    if form == "連用形-撥音便" and ending == "ん":
        return (("む", _BEFORE_TA),)  # 飲むだ, 飛むで
    if "っ" not in ending:
        return ()
    return ((ending.replace("っ", "つ"), _BEFORE_TA if form == "連用形-促音便" else 0),)


def _first_changed(ending: str, sign: str, options: tuple[Option, ...]) -> tuple[Option, ...]:
    if not ending.startswith(sign):
        return ()
    return tuple((old + ending[1:], cost) for old, cost in options)


def _adjective_endings(ending: str, form: str) -> tuple[Option, ...]:
    if form == "意志推量形":
        return ((ending.replace("ろう", "らう"), 0),) if ending.endswith("ろう") else ()
    return _with_large_tsu(ending, form)
