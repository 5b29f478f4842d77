"""Prose, and any text that is neither verse nor signature, read word by word."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from itertools import accumulate

from inscribe.forms import NormalText
from inscribe.reading.chinese import has_marks
from inscribe.reading.inscription.prose_nouns import as_in_prose, noun_read_as_a_whole
from inscribe.reading.inscription.prose_rivals import WordsFound, with_compounds, with_rivals
from inscribe.reading.inscription.register import has_classical_grammar, has_modern_grammar
from inscribe.reading.inscription.weighing import by_weight
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.spelling import KANA, hiragana, is_kanji_only
from inscribe.reading.words import (
    MARK,
    Doubt,
    InscribedText,
    Interpretation,
    ReadWord,
    Register,
    WordsOf,
    has_legible,
    interpretation,
    rewritten,
    settled_proposal,
    signs_alone,
    words_with_repeats,
)
from inscribe.terms import SignIndex

_LETTER = "read in the polite written style, endings and order completed"
_NEGATED = re.compile("[可へ]から[すさ]|せさる|[らか]されは")  # bekarazu, sezaru, zareba
_FORMULA = re.compile("[ぁ-ゖァ-ヺ]([一-龠]{1,2}之)$")  # 手すさびに彫之
_OF_FORMULAS = {"object", "verb"}
_LEAST_CHINESE = 5  # signs
_LINES_OF_CHINESE_VERSE = (10, 14, 20, 28)


def read_as_prose(text: InscribedText, register: Register, wishes: Wishes) -> Interpretation:
    """Return what prose says, or any text word by word."""
    from inscribe.reading.passages import proverb_words
    from inscribe.reading.prose import has_kept_signs, is_in_katakana, modern_normal, prose_words

    normal = text.normal
    reasons: tuple[str, ...] = ()
    legible = has_legible(MARK.sub("", normal.text))
    if not legible:
        reasons = ("nothing can be read",)
    if legible and _is_letter(normal.text):
        return _as_letter(text, register, wishes)
    if has_marks(normal.text):
        normal, reasons = _reordered(normal), ("put into Japanese order by the return marks",)
    read_text = InscribedText(normal, text.carved, in_order=normal is text.normal)
    words_of: WordsOf = prose_words
    katakana = is_in_katakana(normal.text)
    plain = hiragana(normal.text) if katakana else normal.text
    of_verse = has_classical_grammar(plain) or _is_old_and_unvoiced(plain)
    if of_verse:
        from inscribe.reading.verse import marks_voicing, words_without_metre

        words_of = partial(words_without_metre, voiced=marks_voicing(plain))
        words_of = partial(_in_katakana, words_of) if katakana else words_of
    if register == "prose":
        words_of = partial(_with_formula, words_of)
    words = words_with_repeats(normal, text.carved, words_of if legible else signs_alone)
    in_prose = KANA.search(plain) or noun_read_as_a_whole(plain)
    if legible and in_prose and sum(w.length for w in words) == len(normal.text):
        if of_verse:
            words = list(with_compounds(words, prose_words(normal.text)))
        words = as_in_prose(words, normal.text)
    doubts: tuple[Doubt, ...] = ()
    if len(normal.text) >= _LEAST_CHINESE and is_kanji_only(text.normal.text):
        words, doubts = _chinese(words, text)
    if known := proverb_words(plain):
        words, reasons = list(known[0]), (f"the proverb {known[1].written} ({known[1].gloss})",)
    found = interpretation(read_text, register, words, reasons, ())
    if register == "prose":
        found = _as_quoted(found, normal)
    found = with_rivals(found, WordsFound(words, of_verse), read_text, wishes)
    as_printed = normal is not text.normal or has_kept_signs(text.carved)
    proposals = found.proposals
    if wishes.overrides:
        proposals = tuple(settled_proposal(each, wishes.overrides) for each in proposals)
    return replace(
        found,
        normalised=text.normal.text,
        modern=modern_normal(text.normal, text.carved) if as_printed else found.modern,
        proposals=proposals,
        doubts=(*found.doubts, *doubts),
    )


def _in_katakana(words_of: WordsOf, text: str) -> list[ReadWord]:
    """Return the words of a text in which katakana stand for hiragana, as they are carved."""
    words = words_of(hiragana(text))
    firsts = accumulate((word.length for word in words), initial=0)
    return [
        rewritten(word, text[first : first + word.length], word.modern)
        for word, first in zip(words, firsts, strict=False)
    ]


def _with_formula(words_of: WordsOf, text: str) -> list[ReadWord]:
    """Return the words of a text, a maker's formula that closes it as signatures have it: 彫之."""
    closed = _FORMULA.search(text)
    if closed is None:
        return words_of(text)
    from inscribe.reading.signatures import read_signature

    first = closed.start(1)
    stretch = NormalText(text[first:], tuple(map(SignIndex, range(len(text) - first))))
    found = [each.tokens for each in read_signature(stretch).proposals]
    of_formulas = [t for t in found if {token.part_of_speech for token in t} == _OF_FORMULAS]
    if not of_formulas:
        return words_of(text)
    tokens = of_formulas[0]
    said = " ".join(token.kana for token in tokens)
    gloss = " ".join(token.gloss for token in reversed(tokens))
    return [*words_of(text[:first]), ReadWord(text[first:], said, "動詞", gloss=gloss)]


def _as_quoted(found: Interpretation, normal: NormalText) -> Interpretation:
    """Return the reading of a poet's name, the title of a work or an invocation by its table."""
    from inscribe.reading.signatures import is_quoted, read_signature

    if not is_quoted(normal.text):
        return found
    return by_weight("signature", replace(found, proposals=read_signature(normal).proposals))


def _is_old_and_unvoiced(plain: str) -> bool:
    """Whether a text leaves voicing unmarked where its words make better sense with it."""
    if "。" in plain or has_modern_grammar(plain) or not KANA.search(plain):
        return False
    from inscribe.reading.verse import has_voiced_kana, marks_voicing

    if _NEGATED.search(plain) and not has_voiced_kana(plain):
        return True
    return not marks_voicing(plain)


def _reordered(normal: NormalText) -> NormalText:
    from inscribe.reading.chinese import reading_order

    return _in_order(normal, reading_order(normal.text))


def _is_letter(plain: str) -> bool:
    from inscribe.reading.chinese import is_letter

    return not MARK.search(plain) and not has_modern_grammar(plain) and is_letter(plain)


def _as_letter(text: InscribedText, register: Register, wishes: Wishes) -> Interpretation:
    """Return what a letter or a box note in the polite written style says, in Japanese order."""
    from inscribe.reading.chinese import letter_words
    from inscribe.reading.prose import modern_normal, prose_words

    words, order = letter_words(text.normal.text, prose_words)
    normal = _in_order(text.normal, order)
    read_text = InscribedText(normal, text.carved, in_order=order == sorted(order))
    found = interpretation(read_text, register, words, (_LETTER,), ())
    found = with_rivals(found, WordsFound(words, of_verse=False), read_text, wishes)
    proposals = found.proposals
    if wishes.overrides:
        proposals = tuple(settled_proposal(each, wishes.overrides) for each in proposals)
    modern = modern_normal(text.normal, text.carved)
    return replace(found, normalised=text.normal.text, modern=modern, proposals=proposals)


def _in_order(normal: NormalText, order: Sequence[int]) -> NormalText:
    text = "".join(normal.text[i] for i in order)
    return NormalText(text, tuple(normal.origin[i] for i in order), normal.changes)


def _chinese(
    words: list[ReadWord], text: InscribedText
) -> tuple[list[ReadWord], tuple[Doubt, ...]]:
    """Return the words of a text in kanji alone, or its signs one by one, and the doubt."""
    from inscribe.reading.chinese import are_compounds, sign_by_sign

    plain = text.normal.text
    verse = len(plain) in _LINES_OF_CHINESE_VERSE
    how = "the words are read in the order written"
    if not are_compounds(words, verse=verse):
        words = sign_by_sign(plain)
        how = "each sign has its Chinese sound, no word is guessed"
    why = f"Chinese{' verse' * verse} without return marks: {how}"
    first, last = text.normal.origin[0], text.normal.origin[-1]
    return words, (Doubt(first, last, why),)
