"""Where the phrases of a text begin: a noun or verb with the particles and endings behind it.

An edition prints variants by such phrases (文節), not by signs: 音にぞ ] 音に. The words
are the reading stage's. Rules (common practice, school grammar): particles, auxiliaries and
suffixes hang on the word before them, prefixes on the word behind; a verb hangs on the verb before
it where that stands in the form that joins verbs (降りしきぬ). A text without kana has nothing that
hangs on its words; in it each sign is a place where a variant may begin.

>>> from inscribe import notation
>>> sorted(phrase_ends(notation.parse("秋来ぬと目にはさやかに見えねども風の音にぞおどろかれぬる")))
[0, 1, 4, 7, 11, 16, 18, 21, 28]
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe.reading import spelling

if TYPE_CHECKING:
    from inscribe.reading import Token
    from inscribe.signs import Transcription

HANGING = ("助詞", "助動詞", "接尾辞")
MARK = "補助記号"
VERB = "動詞"
PREFIX = "接頭辞"
JOINING = (*spelling.ROWS[1], *spelling.ROWS[3])  # a verb that joins another ends in い or え


def phrase_ends(text: Transcription) -> frozenset[int]:
    """Return the signs before which a phrase begins or ends, and the end of the text."""
    from inscribe import reading

    ends = {0, len(text.signs)}
    if not any(spelling.is_kana(sign.text) for sign in text.signs if sign.text):
        return frozenset(range(len(text.signs) + 1))
    if text.signs:
        tokens = sorted(reading.read(text).proposals[0].tokens, key=lambda each: each.first)
        ends.update(_begun(tokens))
    return frozenset(ends)


def _begun(tokens: Sequence[Token]) -> Iterator[int]:
    before: Token | None = None
    for token in tokens:
        if before is None or not _hangs(token, before):
            yield token.first
        before = token


def _hangs(token: Token, before: Token) -> bool:
    """Whether a word belongs to the phrase of the word before it."""
    part = token.part_of_speech
    if MARK in (part[:4], before.part_of_speech[:4]):
        return False
    if part.startswith(HANGING) or before.part_of_speech.startswith(PREFIX):
        return True
    return part.startswith(VERB) and before.part_of_speech.startswith(VERB) and _joins(before)


def _joins(verb: Token) -> bool:
    kana = verb.kana.replace(" ", "")
    return bool(kana) and spelling.letter(kana[-1]) in JOINING
