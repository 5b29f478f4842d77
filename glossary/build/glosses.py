"""Build glosses.tsv from EDICT: what the words of UniDic mean in English, in a few words.

Needs the Debian package edict (version 2021.02.03; EDRDG, CC BY-SA 3.0) and unidic-lite. Kept are
the writings of EDICT, in current forms, that are a lemma or a dictionary form of UniDic; of each
the first sense of every reading, its tags and examples left out, the common entries first.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from sources import EDICT, lines_of, listed

from inscribe.forms import normalise_text
from inscribe.reading.mecab.unidic import classes, folder, words
from inscribe.reading.spelling import hiragana

ENTRY = re.compile(r"(?P<text>\S+) (?:\[(?P<kana>[^\]]+)\] )?/(?P<senses>.*)/$")
CLASSES = re.compile(r"\((?P<codes>[a-z0-9-]+(?:,[a-z0-9-]+)*)\) ")
BRACKETS = re.compile(r"\s*[({][^(){}]*[)}]\s*")
SENSE = re.compile(r"\(([0-9]+)\) ")
JAPANESE = re.compile("[぀-ヿ一-鿿]")
KANA = re.compile("[ぁ-ゖー]+")
COMMON = "(P)"
OLD = ("(obs)", "(arch)", "(obsc)")
LONGEST = 36  # letters of a gloss
MOST = 3  # readings of one writing
# The parts of speech of EDICT by what they begin with; the longest that fits counts.
SORTS = {
    "n": "noun",
    "v": "verb",
    "adj": "adjective",
    "adj-na": "noun",
    "adj-no": "noun",
    "adj-t": "noun",
    "adj-pn": "attributive",
    "adv": "adverb",
    "pn": "pronoun",
    "conj": "conjunction",
    "int": "interjection",
    "pref": "prefix",
    "n-pref": "prefix",
    "suf": "suffix",
    "n-suf": "suffix",
    "ctr": "suffix",
    "num": "noun",
    "exp": "phrase",
}


def sort_of(codes: str) -> str:
    """Return the sort of word that the first code known of a list says."""
    for code in codes.split(","):
        fitting = [start for start in SORTS if code.startswith(start)]
        if fitting:
            return SORTS[max(fitting, key=len)]
    return ""


def gloss_of(senses: str) -> str:
    """Return the first sense in a few words.

    >>> gloss_of("(n) (1) flower/blossom/bloom/petal/(2) (n) cherry blossom/(P)/EntL1194500X")
    'flower, blossom, bloom, petal'
    >>> gloss_of("(v5k-s,vi) (1) to go/to move (towards a specific location)/(P)/")
    'go, move'
    """
    found: list[str] = []
    for gloss in senses.split("/"):
        number = SENSE.search(gloss)
        if gloss in (COMMON, "") or gloss.startswith("EntL") or (number and number[1] != "1"):
            break
        plain = BRACKETS.sub(" ", gloss).strip().replace(";", ",")
        if plain and not JAPANESE.search(plain) and plain not in found:
            if found and len(", ".join([*found, plain])) > LONGEST:
                break
            found.append(plain)
    text = ", ".join(found).removeprefix("to ").replace(", to ", ", ")
    return text if len(text) <= LONGEST else text[:LONGEST].rpartition(" ")[0] + " …"


def wanted() -> frozenset[str]:
    """Return the lemmas and the dictionary forms of the words of UniDic but its names."""
    dictionary = folder()
    kept = classes(dictionary).numbers(lambda row: row[1] != "固有名詞")
    found = set()
    for word in words(dictionary, kept, re.compile("[^\\u3005-\\u3007\\u3041-\\u30ff一-鿿]")):
        found |= {word.fields[7].partition("-")[0], word.fields[10]}
    return frozenset(normalise_text(each).text for each in found if each)


def entries() -> Iterator[tuple[str, str, str, str, int]]:
    """Yield writing, kana, sort, gloss and rank (lower is commoner) of the entries of EDICT."""
    for line in lines_of(EDICT):
        entry = ENTRY.match(line)
        if not entry:
            continue
        codes = (sort_of(found["codes"]) for found in CLASSES.finditer(entry["senses"]))
        sort, gloss = next(filter(None, codes), ""), gloss_of(entry["senses"])
        kana = hiragana(entry["kana"] or entry["text"])
        if sort and gloss and KANA.fullmatch(kana):
            rank = (COMMON not in line) + any(mark in line for mark in OLD)
            yield normalise_text(entry["text"]).text, kana, sort, gloss, rank


def rows() -> Iterator[tuple[str, ...]]:
    """Yield the rows in the order of their first cells, as the program searches them by halving."""
    keys = wanted()
    found: dict[str, dict[tuple[str, str], tuple[int, str]]] = defaultdict(dict)
    for written, kana, sort, gloss, rank in entries():
        if written in keys:
            before = found[written].get((kana, sort))
            if before is None or rank < before[0]:
                found[written][kana, sort] = rank, gloss
    for written in sorted(found):
        ranked = sorted(found[written].items(), key=lambda item: item[1][0])[:MOST]
        cells = zip(*((kana, sort, gloss) for (kana, sort), (_, gloss) in ranked), strict=True)
        yield (written, *(listed(cell) for cell in cells))


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    return {"glosses": list(rows())}
