"""From words to the whole interpretation: tokens that point to their signs, proposals, doubts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from inscribe.forms.normal import NormalText
from inscribe.reading import mecab
from inscribe.reading.pieces import Piece, romaji_of, unknown_piece
from inscribe.reading.tokens import Doubt, Interpretation, Proposal, Register, Token
from inscribe.reading.verse import VerseReading, read_verse

_MARK = re.compile("□+|［[^］]*］|（花押）|（印(?:「[^」]*」)?）")
_WHY_MARKED = {
    "□": "cannot be read",
    "［": "a gap of unknown length",
}


@dataclass(frozen=True, slots=True)
class Text:
    """A normalised text, the carved signs behind it, and the offsets where columns end."""

    normal: NormalText
    carved: Sequence[str]  # the signs as carved, by index
    breaks: frozenset[int] = frozenset()


def marks_in(text: str) -> list[tuple[int, int]]:
    """Return the offsets of signs that cannot be read, gaps, seals and monograms."""
    return [match.span() for match in _MARK.finditer(text)]


def words_around_marks(text: str, marks: list[tuple[int, int]]) -> list[Piece]:
    """Return the words of a prose text, each mark a word of its own without a reading."""
    words: list[Piece] = []
    position = 0
    for start, end in [*marks, (len(text), len(text))]:
        if start > position:
            words += mecab.prose_words(text[position:start])
        if end > start:
            words.append(unknown_piece(text[start:end], part_of_speech="補助記号"))
        position = end
    return words


def tokens_of(words: Sequence[Piece], text: Text) -> tuple[Token, ...]:
    """Return the words as tokens that know their signs."""
    origin, carved = text.normal.origin, text.carved
    tokens: list[Token] = []
    position = 0
    for word in words:
        end = position + word.length
        first, last = origin[position], origin[end - 1]
        surface = carved[first] if first == last else "".join(carved[first : last + 1])
        tokens.append(
            Token(
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
        )
        position = end
    return tuple(tokens)


def interpret_verse(text: Text, reading: VerseReading) -> Interpretation:
    """Return the interpretation of a poem."""
    return _interpretation(text, "verse", reading.words, _reasons(reading), reading.phrases)


def interpret_prose(text: Text, register: Register, words: list[Piece]) -> Interpretation:
    """Return the interpretation of a text that has no metre."""
    return _interpretation(text, register, words, (), ())


def _interpretation(
    text: Text,
    register: Register,
    words: list[Piece],
    reasons: tuple[str, ...],
    phrases: tuple[tuple[int, int], ...],
) -> Interpretation:
    proposal = Proposal(
        tokens_of(words, text),
        " ".join(word.kana for word in words),
        romaji_of(words),
        0.0,
        reasons,
        phrases,
    )
    return Interpretation(
        "".join(text.carved),
        text.normal.text,
        "".join(word.modern for word in words),
        register,
        (proposal,),
        None,
        (),
        text.normal.changes,
        doubts_of(words, text),
    )


def _reasons(reading: VerseReading) -> tuple[str, ...]:
    if reading.metre is None:
        return ("no metre was found; read word by word",)
    counts = "-".join(str(count) for count, _ in reading.phrases)
    return (f"{reading.metre.name} of {counts} morae",)


def doubts_of(words: Sequence[Piece], text: Text) -> tuple[Doubt, ...]:
    """Return what a person should look at again: what cannot be read, and unknown words."""
    doubts: list[Doubt] = []
    origin = text.normal.origin
    position = 0
    for word in words:
        if not word.known:
            why = _WHY_MARKED.get(word.written[0])
            if why is None and not word.written.startswith("（"):
                why = "no dictionary has this word"
            if why is not None:
                last = origin[position + word.length - 1]
                doubts.append(Doubt(origin[position], last, why))
        position += word.length
    return tuple(doubts)


def interpretation_of(text: Text, register: Register, *, certain: bool) -> Interpretation:
    """Return the interpretation of ``text`` in ``register``.

    With ``certain`` false, a text held for verse is read as prose where it has no metre.
    """
    plain = text.normal.text
    if register == "verse":
        reading = read_verse(plain, text.breaks)
        if reading.metre is not None or certain:
            return interpret_verse(text, reading)
        register = "prose"
    return interpret_prose(text, register, words_around_marks(plain, marks_in(plain)))
