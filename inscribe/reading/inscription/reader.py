"""The way into the reading stage: an inscription or a literal text, and what is wished of it.

>>> interpretation = read_text("年の内に／春は来にけり／一年を／去年とや言はむ／今年とや言はむ")
>>> interpretation.register, interpretation.proposals[0].reasons
('verse', ('tanka of 6-7-5-7-8 morae',))
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Literal, get_args

from inscribe import tables
from inscribe.errors import InputError, NotationError, Place
from inscribe.reading.words import Doubt, Interpretation, Proposal, Register, SignaturePart, Token

if TYPE_CHECKING:
    from inscribe.forms import NormalText
    from inscribe.reading.inscription.wishes import Wishes
    from inscribe.reading.passages import PassageLike
    from inscribe.reading.words import OverrideLike, Passage
    from inscribe.signs import Transcription

__all__ = [
    "Doubt",
    "Interpretation",
    "Proposal",
    "Register",
    "SignaturePart",
    "Token",
    "read",
    "read_text",
]

Choice = Literal["auto", "verse", "signature", "prose"]

MAX_SIGNS = 20_000  # of one reading; a plate holds some hundred
_MARKS_A_SIGN = 10  # characters of notation that one sign may take in a text that is still read
# What makes a literal text more than signs and column ends: the transcriber's notation.
_NOTATION = r"[^\u3005-\u3007\u3021-\u3035\u3041-\u30ff\u3400-\u4dbf\u4e00-\u9fff／]"
# What an edition adds to running text, and no sign.
_EDITED = frozenset("（）()〔〕［］[]「」『』〈〉 　\n\t")
_MARKS_IN_A_ROW = r"[^\w\s]{9}"  # nine marks upon a sign are nothing else
# A space between signs; those within brackets (［　　］) are no such space.
_SPACE = r"([［\[（(][^］\])）]*[］\])）])|[ \u3000]+"


def read(
    t: Transcription,
    register: Choice = "auto",
    overrides: Sequence[OverrideLike] = (),
    *,
    between: tuple[int, int] | None = None,
    alternatives: bool | None = None,
    passages: Sequence[PassageLike] = (),
    source: str = "",
    doubts: bool = True,
) -> Interpretation:
    """Return what an inscription says, passage by passage, its readings ranked, its doubts named.

    Args:
        t: the inscription.
        register: verse, signature or prose, or "auto" to let the text decide.
        overrides: readings a person has settled (see ``inscribe.record.OverrideLike``).
        between: western years, both included, that a sexagenary year without an era may mean.
        alternatives: whether to look for other readings of a poem's words; by default only
            where its metre was hard to find. A signature always has them.
        passages: passages a person has settled (see ``inscribe.record.Passage``).
        source: the words that are copied, where known; they help to tell where the copy ends.
        doubts: whether to look for what is suspicious in the signs, a third of the work.

    Raises:
        InputError: the register is none of those, or the text is longer than 20,000 signs.

    >>> from inscribe.notation import parse
    >>> read(parse("露岳刻之")).proposals[0].romaji
    'Rogaku kore o kizamu'
    """
    from inscribe.reading.inscription.wishes import Wishes

    _refuse_unknown(register)
    wishes = Wishes(register, overrides, between, alternatives, passages, source)
    return _read(t, wishes, doubts=doubts)


def _read(
    t: Transcription, wishes: Wishes, spaced: str = "", *, doubts: bool = True
) -> Interpretation:
    """Return what an inscription says; ``spaced`` is its literal text if that has spaces."""
    _refuse_endless(len(t.signs))
    from inscribe.forms import normalise
    from inscribe.reading.inscription.interpretation import interpreted
    from inscribe.reading.words import InscribedText, has_note, shown

    normal = normalise(t)
    carved = tuple([shown(sign) for sign in t.signs])
    columns = [t.signs[index].column for index in normal.origin]
    breaks = frozenset(i for i in range(1, len(columns)) if columns[i] != columns[i - 1])
    cuts, faces = _cuts(t, spaced, normal), _faces(t, columns, breaks)
    text = InscribedText(normal, carved, breaks, cuts=cuts, faces=faces)
    found = interpreted(text, wishes)
    if doubts:
        from inscribe.reading.inscription.doubts import with_doubts_of_signs

        found = with_doubts_of_signs(found, t.signs)
    if len(t.columns) < 2 and not any(map(has_note, t.signs)):
        return found
    from inscribe.notation import render

    return replace(found, noted=render(t), passages=_noted(t, found.passages))


def _noted(t: Transcription, passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Return passages whose texts have the transcriber's marks of how sure they are."""
    from inscribe.notation import render_signs

    return tuple(
        replace(passage, text=render_signs(t.signs[passage.first : passage.last + 1]))
        for passage in passages
    )


def _faces(t: Transcription, columns: Sequence[int], breaks: frozenset[int]) -> frozenset[int]:
    """Return those of the offsets at which columns begin where a face begins too."""
    if len(t.faces) < 2:
        return frozenset()
    first = {face.columns[0].index for face in t.faces[1:]}
    return frozenset(at for at in breaks if columns[at] in first)


def _cuts(t: Transcription, spaced: str, normal: NormalText) -> frozenset[int]:
    """Return the offsets in a normalised text before which a transcriber left a space."""
    if not spaced:
        return frozenset()
    from inscribe.notation import parse

    apart = parse(re.sub(_SPACE, lambda found: found[1] or "／", spaced))
    if len(apart.signs) != len(t.signs):
        return frozenset()
    pairs = list(zip(t.signs, apart.signs, strict=True))
    signs = {
        at
        for at in range(1, len(pairs))
        if pairs[at][1].column != pairs[at - 1][1].column
        and pairs[at][0].column == pairs[at - 1][0].column
    }
    return frozenset(normal.origin.index(sign) for sign in signs if sign in normal.origin)


def read_text(
    text: str,
    register: Choice = "auto",
    overrides: Sequence[OverrideLike] = (),
    *,
    between: tuple[int, int] | None = None,
    alternatives: bool | None = None,
    passages: Sequence[PassageLike] = (),
) -> Interpretation:
    """Return what a literal text says; it may use the Japanese transcription conventions.

    Punctuated prose (with 。 or a pair of 「」) is taken as it stands, brackets and spaces
    included. The arguments are those of :func:`read`.

    Raises:
        NotationError: brackets or marks that cannot be understood.
        InputError: the register is none of those, or the text is longer than 20,000 signs.

    >>> read_text("嶺暁作", "signature").signature["verb"].romaji
    'saku'
    """
    from inscribe.reading.inscription.wishes import Wishes

    _refuse_unknown(register)
    _refuse_endless(len(text) // _MARKS_A_SIGN)
    wishes = Wishes(register, overrides, between, alternatives, passages)
    if _notation().search(text) and not _is_running_text(text):
        from inscribe.notation import parse

        t = parse(text)
        spaced = (
            text if any(found[1] is None for found in re.finditer(_SPACE, text.strip())) else ""
        )
        return _read(t, wishes, spaced)
    _refuse_endless(len(text))
    if not text.isprintable():
        _refuse_damage(text)
    _refuse_twice_encoded(text)
    if re.search(_MARKS_IN_A_ROW, text):
        _refuse_heaps(text)
    from inscribe.reading.inscription.interpretation import interpreted_columns

    columns = text.split("／") if "／＼" not in text and "／″＼" not in text else [text]
    return _with_suspicions(interpreted_columns(columns, wishes), columns)


def _with_suspicions(found: Interpretation, columns: Sequence[str]) -> Interpretation:
    """Return what literal columns say with doubts of what is hardly carved."""
    from inscribe.reading.inscription.register import words_in_metre
    from inscribe.reading.suspicious import is_plain

    if is_plain("".join(columns), words_in_metre(found)):
        return found
    from inscribe.forms import signs_of
    from inscribe.reading.inscription.doubts import with_doubts_of_signs
    from inscribe.signs import Kind, Sign, transcription

    def sign(text: str) -> Sign:
        return Sign("", Kind.GAP) if text in _EDITED else Sign(text)

    t = transcription([[[sign(text) for text in signs_of(column)] for column in columns]])
    return with_doubts_of_signs(found, t.signs)


@tables.cached()  # a record is read without it
def _notation() -> re.Pattern[str]:
    return re.compile(_NOTATION)


def _refuse_unknown(register: str) -> None:
    """Refuse what is no register.

    Raises:
        InputError: it is none.
    """
    if register not in get_args(Choice):
        allowed = ", ".join(get_args(Choice))
        raise InputError(f"there is no register {register!r}", hint=f"use one of: {allowed}")


def _refuse_endless(signs: int) -> None:
    """Refuse what no plate holds: MeCab's time and memory grow faster than such a text.

    Raises:
        InputError: there are more than 20,000 signs.
    """
    if signs > MAX_SIGNS:
        limit = f"the text is longer than the limit of {MAX_SIGNS:,} signs for one reading"
        raise InputError(limit, hint="divide it into several inscriptions")


def _refuse_damage(text: str) -> None:
    """Refuse in running text what no transcription may hold either.

    Raises:
        NotationError: there is a control character, half of one or one for private use.
    """
    from inscribe.notation import refusal

    for number, line in enumerate(text.split("\n"), start=1):
        for column, char in enumerate(line, start=1):
            if char != "\t" and (why := refusal(char)):
                said = f"the text contains {why}"
                raise NotationError(said, Place(None, number, column), "remove it")


def _refuse_heaps(text: str) -> None:
    """Refuse in running text a sign under more marks than the parser of transcriptions allows.

    Raises:
        NotationError: there is such a sign.
    """
    from inscribe.notation import MAX_MARKS, excess, segments

    offset = 0
    for sign in segments(text):
        if why := excess(sign):
            raise NotationError(why, _place(text, offset), f"expected at most {MAX_MARKS} marks")
        offset += len(sign)


def _refuse_twice_encoded(text: str) -> None:
    """Refuse running text that the parser of transcriptions would refuse as encoded twice.

    Raises:
        NotationError: it was encoded twice.
    """
    from inscribe.encodings import WHAT_TO_DO, read_twice

    if twice := read_twice(text):
        raise NotationError(twice.said, _place(text, twice.offset), WHAT_TO_DO)


def _place(text: str, offset: int) -> Place:
    line = text.count("\n", 0, offset) + 1
    return Place(None, line, offset - text.rfind("\n", 0, offset))


def _is_running_text(text: str) -> bool:
    if "。" not in text and "「" not in text:
        return False
    from inscribe.reading.inscription.register import is_running_text

    return is_running_text(text)
