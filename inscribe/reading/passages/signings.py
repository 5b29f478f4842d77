"""What speaks for the signing of one person: how little it costs to divide it into its parts."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from inscribe.reading.chinese import has_marks
from inscribe.reading.names import is_kana_name, is_signed_with_mixed_name, known
from inscribe.reading.passages.language import is_common_noun
from inscribe.reading.passages.not_signed import (
    begins_with_poet,
    begins_with_text,
    begins_with_title,
    grammar_in_names,
    is_for_somebody,
    is_headed,
    is_poet,
    is_title_alone,
)
from inscribe.reading.passages.order import ranks
from inscribe.reading.passages.persons_named import (
    MAKERS,
    has_rank_inside,
    names_nobody,
    names_two_persons,
)
from inscribe.reading.passages.roles import closing_of
from inscribe.reading.passages.stretches import HOPELESS
from inscribe.reading.passages.titles import framed_weight
from inscribe.reading.signatures import (
    CheapestDivisions,
    SignaturePiece,
    dated_pieces,
    may_be_signature,
)
from inscribe.reading.spelling import KANA
from inscribe.reading.words import MARK, InscribedText, Role, kana_in_formulas, words_of

SIGNED, A_DATE = "the words and names of a signing", "a date"
SIGN = 2.1  # the price of a division, a sign, at which a text is as likely signed as not
_KANA_SIGN = 0.8
_WORN_SIGN = 0.6
_KAO = 3.0
_EVEN = 0.01  # as likely signed as not, where 0 says that nothing is signed
_CLOSED = 2.2  # it ends in a verb of composing, writing or making
_CLOSED_WITH_OBJECT = 1.5  # 刻之
_TWO_PERSONS = 5.0
_OWN_COLUMN = 6.0  # a date or dedication that has columns of its own is no part of it
_SURELY_GIVEN = 4.0
_NO_NAME = 5.0
_RANK = 2.0
_LONGEST = 90
_CLOSING_WORD = 1.5  # the price of a closing word that the tables of signatures lack
_FULL_NAME = 1.2  # a writer gives his pen name alone more often than not
_LONE_SIGN = 3.0
_HEADED = 6.0
_AFTER_POET = 3.0  # 小町磬渓書: the poet, and a writer
_SAYS_WHAT_IS_BESIDE = 6.0
_SAYS_SOMETHING = 4.0
_CLOSED_BEFORE = 2.5
_VERB_OF_FAMILY = 6.0
_GRAMMAR = 3.0  # a word of Chinese grammar in a name
_BEGINS_WITH_VERB = 3.0
_NEW_COLUMN = 2.0
_FULL = frozenset({"surname", "name"})
_BARE = MAKERS | {"age"}
_WORD = 4.0  # two signs that are a word of the dictionary
_KANA = re.compile("[ぁ-ヺー]")
_THIS = re.compile("(?:[之是此]|コレ|これ)[ヲを]")
_SOON = 8  # signs at the end of a poem in which there is kana


class Signings:
    """The stretches of one text as signings."""

    def __init__(self, text: InscribedText) -> None:
        """Find what the text could be made of."""
        self.text = text.normal.text
        self._whole = text
        dated = list(_dated_by_face(text))
        self._stretches = CheapestDivisions(self.text, text.breaks, dated, text.cuts)

    def weight(self, first: int, end: int) -> tuple[float, Role | None]:
        """Return the log odds that a stretch is one person's signing, and what that person did.

        >>> from inscribe.forms import normalise_text
        >>> text = InscribedText(normalise_text("鷺坂苗道刻之"), "鷺坂苗道刻之")
        >>> weight, role = Signings(text).weight(0, 6)
        >>> weight > 3, role
        (True, 'carved')
        """
        text = self.text[first:end]
        if has_marks(text):
            return 0.0, None  # return marks are put in Chinese
        plain = MARK.sub("", text)
        if not plain.strip("□") or len(text) > _LONGEST or not _may_be_signed(plain):
            return (_KAO, None) if "（花押）" in text and not plain else (0.0, None)
        role, word = closing_of(plain)
        stem, ranked = self._stem(first, end, word)
        best = self._stretches.division(first, stem)
        if best is None:
            return 0.0, None
        weight = _of_signs(plain) - best.cost - _CLOSING_WORD * (stem < end)
        weight += _KAO * ("（花押）" in text) + _RANK * ranked
        if word:
            weight += _CLOSED + _CLOSED_WITH_OBJECT * plain.endswith("之")
            weight += 2 * _CLOSED_WITH_OBJECT * bool(_THIS.search(plain))
        if weight <= HOPELESS:
            return weight, role  # all that follows speaks against it
        weight -= _VERB_OF_FAMILY * self._closes_with_family(end, word, best.pieces)
        weight -= _TWO_PERSONS * names_two_persons(best.pieces, role)
        weight -= _FULL_NAME * (role == "wrote" and any(p.kind == "surname" for p in best.pieces))
        weight -= _NO_NAME * (not ranked and names_nobody(best.pieces))
        weight -= _AFTER_POET * (first > 0 and begins_with_poet(plain, best.pieces))
        weight -= _SAYS_WHAT_IS_BESIDE * begins_with_title(plain)
        weight -= _HEADED * (is_headed(text, best.pieces) or is_title_alone(best.pieces))
        weight -= _SAYS_SOMETHING * self._says_something(first, end)
        weight -= _CLOSED_BEFORE * self._closed_before(first, end)
        weight -= _GRAMMAR * grammar_in_names(self.text[first:end], best.pieces, first)
        weight -= _TWO_PERSONS * (not ranked and has_rank_inside(plain))
        weight -= _LONE_SIGN * (len(plain) == 1)
        weight -= _BEGINS_WITH_VERB * (best.pieces[0].kind == "verb" and len(best.pieces) > 1)
        weight -= _AFTER_POET * self._begins_with_poets_column(first, end)
        weight -= _SAYS_WHAT_IS_BESIDE * is_for_somebody(best.pieces)
        weight -= _NEW_COLUMN * self._begins_anew(first, end, best.pieces)
        bare = best.pieces[0].word is None
        if len(plain) == 2 and stem == end and bare and is_common_noun(plain):
            weight -= _WORD
        foreign = has_foreign_part(self.text, self._whole, (first, end), best.pieces)
        return (weight - _OWN_COLUMN * foreign) or _EVEN, role

    def _begins_anew(self, first: int, end: int, pieces: Sequence[SignaturePiece]) -> bool:
        """Whether a bare name after something else ends a column, and a whole signing follows."""
        if not first:
            return False
        for at in self._whole.breaks:
            if first < at < end:
                head = {piece.kind for piece in pieces if piece.last < at}
                tail = {piece.kind for piece in pieces if piece.first >= at}
                whole = all(piece.last < at or piece.first >= at for piece in pieces)
                if whole and head <= _BARE and "surname" in tail and tail & MAKERS:
                    return True
        return False

    def _begins_with_poets_column(self, first: int, end: int) -> bool:
        """Whether the first column after a poem is a poet's name: 花なき里に…／伊勢／蓼坡書."""
        if not KANA.search(self.text[max(0, first - _SOON) : first]):
            return False
        ends = [at for at in self._whole.breaks if first < at < end]
        return bool(ends) and is_poet(self.text[first : min(ends)])

    def _says_something(self, first: int, end: int) -> bool:
        """Whether the first of several columns of a stretch are a saying or a title."""
        ends = [at for at in self._whole.breaks if first < at < end]
        begins = not first or first in self._whole.breaks
        return begins and any(begins_with_text(self.text[first:at]) for at in ends)

    def _closes_with_family(self, end: int, word: str, pieces: Sequence[SignaturePiece]) -> bool:
        """Whether what is taken for a verb ends a surname, and a name follows: 鴨打｜雪篁作.

        After a full name it closes that: 釘宮鞆永作, though 永作 is a surname.
        """
        if {piece.kind for piece in pieces} >= _FULL:
            return False
        goes_on = end < len(self.text) and end not in self._whole.breaks
        return goes_on and len(word) == 1 and bool(known(self.text[max(0, end - 2) : end]).surname)

    def _closed_before(self, first: int, end: int) -> bool:
        """Whether a column within a stretch ends as a writer's signing does: 檜峰讃／肥前住…."""
        inside = (at for at in self._whole.breaks if first + 1 < at < end)
        return any(
            self.text[at] != "之" and closing_of(self.text[first:at])[0] in ("wrote", "composed")
            for at in inside
        )

    def _stem(self, first: int, end: int, word: str) -> tuple[int, bool]:
        """Return where a closing word begins that the tables lack, and whether a rank is closed."""
        text = self.text
        verb = first + text[first:end].rindex(word) if word else end
        stem = end if not word or _is_verb(word) else verb
        for rank in ranks():
            if verb - len(rank) > first and text.endswith(rank, first, verb):
                return stem, True
        return stem, False


def _dated_by_face(text: InscribedText) -> Iterator[SignaturePiece]:
    """Yield the dates and ages of a text; none runs over the end of a face."""
    plain = text.normal.text
    for first, end in pairwise((0, *sorted(text.faces), len(plain))):
        for piece, _ in dated_pieces(plain[first:end]):
            yield piece._replace(first=piece.first + first, last=piece.last + first)


def has_foreign_part(
    plain: str, text: InscribedText, within: tuple[int, int], pieces: Sequence[SignaturePiece]
) -> bool:
    """Whether a date or a dedication fills columns or a face of its own beside the name."""
    first, end = within
    edges = (first, *sorted(at for at in text.breaks if first < at < end), end)
    for piece in pieces:
        after = _after_marks(plain, piece.last + 1, end)
        whole = piece.first == first and after == end
        if piece.kind == "date" and not whole and {piece.first, after} <= {*edges}:
            return True
    sides = (first, *sorted(at for at in text.faces if first < at < end), end)
    for one, two in pairwise(sides) if len(sides) > 2 else ():
        kinds = {piece.kind for piece in pieces if one <= piece.first < two}
        if "date" in kinds and kinds.isdisjoint(MAKERS):
            return True
    of_columns = edges if not first or first in text.breaks else edges[1:]
    return len(edges) > 2 and any(
        framed_weight("dedication", plain[a:b], first=True, last=True) > _SURELY_GIVEN
        for a, b in pairwise(of_columns)
    )


def _after_marks(plain: str, at: int, end: int) -> int:
    """Return where a gap or a sign that cannot be read ends that begins at an offset."""
    while at < end and (mark := MARK.match(plain, at)):
        at = mark.end()
    return at


def _of_signs(plain: str) -> float:
    worn, kana = plain.count("□"), len(_KANA.findall(plain))
    kana -= kana_in_formulas(plain) if kana else 0
    return SIGN * (len(plain) - worn - kana) + _WORN_SIGN * worn + _KANA_SIGN * kana


def _may_be_signed(plain: str) -> bool:
    named = is_kana_name(plain) or is_signed_with_mixed_name(plain)
    return named or may_be_signature(plain)


def _is_verb(word: str) -> bool:
    """Whether the tables of signatures have a closing word."""
    return any(each.kind == "verb" for each in words_of(word))


def role_of_signing(text: str) -> Role:
    """Return what the person did whom a signature names that stands alone.

    >>> role_of_signing("綾国題"), role_of_signing("綾国")
    ('wrote', 'carved')
    """
    return closing_of(MARK.sub("", text))[0] or "carved"
