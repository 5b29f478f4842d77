"""The glosses of the classical tables (folder verse), by the dictionary form of today.

>>> classical_glosses("流れる", "ながれ", "動詞"), classical_glosses("心", "こころ", "名詞")
(('flow',), ('heart',))
>>> classical_glosses("絶える", "たえ", "動詞")  # 堪ふ and 絶ゆ
('endure', 'cease')
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables

_COLUMNS = "アカガサザタダナハバマヤラワ"
_VOWELS = {
    "u": "うくぐすずつづぬうぶむゆるう",
    "i": "いきぎしじちぢにいびみいりい",
    "e": "えけげせぜてでねえべめえれえ",
}
# How the dictionary form of today ends for each classical class: its vowel, and what follows.
_ENDINGS = {
    "四段": ("u", ""),
    "上二": ("i", "る"),
    "下二": ("e", "る"),
    "上一": ("i", "る"),
    "下一": ("e", "る"),
}
_IRREGULAR = {"ラ変": "る", "カ変": "る", "サ変": "る", "ナ変": "ぬ"}
_ADJECTIVES = {"ク": "い", "シク": "しい"}

Glossed = tuple[str, str]  # how the kana begin, what it means


@tables.cached()
def _known() -> dict[tuple[str, str], list[Glossed]]:
    """Return what is known of each writing and part of speech."""
    found: dict[tuple[str, str], list[Glossed]] = {}
    for written, sort, kana, gloss in (*_nouns(), *_inflected(), *_particles()):
        if gloss:
            found.setdefault((written, sort), []).append((kana, gloss))
    return found


def classical_glosses(written: str, kana: str, part_of_speech: str) -> tuple[str, ...]:
    """Return what the classical tables say a word may mean; nothing where they do not have it.

    Args:
        written: the word as written, or its dictionary form of today.
        kana: its reading; of what inflects, only the beginning is compared.
        part_of_speech: in UniDic's terms.
    """
    sort = part_of_speech if part_of_speech.startswith("助詞") else part_of_speech.partition("-")[0]
    known = _known().get((written, sort), ())
    inflects = sort in ("動詞", "形容詞")
    return tuple(
        dict.fromkeys(
            gloss
            for reading, gloss in known
            if (kana.startswith(reading[:1]) if inflects else kana == reading)
        )
    )


def _nouns() -> Iterator[tuple[str, str, str, str]]:
    for row in tables.rows("verse_nouns"):
        yield row["written"], row["pos"].partition(",")[0], row["kana"], row["gloss"]


def _inflected() -> Iterator[tuple[str, str, str, str]]:
    for row in tables.rows("verse_verbs"):
        yield f"{row['written']}{_ending(row['class'])}", "動詞", row["historical"], row["gloss"]
    for row in tables.rows("verse_adjectives"):
        ending = _ADJECTIVES.get(row["class"].removesuffix("接尾"), "い")
        yield f"{row['written']}{ending}", "形容詞", row["historical"], row["gloss"]


def _ending(inflection: str) -> str:
    for name, (vowel, rest) in _ENDINGS.items():
        column = inflection.removeprefix(name)
        if column != inflection and column[:1] in _COLUMNS:
            return _VOWELS[vowel][_COLUMNS.index(column[0])] + rest
    return _IRREGULAR.get(inflection[:2], "る")


def _particles() -> Iterator[tuple[str, str, str, str]]:
    for row in tables.rows("verse_particles"):
        if row["conjugation"] == "*":
            yield row["written"], row["pos"].replace(",", "-"), row["kana"], row["gloss"]
