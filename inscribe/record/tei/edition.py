"""The signs of an edition this program wrote as TEI, read back.

``inscribe.report.tei.edition`` says which element stands for what; what is read here is the inverse
of what it writes. White space between elements does not matter, as no sign is white space.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from typing import NamedTuple

from inscribe.notation import segments
from inscribe.signs import Box, Certainty, Intervention, Kind, Sign, Transcription, transcription

TEI = "{http://www.tei-c.org/ns/1.0}"
_MOST_WORN = 1000  # signs of one gap
_NO_ZONES: Mapping[str, Box] = {}


class _Said(NamedTuple):
    """What the elements around a sign say of it."""

    certainty: Certainty = Certainty.CLEAR
    intervention: Intervention = Intervention.NONE
    sic: bool = False
    noted: str = ""
    box: Box | None = None


def transcription_of(block: ET.Element, zones: Mapping[str, Box] = _NO_ZONES) -> Transcription:
    """Return the transcription of a block of an edition; ``zones`` are boxes by XML id.

    Raises:
        ValueError: what the elements say of a sign contradicts itself.
    """
    reader = _Reader(zones)
    reader.children(block, _Said())
    return transcription(reader.faces)


class _Reader:
    """Reads one block; make a new one for each."""

    def __init__(self, zones: Mapping[str, Box]) -> None:
        self.zones = zones
        self.faces: list[list[list[Sign]]] = [[[]]]

    def children(self, element: ET.Element, said: _Said) -> None:
        """Read the text of an element and what stands in it."""
        self._text(element.text, said)
        for child in element:
            self._element(child, said)
            self._text(child.tail, said)

    def _text(self, text: str | None, said: _Said) -> None:
        for sign in segments("".join((text or "").split())):
            self._add(sign, said)

    def _add(self, text: str, said: _Said, kind: Kind = Kind.CHARACTER) -> None:
        sign = Sign(
            text, kind, said.certainty, said.intervention, said.sic, said.box, noted=said.noted
        )
        self.faces[-1][-1].append(sign)

    def _element(self, element: ET.Element, said: _Said) -> None:
        match element.tag.removeprefix(TEI), element.get("type"):
            case "lb", _:
                self.faces[-1].append([])
            case "milestone", _:
                if element.get("unit") == "face":
                    self.faces.append([[]])
            case "seg", "kao":
                self._add("", _in_letters(element, said), Kind.KAO)
            case "seg", "seal":
                self._seal(element, said)
            case "seg", _:
                facs = (element.get("facs") or "").removeprefix("#")
                box = self.zones.get(facs)
                self.children(element, said._replace(noted=element.get("n") or "", box=box))
            case "gap", _:
                self._gap(element, said)
            case "choice", _:
                for original in element.findall(f"{TEI}orig"):
                    self.children(original, said)
            case tag, _:
                self.children(element, _with(tag, element, said))

    def _seal(self, element: ET.Element, said: _Said) -> None:
        legend = "".join(element.itertext())
        said = _in_letters(element, said)
        if not legend and said.certainty is not Certainty.STRUCK:
            said = said._replace(certainty=Certainty.UNREADABLE)
        self._add(legend, said, Kind.SEAL)

    def _gap(self, element: ET.Element, said: _Said) -> None:
        """Add as many worn signs as a gap says it has, or a gap of which nobody knows how many."""
        if (count := _signs_in(element)) is None:
            self._add("", said, Kind.GAP)
            return
        struck = said.certainty is Certainty.STRUCK
        worn = said if struck else said._replace(certainty=Certainty.UNREADABLE)
        for _ in range(count):
            self._add("", worn if count == 1 else worn._replace(box=None))


def _signs_in(gap: ET.Element) -> int | None:
    """Return how many signs a gap has, or None where it does not say so for certain.

    Raises:
        ValueError: it says what no gap has.
    """
    said = gap.get("quantity")
    is_lost = gap.get("reason") == "lost" or gap.get("extent") == "unknown"
    if said is None:
        return None if is_lost or gap.get("atLeast") or gap.get("atMost") else 1
    count = int(said)
    if not 1 <= count <= _MOST_WORN:
        raise ValueError(f"a gap of {said} signs")
    return count if gap.get("unit", "character") == "character" else None


def _in_letters(element: ET.Element, said: _Said) -> _Said:
    """Return what the letters of a kao or a seal say of it."""
    for child in element:
        said = _with(child.tag.removeprefix(TEI), child, said)
    return said


def _with(tag: str, element: ET.Element, said: _Said) -> _Said:
    """Return what is said of the signs within an element."""
    doubtful = element.get("cert") == "low"
    match tag, element.get("reason"):
        case "sic", _:
            return said._replace(sic=True)
        case "supplied", "omitted":
            return said._replace(intervention=Intervention.SUPPLIED)
        case "supplied", _:
            return said._replace(certainty=Certainty.RESTORED)
        case "surplus", _:
            return said._replace(intervention=Intervention.SUPERFLUOUS)
        case "expan", _:
            return said._replace(intervention=Intervention.EXPANDED)
        case "del", _:
            return said._replace(certainty=Certainty.STRUCK)
        case "damage", _:
            return said._replace(certainty=Certainty.DAMAGED)
        case "unclear", _:
            damage = Certainty.DOUBTFUL if doubtful else Certainty.DAMAGED
            return said._replace(certainty=damage)
        case "ex", _ if doubtful:
            return said._replace(certainty=Certainty.DOUBTFUL)
    return said
