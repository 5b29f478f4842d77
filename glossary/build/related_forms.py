"""Build glossary/forms/related_forms.tsv and simplified.tsv from Unihan, KANJIDIC2 and a hand list.

Needs the Debian packages unicode-data and kanjidic-xml.
"""

from __future__ import annotations

import unicodedata
from collections import defaultdict

from sources import by_hand, character, kanjidic, listed, table, unihan

BY_HAND = (
    *("麁麤", "裡裏", "附付", "畫畵", "嘆歎", "襃裒", "著着", "刋刊", "壜罎", "俱倶", "噓嘘"),
    *("姸妍", "鐔鍔", "鎗槍", "鑓槍", "鐫鎸", "笄筓", "槌鎚", "濾沪", "鞠毬", "巓巔"),
)

Pair = tuple[str, str]


def current_forms() -> dict[str, str]:
    """Return the current form of every form that normalisation changes."""
    return {row[0]: row[1] for name in ("variants", "old_forms") for row in table(name)}


def merged_words() -> dict[str, set[str]]:
    """Return the words of the characters that the reforms merged."""
    words: dict[str, set[str]] = defaultdict(set)
    for form, current, word, _ in table("merged"):
        words[form].add(word)
        words[current].add(word)
    return words


def pair_of(first: str, second: str) -> Pair:
    """Return two characters as one pair, whichever comes first."""
    return (first, second) if first < second else (second, first)


def kanjidic_pairs() -> dict[Pair, str]:
    """Return the pairs that KANJIDIC2 calls variants."""
    by_code: dict[Pair, str] = {}
    for entry in kanjidic():
        for code in entry.iter("cp_value"):
            by_code[code.get("cp_type") or "", code.text or ""] = entry.findtext("literal", "")
    found: dict[Pair, str] = {}
    for entry in kanjidic():
        for variant in entry.iter("variant"):
            kind, text = variant.get("var_type") or "", variant.text or ""
            other = chr(int(text, 16)) if kind == "ucs" else by_code.get((kind, text))
            if other:
                found[pair_of(entry.findtext("literal", ""), other)] = "KANJIDIC2"
    return found


def unihan_pairs() -> dict[Pair, str]:
    """Return the pairs that Unihan calls variants of one meaning or one shape."""
    found: dict[Pair, str] = {}
    for first, _, value in unihan("Variants", "kSemanticVariant", "kZVariant"):
        for code in value.split():
            found[pair_of(first, character(code))] = "Unihan"
    return found


def jinmeiyo_pairs() -> dict[Pair, str]:
    """Return the pairs of old and current form among the kanji for names."""
    return {
        pair_of(form, character(value.partition(":")[2])): "Jinmeiyo 2010"
        for form, _, value in unihan("OtherMappings", "kJinmeiyoKanji")
        if ":" in value
    }


def numerals() -> set[str]:
    """Return the characters that write a number: their relation is that of numbers."""
    return {row[0] for row in table("numbers")}


def related_rows() -> list[tuple[str, ...]]:
    """Return the rows of related_forms.tsv."""
    chinese = {row[0] for row in simplified_rows()}
    pairs = unihan_pairs() | kanjidic_pairs() | jinmeiyo_pairs()
    pairs |= {pair_of(*pair): "common practice" for pair in BY_HAND}
    current, words, numbers = current_forms(), merged_words(), numerals()
    refused = {pair_of(*pair) for pair, *_ in by_hand("not_variants.tsv")}
    rows: list[tuple[str, ...]] = []
    for (form, other), source in sorted(pairs.items()):
        ends = {current.get(form, form), current.get(other, other)}
        if (form, other) in refused or tuple(sorted(ends)) in refused:
            continue
        if form == other or len(ends) == 1 or {form, other} <= numbers:
            continue
        if (form in words and other in words) or not chinese.isdisjoint((form, other)):
            continue
        if unicodedata.normalize("NFC", form) == unicodedata.normalize("NFC", other):
            continue
        kind = "old form" if source == "Jinmeiyo 2010" else "variant"
        rows.append((form, other, kind, source))
    return rows


def in_japanese_use(char: str) -> bool:
    """Whether a JIS character set holds the character."""
    for encoding in ("euc_jisx0213", "euc_jp"):
        try:
            char.encode(encoding)
        except UnicodeEncodeError:
            continue
        return True
    return False


def in_common_use(char: str) -> bool:
    """Whether JIS X 0208 holds the character."""
    try:
        return len(char.encode("euc_jp")) == 2
    except UnicodeEncodeError:
        return False


def simplified_rows() -> list[tuple[str, ...]]:
    """Return the rows of simplified.tsv."""
    current = current_forms()
    rows: list[tuple[str, ...]] = []
    for sign, _, value in unihan("Variants", "kTraditionalVariant"):
        if in_japanese_use(sign) or sign in current:
            continue
        meant = [current.get(c, c) for c in map(character, value.split()) if c != sign]
        if meant := [char for char in dict.fromkeys(meant) if in_common_use(char)]:
            rows.append((sign, listed(meant)))
    return rows


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of both tables."""
    return {"related_forms": related_rows(), "simplified": sorted(simplified_rows())}
