"""Are two signs the same character in another form? A relation, never a folding.

Sharing one current form is not enough: 辨, 辯 and 瓣 are all printed 弁 today and are three words,
each of them related to 弁 and none to another.

>>> relation("濱", "浜").kind, relation("嶋", "嶌").kind, relation("辨", "辯").kind
('old form', 'variant', 'unrelated')
>>> same_character("𛂞", "ハ"), same_character("餘", "余"), same_character("余", "予")
(True, True, False)
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from inscribe import tables
from inscribe.forms import sequences
from inscribe.forms.steps import (
    ARCHAIC_KANA,
    COMPATIBILITY,
    HENTAIGANA,
    LIGATURE,
    OLD_FORM,
    REPEAT_MARK,
    VARIANT,
    VOICING_MARK,
    WIDTH,
    steps,
)

SAME = "same"
KANA_FORM = "kana form"
LOOK_ALIKE = "look-alike"
UNRELATED = "unrelated"

_NOT_FORMS = frozenset((REPEAT_MARK, LIGATURE, VOICING_MARK))
_KIND_OF_STEP = {
    OLD_FORM: OLD_FORM,
    VARIANT: VARIANT,
    COMPATIBILITY: COMPATIBILITY,
    WIDTH: COMPATIBILITY,
    HENTAIGANA: KANA_FORM,
    ARCHAIC_KANA: KANA_FORM,
}


@dataclass(frozen=True, slots=True)
class Relation:
    """How two signs are related, and the table that says so (empty where none does)."""

    kind: str  # "same", "old form", "variant", "compatibility form", "kana form", ...
    table: str = ""
    note: str = ""

    @property
    def is_same_character(self) -> bool:
        """Whether the two are one character, in whatever form."""
        return self.kind not in (LOOK_ALIKE, UNRELATED)


def same_character(a: str, b: str) -> bool:
    """Return whether two signs are one character in the same or another form; cheap.

    Kana of one sound are one character in whichever script; voicing marks count.
    """
    if a == b:
        return True
    words = _words()
    of_a = words.get(a) or _plain_words(a)
    of_b = words.get(b) or _plain_words(b)
    return not of_a.isdisjoint(of_b)


def relation(a: str, b: str) -> Relation:
    """Return how two signs are related, and which table says so."""
    if a == b:
        return Relation(SAME)
    a, b = _plain(a), _plain(b)
    if a == b:
        return Relation(SAME, "Unicode", "another shape or coding of one character")
    if same_character(a, b):
        return _same_in_another_form(a, b)
    merged = _merged()
    if a in merged and b in merged and merged[a][0] == merged[b][0]:
        note = f"both are written {merged[a][0]} today, but they are different words"
        return Relation(UNRELATED, "merged", note)
    for signs, why in _look_alikes():
        if a in signs and b in signs:
            return Relation(LOOK_ALIKE, "look_alikes", why)
    return Relation(UNRELATED)


def _same_in_another_form(a: str, b: str) -> Relation:
    known = steps()
    note = _merged_note(a, b)
    for form, other in ((a, b), (b, a)):
        step = known.get(form)
        if step and step.after == other:
            return Relation(_KIND_OF_STEP.get(step.kind, step.kind), step.table, note or step.note)
    if _hiragana(a) is not None or _hiragana(b) is not None:
        return Relation(KANA_FORM, "hentaigana" if a in known or b in known else "Unicode")
    shared = sorted(_words_of(a) & _words_of(b))
    table = next((known[sign].table for sign in (a, b) if sign in known), "merged")
    return Relation(VARIANT, table, note or f"both are forms of {shared[0]}")


def _merged_note(a: str, b: str) -> str:
    merged = _merged()
    for form, current in ((a, b), (b, a)):
        if form in merged and current in merged and merged[form][0] == current:
            own = merged[current][2]
            return f"{form}: {merged[form][2]}; {current} was also {own}"
    return ""


def _words_of(sign: str) -> frozenset[str]:
    return _words().get(sign) or _plain_words(sign)


def _plain_words(sign: str) -> frozenset[str]:
    plain = _plain(sign)
    known = _words().get(plain)
    return known or frozenset((_hiragana(plain) or plain,))


def _plain(sign: str) -> str:
    """Return a sign without variation selectors, composed."""
    if len(sign) == 1:
        return unicodedata.normalize("NFC", sign) if sign not in steps() else sign
    for step in sequences.joined(sign):
        sign = step.after
    return sign


def _hiragana(sign: str) -> str | None:
    """Return the hiragana of a kana, or None for any other sign."""
    if len(sign) != 1:
        return None
    if "ァ" <= sign <= "ヶ":
        return chr(ord(sign) - 0x60)
    return sign if "ぁ" <= sign <= "ゖ" else None


@tables.compiled
def _words() -> dict[str, frozenset[str]]:
    """Return the words a sign may stand for, for every sign that has other forms."""
    found: dict[str, frozenset[str]] = {}
    for form, (_, word, _) in _merged().items():
        found[form] = frozenset((word,))
    for form, (current, word, _) in _merged().items():
        found[current] = found.get(current, frozenset()) | {word}
        del form
    for sign, step in steps().items():
        if step.kind not in _NOT_FORMS and sign not in found:
            found[sign] = found.get(step.after) or _values(step.after, step.note)
    return found


def _values(after: str, note: str) -> frozenset[str]:
    others = note.partition("it may also be ")[2].split(" or ")
    return frozenset(_hiragana(kana) or kana for kana in (after, *others) if kana)


@tables.compiled
def _merged() -> dict[str, tuple[str, str, str]]:
    """Return (current form, word, meaning) of each merged form."""
    columns = ("form", "current", "word", "meaning")
    found: dict[str, tuple[str, str, str]] = {}
    for (form, current, word, meaning), _ in tables.rows("merged", columns):
        found.setdefault(form, (current, word, meaning))
    return found


@tables.compiled
def _look_alikes() -> tuple[tuple[str, str], ...]:
    """Return the groups of signs taken for each other, with the reason."""
    return tuple((row[0], row[1]) for row, _ in tables.rows("look_alikes", ("signs", "why")))
