"""Words in current forms in which what is restored or supplied is told from what is read."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.notation.known import convention
from inscribe.signs import Certainty, Intervention, Sign

Supplied = Certainty | Intervention | None
_DOUBT = "(カ)"


def supplied_stretches(
    word: str, signs: Sequence[Sign], doubt: str = ""
) -> list[tuple[str, Supplied]]:
    """Return a word in stretches, each with how it came into the text where it is not read.

    A word whose characters do not answer to its signs one by one is one stretch; ``doubt`` is put
    after what is doubtful.
    """
    answers = [(char, [sign]) for char, sign in zip(word, signs, strict=False)]
    found: list[tuple[str, Supplied]] = []
    for said, its in answers if len(word) == len(signs) else [(word, list(signs))]:
        state: Supplied = next((s for sign in its if (s := _supplied(sign))), None)
        noted = said + doubt * any(sign.certainty is Certainty.DOUBTFUL for sign in its)
        if found and found[-1][1] is state:
            found[-1] = (found[-1][0] + noted, state)
        else:
            found.append((noted, state))
    return found


def bracketed(word: str, signs: Sequence[Sign]) -> str:
    """Return a word with brackets around what its editor restored or supplied.

    What is a conjecture is noted as such.

    >>> from inscribe.notation import parse
    >>> bracketed("とまや", parse("とま［や］").signs), bracketed("花", parse("〔花〕").signs)
    ('とま［や］', '〔花〕')
    >>> bracketed("夕暮", parse("夕□(暮カ)").signs)
    '夕暮(カ)'
    """
    stretches = supplied_stretches(word, signs, _DOUBT)
    return "".join([_in_brackets(said, state) for said, state in stretches])


def _in_brackets(said: str, state: Supplied) -> str:
    for bracket in convention("japanese").brackets.values() if state else ():
        if state in (bracket.certainty, bracket.intervention):
            return f"{bracket.opening}{said}{bracket.closing}"
    return said


def _supplied(sign: Sign) -> Supplied:
    if not sign.is_carved:
        return sign.intervention
    return sign.certainty if sign.certainty is Certainty.RESTORED else None
