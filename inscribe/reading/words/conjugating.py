"""Classical verbs of signatures in the forms that their grammar calls for.

>>> continuative("ほる"), attributive("きたう"), causative("せいす")
('ほり', 'きたうる', 'せいせしむ')
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.reading.spelling import hiragana

_OF_UPPER_ROW = dict(zip("うくぐすずつぬぶむる", "いきぎしじちにびみり", strict=True))
_OF_FIRST_ROW = dict(zip("うくぐすつぬぶむる", "わかがさたなばまら", strict=True))
_OF_LOWER_ROW = dict(zip("うくぐすずつぬぶむる", "えけげせぜてねべめれ", strict=True))
_LOWER = frozenset(  # verbs of the lower bigrade
    {"きたう", "ちりばむ", "そなう", "あらたむ", "くわう", "かんがう", "さだむ"}
    | {"おさむ", "あたう", "さずく", "うく", "つたう", "もとむ", "そむ"}
    | {"はじむ", "たつ", "たすく", "ささぐ", "よす", "のぶ", "したたむ"}
    | {"くわだつ", "とどむ", "めず", "う", "みとむ", "しあぐ", "にあぐ"}
    | {"かきあぐ", "まかす", "なぞらう"}
)
_OF_FOUR_GRADES = frozenset(
    {"うつす", "しるす", "ただす", "すかす", "ためす"}
    | {"なす", "とかす", "おこす", "のこす", "なおす"}
    | {"あらわす", "いだす", "わたす", "あかす"}
)
_OF_UPPER_GRADE = frozenset({"いる", "みる"})
_AFTER_CONTINUATIVE = ("", "て", "たり", "し", "ぬ", "おわる", "おわんぬ")
_PERFECT = dict(zip("くすつぬむる", "けせてねめれ", strict=True))  # 作レリ, 刻セリ
_OLD_KANA = str.maketrans("フヒヘふひへ", "うイえうイえ")
_UNVOICED = str.maketrans("がぎぐげござじずぜぞだぢづでど", "かきくけこさしすせそたちつてと")


def continuative(verb: str) -> str:
    """Return a classical verb as another verb follows it.

    >>> continuative("ほる"), continuative("うつ"), continuative("きたう"), continuative("せいす")
    ('ほり', 'うち', 'きたえ', 'せいし')
    """
    if verb in _OF_UPPER_GRADE:
        return verb[:-1]
    return verb[:-1] + (_OF_LOWER_ROW if verb in _LOWER else _OF_UPPER_ROW)[verb[-1]]


def attributive(verb: str) -> str:
    """Return a classical verb as it stands before a noun.

    >>> [attributive(verb) for verb in ("ほる", "きたう", "せいす", "うつす")]
    ['ほる', 'きたうる', 'せいする', 'うつす']
    """
    return f"{verb}る" if _is_lower(verb) else verb


def causative(verb: str) -> str:
    """Return a classical verb as one has it done.

    >>> [causative(verb) for verb in ("ほる", "きたう", "せいす", "うつす")]
    ['ほらしむ', 'きたえしむ', 'せいせしむ', 'うつさしむ']
    """
    if verb in _OF_UPPER_GRADE:
        return f"{verb[:-1]}しむ"
    return verb[:-1] + (_OF_LOWER_ROW if _is_lower(verb) else _OF_FIRST_ROW)[verb[-1]] + "しむ"


def form_ended(verb: str, ending: str) -> str:
    """Return the form of a verb whose end is carved in kana so, in either kana; else nothing.

    >>> form_ended("つくる", "リテ"), form_ended("ならう", "フ"), form_ended("おうず", "シ")
    ('つくりて', 'ならう', 'おうじ')
    """
    carved = hiragana(ending.translate(_OLD_KANA)).translate(_UNVOICED)
    for form in _forms(verb):
        ends = form.translate(_UNVOICED).endswith(carved) and len(form) > len(carved)
        if ends and len(carved) >= len(form[len(verb) - 1 :][:1]):  # the る of つくる
            return form
    return ""


def _forms(verb: str) -> Iterator[str]:
    yield verb
    stem = continuative(verb)
    for after in _AFTER_CONTINUATIVE:
        yield stem + after
    if verb[-1] in _PERFECT:
        yield f"{verb[:-1]}{_PERFECT[verb[-1]]}り"


def _is_lower(verb: str) -> bool:
    """Return whether a verb bends by the lower bigrade, or as す does."""
    return verb in _LOWER or (verb[-1] in "すず" and verb not in _OF_FOUR_GRADES)
