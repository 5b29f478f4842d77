"""A text in current character forms and current kana spelling, whatever its age.

The characters are the normaliser's work; the spelling is decided word by word: MeCab runs over
the text with UniDic and, beside it, the old spellings of UniDic's own words (``modern_words``),
so that the words around decide what かは is: 川, 皮, or か and は.

>>> modern_text("さう言つて、彼は笑つてゐた。")
'そう言って、彼は笑っていた。'
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING, NamedTuple

from inscribe import tables
from inscribe.forms import NormalText, normalise_text
from inscribe.reading.spelling import hiragana
from inscribe.scripts import katakana

if TYPE_CHECKING:
    from fugashi import GenericTagger


MARK = "="  # begins what MeCab says of an old spelling, before the word in current spelling
MARK_BEFORE_TA = ">"  # the same, for a form (立つ for 立っ) that only stands before た and て

_ROOMS = ("spelling", "mecab", "prose")  # whose code makes the dictionary
# What a verb's form in っ stands before: 言った, 言って, 言っちゃ, 言っとく.
_TA = ("た", "て", "ち")
_BENT = frozenset(("た", "たら", "たり", "て", "てる"))  # as MeCab divides them
_DA = frozenset(("だ", "だら", "だり", "で", "でる"))  # what one in ん stands before: 飲んだ
_TOKU = frozenset(("とい", "とく", "とけ", "とこ", "とっ", "とつ"))
_HIRAGANA = re.compile("[\u3041-\u3096]")
_KATAKANA_WITH_KANJI = "ヲ|[\u3400-\u9fff][ハニノテヘトフヒルレリシモガ]"  # seldom searched for
_KANA = re.compile("[\u3041-\u3096\u30a1-\u30fa]")
_FULL_WIDTH = frozenset(map(chr, range(0xFF01, 0xFF5F)))  # digits and letters: print keeps them
_ALWAYS = str.maketrans("ゐゑヰヱ", "いえイエ")


class ModernWord(NamedTuple):
    """A word of a normalised text, from character ``first`` to ``last``, as spelt today."""

    first: int
    last: int
    written: str
    modern: str


def modern_text(text: str) -> str:
    """Return ``text`` as it would be printed today.

    Kanji words, okurigana and 々 stay as they are; so do the signs of ``kept_in_print.tsv``.
    """
    return modern_normal(normalise_text(text), text)


def modern_normal(normal: NormalText, carved: Sequence[str]) -> str:
    """Return a normalised text as it would be printed today.

    ``carved`` has what is carved, one string a sign, so that a 々 can be set back.
    """
    if not has_kept_signs(carved):
        return modern_spelling(normal.text)
    kept = _kept()
    signs = (carved[sign] for sign in normal.origin)
    printed = (sign if sign in kept else now for sign, now in zip(signs, normal.text, strict=True))
    return _spelt("".join(printed), normal.text)


def has_kept_signs(carved: Sequence[str]) -> bool:
    """Return whether a sign is among those that print keeps although a commoner form exists."""
    return not _kept().isdisjoint(carved)


@tables.cached()
def _kept() -> frozenset[str]:
    return _FULL_WIDTH.union(row["written"] for row in tables.rows("kept_in_print"))


def modern_spelling(normalised: str) -> str:
    """Return a text in current character forms in current kana spelling."""
    return _spelt(normalised, normalised)


def _spelt(printed: str, expanded: str) -> str:
    """Return a text in current spelling; ``expanded`` has what each 々 of it stands for."""
    if not _KANA.search(printed):
        return printed
    found = []
    start = 0
    for line in printed.splitlines(keepends=True):
        end = start + len(line)
        words = modern_words(line) if line.strip() else []
        if any(word.written[0] == "々" for word in words):  # 馬鹿々々しい: no such word is listed
            words = [_with_repeats(word, line) for word in modern_words(expanded[start:end])]
        found.append("".join([word.modern for word in words]) if words else line)
        start = end
    return "".join(found)


def _with_repeats(word: ModernWord, line: str) -> ModernWord:
    """Return a word with each 々 of the line it is from, unless its length has changed."""
    as_printed = line[word.first : word.last + 1]
    if len(word.modern) != len(as_printed):
        return word
    signs = zip(as_printed, word.modern, strict=True)
    return word._replace(modern="".join(sign if sign == "々" else now for sign, now in signs))


def modern_words(normalised: str) -> list[ModernWord]:
    """Return the words of a normalised text with their current spelling; they tile the text.

    >>> [word.modern for word in modern_words("彼ト言ヒ我ト言フ")]
    ['彼', 'ト', '言イ', '我', 'ト', '言ウ']
    """
    if not is_in_katakana(normalised):
        return _words(normalised)
    words = []
    for word in _words(hiragana(normalised)):
        written, modern = normalised[word.first : word.last + 1], katakana(word.modern)
        words.append(word._replace(written=written, modern=modern))
    return words


def is_in_katakana(text: str) -> bool:
    """Return whether katakana take the place of hiragana in a text.

    >>> is_in_katakana("世ノ人ハ言フ"), is_in_katakana("ビール瓶"), is_in_katakana("世の人ハ")
    (True, False, False)
    """
    if _HIRAGANA.search(text) or not _KANA.search(text):
        return False
    return bool(re.search(_KATAKANA_WITH_KANJI, text))


def _words(normalised: str) -> list[ModernWord]:
    words: list[ModernWord] = []
    position = 0
    decoded = [*_decoded(normalised), ("", "")]
    for (written, feature), (following, _) in pairwise(decoded):
        last = position + len(written) - 1
        mark = feature[:1]
        if mark == MARK:
            modern = feature[1:]
        elif mark == MARK_BEFORE_TA:
            modern = _before_ta(written, feature[1:], following)
        elif feature == "動詞" and written[-1] == "つ" and following in _BENT:
            modern = written[:-1] + "っ"  # 立つ itself is never followed by て or た
        else:
            modern = written.translate(_ALWAYS)
        words.append(ModernWord(position, last, written, modern))
        position = last + 1
    return words


def _before_ta(written: str, modern: str, following: str) -> str:
    if modern[-1] == "ん" and following not in _DA:
        return modern[:-1] + written[-1]
    if modern[-1] == "っ" and not (following.startswith(_TA) or following in _TOKU):
        return modern[:-1] + written[-1]
    return modern


def _decoded(text: str) -> Iterator[tuple[str, str]]:
    """Yield each word of the text and the first field of its feature, spaces too."""
    position = 0
    for line in _tagger().parse(text).split("\n"):
        written, _, feature = line.partition("\t")
        if not text.startswith(written, position):  # MeCab leaves spaces out
            start = text.index(written, position)
            yield text[position:start], ""
            position = start
        if written:
            yield written, feature
            position += len(written)
    if position < len(text):
        yield text[position:], ""


def old_words() -> Path:
    """Return the compiled dictionary of words in old spelling, building it if need be.

    Raises:
        InputError: it cannot be compiled, or no folder can be written to.
    """
    from inscribe.reading import mecab

    return mecab.dictionary("modern", _sources(), _write_parts)


def gathering() -> tuple[str, Callable[[Path], None]]:
    """Return what that dictionary is called in the cache, and what writes its words to a folder."""
    from inscribe.reading import mecab

    return mecab.keyed("modern", _sources()), _write_parts


def _sources() -> list[Path]:
    from inscribe.reading import mecab

    reading = Path(__file__).parent.parent
    code = [path for room in _ROOMS for path in sorted((reading / room).glob("*.py"))]
    return [
        *code,
        *mecab.version_files(),
        *tables.files("initial_wo"),
        *tables.files("historical_words"),
    ]


def _write_parts(folder: Path) -> None:
    from inscribe.reading import mecab
    from inscribe.reading.prose.rows import rows

    mecab.write_rows(folder / "entries.csv", rows(MARK, MARK_BEFORE_TA))


@tables.cached()
def _tagger() -> GenericTagger:
    from fugashi import GenericTagger

    from inscribe.reading import mecab

    folder, words = quote(str(mecab.folder())), quote(str(old_words()))
    shape = r"-F '%m\t%f[0]\n' -U '%m\t\n' -E ''"
    return GenericTagger(f"-r '{os.devnull}' -O '' -d {folder} -u {words} {shape}")
