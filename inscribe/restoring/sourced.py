"""What the sources have in a worn place: the texts found, held against the inscription."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING
from unicodedata import normalize

from inscribe import notation
from inscribe.collation import collate
from inscribe.errors import InputError, InscribeError
from inscribe.reading.spelling import is_kanji
from inscribe.reading.verse import marks_voicing
from inscribe.restoring.answering import SURE, Answer
from inscribe.restoring.name_chances import UNREAD
from inscribe.restoring.spellings import left_over
from inscribe.signs import Transcription
from inscribe.sources import Hit, Library, SourceText, copied_part, find, letters, opened

if TYPE_CHECKING:
    from inscribe.collation import Group
    from inscribe.files import StrPath

MOST_HITS = 3
LEAST_SCORE = 0.1
RECORDED = "the source of the record"
_LINE_ENDS = re.compile("[／\n]")
_AROUND = 6  # signs of the source on either side in which the word with the sign is looked for


def sources_of(
    text: Transcription,
    passages: Sequence[tuple[str, int, int]],
    library: Library | StrPath | None,
    copied: str,
) -> tuple[Hit, ...]:
    """Return the texts that may be the source, the likeliest first; none if nothing is legible.

    Args:
        text: the inscription.
        passages: the kinds of its passages, their first and last signs.
        library: source texts to look in.
        copied: the words of the source that a record names; it is as sure as a source can be.
    """
    with opened(library) as held:
        hits = _found(copied_part(text, passages), held) if held else ()
    return (_named_source(copied), *_others(hits, copied)) if copied else hits


def _found(text: Transcription, library: Library) -> tuple[Hit, ...]:
    try:
        hits = find(library, text, MOST_HITS)
    except InputError:
        return ()
    return tuple(hit for hit in hits if hit.score >= LEAST_SCORE)


def _named_source(words: str) -> Hit:
    """Return the source that a record names."""
    lines = tuple(filter(None, _LINE_ENDS.split(words)))
    text = SourceText("", lines, title=RECORDED)
    return Hit(1, text, SURE, 0, len(lines) - 1, 0.0, 0)


def _others(hits: Iterable[Hit], words: str) -> Iterator[Hit]:
    """Yield the texts found that have other words than the source that a record names."""
    recorded = letters(_LINE_ENDS.sub("", words))
    for hit in hits:
        if letters("".join(hit.text.lines)) != recorded:
            yield hit


def answers(text: Transcription, hits: Iterable[Hit]) -> dict[int, list[Answer]]:
    """Return what each source has for each sign of ``text`` that is in a worn group, by sign."""
    found: dict[int, list[Answer]] = {}
    for hit in hits:
        passage = "\n".join(hit.text.lines[hit.first_line : hit.last_line + 1])
        there = _answers_in(passage, text, hit)
        if hit.spelled != passage:
            in_kana = _answers_in(hit.spelled, text, hit)
            there |= {
                sign: answer
                for sign, answer in in_kana.items()
                if sign not in there or _is_better(answer, there[sign])
            }
        for sign, answer in there.items():
            found.setdefault(sign, []).append(answer)
    return found


def _is_better(in_kana: Answer, printed: Answer) -> bool:
    """Whether the kana of a source tells a sign where its print is written otherwise around.

    A worn place among kana may be one kana of what the print has a kanji for.
    """
    sign_for_sign = len(in_kana.text) == in_kana.signs and in_kana.agrees
    return sign_for_sign and not (printed.agrees and len(printed.text) == printed.signs)


def _answers_in(passage: str, text: Transcription, hit: Hit) -> dict[int, Answer]:
    """Return what the words of a source have for each worn sign."""
    try:
        source = notation.parse(_a_code_point_a_sign(passage))
    except InscribeError:  # a source with marks of its own
        return {}
    spelled_out = not _has_kanji(source) and _has_kanji(text)
    voiced = marks_voicing(source.text)
    found: dict[int, Answer] = {}
    for worn, stands, at, agrees in _worn_groups(collate(text, source).groups):
        near = source.text[max(0, at - _AROUND) : at + len(stands) + _AROUND]
        for position, sign in enumerate(worn):
            found[sign] = Answer(
                hit, stands, len(worn), position, spelled_out, voiced, near, agrees
            )
    return found


def _a_code_point_a_sign(passage: str) -> str:
    """Return words with voiced kana as one code point, and without what chooses a sign's shape.

    >>> [len(_a_code_point_a_sign(each)) for each in ("か\u3099", "葛\U000e0100", "花の")]
    [1, 1, 2]
    """
    shapeless = "".join([char for char in passage if not notation.is_selector(char)])
    return normalize("NFC", shapeless)


def _worn_groups(groups: Sequence[Group]) -> Iterator[tuple[range, str, int, bool]]:
    """Yield the signs of each worn group, what the source has there, where, and if it agrees.

    Where a kanji is thought to say what an unread sign after it may have said (思□ for おもひ), the
    sign is given what the kanji leaves over.
    """
    for at, (before, group) in enumerate(pairwise((None, *groups))):
        assert group is not None
        worn = range(group.copy.start, group.copy.end)
        if group.kind == "unread" and group.source.text:
            agrees = _says_the_same(groups[:at][::-1]) and _says_the_same(groups[at + 1 :])
            yield worn, group.source.text, group.source.start, agrees
        elif _is_worn_addition(group) and before is not None and before.kind == "spelling":
            kanji, said = before.copy.text[-1], before.source.text
            if len(before.copy) == 1 and (rest := left_over(kanji, said, len(group.copy))):
                yield worn, rest, before.source.end - len(rest), _says_the_same(groups[at + 1 :])


def _says_the_same(groups: Iterable[Group]) -> bool:
    """Whether the nearest legible group has the same wording in both texts."""
    return not next((group.is_substantive for group in groups if group.kind != "unread"), False)


def _is_worn_addition(group: Group) -> bool:
    return group.kind in ("added", "unread") and not group.copy.text.strip(UNREAD)


def _has_kanji(text: Transcription) -> bool:
    return any(map(is_kanji, text.text))
