"""The edition of one inscription: what is carved, sign by sign, with what is known of each sign.

Elements stand in one order, the outer first, so that each says one thing: what a stretch names
(``persName``, ``placeName``, ``date``), the sign (``seg``, where it has a zone or a noted parent,
or would run into its neighbour), ``sic``, what the editor did (``supplied``, ``surplus``,
``expan``), whether it was lost or struck (``supplied``, ``del``), the old form beside the current
one (``choice``), and how sure the letter is (``unclear``). ``inscribe.record.tei.edition`` reads
them back.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from inscribe.notation import segments
from inscribe.report import XML_ID, add, append_text
from inscribe.signs import Certainty, Intervention, Kind, Sign, Transcription

_NONE: Mapping[int, ET.Element] = {}
_REACH = 3  # signs before a sign that it may run together with: the parts of a tall repeat mark


class NamedStretch(NamedTuple):
    """Signs ``first`` to ``last`` that name something, and the element that says what."""

    first: int
    last: int
    tag: str
    attributes: Mapping[str, str]


class Marks(NamedTuple):
    """What the edition of an inscription shows beside its signs, by the index of the sign.

    ``name`` begins every XML id; ``starts`` and ``ends`` are signs before and after which an
    anchor stands, for the apparatus.
    """

    name: str
    regular: Mapping[int, str] = {}
    stretches: Sequence[NamedStretch] = ()
    starts: frozenset[int] = frozenset()
    ends: frozenset[int] = frozenset()


def zone_id(name: str, sign: Sign) -> str:
    """Return the XML id of the zone of a sign."""
    return f"{name}-z{sign.index + 1}"


def anchor_id(name: str, sign: int, *, end: bool = False) -> str:
    """Return the XML id of the anchor before a sign, or after it."""
    return f"{name}-{'e' if end else 's'}{sign + 1}"


def add_edition(
    block: ET.Element, t: Transcription, marks: Marks, later: Mapping[int, ET.Element] = _NONE
) -> None:
    """Add the signs of an inscription to a block of text; each column begins with ``lb``.

    ``later`` are further blocks, by the index of the sign with which each begins.
    """
    _Edition(block, t, marks, later).add()


class _Edition:
    """Adds one inscription; make a new one for each."""

    def __init__(
        self, block: ET.Element, t: Transcription, marks: Marks, later: Mapping[int, ET.Element]
    ) -> None:
        self.block = self.holder = block
        self.later = later
        self.t = t
        self.marks = marks
        self.stretches = list(_disjoint(marks.stretches))
        self.run: list[str] = []  # the signs of the text node that is being written

    def add(self) -> None:
        """Add the signs, column by column and face by face."""
        for number, face in enumerate(self.t.faces, start=1):
            for within, column in enumerate(face.columns):
                first = column.signs[0].index
                self._close_before(first)
                if not within and len(self.t.faces) > 1:
                    self._element("milestone", unit="face", n=str(number))
                line = self._element("lb", n=str(column.index + 1))
                line.set(XML_ID, f"{self.marks.name}-lb{column.index + 1}")
                for sign in column.signs:
                    self._sign(sign)

    def _element(self, tag: str, **attributes: str) -> ET.Element:
        self.run = []
        return add(self.holder, tag, **attributes)

    def _close_before(self, sign: int) -> None:
        """Close what ends before a sign: a block of text, or the name of somebody."""
        if self.later.get(sign, self.block) is not self.block:
            self.block = self.holder = self.later[sign]
            self.run = []
        if self.stretches and self.stretches[0].last < sign:
            del self.stretches[0]
            self.holder, self.run = self.block, []

    def _sign(self, sign: Sign) -> None:
        self._close_before(sign.index)
        if sign.index in self.marks.starts:
            self._anchor(sign.index)
        if self.stretches and self.stretches[0].first == sign.index:
            self.holder = self._element(self.stretches[0].tag, **self.stretches[0].attributes)
        self._write(sign)
        if sign.index in self.marks.ends:
            self._anchor(sign.index, end=True)

    def _anchor(self, sign: int, *, end: bool = False) -> None:
        self._element("anchor").set(XML_ID, anchor_id(self.marks.name, sign, end=end))

    def _write(self, sign: Sign) -> None:
        regular = self.marks.regular.get(sign.index, "")
        is_plain = _is_plain(sign) and regular in ("", sign.text)
        said = self._said_of(sign)
        if is_plain and not said and self._stands_apart(sign):
            append_text(self.holder, sign.text)
            self.run.append(sign.text)
            return
        self.run = []
        holder = add(self.holder, "seg", type="sign", **said) if said or is_plain else self.holder
        add_sign(holder, sign, regular)

    def _said_of(self, sign: Sign) -> dict[str, str]:
        said = {"n": sign.noted} if sign.noted else {}
        return said | ({"facs": f"#{zone_id(self.marks.name, sign)}"} if sign.box else {})

    def _stands_apart(self, sign: Sign) -> bool:
        """Whether a sign in the text before it is read back as a sign of its own."""
        before = self.run[-_REACH:]
        return segments("".join(before) + sign.text) == (*before, sign.text)


def _is_plain(sign: Sign) -> bool:
    sure = sign.certainty is Certainty.CLEAR and sign.intervention is Intervention.NONE
    return sign.is_legible and sure and not sign.sic


def _disjoint(stretches: Sequence[NamedStretch]) -> list[NamedStretch]:
    """Return the stretches in order, without those that overlap one before them."""
    found: list[NamedStretch] = []
    for stretch in sorted(stretches, key=lambda each: (each.first, -each.last)):
        if not found or found[-1].last < stretch.first:
            found.append(stretch)
    return found


def add_sign(holder: ET.Element, sign: Sign, regular: str = "") -> None:
    """Add one sign with what is said of it; ``regular`` is its current form."""
    holder = add(holder, "sic") if sign.sic else holder
    if sign.intervention is Intervention.SUPPLIED:
        holder = add(holder, "supplied", reason="omitted")
    elif sign.intervention is Intervention.SUPERFLUOUS:
        holder = add(holder, "surplus")
    elif sign.intervention is Intervention.EXPANDED:
        holder = add(holder, "expan")
    if sign.certainty is Certainty.RESTORED:
        holder = add(holder, "supplied", reason="lost")
    elif sign.certainty is Certainty.STRUCK:
        holder = add(holder, "del", rend="struck")
    _add_content(holder, sign, regular)


def _add_content(holder: ET.Element, sign: Sign, regular: str) -> None:
    if sign.kind is Kind.GAP:
        add(holder, "gap", reason="lost", extent="unknown", unit="character")
    elif sign.kind is Kind.KAO:
        _add_letters(add(holder, "seg", type="kao"), "花押", sign)
    elif sign.kind is Kind.SEAL:
        seal = add(holder, "seg", type="seal")
        if sign.text:
            _add_letters(seal, sign.text, sign)
        else:
            add(seal, "gap", reason="illegible", extent="unknown", unit="character")
    elif not sign.text:
        add(holder, "gap", reason="illegible", quantity="1", unit="character")
    elif sign.intervention is Intervention.EXPANDED:
        _add_expanded(holder, sign)
    elif regular and regular != sign.text:
        choice = add(holder, "choice")
        _add_letters(add(choice, "orig"), sign.text, sign)
        add(choice, "reg", regular)
    else:
        _add_letters(holder, sign.text, sign)


def _add_letters(holder: ET.Element, text: str, sign: Sign) -> None:
    if sign.certainty is Certainty.DAMAGED:
        add(holder, "unclear", text)
    elif sign.certainty is Certainty.DOUBTFUL:
        add(holder, "unclear", text, cert="low")
    else:
        append_text(holder, text)


def _add_expanded(holder: ET.Element, sign: Sign) -> None:
    """Add a letter of an abbreviation written out; EpiDoc has nothing but text within ``ex``."""
    if sign.certainty is Certainty.DAMAGED:
        holder = add(holder, "damage")
    doubt = {"cert": "low"} if sign.certainty is Certainty.DOUBTFUL else {}
    add(holder, "ex", sign.text, **doubt)
