"""An inscription word by word: signs, kana, Latin letters and gloss, passage by passage."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from inscribe import notation
from inscribe.forms import normalise_text
from inscribe.glossing import glossed_words
from inscribe.report.entries.blocks import (
    JAPANESE,
    ROMANISED,
    Block,
    GlossedLine,
    GlossedWord,
    Inline,
    Interlinear,
    Run,
)

if TYPE_CHECKING:
    from inscribe.entry import InscriptionEntry
    from inscribe.glossing import WordMeaning
    from inscribe.reading.words import Passage, Token
    from inscribe.report import Style
    from inscribe.signs import Sign


def interlinear_blocks(each: InscriptionEntry, style: Style) -> Iterator[Block]:
    """Yield the words of each passage in the order of the metal."""
    tokens = each.reading.tokens
    passages = each.interpretation.passages
    signs = each.inscription.transcription.signs
    if not any(token.kana for token in tokens):
        return
    lines = [
        GlossedLine(passage_name(passage, style), _words(_within(passage, tokens), signs))
        for passage in passages
    ]
    if len(passages) < 2:
        lines = [GlossedLine("", _words(tokens, signs))]
    said = tuple(line for line in lines if line.words)
    yield Interlinear(style.label("words_by_word"), said, style.italics)


def words_in_a_line(each: InscriptionEntry) -> str:
    """Return the words in current forms with their glosses: ``世の中 yo no naka ‘world’ | …``."""
    words = glossed_words(each.interpretation, each.inscription.transcription.signs)
    if not any(word.meaning for word in words):
        return ""
    return " | ".join(map(_with_gloss, words))


def _with_gloss(word: WordMeaning) -> str:
    said = f"{normalise_text(word.signs).text} {word.romaji}"
    return f"{said} ‘{word.gloss}’" if word.gloss else said


def passage_name(passage: Passage, style: Style) -> str:
    """Return what a passage is, and what its person did."""
    kind = style.label(f"passage:{passage.kind}")
    return kind + (f" ({style.label(f'role:{passage.role}')})" if passage.role else "")


def passages_in_a_line(each: InscriptionEntry, style: Style) -> str:
    """Return the passages with what they are and their readings; nothing where there is one."""
    passages = each.interpretation.passages
    told = (f"{passage_name(p, style)}: {p.text} {p.romaji}".strip() for p in passages)
    return " | ".join(told) if len(passages) > 1 else ""


def _within(passage: Passage, tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    return tuple(token for token in tokens if passage.first <= token.first <= passage.last)


def _words(tokens: tuple[Token, ...], signs: Sequence[Sign]) -> tuple[GlossedWord, ...]:
    """Return the words as carved; with its turn in reading where that is another."""
    on_metal = sorted(tokens, key=lambda token: token.first)
    turns = {token.first: turn for turn, token in enumerate(tokens, start=1)}
    return tuple(
        GlossedWord(
            notation.bracketed(token.normalised, signs[token.first : token.last + 1]),
            token.kana,
            token.romaji,
            token.gloss,
            turns[token.first] if turns[token.first] != place else None,
        )
        for place, token in enumerate(on_metal, start=1)
    )


def glossed(line: GlossedLine, *, italics: bool) -> Inline:
    """Return the words of a passage on one line: signs, Latin letters, gloss."""
    said: list[Run] = []
    for word in line.words:
        if said:
            said.append(Run("  ·  "))
        said.append(Run(word.signs, lang=JAPANESE))
        if word.romaji:
            said += [Run(" "), Run(word.romaji, italics, ROMANISED)]
        if word.gloss:
            said.append(Run(f" ‘{word.gloss}’"))
    return tuple(said)
