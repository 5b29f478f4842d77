"""Words of signatures that no table has, told by where they stand and read by rule.

A verb before 之 is read with its Chinese sound and す (篆之 kore o tensu). A noun that 為, 依, 応,
以 or 倣 governs is read as the dictionary of words has it.

>>> [(word.text, word.kind, word.kana) for word in unlisted_words("綾国篆之", 2)]
[('篆', 'transitive', 'てんす')]
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.forms import readings
from inscribe.reading.signatures.names import is_kanji
from inscribe.reading.spelling import hiragana
from inscribe.reading.words import Word, joined, words_of

_OBJECTS = frozenset("之是焉此")
_VERB = {1: 2.4, 2: 2.8}  # prices by length
_GOVERNED = {
    "purpose": ("patron", ""),
    "patron": ("closer", "patron"),
    "means": ("material", ""),
    "gift": ("patron", ""),
}
_NOUN = 1.5
_NOUNS = (4, 3, 2)  # lengths
_COMMON = "名詞-普通名詞"
_KNOWN_KINDS = frozenset({"patron", "closer", "material", "model_subject", "subject", "honorific"})
# A stretch that ends in such a word is no verb of its own: 君之, 某刻之.
_NO_END_OF_VERBS = frozenset({"verb", "transitive", "honorific", "relation", "place_suffix"})
_AT_MOST = 5_000


def unlisted_words(text: str, position: int) -> Iterator[Word]:
    """Yield the words that may begin at a place though no table has them, with their prices."""
    if position:
        for length in _VERB:
            end = position + length
            if text[end : end + 1] in _OBJECTS and not _goes_on(text[end : end + 2]):
                yield from _verbs(text[position:end])
        yield from _nouns(text, position)


def _goes_on(text: str) -> bool:
    """Return whether 之 and the sign after it are a word, as 之図 and 之需 are, or what 需 closes."""
    if len(text) < 2:
        return False
    return bool(words_of(text)) or any(word.kind == "closer" for word in words_of(text[1]))


@tables.cached(_AT_MOST)
def _verbs(written: str) -> tuple[Word, ...]:
    if not all(map(is_kanji, written)) or "之" in written:
        return ()
    last = words_of(written[-1])
    if words_of(written) or any(word.kind in _NO_END_OF_VERBS for word in last):
        return ()
    sounds = [readings(sign).on for sign in written]
    if not all(sounds):
        return ()
    kana = hiragana(sounds[0][0])
    for sound in sounds[1:]:
        kana = joined(kana, hiragana(sound[0]))
    return (Word(written, "transitive", f"{kana}す", f"{kana}す", cost=_VERB[len(written)]),)


def _nouns(text: str, position: int) -> Iterator[Word]:
    """Yield the longest noun of the dictionary that an opener before it may govern."""
    families = [word.family for word in words_of(text[position - 1]) if word.kind == "opener"]
    wanted = [_GOVERNED[family] for family in families if family in _GOVERNED]
    begins_closer = any(word.kind == "closer" for word in words_of(text[position]))
    if not wanted or begins_closer:
        return
    for length in _NOUNS:
        noun = text[position : position + length]
        if len(noun) < length or any(word.kind in _KNOWN_KINDS for word in words_of(noun)):
            continue
        if kana := _common_noun(noun):
            for kind, family in dict.fromkeys(wanted):
                yield Word(noun, kind, kana, family=family, cost=_NOUN)
            return


@tables.cached(_AT_MOST)
def _common_noun(written: str) -> str:
    """Return the reading of what is one common noun of the dictionary, else nothing."""
    if not all(map(is_kanji, written)):
        return ""
    from inscribe.reading.mecab import unidic_words

    found = unidic_words(written)
    one = len(found) == 1 and found[0].known and found[0].part_of_speech.startswith(_COMMON)
    return hiragana(found[0].kana) if one else ""
