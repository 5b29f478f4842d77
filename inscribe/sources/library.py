"""The library of source texts: one SQLite file that a kill at any moment leaves sound.

Every addition is one transaction a batch; a text is reported as added only after its transaction
is on the disk. Adding the same text again changes nothing.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType

from inscribe.errors import InputError, Place, reason_of
from inscribe.files import StrPath
from inscribe.sources import index
from inscribe.sources.layout import LAYOUT, has_this_layout, other_layout, refuse_another
from inscribe.sources.passages import SourcePassage
from inscribe.sources.texts import SourceText

BUSY_SECONDS = 60
_NOT_WRITABLE = (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN)

_SCHEMA = """
CREATE TABLE IF NOT EXISTS about(name TEXT PRIMARY KEY, value TEXT NOT NULL);
CREATE TABLE IF NOT EXISTS texts(
    number INTEGER PRIMARY KEY AUTOINCREMENT, id TEXT NOT NULL UNIQUE, lines TEXT NOT NULL,
    title TEXT NOT NULL, provenance TEXT NOT NULL, licence TEXT NOT NULL, extra TEXT NOT NULL,
    digest BLOB NOT NULL
);
CREATE TABLE IF NOT EXISTS passages(
    number INTEGER PRIMARY KEY AUTOINCREMENT, text INTEGER NOT NULL, first_line INTEGER NOT NULL,
    last_line INTEGER NOT NULL, sounds TEXT NOT NULL, signs TEXT NOT NULL
);
CREATE INDEX IF NOT EXISTS passages_of_text ON passages(text);
"""


@dataclass(frozen=True, slots=True)
class Added:
    """What an addition did: how many texts were new or already there, and which were replaced."""

    new: int = 0
    replaced: tuple[str, ...] = ()  # their ids
    unchanged: int = 0

    @property
    def changed(self) -> int:
        """How many texts were replaced."""
        return len(self.replaced)

    def __add__(self, other: Added) -> Added:
        return Added(
            self.new + other.new, self.replaced + other.replaced, self.unchanged + other.unchanged
        )


class Library:
    """An open library file. Use it in a ``with`` statement.

    With ``texts_only`` one of an older layout opens too, for its texts to be written out.

    Raises:
        InputError: on opening, if the file is missing (and ``create`` is false), is not a library,
            or cannot be used.

    >>> import tempfile
    >>> from inscribe import Library, SourceText, add_texts
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     with Library(f"{folder}/library.sqlite", create=True) as library:
    ...         _ = add_texts(library, [SourceText("cherries", ("世の中に絶えて桜の",))])
    ...         library.ids()
    ['cherries']
    """

    def __init__(self, path: StrPath, *, create: bool = False, texts_only: bool = False) -> None:
        self.path = path = Path(path)
        self._texts_only = texts_only
        if path.is_dir():
            raise InputError(
                "it is a folder, and a library is one file",
                Place(str(path)),
                f"name the file in it, as in {path / 'sources.sqlite'}",
            )
        if not create and not path.is_file():
            raise InputError(
                "there is no library of source texts here",
                Place(str(path)),
                "make one with: inscribe source add FILE",
            )
        try:
            if create:
                path.parent.mkdir(parents=True, exist_ok=True)
            self.db = sqlite3.connect(path, timeout=BUSY_SECONDS, isolation_level=None)
            try:
                self._prepare(create=create)
            except sqlite3.OperationalError as error:
                if create or error.sqlite_errorcode & 0xFF not in _NOT_WRITABLE:
                    raise
                self.db.close()
                self.db = self._only_to_read()
                self._prepare(create=False)
        except (sqlite3.Error, OSError) as error:
            raise self._trouble(error) from error

    def _prepare(self, *, create: bool) -> None:
        self.db.execute("PRAGMA cache_size = -32768")
        if create:
            self._keep_journal()
            self.db.execute("PRAGMA synchronous = FULL")
            self.db.executescript(_SCHEMA + index.SCHEMA)
            self.db.execute("INSERT OR IGNORE INTO about VALUES ('layout', ?)", (LAYOUT,))
        if not self._texts_only and not has_this_layout(self.db):
            raise other_layout(self.path)

    def _only_to_read(self) -> sqlite3.Connection:
        """Open the library as a file that nobody changes, where nothing can be put beside it.

        Raises:
            InputError: texts added last still stand in the file beside it.
        """
        waiting = self.path.with_name(f"{self.path.name}-wal")
        if waiting.exists() and waiting.stat().st_size:
            raise InputError(
                f"the texts added last still stand in {waiting.name}, and the folder is read-only",
                Place(str(self.path)),
                "copy both files to a folder that can be written, and name it with --library",
            )
        name = f"{self.path.absolute().as_uri()}?mode=ro&immutable=1"
        return sqlite3.connect(name, uri=True, isolation_level=None)

    def _keep_journal(self) -> None:
        """Set the journal that lets readers go on; SQLite does not wait for others here itself."""
        import time

        end = time.monotonic() + BUSY_SECONDS
        while True:
            try:
                refuse_another(self.db)
                self.db.execute("PRAGMA journal_mode = WAL")
                return
            except sqlite3.OperationalError as error:
                if "locked" not in str(error) or time.monotonic() > end:
                    raise
                time.sleep(0.05)

    def _trouble(self, error: Exception) -> InputError:
        why = reason_of(error, str(error)) if isinstance(error, OSError) else error
        return InputError(
            f"the library cannot be used ({why})",
            Place(str(self.path)),
            "check that it is a library file, that its folder can be written and has room",
        )

    def __enter__(self) -> Library:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        value: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.db.close()
        if isinstance(value, sqlite3.Error):
            raise self._trouble(value) from value

    def __len__(self) -> int:
        return int(self.db.execute("SELECT COUNT(*) FROM texts").fetchone()[0])

    @property
    def size(self) -> int:
        """The number of passages the index holds."""
        count = self.db.execute("SELECT COALESCE(SUM(passages), 0) FROM segments").fetchone()[0]
        return int(count)

    def add(self, batch: Sequence[tuple[SourceText, Sequence[SourcePassage]]]) -> Added:
        """Add texts with their passages in one transaction; return what that changed.

        A text whose id is there already replaces the old one if it differs.
        """
        latest = {text.id: (text, passages) for text, passages in batch}
        self.db.execute("BEGIN IMMEDIATE")
        try:
            known = self._digests(list(latest))
            fresh = [pair for pair in latest.values() if known.get(pair[0].id) != pair[0].digest]
            replaced = [text.id for text, _ in fresh if text.id in known]
            self._delete(replaced)
            self._insert(fresh)
            self.db.execute("COMMIT")
        except BaseException:
            if self.db.in_transaction:  # SQLite has given it up itself where the disk is full
                self.db.execute("ROLLBACK")
            raise
        return Added(len(fresh) - len(replaced), tuple(replaced), len(batch) - len(fresh))

    def _digests(self, ids: Sequence[str]) -> dict[str, bytes]:
        found: dict[str, bytes] = {}
        for start in range(0, len(ids), 500):
            part = ids[start : start + 500]
            marks = ",".join("?" * len(part))
            found.update(
                self.db.execute(f"SELECT id, digest FROM texts WHERE id IN ({marks})", part)
            )
        return found

    def _delete(self, ids: Iterable[str]) -> None:
        # Numbers of passages are never used again, so the index may keep those of removed texts.
        for identity in ids:
            self.db.execute(
                "DELETE FROM passages WHERE text = (SELECT number FROM texts WHERE id = ?)",
                (identity,),
            )
            self.db.execute("DELETE FROM texts WHERE id = ?", (identity,))

    def _insert(self, pairs: Iterable[tuple[SourceText, Sequence[SourcePassage]]]) -> None:
        indexed: list[tuple[int, str, str]] = []
        for text, passages in pairs:
            row = (text.id, text.text, text.title, text.provenance, text.licence)
            extra = json.dumps(dict(text.extra), ensure_ascii=False) if text.extra else ""
            number = self.db.execute(
                "INSERT INTO texts(id, lines, title, provenance, licence, extra, digest)"
                " VALUES (?, ?, ?, ?, ?, ?, ?)",
                (*row, extra, text.digest),
            ).lastrowid
            for passage in passages:
                inserted = self.db.execute(
                    "INSERT INTO passages(text, first_line, last_line, sounds, signs)"
                    " VALUES (?, ?, ?, ?, ?)",
                    (number, *passage.row),
                ).lastrowid
                indexed.append((inserted or 0, passage.sounds, passage.signs))
        index.write_segment(self.db, indexed)

    def remove(self, ids: Sequence[str]) -> None:
        """Remove the texts of these ids, all or none.

        Raises:
            InputError: an id is not in the library.
        """
        missing = sorted(set(ids) - self._digests(ids).keys())
        if missing:
            from inscribe.sources.ids import no_text

            raise no_text(missing[0], self.ids(), self.path)
        self.db.execute("BEGIN IMMEDIATE")
        self._delete(ids)
        self.db.execute("COMMIT")

    def texts(self, ids: Sequence[str] | None = None) -> Iterator[SourceText]:
        """Yield the texts of these ids, or all of them, in the order they were added."""
        columns = "SELECT id, lines, title, provenance, licence, extra FROM texts"
        if ids is None:
            yield from map(_text_of, self.db.execute(f"{columns} ORDER BY number"))
            return
        for identity in ids:
            yield from map(_text_of, self.db.execute(f"{columns} WHERE id = ?", (identity,)))

    def ids(self) -> list[str]:
        """Return the ids of all texts, in their order."""
        return [row[0] for row in self.db.execute("SELECT id FROM texts ORDER BY id")]

    def digests(self) -> dict[str, bytes]:
        """Return the digest of every text by its id, in the order they were added."""
        return dict(self.db.execute("SELECT id, digest FROM texts ORDER BY number"))

    def text_of_id(self, identity: str) -> SourceText | None:
        """Return the text of this id, or None if the library has none."""
        return next(self.texts([identity]), None)

    def text_of_number(self, number: int) -> SourceText:
        """Return the text of an internal number."""
        columns = "SELECT id, lines, title, provenance, licence, extra FROM texts"
        return _text_of(self.db.execute(f"{columns} WHERE number = ?", (number,)).fetchone())

    def passages(self, numbers: Sequence[int]) -> Iterator[tuple[int, int, SourcePassage]]:
        """Yield (passage number, text number, passage) for those of ``numbers`` that exist."""
        for start in range(0, len(numbers), 500):
            part = numbers[start : start + 500]
            marks = ",".join("?" * len(part))
            for number, text, first, last, sounds, signs in self.db.execute(
                "SELECT number, text, first_line, last_line, sounds, signs FROM passages"
                f" WHERE number IN ({marks})",
                part,
            ):
                yield number, text, SourcePassage(sounds, first, last, signs)

    def is_sound(self) -> bool:
        """Return whether SQLite finds the file whole (PRAGMA integrity_check)."""
        return bool(self.db.execute("PRAGMA integrity_check").fetchone()[0] == "ok")


def _text_of(row: tuple[str, str, str, str, str, str]) -> SourceText:
    identity, lines, title, provenance, licence, extra = row
    pairs = tuple(json.loads(extra).items()) if extra else ()
    return SourceText(identity, tuple(lines.split("\n")), title, provenance, licence, pairs)
