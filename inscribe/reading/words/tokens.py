"""Words as read, and the ranked readings they make up, each with its chance."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from inscribe import notebook
from inscribe.terms import SignIndex

if TYPE_CHECKING:
    from inscribe.keys import AlternativeKeys, TokenKeys


@dataclass(frozen=True, slots=True)
class Token:
    """One word as read, and the signs it was read from.

    >>> from inscribe import read_text
    >>> words = read_text("花の色").proposals[0].tokens
    >>> [(word.surface, word.romaji, word.first) for word in words]
    [('花', 'hana', 0), ('の', 'no', 1), ('色', 'iro', 2)]
    """

    surface: str  # as carved
    normalised: str  # in current forms, spelling as carved
    kana: str  # current kana spelling, hiragana
    romaji: str  # modified Hepburn with macrons
    first: SignIndex  # index of its first sign
    last: SignIndex  # index of its last sign
    modern: str = ""  # current forms and current kana spelling
    part_of_speech: str = ""  # UniDic's terms
    lemma: str = ""
    word_origin: str = ""  # UniDic's goshu: 和, 漢, 固, ...
    gloss: str = ""
    reason: str = ""  # why it is read so, where that needs saying

    def to_dict(self, chance: float) -> TokenKeys:
        """Return it as printed in JSON, with the chance that it is read right."""
        from inscribe.reading.words.grammar import grammar_of

        return {
            "surface": self.surface,
            "normalised": self.normalised,
            "kana": self.kana,
            "romaji": self.romaji,
            "signs": [self.first, self.last],
            "gloss": self.gloss,
            "grammar": grammar_of(self.part_of_speech, self.lemma),
            "chance": round(chance, 3),
        }


class Chances(NamedTuple):
    """The chance that a reading is right, of the whole and of each of its tokens (0 to 1)."""

    whole: float
    words: tuple[float, ...] = ()


class Weighing:
    """Chances that are worked out when they are first asked for, and once."""

    __slots__ = ("_known", "_make")

    def __init__(self, given: Chances | Callable[[], Chances]) -> None:
        self._known = given if isinstance(given, Chances) else None
        self._make = given

    @property
    def chances(self) -> Chances:
        """What was weighed."""
        if self._known is None:
            assert callable(self._make)
            self._known = self._make()
        return self._known

    def __reduce__(self) -> tuple[type[Weighing], tuple[Chances]]:
        return Weighing, (self.chances,)


UNWEIGHED = Weighing(Chances(1.0))  # nobody has said what a reading's chance is


@dataclass(frozen=True, slots=True)
class Proposal:
    """One reading of the whole text, with its score (higher is better) and its reasons.

    >>> from inscribe import read_text
    >>> read_text("於東都應需造之").proposals[0].kana
    'とうと に おいて もとめ に おうじて これ を つくる'
    """

    tokens: tuple[Token, ...]
    romaji: str
    score: float
    reasons: tuple[str, ...] = ()
    phrases: tuple[tuple[int, int], ...] = ()  # (morae, index of the phrase's first token)
    weighing: Weighing = field(default=UNWEIGHED, compare=False, repr=False)

    def __repr__(self) -> str:
        return f"<Proposal: {notebook.short(self.romaji)}>"

    @property
    def chances(self) -> Chances:
        """The chance that it is right, of the whole and of each word."""
        return self.weighing.chances

    @property
    def chance(self) -> float:
        """The chance that it is right as a whole (0 to 1)."""
        return self.weighing.chances.whole

    def weighed(self, chances: Chances | Callable[[], Chances]) -> Proposal:
        """Return the same reading with its chances, or with what works them out."""
        return replace(self, weighing=Weighing(chances))

    def words_weighed(self) -> Iterator[tuple[Token, float]]:
        """Yield each word with its chance; that of the whole where words have none of their own."""
        words = self.chances.words
        each = len(words) == len(self.tokens)
        for at, token in enumerate(self.tokens):
            yield token, words[at] if each else self.chance

    @property
    def kana(self) -> str:
        """The words in kana, divided as they are in Latin letters: what is joined there is here."""
        from inscribe.reading.spelling import KanaWord, separator

        said = [token for token in self.tokens if token.kana]
        words = [KanaWord(token.kana, token.part_of_speech) for token in said]
        line = said[0].kana if said else ""
        for before, after in pairwise(words):
            line += (" " if separator(before, after) == " " else "") + after.kana
        return line

    def as_alternative(self) -> AlternativeKeys:
        """Return it as printed in JSON where another reading stands first."""
        return {
            "romaji": self.romaji,
            "kana": self.kana,
            "reason": "; ".join(self.reasons),
            "chance": round(self.chance, 3),
        }
