"""Signs that are probably not what is carved: worth a second look before they are believed.

One function serves ``read`` (doubts), ``check`` (findings) and ``new`` ("look again"). A sign with
(ママ) after it has been looked at and is left alone.

>>> from inscribe.notation import parse
>>> [(each.text, each.instead) for each in suspicions(parse("露△岳作").signs)]
[('△', ('□',))]
>>> [(each.text, each.instead) for each in suspicions(parse("嶺ハ郎作").signs)]
[('ハ', ('八',))]
>>> suspicions(parse("武州住嶺暁作").signs), suspicions(parse("露△(ママ)岳作").signs)
((), ())
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from inscribe import tables
from inscribe.dates import written
from inscribe.reading.suspicious.marks import PUNCTUATION, outside
from inscribe.reading.suspicious.model import SuspectText, Suspicion, setting_of
from inscribe.signs import Sign

_COUNTED = frozenset("月所年国箇村丁")  # 六ヶ月
_SMALL_KE = frozenset("ヵヶ")
_ZERO = "〇"
_LONG, _ONE = "ー", "一"
LIKE_KANA = frozenset("八二力口卜夕工")  # kanji that are taken for kana
_REMEMBERED = 64  # texts, for a reading and a check ask the same
_ENOUGH_KANA = 2  # one alone may have been typed for a kanji
_PROSE = 0.2  # the share of kana from which punctuation may be an edition's


def suspicions(signs: Sequence[Sign]) -> tuple[Suspicion, ...]:
    """Return what is suspicious in signs as typed, in their order, no sign named twice."""
    return _suspicions(tuple(signs))


@tables.cached(_REMEMBERED)
def _suspicions(signs: tuple[Sign, ...]) -> tuple[Suspicion, ...]:
    legible = [sign for sign in signs if sign.is_legible]
    alone = [found for sign in legible if (found := _alone(sign, signs))]
    unread = frozenset(each.sign for each in alone if each.kind == "mark")
    setting = setting_of(signs, unread) if legible else SuspectText("", ())
    named: dict[int, Suspicion] = {}
    for found in (*_kaos(signs), *_in_context(signs, setting), *alone):
        if all(at not in named for at in range(found.sign, found.end + 1)):
            named |= dict.fromkeys(range(found.sign, found.end + 1), found)
    looked_at = {sign.index for sign in signs if sign.sic}
    kept = (found for found in dict.fromkeys(named.values()) if found.sign not in looked_at)
    return tuple(_joined(sorted(kept, key=lambda found: found.sign)))


def is_plain(text: str, words: Sequence[str] = ()) -> bool:
    """Whether nothing is suspicious in a text of kanji and hiragana, told without its signs.

    Most texts are so, poems above all; False only says that a closer look is needed. ``words``
    are those of a poem that keeps its metre to the mora: no gloss can stand in it, and a kanji
    that looks like a kana is one within a longer word (夕暮).

    >>> is_plain("花の色はうつりにけりな"), is_plain("嶺ハ郎作"), is_plain("嶺暁れいぎょう作")
    (True, False, False)
    """
    from inscribe.reading.suspicious.glosses import glosses

    if not all(map(_is_plain_sign, text)) or "花押" in text:
        return False
    if sum(map(_is_kana, text)) < _ENOUGH_KANA:
        return False
    if words:
        return LIKE_KANA.isdisjoint(words)
    if not LIKE_KANA.isdisjoint(text):
        return False
    return next(glosses(text), None) is None


@tables.cached(8192)
def _is_plain_sign(sign: str) -> bool:
    script = "ぁ" <= sign <= "ゖ" or "\u4e00" <= sign <= "\u9fff" or sign in "々ゝゞ"
    return script and outside(sign) is None


def _alone(sign: Sign, signs: Sequence[Sign]) -> Suspicion | None:
    """Return what is suspicious about a sign by itself, or with its neighbours alone."""
    text = sign.text
    if text == _ZERO:
        why = "〇 is a figure among figures; □ stands for a sign that cannot be read"
        found = None if _stands_by_figure(sign, signs) else Suspicion(0, text, why, ("□",))
    else:
        found = outside(text)
    if text == _LONG and not any(map(_is_kana, _neighbours(sign, signs))):
        return Suspicion(sign.index, text, "a long kana among kanji", (_ONE,), "kana")
    if found is None or (text in _SMALL_KE and _counts(sign, signs)):
        return None
    if text[0] in PUNCTUATION and _is_prose(signs):
        return None
    return replace(found, sign=sign.index)


def _is_kana(text: str) -> bool:
    return "ぁ" <= text[:1] <= "ヺ"


def _neighbours(sign: Sign, signs: Sequence[Sign]) -> tuple[str, str]:
    at = sign.index - signs[0].index
    before = signs[at - 1].text if at else ""
    return before, signs[at + 1].text if at + 1 < len(signs) else ""


def _stands_by_figure(sign: Sign, signs: Sequence[Sign]) -> bool:
    return any(near and near in written.STARTS for near in _neighbours(sign, signs))


def _counts(sign: Sign, signs: Sequence[Sign]) -> bool:
    """Whether a small ヶ stands as in 六ヶ月."""
    return bool(set(_neighbours(sign, signs)[1]) & _COUNTED)


def _is_prose(signs: Sequence[Sign]) -> bool:
    from inscribe.reading.spelling import kana_share

    return kana_share("".join(sign.text for sign in signs if sign.is_legible)) > _PROSE


def _kaos(signs: Sequence[Sign]) -> Iterator[Suspicion]:
    """Yield 花押 that was typed as if it were carved."""
    for one, other in pairwise(signs):
        if (one.text, other.text) == ("花", "押") and one.is_legible and other.is_legible:
            why = "the word is hardly carved; （花押） says that a kao stands there"
            yield Suspicion(one.index, "花押", why, ("（花押）",), "mark", other.index)


def _in_context(signs: Sequence[Sign], setting: SuspectText) -> Iterator[Suspicion]:
    """Yield what is suspicious only because of the text in which it stands."""
    text = setting.text
    kana = [sign for sign in text if _is_kana(sign) or sign == _LONG]
    if kana:
        yield from _glosses(signs)
    if kana and (len(kana) == 1 or any(sign > "ァ" for sign in kana) or set(text) & LIKE_KANA):
        yield from _mistaken(signs, setting)
    if text and not kana:
        yield from _slips(signs, setting)


def _glosses(signs: Sequence[Sign]) -> Iterator[Suspicion]:
    from inscribe.reading.suspicious.glosses import glosses

    written = [sign.text or "□" for sign in signs]
    for first, last in glosses(written):
        why = "kana that only say how the signs before them are read are hardly carved"
        said = "".join(written[first : last + 1])
        yield Suspicion(signs[first].index, said, why, (), "gloss", signs[last].index)


def _mistaken(signs: Sequence[Sign], setting: SuspectText) -> Iterator[Suspicion]:
    from inscribe.reading.suspicious.kana import mistaken_kana

    for at, instead, why in mistaken_kana(setting.text):
        sign = signs[setting.origin[at] - signs[0].index]
        yield Suspicion(sign.index, sign.text, why, (instead,) if instead else (), "kana")


def _slips(signs: Sequence[Sign], setting: SuspectText) -> Iterator[Suspicion]:
    from inscribe.reading.suspicious.slips import rare_look_alikes, slips, without_date

    text = without_date(setting.text)
    found: list[tuple[int, tuple[str, ...], str]] = []
    found += [(at, (other,), "it looks like a sign of the formula") for at, other, _ in slips(text)]
    found += [(at, them, "it looks like a commoner sign") for at, them in rare_look_alikes(text)]
    for at, others, why in found:
        sign = signs[setting.origin[at] - signs[0].index]
        yield Suspicion(sign.index, sign.text, why, others, "look-alike")


def _joined(found: Sequence[Suspicion]) -> Iterator[Suspicion]:
    """Yield suspicions, a run of Latin letters as one."""
    run: list[Suspicion] = []
    for each in found:
        if run and not (_is_latin(run[-1]) and _is_latin(each) and each.sign == run[-1].end + 1):
            yield _one(run)
            run = []
        run.append(each)
    if run:
        yield _one(run)


def _is_latin(found: Suspicion) -> bool:
    return (
        found.kind == "mark"
        and len(found.text) == 1
        and found.text.isalpha()
        and (found.text < "\u0250" or found.text > "\uff00")
    )


def _one(run: Sequence[Suspicion]) -> Suspicion:
    if len(run) == 1:
        return run[0]
    text = "".join(each.text for each in run)
    return Suspicion(run[0].sign, text, "Latin letters are hardly carved", (), "mark", run[-1].sign)
