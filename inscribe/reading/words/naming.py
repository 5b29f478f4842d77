"""Whom a stretch of an inscription may name, of the user's own list: never an attribution."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from inscribe.keys import MayNameKeys


class MayName(NamedTuple):
    """A person whom a stretch of signs may name.

    ``chance`` is that the person is meant, against the others of the list who may be and against
    somebody who is in no list; ``life`` says where a date on the object lies outside the person's
    life, else it is empty.
    """

    first: int  # index of the first sign
    last: int  # index of the last sign
    text: str  # the name in current forms
    id: str
    name: str  # how the list calls the person
    kinds: tuple[str, ...]  # as what the person is named: pen name, surname, ...
    reasons: tuple[str, ...]
    chance: float
    life: str = ""
    stretch: int = 0  # the number of the stretch; persons whom the same signs may name share it

    @property
    def why(self) -> str:
        """The reasons in one line."""
        return "; ".join(self.reasons)

    def to_dict(self) -> MayNameKeys:
        """Return it as printed in JSON."""
        return {
            "signs": [self.first, self.last],
            "text": self.text,
            "id": self.id,
            "name": self.name,
            "as": " and ".join(self.kinds),
            "why": self.why,
            "chance": round(self.chance, 3),
            "outside_life": self.life,
        }
