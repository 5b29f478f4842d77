"""What stands before the words of a signing and is no part of it: a poet, a title, a saying."""

from __future__ import annotations

import re
from collections.abc import Sequence

from inscribe.reading.passages.persons_named import NAMES
from inscribe.reading.passages.sayings import is_known_saying
from inscribe.reading.passages.titles import framed_weight
from inscribe.reading.passages.topics import topic_weight
from inscribe.reading.signatures import SignaturePiece, dated_pieces, divisions
from inscribe.reading.words import POET, InscribedText, words_from

_LONGEST_TITLE = 10  # 右忠岑歌 is a heading
_PICTURED = frozenset({"subject", "poet", "work"})
_TITLE_BEGINS = frozenset("右左題寄")
_SURELY_TITLED = 4.0
_GRAMMAR = re.compile("不如|不可|不知|如不|莫|勿|而|焉|者|所|乎|哉|雖|豈")
_BEGIN_NAMES = frozenset("而焉者所乎哉")  # which may open a formula, or a worn text
_FOR_SOMEBODY = frozenset({"opener:purpose", "opener:patron", "opener:gift"})
_ENDS_WISHES = frozenset({"patron", "honorific", "closer"})
_MAKING = frozenset({"verb", "transitive", "residence", "date", "age"})
_NAMED_PARTS = frozenset({"name", "art_name", "surname", "unread"})


def begins_with_poet(plain: str, pieces: Sequence[SignaturePiece]) -> bool:
    """Whether a known poet stands first and another person after: no place, no family of that name.

    >>> from inscribe.reading.signatures import divisions
    >>> [begins_with_poet(t, divisions(t)[0].pieces) for t in ("宗鑑蓼磯書", "伊勢住綾国作")]
    [True, False]
    """
    if pieces[0].kind in ("place", "title", "office"):
        return False
    poets = [w for w, of in words_from(plain[0]).items() if any(o.family == POET for o in of)]
    named = max((len(name) for name in poets if plain.startswith(name)), default=0)
    rest = {piece.kind for piece in pieces if piece.first >= pieces[0].first + named}
    return bool(named) and not rest.isdisjoint(NAMES)


def is_poet(name: str) -> bool:
    """Whether a text is the name of a known poet.

    >>> is_poet("伊勢"), is_poet("綾国")
    (True, False)
    """
    return any(word.family == POET for word in words_from(name[0]).get(name, ()))


def is_for_somebody(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether all that is said is for whom, or at whose wish: 為二親菩提 is a dedication.

    >>> from inscribe.reading.signatures import divisions
    >>> [is_for_somebody(divisions(t)[0].pieces) for t in ("為二親菩提", "為某君綾国作")]
    [True, False]
    """
    kinds = {piece.kind for piece in pieces}
    opened = pieces[0].order_kind in _FOR_SOMEBODY and pieces[-1].kind in _ENDS_WISHES
    return opened and kinds.isdisjoint(_MAKING)


def is_dedication(text: InscribedText) -> bool:
    """Whether a text is for whom, or at whose wish, and nothing else.

    >>> from inscribe.forms import normalise_text
    >>> carved = ("為二親菩提", "応某君需", "為某君綾国作")
    >>> [is_dedication(InscribedText(normalise_text(t), t)) for t in carved]
    [True, True, False]
    """
    plain = text.normal.text
    dated = [piece for piece, _ in dated_pieces(plain)]
    return is_for_somebody(divisions(plain, text.breaks, dated, text.cuts)[0].pieces)


def is_headed(plain: str, pieces: Sequence[SignaturePiece]) -> bool:
    """Whether the title of a picture stands first, and a name after it: 寒山拾得図綾国刻."""
    if pieces[0].kind not in _PICTURED:
        return False
    end = plain.find("図", 1) + 1 or (plain.find("之内", 1) + 2 if "之内" in plain[1:] else 0)
    headed = 0 < end < len(plain)
    return headed and framed_weight("heading", plain[:end], first=True, last=False) > 0


def is_title_alone(pieces: Sequence[SignaturePiece]) -> bool:
    """Whether nothing but a subject or a work is named: 山水 after 花鳥風月."""
    return {piece.kind for piece in pieces} <= {"subject", "work"}


def begins_with_title(plain: str) -> bool:
    """Whether a title of what stands beside is named first: 右忠岑歌, 題隅田川.

    >>> begins_with_title("右忠岑歌綾国刻"), begins_with_title("綾国刻")
    (True, False)
    """
    ends = range(2, min(len(plain), _LONGEST_TITLE) + 1) if plain[0] in _TITLE_BEGINS else ()
    return any(framed_weight("heading", plain[:at], first=True, last=True) for at in ends)


def begins_with_text(column: str) -> bool:
    """Whether the first of several columns says something, and names nobody.

    >>> begins_with_text("温故知新"), begins_with_text("江戸名所之内"), begins_with_text("鷺坂")
    (True, True, False)
    """
    if is_known_saying(column):
        return True
    if framed_weight("heading", column, first=True, last=False) > _SURELY_TITLED:
        return True
    return topic_weight(column) > 0


def begins_in_chinese(plain: str) -> bool:
    """Whether a text begins with a word of Chinese grammar, as no name does: 不如一見.

    >>> begins_in_chinese("不如一見"), begins_in_chinese("不動明王")
    (True, False)
    """
    return bool(_GRAMMAR.match(plain)) and plain[0] not in _BEGIN_NAMES


def grammar_in_names(plain: str, pieces: Sequence[SignaturePiece], first: int) -> int:
    """Return how many words of Chinese grammar stand in what are taken for names: 不如一忍.

    Args:
        plain: the text from its offset ``first``.
        pieces: its parts, at the offsets of the whole text.
        first: where ``plain`` begins in the whole text.
    """
    names = (plain[p.first - first : p.last + 1 - first] for p in pieces if p.kind in _NAMED_PARTS)
    return sum(len(_GRAMMAR.findall(name)) for name in names)
