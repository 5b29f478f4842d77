"""Build misread_formulas.tsv: signs that may be a sign of the formulas, misread or mistyped.

It reads parts.tsv, look_alikes.tsv and the tables of signatures.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator

from sources import listed, table

from inscribe.forms import look_alikes, parts
from inscribe.forms.alike import STROKES

TABLES = ("signature_words", "titles", "provinces")
LEAST = 0.6  # of the parts in common


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"misread_formulas": list(rows())}


def rows() -> Iterator[tuple[str, str, str]]:
    """Yield the rows, sorted by sign."""
    formula = {sign: parts_of(sign) for sign in sorted(formula_signs()) if parts_of(sign)}
    by_part: dict[str, set[str]] = defaultdict(set)
    for sign, own in formula.items():
        for part in (sign, *own):
            by_part[part].add(sign)
    for sign, *_ in table("parts"):
        own = parts_of(sign)
        if not in_common_use(sign):
            continue
        near = {other for part in (sign, *own) for other in by_part.get(part, ())}
        known = look_alikes(sign)
        alike = sorted(other for other in near if other != sign and other not in known)
        whole = [other for other in alike if is_direct(other, sign) or is_direct(sign, other)]
        partly = [other for other in alike if other not in whole]
        partly = [other for other in partly if shared(own, formula[other]) >= LEAST]
        if whole or partly:
            yield sign, listed(whole), listed(partly)


def formula_signs() -> set[str]:
    """Return every kanji of the words of signatures."""
    found: set[str] = set()
    for name in TABLES:
        for written, *_ in table(name):
            found |= {sign for sign in written if "\u3400" <= sign <= "\u9fff"}
    return found


def parts_of(sign: str) -> Counter[str]:
    """Return every part of a sign, but for single strokes, with how often it is there."""
    found: Counter[str] = Counter()
    waiting = list(parts(sign))
    while waiting:
        part = waiting.pop()
        waiting += part.parts
        if part.char not in STROKES:
            found[part.char] += 1
    return found


def is_direct(part: str, sign: str) -> bool:
    """Whether a character is one of the parts that a sign is directly built of."""
    return any(each.char == part for each in parts(sign))


def in_common_use(char: str) -> bool:
    """Whether JIS X 0208 holds the character."""
    try:
        return len(char.encode("euc_jp")) == 2
    except UnicodeEncodeError:
        return False


def shared(one: Counter[str], other: Counter[str]) -> float:
    """Return which share of their parts two signs have in common."""
    return 2 * (one & other).total() / (one.total() + other.total())
