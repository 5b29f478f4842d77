"""From a normalised text to the whole interpretation, by the register it is in."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import partial
from itertools import accumulate
from typing import TYPE_CHECKING, NamedTuple

from inscribe.forms import NormalText, normalise_text, signs_of
from inscribe.reading.chinese import MARKS as RETURN_MARKS, has_marks
from inscribe.reading.inscription.register import (
    has_classical_grammar,
    is_heading,
    looks_like_verse,
    may_hold_verse,
    places_of_tail,
)
from inscribe.reading.inscription.signed import is_signature
from inscribe.reading.spelling import is_kanji_only, kana_share
from inscribe.reading.words import (
    MARK,
    Doubt,
    Interpretation,
    Override,
    Piece,
    Proposal,
    Register,
    Text,
    WordsOf,
    applying,
    carved_text,
    doubts_of_forms,
    has_legible,
    in_order,
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
    from inscribe.reading.verse import VerseReading

_LEAST_CHINESE = 5  # signs
_LONGEST_HEADING = 6  # signs of a column that may head a poem
_LINES_OF_CHINESE_VERSE = (10, 14, 20, 28)
_NO_METRE_OVER_A_GAP = "a gap leaves the metre open; read word by word"


class Wishes(NamedTuple):
    """What the caller wants besides the text."""

    register: str = "auto"
    overrides: Sequence[Override] = ()
    between: tuple[int, int] | None = None
    alternatives: bool | None = None  # None: only where the reading is in doubt


def interpreted_columns(columns: list[str], wishes: Wishes) -> Interpretation:
    """Return what signs say that are written one beside the other, by column."""
    plain = "".join(columns) if len(columns) > 1 else columns[0]
    normal = normalise_text(plain)
    single = normal.origin[-1:] == (len(plain) - 1,)  # no sign is of several characters
    carved: Sequence[str] = plain if single else signs_of(plain)
    if len(columns) == 1:
        return interpreted(Text(normal, carved), wishes)
    lengths = [len(column if single else signs_of(column)) for column in columns]
    return interpreted(Text(normal, carved, _breaks(lengths, normal)), wishes)


def _breaks(lengths: list[int], normal: NormalText) -> frozenset[int]:
    """Return the offsets in the normalised text where the later columns begin."""
    begins = set(accumulate(lengths[:-1]))
    if normal.origin[-1:] == (len(normal.text) - 1,):
        return frozenset(begins)
    return frozenset(normal.origin.index(sign) for sign in begins if sign in normal.origin)


def interpreted(text: Text, wishes: Wishes) -> Interpretation:
    """Return what ``text`` says."""
    if not text.normal.text:
        return interpretation(text, "prose", [], (), ())
    overrides, misfits = applying(wishes.overrides, text.carved) if wishes.overrides else ([], [])
    wishes = wishes._replace(overrides=overrides) if wishes.overrides else wishes
    found = _by_register(text, wishes)
    if not _is_a_poem_alone(found):
        found = _with_dates(found, text, wishes)
    doubts = (*found.doubts, *misfits)
    if len(doubts) < 2 and not misfits:
        return found
    return found._replace(doubts=in_order(doubts))


def _by_register(text: Text, wishes: Wishes) -> Interpretation:
    if wishes.register == "signature":
        return _signature(text, wishes)
    if wishes.register == "verse":
        from inscribe.reading.verse import verse_interpretation

        reading, reason = _verse(text, wishes)
        found = verse_interpretation(text, reading, reason, wishes.alternatives)
        if wishes.overrides and reading.metre is None:
            best = settled_proposal(found.proposals[0], wishes.overrides)
            found = found._replace(proposals=(best,))
        return found
    if wishes.register == "prose":
        return _prose(text, "prose", wishes)
    return _whatever_it_is(text, wishes)


def _whatever_it_is(text: Text, wishes: Wishes) -> Interpretation:
    plain = text.normal.text
    may_hold_poem = bool(text.breaks) and may_hold_verse(plain)
    if not may_hold_poem and is_signature(plain):
        return _signature(text, wishes)
    if not has_legible(MARK.sub("", plain)):
        return _prose(text, "prose", wishes)
    if text.cuts and (found := _signed_poem(text, wishes, sorted(text.cuts))):
        return found
    if looks_like_verse(plain) and (found := _poem(text, wishes, may_hold_poem)):
        return found
    if may_hold_poem:
        found = _poem_among_columns(text, wishes)
        if found is not None:
            return found
        if is_signature(plain):
            return _signature(text, wishes)
    elif kana_share(plain) and (found := _signed_poem(text, wishes, places_of_tail(plain))):
        return found
    return _prose(text, "prose", wishes)


def _poem(text: Text, wishes: Wishes, in_columns: bool) -> Interpretation | None:
    """Return a poem that keeps a metre; ``in_columns`` if something may stand beside it."""
    reading, reason = _verse(text, wishes)
    if in_columns and (_is_of_a_rare_metre(reading) or _may_be_headed(text, reading)):
        found = _poem_among_columns(text, wishes)
        if found is not None:
            return found
    if reading.metre is not None and ("、" not in text.normal.text or _commas_end_phrases(reading)):
        from inscribe.reading.verse import verse_interpretation

        return verse_interpretation(text, reading, reason, wishes.alternatives)
    return None


def _signed_poem(text: Text, wishes: Wishes, cuts: Iterable[int]) -> Interpretation | None:
    """Return a poem with the signature after it, where no column's end parts them."""
    plain = text.normal.text
    for cut in cuts:
        if looks_like_verse(plain[:cut]) and is_signature(plain[cut:]):
            found = _poem_among_columns(text._replace(breaks=frozenset((cut,))), wishes)
            if found is not None and found.signature:
                return found
    return None


def _poem_among_columns(text: Text, wishes: Wishes) -> Interpretation | None:
    """Return a poem with the heading, name or date that has columns of its own beside it."""
    from inscribe.reading.inscription import mixed

    division = mixed.division_of(text, wishes.overrides)
    if division is None:
        return None
    first, end = division.first, division.end
    beside: list[Interpretation | None] = []
    for start, stop in ((0, first), (end, len(text.normal.text))):
        part = mixed.part_of(text, start, stop)
        beside.append(_beside(part, wishes, heads=not start) if start < stop else None)
    from inscribe.reading.verse import verse_interpretation

    poem = verse_interpretation(mixed.part_of(text, first, end), division.reading, "", False)
    found = mixed.joined(carved_text(text), beside[0], poem, beside[1])
    doubts = (*doubts_of_forms(text), *found.doubts)
    return found._replace(changes=text.normal.changes, doubts=doubts)


def _beside(part: Text, wishes: Wishes, *, heads: bool) -> Interpretation:
    """Return what stands beside a poem: before it a heading, unless it is surely a signature."""
    plain = part.normal.text
    if heads and (is_heading(plain) or not is_signature(plain)):
        return _prose(part, "prose", wishes)
    return _signature(part, wishes)


def _is_of_a_rare_metre(reading: VerseReading) -> bool:
    """Whether a reading keeps a metre that a usual poem with a heading beside it keeps too."""
    return reading.metre is not None and reading.metre.name not in ("tanka", "haiku")


def _may_be_headed(text: Text, reading: VerseReading) -> bool:
    """Whether the first column may be no part of a poem: short, in kanji, and too much for it."""
    first = text.normal.text[: min(text.breaks)]
    if reading.metre is None or len(first) > _LONGEST_HEADING or not is_kanji_only(first):
        return False
    return tuple(count for count, _ in reading.phrases) != reading.metre.phrases


def _commas_end_phrases(reading: VerseReading) -> bool:
    """Whether every comma ends a phrase; in prose, where a metre is chance, they fall anywhere."""
    firsts = {first for _, first in reading.phrases} | {len(reading.words)}
    commas = (n for n, word in enumerate(reading.words) if word.written == "、")
    return all(n in firsts or n + 1 in firsts for n in commas)


def _verse(text: Text, wishes: Wishes) -> tuple[VerseReading, str]:
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


def _signature(text: Text, wishes: Wishes) -> Interpretation:
    from inscribe.reading.prose import modern_normal
    from inscribe.reading.signatures import read_signature

    normal = _without_return_marks(text.normal)
    reading = read_signature(normal, text.breaks, text.cuts)
    if not reading.proposals:
        return _prose(text, "signature", wishes)
    proposals = reading.proposals
    if wishes.overrides:
        settled = [settled_signature(each, wishes.overrides) for each in proposals]
        proposals = _distinct(
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


def _distinct(proposals: Iterable[Proposal]) -> tuple[Proposal, ...]:
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


def _prose(text: Text, register: Register, wishes: Wishes) -> Interpretation:
    from inscribe.reading.prose import has_kept_signs, modern_normal, prose_words

    normal = text.normal
    reasons: tuple[str, ...] = ()
    legible = has_legible(MARK.sub("", normal.text))
    if not legible:
        reasons = ("nothing can be read",)
    if has_marks(normal.text):
        normal, reasons = _reordered(normal), ("put into Japanese order by the return marks",)
    read_as = Text(normal, text.carved, in_order=normal is text.normal)
    words_of: WordsOf = prose_words
    if has_classical_grammar(normal.text):
        from inscribe.reading.verse import marks_voicing, words_without_metre

        words_of = partial(words_without_metre, voiced=marks_voicing(normal.text))
    words = words_with_repeats(normal, text.carved, words_of if legible else signs_alone)
    doubts: tuple[Doubt, ...] = ()
    if len(normal.text) >= _LEAST_CHINESE and is_kanji_only(text.normal.text):
        words, doubts = _chinese(words, text)
    found = interpretation(read_as, register, words, reasons, ())
    if register == "prose":
        found = _as_quoted(found, normal)
    as_printed = normal is not text.normal or has_kept_signs(text.carved)
    proposals = found.proposals
    if wishes.overrides:
        proposals = tuple(settled_proposal(each, wishes.overrides) for each in proposals)
    return found._replace(
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
    return found._replace(proposals=read_signature(normal).proposals)


def _reordered(normal: NormalText) -> NormalText:
    from inscribe.reading.chinese import reading_order

    order = reading_order(normal.text)
    text = "".join(normal.text[i] for i in order)
    return NormalText(text, tuple(normal.origin[i] for i in order), normal.changes)


def _chinese(words: list[Piece], text: Text) -> tuple[list[Piece], tuple[Doubt, ...]]:
    """Return the words of a text in kanji alone, or its signs one by one, and the doubt."""
    from inscribe.reading.chinese import are_compounds, sign_by_sign

    plain = text.normal.text
    verse = len(plain) in _LINES_OF_CHINESE_VERSE
    how = "the words are read in the order written"
    if not are_compounds(words, verse=verse):
        words = sign_by_sign(plain)
        how = "each sign has its Chinese sound, no word is guessed"
    why = f"Chinese{' verse' * verse} without return marks: {how}"
    return words, (Doubt(0, len(text.carved) - 1, why),)


def _is_a_poem_alone(found: Interpretation) -> bool:
    """Whether there is nothing but a poem that keeps a metre, in which no date stands."""
    best = found.proposals[0]
    return found.register == "verse" and bool(best.phrases) and len(best.reasons) == 1


def _with_dates(found: Interpretation, text: Text, wishes: Wishes) -> Interpretation:
    from inscribe.dates import find

    normal = text.normal
    dates = find(normal.text, wishes.between)
    if not dates:
        return found
    placed = tuple(
        date._replace(first=normal.origin[date.first], last=normal.origin[date.last])
        for date in dates
    )
    if all(date.agreement != "conflict" for date in placed):
        return found._replace(dates=placed)
    from inscribe.reading.inscription.doubts import doubts_of_dates

    return found._replace(dates=placed, doubts=(*doubts_of_dates(placed), *found.doubts))
