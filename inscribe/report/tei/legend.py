"""The legend of the notation: what each mark of the transcriber says, and the element for it."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterable

from inscribe.notation import printed
from inscribe.report import add
from inscribe.signs import Certainty, Intervention, Kind, Sign

# Mark in Japanese conventions, what it says, the element of this file, and the signs that have it.
_LEGEND: tuple[tuple[str, str, str, Callable[[Sign], bool]], ...] = (
    ("□", "a sign that cannot be read", "gap, reason illegible",
     lambda s: s.certainty is Certainty.UNREADABLE and s.kind is Kind.CHARACTER),
    ("■", "a sign struck out", "del, rend struck", lambda s: s.certainty is Certainty.STRUCK),
    ("花(損)", "damaged but legible", "unclear (damage where written out)",
     lambda s: s.certainty is Certainty.DAMAGED),
    ("花(カ)", "doubtful", "unclear (ex where written out), cert low",
     lambda s: s.certainty is Certainty.DOUBTFUL),
    ("花(ママ)", "carved so, though it is odd", "sic", lambda s: s.sic),
    ("［花］", "lost, and restored by the editor", "supplied, reason lost",
     lambda s: s.certainty is Certainty.RESTORED),
    ("〔花〕", "omitted by the carver, supplied by the editor", "supplied, reason omitted",
     lambda s: s.intervention is Intervention.SUPPLIED),
    ("花(衍)", "one too many", "surplus", lambda s: s.intervention is Intervention.SUPERFLUOUS),
    ("〈花〉", "an abbreviation written out", "expan, ex",
     lambda s: s.intervention is Intervention.EXPANDED),
    ("［　　］", "a gap of unknown length", "gap, reason lost", lambda s: s.kind is Kind.GAP),
    ("（花押）", "a carved monogram, which has no reading", "seg, type kao",
     lambda s: s.kind is Kind.KAO),
    ("（印「山」）", "a seal, with its legend where it is legible", "seg, type seal",
     lambda s: s.kind is Kind.SEAL),
    ("は(者)", "a kana with the kanji it is written from", "seg, type sign, n",
     lambda s: bool(s.noted)),
)  # fmt: skip

RULES = (
    "Each lb begins a column, from right to left; each milestone of unit face a face.",
    "An old, variant or cursive form stands in choice: orig as carved, reg in current form.",
    "Names are attested: what the signature says. A signature is not an attribution.",
)


def add_legend(header: ET.Element, signs: Iterable[Sign]) -> None:
    """Add the rules of the edition, and the marks that its signs need."""
    held = list(signs)
    rules = add(add(header, "encodingDesc"), "editorialDecl")
    for rule in RULES:
        add(rules, "p", rule)
    used = [(mark, said, tag) for mark, said, tag, has in _LEGEND if any(map(has, held))]
    if used:
        listed = add(add(rules, "p", "Marks of the transcriber:"), "list")
        for mark, said, tag in used:
            add(listed, "item", f"{mark} {said}: {tag}")
    old_kana = {s.text: printed(s) for s in held if s.kind is Kind.CHARACTER and not s.noted}
    if shown := [f"{text} is {said}" for text, said in old_kana.items() if text != said]:
        add(rules, "p", f"Old forms of kana, with the kanji each is from: {', '.join(shown)}.")
