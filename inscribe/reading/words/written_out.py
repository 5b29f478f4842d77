"""Verbs of signatures whose ending is carved in kana: 作ル, 刻ス, 鐫リテ.

The sign carries the stem, the kana after it the end of one of the word's forms; so every verb of
the tables has them, by its native word or by its Chinese sound and す.

>>> from inscribe.reading.words import words_of
>>> [word.kana for word in written_out("刻ス", words_of("刻"))]
['こくす']
>>> [word.kana for word in written_out("作リテ", words_of("作"))]
['つくりて']
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from inscribe import tables
from inscribe.reading.words.compounds import parts_written
from inscribe.reading.words.conjugating import form_ended
from inscribe.reading.words.lexical import SignatureWord, cost_by_length
from inscribe.scripts import katakana

_ENDED = re.compile("([一-龠々]{1,2})([ぁ-ゖァ-ヺ]{1,4})")
_LONGEST = 6  # signs
_VERBS = frozenset({"verb", "transitive"})
_DOES = "す"
_FINAL = "うくぐすずつぬぶむる"


def written_out(text: str, words: Iterable[SignatureWord]) -> Iterator[SignatureWord]:
    """Yield the verb that a text is with its ending in kana.

    Args:
        text: kanji and the kana after them.
        words: what the kanji are alone.
    """
    written = kanji_before_ending(text)
    for said in _said(written, words):
        if form := form_ended(said, text[len(written) :]):
            yield SignatureWord(text, "verb", form, form, cost=cost_by_length(text))
            return


@tables.cached()
def verbs_in_kana() -> dict[str, str]:
    """Return the native verbs of making as they are carved in katakana, and said.

    >>> verbs_in_kana()["ホル"]
    'ほる'
    """
    acts = (row["native"] for row in tables.rows("signature_parts") if row["sort"] == "act")
    return {katakana(verb): verb for verb in acts if len(verb) > 1 and verb[-1] not in "すず"}


def kanji_before_ending(text: str) -> str:
    """Return the one or two kanji of a word that ends in kana, nothing for what is no such word.

    >>> kanji_before_ending("刻ス"), kanji_before_ending("刻之")
    ('刻', '')
    """
    ended = _ENDED.fullmatch(text) if "ぁ" <= text[-1] <= "ヺ" and len(text) <= _LONGEST else None
    return ended[1] if ended else ""


def _said(written: str, words: Iterable[SignatureWord]) -> list[str]:
    """Return the dictionary forms that the kanji may be read as, the usual first."""
    found: list[str] = []
    for word in words:
        if word.kind in _VERBS:
            said = (*word.with_object.split(";"), word.kana, *word.alternatives)
            found += [kana.removeprefix("に ") for kana in said if kana and kana[-1] in _FINAL]
            found += [f"{word.kana}{_DOES}"] * (len(written) > 1)
    for part in parts_written("act", written):
        found += [part.native, f"{part.kana}{_DOES}"]
    return list(dict.fromkeys(filter(None, found)))
