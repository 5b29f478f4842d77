"""Kana to Latin letters: modified Hepburn as in the ALA-LC table, and ISO 3602 (strict).

Kana alone do not tell how a word is said: おう is one long vowel in 王 and two in 追う, where the
verb's ending begins. So a word is given in current kana spelling with ``|`` where two parts
meet, or with ``ー`` for a long vowel; :func:`spoken` makes that from a dictionary's spelling and
pronunciation. Written from the ALA-LC Japanese romanization table (the practice since 1983, n
before b, m and p) and ISO 3602:1989, both from memory.

>>> hepburn("しんぶん"), hepburn("おおさか"), hepburn("お|う"), hepburn("おもう", verb=True)
('shinbun', 'ōsaka', 'ou', 'omou')
>>> hepburn("まんようしゅう"), hepburn("しずかい|え"), iso3602("ふじさん")
("man'yōshū", 'shizukaie', 'huzisan')
"""

from __future__ import annotations

from typing import Literal

from inscribe import tables
from inscribe.scripts import hiragana as hiragana

Scheme = Literal["hepburn", "iso3602"]

BOUNDARY = "|"
_LONG = "ー"
_MACRON = {"a": "ā", "i": "ī", "u": "ū", "e": "ē", "o": "ō"}
_CIRCUMFLEX = {"a": "â", "i": "î", "u": "û", "e": "ê", "o": "ô"}
# What lengthens a vowel within one part of a word; ii and ei are written as they are spelt.
_LENGTHENING = {("a", "あ"), ("u", "う"), ("e", "え"), ("o", "う"), ("o", "お")}
_PUNCTUATION = {
    "、": ",",
    "。": ".",
    "・": " ",
    "，": ",",
    "．": ".",
    "！": "!",
    "？": "?",
    "「": "“",
    "」": "”",
    "『": "“",
    "』": "”",
    "（": "(",
    "）": ")",
    "　": " ",
}


@tables.cached()
def _syllables() -> dict[str, tuple[str, str]]:
    syllables: dict[str, tuple[str, str]] = {}
    for row in tables.rows("romanisation"):
        syllables.setdefault(row["kana"], (row["hepburn"], row["iso"]))
    return syllables


@tables.cached(16384)
def hepburn(kana: str, *, verb: bool = False) -> str:
    """Return a word in modified Hepburn, in small letters.

    ``kana`` is a word in current kana spelling (particles as they are said: わ, え, お), ``|``
    where two parts of it meet; with ``verb``, a last う is the ending of a verb and stands
    apart. Anything that is not kana is kept.

    >>> hepburn("ばあい"), hepburn("ば|あい"), hepburn("いっち"), hepburn("ビール")
    ('bāi', 'baai', 'itchi', 'bīru')
    """
    return _word(kana, verb, "hepburn")


@tables.cached(4096)
def iso3602(kana: str, *, verb: bool = False) -> str:
    """Return a word in ISO 3602, strict: every kana has letters of its own, long vowels a hat.

    >>> iso3602("つづく"), iso3602("とうきょう"), iso3602("をとめ"), iso3602("しんあい")
    ('tuduku', 'tôkyô', 'wotome', "sin'ai")
    """
    return _word(kana, verb, "iso3602")


def spoken(spelling: str, pronunciation: str) -> str:
    """Return a spelling with its long vowels and the meeting of its parts made plain.

    Both are kana as a dictionary gives them, one sign for one sign: the pronunciation writes ``ー``
    where a vowel is long, and only there. Where they cannot be laid side by side, the spelling
    is returned as it is.

    >>> spoken("オモウ", "オモウ"), spoken("オオサカ", "オーサカ"), spoken("エイ", "エー")
    ('おも|う', 'おーさか', 'えい')
    """
    spelling, pronunciation = hiragana(spelling), hiragana(pronunciation)
    if len(spelling) != len(pronunciation):
        return spelling
    return "".join(map(_spoken_sign, spelling, pronunciation)).lstrip(BOUNDARY)


def _spoken_sign(written: str, said: str) -> str:
    if said == _LONG:
        return written if written == "い" else _LONG
    if said in "あいうえお":
        return BOUNDARY + said
    return written if said in "じず" else said  # ぢ and づ are told apart by ISO 3602


def _word(kana: str, verb: bool, scheme: Scheme) -> str:
    kana = hiragana(kana)
    if verb and kana.endswith("う"):
        kana = f"{kana[:-1]}{BOUNDARY}う"
    lengthened = _MACRON if scheme == "hepburn" else _CIRCUMFLEX
    out: list[str] = []
    before = ""
    after_n = doubled = False
    for unit in units(kana):
        last = out[-1][-1] if out and before != BOUNDARY else ""
        if last in lengthened and (unit == _LONG or (last, unit) in _LENGTHENING):
            out[-1] = out[-1][:-1] + lengthened[last]
        elif unit not in ("っ", BOUNDARY):
            letters = _letters(unit, scheme)
            letters = _doubled(letters) if doubled else letters
            out.append(f"'{letters}" if after_n and letters[0] in "aiueoy" else letters)
        after_n = unit == "ん" or (after_n and unit == BOUNDARY)
        doubled = unit == "っ" or (doubled and unit == BOUNDARY)
        before = unit
    return "".join(out)


def units(kana: str) -> list[str]:
    """Cut hiragana into what is romanised as one: two kana where the table has them as a pair.

    >>> units("きょうは")
    ['きょ', 'う', 'は']
    """
    syllables = _syllables()
    found: list[str] = []
    position = 0
    while position < len(kana):
        pair = kana[position : position + 2]
        found.append(pair if len(pair) == 2 and pair in syllables else pair[0])
        position += len(found[-1])
    return found


def _letters(unit: str, scheme: Scheme) -> str:
    found = _syllables().get(unit)
    if found is None:
        return _PUNCTUATION.get(unit, unit)
    return found[0] if scheme == "hepburn" else found[1]


def _doubled(letters: str) -> str:
    if letters.startswith("ch"):
        return f"t{letters}"
    doubles = letters[0].isalpha() and letters[0] not in "aiueo"
    return letters[0] + letters if doubles else letters
