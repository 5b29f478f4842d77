"""Finding a word: by its signs in any form, and by its sound in any spelling.

A query in kanji finds the same characters in whatever form, and words that are read alike (夢 finds
ゆめ); a query in kana or Latin letters finds what sounds so, however it is written, and in Latin
letters without macrons (reigyo) long vowels as well as short ones; the dictionary form of a verb
or adjective finds its other forms (咲く finds 咲け). A pattern is a regular expression over the
text in current forms, looked for by RE2, whose time grows with the length of the text whatever
the pattern is: it never goes back to try another way.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple, Protocol, get_args

from inscribe.concordance.documents import Document
from inscribe.concordance.occurrences import Occurrence, occurrence
from inscribe.errors import InputError
from inscribe.forms import GAP, KAO
from inscribe.reading.spelling import is_kana, is_kanji
from inscribe.sources import sound_key, stem_key
from inscribe.terms import How as How

_HOWS: tuple[How, ...] = get_args(How)
MOST_PATTERN = 200  # characters of a pattern
_LONGEST_WORD = 16  # words that together make what is looked for
_LENGTHENED = re.compile("([おこそとのほもよろゆうくすつぬふむる])[うお]")
# What the transcriber writes of a kao, a gap or a seal: no carved characters, but for the legend.
_MARK = re.compile(f"{KAO}|{GAP}|（印）|（印「|」）")
_OF_MARKS = ("花押", KAO)
_NOTHING = "\0"
# What RE2 knows of ASCII only, and bytes: they would find nothing here, or half a character.
_OF_ASCII = re.compile(r"(?<!\\)(?:\\\\)*\\([wWbBC])")


class Pattern(Protocol):
    """A compiled regular expression."""

    def finditer(self, text: str, /) -> Iterator[re.Match[str]]:
        """Yield its matches, from the first on, none overlapping another."""


@dataclass(frozen=True, slots=True)
class ConcordanceQuery:
    """What is looked for: signs in current forms, sound keys, stems of verbs, or a pattern.

    ``any_length``: its Latin letters mark no long vowel, so that a vowel may be long or short.
    """

    asked: str
    signs: str = ""
    sounds: tuple[str, ...] = ()
    stems: frozenset[str] = frozenset()
    pattern: Pattern | None = None
    any_length: bool = False


class SoughtIn(NamedTuple):
    """What a word can be found by in a document: its text in current forms, sounds, stems."""

    normal: str
    sounds: str
    stems: tuple[str, ...]


def sought_in(document: Document) -> SoughtIn:
    """Return what a word can be found by in a document."""
    sounds = "".join(key for _, _, key, _ in _words_said(document))
    stems = dict.fromkeys(stem for _, _, _, stem in document.words if stem)
    return SoughtIn(document.normal, sounds, tuple(stems))


def may_be_in(held: SoughtIn, query: ConcordanceQuery) -> bool:
    """Whether a document may have a place of what is looked for; where not, it has none."""
    if query.pattern is not None:
        return any(query.pattern.finditer(held.normal)) or any(
            query.pattern.finditer(_without_marks(held.normal))
        )
    return (
        bool(query.signs and query.signs in held.normal)
        or any(_loosely(sound, held.sounds, query) for sound in query.sounds)
        or not query.stems.isdisjoint(held.stems)
    )


def _loosely(sound: str, sounds: str, query: ConcordanceQuery) -> bool:
    if not query.any_length or sound in sounds:
        return sound in sounds
    return re.search("[うお]*".join((*map(re.escape, sound), "")), sounds) is not None


def query_of(asked: str, *, pattern: bool = False, exact: bool = False) -> ConcordanceQuery:
    """Return a query for a word, or for a regular expression.

    ``exact`` asks for the signs alone (in any form), not for the sound.

    Raises:
        InputError: there is nothing to look for, or the pattern is none.
    """
    from inscribe.forms import normalise_text
    from inscribe.sources import is_romanised, kana_of_romanised

    asked = asked.strip()
    if not asked:
        raise InputError("there is no word to look for", hint="as in: inscribe concord FOLDER 夢")
    if pattern:
        return ConcordanceQuery(asked, pattern=_pattern(asked))
    if is_romanised(asked):
        kana = kana_of_romanised(asked)
        any_length = asked.isascii()
        return ConcordanceQuery(asked, "", (sound_key(kana),), _stems(kana), any_length=any_length)
    signs = normalise_text(asked).text
    if exact:
        return ConcordanceQuery(asked, signs)
    return ConcordanceQuery(asked, signs, _sounds(signs), _stems(signs))


def _pattern(asked: str) -> Pattern:
    import re2

    usable = "use . ? * + | [ ] { } ( ) and \\p{Han}, \\p{Hiragana} or \\p{Katakana}"
    if len(asked) > MOST_PATTERN:
        limit = f"the pattern is longer than the limit of {MOST_PATTERN} characters"
        raise InputError(limit, hint="look for a part of it")
    if found := _OF_ASCII.search(asked):
        raise InputError(f"the pattern has \\{found[1]}, which knows no kanji", hint=usable)
    options = re2.Options()
    options.log_errors = False
    try:
        compiled: Pattern = re2.compile(asked, options)
    except re2.error as error:
        said = error.args[0]
        why = said.decode("utf-8", "replace") if isinstance(said, bytes) else str(said)
        raise InputError(f"the pattern cannot be used ({why})", hint=usable) from error
    return compiled


def _sounds(signs: str) -> tuple[str, ...]:
    """Return the sounds of a word: its kana, or its readings as single word and by itself."""
    if all(map(is_kana, signs)):
        return (sound_key(signs),)
    if not all(is_kana(char) or is_kanji(char) for char in signs):
        return ()
    from inscribe.reading import verse
    from inscribe.sources import UNKNOWN

    said = [piece.kana for piece in sorted(verse.readings_of(signs), key=lambda p: p.cost)[:1]]
    if not said:
        said = ["".join(piece.kana for piece in verse.verse_words(signs))]
    return tuple(key for key in map(sound_key, said) if len(key) > 1 and UNKNOWN not in key)


def _stems(word: str) -> frozenset[str]:
    """Return the stems of the verbs and adjectives that a dictionary form may be."""
    from inscribe.reading import verse

    found = (
        stem_key(piece.lemma, piece.part_of_speech)
        for piece in verse.readings_of(word)
        if piece.form.startswith("終止形")
    )
    return frozenset(filter(None, found))


def search(documents: Iterable[Document], query: ConcordanceQuery) -> Iterator[Occurrence]:
    """Yield every hit, document by document, in the order of the signs; none is yielded twice."""
    for document in documents:
        seen: set[tuple[int, int]] = set()
        for first, last, how in sorted(_spans(document, query), key=_longest_first):
            covered = any(one <= first and last <= other for one, other in seen)
            if not covered:
                seen.add((first, last))
                yield occurrence(document, first, last, how)


def _longest_first(span: tuple[int, int, How]) -> tuple[int, int, int]:
    first, last, how = span
    return first, -last, _HOWS.index(how)


def _spans(document: Document, query: ConcordanceQuery) -> Iterator[tuple[int, int, How]]:
    text = _without_marks(document.normal) if query.asked not in _OF_MARKS else document.normal
    if query.pattern is not None:
        for match in query.pattern.finditer(text):
            said = match.group()
            start = match.start() + len(said) - len(said.lstrip(_NOTHING))
            end = match.end() - len(said) + len(said.rstrip(_NOTHING))
            if start < end and not _is_a_part(document, start, end):
                yield document.origin[start], document.origin[end - 1], "pattern"
        return
    if query.signs:
        at = text.find(query.signs)
        while at >= 0:
            end = at + len(query.signs)
            first, last = document.origin[at], document.origin[end - 1]
            stands = "".join(document.signs[first : last + 1])
            if not _is_a_part(document, at, end):
                yield first, last, "same signs" if query.asked in stands else "another form"
            at = text.find(query.signs, at + 1)
    for sound in query.sounds:
        yield from _sounding(document, sound)
        if query.any_length:
            yield from _sounding(document, sound, any_length=True)
    if query.stems:
        for first, last, _, stem in document.words:
            if stem in query.stems:
                yield first, last, "inflected"


def _without_marks(text: str) -> str:
    r"""Return a text in current forms, as long as before, with nothing where a mark is written.

    >>> _without_marks("嶺暁（花押）（印「山花」）").split("\0")
    ['嶺暁', '', '', '', '', '', '', '山花', '', '']
    """
    if "（" not in text and "［" not in text:
        return text
    return _MARK.sub(lambda mark: _NOTHING * len(mark[0]), text)


def _is_a_part(document: Document, start: int, end: int) -> bool:
    """Whether a stretch of the normalised text begins or ends inside a description (⿰木黑)."""
    origin = document.origin
    cuts = [at for at in (start, end) if 0 < at < len(origin) and origin[at - 1] == origin[at]]
    return any(_is_description(document.signs[origin[at]]) for at in cuts)


def _is_description(sign: str) -> bool:
    return "\u2ff0" <= sign[:1] <= "\u2fff"


def _words_said(document: Document) -> list[tuple[int, int, str, str]]:
    """Return the words that can be said: no descriptions of signs."""
    return [word for word in document.words if not _is_description(document.signs[word[0]])]


def _sounding(
    document: Document, sound: str, *, any_length: bool = False
) -> Iterator[tuple[int, int, How]]:
    """Yield the words, or runs of words, that together make a sound."""
    words = _words_said(document)
    for start, (first, _, key, _) in enumerate(words):
        if not sound.startswith(key[:1]):
            continue
        said = ""
        for _, last, key, _ in words[start : start + _LONGEST_WORD]:
            said += key
            if any_length:
                said = _LENGTHENED.sub(r"\1", said)
            if said == sound:
                yield first, last, "sound but for length" if any_length else "same sound"
            if len(said) >= len(sound) or not sound.startswith(said):
                break
