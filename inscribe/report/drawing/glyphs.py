"""What is drawn for a sign: all of it, however many characters it is written with."""

from __future__ import annotations

from inscribe.notation import is_mark, printed
from inscribe.signs import Certainty, Kind, Sign

_NOT_CHARACTERS = {Kind.KAO: "花押", Kind.SEAL: "印", Kind.GAP: "…"}
_LOWER_HALVES = ("〵", "＼")


def glyphs(sign: Sign) -> tuple[str, ...]:
    r"""Return the characters that stand for a sign, those of the tuple one below the other.

    A tall repeat mark is drawn in its two halves, a hentaigana as its kana, which fonts have, and
    a description of a character as it is written.

    >>> glyphs(Sign("⿰木黑")), glyphs(Sign("〳〵")), glyphs(Sign("葛\U000e0100"))
    (('⿰木黑',), ('〳', '〵'), ('葛\U000e0100',))
    """
    if sign.kind is not Kind.CHARACTER:
        return (_NOT_CHARACTERS[sign.kind],)
    if not sign.text:
        return ("■" if sign.certainty is Certainty.STRUCK else "□",)
    if (shown := printed(sign)) != sign.text:
        return (shown.partition("(")[0],)
    if len(sign.text) > 1 and sign.text.endswith(_LOWER_HALVES):
        return sign.text[:-1], sign.text[-1]
    return (sign.text,)


def letters(text: str) -> int:
    r"""Return for how many characters a text needs room; marks stand over those before them.

    >>> letters("⿰木黑"), letters("か\u3099")
    (3, 1)
    """
    return max(1, sum(not is_mark(char) for char in text))


def parent_of(sign: Sign) -> str:
    """Return the parent with which a kana is printed, or nothing.

    >>> parent_of(Sign("に", noted="に(尓)")), parent_of(Sign("に"))
    ('尓', '')
    """
    if sign.kind is not Kind.CHARACTER or (shown := printed(sign)) == sign.text:
        return ""
    return shown.partition("(")[2].rstrip(")")
