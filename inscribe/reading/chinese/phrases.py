"""Phrases of a Chinese line while it is put into Japanese order: what is said, and how it may end.

A phrase is a noun, an adverbial, a predicate whose verb is not inflected yet, or a clause. Every
word said remembers its sign; what has no sign of its own (を, に, て) is said with the word before.
"""

from __future__ import annotations

from typing import NamedTuple

from inscribe.reading.chinese.sign_words import SignWord, inflected

NOUN, ADVERBIAL, PREDICATE, CLAUSE, GENITIVE = (
    "noun",
    "adverbial",
    "predicate",
    "clause",
    "genitive",
)
_WITH_TOPIC = ("ズ",)
_LIKENING = ("如", "若", "猶")
_PEOPLE = ("者", "人", "士", "君子", "民")
_VERB, _AUXILIARY = "動詞-一般", "助動詞"


class Said(NamedTuple):
    """A word as it is said: the place of its first sign, its signs, its kana, what it is."""

    first: int
    written: str
    kana: str
    part_of_speech: str = "名詞-普通名詞-一般"

    def followed_by(self, kana: str, gap: str = " ") -> Said:
        """Return the word with something said after it that has no sign of its own."""
        return self._replace(kana=f"{self.kana}{gap}{kana}") if kana else self


class Head(NamedTuple):
    """The verb of a predicate: its sign, or none where the sign is said before (未 いまだ…ず)."""

    first: int
    written: str
    word: SignWord


class Phrase(NamedTuple):
    """A stretch of a line, read.

    ``cost`` is lower for likelier readings; ``subject`` is the number of words of the subject of
    a clause; ``is_place`` tells nouns of place; ``is_linked`` that a verb leads to the last one.
    """

    kind: str
    cost: float
    words: tuple[Said, ...]
    head: Head | None = None
    subject: int = 0
    is_place: bool = False
    is_linked: bool = False

    @property
    def likens(self) -> bool:
        """Whether it says that something is like something: 如風."""
        return self.head is not None and self.head.written in ("如", "若") and bool(self.words)

    def with_topic(self) -> Phrase:
        """Return a clause with は after its subject, if it denies, likens or tells of people."""
        if not (self.head and self.subject) or self.is_linked:
            return self
        likens = self.head.written in _LIKENING or self.head.word.conjugation in _WITH_TOPIC
        subject = self.words[: self.subject]
        of_something = any(word.written == "之" for word in subject)
        if not (likens or of_something or subject[-1].written.endswith(_PEOPLE)):
            return self
        words = followed(self.words[: self.subject], "は") + self.words[self.subject :]
        return self._replace(words=words, subject=0)

    def ending(self, form: str) -> tuple[Said, ...]:
        """Return the words with the verb in a form; those of a noun as they are."""
        if self.head is None:
            return self.words
        words = self._with_marked_subject() if form == "連体形" else self.words
        first, written, word = self.head
        kana = inflected(word, form)
        if not written:
            joined = word.conjugation in ("ズ", "シム")
            return (*words[:-1], words[-1].followed_by(kana, "" if joined else " "))
        kind = _AUXILIARY if word.conjugation == "ズ" and not word.stem else _VERB
        return (*words, Said(first, written, kana, kind))

    def _with_marked_subject(self) -> tuple[Said, ...]:
        """Return the words with の after the subject, as before a noun: 雲の起こる時."""
        if not self.subject:
            return self.words
        return followed(self.words[: self.subject], "の") + self.words[self.subject :]

    @property
    def said(self) -> tuple[Said, ...]:
        """Its words in the order they are said, the verb without its kana."""
        if self.head is None or not self.head.written:
            return self.words
        return (*self.words, Said(self.head.first, self.head.written, ""))


def followed(words: tuple[Said, ...], kana: str) -> tuple[Said, ...]:
    """Return words with something said after the last that has no sign of its own."""
    return (*words[:-1], words[-1].followed_by(kana)) if kana else words
