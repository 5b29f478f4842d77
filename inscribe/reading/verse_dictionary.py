"""The dictionary of verse: compiled for MeCab from the installed UniDic and the glossary.

It is a dictionary folder of its own rather than additions to UniDic, because what verse never
has must be taken away (modern grammar, loan words), costs must change, and the grammar of
classical verse must govern which words may meet. It is built at first use (a few seconds) into
the cache, under a name that changes with every table, and put there in one step.
"""

from __future__ import annotations

import struct
from collections.abc import Iterable, Iterator
from pathlib import Path

from inscribe import tables
from inscribe.reading import connections, dictionary, unidic
from inscribe.reading.entries import Entry
from inscribe.reading.verse_tables import TABLES, particle_entries
from inscribe.reading.verse_words import ClassIndex, unidic_entries, wanted_class

_DICRC = "cost-factor = 700\nbos-feature = BOS/EOS\n"
_CODE = ("connections", "entries", "paradigms", "unidic", "verse_words", "verse_tables")
_HEADER_SIZE = 72


def verse_dictionary() -> Path:
    """Return the folder of the compiled dictionary of verse, building it if need be.

    Raises:
        InputError: it cannot be compiled, or no folder can be written to.
    """
    return dictionary.dictionary_folder("verse", _sources(), _write_parts)


def _sources() -> list[Path]:
    here = Path(__file__)
    code = [here, *(here.with_name(f"{name}.py") for name in _CODE)]
    names = (*TABLES, "verse_connections")
    return [*code, *(path for name in names for path in tables.files(name))]


def _write_parts(folder: Path) -> None:
    """Write into ``folder`` all that MeCab needs but the dictionary itself, and its entries."""
    source = unidic.folder()
    classes = unidic.classes(source)
    entries = _cheapest(verse_entries(source, classes))
    unknown = (source / "unk.dic").read_bytes()
    used = sorted({0, *(entry.connection for entry in entries), *_classes_of(unknown)})
    numbers = {old: new for new, old in enumerate(used)}
    side, cells = unidic.connection_costs(source)
    with (folder / "matrix.bin").open("wb") as file:
        file.writelines(connections.small_matrix(classes, used, side, cells))
    (folder / "unk.dic").write_bytes(_renumbered(unknown, numbers))
    (folder / "char.bin").write_bytes((source / "char.bin").read_bytes())
    (folder / "dicrc").write_text(_DICRC, encoding="utf-8")
    with (folder / "entries.csv").open("w", encoding="utf-8", newline="\n") as file:
        file.writelines(_lines(entries, numbers))


def verse_entries(source: Path, classes: unidic.Classes) -> Iterator[Entry]:
    """Yield every entry of the dictionary of verse; the same entry may come more than once."""
    index = ClassIndex(classes)
    yield from unidic_entries(unidic.words(source, classes.numbers(wanted_class)), index)
    function_words = classes.numbers(lambda row: row[0] in ("助詞", "助動詞"))
    costs: dict[tuple[str, int], int] = {}
    for word in unidic.words(source, function_words):
        key = (word.surface, word.connection)
        costs[key] = min(word.cost, costs.get(key, word.cost))
    yield from particle_entries(index, costs)


def _cheapest(entries: Iterable[Entry]) -> list[Entry]:
    best: dict[tuple[str, int, str], Entry] = {}
    for entry in entries:
        key = (entry.written, entry.connection, entry.kana)
        there = best.get(key)
        if there is None or entry.cost < there.cost:
            best[key] = entry
    return list(best.values())


def _lines(entries: Iterable[Entry], numbers: dict[int, int]) -> Iterator[str]:
    for entry in entries:
        number, cost = numbers[entry.connection], max(-30000, min(30000, entry.cost))
        yield f"{entry.written},{number},{number},{cost},{number},{cost},{entry.feature()}\n"


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
        struct.pack_into("<HH", changed, offset, numbers[number], numbers[number])
    struct.pack_into("<II", changed, 16, len(numbers), len(numbers))
    return bytes(changed)
