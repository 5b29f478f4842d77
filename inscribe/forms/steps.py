"""Which signs normalisation changes, and into what: one step a sign, read from the glossary.

The tables name forms in the order old_forms, variants, kana_ligatures, repeat_marks, hentaigana,
simplified; what Unicode itself calls compatible (compatibility ideographs, radicals, half-width
katakana, full-width letters and digits, squared words) follows from Python's Unicode data. A sign
that two tables name goes by the first.

Most texts hold no character outside JIS X 0213. For these a smaller set of steps is enough, which
is loaded in a few milliseconds; all steps are loaded when a rarer character turns up.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from itertools import chain
from typing import NamedTuple

from inscribe import tables

OLD_FORM = "old form"
VARIANT = "variant"
HENTAIGANA = "hentaigana"
ARCHAIC_KANA = "archaic kana"
LIGATURE = "ligature"
REPEAT_MARK = "repeat mark"
COMPATIBILITY = "compatibility form"
WIDTH = "width"
VOICING_MARK = "voicing mark"
VARIATION = "variation sequence"
COMPOSED = "composed form"
SEAL_LEGEND = "seal legend"
JOINING = "part of a sign"
SIMPLIFIED = "simplified form"

# What these make of a sign is one character, whatever stands around it.
EVEN_KINDS = frozenset((OLD_FORM, VARIANT, HENTAIGANA, ARCHAIC_KANA, SIMPLIFIED))

UNICODE = "Unicode"

_COMMON = "euc_jisx0213"  # Python's name of JIS X 0213
_COMMON_COMPATIBLE = (
    (0x2460, 0x2473, COMPATIBILITY),  # circled numbers
    (0x3220, 0x33FF, COMPATIBILITY),  # enclosed and squared words
    (0xFA30, 0xFA6A, COMPATIBILITY),  # the compatibility ideographs of JIS X 0213
    (0xFF10, 0xFF19, WIDTH),
    (0xFF21, 0xFF3A, WIDTH),
    (0xFF41, 0xFF5A, WIDTH),
    (0xFF66, 0xFF9D, WIDTH),  # half-width katakana
)
_COMPATIBLE = (
    (0xF900, 0xFAD9, COMPATIBILITY),  # CJK compatibility ideographs
    (0x2F800, 0x2FA1D, COMPATIBILITY),  # their supplement
    (0x2F00, 0x2FD5, COMPATIBILITY),  # Kangxi radicals
)

# Characters of which no sign consists: marks that belong to the sign before them, the beginnings
# of ideographic description sequences, and the last pieces of repeat marks.
_JOINING = (
    (0x300, 0x36F),
    (0x3099, 0x309A),
    (0xFE00, 0xFE0F),
    (0xE0100, 0xE01EF),
    (0xFF9E, 0xFF9F),
    (0x2FF0, 0x2FFF),
    (0x31EF, 0x31EF),
    (0x3035, 0x3035),
    (0xFF3C, 0xFF3C),
)


class FormStep(NamedTuple):
    """What becomes of one sign: the fields of a change without the sign's index."""

    before: str
    after: str
    kind: str
    table: str
    note: str = ""
    doubtful: bool = False


class Lookup(NamedTuple):
    """Steps by sign.

    ``rare``: for texts with characters outside JIS X 0213, as are the marks of other scripts.
    """

    steps: dict[str, FormStep]
    rare: bool = False


def lookup_for(text: str) -> Lookup:
    """Return the steps that a text may need.

    Raises:
        TableError: a table is missing or a row does not fit.
    """
    if _is_common(text):
        return _common_lookup()
    if _is_common("".join(sign for sign in text if not "\U0001b000" <= sign <= "\U0001b16f")):
        return _kana_lookup()
    return _whole_lookup()


def _is_common(text: str) -> bool:
    try:
        text.encode(_COMMON)
    except UnicodeEncodeError:
        return False
    return True


def steps() -> dict[str, FormStep]:
    """Return the step of every sign that normalisation may change.

    The ``after`` of a repeat mark or a ligature is only what it is without its neighbours.

    Raises:
        TableError: a table is missing or a row does not fit.
    """
    return _whole_lookup().steps


@tables.cached()
def _common_lookup() -> Lookup:
    if any(len(tables.files(name)) > 1 for name in ("hentaigana", "simplified")):
        return _whole_lookup()
    return Lookup(_common_steps())


@tables.cached()
def _kana_lookup() -> Lookup:
    """Return what a text needs whose only rare signs are hentaigana, as most carved verse has."""
    found = dict(_common_lookup().steps)
    for step in _hentaigana():
        found.setdefault(step.before, step)
    return Lookup(found)


@tables.cached()
def _whole_lookup() -> Lookup:
    found = dict(_common_steps())
    for step in (*_hentaigana(), *_simplified()):
        found.setdefault(step.before, step)
    for step in _compatible(_COMPATIBLE):
        after = "".join(found[c].after if c in found else c for c in step.after)
        found.setdefault(step.before, step._replace(after=after))
    return Lookup(found, rare=True)


@tables.cached()
def _common_steps() -> dict[str, FormStep]:
    found: dict[str, FormStep] = {}
    common = (_old_forms(), _variants(), _ligatures(), _repeat_marks())
    for step in (*chain(*common), *_compatible(_COMMON_COMPATIBLE)):
        found.setdefault(step.before, step)
    for mark in "゛゜":
        found[mark] = FormStep(mark, mark, VOICING_MARK, UNICODE)
    for first, last in _JOINING:
        for mark in map(chr, range(first, last + 1)):
            found.setdefault(mark, FormStep(mark, mark, JOINING, UNICODE))
    return found


@tables.cached()
def kana_values() -> dict[str, tuple[str, ...]]:
    """Return the kana a hentaigana or archaic kana may be read as, the usual one first."""
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("hentaigana"):
        found.setdefault(row["written"], tables.listed(row["kana"]))
    return found


@tables.cached()
def ligatures() -> dict[str, tuple[str, str]]:
    """Return what each kana ligature stands for, in hiragana and in katakana."""
    found = tables.rows("kana_ligatures")
    return {row["written"]: (row["hiragana"], row["katakana"]) for row in found}


def _old_forms() -> Iterator[FormStep]:
    for row in tables.rows("old_forms"):
        note = row["note"] or row["source"]
        yield FormStep(row["written"], row["current"], OLD_FORM, "old_forms", note)


def _variants() -> Iterator[FormStep]:
    for row in tables.rows("variants"):
        note = row["note"] or row["source"]
        yield FormStep(row["written"], row["current"], VARIANT, "variants", note)


def _hentaigana() -> Iterator[FormStep]:
    for row in tables.rows("hentaigana"):
        (usual, *others), parent = tables.listed(row["kana"]), row["parent"]
        kind = HENTAIGANA if parent else ARCHAIC_KANA
        note = f"from {parent}" if parent else row["name"].lower()
        if others:
            note = f"{note}; it may also be {' or '.join(others)}"
        yield FormStep(row["written"], usual, kind, "hentaigana", note, bool(others))


def _ligatures() -> Iterator[FormStep]:
    for row in tables.rows("kana_ligatures"):
        yield FormStep(row["written"], row[row["kind"]], LIGATURE, "kana_ligatures")


def _simplified() -> Iterator[FormStep]:
    for row in tables.rows("simplified"):
        sign, likely = row["written"], " or ".join(tables.listed(row["current"]))
        note = f"a Chinese simplified character; {likely} may be meant"
        yield FormStep(sign, sign, SIMPLIFIED, "simplified", note, True)


def _repeat_marks() -> Iterator[FormStep]:
    for row in tables.rows("repeat_marks"):
        yield FormStep(row["written"], row["written"], REPEAT_MARK, "repeat_marks", row["note"])


def _compatible(ranges: Iterable[tuple[int, int, str]]) -> Iterator[FormStep]:
    normalize = unicodedata.normalize
    for first, last, kind in ranges:
        for sign in map(chr, range(first, last + 1)):
            after = normalize("NFKC", sign)
            if after != sign:
                yield FormStep(sign, after, kind, UNICODE)
