"""Whether the words of a poem agree over more than two of them: the last judge of near readings.

MeCab weighs each word by the one before it. What decides an ending that is not written often
stands further off: after ぞ the sentence ends in the attributive, after こそ in the realis
(係り結び, common grammar); a final form hardly stands before a noun within a phrase; and a verb
goes with its customary nouns (``verse_pairs.tsv``): 虫の鳴 is naku, 鐘の鳴 is naru. So readings
that cost nearly the same are held against each other once more.

>>> from inscribe.reading.verse.reader import read_verse
>>> read = read_verse("夕暮の庭の草葉に虫の鳴声こそ秋のあはれなりけれ")
>>> " ".join(word.romaji for word in read.words[6:9])
'mushi no naku'
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from itertools import pairwise

from inscribe import tables
from inscribe.reading.lexicon import conjugation_named
from inscribe.reading.spelling import modern_kana
from inscribe.reading.verse.scansion import Phrases
from inscribe.reading.words import ReadWord

# In MeCab's units, set by hand on the looked-at poems.
_NOT_ITS_END = 2500  # ぞ without its attributive, こそ without its realis
_FINAL_BEFORE_NOUN = 1200  # within a phrase
_LONE_SO = 3000  # そ without the な of a prohibition
_PROHIBITED = 2500  # less, where both stand: な咲きそ, not な咲きぞ
_PAST_UNBOUND = 2500  # し of the past before と or な: 忘れじな
_PAIR = 1500  # a verb beside a noun it customarily goes with
_ATTRIBUTIVE, _REALIS = "連体形", "已然形"
_INFLECTED = ("動詞", "形容詞", "助動詞")
_LINKS = frozenset("のがはもをにぞや") | {"こそ", "だに", "さえ", "のみ", "しも", "にも", "とも"}


def disagreement(words: Sequence[ReadWord], phrases: Phrases) -> int:
    """Return what a reading costs more, or less, for how its words go together."""
    firsts = {first for _, first in phrases}
    cost = _endings(words) + _finals(words, firsts) + _LONE_SO * _has_lone_so(words)
    cost += _PAST_UNBOUND * sum(_past_unbound(words))
    return cost - _PAIR * sum(_pairs(words)) - _PROHIBITED * _prohibits(words)


def _past_unbound(words: Sequence[ReadWord]) -> Iterable[bool]:
    """Yield for each し of the past whether と or な follows, before which a sentence ends."""
    for word, after in pairwise(words):
        past = word.kana == "し" and "助動詞-キ" in word.conjugation
        yield past and after.kana in ("と", "とて", "な") and after.part_of_speech[:2] == "助詞"


def _prohibits(words: Sequence[ReadWord]) -> bool:
    """Whether な and そ enclose a verb: な咲きそ."""
    for index, word in enumerate(words):
        if word.kana == "な" and word.part_of_speech == "副詞":
            return any(each.kana == "そ" for each in words[index + 2 : index + 4])
    return False


def _has_lone_so(words: Sequence[ReadWord]) -> bool:
    """Whether そ of a prohibition stands without its な: な焼きそ."""
    kana = [word.kana for word in words]
    return any(
        word.kana == "そ" and word.part_of_speech.endswith("終助詞") and "な" not in kana[:index]
        for index, word in enumerate(words)
    )


def _endings(words: Sequence[ReadWord]) -> int:
    """Return what it costs that sentences do not end as their particle asks."""
    due, met, cost = "", False, 0
    for index, word in enumerate(words):
        after = words[index + 1] if index + 1 < len(words) else None
        if word.part_of_speech.startswith("助詞") and after is not None:
            asked = _asked_by(word)
            due, met = asked or due, met and not asked
        elif due and word.part_of_speech.startswith(_INFLECTED):
            ends = word.form.startswith((due, "命令形") if due == _REALIS else due)
            ends = ends or (due == _ATTRIBUTIVE and _sounds_attributive(word))
            if after is not None and _goes_on(word, after):
                met = met or (ends and after.part_of_speech.startswith(("名詞", "代名詞")))
                continue
            cost += 0 if ends or met else _NOT_ITS_END
            due, met = "", False
    return cost


def _asked_by(particle: ReadWord) -> str:
    if particle.kana.endswith("こそ"):
        return _REALIS
    of_sentence = particle.part_of_speech.endswith("係助詞")  # そ is the old form of ぞ
    return (
        _ATTRIBUTIVE
        if particle.kana.endswith("ぞ") or (particle.kana == "そ" and of_sentence)
        else ""
    )


def _goes_on(word: ReadWord, after: ReadWord) -> bool:
    """Whether the sentence goes on after an inflected word."""
    if after.part_of_speech.startswith(("助動詞", "助詞-接続", "接尾辞", "動詞")):
        return True
    if after.part_of_speech.startswith("助詞"):
        return after.kana not in ("と", "とて")
    return word.form.startswith((_ATTRIBUTIVE, "連用形", "語幹"))


def _finals(words: Sequence[ReadWord], firsts: Collection[int]) -> int:
    """Return what final forms before nouns cost within phrases."""
    cost = 0
    for index, (word, after) in enumerate(pairwise(words), start=1):
        noun = after.part_of_speech.startswith(("名詞", "代名詞"))
        final = word.form.startswith("終止形") and not _sounds_attributive(word)
        if noun and index not in firsts and final:
            cost += _FINAL_BEFORE_NOUN
    return cost


def _sounds_attributive(word: ReadWord) -> bool:
    """Whether a final form is also the attributive: 思ふ, 見る, む."""
    alike = ("四段", "一段", "助動詞-ム", "助動詞-ラム", "助動詞-ケム", "助動詞-ジ", "助動詞-ラシ")
    return word.form.startswith("終止形") and any(each in word.conjugation for each in alike)


def _pairs(words: Sequence[ReadWord]) -> Iterable[bool]:
    """Yield for each verb whether one of its customary nouns stands before or after it."""
    for index, word in enumerate(words):
        if word.part_of_speech.startswith("動詞"):
            yield any(_goes_with(word, noun) for noun in _nouns_beside(words, index))


def _nouns_beside(words: Sequence[ReadWord], verb: int) -> Iterable[ReadWord]:
    if verb and words[verb - 1].part_of_speech.startswith("名詞"):
        yield words[verb - 1]
    elif verb > 1 and words[verb - 1].kana in _LINKS:
        yield words[verb - 2]
    if words[verb].form.startswith(_ATTRIBUTIVE) and verb + 1 < len(words):
        yield words[verb + 1]


def _goes_with(verb: ReadWord, noun: ReadWord) -> bool:
    stems = _customary().get(verb.conjugation, ())
    return any(verb.kana.startswith(stem) and noun.kana in nouns for stem, nouns in stems)


@tables.cached()
def _customary() -> dict[str, list[tuple[str, frozenset[str]]]]:
    """Return stems in current kana with their nouns, by UniDic's conjugation."""
    found: dict[str, list[tuple[str, frozenset[str]]]] = {}
    for row in tables.rows("verse_pairs"):
        nouns = frozenset(modern_kana(noun, "名詞") for noun in tables.listed(row["nouns"]))
        stem = modern_kana(row["historical"], "動詞") if row["historical"] else ""
        found.setdefault(f"文語{conjugation_named(row['class'])}", []).append((stem, nouns))
    return found
