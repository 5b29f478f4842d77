"""Formulas written out in Japanese order, their verbs with endings in kana: 需ニ応シテ, ヲ写ス.

``signature_parts.tsv`` has the wishes (需 好 望), the links before them (之 ノ) and, by their
particle, the verbs (に: 応 倣 依; を: 写 模 以); a verb stands in any of its forms, in either kana,
with or without voicing marks.

>>> [(word.kind, word.kana) for word in formulas_in_japanese("之需ニ応シテ")]
[('patron', 'の もとめ に おうじて')]
>>> [(word.kind, word.kana) for word in formulas_in_japanese("ヲ慕ヒ")]
[('modelled', 'を したい')]
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.spelling import hiragana
from inscribe.reading.words.compounds import CompoundPart, parts_written
from inscribe.reading.words.conjugating import form_ended
from inscribe.reading.words.lexical import SignatureWord, cost_by_length

_PHRASE = re.compile(
    "(?P<link>[之ノの]?)(?P<wish>[一-龠]{0,2})(?P<particle>[ニにヲを])"
    "(?P<verb>[一-龠]|ナラ|なら|[ヨよ])(?P<ending>[ぁ-ゖァ-ヺ]{0,4})"
)
_KANA = re.compile("[ぁ-ヺ]")
_WISH, _ANSWERING = "wish", "answering"
# What a verb makes of what it is said of: the sorts of verbs, and the classes of the words.
_CLASSES = {_ANSWERING: "patron", "modelling": "modelled", "using": "withal", "being": "where"}
_OF, _FINAL = "の", "うくぐすずつぬぶむる"
_KNOWN = 5_000


@tables.cached(_KNOWN)
def formulas_in_japanese(text: str) -> tuple[SignatureWord, ...]:
    """Return the words that a text is as a formula in Japanese order."""
    found = _PHRASE.fullmatch(text)
    return tuple(_words(text, **found.groupdict())) if found else ()


def kana_of_formulas(text: str) -> int:
    """Return how many kana of a text belong to such formulas.

    >>> kana_of_formulas("嶺暁ニ倣フ"), kana_of_formulas("花に鳴く")
    (2, 0)
    """
    return sum(map(_kana_of, _PHRASE.finditer(text)))


def _kana_of(found: re.Match[str]) -> int:
    """Return how many kana the longest formula has that ends within what might be one."""
    link, before, *_ = found.groups()
    whole = found.group()
    for end in range(len(whole), len(link + before) + 1, -1):
        for first in range(len(link + before) + 1):
            if formulas_in_japanese(whole[first:end]):
                return len(_KANA.findall(whole[first:end]))
    return 0


def _words(
    text: str, link: str, wish: str, particle: str, verb: str, ending: str
) -> Iterator[SignatureWord]:
    wished = parts_written(_WISH, wish) if wish else ()
    if bool(wish) != bool(wished) or (link and not wish):
        return  # 之ヲ写ス: he copied this
    for sort, kind in _CLASSES.items():
        for part in parts_written(sort, verb):
            said = _said(part, ending)
            if said and part.particle == hiragana(particle) and bool(wish) == (sort == _ANSWERING):
                words = (_OF * bool(link), *(one.kana for one in wished[:1]), part.particle, said)
                kana = " ".join(filter(None, words))
                yield SignatureWord(text, kind, kana, cost=cost_by_length(text))


def _said(verb: CompoundPart, ending: str) -> str:
    """Return a verb as it is said with its ending; one without kana, as it ends a sentence."""
    if verb.native[-1] in _FINAL:
        return form_ended(verb.native, ending) if ending else verb.native
    return verb.native if verb.native.endswith(hiragana(ending)) else ""
