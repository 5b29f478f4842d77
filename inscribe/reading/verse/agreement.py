"""Whether the words of a poem agree over more than two of them: the last judge of near readings.

MeCab weighs each word by the one before it. What decides an ending that is not written often
stands further off: after ぞ the sentence ends in the attributive, after こそ in the realis
(係り結び, common grammar); a final form hardly stands before a noun within a phrase; とも and ば of
the irrealis want something that is only thought of behind them; who does what describes a noun has
が (我思ふ人 waga), and a word has its customary nouns (``verse_pairs.tsv``): 虫の鳴 is naku, 鐘の鳴
is naru. The same tells what a text that marks no voicing leaves open: か or が, し or じ, こと or
ごと. So readings that cost nearly the same are held against each other once more.

>>> from inscribe.reading.verse.reader import read_verse
>>> read = read_verse("夕暮の庭の草葉に虫の鳴声こそ秋のあはれなりけれ")
>>> " ".join(word.romaji for word in read.words[6:9])
'mushi no naku'
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from itertools import pairwise, zip_longest

from inscribe import tables
from inscribe.reading.lexicon import conjugation_named
from inscribe.reading.spelling import modern_kana
from inscribe.reading.verse.scansion import Phrases
from inscribe.reading.words import OKURIGANA_LEFT_OUT, ReadWord

# In MeCab's units, set by hand on the looked-at poems.
_NOT_ITS_END = 2500  # ぞ without its attributive, こそ without its realis
_FINAL_BEFORE_NOUN = 1200  # within a phrase
_LONE_SO = 3000  # そ without the な of a prohibition
_PROHIBITED = 4500  # less, where both stand: な咲きそ, not な咲きぞ
_PAST_UNBOUND = 2500  # し of the past before と or な: 忘れじな
_SUBJECT_OF_CLAUSE = 1500  # われ before a verb that describes a noun: 我が思ふ人
_BARE_MATTER = 2800  # こと behind の or が, and no particle behind it: 花のごと
_PAST_OF_TOPIC = 3200  # し of the past before a noun, and は or も before its verb: 色には出でじ
_ENDS_IN_PAST = 1500  # a poem, without the particle that asks for it: 人は忘れじ
_LEFT_OPEN = 1500  # ぞ behind which no word is inflected
_CONCEDED = 2200  # とも where all is said as fact
_SUPPOSED = 1000  # ば of the irrealis likewise
_RUN_ON = 2000  # a verb in its final form before another: 満ち来れば
_PAIR = 1800  # a verb beside a noun it customarily goes with
_ATTRIBUTIVE, _REALIS = "連体形", "已然形"
_NOUN = "名詞"
_INFLECTED = ("動詞", "形容詞", "助動詞")
_ASKING = frozenset({"ぞ", "そ", "や", "か", "なん"})
_INTERROGATIVES = frozenset(
    {"なに", "たれ", "た", "いつ", "いず", "いかに", "いく", "など", "なぜ"}
)
_BEHIND_ENDS = ("と", "とて", "な")  # particles before which a sentence ends
_TOPICS = frozenset("はも") | {"には", "とは", "をも", "にも", "だに", "だにも", "さえ"}
_OF_THOUGHT = (
    "助動詞-ム",
    "助動詞-ラム",
    "助動詞-ケム",
    "助動詞-マシ",
    "助動詞-ジ",
    "助動詞-ベシ",
    "助動詞-マジ",
)
_CONJUNCTIVE = frozenset("いきぎしちにびみりえけげせてねべめれ")
_LINKS = frozenset("のがはもをにぞや") | {"こそ", "だに", "さえ", "のみ", "しも", "にも", "とも"}


def disagreement(words: Sequence[ReadWord], phrases: Phrases) -> int:
    """Return what a reading costs more, or less, for how its words go together."""
    firsts = {first for _, first in phrases}
    cost = _endings(words, firsts) + _finals(words, firsts) + _LONE_SO * _has_lone_so(words)
    cost += sum(_supposed(words)) + _RUN_ON * sum(_run_on(words, firsts))
    cost += _SUBJECT_OF_CLAUSE * sum(_bare_subjects(words))
    cost += _BARE_MATTER * sum(_bare_matters(words)) + _pasts(words, firsts)
    return cost - _PAIR * sum(_pairs(words)) - _PROHIBITED * _prohibits(words)


def _is_verb(word: ReadWord) -> bool:
    return word.part_of_speech.startswith("動詞")


def _bare_subjects(words: Sequence[ReadWord]) -> Iterable[bool]:
    """Yield for each われ whether it is the subject of a verb that describes a noun."""
    for word, verb, after in zip(words, words[1:], words[2:], strict=False):
        describes = _is_verb(verb) and verb.form.startswith(_ATTRIBUTIVE)
        noun = after.part_of_speech.startswith(_NOUN)
        yield word.written in ("我", "吾") and word.kana != "わが" and describes and noun


def _bare_matters(words: Sequence[ReadWord]) -> Iterable[bool]:
    """Yield for each こと of a noun whether no particle says what becomes of it."""
    for before, word, after in zip(words, words[1:], words[2:], strict=False):
        of_noun = before.kana in ("の", "が") and before.part_of_speech[:2] == "助詞"
        goes_on = after.part_of_speech.startswith(("助詞", "助動詞", "形容詞", "接尾辞", "形状詞"))
        yield word.kana == "こと" == word.written and of_noun and not goes_on


def _pasts(words: Sequence[ReadWord], firsts: Collection[int]) -> int:
    """Return what し of the past costs where a sentence ends that does not ask for it."""
    cost, asked = 0, False
    for index, (word, after) in enumerate(zip_longest(words, words[1:])):
        particle = word.part_of_speech.startswith("助詞")
        asked = asked or (particle and word.kana in _ASKING)
        if not _is_past(word):
            continue
        if after is None:
            cost += 0 if asked else _ENDS_IN_PAST
        elif after.part_of_speech.startswith("助詞"):
            cost += _PAST_UNBOUND if after.kana in _BEHIND_ENDS and not asked else 0
        elif index + 1 in firsts and _has_topic(words[max(index - 2, 0) : index]):
            cost += _PAST_OF_TOPIC
    return cost


def _has_topic(words: Sequence[ReadWord]) -> bool:
    return any(word.kana in _TOPICS and word.part_of_speech[:2] == "助詞" for word in words)


def _is_past(word: ReadWord) -> bool:
    return word.kana in ("し", "てし") and (
        "助動詞-キ" in word.conjugation or word.part_of_speech == "助動詞-連語"
    )


def _prohibits(words: Sequence[ReadWord]) -> bool:
    """Whether な and そ enclose a verb: な咲きそ."""
    for index, word in enumerate(words):
        forbids = word.kana == "な" and word.part_of_speech.startswith(("副詞", "助詞"))
        if forbids and any(map(_may_be_forbidden, words[index + 1 : index + 2])):
            return any(each.kana == "そ" for each in words[index + 2 : index + 4])
    return False


def _may_be_forbidden(word: ReadWord) -> bool:
    """Whether a word is a verb, or a noun that sounds as its conjunctive form does: 散らし."""
    deverbal = word.part_of_speech.startswith(_NOUN) and word.written[-1] in _CONJUNCTIVE
    return _is_verb(word) or deverbal


def _has_lone_so(words: Sequence[ReadWord]) -> bool:
    """Whether そ of a prohibition stands without its な: な焼きそ."""
    kana = [word.kana for word in words]
    return any(
        word.kana == "そ" and word.part_of_speech.endswith("終助詞") and "な" not in kana[:index]
        for index, word in enumerate(words)
    )


def _endings(words: Sequence[ReadWord], firsts: Collection[int]) -> int:
    """Return what it costs that sentences do not end as their particle asks."""
    due, asker, met, open_, cost = "", "", False, 0, 0
    for index, word in enumerate(words):
        after = words[index + 1] if index + 1 < len(words) else None
        if word.part_of_speech.startswith("助詞") and after is not None:
            closes = after.part_of_speech.startswith("助詞") or (
                word.kana == "か" and (index + 1 in firsts or _is_question(words, index))
            )
            asked = "" if closes else _asked_by(word)
            due, met = asked or due, met and not asked
            asker = word.kana if asked else asker
            open_ = _LEFT_OPEN if asked and asker != "か" else open_
        elif due and word.part_of_speech.startswith(_INFLECTED):
            ends = word.form.startswith((due, "命令形") if due == _REALIS else due)
            ends = ends or (due == _ATTRIBUTIVE and _sounds_attributive(word))
            if after is not None and _goes_on(word, after):
                describes = ends and after.part_of_speech.startswith(("名詞", "代名詞"))
                inside = describes and index + 1 not in firsts and not _is_thought(word)
                cost += _NOT_ITS_END if inside and asker == "か" and not met else 0
                met = met or describes
                continue
            cost += 0 if ends or met else _NOT_ITS_END
            due, met = "", False
    return cost + (open_ if due and not met else 0)


def _supposed(words: Sequence[ReadWord]) -> Iterable[int]:
    """Yield what a condition costs where all behind it is said as fact: ども, ば of the realis."""
    for index, (word, after) in enumerate(pairwise(words), start=1):
        if not after.part_of_speech.startswith("助詞-接続助詞"):
            continue
        open_ = word.note == OKURIGANA_LEFT_OUT and word.form.startswith("未然形")
        if after.kana == "とも" or (after.kana == "ば" and open_):
            fact = not any(_is_thought(later) for later in words[index + 1 :])
            yield (_CONCEDED if after.kana == "とも" else _SUPPOSED) * fact


def _is_thought(word: ReadWord) -> bool:
    thought = any(each in word.conjugation for each in _OF_THOUGHT)
    return thought or word.form.startswith("命令形") or word.kana in ("ばや", "な")


def _run_on(words: Sequence[ReadWord], firsts: Collection[int]) -> Iterable[bool]:
    """Yield for each verb that is cut short whether it ends and a verb follows in its phrase."""
    for index, (word, after) in enumerate(pairwise(words), start=1):
        ends = word.form.startswith((_ATTRIBUTIVE, _REALIS, "終止形"))
        cut = word.note == OKURIGANA_LEFT_OUT and ends and _is_verb(word)
        yield cut and index not in firsts and _is_verb(after)


def _asked_by(particle: ReadWord) -> str:
    if particle.kana.endswith("こそ"):
        return _REALIS
    if particle.kana == "か":
        return _ATTRIBUTIVE
    of_sentence = particle.part_of_speech.endswith("係助詞")  # そ is the old form of ぞ
    return (
        _ATTRIBUTIVE
        if particle.kana.endswith("ぞ") or (particle.kana == "そ" and of_sentence)
        else ""
    )


def _is_question(words: Sequence[ReadWord], index: int) -> bool:
    """Whether か asks for no ending: 何か, and 夢か現か."""
    again = any(word.kana == "か" for word in words[index + 2 : index + 4])
    return again or words[index - 1].kana in _INTERROGATIVES


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
    alike = (
        "四段",
        "一段",
        "助動詞-ム",
        "助動詞-ラム",
        "助動詞-ケム",
        "助動詞-ジ",
        "助動詞-ラシ",
        "助動詞-マシ",
    )
    return word.form.startswith("終止形") and any(each in word.conjugation for each in alike)


def _pairs(words: Sequence[ReadWord]) -> Iterable[bool]:
    """Yield for each verb whether one of its customary nouns stands before or after it."""
    for index, word in enumerate(words):
        if word.part_of_speech.startswith(("動詞", _NOUN)):
            yield any(_goes_with(word, noun) for noun in _nouns_beside(words, index))


def _nouns_beside(words: Sequence[ReadWord], verb: int) -> Iterable[ReadWord]:
    if verb and words[verb - 1].part_of_speech.startswith("名詞"):
        yield words[verb - 1]
    elif verb > 1 and words[verb - 1].kana in _LINKS:
        yield words[verb - 2]
    if words[verb].form.startswith(_ATTRIBUTIVE) and verb + 1 < len(words):
        yield words[verb + 1]


def _goes_with(verb: ReadWord, noun: ReadWord) -> bool:
    key = _NOUN if verb.part_of_speech.startswith(_NOUN) else verb.conjugation
    stems = _customary().get(key, ())
    return any(verb.kana.startswith(stem) and noun.kana in nouns for stem, nouns in stems)


@tables.cached()
def _customary() -> dict[str, list[tuple[str, frozenset[str]]]]:
    """Return stems in current kana with their nouns, by UniDic's conjugation."""
    found: dict[str, list[tuple[str, frozenset[str]]]] = {}
    for row in tables.rows("verse_pairs"):
        nouns = frozenset(modern_kana(noun, "名詞") for noun in tables.listed(row["nouns"]))
        stem = modern_kana(row["historical"], "動詞") if row["historical"] else ""
        of_noun = row["class"] == _NOUN
        key = _NOUN if of_noun else f"文語{conjugation_named(row['class'])}"
        found.setdefault(key, []).append((stem, nouns))
    return found
