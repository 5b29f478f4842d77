"""What a word is found by in a text of the library: its signs, and its words by sound and stem.

It is worked out when the text is added and kept beside it, with a seal of the text, of the program
with its tables, and of what is kept itself; what no longer answers to its seal is worked out anew
when it is next asked for, and kept again where the library can be written.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import sqlite3
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice
from typing import NamedTuple

from inscribe import forms, notation, reading, workers
from inscribe.errors import InscribeError
from inscribe.keeping import made_by
from inscribe.notation import segments
from inscribe.reading.words import Token, shown
from inscribe.signs import Sign, transcription
from inscribe.sources.library import Library
from inscribe.sources.passages import QUOTES, stretches_of, tokens_of, without_quotes
from inscribe.sources.texts import SourceText
from inscribe.sources.word_keys import said_of_word, sound_key, stem_key

BATCH = 5_000  # texts kept in one transaction
CHUNK = 200  # texts handed to a worker at a time
_SCHEMA = """
CREATE TABLE IF NOT EXISTS words(
    text INTEGER PRIMARY KEY, seal BLOB NOT NULL, row TEXT NOT NULL
);
CREATE TRIGGER IF NOT EXISTS no_words_without_text AFTER DELETE ON texts
    BEGIN DELETE FROM words WHERE text = OLD.number; END;
"""
_KEEP = """
INSERT OR REPLACE INTO words SELECT number, :seal, :row FROM texts
    WHERE id = :id AND digest = :digest
    AND NOT EXISTS (SELECT 1 FROM words WHERE text = number AND seal = :seal AND row = :row)
"""

Progress = Callable[[int, int], None]


class FoundBy(NamedTuple):
    """What a word is found by in a text.

    ``signs`` are the signs of the text, ``normal`` the text in current forms, ``origin[i]`` the
    sign ``normal[i]`` came from, ``words`` the words: first sign, last sign, sound key, and the
    stem of a verb or adjective (else empty).
    """

    signs: tuple[str, ...]
    normal: str
    origin: tuple[int, ...]
    words: tuple[tuple[int, int, str, str], ...]

    def to_row(self) -> str:
        """Return it as it is kept: signs that are the characters of the text are not repeated."""
        plain = self.signs == tuple(self.normal)
        more = () if plain else (self.signs, self.origin)
        return json.dumps(
            [self.normal, self.words, *more], ensure_ascii=False, separators=(",", ":")
        )


def found_by_of_row(row: str) -> FoundBy:
    """Return what :meth:`FoundBy.to_row` wrote."""
    normal, words, *more = json.loads(row)
    signs, origin = more or (normal, range(len(normal)))
    return FoundBy(tuple(signs), normal, tuple(origin), tuple(map(tuple, words)))


def found_by(text: SourceText) -> FoundBy:
    """Return what a word is found by in a text.

    >>> found_by(SourceText("sleeve", ("袖ひちて",))).words
    ((0, 0, 'そて', ''), (1, 2, 'いち', '漬'), (3, 3, 'て', ''))
    """
    columns: list[Sequence[Sign]] = []
    words: list[tuple[int, int, str, str]] = []
    start = 0
    for lines in stretches_of(text):
        signs = _signs(lines)
        for first, last, token in _words(lines, signs):
            stem = stem_key(token.lemma, token.part_of_speech)
            words.append((start + first, start + last, sound_key(said_of_word(token)), stem))
        columns.append(signs)
        start += len(signs)
    parsed = transcription([columns])
    normal = forms.normalise(parsed)
    return FoundBy(
        tuple(map(shown, parsed.signs)), normal.text, normal.origin, tuple(sorted(words))
    )


def _signs(lines: Sequence[str]) -> Sequence[Sign]:
    try:
        return notation.parse("／".join(lines)).signs
    except InscribeError:  # printed lines that are no transcription
        return [Sign(sign) for sign in segments("".join(lines))]


def _words(lines: Sequence[str], signs: Sequence[Sign]) -> Iterator[tuple[int, int, Token]]:
    """Yield the words with their places among the signs; those of print are read as they stand."""
    read = [at for at, sign in enumerate(signs) if shown(sign) not in QUOTES]
    with contextlib.suppress(InscribeError, IndexError):
        tokens = tokens_of(without_quotes(lines))
        placed = [(read[each.first], read[each.last], each) for each in tokens]
        if all(_stands(each, signs[first : last + 1]) for first, last, each in placed):
            yield from placed
            return
    plain = transcription([[signs]])
    proposals = reading.read(plain, "prose", alternatives=False, doubts=False).proposals
    for each in proposals[0].tokens if proposals else ():
        yield each.first, each.last, each


def _stands(word: Token, signs: Sequence[Sign]) -> bool:
    return word.surface == "".join(each for each in map(shown, signs) if each not in QUOTES)


class KeptWords(NamedTuple):
    """What is kept of a text, as :meth:`FoundBy.to_row` made it, with its id and title."""

    id: str
    title: str
    row: str


def with_row(text: SourceText) -> tuple[SourceText, str]:
    """Return a text with what is kept of it."""
    return text, found_by(text).to_row()


def keep(library: Library, rows: Iterable[tuple[SourceText, str]]) -> bool:
    """Keep what was worked out of texts of the library; whether all of it could be written.

    What is kept already is not written again.
    """
    mark, db = made_by(), library.db
    try:
        db.executescript(_SCHEMA)
        db.execute("BEGIN IMMEDIATE")
        for text, row in rows:
            digest = text.digest
            seal = _seal(digest, mark, row)
            db.execute(_KEEP, {"id": text.id, "digest": digest, "seal": seal, "row": row})
        db.execute("COMMIT")
    except sqlite3.Error:
        if db.in_transaction:
            db.execute("ROLLBACK")
        return False
    return True


def words_of_library(
    library: Library,
    progress: Progress = lambda done, count: None,
    *,
    use_kept: bool = True,
) -> Iterator[KeptWords]:
    """Yield what a word is found by in each text, in the order they were added.

    Args:
        library: the open library.
        progress: hears how many of how many texts that had to be read are read.
        use_kept: whether to use what is kept, and to keep what is not.
    """
    stale = _not_kept(library) if use_kept else list(library.digests())
    unkept: dict[str, str] = {}
    fresh = _read(library, stale, progress)
    while batch := list(islice(fresh, BATCH)):
        if not (use_kept and keep(library, batch)):
            unkept.update((text.id, row) for text, row in batch)
    for identity, title, _, _, row in _kept(library):
        yield KeptWords(identity, title, unkept.get(identity, row))


def _read(
    library: Library, names: Sequence[str], progress: Progress
) -> Iterator[tuple[SourceText, str]]:
    texts = library.texts(names)
    several = len(names) >= workers.FEW and workers.count() > 1
    read = workers.on_all_cores(with_row, texts, CHUNK) if several else map(with_row, texts)
    for done, each in enumerate(read, start=1):
        progress(done, len(names))
        yield each


def _not_kept(library: Library) -> list[str]:
    """Return the ids of the texts of which nothing is kept that answers to its seal."""
    mark = made_by()
    return [
        identity
        for identity, _, digest, seal, row in _kept(library)
        if seal != _seal(digest, mark, row)
    ]


def _kept(library: Library) -> Iterator[tuple[str, str, bytes, bytes, str]]:
    """Yield id, title and digest of each text, and the seal and the row that are kept of it."""
    there = library.db.execute("SELECT 1 FROM sqlite_master WHERE name = 'words'").fetchone()
    kept = "words" if there else "(SELECT NULL AS text, x'' AS seal, '' AS row)"
    yield from library.db.execute(
        "SELECT id, title, digest, IFNULL(seal, x''), IFNULL(row, '') FROM texts"
        f" LEFT JOIN {kept} ON text = number ORDER BY number"
    )


def _seal(digest: bytes, mark: str, row: str) -> bytes:
    """Return what tells that a row is of this text, made by this program, and whole."""
    key = digest + bytes.fromhex(mark[:32])
    return hashlib.blake2b(row.encode(), key=key, digest_size=8).digest()
