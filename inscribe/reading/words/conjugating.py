"""Classical verbs of signatures in the forms that their grammar calls for.

``signature_verbs.tsv`` says how those bend whose last kana does not tell.

>>> continuative("ほる"), attributive("きたう"), causative("せいす")
('ほり', 'きたうる', 'せいせしむ')
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.spelling import hiragana

_FOUR, _LOWER, _UPPER, _ONE = "四段", "下二", "上二", "上一"
_IRREGULAR = "す"  # 製す, 応ず
_ROWS = "うくぐすずつぬぶむる"
_ON_A = dict(zip(_ROWS, "わかがさざたなばまら", strict=True))
_ON_I = dict(zip(_ROWS, "いきぎしじちにびみり", strict=True))
_ON_E = dict(zip(_ROWS, "えけげせぜてねべめれ", strict=True))
_ON_E_LOWER = _ON_E | {"ず": "で"}  # めづ: めで
_AFTER_CONTINUATIVE = ("", "て", "たり", "し", "ぬ", "おわる", "おわんぬ")
_CAUSED = ("しむ", "しめ", "しめて", "しめたり")  # 作ラシム, 刻マシメテ
_OLD_KANA = str.maketrans("フヒヘふひへ", "うイえうイえ")
_UNVOICED = str.maketrans("がぎぐげござじずぜぞだぢづでど", "かきくけこさしすせそたちつてと")


def continuative(verb: str) -> str:
    """Return a classical verb as another verb follows it.

    >>> continuative("ほる"), continuative("うつ"), continuative("きたう"), continuative("せいす")
    ('ほり', 'うち', 'きたえ', 'せいし')
    """
    bends = _class_of(verb)
    if bends == _ONE:
        return verb[:-1]
    return verb[:-1] + (_ON_E_LOWER if bends == _LOWER else _ON_I)[verb[-1]]


def attributive(verb: str) -> str:
    """Return a classical verb as it stands before a noun.

    >>> [attributive(verb) for verb in ("ほる", "きたう", "せいす", "うつす", "おぶ")]
    ['ほる', 'きたうる', 'せいする', 'うつす', 'おぶる']
    """
    return verb if _class_of(verb) in (_FOUR, _ONE) else f"{verb}る"


def causative(verb: str) -> str:
    """Return a classical verb as one has it done.

    >>> [causative(verb) for verb in ("ほる", "きたう", "せいす", "うつす", "もちう")]
    ['ほらしむ', 'きたえしむ', 'せいせしむ', 'うつさしむ', 'もちいしむ']
    """
    return f"{_before_causing(verb)}しむ"


def form_ended(verb: str, ending: str) -> str:
    """Return the form of a verb whose end is carved in kana so, in either kana; else nothing.

    >>> form_ended("つくる", "リテ"), form_ended("つくる", "ラシム"), form_ended("おうず", "シ")
    ('つくりて', 'つくらしむ', 'おうじ')
    """
    carved = hiragana(ending.translate(_OLD_KANA)).translate(_UNVOICED)
    for form, least in _forms(verb):
        if least <= len(carved) < len(form) and form.translate(_UNVOICED).endswith(carved):
            return form
    return ""


def _forms(verb: str) -> Iterator[tuple[str, int]]:
    """Yield the forms of a verb, with how many kana of each are carved at least."""
    yield verb, 1
    stem = continuative(verb)
    for after in _AFTER_CONTINUATIVE:
        yield stem + after, min(1, len(stem + after) - len(verb) + 1)  # the る of つくる
    if _class_of(verb) in (_FOUR, _IRREGULAR):
        yield f"{verb[:-1]}{_ON_E[verb[-1]]}り", 1  # 作レリ, 刻セリ
    for caused in _CAUSED:
        yield _before_causing(verb) + caused, len(caused)


def _before_causing(verb: str) -> str:
    """Return a verb as an auxiliary follows it that causes or denies."""
    bends = _class_of(verb)
    if bends in (_FOUR, _IRREGULAR):
        return verb[:-1] + (_ON_A if bends == _FOUR else _ON_E)[verb[-1]]
    return continuative(verb)


def _class_of(verb: str) -> str:
    return _listed().get(verb) or (_IRREGULAR if verb[-1] in "すず" else _FOUR)


@tables.cached()
def _listed() -> dict[str, str]:
    return {row["kana"]: row["class"] for row in tables.rows("signature_verbs")}
