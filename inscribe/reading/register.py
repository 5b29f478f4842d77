"""Which register a text is in: verse, signature or prose.

A signature is told by its formulae (``inscribe.reading.signature_likelihood``). What has kana
enough and is short enough may be verse; its morae then decide. Everything else is prose.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

SIGNATURE = 0.5  # from this likelihood on, a text is held for a signature
_KANA = re.compile("[\u3041-\u3096\u30a1-\u30fa]")
_HEADING = "(?:題|よみ人|読人)(?:し|知)ら[ずす]"  # of poems; seldom asked for
# What may stand around a name, and names that are in kana wholly or by half; seldom asked for.
_KANJI = "[\u4e00-\u9fff]"
_HALF = "(?:[\u3041-\u3096]{2,3}|[\u30a1-\u30fa]{2,3})"
_RESIDENCE = f"(?:{_KANJI}{{1,10}}住人?)?"
_KAO_OR_SEAL = "(?:（花押）|（印[^）]*）)*"
_VERB_AND_MARKS = f"(?:[作造彫刻鐫製写][之]?|之)?{_KAO_OR_SEAL}"
_KANA_NAME = f"{_RESIDENCE}(?:[\u3041-\u3096]{{3,5}}|[\u30a1-\u30fa]{{3,5}}){_VERB_AND_MARKS}"
_HALF_IN_KANA = f"{_RESIDENCE}({_KANJI}{_HALF}|{_HALF}{_KANJI}){_VERB_AND_MARKS}"
_MIXED_NAME = f"{_KANJI}{_HALF}(?!{_KANA.pattern})|(?<!{_KANA.pattern}){_HALF}{_KANJI}"
_TAIL = f"(?P<signs>{_KANJI}{{2,}}[作造彫刻鐫製写書][之]?){_KAO_OR_SEAL}$"
_LEAST_TAIL = 3  # signs of a signature that follows a poem in the same column
_MOST_TAILS = 8
_LONGEST_KANA_NAME = 19  # signs, without kao and seals
_MARKS = re.compile("［[^］]*］|（[^）]*）")
_MARKS_OF_TRANSCRIBERS = re.compile(r"（花押）|（印|［[　 ]+］")
_SENTENCES = re.compile(r"。|「[^」]*」")
_MODERN_GRAMMAR = (  # compiled when a text has kana
    "[いきしちにひみりえけせてねへめれゐゑ]まし[たて]|ませ[うん]|でせう|でし[たよ]|だつた|だらう|"
    "なかつた|ならない|であ[るつ]|て[ゐい][るた]|のです|でなければ|ぢやない|ございま|[下くだ]さい$|"
    "(?<!た)つた$"
)
_CLASSICAL_GRAMMAR = (  # seldom asked for
    "け(?:り|る|れ)|[らけ][むん]|べ[しきく]|[つぬ]る|ざ[りるれ]|なれ[はば]|を[はば]|[とに][そぞ]|[こそ]そ"
    "|たま[ふひへは]|侍[りる]|かは|つつ|つゝ|せ[はば]"
)
_CLASSICAL_KANA = 0.5
_ENOUGH_GRAMMAR = 2
_VERSE_MOST_SIGNS = 48
_VERSE_LEAST_SIGNS = 8
_VERSE_LEAST_KANA = 8


@lru_cache(maxsize=16)  # each register asks it of the same text
def kana_share(text: str) -> float:
    """Return the share of kana among the signs of a text."""
    return len(_KANA.findall(text)) / len(text) if text else 0.0


def is_kanji_only(text: str) -> bool:
    """Whether a text is nothing but kanji and 々.

    >>> is_kanji_only("春色"), is_kanji_only("春の色"), is_kanji_only("")
    (True, False, False)
    """
    return bool(text) and all("\u3400" <= sign <= "\u9fff" or sign == "々" for sign in text)


def may_be_signature(text: str) -> bool:
    """Whether a normalised text has few enough kana to be a signature.

    >>> may_be_signature("於東都応需造之"), may_be_signature("花の色はうつりにけりな")
    (True, False)
    """
    return kana_share(text) <= 0.4


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


def places_of_tail(text: str) -> tuple[int, ...]:
    """Return the offsets at which the signature may begin that a text with kana ends in.

    It has three kanji or more, with a verb; the longest comes first.

    >>> places_of_tail("淵の色綾国刻"), places_of_tail("今朝の初雪")
    ((2, 3), ())
    """
    found = re.search(_TAIL, text)
    if found is None:
        return ()
    last = found.end("signs") - _LEAST_TAIL
    return tuple(range(max(found.start("signs"), last - _MOST_TAILS), last + 1))


def is_heading(text: str) -> bool:
    """Whether a text is a heading that anthologies give a poem of which nothing is known.

    >>> is_heading("題しらず"), is_heading("題しらず読人しらず"), is_heading("春の歌")
    (True, True, False)
    """
    return bool(text) and not re.sub(_HEADING, "", text)


def looks_like_verse(text: str) -> bool:
    """Whether a normalised text has the length and the kana of a poem.

    >>> looks_like_verse("花の色はうつりにけりないたづらに"), looks_like_verse("於東都応需造之")
    (True, False)
    """
    plain = _MARKS.sub("", text) if "（" in text or "［" in text else text
    if not _VERSE_LEAST_SIGNS <= len(plain) <= _VERSE_MOST_SIGNS:
        return False
    return kana_share(plain) > 0.2 and not has_modern_grammar(plain)


def may_hold_verse(text: str) -> bool:
    """Whether a normalised text has kana enough for a poem to stand somewhere in it.

    >>> may_hold_verse("花の色はうつりにけりないたづらに露岳作"), may_hold_verse("於東都応需造之")
    (True, False)
    """
    return len(_KANA.findall(text)) >= _VERSE_LEAST_KANA


def has_classical_grammar(text: str) -> bool:
    """Return whether a text without modern grammar shows that of classical Japanese repeatedly.

    >>> has_classical_grammar("人の心を種としてよろつの言の葉とそなれりけるしけきものなれは")
    True
    >>> has_classical_grammar("昔の人の書いた文章"), has_classical_grammar("於東都造之")
    (False, False)
    """
    if kana_share(text) < _CLASSICAL_KANA or has_modern_grammar(text):
        return False
    return len(re.findall(_CLASSICAL_GRAMMAR, text)) >= _ENOUGH_GRAMMAR


def is_running_text(text: str) -> bool:
    """Return whether a literal text is punctuated prose rather than a transcription of signs.

    >>> is_running_text("「さうか。」と言つた。"), is_running_text("花の色は／うつりに（花押）")
    (True, False)
    """
    return bool(_SENTENCES.search(text)) and not _MARKS_OF_TRANSCRIBERS.search(text)


def has_modern_grammar(text: str) -> bool:
    """Return whether a text has sentences or auxiliaries that classical verse does not have.

    >>> has_modern_grammar("橋を渡つてゐた"), has_modern_grammar("春は来にけり")
    (True, False)
    """
    return "。" in text or bool(_modern_grammar().search(text))


@cache
def _modern_grammar() -> re.Pattern[str]:
    return re.compile(_MODERN_GRAMMAR)
