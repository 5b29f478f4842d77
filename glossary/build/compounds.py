"""Build compounds.tsv from EDICT, and hold the readings of sayings.tsv against EDICT.

EDICT marks set phrases of (mostly) four signs with "(yoji)" and proverbs with "(proverb)". It
lists several readings of a phrase by the alphabet, so the one that is made of the commonest
readings of its signs goes first. Needs the Debian package edict. It prints the sayings that EDICT
reads otherwise; each is then put right by hand, or is another customary reading.
"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import cache

from sources import EDICT, lines_of, listed, table

from inscribe.forms import normalise_text, readings
from inscribe.reading.chinese.compounds import as_in_compounds, with_bars
from inscribe.reading.spelling import hiragana

_ENTRY = re.compile(r"(?P<text>[\u3005\u4e00-\u9fff]{3,8}) \[(?P<kana>[^\]]+)\] /(?P<gloss>.*)/")
_TAG = re.compile(r"\((?:[a-z0-9-]+(?:,[a-z0-9-]+)*|Buddh|P|[0-9]+)\) ?")
_MARKS = re.compile(r"\((?:yoji|proverb)\)")
_LONGEST_GLOSS = 60


def entries() -> dict[str, dict[str, str]]:
    """Return every phrase in kanji alone, in current forms: its readings with their glosses."""
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for line in lines_of(EDICT):
        entry = _ENTRY.match(line)
        if entry and "(ok)" not in line:
            text = normalise_text(entry["text"]).text
            found[text].setdefault(hiragana(entry["kana"]), entry["gloss"])
    return found


@cache
def sounds(sign: str) -> tuple[str, ...]:
    """Return the readings of a sign as they may stand in a compound, the commonest first."""
    found = readings(sign)
    plain = [hiragana(on) for on in found.on]
    plain += [kun.replace("-", "").partition(".")[0] for kun in found.kun]
    plain += [kun.replace("-", "").replace(".", "") for kun in found.kun]
    return as_in_compounds(plain)


def cuts(text: str, kana: str) -> tuple[int, tuple[int, ...]] | None:
    """Return how uncommon the readings are that make up ``kana``, and where each sign's ends."""
    best: dict[tuple[int, int], tuple[int, tuple[int, ...]]] = {(0, 0): (0, ())}
    for index, sign in enumerate(text):
        for (done, place), (cost, ends) in list(best.items()):
            if done != index:
                continue
            for rank, sound in enumerate(sounds(sign)):
                if kana.startswith(sound, place):
                    here = (cost + rank, (*ends, place + len(sound)))
                    key = (index + 1, place + len(sound))
                    best[key] = min(best.get(key, here), here)
    return best.get((len(text), len(kana)))


def divided(text: str, kana: str, words: frozenset[str]) -> str:
    """Return ``kana`` divided into words: two signs and two, unless three make the only word."""
    found = cuts(text, kana)
    if len(text) != 4 or found is None:
        return with_bars(pieces(kana, found[1])) if found else kana
    halves = {text[:2] in words, text[2:] in words}
    at = 2
    if False in halves:
        at = 3 if text[:3] in words else 1 if text[1:] in words else 2
    sounds = pieces(kana, found[1])
    return f"{with_bars(sounds[:at])} {with_bars(sounds[at:])}"


def pieces(kana: str, ends: tuple[int, ...]) -> list[str]:
    """Return the reading of each sign."""
    return [kana[start:end] for start, end in zip((0, *ends), ends, strict=False)]


def known_words() -> frozenset[str]:
    """Return the words of EDICT written with two or three signs."""
    found = set()
    for line in lines_of(EDICT):
        written = line.partition(" ")[0]
        if len(written) in (2, 3):
            found.add(normalise_text(written).text)
    return frozenset(found)


def gloss_of(text: str) -> str:
    """Return the first sense of an entry without its tags."""
    plain = _TAG.sub("", text).split("/")[0].strip()
    if len(plain) <= _LONGEST_GLOSS:
        return plain
    return plain[:_LONGEST_GLOSS].rpartition(" ")[0] + " …"


def rows() -> list[tuple[str, ...]]:
    """Return the rows of the table, in the order of their signs."""
    words = known_words()
    found = []
    for text, senses in sorted(entries().items()):
        marked = {kana: sense for kana, sense in senses.items() if _MARKS.search(sense)}
        if not marked or len(text) < 4:
            continue
        costs = {kana: cuts(text, kana) or (99, ()) for kana in marked}
        ranked = sorted(marked, key=lambda kana: (costs[kana][0], kana))
        reading, *others = [divided(text, kana, words) for kana in ranked]
        found.append((text, reading, listed(others), gloss_of(marked[ranked[0]])))
    return found


def compare() -> None:
    """Print the sayings whose reading EDICT does not have."""
    known = entries()
    sayings = [row for row in table("sayings") if row[0] in known]
    print(f"sayings.tsv: {len(sayings)} rows are in EDICT too; of these it reads otherwise:")
    for text, reading, *_ in sayings:
        kana = hiragana(reading.replace(" ", "").replace("|", ""))
        if kana not in known[text]:
            print(f"  {text} {kana}; EDICT: {', '.join(known[text])}")


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table, and print how the sayings compare."""
    compare()
    return {"compounds": rows()}
