"""Whether the words of a poem agree over more than two of them: the last judge of near readings.

MeCab weighs each word by the one before it. What decides an ending that is not written often
stands further off, or hangs on where a phrase ends: a final form hardly stands before a noun
within a phrase; after ぞ the sentence ends in the attributive, after こそ in the realis (係り結び);
を goes before a transitive verb; 虫の鳴 is naku, 鐘の鳴 naru. Each such trait of a reading has a
weight (``verse_agreement.tsv``, fitted on printed poems whose endings were left out by rule), and
readings that cost nearly the same are held against each other once more.

>>> from inscribe.reading.verse.reader import read_verse
>>> read = read_verse("夕暮の庭の草葉に虫の鳴声こそ秋のあはれなりけれ")
>>> " ".join(word.romaji for word in read.words[6:9])
'mushi no naku'
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.lexicon import conjugation_named
from inscribe.reading.spelling import modern_kana
from inscribe.reading.verse.scansion import Phrases
from inscribe.reading.verse.transitivity import transitivity
from inscribe.reading.words import OKURIGANA_LEFT_OUT, VOICING_NOT_MARKED, ReadWord

_INFLECTED = ("動詞", "形容詞", "助動詞")
_FORMS = {"未然": "未", "連用": "用", "終止": "終", "連体": "体", "已然": "已", "命令": "令"}
_EITHER = "終体"  # a form that is final and attributive: 思ふ, 見る, む
_ALIKE = ("四段", "一段", "助動詞-ム", "助動詞-ラム", "助動詞-ケム", "助動詞-ジ", "助動詞-ラシ")
_ASKING = ("こそ", "ぞ", "なん", "や", "か")
_LINKS = frozenset("のがはもをにぞや") | {"こそ", "だに", "さえ", "のみ", "しも", "にも", "とも"}
_NOUNS = ("名詞", "代名詞")


def disagreement(words: Sequence[ReadWord], phrases: Phrases) -> int:
    """Return what a reading costs more, or less, for how its words go together."""
    weights = _weights()
    return sum(weights.get(trait, 0) for trait in traits(words, phrases))


def traits(words: Sequence[ReadWord], phrases: Phrases) -> Iterator[str]:
    """Yield the traits of a reading that have weights, each as often as it is there.

    ``動~終 >名``: a verb without its okurigana, final, before a noun; ``>|`` where a phrase ends
    between them; ``ぞ: 終`` the end that a particle's sentence has; ``を 他`` a particle before a
    transitive verb; ``pair`` a verb beside a noun it customarily goes with.
    """
    firsts = {first for _, first in phrases}
    parts = [_part_of(word) for word in words]
    last = len(words) - 1
    for index, part in enumerate(parts):
        if part.voiced:
            yield part.voiced
        if not part.form:
            continue
        follows = parts[index + 1].follows if index < last else "。"
        yield f"{part.before}{'|' if index + 1 in firsts else ''}{follows}"
        if part.left_out:
            yield part.left_out
        if part.told:
            if index and parts[index - 1].particle:
                yield f"{words[index - 1].kana} {part.told}"
            if any(_goes_with(words[index], noun) for noun in _nouns_beside(words, index)):
                yield "pair"
    yield from _ends(words, parts)
    if _has_lone_so(words):
        yield "lone そ"


class _Part(NamedTuple):
    """What the traits of a poem need to know of a word, whatever stands around it."""

    form: str  # in one sign; empty of a word that is not inflected
    before: str  # what it is before another word
    follows: str  # what it is behind another word
    left_out: str  # its conjugation and form, where its okurigana are left out
    voiced: str  # its kind, where its voicing is not marked
    told: str  # of a verb whether it is transitive
    particle: bool
    asks: str  # the particle that asks for a form


@tables.cached(16384)
def _part_of(word: ReadWord) -> _Part:
    pos = word.part_of_speech
    inflected, particle = pos.startswith(_INFLECTED), pos.startswith("助詞")
    form = _form(word) if inflected else ""
    short = word.note == OKURIGANA_LEFT_OUT
    kind = word.conjugation.rpartition("-")[2] if pos.startswith("助動詞") else pos[:1]
    return _Part(
        form,
        f"{kind}{'~' if short else ''}{form} >",
        _follows(word),
        f"~ {word.conjugation[2:4]}{form}" if short and inflected else "",
        f"voiced {pos[:2]}" if word.note == VOICING_NOT_MARKED else "",
        transitivity(word) if pos.startswith("動詞") else "",
        particle,
        next((each for each in _ASKING if word.kana.endswith(each)), "") if particle else "",
    )


def _form(word: ReadWord) -> str:
    """Return a word's form in one sign; two where final and attributive sound alike."""
    form = _FORMS.get(word.form[:2], "他")
    if form in _EITHER and any(each in word.conjugation for each in _ALIKE):
        return _EITHER
    return form


def _follows(word: ReadWord) -> str:
    """Return what a word is behind another, as far as the other's form may hang on it."""
    if word.part_of_speech.startswith("助詞"):
        return word.kana
    if word.part_of_speech.startswith("助動詞"):
        return word.conjugation.rpartition("-")[2]
    return "名" if word.part_of_speech.startswith(_NOUNS) else word.part_of_speech[:1]


def _ends(words: Sequence[ReadWord], parts: Sequence[_Part]) -> Iterator[str]:
    """Yield for each particle that asks for a form the form in which its sentence ends."""
    due = ""
    for index, part in enumerate(parts):
        after = words[index + 1] if index + 1 < len(words) else None
        if part.particle and after is not None:
            due = part.asks or due
        elif due and part.form:
            if after is not None and _goes_on(words[index], after):
                continue
            yield f"{due}: {part.form}"
            due = ""


def _goes_on(word: ReadWord, after: ReadWord) -> bool:
    """Whether the sentence goes on after an inflected word."""
    if after.part_of_speech.startswith(("助動詞", "助詞-接続", "接尾辞", "動詞")):
        return True
    if after.part_of_speech.startswith("助詞"):
        return after.kana not in ("と", "とて")
    return word.form.startswith(("連体形", "連用形", "語幹"))


def _has_lone_so(words: Sequence[ReadWord]) -> bool:
    """Whether そ of a prohibition stands without its な: な焼きそ."""
    kana = [word.kana for word in words]
    return any(
        word.kana == "そ" and word.part_of_speech.endswith("終助詞") and "な" not in kana[:index]
        for index, word in enumerate(words)
    )


def _nouns_beside(words: Sequence[ReadWord], verb: int) -> Iterable[ReadWord]:
    if verb and words[verb - 1].part_of_speech.startswith("名詞"):
        yield words[verb - 1]
    elif verb > 1 and words[verb - 1].kana in _LINKS:
        yield words[verb - 2]
    if words[verb].form.startswith("連体形") and verb + 1 < len(words):
        yield words[verb + 1]


def _goes_with(verb: ReadWord, noun: ReadWord) -> bool:
    stems = _customary().get(verb.conjugation, ())
    return any(verb.kana.startswith(stem) and noun.kana in nouns for stem, nouns in stems)


@tables.cached()
def _customary() -> dict[str, list[tuple[str, Collection[str]]]]:
    """Return stems in current kana with their nouns, by UniDic's conjugation."""
    found: dict[str, list[tuple[str, Collection[str]]]] = {}
    for row in tables.rows("verse_pairs"):
        nouns = frozenset(modern_kana(noun, "名詞") for noun in tables.listed(row["nouns"]))
        stem = modern_kana(row["historical"], "動詞") if row["historical"] else ""
        found.setdefault(f"文語{conjugation_named(row['class'])}", []).append((stem, nouns))
    return found


@tables.cached()
def _weights() -> dict[str, int]:
    return {row["trait"]: int(row["cost"]) for row in tables.rows("verse_agreement")}
