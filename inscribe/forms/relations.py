"""Are two signs the same character in another form? A relation, never a folding.

Sharing one current form is not enough: 辨, 辯 and 瓣 are all printed 弁 today and are three words,
each of them related to 弁 and none to another.

>>> relation("濱", "浜").kind, relation("嶋", "嶌").kind, relation("辨", "辯").kind
('old form', 'variant', 'unrelated')
>>> same_character("𛂞", "ハ"), same_character("餘", "余"), same_character("余", "予")
(True, True, False)
>>> relation("未", "末")
Relation(kind='look-alike', table='look_alikes', note='which cross stroke is longer')
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

from inscribe import tables
from inscribe.forms import sequences
from inscribe.forms.numbers import numbers, value_of
from inscribe.forms.steps import (
    ARCHAIC_KANA,
    COMPATIBILITY,
    HENTAIGANA,
    OLD_FORM,
    UNICODE,
    VARIANT,
    WIDTH,
    kana_values,
    steps,
)

SAME = "same"
KANA_FORM = "kana form"
NUMBER_FORM = "number form"
LOOK_ALIKE = "look-alike"
UNRELATED = "unrelated"

SIMPLIFIED_TABLE = "simplified"

_KINDS = {
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

    kind: str  # one of the kinds named above, or "old form", "variant", "compatibility form"
    table: str = ""
    note: str = ""

    @property
    def is_same_character(self) -> bool:
        """Whether the two are one character, in whatever form."""
        return self.kind not in (LOOK_ALIKE, UNRELATED)


@dataclass(frozen=True, slots=True)
class Merged:
    """One of the forms that are written ``current`` today: the word it stands for."""

    current: str
    word: str
    meaning: str


def same_character(a: str, b: str) -> bool:
    """Return whether two signs are one character in the same or another form.

    True for old forms, variants, compatibility forms, kana of one sound in any script, and two
    signs for one number (一, 壱); voicing marks count. Says what ``relation(a, b)`` says, and is
    cheap enough to ask for every pair of an alignment.
    """
    if a == b:
        return True
    family = _family(a)
    return b in family or (len(b) > 1 and _plain(b) in family)


def relation(a: str, b: str) -> Relation:
    """Return how two signs are related, and which table says so.

    The relation is the same in both directions. Raises:
        TableError: a glossary table cannot be used.

    >>> relation("應", "応").kind
    'old form'
    """
    if a == b:
        return Relation(SAME)
    a, b = _plain(a), _plain(b)
    if a == b:
        return Relation(SAME, UNICODE, "another shape or coding of one character")
    if shared := _words_of(a) & _words_of(b):
        return _in_another_form(a, b, min(shared))
    if stated := _stated(a, b):
        return stated
    merged = _merged()
    if a in merged and b in merged and merged[a].current == merged[b].current:
        note = f"both are written {merged[a].current} today, but they are different words"
        return Relation(UNRELATED, "merged", note)
    if why := look_alikes(a).get(b):
        return Relation(LOOK_ALIKE, "look_alikes", why)
    return Relation(UNRELATED)


def related(sign: str) -> dict[str, Relation]:
    """Return every single sign that is related to ``sign``, its other forms before look-alikes."""
    others = sorted(_family(sign) - {sign}) + sorted(look_alikes(_plain(sign)))
    return {other: relation(sign, other) for other in dict.fromkeys(others)}


def look_alikes(sign: str) -> dict[str, str]:
    """Return the signs that ``sign`` may be taken for, each with the reason."""
    return _alike().get(sign, {})


def merged_word(sign: str) -> Merged | None:
    """Return the word a sign stands for, if the reforms merged it with another."""
    return _merged().get(sign)


@tables.cached()
def _family(sign: str) -> frozenset[str]:
    """Return the single signs that are one character with ``sign``, itself included."""
    plain = _plain(sign)
    near = {plain, _current(plain)}
    near |= {other for form in tuple(near) for other in _relatives().get(form, ())}
    words = {word for other in near for word in _words_of(other)}
    near |= {other for word in words for other in _by_word().get(word, ())}
    value = value_of(plain)
    if value is not None:
        near |= {other for other, number in numbers().items() if number == value}
    return frozenset(other for other in near if relation(plain, other).is_same_character)


def _in_another_form(a: str, b: str, word: str) -> Relation:
    known = steps()
    for form, other in ((a, b), (b, a)):
        step = known.get(form)
        if step and step.after == other:
            return Relation(_KINDS[step.kind], step.table, _merger(form, other) or step.note)
    both = {_KINDS[known[sign].kind] for sign in (a, b) if sign in known}
    table = max((known[sign].table for sign in (a, b) if sign in known), default="")
    if COMPATIBILITY in both:
        return Relation(COMPATIBILITY, UNICODE, f"both are forms of {word}")
    if _hiragana(word) is not None:
        return Relation(KANA_FORM, table or UNICODE)
    kind = OLD_FORM if both == {OLD_FORM} else VARIANT
    return Relation(kind, table or "merged", f"both are forms of {word}")


def _merger(form: str, current: str) -> str:
    """Return what a form means that was merged with another word, or nothing."""
    merged = _merged()
    if form not in merged or current not in merged:
        return ""
    return f"{form}: {merged[form].meaning}; {current} was also {merged[current].meaning}"


def _stated(a: str, b: str) -> Relation | None:
    """Return the relation that a table of pairs states for two signs or their current forms."""
    number = value_of(a)
    if number is not None and number == value_of(b):
        return Relation(NUMBER_FORM, "numbers", f"both are {number}")
    pairs = _relatives()
    for form in (a, _current(a)):
        for other in (b, _current(b)):
            if other in pairs.get(form, {}):
                return pairs[form][other]
    return None


def _current(sign: str) -> str:
    step = steps().get(sign)
    return step.after if step else sign


def _words_of(sign: str) -> frozenset[str]:
    """Return the words a sign may stand for: itself, its current form or its sound."""
    plain = _plain(sign)
    return _words().get(plain) or frozenset((_hiragana(plain) or plain,))


def _plain(sign: str) -> str:
    """Return a sign composed and without variation selectors."""
    if len(sign) < 2:
        return sign
    for step in sequences.joined(sign, steps()):
        sign = step.after
    return sign


def _hiragana(sign: str) -> str | None:
    """Return the hiragana of a kana, or None for any other sign."""
    if len(sign) != 1:
        return None
    if "ァ" <= sign <= "ヶ":
        return chr(ord(sign) - 0x60)
    return sign if "ぁ" <= sign <= "ゖ" else None


@tables.cached()
def _words() -> dict[str, frozenset[str]]:
    """Return the words a sign may stand for, for every sign that has other forms."""
    found: dict[str, frozenset[str]] = {}
    for form, merged in _merged().items():
        found[form] = frozenset((merged.word,))
        found[merged.current] = found.get(merged.current, frozenset()) | {merged.word}
    values = kana_values()
    for sign, step in steps().items():
        if step.kind in _KINDS and sign not in found:
            word = frozenset(_hiragana(kana) or kana for kana in values.get(sign, (step.after,)))
            found[sign] = found.get(step.after) or word
    return found


@tables.cached()
def _by_word() -> dict[str, set[str]]:
    """Return the signs that may stand for each word, the word's own sign included."""
    found: dict[str, set[str]] = defaultdict(set)
    for sign, words in _words().items():
        for word in words:
            found[word] |= {sign, word}
    for code in range(0x3041, 0x3097):
        found[chr(code)] |= {chr(code), chr(code + 0x60)}
    return dict(found)


@tables.cached()
def _merged() -> dict[str, Merged]:
    """Return the words of the forms that the reforms merged."""
    found: dict[str, Merged] = {}
    for row in tables.rows("merged"):
        found.setdefault(row["written"], Merged(row["current"], row["word"], row["gloss"]))
    return found


@tables.cached()
def _relatives() -> dict[str, dict[str, Relation]]:
    """Return the pairs of related_forms.tsv and the simplified forms, in both directions."""
    found: dict[str, dict[str, Relation]] = defaultdict(dict)
    for row in tables.rows("related_forms"):
        stated = Relation(row["kind"], "related_forms", row["source"])
        found[row["written"]].setdefault(row["other"], stated)
        found[row["other"]].setdefault(row["written"], stated)
    stated = Relation(VARIANT, SIMPLIFIED_TABLE, "a Chinese simplified form")
    for row in tables.rows("simplified"):
        for other in tables.listed(row["current"]):
            found[row["written"]][other] = found[other][row["written"]] = stated
    return dict(found)


@tables.cached()
def _alike() -> dict[str, dict[str, str]]:
    """Return, for every sign, the signs it may be taken for, with the reason."""
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for row in tables.rows("look_alikes"):
        for sign in row["signs"]:
            for other in row["signs"].replace(sign, ""):
                found[sign].setdefault(other, row["note"])
    return dict(found)
