"""What EDICT says a word means, by its writing, reading and sort.

>>> dictionary_gloss("硯", "すずり", "名詞-普通名詞-一般")
'inkstone'
>>> dictionary_gloss("暮らす", "くらし", "動詞-一般")
'live, get along'
"""

from __future__ import annotations

from inscribe import tables

# What UniDic's parts of speech are called in the table, the closest first.
_SORTS = {
    "名詞": ("noun", "phrase", "adverb", "suffix", "pronoun"),
    "代名詞": ("pronoun", "noun"),
    "動詞": ("verb",),
    "形容詞": ("adjective",),
    "形状詞": ("noun", "adjective", "adverb"),
    "連体詞": ("attributive", "adjective", "phrase"),
    "副詞": ("adverb", "noun", "phrase"),
    "接続詞": ("conjunction", "phrase", "adverb"),
    "感動詞": ("interjection", "phrase", "conjunction"),
    "接頭辞": ("prefix", "noun"),
    "接尾辞": ("suffix", "noun"),
}
_INFLECTED = ("動詞", "形容詞")
_MOST_KEPT = 20_000


@tables.cached()
def _dictionary() -> tables.Sorted:
    return tables.Sorted("glosses")


@tables.cached(_MOST_KEPT)
def dictionary_gloss(written: str, kana: str, part_of_speech: str) -> str:
    """Return what a word means; nothing where the dictionary has no word of that sort and reading.

    Of what inflects, ``written`` is the dictionary form, and only how the kana begin is compared.
    """
    part = part_of_speech.partition("-")[0]
    row = _dictionary().first_about(written) if part in _SORTS and written else None
    if row is None:
        return ""
    entries = list(
        zip(
            tables.listed(row["kana"]),
            tables.listed(row["sort"]),
            tables.listed(row["gloss"]),
            strict=True,
        )
    )
    for sort in _SORTS[part]:
        for reading, kind, gloss in entries:
            same = reading[:1] == kana[:1] if part in _INFLECTED else reading == kana
            if kind == sort and same:
                return gloss
    return ""
