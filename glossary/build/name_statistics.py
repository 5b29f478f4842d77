"""Build name_elements.tsv from the given names in UniDic and the readings of KANJIDIC2.

Needs unidic-lite (BSD licence) and the Debian package kanjidic-xml (KANJIDIC2, CC BY-SA 4.0).

Every given name of two characters is divided between them by the readings of each; what is
counted is how often a character is read so in that place. Names of three characters and more
tell how their characters are read before an ending (五郎, 兵衛, 斎).
"""

from __future__ import annotations

import math
import struct
from collections import Counter, defaultdict
from collections.abc import Iterator
from pathlib import Path

import unidic_lite
from sources import kanjidic, listed

from inscribe.forms import normalise_text

VOICED = str.maketrans(
    "かきくけこさしすせそたちつてとはひふへほ", "がぎぐげござじずぜぞだぢづでどばびぶべぼ"
)
VOWELS = {
    "a": "あかがさざただなはばぱまやゃらわ",
    "u": "うくぐすずつづぬふぶぷむゆゅる",
    "e": "えけげせぜてでねへべぺめれ",
    "o": "おこごそぞとどのほぼぽもよょろ",
}
LENGTHENING = {"a": "あ", "u": "う", "e": "え", "o": "うお"}
HALF_VOICED = str.maketrans("はひふへほ", "ぱぴぷぺぽ")
# Second characters of women's names, which would drown the readings of craftsmen's names.
FEMALE_SECOND = frozenset("子美江枝代恵奈香乃")
READINGS_KEPT = 6

Readings = dict[str, dict[str, bool]]  # character: {reading in hiragana: whether it is an on}


def hiragana(text: str) -> str:
    """Return katakana as hiragana."""
    return "".join(chr(ord(c) - 0x60) if "ァ" <= c <= "ヶ" else c for c in text)


def katakana(text: str) -> str:
    """Return hiragana as katakana."""
    return "".join(chr(ord(c) + 0x60) if "ぁ" <= c <= "ゖ" else c for c in text)


def unidic_entries(sort: str) -> Iterator[tuple[str, str, str, int]]:
    """Yield (kind, written, kana, cost) of the names of one sort in UniDic's compiled lexicon.

    ``sort`` is the part of speech after 名詞,固有名詞: "人名,名", "人名,姓", "地名". Only names in
    kanji are given, old forms (which normalisation never leaves) left out.
    """
    data = (Path(unidic_lite.DICDIR) / "sys.dic").read_bytes()
    sizes = struct.unpack("<10I", data[:40])
    start = 72 + sizes[6]
    tokens, features = data[start : start + sizes[7]], data[start + sizes[7] :]
    wanted = f"名詞,固有名詞,{sort},".encode()
    for _, _, _, cost, offset, _ in struct.iter_unpack("<HHHhII", tokens):
        if features.startswith(wanted, offset):
            cells = features[offset : features.index(b"\0", offset)].decode().split(",")
            if len(cells) > 17 and is_current_kanji(cells[8]):
                kana = divided(hiragana(cells[17]), hiragana(cells[9]))
                yield cells[3], repeats_expanded(cells[8]), kana, cost


def divided(kana: str, said: str) -> str:
    """Return a name with | before a vowel that looks long and is not: いの|うえ, but おおもり."""
    if len(kana) != len(said):
        return kana
    marked = ""
    for before, character, sound in zip(" " + kana, kana, said, strict=False):
        row = next((vowel for vowel, signs in VOWELS.items() if before in signs), "")
        meets = character == sound and character in LENGTHENING.get(row, "")
        marked += f"|{character}" if meets else character
    return marked


def repeats_expanded(written: str) -> str:
    """Return a name with 々 as what it repeats, as normalisation leaves it: 佐佐木."""
    for at, character in enumerate(written):
        if character == "々" and at:
            written = f"{written[:at]}{written[at - 1]}{written[at + 1 :]}"
    return written


def is_current_kanji(written: str) -> bool:
    """Return whether a name is written in kanji, each in its current form."""
    kanji = all("\u4e00" <= c <= "\u9fff" or c == "々" for c in written)
    return kanji and normalise_text(written.replace("々", "")).text == written.replace("々", "")


def kanjidic_readings() -> Readings:
    """Return the readings of every kanji."""
    readings: Readings = defaultdict(dict)
    for entry in kanjidic():
        character = entry.findtext("literal", "")
        for reading in entry.iter("reading"):
            text = hiragana(reading.text or "").strip("-")
            if reading.get("r_type") == "ja_on":
                readings[character].setdefault(text, True)
            elif reading.get("r_type") == "ja_kun":
                for kun in (text.split(".")[0], text.replace(".", "")):
                    if not kun.endswith("っ"):  # いっ is a sound of いち, not a reading
                        readings[character].setdefault(kun, False)
        for nanori in entry.iter("nanori"):
            if not (nanori.text or "っ").endswith("っ"):
                readings[character].setdefault(hiragana(nanori.text or "").strip("-"), False)
    return readings


def spoken_forms(reading: str, is_on: bool, *, first: bool) -> set[str]:
    """Return the ways a reading may sound at this place of a name (voiced, doubled)."""
    forms = {reading}
    if not first:
        forms.add(reading[0].translate(VOICED) + reading[1:])
        if is_on:
            forms.add(reading[0].translate(HALF_VOICED) + reading[1:])
    elif is_on and len(reading) > 1 and reading[-1] in "つちくき":
        forms.add(reading[:-1] + "っ")
    return forms


def divisions(
    written: str, kana: str, readings: Readings, *, first: bool = True
) -> Iterator[tuple[int, tuple[tuple[str, bool], ...]]]:
    """Yield every way of dividing ``kana``, with the number of readings changed in sound."""
    if not written:
        if not kana:
            yield 0, ()
        return
    for reading, is_on in readings.get(written[0], {}).items():
        for form in spoken_forms(reading, is_on, first=first) if reading else ():
            if kana.startswith(form):
                rest = divisions(written[1:], kana[len(form) :], readings, first=False)
                for changed, division in rest:
                    yield changed + (form != reading), ((reading, is_on), *division)


def likeliest_divisions(
    written: str, kana: str, readings: Readings
) -> list[tuple[tuple[str, bool], ...]]:
    """Return the divisions that change fewest readings in sound."""
    found = sorted(set(divisions(written, kana, readings)))
    fewest = min((changed for changed, _ in found), default=0)
    return [division for changed, division in found if changed == fewest]


def element_counts(
    names: set[tuple[str, str]], readings: Readings
) -> dict[str, tuple[Counter[tuple[str, bool]], ...]]:
    """Return for each character its readings as first, last, and before an ending."""
    counts: dict[str, tuple[Counter[tuple[str, bool]], ...]] = defaultdict(
        lambda: (Counter(), Counter(), Counter())
    )
    for written, kana in sorted(names):
        found = likeliest_divisions(written, kana, readings)
        if not found or (len(written) == 2 and written[1] in FEMALE_SECOND):
            continue
        for division in found:
            for place, (character, reading) in enumerate(zip(written, division, strict=True)):
                column = place if len(written) == 2 else 2
                if len(written) == 2 or place < len(written) - 1:
                    counts[character][column][reading] += 1 / len(found)
    return counts


def alone_cell(names: dict[str, int], readings: dict[str, bool]) -> str:
    """Return the readings of a character that is a whole name, weighed by UniDic's costs."""
    lowest = min(names.values(), default=0)
    shown = sorted(names.items(), key=lambda item: item[1])[:READINGS_KEPT]
    return listed(
        f"{katakana(k) if readings.get(k) else k}:{math.exp((lowest - cost) / 500):.2g}"
        for k, cost in shown
    )


def cell(counts: Counter[tuple[str, bool]], readings: dict[str, bool]) -> str:
    """Return one cell: readings by weight, on-readings in katakana."""
    total = sum(counts.values())
    kept = [
        (katakana(kana) if is_on else kana, count)
        for (kana, is_on), count in counts.most_common(READINGS_KEPT)
        if count >= 0.02 * total
    ]
    shown = {hiragana(kana) for kana, _ in kept}
    kept += [(katakana(k), 0.2) for k, on in readings.items() if on and k and k not in shown]
    return listed(f"{kana}:{count:.3g}" for kana, count in kept)


def built() -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the table."""
    readings = kanjidic_readings()
    given: set[tuple[str, str]] = set()
    alone: dict[str, dict[str, int]] = defaultdict(dict)
    for _, written, kana, cost in unidic_entries("人名,名"):
        kana = kana.replace("|", "")
        if len(written) > 1:
            given.add((written, kana))
        else:
            alone[written][kana] = min(cost, alone[written].get(kana, cost))
    counts = element_counts(given, readings)
    rows: list[tuple[str, ...]] = []
    for character in sorted({*counts, *alone}):
        cells = (cell(column, readings[character]) for column in counts[character])
        single = alone_cell(alone[character], readings[character])
        rows.append((character, *cells, single))
    return {"name_elements": rows}
