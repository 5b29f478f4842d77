"""The dictionary that finds words of today in old spelling, made from the installed UniDic.

Every entry of UniDic that has kana in its writing is respelt as it may have been before 1946
(``old_forms``); an entry keeps UniDic's class and cost, so that MeCab weighs it as the word it is,
and hands back the word in current spelling. Entries UniDic itself has in old spelling come too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading import mecab
from inscribe.reading.mecab import MecabRow
from inscribe.reading.prose.old_forms import current_spelling, old_forms

_NOT_JAPANESE = re.compile(r"[^\u3005-\u3007\u3041-\u30ff\u3400-\u9fff\U00020000-\U0003ffff]")
_HIRAGANA = re.compile(r"[\u3041-\u3096]")
_KATAKANA = re.compile(r"[\u30a1-\u30fa]")
_OLD_SIGNS = frozenset("はひふへほゐゑをぢづつやゆよヂヅツヤユヨ")
_CHANGING = _OLD_SIGNS | frozenset("わいうえおじずっゃゅょんかがジズッャュョァィゥェォ")
_DRAWN_OUT = re.compile(r"[ぁぃぅぇぉー]")
_PARTS = frozenset(
    ("名詞", "動詞", "形容詞", "副詞", "形状詞", "代名詞", "連体詞", "接続詞", "感動詞", "助動詞")
) | {"助詞", "接尾辞"}
_NAME = "固有名詞"
_ALL_KATAKANA = re.compile(r"[\u30a1-\u30faー]+")
_MERGED = ("融合", "省略")  # forms of speech, as 書きゃ
_LONGEST_MERGED = 5  # longer ones are not met in print
_FIRST = 100  # how much an entry is preferred to UniDic's own of the same writing and class
_HIGHEST = 32000
# Classical endings UniDic has for a few verbs only; the costs are about those of its own entries.
_FU_ENDINGS = {
    "終止形-一般": ("ふ", 10700),
    "連体形-一般": ("ふる", 9900),
    "已然形-一般": ("ふれ", 11500),
}

_ONE_GRADE = ("上一段", "下一段")
_SHORTENED = re.compile(
    "([\u4e00-\u9fff々])[いきぎしじちぢにひびみりえけげせぜてでねへべめれ]([るれよろ])"
)
_LESS_SPELLED = 3000  # what 落る costs more than 落ちる, by hand

_Place = tuple[str, int]  # what is written, and its class


def rows(mark: str, mark_before_ta: str) -> Iterator[MecabRow]:
    """Yield the entries: for each writing and class the word that costs least.

    The marks begin what MeCab says of an entry, the second of a form that only stands before た.
    """
    classes = mecab.classes(mecab.folder())
    classical = _classical_endings(classes)
    before_ta = classes.numbers(lambda row: row[5] in ("連用形-促音便", "連用形-撥音便"))
    own: dict[_Place, int] = {}  # what UniDic's own entries cost that are in current spelling
    old: dict[_Place, int] = {}  # and those that are not
    sure: set[tuple[_Place, str]] = set()  # writings in current spelling, with their lemma
    found: dict[_Place, tuple[int, str, str]] = {}
    for word in _words():
        modern = current_spelling(word)
        place, lemma = (word.surface, word.connection), word.fields[7]
        if modern != word.surface:
            _keep_cheapest(found, place, word.cost, modern, "")
            old[place] = min(word.cost, old.get(place, _HIGHEST))
            continue
        if not _OLD_SIGNS.isdisjoint(word.surface):
            sure.add((place, lemma))
            own[place] = min(word.cost, own.get(place, _HIGHEST))
        for written in _spelt_by_the_table().get(word.surface, ()):
            _keep_cheapest(found, (written, word.connection), word.cost, modern, lemma)
        if shortened := _with_less_kana(word):
            cost = word.cost + _LESS_SPELLED
            _keep_cheapest(found, (shortened, word.connection), cost, modern, lemma)
        for written, cost in old_forms(word):
            _keep_cheapest(found, (written, word.connection), word.cost + cost, modern, lemma)
        for ending, connection, cost in classical.get((word.conjugation, word.form), ()):
            stem = word.surface[:-2]
            if stem:
                _keep_cheapest(
                    found, (stem + ending, connection), cost, stem + "う" + ending[1:], lemma
                )
    for place, (cost, modern, lemma) in found.items():
        if cost < own.get(place, _HIGHEST) and (place, lemma) not in sure:
            cost = max(-_HIGHEST, min(cost, old.get(place, _HIGHEST) - _FIRST))
            said = mark_before_ta if place[1] in before_ta else mark
            yield MecabRow(place[0], place[1], place[1], cost, said + modern)


def _classical_endings(
    classes: mecab.Classes,
) -> dict[tuple[str, str], list[tuple[str, int, int]]]:
    """Return what the dictionary form of 考える had besides: 考ふ 考ふる 考ふれ, class and cost."""
    endings = []
    for number, row in enumerate(classes.rows):
        if row[:5] == ("動詞", "一般", "*", "*", "文語下二段-ハ行") and row[5] in _FU_ENDINGS:
            ending, cost = _FU_ENDINGS[row[5]]
            endings.append((ending, number, cost))
    return {("下一段-ア行", "終止形-一般"): endings}


def _with_less_kana(word: mecab.UnidicEntry) -> str:
    """Return a verb of one grade with the kana left out that never changes: 落る, 捨れ."""
    match = word.conjugation.startswith(_ONE_GRADE) and _SHORTENED.fullmatch(word.surface)
    return "".join(match.groups()) if match else ""


def _words() -> Iterator[mecab.UnidicEntry]:
    source = mecab.folder()
    classes = mecab.classes(source).numbers(lambda row: row[0] in _PARTS)
    for word in mecab.words(source, classes, _NOT_JAPANESE):
        written = word.surface
        if word.fields[1] == _NAME and not _is_respelt_name(word):
            continue
        if _CHANGING.isdisjoint(written) and not _with_less_kana(word):
            continue
        if not _HIRAGANA.search(written):
            if _KATAKANA.search(written):
                yield word
        elif not _DRAWN_OUT.search(written) and (
            len(written) <= _LONGEST_MERGED or not word.form.endswith(_MERGED)
        ):
            yield word


def _is_respelt_name(word: mecab.UnidicEntry) -> bool:
    """Whether a name is spelt by the rules of its time: a foreign place (ヨーロツパ), a word's own.

    Other names are spelt as their bearers do.
    """
    foreign = word.fields[2] == "地名" and _ALL_KATAKANA.fullmatch(word.surface)
    return bool(foreign) or word.surface in _spelt_by_the_table()


@tables.cached()
def _spelt_by_the_table() -> dict[str, tuple[str, ...]]:
    """Return the old spellings that words of the table have, by their current one."""
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("historical_words"):
        if row["historical"] != row["kana"]:
            found[row["kana"]] = (*found.get(row["kana"], ()), row["historical"])
    return found


def _keep_cheapest(
    found: dict[_Place, tuple[int, str, str]], place: _Place, cost: int, modern: str, lemma: str
) -> None:
    there = found.get(place)
    if there is None or cost < there[0]:
        found[place] = (cost, modern, lemma)
