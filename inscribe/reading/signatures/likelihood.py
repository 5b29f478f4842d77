"""How much a text looks like a signature, rather than verse, a motto or prose.

The more of it the formula explains, and the less it costs a sign, the likelier; kana other than the
particles of a signature speak against it.
"""

from __future__ import annotations

import math
import re
from itertools import pairwise

from inscribe import tables
from inscribe.reading.names import is_signed_with_mixed_name
from inscribe.reading.signatures.dates import dated_pieces
from inscribe.reading.signatures.pieces import MARK, SignaturePiece
from inscribe.reading.signatures.split import SignatureDivision, divisions
from inscribe.reading.words import kana_in_formulas, words_of

# Two signs that hardly stand side by side outside signatures, each of the first with each after.
_PAIRS = (
    ("作造彫刻鐫鎸鏤製写鍛模", "之"),
    ("州国府都京阪坂戸", "住"),
    ("行", "年"),
    ("門", "人"),
    ("法", "橋眼印"),
    ("筆", "意"),
    ("遺", "意墨図法"),
    ("真", "跡蹟"),
    ("合", "作"),
    ("ニに", "倣応於"),
    ("ヲを", "写模摸以"),
    ("之ノの", "需好"),
    ("長次二三四嫡", "男"),
    ("嫡", "子"),
    ("弟", "子"),
)
_SURE_PAIRS = frozenset(one + two for before, after in _PAIRS for one in before for two in after)
_SURE_SIGNS = frozenset("倣傚倅忰悴")
_SURE = (  # seldom asked for: most signatures have such a pair
    "（花押）|[応依因仍任].{0,8}[需求]|[応依因仍任].{0,6}好|於.{1,8}[作造彫刻製之]"
    "|入道$|^還暦|自身作|□之$"
)
_CLOSED_IN_KANA = tuple(  # a verb of two kanji, or of one
    f"(?:(?:[之是此]|コレ|これ)[ヲを])?(?P<verb>{kanji}[ぁ-ゖァ-ヺ]{{0,4}})[之焉]?$"
    for kanji in ("[一-龠]{2}", "[一-龠]")
)
_RELATIONS, _CLANS, _IN_JEST, _RENAMED = "男門", "源平橘", "戯", "改"
_VERBS = "作造彫刻鐫鎸鏤製写鍛"
_AFTER_VERB = "（□［"
_HIRAGANA = re.compile("[ぁ-ゖ]")
_LONGEST = 80
_LENGTHS_OF_VERSE = frozenset({5, 7, 8, 10, 14, 20, 28})  # lines of Chinese verse, sayings
# The price of a division, a sign, at which a text is as likely a signature as not.
_EVEN_PRICE = 2.1
_STEEPNESS = 2.6
_PRAYER = 8.0  # an invocation or a title alone is no signature
_NEGATED = 2.0  # 不如 is no name
_CHINESE = re.compile("不[如可知敢]|如不|莫|勿|雖|豈")
_NO_FORMULA = -0.8
_STUDIO = 0.6  # a studio name alone: it ends in 斎, 軒, 堂, 亭
_FAMILY_AND_NAME = 0.6  # 森種友: a family of one sign and a made name
_EVERYDAY_NAME = 0.8  # 坂田久米吉: a family and an everyday name
_USUAL_NAME = 3.2  # the price of a name of usual characters
_PICTURES = frozenset("図画絵")
_FORMULA = frozenset(
    {"verb", "residence", "title", "office", "date", "age", "object", "heading", "transitive"}
    | {
        "opener",
        "closer",
        "patron",
        "joiner",
        "relation",
        "generation",
        "within",
        "seal",
        "count",
        "material",
        "honorific",
        "school",
        "remark",
    }
)
_QUOTED = frozenset({"invocation", "subject", "material", "poet", "work", "chapter"})
_NAMED = frozenset({"invocation", "poet", "work", "chapter"})
_RECENT = 8
_OF_QUOTED = frozenset(
    {"section", "poem_word", "epithet", "within", "pictured", "count", "numeral"}
)


def signature_likelihood(text: str) -> float:
    """Return how likely it is, from 0 to 1, that a normalised text is a signature.

    The figure is a judgement for choosing a register, not a measured probability.

    >>> signature_likelihood("武州住綾国作") > 0.9
    True
    >>> signature_likelihood("春すぎて夏来にけらし白妙の") < 0.1
    True
    """
    plain = MARK.sub("", text)
    if not plain:
        return 0.5 if text else 0.0
    kana = sum(map(_is_kana, plain)) / len(plain)
    in_formula = kana_of_formulas(plain) if kana else 0
    kana -= in_formula / len(plain)
    if kana and is_signed_with_mixed_name(plain):
        return 0.9
    if kana > 0.5 or len(text) > _LONGEST:
        return 0.02
    evidence = 2.5 * _is_sure(text) + 1.2 * _ends_with_verb(text)
    evidence += 2.2 * _is_probable(plain) + 1.2 * (in_formula > 0)
    if kana > 0.2 and not evidence:
        return 0.05
    if not evidence and len(plain) in _LENGTHS_OF_VERSE:
        evidence = -1.0
    dated = [piece for piece, _ in dated_pieces(text)]
    evidence += 0.8 * bool(dated) - 8.0 * kana
    return _logistic(evidence + _from_division(text, dated))


def _is_sure(text: str) -> bool:
    """Whether a text has words that hardly occur outside signatures."""
    pairs = map("".join, pairwise(text))
    if not _SURE_PAIRS.isdisjoint(pairs) or not _SURE_SIGNS.isdisjoint(text):
        return True
    return re.search(_SURE, text) is not None


def kana_of_formulas(plain: str) -> int:
    """Return how many kana of a text belong to formulas, or to the verb that ends it.

    >>> kana_of_formulas("綾国コレヲ彫刻ス"), kana_of_formulas("綾国ニ倣フ")
    (4, 2)
    """
    return max(_kana_of_closing(plain), kana_in_formulas(plain))


def is_all_formula(plain: str) -> bool:
    """Return whether a text with kana is words of signatures alone, and names nobody.

    >>> is_all_formula("古画ヲ模ス"), is_all_formula("花ヲ見ル")
    (True, False)
    """
    if _HIRAGANA.search(plain) or not 0 < sum(map(_is_kana, plain)) == kana_of_formulas(plain):
        return False  # 是を造る: a sentence
    return all(piece.word for piece in divisions(plain)[0].pieces)


def _kana_of_closing(plain: str) -> int:
    """Return how many kana belong to a verb that ends a text, with its object: 之ヲ作ル, 刻ス之.

    >>> _kana_of_closing("綾国之ヲ作ル"), _kana_of_closing("綾国刻ス之"), _kana_of_closing("花咲ク")
    (2, 1, 0)
    """
    for pattern in _CLOSED_IN_KANA:
        closed = re.search(pattern, plain)
        if closed and any(word.kind == "verb" for word in words_of(closed["verb"])):
            return sum(map(_is_kana, closed.group()))
    return 0


def _is_kana(sign: str) -> bool:
    return (
        "\u3041" <= sign <= "\u30ff"
        and sign not in "\u3097\u3098\u3099\u309a\u309b\u309c\u30a0\u30fb"
    )


def _ends_with_verb(text: str) -> bool:
    """Whether a verb of making stands last, or before a mark."""
    pairs = zip(text, f"{text[1:]}{_AFTER_VERB[0]}", strict=True)
    return any(sign in _VERBS and after in _AFTER_VERB for sign, after in pairs)


def _is_probable(plain: str) -> bool:
    """Whether a text may be two makers and what one is to the other, a clan or a jest and a name.

    Or the old name of one, and the new (改綾郷霰渓).

    >>> _is_probable("綾郷門敦晴"), _is_probable("源綾国"), _is_probable("綾国")
    (True, True, False)
    """
    signs = len(plain)
    if signs == 5 and (plain[2] in _RELATIONS or plain[0] == _RENAMED):
        return True
    return (signs == 3 and plain[0] in _CLANS) or (signs in (3, 4) and plain[0] == _IN_JEST)


def _from_division(text: str, dated: list[SignaturePiece]) -> float:
    found = divisions(text, (), dated)
    best: SignatureDivision = found[0]
    price = best.cost / len(text)
    formula = sum(piece.kind in _FORMULA for piece in best.pieces)
    prayer = _is_prayer_or_title(best.pieces)
    said = 0.4 if formula else _of_names_alone(best.pieces)
    negated = any(p.word is None and _CHINESE.search(p.text) for p in best.pieces)
    return _STEEPNESS * (_EVEN_PRICE - price) + said - _PRAYER * prayer - _NEGATED * negated


def _is_prayer_or_title(pieces: tuple[SignaturePiece, ...]) -> bool:
    """Return whether there is but an invocation, a saying, or a subject (布袋図)."""
    *others, last = pieces
    if others and last.text in _PICTURES and last.kind in ("verb", "closer"):
        return all(piece.kind in ("subject", "poet") or piece.text == "之" for piece in others)
    if pieces[0].kind not in _QUOTED and pieces[0].order_kind != "opener:work":
        return False
    return all(piece.kind in _QUOTED | _OF_QUOTED for piece in pieces[1:])


@tables.cached(_RECENT)
def is_quoted(text: str) -> bool:
    """Return whether a text is nothing but a poet, a work or an invocation, as headings are.

    >>> is_quoted("源氏物語須磨巻"), is_quoted("綾国作")
    (True, False)
    """
    if not text or len(text) > _LONGEST or _is_kana(text[0]):
        return False
    pieces = divisions(text)[0].pieces
    named = any(piece.kind in _NAMED for piece in pieces)
    return (named or text[-1] in _PICTURES) and _is_prayer_or_title(pieces)


def _of_names_alone(pieces: tuple[SignaturePiece, ...]) -> float:
    """Return what speaks for a signature in which there is no word of a formula."""
    if len(pieces) == 1 and "□" in pieces[0].text:
        return _STUDIO if pieces[0].kind == "art_name" else _NO_FORMULA
    if len(pieces) == 1 and len(pieces[0].text) == 2:
        return _STUDIO if pieces[0].kind == "art_name" else 0.0
    if len(pieces) == 2 and pieces[1].kind == "name" and pieces[1].cost <= _USUAL_NAME:
        family = pieces[0]
        if len(family.text) == 1 and family.kind in ("surname", "clan"):
            return _FAMILY_AND_NAME
    if [piece.kind for piece in pieces] == ["surname", "common_name"]:
        return _EVERYDAY_NAME
    if all(piece.kind in ("name", "other") for piece in pieces) and len(pieces) > 1:
        return 1.5 * _NO_FORMULA
    return _NO_FORMULA


def _logistic(value: float) -> float:
    return 1.0 / (1.0 + math.exp(-value))
