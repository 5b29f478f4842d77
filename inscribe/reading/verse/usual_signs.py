"""Signs in which no word of verse is written, as the forms of the same character in which one is.

What the tables of forms relate but do not fold, since each is printed as it is (啼 and 嗁), may
still be all that verse knows of a word.

>>> from inscribe.reading.verse.tagger import verse_words
>>> in_usual_signs("嗁鳥の声", verse_words("嗁鳥の声"))
'啼鳥の声'
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from inscribe import tables
from inscribe.reading.verse import tagger
from inscribe.reading.verse.readings import VerseReading
from inscribe.reading.words import ReadWord, rewritten
from inscribe.scripts import is_kanji


def in_usual_signs(text: str, words: Sequence[ReadWord]) -> str:
    """Return a poem with other forms for the kanji that stand in words no dictionary has."""
    unknown = [(word, end) for word, end in zip(words, _ends(words), strict=True) if not word.known]
    for word, end in unknown:
        usual = "".join([_usual(sign) if is_kanji(sign) else sign for sign in word.written])
        text = text[: end - word.length] + usual + text[end:]
    return text


def as_written(found: VerseReading, text: str) -> VerseReading:
    """Return the reading with its words written as in ``text``."""
    words = [
        rewritten(word, text[end - word.length : end], word.modern)
        for word, end in zip(found.words, _ends(found.words), strict=True)
    ]
    return found._replace(words=words)


def _ends(words: Sequence[ReadWord]) -> list[int]:
    return list(accumulate([word.length for word in words]))


@tables.cached()
def _usual(sign: str) -> str:
    """Return the sign if verse has a word that is written so, else a form of it with which it has.

    >>> _usual("嗁"), _usual("鳥")
    ('啼', '鳥')
    """
    from inscribe.forms import related, same_character

    if _begins_a_word(sign):
        return sign
    forms = [other for other in related(sign) if same_character(sign, other)]
    return next((other for other in forms if _begins_a_word(other)), sign)


def _begins_a_word(sign: str) -> bool:
    return any(word.known for word in tagger.homographs_of(sign).every)
