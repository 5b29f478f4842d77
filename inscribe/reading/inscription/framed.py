"""Headings, dedications and seals read by their frame, and Chinese by what is known of it.

飛梅之図 is what 飛梅 is read, with "no zu"; 題隅田川 what 隅田川 is read, with "ni dai su".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from inscribe.forms import NormalText, carved_between
from inscribe.reading import chinese
from inscribe.reading.inscription.landmarks import landmark
from inscribe.reading.inscription.prose_nouns import noun_read_as_a_whole
from inscribe.reading.inscription.weighing import by_weight
from inscribe.reading.inscription.wishes import Wishes
from inscribe.reading.passages import Frame, frame_of
from inscribe.reading.spelling import hepburn, is_kanji_only
from inscribe.reading.words import (
    Chances,
    Doubt,
    InscribedText,
    Interpretation,
    Kind,
    Proposal,
    ReadWord,
    Token,
    Weighing,
    carved_text,
    chance,
    doubts_of_forms,
    settled_proposal,
    tokens_of,
    words_of,
)

_MARK = "補助記号"
_FRAME = "frame"
_FOR = "為"
_LINKS = frozenset("のノ之")
_LEGEND = "the legend of a seal"
_LONGEST_LINE = 84  # signs that are put into Japanese order
_OF_TITLES = frozenset(
    {"poet", "work", "chapter", "section", "poem_word", "subject", "within", "city"}
)
_OF_SETS = frozenset({"count", "within", "numeral"})
_ON_FITTINGS = _OF_SETS | {"material", "invocation", "remark"}
_WORDS = "words of techniques, metals, sets and wishes"
_OF_TABLES = ("subject", "place", "city", "quarter", "name")


def read_by_frame(kind: Kind, text: InscribedText, wishes: Wishes) -> Interpretation | None:
    """Return what a heading, dedication or seal says; None where it has no frame that is known."""
    if kind == "seal":
        return _seal(text)
    frame = frame_of(kind, text.normal.text)
    if frame is not None and frame.begins == _FOR:
        return None  # the words of signatures say what it is for: 二親, 追善
    tokens = (_title(frame, text.normal) or landmark(text)) if kind == "heading" else ()
    if frame is not None and not tokens:
        tokens = _tokens(kind, frame, text)
    if not tokens:
        return None
    romaji = " ".join(token.romaji for token in tokens if token.romaji)
    listed = all(token.part_of_speech == _FRAME for token in tokens)
    sure = chance("frame whole", {"listed": float(listed)})
    weighing = Weighing(Chances(sure, (sure,) * len(tokens)))
    best = Proposal(tokens, romaji, 0.0, (f"a {kind} by its frame",), weighing=weighing)
    return _interpretation(text, best, wishes)


def _interpretation(text: InscribedText, best: Proposal, wishes: Wishes) -> Interpretation:
    from inscribe.reading.prose import modern_normal

    if wishes.overrides:
        best = settled_proposal(best, wishes.overrides)
    return Interpretation(
        carved_text(text),
        text.normal.text,
        modern_normal(text.normal, text.carved),
        "prose",
        (best,),
        changes=text.normal.changes,
        doubts=doubts_of_forms(text),
    )


def _tokens(kind: Kind, frame: Frame, text: InscribedText) -> tuple[Token, ...]:
    plain = text.normal.text
    start, end = len(frame.begins), len(plain) - len(frame.ends)
    first = _said(text, 0, start, frame.said_first) if start else ()
    inner = _inner(kind, text, start, end) if start < end else ()
    said_last = frame.said_last
    if inner and plain[end - 1] in _LINKS and inner[-1].first == text.normal.origin[end - 1]:
        said_last = said_last.removeprefix("の ")  # 左花の歌, but not 右貫之歌
    last = _said(text, end, len(plain), said_last) if end < len(plain) else ()
    if frame.order == "turned":
        return (*inner, *last, *first)
    return (*inner, *first, *last) if frame.order == "between" else (*first, *inner, *last)


def _said(
    text: InscribedText, first: int, end: int, kana: str, gloss: str = ""
) -> tuple[Token, ...]:
    """Return a stretch as one word with a reading that is known."""
    said = " ".join("o" if word == "を" else hepburn(word) for word in kana.split())
    normal = text.normal
    word = Token(
        carved_between(normal, first, end - 1),
        normal.text[first:end],
        kana,
        said,
        normal.origin[first],
        normal.origin[end - 1],
        part_of_speech=_FRAME,
        gloss=gloss,
    )
    return (word,)


def _inner(kind: Kind, text: InscribedText, first: int, end: int) -> tuple[Token, ...]:
    """Return the words within a frame: a name in a dedication, in a heading whatever it is."""
    normal = text.normal
    stretch = NormalText(normal.text[first:end], normal.origin[first:end])
    inner = InscribedText(stretch, text.carved)
    if kind == "dedication":
        from inscribe.reading.signatures import read_signature

        found = read_signature(stretch).proposals
        if found:
            return found[0].tokens
    within = frame_of(kind, stretch.text)
    if within is not None and within.inner_of(stretch.text):
        return _tokens(kind, within, inner)  # 右瀟湘八景之内
    if known := landmark(inner) or _in_tables(inner) or _quoted(stretch):
        return known
    from inscribe.reading.prose import prose_words

    return tokens_of(prose_words(stretch.text), inner)


def _title(frame: Frame | None, normal: NormalText) -> tuple[Token, ...]:
    """Return the words of a title that is all of persons, works, subjects: 王羲之観鵞図.

    Nothing where a frame holds no more than one of them.
    """
    inner = frame.inner_of(normal.text) if frame else ""
    if inner and any(word.kind in _OF_TITLES for word in words_of(inner)):
        return ()
    from inscribe.reading.signatures import is_quoted, read_signature

    if is_quoted(normal.text):
        return read_signature(normal).proposals[0].tokens
    return _quoted(normal)


def _quoted(stretch: NormalText) -> tuple[Token, ...]:
    """Return the words of a title all of which are persons, works and subjects of tables."""
    from inscribe.reading.signatures import read_signature

    found = read_signature(stretch).proposals[:1]
    tokens = found[0].tokens if found else ()
    of_titles = _OF_TITLES | _OF_SETS
    return tokens if all(token.part_of_speech in of_titles for token in tokens) else ()


def _in_tables(text: InscribedText) -> tuple[Token, ...]:
    """Return a stretch as the subject, place or poet that the tables have; nothing otherwise."""
    from inscribe.reading.words import POET, words_from

    plain = text.normal.text
    for word in words_from(plain[0]).get(plain, ()):
        if word.family == POET:
            from inscribe.reading.signatures import read_signature

            return read_signature(text.normal).proposals[0].tokens
        if word.kind in _OF_TABLES and word.kind != "name":
            token = _said(text, 0, len(plain), word.kana, word.gloss)[0]
            romaji = token.romaji
            name = romaji[:1].upper() + romaji[1:]
            return (replace(token, romaji=name),)
    return ()


def _seal(text: InscribedText) -> Interpretation | None:
    """Return what a seal says: the readings of its legend."""
    from inscribe.reading.prose import modern_normal
    from inscribe.reading.signatures import read_signature

    found = read_signature(text.normal)
    part = found.parts.get("seal")
    if part is None:
        return None
    made: list[Proposal] = []
    for romaji in (part.romaji, *part.alternatives):
        first, last = part.first, part.last
        surface = "".join(text.carved[first : last + 1])
        token = Token(surface, text.normal.text, part.kana, romaji, first, last)
        made.append(Proposal((token,), romaji, 1 / len(made) if made else 1.0, (_LEGEND,)))
    modern = modern_normal(text.normal, text.carved)
    read = Interpretation(
        carved_text(text), text.normal.text, modern, "signature", tuple(made), found.parts
    )
    return by_weight("signature", read)


def read_as_saying(text: InscribedText, wishes: Wishes) -> Interpretation | None:
    """Return what a Chinese passage says, as ``inscribe.reading.chinese`` proposes it.

    None where there are other signs than kanji.
    """
    plain = text.normal.text
    if not is_kanji_only(chinese.without_marks(plain).replace("□", "")) or not _is_line(plain):
        return None
    if tokens := _of_fittings(text.normal):
        sure = chance("frame whole", {"listed": 1.0})
        romaji = " ".join(token.romaji for token in tokens)
        weighing = Weighing(Chances(sure, (sure,) * len(tokens)))
        return _interpretation(
            text, Proposal(tokens, romaji, 0.0, (_WORDS,), weighing=weighing), wishes
        )
    found = [
        Proposal(_placed(each.words, text), each.romaji, each.weight, (each.reason,))
        for each in chinese.chinese_readings(plain, text.breaks)
    ]
    if not found:
        return None
    first, *others = found
    read = _interpretation(text, first, wishes)
    doubts = read.doubts
    if chinese.known_saying(plain) is None and not chinese.has_marks(plain):
        ends = text.normal.origin[0], text.normal.origin[-1]
        why = f"Chinese without return marks: {first.reasons[0]}"
        doubts = (*doubts, Doubt(*ends, why))
    read = replace(read, proposals=(*read.proposals, *others), doubts=doubts)
    return by_weight("chinese", read)


def _of_fittings(normal: NormalText) -> tuple[Token, ...]:
    """Return the words of a text that is all of techniques, metals, sets or wishes: 肉合彫."""
    from inscribe.reading.signatures import read_signature

    if chinese.known_saying(normal.text) is not None:
        return ()
    found = read_signature(normal).proposals[:1]
    tokens = found[0].tokens if found else ()
    known = all(token.part_of_speech in _ON_FITTINGS for token in tokens)
    return tokens if known and len(normal.text) > 1 else ()


def _is_line(plain: str) -> bool:
    """Whether a text is read as a Chinese line: a saying, or more than words anybody knows."""
    if len(plain) > _LONGEST_LINE:
        return False
    if chinese.known_saying(plain) is not None or chinese.has_marks(plain):
        return True
    from inscribe.reading.mecab import unidic_words

    if len(plain) == 1 or noun_read_as_a_whole(plain):
        return False
    return not chinese.are_compounds(unidic_words(plain), verse=False)


def _placed(words: Sequence[ReadWord], text: InscribedText) -> tuple[Token, ...]:
    """Return words, in whatever order they are said, as tokens at their signs."""
    plain = text.normal.text
    if "".join(word.written for word in words) == plain:
        return tokens_of(words, text)
    taken = [False] * len(plain)
    tokens: list[Token] = []
    for word in words:
        at = _free_place(plain, word.written, taken)
        if at < 0:
            continue
        taken[at : at + word.length] = [True] * word.length
        stretch = NormalText(word.written, text.normal.origin[at : at + word.length])
        tokens += tokens_of([word], InscribedText(stretch, text.carved))
    return tuple(tokens)


def _free_place(plain: str, written: str, taken: Sequence[bool]) -> int:
    at = plain.find(written)
    while at >= 0 and any(taken[at : at + len(written)]):
        at = plain.find(written, at + 1)
    return at
