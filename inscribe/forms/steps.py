"""Which signs normalisation changes, and into what: one step a sign, read from the glossary.

The tables name forms in the order old_forms, variants, kana_ligatures, repeat_marks, hentaigana,
simplified; what Unicode itself calls compatible (compatibility ideographs, radicals, half-width
katakana, full-width letters and digits, squared words) follows from Python's Unicode data. A sign
that two tables name goes by the first.

Most texts hold no character outside JIS X 0213 but hentaigana. Their signs are searched for one by
one (``CommonSteps``); all steps are loaded when a rarer character turns up.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterable, Iterator
from itertools import chain
from typing import Any, NamedTuple

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
_VOICING_MARKS = "゛゜"
_COMMON_TABLES = ("old_forms", "variants", "kana_ligatures", "repeat_marks")  # the first goes

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


class CommonSteps(dict[str, FormStep]):
    """The steps of signs of JIS X 0213 and of hentaigana, each taken out of its table when asked.

    What has been asked for is kept; it cannot be told how many there are.
    """

    def __init__(self) -> None:
        self._searched = [
            (_OF_ROW[name], tables.Rows(name)) for name in (*_COMMON_TABLES, "hentaigana")
        ]
        self._unchanged: set[str] = set()

    def leave(self, text: str) -> bool:
        """Whether a text is known to have no sign that changes."""
        return self._unchanged.issuperset(text)

    def __contains__(self, sign: object) -> bool:
        return isinstance(sign, str) and self.get(sign) is not None

    def __missing__(self, sign: str) -> FormStep:
        step = None if sign in self._unchanged else self._found(sign)
        if step is None:
            self._unchanged.add(sign)
            raise KeyError(sign)
        self[sign] = step
        return step

    def get(self, sign: str, default: Any = None) -> Any:
        """Return the step of a sign, or the default where it does not change."""
        if sign in self._unchanged:
            return default
        try:
            return self[sign]
        except KeyError:
            return default

    def _found(self, sign: str) -> FormStep | None:
        if sign in _VOICING_MARKS:
            return _marking(sign, VOICING_MARK)
        for step, rows in self._searched:
            for row in rows.about(sign[0]):
                if row["written"] == sign:
                    return step(row)
        for first, last, kind in _COMMON_COMPATIBLE:
            if len(sign) == 1 and first <= ord(sign) <= last:
                return next(_compatible([(ord(sign), ord(sign), kind)]), None)
        is_joining = len(sign) == 1 and any(first <= ord(sign) <= last for first, last in _JOINING)
        return _marking(sign, JOINING) if is_joining else None


def common_steps(text: str) -> CommonSteps | None:
    """Return the steps that a text may need, if it has no signs but common ones and hentaigana.

    Raises:
        TableError: a table is missing or a row does not fit.
    """
    plain = _is_common(text) or _is_common(
        "".join(sign for sign in text if not "\U0001b000" <= sign <= "\U0001b16f")
    )
    return _common_lookup() if plain else None


def _is_common(text: str) -> bool:
    try:
        text.encode(_COMMON)
    except UnicodeEncodeError:
        return False
    return True


@tables.cached()
def steps() -> dict[str, FormStep]:
    """Return the step of every sign that normalisation may change.

    The ``after`` of a repeat mark or a ligature is only what it is without its neighbours.

    Raises:
        TableError: a table is missing or a row does not fit.
    """
    found: dict[str, FormStep] = {}
    joining = chain.from_iterable(range(first, last + 1) for first, last in _JOINING)
    for step in chain(
        chain.from_iterable(map(_of_table, _COMMON_TABLES)),
        _compatible(_COMMON_COMPATIBLE),
        (_marking(mark, VOICING_MARK) for mark in _VOICING_MARKS),
        (_marking(chr(mark), JOINING) for mark in joining),
        _of_table("hentaigana"),
        _of_table("simplified"),
    ):
        found.setdefault(step.before, step)
    for step in _compatible(_COMPATIBLE):
        after = "".join(found[c].after if c in found else c for c in step.after)
        found.setdefault(step.before, step._replace(after=after))
    return found


def _of_table(name: str) -> Iterator[FormStep]:
    return map(_OF_ROW[name], tables.rows(name))


@tables.cached()
def _common_lookup() -> CommonSteps | None:
    if any(len(tables.files(name)) > 1 for name in ("hentaigana", "simplified")):
        return None  # the user's may name common signs too
    return CommonSteps()


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


def _old_form(row: tables.Row) -> FormStep:
    note = row["note"] or row["source"]
    return FormStep(row["written"], row["current"], OLD_FORM, "old_forms", note)


def _variant(row: tables.Row) -> FormStep:
    note = row["note"] or row["source"]
    return FormStep(row["written"], row["current"], VARIANT, "variants", note)


def _ligature(row: tables.Row) -> FormStep:
    return FormStep(row["written"], row[row["kind"]], LIGATURE, "kana_ligatures")


def _repeat_mark(row: tables.Row) -> FormStep:
    return FormStep(row["written"], row["written"], REPEAT_MARK, "repeat_marks", row["note"])


def _hentaigana(row: tables.Row) -> FormStep:
    (usual, *others), parent = tables.listed(row["kana"]), row["parent"]
    kind = HENTAIGANA if parent else ARCHAIC_KANA
    note = f"from {parent}" if parent else row["name"].lower()
    if others:
        note = f"{note}; it may also be {' or '.join(others)}"
    return FormStep(row["written"], usual, kind, "hentaigana", note, bool(others))


def _simplified(row: tables.Row) -> FormStep:
    sign, likely = row["written"], " or ".join(tables.listed(row["current"]))
    note = f"a Chinese simplified character; {likely} may be meant"
    return FormStep(sign, sign, SIMPLIFIED, "simplified", note, True)


def _marking(mark: str, kind: str) -> FormStep:
    return FormStep(mark, mark, kind, UNICODE)


def _compatible(ranges: Iterable[tuple[int, int, str]]) -> Iterator[FormStep]:
    normalize = unicodedata.normalize
    for first, last, kind in ranges:
        for sign in map(chr, range(first, last + 1)):
            after = normalize("NFKC", sign)
            if after != sign:
                yield FormStep(sign, after, kind, UNICODE)


_OF_ROW: dict[str, Callable[[tables.Row], FormStep]] = {
    "old_forms": _old_form,
    "variants": _variant,
    "kana_ligatures": _ligature,
    "repeat_marks": _repeat_mark,
    "hentaigana": _hentaigana,
    "simplified": _simplified,
}
