"""Whether a text is a signature: by its formulas, or because it is a name and no word.

Two kanji alone are an art name more often than anything else; where the formulas leave that open,
the dictionary of words decides.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from inscribe import tables
from inscribe.reading.chinese import without_marks
from inscribe.reading.names import half_in_kana, is_kana_name
from inscribe.reading.spelling import is_kanji_only, kana_share
from inscribe.reading.words import has_legible, kana_in_formulas

if TYPE_CHECKING:
    from inscribe.reading.signatures.pieces import SignaturePiece

SIGNATURE = 0.5  # from this likelihood on, a text is held for a signature
_MOST_KANA = 0.4
_KATAKANA = re.compile("[ァ-ヺ]")
_GAP = re.compile("［[^］]*］")
_SIGNS_OF_A_NAME = (2, 3)
_SHORTEST_DEED, _LONGEST_DEED = 3, 7  # signs of a name and what was done
_DEEDS = frozenset({"verb", "transitive", "object", "closing"})
_NAMES = frozenset({"name", "surname", "art_name", "common_name", "clan"})
# What one person is to another, or was called, and whose manner it is.
_TELLING = frozenset(
    {"relation", "joiner", "prefix", "generation", "school", "office", "honorific"}
)
_MODELLED = frozenset({"closer:model", "opener:line", "opener:model", "opener:naming"})
_GRAMMAR = frozenset("不無有在如而者所可欲何未莫乎哉亦則非勿自是以於")  # of Chinese, in no name
_LONGEST_TELLING = 9  # signs
_RECENT = 8  # texts: what is hardly carved is asked of the same ones as the register
_NAME_UNLESS_A_WORD = 0.12  # from this likelihood on, two kanji that are no word are a name


def may_be_signature(text: str) -> bool:
    """Whether a normalised text has few enough kana to be a signature.

    >>> may_be_signature("於東都応需造之"), may_be_signature("花の色はうつりにけりな")
    (True, False)
    """
    share = kana_share(text)
    if share <= _MOST_KANA or not _KATAKANA.search(text):
        return share - kana_in_formulas(text) / max(1, len(text)) <= _MOST_KANA
    from inscribe.reading.signatures.likelihood import kana_of_formulas

    return share - kana_of_formulas(text) / len(text) <= _MOST_KANA


@tables.cached(_RECENT)
def is_signature(plain: str) -> bool:
    """Whether a normalised text is a signature rather than verse, a saying or prose.

    >>> is_signature("綾国"), is_signature("綾国作"), is_signature("平和")
    (True, True, False)
    """
    if is_kana_name(plain) or is_half_in_kana(plain):
        return True
    if not may_be_signature(plain) or not has_legible(_GAP.sub("", plain)):
        return False  # a seal or monogram is something said
    likelihood = _signature_likelihood(plain)
    if likelihood >= SIGNATURE:
        return True
    if len(plain) in _SIGNS_OF_A_NAME and likelihood >= _NAME_UNLESS_A_WORD and _no_word(plain):
        return True
    return _is_name_and_deed(plain) or _is_family_and_name(plain) or _tells_whose(plain)


def _is_family_and_name(plain: str) -> bool:
    """Whether three kanji that hold no word may be a family or clan of one sign, and a name.

    >>> _is_family_and_name("岡篠胤"), _is_family_and_name("金銀花"), _is_family_and_name("松風音")
    (True, False, False)
    """
    if len(plain) != _SIGNS_OF_A_NAME[1] or not is_kanji_only(plain):
        return False
    from inscribe.reading.mecab import unidic_words
    from inscribe.reading.signatures.split import divisions

    ways = [[(piece.kind, len(piece.text)) for piece in way.pieces] for way in divisions(plain)]
    held = any(
        word.length > 1 and word.known and "固有名詞" not in word.part_of_speech
        for word in unidic_words(plain)
    )
    return not held and any([(kind, 1), ("name", 2)] in ways for kind in ("surname", "clan"))


def _tells_whose(plain: str) -> bool:
    """Whether a text is names that are no words, and what one is to the other or was called.

    >>> [_tells_whose(text) for text in ("霰郷婿綾国", "師霰郷", "霰郷事綾国", "父子有親")]
    [True, True, True, False]
    """
    if not is_kanji_only(plain) or len(plain) > _LONGEST_TELLING:
        return False
    from inscribe.reading.signatures.split import divisions

    pieces = divisions(plain)[0].pieces
    named = [piece.text for piece in pieces if piece.kind in _NAMES]
    telling = [piece for piece in pieces if piece.kind not in _NAMES]
    if not named or not telling or not all(_tells(piece) for piece in telling):
        return False
    return all(_GRAMMAR.isdisjoint(name) and _no_word(name) for name in named)


def _tells(piece: SignaturePiece) -> bool:
    return piece.kind in _TELLING or piece.order_kind in _MODELLED


def _is_name_and_deed(plain: str) -> bool:
    """Whether a name of two kanji that are no word did something, and nothing else is said.

    >>> _is_name_and_deed("霰郷観"), _is_name_and_deed("平和観"), _is_name_and_deed("霰郷案之")
    (True, False, True)
    """
    if not _SHORTEST_DEED <= len(plain) <= _LONGEST_DEED or not is_kanji_only(plain):
        return False
    from inscribe.reading.signatures.split import divisions

    name, *deed = divisions(plain)[0].pieces
    if name.kind != "name" or len(name.text) != _SIGNS_OF_A_NAME[0] or not deed:
        return False
    return {piece.kind for piece in deed} <= _DEEDS and _no_word(name.text)


def is_half_in_kana(plain: str) -> bool:
    """Whether a text is signed with a name half in kana (とし女, 恒とも)."""
    if not (name := half_in_kana(plain)):
        return False
    from inscribe.reading.names import mixed_name

    return bool(mixed_name(name))


def _no_word(plain: str) -> bool:
    """Whether two kanji, or a name with the end of a studio's, are no word of the dictionary."""
    if not is_kanji_only(plain):
        return False
    from inscribe.reading.mecab import unidic_words
    from inscribe.reading.names import ending_of

    if len(plain) > 2 and ending_of(plain) is None:
        return False
    words = unidic_words(plain)
    return len(words) > 1 or not words[0].known or "固有名詞" in words[0].part_of_speech


def _signature_likelihood(plain: str) -> float:
    from inscribe.reading.signatures import signature_likelihood

    return signature_likelihood(without_marks(plain))
