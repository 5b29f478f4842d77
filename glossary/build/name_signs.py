"""Build name_signs.tsv: how each sign is read at the head and at the end of men's names.

Needs the Debian packages enamdict, edict and kanjidic-xml. Counted are the readings of the signs in
the men's names of two signs of ENAMDICT, and in the names of its persons (whose number tells
how usual a name is); no name is kept. Beside them stand the readings that KANJIDIC2 gives for a
sign, each for less than one name: its on-readings as often as the words of EDICT have them (霰 is
さん in more of them than せん), its nouns of native reading, and its name readings.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator

from name_statistics import (
    FEMALE_SECOND,
    Readings,
    hiragana,
    kanjidic_readings,
    katakana,
    likeliest_divisions,
)
from sources import EDICT, enamdict, kanjidic, lines_of, listed

from inscribe.forms import normalise_text

KANJI = re.compile("[一-鿿]+")
SMALL = re.compile("[ゃゅょ]")
WORD = re.compile(r"([一-鿿]{2}) \[([ぁ-ゖー]+)\]")
ON = 1.0  # what KANJIDIC2's on-readings of a sign weigh together, in names
NOUN = 1.0  # its native reading that is a noun (霜 しも); each further one half of it
NANORI = 0.5
STEM = 0.4  # the stem of a verb or an adjective (繁 しげ)
LEAST_ON = 0.1
KEPT = 6

Key = tuple[str, bool]  # a reading in hiragana, and whether it is an on
Counts = dict[str, tuple[Counter[Key], Counter[Key]]]


def names() -> Counter[tuple[str, str]]:
    """Return the men's names of two signs with their kana, and how many there are of each."""
    entries = [(w, hiragana(k), codes) for w, k, codes in enamdict() if KANJI.fullmatch(w)]
    families: dict[str, set[str]] = defaultdict(set)
    for written, kana, codes in entries:
        if "s" in codes:
            families[written].add(kana)
    found: Counter[tuple[str, str]] = Counter()
    for written, kana, codes in entries:
        if "m" in codes and len(written) == 2:
            found[written, kana] += 1
        if "h" in codes and len(written) > 2:
            for family in families.get(written[:-2], ()):
                if kana.startswith(family):
                    found[written[-2:], kana.removeprefix(family)] += 1
    return found


def counted(readings: Readings) -> Counts:
    """Return how often each sign is read how, at the head and at the end of names."""
    counts: Counts = defaultdict(lambda: (Counter(), Counter()))
    for (written, kana), number in sorted(names().items()):
        current = normalise_text(written).text
        if len(current) != 2 or current[1] in FEMALE_SECOND or not kana:
            continue
        found = likeliest_divisions(current, kana, readings)
        for division in found:
            for place, (sign, reading) in enumerate(zip(current, division, strict=True)):
                counts[sign][place][reading] += number / len(found)
    return counts


def sounds_in_words(readings: Readings) -> dict[str, Counter[str]]:
    """Return how often each on-reading of a sign stands in the words of two signs of EDICT."""
    found: dict[str, Counter[str]] = defaultdict(Counter)
    for line in lines_of(EDICT):
        entry = WORD.match(line)
        if entry is None:
            continue
        for division in likeliest_divisions(entry[1], hiragana(entry[2]), readings):
            for sign, (kana, is_on) in zip(entry[1], division, strict=True):
                if is_on:
                    found[sign][kana] += 1
    return found


def of_dictionary(words: dict[str, Counter[str]]) -> Iterator[tuple[str, dict[Key, float]]]:
    """Yield each sign of KANJIDIC2 with the weights of the readings that it gives."""
    for entry in kanjidic():
        sign = entry.findtext("literal", "")
        if not KANJI.fullmatch(sign) or normalise_text(sign).text != sign:
            continue
        weights: dict[Key, float] = {}
        given = [
            (r.get("r_type"), hiragana(r.text or "").strip("-")) for r in entry.iter("reading")
        ]
        on = [kana for kind, kana in given if kind == "ja_on"]
        in_words = {kana: words[sign][kana] + 1 / (2 + rank) for rank, kana in enumerate(on)}
        total = sum(in_words.values())
        for kana in on:
            weights[kana, True] = max(LEAST_ON, ON * in_words[kana] / total)
        nouns = [kana for kind, kana in given if kind == "ja_kun" and "." not in kana]
        for rank, kana in enumerate(nouns):
            weights.setdefault((kana, False), NOUN / 2**rank)
        for nanori in entry.iter("nanori"):
            kana = hiragana(nanori.text or "").partition(".")[0].strip("-")
            weights.setdefault((kana, False), NANORI)
        for kana in (kana for kind, kana in given if kind == "ja_kun" and "." in kana):
            weights.setdefault((kana.partition(".")[0], False), STEM)
        yield sign, {key: weight for key, weight in weights.items() if _is_of_names(*key)}


def _is_of_names(kana: str, is_on: bool) -> bool:
    """Whether a reading of KANJIDIC2 may be one of names: にゅう is no native reading of 敷."""
    return not kana.endswith("っ") and (is_on or not SMALL.search(kana))


def cell(counts: Counter[Key], given: dict[Key, float]) -> str:
    """Return readings by weight, on-readings in katakana."""
    weights = dict(given)
    for key, count in counts.items():
        weights[key] = weights.get(key, 0.0) + count
    least = 0.02 * sum(weights.values())
    kept = sorted(weights.items(), key=lambda item: (-item[1], item[0]))[:KEPT]
    return listed(
        f"{katakana(kana) if is_on else kana}:{round(weight, 1 if weight > 1 else 2):.7g}"
        for (kana, is_on), weight in kept
        if weight >= least and kana
    )


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    readings = kanjidic_readings()
    counts = counted(readings)
    rows = []
    for sign, given in sorted(of_dictionary(sounds_in_words(readings))):
        first, last = (cell(column, given) for column in counts[sign])
        if first or last:
            rows.append((sign, first, "" if last == first else last))
    return {"name_signs": rows}
