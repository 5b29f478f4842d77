"""The result of normalisation: a text, where each character came from, and every change made.

Input plus recorded changes gives the output, and the output plus changes gives back what was
carved: nothing is folded silently.

>>> normal = NormalText("国々", (0, 1), (Change(0, "國", "国", "old form", "old_forms"),))
>>> carved(normal)
'國々'
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from inscribe.keys import ChangeKeys
    from inscribe.terms import SignIndex


class Change(NamedTuple):
    """One step: at sign ``sign``, ``before`` became ``after``, and why.

    Several changes of one sign follow each other, each starting where the last one ended. A
    change whose ``after`` equals its ``before`` changed nothing: it is a warning. ``doubtful``
    means that a person should look again; ``note`` then says why.

    >>> from inscribe import normalise_text
    >>> change = normalise_text("應需").changes[0]
    >>> change.sign, change.before, change.after, change.kind
    (0, '應', '応', 'old form')
    """

    sign: SignIndex
    before: str
    after: str
    kind: str  # "old form", "variant", "hentaigana", "compatibility form", "repeat mark", ...
    table: str  # the glossary table that says so
    note: str = ""
    doubtful: bool = False

    def to_dict(self) -> ChangeKeys:
        """Return it as printed in JSON."""
        return {
            "sign": self.sign,
            "from": self.before,
            "to": self.after,
            "kind": self.kind,
            "source": self.table,
        }


class NormalText(NamedTuple):
    """A text in current character forms and ordinary kana, spelling otherwise as carved.

    ``origin[i]`` is the index of the sign that ``text[i]`` came from. A sign that cannot be read
    stands as ``□`` and a gap, kao or seal as a mark of its own (see ``inscribe.forms``), so
    that later stages can see it.

    >>> from inscribe import normalise, parse
    >>> current = normalise(parse("應需□"))
    >>> current.text, current.origin
    ('応需□', (0, 1, 2))
    """

    text: str
    origin: tuple[SignIndex, ...]
    changes: tuple[Change, ...] = ()


def carved(normal: NormalText) -> str:
    """Return the text as it stood before its changes, made from the result alone."""
    stands: dict[int, str] = {}
    for character, sign in zip(normal.text, normal.origin, strict=True):
        stands[sign] = stands.get(sign, "") + character
    for change in reversed(normal.changes):
        stands[change.sign] = change.before
    return "".join(stands[sign] for sign in sorted(stands))


def carved_between(normal: NormalText, first: int, last: int) -> str:
    """Return what stood in the signs of a stretch of the text before its changes.

    ``first`` and ``last`` are offsets in the normalised text, both counted.
    """
    text = normal.text[first : last + 1]
    signs = normal.origin[first : last + 1]
    within = range(signs[0], signs[-1] + 1)
    changes = tuple([change for change in normal.changes if change.sign in within])
    return carved(NormalText(text, signs, changes)) if changes else text
