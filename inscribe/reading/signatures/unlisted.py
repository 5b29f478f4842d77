"""Words of signatures that no table has, told by where they stand and read by rule.

A verb before 之 is read with its Chinese sound and す (彰之 kore o shōsu). A noun that 為, 依, 応,
以, 於 or 倣 governs is read as the dictionary of words has it.

>>> [(word.text, word.kind, word.kana) for word in unlisted_words("綾国彰之", 2)]
[('彰', 'transitive', 'しょうす')]
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.forms import SIDDHAM, is_siddham, readings, seed
from inscribe.reading.names import surnames
from inscribe.reading.signatures.names import is_kanji
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import SignatureWord, joined, words_of

_OBJECTS = frozenset("之是焉此")
_VERB = {1: 2.4, 2: 2.8}  # prices by length
_GOVERNED = {
    "purpose": ("patron", ""),
    "patron": ("closer", "patron"),
    "means": ("material", ""),
    "gift": ("patron", ""),
    "place": ("residence", ""),
}
_NOUN = 1.5
_SEED = 0.3
_LAST_OF_THE_FIRST_PLANE = "\uffff"
_NOUNS = (4, 3, 2)  # lengths
_FARTHEST_WISH = 9  # 応同藩某某君之嘱: signs from the noun to the wish
_COMMON = "名詞-普通名詞"
_DOING = "名詞-普通名詞-サ変可能"  # with す a verb: 調製, 転写
_VERB_KNOWN = 1.2
_NOUNS_OF_PICTURES = ("名詞-普通名詞", "名詞-固有名詞")
_PICTURE, _WHAT = "図", "所"
_BEGIN_FORMULAS = frozenset({"opener", "verb", "adverb", "residence"})
_LONGEST_SUBJECT = 7
_SUBJECT = 1.9
_LINKED = frozenset(
    {"closer", "remark", "relation", "patron", "count", "place_suffix", "poem_word"}
)
_KNOWN_KINDS = frozenset(
    {"patron", "closer", "material", "model_subject", "subject", "honorific", "place", "city"}
)
# A stretch that ends in such a word is no verb of its own: 君之, 某刻之.
_NO_END_OF_VERBS = frozenset({"verb", "transitive", "honorific", "relation", "place_suffix"})
_NOUNS_THAT_DO = frozenset({"remark", "patron", "heading"})  # 拝領之: with す they are verbs
_AT_MOST = 5_000


def unlisted_words(text: str, position: int) -> Iterator[SignatureWord]:
    """Yield the words that may begin at a place though no table has them, with their prices."""
    for length in _VERB:
        end = position + length
        if text[end : end + 1] in _OBJECTS and not _goes_on(text, end):
            yield from _verbs(text[position:end], begins=not position)
    if position:
        yield from _nouns(text, position)
    yield from _pictures(text, position)
    if text[position] > _LAST_OF_THE_FIRST_PLANE:
        yield from _seeds(text, position)


def _seeds(text: str, position: int) -> Iterator[SignatureWord]:
    """Yield the seed syllable in Siddham letters that begins at a place."""
    letters = SIDDHAM.match(text, position)
    if letters and not (position and is_siddham(text[position - 1])):
        found = seed(letters.group())
        if found.kana:
            yield SignatureWord(
                found.written, "invocation", found.kana, gloss=found.gloss, cost=_SEED
            )


def _goes_on(text: str, at: int) -> bool:
    """Return whether a 之 links what is before it with a word: 之図, 之需, 之所持."""
    rest = text[at + 1 : at + 4]
    if not rest:
        return False
    following = (word for end in range(1, len(rest) + 1) for word in words_of(rest[:end]))
    return bool(words_of(text[at : at + 2])) or any(w.kind in _LINKED for w in following)


@tables.cached(_AT_MOST)
def _verbs(written: str, *, begins: bool) -> tuple[SignatureWord, ...]:
    if not all(map(is_kanji, written)) or "之" in written:
        return ()
    known = {word.kind for word in words_of(written)}
    if not known <= _NOUNS_THAT_DO:
        return ()
    if kana := _common_noun(written, _DOING):
        return (SignatureWord(written, "transitive", f"{kana}す", f"{kana}す", cost=_VERB_KNOWN),)
    if begins or known or any(word.kind in _NO_END_OF_VERBS for word in words_of(written[-1])):
        return ()
    sounds = [readings(sign).on for sign in written]
    if not all(sounds):
        return ()
    kana = hiragana(sounds[0][0])
    for sound in sounds[1:]:
        kana = joined(kana, hiragana(sound[0]))
    return (
        SignatureWord(written, "transitive", f"{kana}す", f"{kana}す", cost=_VERB[len(written)]),
    )


def _nouns(text: str, position: int) -> Iterator[SignatureWord]:
    """Yield the longest noun of the dictionary that an opener before it may govern."""
    families = [word.family for word in words_of(text[position - 1]) if word.kind == "opener"]
    wanted = [_GOVERNED[family] for family in families if family in _GOVERNED]
    if "patron" in families and _wish_follows(text, position):
        wanted = [_GOVERNED["purpose"]]
    begins_closer = any(word.kind == "closer" for word in words_of(text[position]))
    if not wanted or begins_closer:
        return
    for length in _NOUNS:
        noun = text[position : position + length]
        if len(noun) < length or any(word.kind in _KNOWN_KINDS for word in words_of(noun)):
            continue
        if surnames(noun) and _is_honoured(text, position + length):
            return
        if kana := _common_noun(noun):
            for kind, family in dict.fromkeys(wanted):
                yield SignatureWord(noun, kind, kana, family=family, cost=_NOUN)
            return


def _is_honoured(text: str, at: int) -> bool:
    """Return whether 家, 君 or another word of respect stands at a place: 為鞍掛家, a family."""
    following = filter(None, (text[at : at + 1], text[at : at + 2]))
    return any(word.kind == "honorific" for each in following for word in words_of(each))


def _wish_follows(text: str, position: int) -> bool:
    """Return whether a wish follows a noun, so that it is who wished: 応諸生之需."""
    for at in range(position + min(_NOUNS), min(position + _FARTHEST_WISH, len(text))):
        closers = (word for end in (1, 2) for word in words_of(text[at : at + end]))
        if any(word.kind == "closer" and word.family == "patron" for word in closers):
            return True
    return False


def _pictures(text: str, position: int) -> Iterator[SignatureWord]:
    """Yield what a picture may be of: the 松鶴 of 松鶴図, all of it up to 図."""
    end = text.find(_PICTURE, position + 2, position + _LONGEST_SUBJECT + 2)
    if end < 0 or (position and not _may_begin(text, position)) or _draws(text, end):
        return
    subject = text[position:end].removesuffix("之")
    if len(subject) > 1 and (kana := _pictured(subject)):
        yield SignatureWord(subject, "subject", kana, cost=_SUBJECT)


def _draws(text: str, at: int) -> bool:
    """Return whether 図 is what somebody did, and no picture: 図之, 図ス, 図案, 所図."""
    if text[at + 1 :] in _OBJECTS or text[at - 1] == _WHAT:
        return True
    words = (word for end in (2, 3) for word in words_of(text[at : at + end]))
    return any(word.kind in ("verb", "transitive") and len(word.text) > 1 for word in words)


def _may_begin(text: str, position: int) -> bool:
    """Return whether a subject may begin within a text: after a poet or another person named."""
    return any(
        word.kind in ("poet", "subject")
        for start in range(max(0, position - 4), position)
        for word in words_of(text[start:position])
    )


@tables.cached(_AT_MOST)
def _pictured(written: str) -> str:
    """Return how a subject is read: by the dictionary's nouns, else by its Chinese sounds."""
    if not all(map(is_kanji, written)) or any(w.kind == "subject" for w in words_of(written)):
        return ""
    begins_formula = any(word.kind in _BEGIN_FORMULAS for word in words_of(written[0]))
    if begins_formula or any(surnames(written[:end]) for end in (2, 3) if end < len(written)):
        return ""  # 模某図, and 図 as the verb of a painter named
    from inscribe.reading.mecab import unidic_words

    found = unidic_words(written)
    nouns = [w for w in found if w.known and w.part_of_speech.startswith(_NOUNS_OF_PICTURES)]
    if len(nouns) == len(found) < len(written):
        return " ".join(hiragana(word.kana) for word in found)
    sounds = [readings(sign).on for sign in written]
    if len(written) not in (2, 4) or not all(sounds):
        return ""
    kana = [hiragana(sound[0]) for sound in sounds]
    return " ".join(joined(kana[at], kana[at + 1]) for at in range(0, len(kana), 2))


@tables.cached(_AT_MOST)
def _common_noun(written: str, kind: str = _COMMON) -> str:
    """Return the reading of what is one common noun of the dictionary, else nothing."""
    if not all(map(is_kanji, written)):
        return ""
    from inscribe.reading.mecab import unidic_words

    found = unidic_words(written)
    one = len(found) == 1 and found[0].known and found[0].part_of_speech.startswith(kind)
    return hiragana(found[0].kana) if one else ""
