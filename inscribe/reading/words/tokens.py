"""What the reading stage hands on: tokens, ranked proposals, and the whole interpretation."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import pairwise
from typing import TYPE_CHECKING, Literal, NamedTuple

from inscribe.late import Late

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.forms import Change
    from inscribe.reading.words.naming import MayName

Register = Literal["verse", "signature", "prose"]
Kind = Literal["verse", "prose", "chinese", "heading", "signature", "date", "dedication", "seal"]
Role = Literal["composed", "wrote", "carved", "ordered"]

CANNOT_BE_READ = "cannot be read"  # why a worn sign is a doubt


class Token(NamedTuple):
    """One word as read, and the signs it was read from."""

    surface: str  # as carved
    normalised: str  # in current forms, spelling as carved
    kana: str  # current kana spelling, hiragana
    romaji: str  # modified Hepburn with macrons
    first: int  # index of its first sign
    last: int  # index of its last sign
    modern: str = ""  # current forms and current kana spelling
    part_of_speech: str = ""  # UniDic's terms
    lemma: str = ""
    word_origin: str = ""  # UniDic's goshu: 和, 漢, 固, ...
    gloss: str = ""
    reason: str = ""  # why it is read so, where that needs saying


Tokens = tuple[Token, ...]


class Proposal(Late):
    """One reading of the whole text, with its score (higher is better) and its reasons.

    ``tokens`` may be given as a function that makes them: many callers want the Latin letters
    alone. They are made when they are first asked for, and once.
    """

    FIELDS = __slots__ = ("tokens", "romaji", "score", "reasons", "phrases")
    LATE = "tokens"
    tokens: Tokens
    romaji: str
    score: float
    reasons: tuple[str, ...]
    phrases: tuple[tuple[int, int], ...]  # (morae, index of the phrase's first token)

    def __init__(
        self,
        tokens: Tokens | Callable[[], Tokens],
        romaji: str,
        score: float,
        reasons: tuple[str, ...] = (),
        phrases: tuple[tuple[int, int], ...] = (),
    ) -> None:
        self._keep(tokens=tokens, romaji=romaji, score=score, reasons=reasons, phrases=phrases)

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


class SignaturePart(NamedTuple):
    """One part of a signature: what it says and the signs that say it."""

    text: str
    kana: str
    romaji: str
    first: int
    last: int
    alternatives: tuple[str, ...] = ()  # other romanised readings, best first


class Doubt(NamedTuple):
    """Something the reader should look at again, and why."""

    first: int
    last: int
    why: str


def in_order(doubts: Iterable[Doubt]) -> tuple[Doubt, ...]:
    """Return doubts in the order of the signs they are about."""
    return tuple(sorted(doubts, key=lambda doubt: (doubt.first, doubt.last)))


class Passage(NamedTuple):
    """A stretch of an inscription that one person or one purpose put there, read as what it is.

    ``first`` and ``last`` are indexes of signs, both included; the passages of an inscription
    stand in the order of its signs and together hold all of them.
    """

    kind: Kind
    first: int
    last: int
    text: str  # as carved
    normalised: str
    proposals: tuple[Proposal, ...]  # its own readings, best first
    role: Role | None = None  # what the person did whom it names
    chance: float = 1.0  # that the inscription is divided so here
    reasons: tuple[str, ...] = ()  # why it is taken for this kind
    signature: dict[str, SignaturePart] | None = None  # the parts of a signature

    @property
    def kana(self) -> str:
        """The best reading in kana, words divided by spaces."""
        return self.proposals[0].kana

    @property
    def romaji(self) -> str:
        """The best reading in Latin letters."""
        return self.proposals[0].romaji


class Interpretation(NamedTuple):
    """Everything ``inscribe read`` has to say about one inscription."""

    text: str  # as carved
    normalised: str
    modern: str
    register: Register
    proposals: tuple[Proposal, ...]  # best first, never empty for a text with a sign in it
    signature: dict[str, SignaturePart] | None = None
    dates: tuple[DateReading, ...] = ()
    changes: tuple[Change, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    noted: str = ""  # as carved, with the transcriber's marks of how sure that is, where it has any
    passages: tuple[Passage, ...] = ()  # in the order of the signs, together all of them
    persons: tuple[MayName, ...] = ()  # of the user's list, whom it may name; the likelier first
