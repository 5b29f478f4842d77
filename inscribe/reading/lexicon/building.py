"""Making the dictionary of verse from the installed UniDic and the glossary.

Every entry is gathered with its cost and its connection class, the classes in use are numbered
anew, and the small matrix of their connection costs is written with the grammar of classical
verse laid over it. ``inscribe.reading.lexicon.dictionary`` says when this is done.
"""

from __future__ import annotations

import struct
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import IO

from inscribe.reading import mecab
from inscribe.reading.lexicon import connections
from inscribe.reading.lexicon.compounds import compound_entries, later_entries
from inscribe.reading.lexicon.counted import counted_entries
from inscribe.reading.lexicon.nouns import (
    bare_verbs,
    curated_readings,
    noun_entries,
    noun_rows,
    ranked_stems,
    settled_costs,
    short_form_entries,
)
from inscribe.reading.lexicon.particles import particle_entries
from inscribe.reading.lexicon.stems import ONLY_KANA, ClassIndex
from inscribe.reading.lexicon.verbs import (
    fourfold_stems,
    rarer_classes,
    stem_conjugations,
    stem_readings,
    verb_entries,
    verb_rows,
)
from inscribe.reading.lexicon.vocabulary import unidic_entries, wanted_class
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.words import LATER, OKURIGANA_LEFT_OUT, VOICING_NOT_MARKED, beat_of_entry

_DICRC = "cost-factor = 700\nbos-feature = BOS/EOS\n"
_HEADER_SIZE = 72
UNVOICE = str.maketrans(
    "がぎぐげござじずぜぞだぢづでどばびぶべぼ", "かきくけこさしすせそたちつてとはひふへほ"
)
_UNVOICED = "unvoiced.more"  # compiled, and laid over the rest where a text marks no voicing
_UNVOICED_MORE = 200
_OUTSIDE_MORE = 700  # a verb in kana that no table has: もじる, when ともしらぬ is read
_LEFT_OUT_LESS = 1400  # hands that mark no voicing leave okurigana out too
_MADE_UP_MORE = 14000  # else a long run of kana is cheaper as one word nobody knows
_DEAREST = 32000
_NOT_IN_TABLES = 3000  # a reading the tables do not give for a form they have


def write_parts(folder: Path, features_file: str) -> None:
    """Write into ``folder`` all that MeCab needs but the dictionary itself, and its entries."""
    source = mecab.folder()
    classes = mecab.classes(source)
    entries = _cheapest(verse_entries(source, classes))
    unknown = (source / "unk.dic").read_bytes()
    used = sorted({0, *_classes_of(unknown), *_connections(entries)})
    numbers = {old: new for new, old in enumerate(used)}
    _write_matrix(folder / "matrix.bin", source, classes, used)
    (folder / "unk.dic").write_bytes(_renumbered(unknown, numbers))
    (folder / "char.bin").write_bytes((source / "char.bin").read_bytes())
    (folder / "dicrc").write_text(_DICRC, encoding="utf-8")
    with (folder / features_file).open("wb") as file:
        features = _Features(file)
        _write(folder / "entries.csv", entries, numbers, features)
        _write(folder / _UNVOICED, _unvoiced(entries), numbers, features)


def _write_matrix(path: Path, source: Path, classes: mecab.Classes, used: list[int]) -> None:
    side, cells = mecab.connection_costs(source)  # 70 MB
    with path.open("wb") as file:
        file.writelines(connections.small_matrix(classes, used, side, cells))


class _Features:
    """The file of what the dictionary says of its words, each feature once.

    MeCab keeps in memory what it hands back, again for every reader of the dictionary; so it is
    only given the place in this file.
    """

    def __init__(self, file: IO[bytes]) -> None:
        self._file = file
        self._places: dict[str, int] = {}
        self._end = 0

    def place_of(self, feature: str) -> int:
        """Return the offset in bytes at which a feature stands, written there if it is new."""
        place = self._places.get(feature)
        if place is None:
            place = self._places[feature] = self._end
            self._end += self._file.write(f"{feature}\n".encode())
        return place


def verse_entries(source: Path, classes: mecab.Classes) -> Iterator[DictionaryEntry]:
    """Yield every entry of the dictionary of verse; the same entry may come more than once."""
    verbs = verb_rows()
    index = ClassIndex(classes, stem_readings(verbs), ranked_stems())
    index.rarer = rarer_classes(verbs)
    index.fourfold = fourfold_stems(verbs)
    index.conjugations = stem_conjugations(verbs)
    readings = curated_readings()
    bare = bare_verbs(stem_readings(verbs))
    index.nouns = {written for written, *_ in noun_rows()} - {written for written, _ in bare}
    held: list[DictionaryEntry] = []
    native = set(readings)
    for entry in unidic_entries(mecab.words(source, classes.numbers(wanted_class)), index):
        if entry.origin == "和":
            native.add(entry.written)
        if entry.written not in readings or entry.conjugation != "*":
            yield entry
        else:
            held.append(entry)
    costs: dict[tuple[str, str], int] = {}
    for entry in held:
        if entry.origin != "漢":
            key = (entry.written, entry.kana)
            costs[key] = min(entry.cost, costs.get(key, entry.cost))
    settled = settled_costs(costs, readings, bare)
    for entry in held:
        cost = settled.get((entry.written, entry.kana), entry.cost + _NOT_IN_TABLES)
        yield entry._replace(cost=cost)
    yield from compound_entries(source, index, native, settled)
    yield from counted_entries(index, native)
    yield from later_entries(index)
    yield from noun_entries(index, settled, readings)
    yield from short_form_entries(index)
    yield from verb_entries(verbs, index)
    function_words = classes.numbers(lambda row: row[0] in ("助詞", "助動詞"))
    particle_costs: dict[tuple[str, int], int] = {}
    for word in mecab.words(source, function_words):
        spelling = (word.surface, word.connection)
        particle_costs[spelling] = min(word.cost, particle_costs.get(spelling, word.cost))
    yield from particle_entries(index, particle_costs)


def _unvoiced(entries: list[DictionaryEntry]) -> Iterator[DictionaryEntry]:
    """Yield the entries as they are written where voicing is left unmarked."""
    asked = {
        (written, entry.connection, entry.kana)
        for entry in entries
        if (written := entry.written.translate(UNVOICE)) != entry.written
    }
    there = asked.intersection((each.written, each.connection, each.kana) for each in entries)
    del asked
    for entry in entries:
        if entry.note == OKURIGANA_LEFT_OUT:  # the same hands leave them out
            yield entry._replace(cost=entry.cost - _LEFT_OUT_LESS)
        written = entry.written.translate(UNVOICE)
        if written == entry.written:
            continue
        key = (written, entry.connection, entry.kana)
        if key not in there:
            there.add(key)
            outside = entry.part_of_speech.startswith("動詞") and not entry.gloss
            more = _UNVOICED_MORE + _OUTSIDE_MORE * (outside and bool(ONLY_KANA.match(written)))
            yield entry._replace(written=written, cost=entry.cost + more, note=VOICING_NOT_MARKED)


def _connections(entries: Iterable[DictionaryEntry]) -> Iterator[int]:
    for entry in entries:
        yield entry.connection
        if entry.right_connection >= 0:
            yield entry.right_connection


def _cheapest(entries: Iterable[DictionaryEntry]) -> list[DictionaryEntry]:
    best: dict[tuple[str, int, int, str], DictionaryEntry] = {}
    for entry in entries:
        right = entry.connection if entry.right_connection < 0 else entry.right_connection
        kana = entry.kana.replace("|", "").replace(" ", "")
        key = (entry.written, entry.connection, right, kana)
        there = best.get(key)
        best[key] = entry if there is None else _merged(there, entry)
    return list(best.values())


def _merged(one: DictionaryEntry, other: DictionaryEntry) -> DictionaryEntry:
    """Return one entry for two of a word: the lower cost, and what only one of them tells."""
    if (one.origin == LATER) != (other.origin == LATER):
        return other if one.origin == LATER else one  # court verse has it too
    cheaper, dearer = (one, other) if one.cost <= other.cost else (other, one)
    if dearer.parts and not cheaper.parts:
        cheaper = cheaper._replace(kana=dearer.kana, parts=dearer.parts)
    elif "|" in dearer.kana and not cheaper.parts:
        cheaper = cheaper._replace(kana=dearer.kana)
    if dearer.gloss and not cheaper.gloss:  # the tables' word rather than UniDic's
        cheaper = cheaper._replace(gloss=dearer.gloss, part_of_speech=dearer.part_of_speech)
    return cheaper


def _write(
    path: Path, entries: Iterable[DictionaryEntry], numbers: dict[int, int], features: _Features
) -> None:
    with path.open("w", encoding="utf-8", newline="\n") as file:
        for entry in entries:
            left, cost = numbers[entry.connection], max(-30000, min(30000, entry.cost))
            right = left if entry.right_connection < 0 else numbers[entry.right_connection]
            place = features.place_of(entry.feature())
            beat = beat_of_entry(
                entry.kana, entry.part_of_speech, entry.lemma, entry.origin, entry.parts
            )
            file.write(f"{entry.written},{left},{right},{cost},{place},{beat}\n")


def _tokens(unknown: bytes) -> Iterator[tuple[int, int]]:
    """Yield where each token of MeCab's dictionary of unknown words lies, and its class."""
    double_array, tokens = struct.unpack_from("<II", unknown, 24)
    first = _HEADER_SIZE + double_array
    for offset in range(first, first + tokens, 16):
        yield offset, struct.unpack_from("<H", unknown, offset)[0]


def _classes_of(unknown: bytes) -> set[int]:
    return {number for _, number in _tokens(unknown)}


def _renumbered(unknown: bytes, numbers: dict[int, int]) -> bytes:
    changed = bytearray(unknown)
    for offset, number in _tokens(unknown):
        cost = struct.unpack_from("<h", unknown, offset + 6)[0] + _MADE_UP_MORE
        struct.pack_into("<HH", changed, offset, numbers[number], numbers[number])
        struct.pack_into("<h", changed, offset + 6, min(cost, _DEAREST))
    struct.pack_into("<II", changed, 16, len(numbers), len(numbers))
    return bytes(changed)
