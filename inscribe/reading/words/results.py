"""What the reading stage says of one inscription: its passages, its parts, and what is doubtful."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from inscribe import notebook
from inscribe.reading.words.tokens import Proposal
from inscribe.terms import Kind as Kind, Register as Register, Role as Role, SignIndex

if TYPE_CHECKING:
    from inscribe.dates import DateReading
    from inscribe.forms import Change
    from inscribe.keys import DoubtKeys, PassageKeys, ReadingKeys, SignaturePartKeys
    from inscribe.reading.words.naming import MayName

# Parts of a signature that name its person, and what is said of that name.
PERSON_PARTS = ("clan", "surname", "common_name", "art_name", "name", "generation", "honorific")
CANNOT_BE_READ = "cannot be read"  # why a worn sign is a doubt


class SignaturePart(NamedTuple):
    """One part of a signature: what it says and the signs that say it.

    >>> from inscribe import read_text
    >>> place = read_text("於東都應需造之").signature["place"]
    >>> place.text, place.romaji, place.first
    ('東都', 'Tōto', 1)
    """

    text: str
    kana: str
    romaji: str
    first: SignIndex
    last: SignIndex
    alternatives: tuple[str, ...] = ()  # other romanised readings, best first

    def to_dict(self) -> SignaturePartKeys:
        """Return it as printed in JSON."""
        return {
            "text": self.text,
            "kana": self.kana,
            "romaji": self.romaji,
            "signs": [self.first, self.last],
            "alternatives": list(self.alternatives),
        }


Signature = dict[str, SignaturePart]


def _parts(signature: Signature | None) -> dict[str, SignaturePartKeys] | None:
    return None if signature is None else {key: part.to_dict() for key, part in signature.items()}


class Doubt(NamedTuple):
    """Something the reader should look at again, and why.

    >>> from inscribe import read_text
    >>> read_text("花の色□").doubts[0]
    Doubt(first=3, last=3, why='cannot be read')
    """

    first: SignIndex
    last: SignIndex
    why: str

    def to_dict(self) -> DoubtKeys:
        """Return it as printed in JSON."""
        return {"signs": [self.first, self.last], "why": self.why}


def in_order(doubts: Iterable[Doubt]) -> tuple[Doubt, ...]:
    """Return doubts in the order of the signs they are about."""
    return tuple(sorted(doubts, key=lambda doubt: (doubt.first, doubt.last)))


@dataclass(frozen=True, slots=True)
class Passage:
    """A stretch of an inscription that one person or one purpose put there, read as what it is.

    ``first`` and ``last`` are indexes of signs, both included; the passages of an inscription
    stand in the order of its signs and together hold all of them.

    >>> from inscribe import read_text
    >>> passages = read_text("花の色は移りにけりな／露岳書").passages
    >>> [(part.kind, part.first, part.last) for part in passages]
    [('verse', 0, 9), ('signature', 10, 12)]
    """

    kind: Kind
    first: SignIndex
    last: SignIndex
    text: str  # as carved
    normalised: str
    proposals: tuple[Proposal, ...]  # its own readings, best first
    role: Role | None = None  # what the person did whom it names
    chance: float = 1.0  # that the inscription is divided so here
    reasons: tuple[str, ...] = ()  # why it is taken for this kind
    signature: dict[str, SignaturePart] | None = None  # the parts of a signature

    def __repr__(self) -> str:
        return (
            f"<Passage, {self.kind}, signs {self.first}-{self.last}: {notebook.short(self.romaji)}>"
        )

    @property
    def kana(self) -> str:
        """The best reading in kana, words divided by spaces."""
        return self.proposals[0].kana

    @property
    def romaji(self) -> str:
        """The best reading in Latin letters."""
        return self.proposals[0].romaji

    def to_dict(self) -> PassageKeys:
        """Return it as printed in JSON."""
        best, *others = self.proposals
        return {
            "kind": self.kind,
            "signs": [self.first, self.last],
            "text": self.text,
            "normalised": self.normalised,
            "kana": best.kana,
            "romaji": best.romaji,
            "role": self.role,
            "chance": round(self.chance, 3),
            "reading_chance": round(best.chance, 3),
            "reasons": [*self.reasons, *best.reasons],
            "alternatives": [proposal.as_alternative() for proposal in others],
            "signature": _parts(self.signature),
        }


@dataclass(frozen=True, slots=True, repr=False)
class Interpretation:
    """Everything ``inscribe read`` has to say about one inscription.

    Signs are counted from 0; ``first`` and ``last`` of tokens, passages and parts both belong to
    them.

    >>> from inscribe.reading import read_text
    >>> read_text("於東都應需造之")
    <Interpretation of '於東都應需造之', signature: 'Tōto ni oite motome ni …'>
    >>> read_text("於東都應需造之").signature["place"].romaji
    'Tōto'
    """

    text: str  # as carved
    normalised: str
    modern: str
    register: Register
    proposals: tuple[Proposal, ...]  # best first, never empty for a text with a sign in it
    signature: dict[str, SignaturePart] | None = None
    dates: tuple[DateReading, ...] = ()
    changes: tuple[Change, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    noted: str = ""  # as carved, with the transcriber's marks of how sure that is, where it has any
    passages: tuple[Passage, ...] = ()  # in the order of the signs, together all of them
    persons: tuple[MayName, ...] = ()  # of the user's list, whom it may name; the likelier first

    @property
    def names_a_person(self) -> bool:
        """Whether it names a person, so that the caution on attributions must stand beside it."""
        return bool(self.persons) or not (self.signature or {}).keys().isdisjoint(PERSON_PARTS)

    def to_dict(self) -> ReadingKeys:
        """Return it as ``inscribe read --format json`` prints it."""
        best, *others = self.proposals
        return {
            "text": self.text,
            "normalised": self.normalised,
            "modern": self.modern,
            "kana": best.kana,
            "romaji": best.romaji,
            "register": self.register,
            "chance": round(best.chance, 3),
            "tokens": [token.to_dict(sure) for token, sure in best.words_weighed()],
            "alternatives": [proposal.as_alternative() for proposal in others],
            "signature": _parts(self.signature),
            "dates": [date.to_dict() for date in self.dates],
            "changes": [change.to_dict() for change in self.changes],
            "doubts": [doubt.to_dict() for doubt in self.doubts],
            "reasons": list(best.reasons),
            "phrases": [list(phrase) for phrase in best.phrases],
            "passages": [passage.to_dict() for passage in self.passages],
            "persons": [person.to_dict() for person in self.persons],
        }

    def __repr__(self) -> str:
        text, romaji = notebook.short(self.text), notebook.short(self.proposals[0].romaji)
        return f"<Interpretation of {text}, {self.register}: {romaji}>"

    def _repr_html_(self) -> str:
        """Return the reading and its words as tables, as notebooks show it."""
        best = self.proposals[0]
        said = notebook.facts(
            {
                "as carved": self.text,
                "current forms": self.normalised,
                "kana": best.kana,
                "reading": best.romaji,
                "register": self.register,
                "doubts": "; ".join(doubt.why for doubt in self.doubts),
            }
        )
        words = ([token.surface, token.kana, token.romaji, token.gloss] for token in best.tokens)
        return said + notebook.grid(["carved", "kana", "reading", "gloss"], words)
