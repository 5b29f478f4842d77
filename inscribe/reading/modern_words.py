"""The dictionary that finds words of today in old spelling, made from the installed UniDic.

Every entry of UniDic that has kana in its writing is respelt as it may have been before 1946
(``old_forms``); an entry keeps UniDic's class and cost, so that MeCab weighs it as the word it is,
and hands back the word in current spelling. Entries UniDic itself has in old spelling come too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from inscribe import tables
from inscribe.reading import dictionary, unidic
from inscribe.reading.dictionary import Row
from inscribe.reading.old_forms import current_spelling, old_forms

MARK = "="  # begins the feature of an entry, before the word in current spelling

_CODE = ("modern_words", "old_forms", "old_spellings", "unidic", "dictionary")
_NOT_JAPANESE = re.compile(r"[^\u3005-\u3007\u3041-\u30ff\u3400-\u9fff\U00020000-\U0003ffff]")
_HIRAGANA = re.compile(r"[\u3041-\u3096]")
_KATAKANA = re.compile(r"[\u30a1-\u30fa]")
_DRAWN_OUT = re.compile(r"[ぁぃぅぇぉー]")
_PARTS = frozenset(
    ("名詞", "動詞", "形容詞", "副詞", "形状詞", "代名詞", "連体詞", "接続詞", "感動詞", "助動詞")
) | {"助詞", "接尾辞"}
_MERGED = ("融合", "省略")  # forms of speech (書きゃ) that old print does not have
_FIRST = 100  # how much an entry is preferred to UniDic's own of the same writing and class
_HIGHEST = 32000


def modern_dictionary() -> Path:
    """Return the compiled dictionary of words in old spelling, building it if need be.

    Raises:
        InputError: it cannot be compiled, or no folder can be written to.
    """
    here = Path(__file__)
    code = [here.with_name(f"{name}.py") for name in _CODE]
    return dictionary.dictionary("modern", [*code, *tables.files("initial_wo")], _rows)


def _rows() -> Iterator[Row]:
    """Yield the entries: for each writing and class the word that costs least."""
    current: list[unidic.Word] = []
    own: dict[tuple[str, int], int] = {}  # what UniDic's own entries cost
    sure: set[tuple[str, int, str]] = set()  # writings in current spelling, with class and lemma
    found: dict[tuple[str, int], tuple[int, str]] = {}
    for word in _words():
        modern = current_spelling(word)
        key = word.surface, word.connection
        if modern == word.surface:
            current.append(word)
            sure.add((*key, word.fields[7]))
        else:
            _keep_cheapest(found, key, word.cost, modern)
        own[key] = min(word.cost, own.get(key, _HIGHEST))
    for word in current:
        for old, cost in old_forms(word):
            if (old, word.connection, word.fields[7]) not in sure:
                _keep_cheapest(found, (old, word.connection), word.cost + cost, word.surface)
    for (written, connection), (cost, modern) in found.items():
        before_own = own.get((written, connection), _HIGHEST) - _FIRST
        cost = max(-_HIGHEST, min(cost, before_own))
        yield Row(written, connection, connection, cost, MARK + modern)


def _words() -> Iterator[unidic.Word]:
    source = unidic.folder()
    classes = unidic.classes(source).numbers(lambda row: row[0] in _PARTS)
    for word in unidic.words(source, classes, _NOT_JAPANESE):
        if _KATAKANA.search(word.surface) or (
            _HIRAGANA.search(word.surface)
            and not _DRAWN_OUT.search(word.surface)
            and word.fields[1] != "固有名詞"
            and not word.form.endswith(_MERGED)
        ):
            yield word


def _keep_cheapest(
    found: dict[tuple[str, int], tuple[int, str]], key: tuple[str, int], cost: int, modern: str
) -> None:
    if key not in found or cost < found[key][0]:
        found[key] = (cost, modern)
