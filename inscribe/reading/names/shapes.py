"""What may be a name written in kana wholly or by half, by its outward shape alone."""

from __future__ import annotations

import re

from inscribe.reading.spelling import KANA as _KANA

# What may stand around a name, and names that are in kana wholly or by half; seldom asked for.
_KANJI = "[\u4e00-\u9fff]"


_HALF = "(?:[\u3041-\u3096]{2,3}|[\u30a1-\u30fa]{2,3})"


_RESIDENCE = f"(?:{_KANJI}{{1,10}}住人?)?"


_KAO_OR_SEAL = "(?:（花押）|（印[^）]*）)*"


_VERB_AND_MARKS = f"(?:[作造彫刻鐫製写][之]?|之)?{_KAO_OR_SEAL}"


_KANA_NAME = f"{_RESIDENCE}(?:[\u3041-\u3096]{{3,5}}|[\u30a1-\u30fa]{{3,5}}){_VERB_AND_MARKS}"


_HALF_IN_KANA = f"{_RESIDENCE}({_KANJI}{_HALF}|{_HALF}{_KANJI}){_VERB_AND_MARKS}"


_MIXED_NAME = f"{_KANJI}{_HALF}(?!{_KANA.pattern})|(?<!{_KANA.pattern}){_HALF}{_KANJI}"


_LONGEST_KANA_NAME = 19  # signs, without kao and seals


def is_kana_name(text: str) -> bool:
    """Whether a text is a name in kana (three to five), with residence, verb and kao at most.

    >>> is_kana_name("まさよし作"), is_kana_name("つねみつ"), is_kana_name("さくらの花")
    (True, True, False)
    """
    return _may_be_kana_name(text) and re.fullmatch(_KANA_NAME, text) is not None


def half_in_kana(text: str) -> str:
    """Return what may be a name half in kana, with residence, verb and kao at most beside it.

    >>> half_in_kana("武州住たね広作"), half_in_kana("桜の花")
    ('たね広', '')
    """
    found = re.fullmatch(_HALF_IN_KANA, text) if _may_be_kana_name(text) else None
    return found[1] if found else ""


def _may_be_kana_name(text: str) -> bool:
    """Whether a text has kana, and is no longer than a name with what stands around it."""
    return bool(_KANA.search(text)) and (len(text) <= _LONGEST_KANA_NAME or "（" in text)


def is_mixed_name(name: str) -> bool:
    """Whether a text is one kanji and two or three kana, as names half in kana are."""
    return bool(_KANA.search(name)) and re.fullmatch(_MIXED_NAME, name) is not None


def mixed_name_at(text: str, position: int) -> str:
    """Return what may be a name half in kana at a place of a text, or nothing."""
    if not _KANA.search(text, position):
        return ""
    found = re.compile(_MIXED_NAME).match(text, position)
    return found.group() if found else ""
