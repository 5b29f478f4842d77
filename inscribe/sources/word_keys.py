"""By what words are found: their sound, and the stem that the forms of one word share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.reading.spelling import is_kana

if TYPE_CHECKING:
    from inscribe.reading.words import Token

_ADDED = frozenset("のにをと")
_HIRAGANA = "".join(map(chr, range(0x3041, 0x3097)))


def said_of_word(word: Token) -> str:
    """Return how a word is said, without particles that reading adds to its characters (の 図)."""
    parts = word.kana.split(" ")
    if len(parts) == 2 and not any(map(is_kana, word.surface)):
        parts = [part for part in parts if part not in _ADDED] or parts
    return "".join(parts)


@tables.cached(16384)
def stem_key(lemma: str, part_of_speech: str) -> str:
    """Return the stem of a word that inflects, by which its forms are known; else nothing.

    >>> stem_key("思う", "動詞-一般") == stem_key("思", "動詞-一般") == "思"
    True
    >>> stem_key("花", "名詞-普通名詞-一般")
    ''
    """
    if not part_of_speech.startswith(("動詞", "形容詞")):
        return ""
    return lemma.rstrip(_HIRAGANA) or lemma


@tables.cached(16384)
def sound_key(kana: str) -> str:
    """Return kana as the library compares sounds: spellings of one sound fall together.

    >>> sound_key("きょう") == sound_key("けふ") == sound_key("きやう")
    True
    """
    from inscribe.sources.keys import letters, run_together

    return run_together(letters(kana))
