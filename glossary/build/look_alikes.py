"""Build look_alikes.tsv: a hand list, what follows from it for whole characters, Unihan.

Two characters are derived as alike when they are built of the same parts in the same places but
for one, and the two parts that differ are alike themselves (侍 and 待: 亻 and 彳).
Pairs that the tables of forms call one character in two forms (冨 富) are forms, and not alike.
Needs the Debian package unicode-data; runs after parts and related_forms.
"""

from __future__ import annotations

from collections import defaultdict
from itertools import combinations

from sources import by_hand, character, table, unihan

from inscribe.forms.components import parts


def in_common_use(char: str) -> bool:
    """Whether JIS X 0208 holds the character."""
    try:
        return len(char.encode("euc_jp")) == 2
    except UnicodeEncodeError:
        return False


def direct_parts() -> dict[str, list[tuple[str, str]]]:
    """Return the (position, part) pairs a character is directly built of."""
    return {
        row[0]: [(part.position, part.char) for part in parts(row[0])]
        for row in table("parts")
        if in_common_use(row[0])
    }


def derived() -> list[tuple[str, str, str]]:
    """Return the pairs of characters that differ in one part, by a part like it."""
    why_parts: dict[frozenset[str], str] = {}
    for signs, _, holds_for_parts in by_hand("look_alikes_by_hand.tsv"):
        if holds_for_parts == "yes":
            why_parts |= {frozenset(pair): "".join(pair) for pair in combinations(signs, 2)}
    others: dict[tuple[object, ...], list[tuple[str, str]]] = defaultdict(list)
    for char, built in direct_parts().items():
        for index, (position, part) in enumerate(built if len(built) > 1 else []):
            rest = (*built[:index], position, *built[index + 1 :])
            others[rest].append((char, part))
    found: dict[tuple[str, str], str] = {}
    for alike in others.values():
        for (first, part), (second, other) in combinations(sorted(alike), 2):
            if shared := why_parts.get(frozenset((part, other))):
                found[first, second] = f"{shared[0]} and {shared[1]}, the rest the same"
    return [(first + second, why, "parts") for (first, second), why in sorted(found.items())]


def rearranged() -> list[tuple[str, str, str]]:
    """Return the characters built of the same parts in other places (杏 and 呆)."""
    groups: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for char, built in direct_parts().items():
        if len(built) > 1 and all(position != "part" for position, _ in built):
            groups[tuple(sorted(part for _, part in built))].append(char)
    why = "the same parts, placed otherwise"
    return [("".join(sorted(group)), why, "parts") for group in groups.values() if len(group) > 1]


def from_unihan() -> list[tuple[str, str, str]]:
    """Return the pairs that Unihan says may be taken for each other."""
    found = set()
    for first, _, value in unihan("Variants", "kSpoofingVariant"):
        for second in map(character, value.split()):
            if in_common_use(first) and in_common_use(second):
                found.add("".join(sorted((first, second))))
    return [(pair, "nearly the same shape", "Unihan") for pair in sorted(found)]


def one_character() -> set[frozenset[str]]:
    """Return the pairs that the tables of forms call one character in two forms."""
    pairs: set[frozenset[str]] = set()
    by_current: dict[str, set[str]] = defaultdict(set)
    for name in ("variants", "old_forms", "related_forms"):
        for first, second, *_ in table(name):
            pairs.add(frozenset((first, second)))
            if name != "related_forms":
                by_current[second] |= {first, second}
    for forms in by_current.values():
        pairs |= {frozenset(pair) for pair in combinations(sorted(forms), 2)}
    return pairs


def different(signs: str, same: set[frozenset[str]]) -> str:
    """Return the signs without those that are a form of one before them (谿 beside 渓)."""
    kept = ""
    for sign in signs:
        if not any(frozenset((sign, other)) in same for other in kept):
            kept += sign
    return kept


def built() -> dict[str, list[tuple[str, str, str]]]:
    """Return the rows of the table; what is alike for several reasons is named with the first."""
    kept = [(signs, why, "hand") for signs, why, _ in by_hand("look_alikes_by_hand.tsv")]
    first: dict[str, tuple[str, str, str]] = {}
    same = one_character()
    for signs, why, source in (*kept, *derived(), *rearranged(), *from_unihan()):
        apart = different(signs, same) if source != "hand" else signs
        if len(apart) > 1:
            first.setdefault(apart, (apart, why, source))
    return {"look_alikes": list(first.values())}
