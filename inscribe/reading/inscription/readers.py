"""One passage read as what it is: each kind has its own reader.

Each reader takes a text whose signs keep the numbers they have in the whole inscription, and
returns an interpretation of it, as if it stood alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from inscribe.forms import NormalText
from inscribe.reading.chinese import MARKS as RETURN_MARKS, has_marks
from inscribe.reading.inscription.register import has_classical_grammar, has_modern_grammar
from inscribe.reading.spelling import KANA, is_kanji_only
from inscribe.reading.words import (
    MARK,
    Doubt,
    InscribedText,
    Interpretation,
    Kind,
    OverrideLike,
    Passage,
    Proposal,
    ReadWord,
    Register,
    WordsOf,
    carved_text,
    doubts_of_forms,
    has_legible,
    interpretation,
    marks_as_words,
    settled_part,
    settled_proposal,
    settled_signature,
    signs_alone,
    still_open,
    without_reasons,
    words_around_marks,
    words_with_repeats,
)

if TYPE_CHECKING:
    from inscribe.reading.passages import PassageLike
    from inscribe.reading.verse import VerseReading

_LEAST_CHINESE = 5  # signs
_LINES_OF_CHINESE_VERSE = (10, 14, 20, 28)
_NO_METRE_OVER_A_GAP = "a gap leaves the metre open; read word by word"

REGISTER_OF: dict[Kind, Register] = {
    "verse": "verse",
    "prose": "prose",
    "chinese": "prose",
    "heading": "prose",
    "signature": "signature",
    "date": "signature",
    "dedication": "signature",
    "seal": "signature",
}


class Wishes(NamedTuple):
    """What the caller wants besides the text."""

    register: str = "auto"
    overrides: Sequence[OverrideLike] = ()
    between: tuple[int, int] | None = None
    alternatives: bool | None = None  # None: only where the reading is in doubt
    passages: Sequence[PassageLike] = ()  # what a person has settled
    source: str = ""  # the words that are copied, where they are known
    among_others: bool = False  # whether other passages stand beside what is read


def read_as(kind: Kind, text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a text says that is one passage of a kind."""
    if kind == "verse":
        return read_as_verse(text, wishes)
    if kind == "prose":
        return read_as_prose(text, "prose", wishes)
    if kind in ("chinese", "heading", "dedication", "seal"):
        from inscribe.reading.inscription import framed

        found = framed.read_by_frame(kind, text, wishes) if kind != "chinese" else None
        found = framed.read_as_saying(text, wishes) if kind == "chinese" else found
        if found is not None:
            return found
    if REGISTER_OF[kind] == "prose":
        return read_as_prose(text, "prose", wishes)
    return read_as_signature(text, wishes)


def read_as_verse(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a poem says."""
    reading, reason = poem(text, wishes)
    return verse_of(text, wishes, reading, reason)


def verse_of(
    text: InscribedText, wishes: Wishes, reading: VerseReading, reason: str = ""
) -> Interpretation:
    """Return the interpretation of a poem that has been read."""
    from inscribe.reading.verse import verse_interpretation

    found = verse_interpretation(text, reading, reason, wishes.alternatives)
    if wishes.overrides and reading.metre is None:
        best = settled_proposal(found.proposals[0], wishes.overrides)
        found = replace(found, proposals=(best,))
    return found


def poem(text: InscribedText, wishes: Wishes) -> tuple[VerseReading, str]:
    """Return the reading of a poem, with marks at its ends put aside while the metre is sought."""
    from inscribe.reading.verse import read_verse

    plain = text.normal.text
    bracketed = "［" in plain or "（" in plain
    marks = [match.span() for match in MARK.finditer(plain)] if bracketed else []
    if not marks:
        return read_verse(plain, text.breaks, wishes.overrides, text.normal.origin), ""
    from inscribe.reading.verse import VerseReading, marks_voicing, words_without_metre

    start, end = 0, len(plain)
    while marks and marks[0][0] == start:
        start = marks.pop(0)[1]
    while marks and marks[-1][1] == end:
        end = marks.pop()[0]
    before, after = marks_as_words(plain[:start]), marks_as_words(plain[end:])
    if marks or start == end:
        words_of = partial(words_without_metre, voiced=marks_voicing(plain))
        words = words_around_marks(plain, words_of)
        return VerseReading(words, None), _NO_METRE_OVER_A_GAP
    breaks = frozenset(at - start for at in text.breaks if start < at < end)
    origin = text.normal.origin[start:end]
    core = read_verse(plain[start:end], breaks, wishes.overrides, origin)
    phrases = tuple((count, first + len(before)) for count, first in core.phrases)
    return core._replace(words=[*before, *core.words, *after], phrases=phrases), ""


def read_as_signature(text: InscribedText, wishes: Wishes) -> Interpretation:
    """Return what a signature, or a date or a dedication alone, says."""
    from inscribe.reading.prose import modern_normal
    from inscribe.reading.signatures import read_signature

    normal = _without_return_marks(text.normal)
    reading = read_signature(normal, text.breaks, text.cuts, ends=wishes.among_others)
    if not reading.proposals:
        return read_as_prose(text, "signature", wishes)
    proposals = reading.proposals
    if wishes.overrides:
        settled = [settled_signature(each, wishes.overrides) for each in proposals]
        proposals = distinct(
            [settled[0], *[without_reasons(each, wishes.overrides) for each in settled[1:]]]
        )
    return Interpretation(
        carved_text(text),
        text.normal.text,
        modern_normal(text.normal, text.carved),
        "signature",
        proposals,
        {key: settled_part(part, wishes.overrides) for key, part in reading.parts.items()},
        (),
        text.normal.changes,
        (*doubts_of_forms(text), *still_open(reading.doubts, wishes.overrides)),
    )


def distinct(proposals: Iterable[Proposal]) -> tuple[Proposal, ...]:
    """Return proposals without those whose Latin letters a better one has."""
    by_romaji: dict[str, Proposal] = {}
    for proposal in proposals:
        by_romaji.setdefault(proposal.romaji, proposal)
    return tuple(by_romaji.values())


def _without_return_marks(normal: NormalText) -> NormalText:
    if not has_marks(normal.text):
        return normal
    kept = [i for i, sign in enumerate(normal.text) if sign not in RETURN_MARKS]
    text = "".join(normal.text[i] for i in kept)
    return NormalText(text, tuple(normal.origin[i] for i in kept), normal.changes)


def read_as_prose(text: InscribedText, register: Register, wishes: Wishes) -> Interpretation:
    """Return what prose says, or any text word by word."""
    from inscribe.reading.prose import has_kept_signs, modern_normal, prose_words

    normal = text.normal
    reasons: tuple[str, ...] = ()
    legible = has_legible(MARK.sub("", normal.text))
    if not legible:
        reasons = ("nothing can be read",)
    if has_marks(normal.text):
        normal, reasons = _reordered(normal), ("put into Japanese order by the return marks",)
    read_text = InscribedText(normal, text.carved, in_order=normal is text.normal)
    words_of: WordsOf = prose_words
    if has_classical_grammar(normal.text) or _is_old_and_unvoiced(normal.text):
        from inscribe.reading.verse import marks_voicing, words_without_metre

        words_of = partial(words_without_metre, voiced=marks_voicing(normal.text))
    words = words_with_repeats(normal, text.carved, words_of if legible else signs_alone)
    doubts: tuple[Doubt, ...] = ()
    if len(normal.text) >= _LEAST_CHINESE and is_kanji_only(text.normal.text):
        words, doubts = _chinese(words, text)
    found = interpretation(read_text, register, words, reasons, ())
    if register == "prose":
        found = _as_quoted(found, normal)
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


def _as_quoted(found: Interpretation, normal: NormalText) -> Interpretation:
    """Return the reading of a poet's name, the title of a work or an invocation by its table."""
    from inscribe.reading.signatures import is_quoted, read_signature

    if not is_quoted(normal.text):
        return found
    return replace(found, proposals=read_signature(normal).proposals)


def _is_old_and_unvoiced(plain: str) -> bool:
    """Whether a text leaves voicing unmarked where its words make better sense with it."""
    if "。" in plain or has_modern_grammar(plain) or not KANA.search(plain):
        return False
    from inscribe.reading.verse import marks_voicing

    return not marks_voicing(plain)


def _reordered(normal: NormalText) -> NormalText:
    from inscribe.reading.chinese import reading_order

    order = reading_order(normal.text)
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


def as_passage(kind: Kind, text: InscribedText, read: Interpretation) -> Passage:
    """Return the passage that a text and its interpretation are."""
    origin = text.normal.origin
    first, last = min(origin), max(origin)
    return Passage(
        kind,
        first,
        last,
        "".join(text.carved[first : last + 1]),
        text.normal.text,
        read.proposals,
        signature=read.signature,
    )
