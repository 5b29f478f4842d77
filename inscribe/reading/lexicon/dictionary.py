"""The dictionary of verse: compiled for MeCab from the installed UniDic and the glossary.

It is a dictionary folder of its own rather than additions to UniDic, because what verse never
has must be taken away (modern grammar, loan words), costs must change, and the grammar of
classical verse must govern which words may meet. It is built at first use (a few seconds) into
the cache, under a name that changes with every table, and put there in one step. Where it is there
already, only this module is loaded.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from inscribe import tables
from inscribe.reading import mecab
from inscribe.workers import FEW

FEATURES = "features.txt"  # what the dictionary says of its words
_ROOMS = ("spelling", "mecab", "lexicon")  # whose code makes the dictionary


def verse_dictionary() -> Path:
    """Return the folder of the compiled dictionary of verse, building it if need be.

    Raises:
        InputError: it cannot be compiled, or no folder can be written to.
    """
    return mecab.dictionary_folder("verse", _sources(), _write_parts)


def gathering() -> tuple[str, Callable[[Path], None]]:
    """Return what the dictionary is called in the cache, and what writes its words to a folder."""
    return mecab.keyed("verse", _sources()), _write_parts


def prepare_for(count: int) -> None:
    """Make the dictionary now if so many things are read by several processes, or each makes it.

    Raises:
        InputError: as for :func:`verse_dictionary`.
    """
    if count >= FEW:
        verse_dictionary()


def _sources() -> list[Path]:
    """Return every file that the dictionary follows from: code, tables, the installed UniDic."""
    reading = Path(__file__).parent.parent
    code = [path for room in _ROOMS for path in sorted((reading / room).glob("*.py"))]
    words = reading / "words"
    code += [words / "pieces.py", words / "features.py", reading / "verse" / "metre.py"]
    return [
        *code,
        *mecab.version_files(),
        *tables.files_about("verse"),
        *tables.files("historical_words"),
    ]


def _write_parts(folder: Path) -> None:
    """Write what MeCab needs but the compiled dictionary itself."""
    from inscribe.reading.lexicon.building import write_parts

    write_parts(folder, FEATURES)
