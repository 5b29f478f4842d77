"""From words to an interpretation: tokens that point to their signs, alternatives, doubts."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from inscribe.forms import GAP, KAO, UNREAD, NormalText
from inscribe.reading.words.pieces import ReadWord, romaji_of
from inscribe.reading.words.results import CANNOT_BE_READ, Doubt, Interpretation, Register
from inscribe.reading.words.tokens import Proposal, Token
from inscribe.signs import Certainty, Intervention, Kind, Sign
from inscribe.terms import SignIndex

STRUCK = "■"  # a sign that was struck out and cannot be read
WordsOf = Callable[[str], list[ReadWord]]


class InscribedText(NamedTuple):
    """A normalised text, the carved signs behind it, and the offsets where columns begin."""

    normal: NormalText
    carved: Sequence[str]  # the signs as carved, by index
    breaks: frozenset[int] = frozenset()
    in_order: bool = True  # the text stands in the order of its signs
    cuts: frozenset[int] = frozenset()  # offsets before which the transcriber left a space
    faces: frozenset[int] = frozenset()  # those of the breaks at which a face begins


def shown(sign: Sign) -> str:
    """Return a sign as it is carved, or the mark that stands for it."""
    if sign.kind is Kind.CHARACTER:
        return sign.text or (STRUCK if sign.certainty is Certainty.STRUCK else UNREAD)
    if sign.kind is Kind.GAP:
        return GAP
    return KAO if sign.kind is Kind.KAO else f"（印「{sign.text}」）" if sign.text else "（印）"


def has_note(sign: Sign) -> bool:
    """Whether the transcriber has said more of a sign than what it is or that it cannot be read."""
    sure = sign.certainty in (Certainty.CLEAR, Certainty.UNREADABLE)
    return not sure or sign.sic or sign.intervention is not Intervention.NONE


def carved_text(text: InscribedText) -> str:
    """Return the signs as carved, unread ones as □, struck out ones as ■."""
    carved = text.carved
    return carved if isinstance(carved, str) else "".join(carved)


# A word at a place, carved as it is written: the commonest words come at the same places often.
_as_written: dict[tuple[ReadWord, int], Token] = {}
_MOST_KEPT = 100_000
_LONGEST_KEPT = 40  # signs of a word; what no dictionary has may be far longer


def tokens_of(words: Sequence[ReadWord], text: InscribedText) -> tuple[Token, ...]:
    """Return the words as tokens that know their signs."""
    origin, carved = text.normal.origin, text.carved
    if carved == text.normal.text and text.in_order:
        return _tokens_as_written(words)
    tokens: list[Token] = []
    position = 0
    for word in words:
        end = position + word.length
        first, last = origin[position], origin[end - 1]
        if first == last:
            surface = carved[first]
        elif text.in_order and last - first == word.length - 1:
            surface = "".join(carved[first : last + 1])
        else:  # several characters of one sign, or signs put into another order
            signs = dict.fromkeys(origin[position:end])
            surface = "".join(carved[sign] for sign in signs)
            first, last = min(signs), max(signs)
        tokens.append(_token(word, surface, first, last))
        position = end
    return tuple(tokens)


def _tokens_as_written(words: Sequence[ReadWord]) -> tuple[Token, ...]:
    tokens: list[Token] = []
    position = 0
    for word in words:
        token = _as_written.get((word, position))
        if token is None:
            if len(_as_written) > _MOST_KEPT:
                _as_written.clear()
            first, last = SignIndex(position), SignIndex(position + word.length - 1)
            token = _token(word, word.written, first, last)
            if word.length <= _LONGEST_KEPT:
                _as_written[word, position] = token
        tokens.append(token)
        position += word.length
    return tuple(tokens)


def _token(word: ReadWord, surface: str, first: SignIndex, last: SignIndex) -> Token:
    return Token(
        surface,
        word.written,
        word.kana,
        word.romaji,
        first,
        last,
        word.modern,
        word.part_of_speech,
        word.lemma,
        word.origin,
        word.gloss,
        word.note,
    )


def interpretation(
    text: InscribedText,
    register: Register,
    words: list[ReadWord],
    reasons: tuple[str, ...],
    phrases: tuple[tuple[int, int], ...],
    score: float = 0.0,
) -> Interpretation:
    """Return the interpretation of words read one way."""
    best = Proposal(
        tokens_of(words, text),
        romaji_of(words),
        score,
        reasons,
        phrases,
    )
    return Interpretation(
        carved_text(text),
        text.normal.text,
        "".join([word.modern for word in words]),
        register,
        (best,),
        None,
        (),
        text.normal.changes,
        _doubts(words, text),
    )


def _doubts(words: Sequence[ReadWord], text: InscribedText) -> tuple[Doubt, ...]:
    of_forms, of_words = doubts_of_forms(text), doubts_of_words(words, text)
    return tuple(dict.fromkeys((*of_forms, *of_words))) if of_forms or of_words else ()


def doubts_of_forms(text: InscribedText) -> tuple[Doubt, ...]:
    """Return the changes of form a person should look at again."""
    if not text.normal.changes:
        return ()
    return tuple(
        Doubt(change.sign, change.sign, change.note or f"{change.before} taken for {change.after}")
        for change in text.normal.changes
        if change.doubtful
    )


def doubts_of_words(words: Sequence[ReadWord], text: InscribedText) -> tuple[Doubt, ...]:
    """Return what cannot be read, and the words no dictionary has."""
    if all(word.known for word in words):
        return ()
    doubts: list[Doubt] = []
    origin = text.normal.origin
    position = 0
    for word in words:
        if not word.known and (why := _why_unknown(word.written)):
            last = origin[position + word.length - 1]
            doubts.append(Doubt(origin[position], last, why))
        position += word.length
    return tuple(doubts)


def _why_unknown(written: str) -> str:
    if written.startswith("（") or written in "々ゝゞ":  # the doubt of its form has told it
        return ""
    if written.startswith("［"):
        return "a gap of unknown length"
    if "□" in written:
        return CANNOT_BE_READ
    return "no dictionary has this word"
