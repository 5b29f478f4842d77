"""Rules of historical spelling against UniDic's own entries in that spelling.

Source: UniDic 2.1.2 (unidic-lite 1.0.8, BSD licence): entries whose kana as written differ from
their form in current kana. Verbs and forms with う are left out: there UniDic gives the classical
sound (たもう for 給ふ) or keeps the old form (あやうからう), where current spelling is meant here.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.mecab import unidic
from inscribe.reading.spelling.historical import modern_kana
from inscribe.reading.spelling.letters import hiragana

# Where the rules differ, and why: they do not know where a word of two parts divides, nor the
# voicing that old spelling leaves unmarked.
DISAGREEMENTS = {
    "しろふくろふ": "two words",
    "おれはし": "two words",
    "つきはぎ": "unmarked voicing",
    "こひぢ": "two words",
    "ひひいん": "the cry of a horse",
}


def pairs() -> Iterator[tuple[str, str, str]]:
    """Yield old spelling, current spelling and part of speech."""
    folder = unidic.folder()
    wanted = ("名詞", "副詞", "形容詞", "形状詞", "代名詞", "接続詞", "接尾辞", "連体詞")
    classes = unidic.classes(folder).numbers(lambda row: row[0] in wanted)
    for word in unidic.words(folder, classes):
        old, modern = hiragana(word.fields[17]), hiragana(word.fields[19])
        medial = not set("はひふへほ").isdisjoint(old[1:]) or not set("ゐゑを").isdisjoint(old)
        if (
            old != modern
            and medial
            and word.fields[12] in "和漢"
            and not set("ぁぃーう") & set(old)
        ):
            yield old, modern, word.fields[0]


def test_against_unidic() -> None:
    known = {(old, modern, pos) for old, modern, pos in pairs()}
    wrong = {old for old, modern, pos in known if modern_kana(old, pos) != modern}
    assert len(known) > 150
    assert wrong == DISAGREEMENTS.keys()
