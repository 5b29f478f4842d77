"""What the notes and brackets of a transcriber do to a sign, and which of them contradict."""

from __future__ import annotations

from dataclasses import replace

from inscribe.notation.conventions import Convention, Note
from inscribe.notation.cutting import is_one_sign
from inscribe.signs import Certainty, Intervention, Kind, Sign


class NoteRefused(Exception):  # noqa: N818 - the parser gives it a place and raises NotationError
    """What is wrong, what was expected, and how many characters further on it stands."""

    def __init__(self, message: str, expected: str, further: int = 0) -> None:
        super().__init__(message)
        self.message = message
        self.expected = expected
        self.further = further


def contradiction(one: Certainty | Intervention, other: Certainty | Intervention) -> NoteRefused:
    """Return the refusal of two marks that exclude each other."""
    message = f"the sign is marked {one.value} and {other.value} at once"
    return NoteRefused(message, "expected one of the two")


def certainty_within(outer: Certainty, own: Certainty, kind: Kind) -> Certainty:
    """Return what a sign's own mark and the brackets around it say together.

    Raises:
        Refused: they contradict each other.
    """
    if own is outer or outer is Certainty.CLEAR:
        return own
    if kind is Kind.GAP and outer is Certainty.RESTORED:
        return Certainty.CLEAR
    if own is Certainty.CLEAR:
        return outer
    if own is Certainty.UNREADABLE:
        return Certainty.STRUCK if outer is Certainty.STRUCK else own
    raise contradiction(outer, own)


def noted(sign: Sign, note: Note) -> Sign:
    """Return ``sign`` with what ``note`` says of it.

    Raises:
        Refused: the note contradicts what is said already.
    """
    if note.certainty:
        sign = replace(sign, certainty=_certainty_noted(sign, note.certainty))
    if note.intervention and sign.intervention is not note.intervention:
        if sign.intervention is not Intervention.NONE:
            raise contradiction(sign.intervention, note.intervention)
        sign = replace(sign, intervention=note.intervention)
    return replace(sign, sic=True) if note.sic else sign


def _certainty_noted(sign: Sign, said: Certainty) -> Certainty:
    if sign.kind is Kind.GAP and said is not Certainty.STRUCK:
        raise NoteRefused(f"a gap cannot be {said.value}", "expected no note")
    struck = said is Certainty.STRUCK and sign.certainty is Certainty.UNREADABLE
    if not struck and sign.certainty not in (Certainty.CLEAR, said):
        raise contradiction(sign.certainty, said)
    return said


def named(sign: Sign, part: str, convention: Convention) -> Sign:
    """Return ``sign`` with the character its note names: □(花カ), □(花), は(者), は(者カ).

    Raises:
        Refused: the note names nothing that fits the sign.
    """
    doubt = convention.notes.get(part[1:])
    is_doubtful = doubt is not None and doubt.certainty is Certainty.DOUBTFUL
    character = part[0] if is_doubtful else part
    if sign.kind is Kind.CHARACTER and not sign.text and is_one_sign(character):
        return _made_out(sign, character, is_doubtful=is_doubtful)
    from inscribe.notation import hentaigana

    letter = hentaigana.letter(sign.text, character) if sign.is_legible else None
    if letter is None:
        raise _unknown(sign, part, convention)
    sign = replace(sign, text=letter, noted=f"{sign.text}({character})")
    return noted(sign, doubt) if is_doubtful and doubt else sign


def _made_out(sign: Sign, character: str, *, is_doubtful: bool) -> Sign:
    if sign.certainty is Certainty.STRUCK:
        if is_doubtful:
            raise contradiction(Certainty.STRUCK, Certainty.DOUBTFUL)
        return replace(sign, text=character)
    certainty = Certainty.DOUBTFUL if is_doubtful else Certainty.RESTORED
    return replace(sign, text=character, certainty=certainty)


def _unknown(sign: Sign, part: str, convention: Convention) -> NoteRefused:
    from inscribe.notation import hentaigana

    parents = hentaigana.parents(sign.text) if sign.is_legible else ()
    if parents:
        listed = "、".join(dict.fromkeys(parents))
        message = f"no {sign.text} written from {part} is known"
        return NoteRefused(
            message, f"expected one of its parents {listed}, or (カ), (ママ) and the like"
        )
    return NoteRefused(f"the note ({part}) is unknown", convention.expected)
