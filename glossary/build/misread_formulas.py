"""Make misread_formulas.tsv: signs that may be a sign of the formulas, misread or mistyped.

python glossary/build/misread_formulas.py (after parts.tsv and the tables of signatures)
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from pathlib import Path

from inscribe import tables
from inscribe.forms import parts
from inscribe.forms.alike import STROKES
from inscribe.forms.relations import look_alikes

TABLES = {
    "signature_words": ("written", "class", "kana", "with_object", "alternatives", "gloss"),
    "titles": ("written", "kana", "kind", "alternatives", "gloss"),
    "provinces": ("written", "kind", "kana", "province"),
}
LEAST = 0.6  # of the parts in common
HEAD = """\
# Signs that share most of their parts with a sign of the formulas: 洲 for 州, misread or mistyped.
# Columns: sign (of JIS X 0208); whole (signs of signature_words, titles and provinces of which it
#   is directly a part, or which are one of its own); parts (those with which it shares 60% of its
#   parts). What look_alikes.tsv has already is left out.
# Source: the parts of KanjiVG (CC BY-SA 3.0), by way of parts.tsv. That parts are alike proves
#   nothing: the formula decides.
# Licence: CC BY-SA 3.0.
# Rebuild: python glossary/build/misread_formulas.py (after parts.tsv, look_alikes.tsv and the
#   tables of signatures)
sign\twhole\tparts
"""


def main() -> None:
    """Write the table."""
    path = Path(__file__).parent.parent / "misread_formulas.tsv"
    path.write_text(HEAD + "".join("\t".join(row) + "\n" for row in rows()), encoding="utf-8")


def rows() -> Iterator[tuple[str, str, str]]:
    """Yield the rows, sorted by sign."""
    formula = {sign: parts_of(sign) for sign in sorted(formula_signs()) if parts_of(sign)}
    by_part: dict[str, set[str]] = defaultdict(set)
    for sign, own in formula.items():
        for part in (sign, *own):
            by_part[part].add(sign)
    for (sign, _, _), _ in tables.rows("parts", ("char", "parts", "source")):
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
            yield sign, "".join(whole), "".join(partly)


def formula_signs() -> set[str]:
    """Return every kanji of the words of signatures."""
    found: set[str] = set()
    for name, columns in TABLES.items():
        for cells, _ in tables.rows(name, columns):
            found |= {sign for sign in cells[0] if "\u3400" <= sign <= "\u9fff"}
    return found


def parts_of(sign: str) -> Counter[str]:
    """Return every part of a sign, but for single strokes, with how often it is there."""
    found: Counter[str] = Counter()
    waiting = list(parts.parts(sign))
    while waiting:
        part = waiting.pop()
        waiting += part.parts
        if part.char not in STROKES:
            found[part.char] += 1
    return found


def is_direct(part: str, sign: str) -> bool:
    """Whether a character is one of the parts that a sign is directly built of."""
    return any(each.char == part for each in parts.parts(sign))


def in_common_use(char: str) -> bool:
    """Whether JIS X 0208 holds the character."""
    try:
        return len(char.encode("euc_jp")) == 2
    except UnicodeEncodeError:
        return False


def shared(one: Counter[str], other: Counter[str]) -> float:
    """Return which share of their parts two signs have in common."""
    return 2 * (one & other).total() / (one.total() + other.total())


if __name__ == "__main__":
    main()
