"""Each record of a folder, looked at once: what was made of it before is taken from the cache."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import islice
from pathlib import Path
from typing import Any, NamedTuple

from inscribe.keeping.marks import FileMark, content_of, library_marks, mark_of, mark_of_all
from inscribe.keeping.store import UNWANTED, Kept, KeptValue, Store
from inscribe.reading.lexicon import prepare_for
from inscribe.workers import mapped

LARGEST = 2**19  # characters of a value that is kept
BATCH = 400  # records whose values are read and kept at a time

PASSED_OVER: tuple[Any, ...] = (UNWANTED,)

Progress = Callable[[int, int], None]


class Work(NamedTuple):
    """What is made of a record.

    ``makes`` names the values that ``make`` returns, one each, for the file of a record: plain
    data, as JSON has them. ``beside`` names the further files that a record reads. ``of`` is what
    else the values depend on (a style). ``library`` is the file of source texts: what is made of a
    record that names a text there by its id alone depends on it too.
    """

    makes: tuple[str, ...]
    make: Callable[[Path], tuple[Any, ...]]
    of: str = ""
    library: Path | None = None


class _Beside(NamedTuple):
    """What a record reads besides itself: files, and whether a text of the library."""

    files: Sequence[str] = ()
    in_library: bool = False


class _Fresh(NamedTuple):
    name: str
    content: str
    beside: _Beside
    values: tuple[Any, ...]


def each_record(
    paths: Sequence[Path],
    work: Work,
    store: Store | None,
    progress: Progress = lambda done, count: None,
    wanted: int = 1,
    worth: Callable[[str], bool] | None = None,
) -> Iterator[tuple[Path, tuple[Any, ...]]]:
    """Yield what ``work`` makes of each record, in their order: the first ``wanted`` values.

    What is made anew is kept a batch at a time, so that a run that is interrupted has not worked
    in vain, and holds no more than a batch in memory. ``progress`` hears how many of how many
    records had to be looked at. ``worth`` tells of the first kept value, as JSON, whether the
    record is wanted; the others are passed over, and nothing of them is taken apart.
    """
    by_name = {str(path): path for path in paths}
    marks = {name: mark_of(path) for name, path in by_name.items()}
    known = _still_true(marks, work, store)
    stale = [name for name in marks if name not in known]
    prepare_for(len(stale))
    fresh = mapped(partial(_made, work=work), stale)
    done = 0
    names = iter(marks)
    while batch := list(islice(names, BATCH)):
        values, made = _kept_values(batch, known, work, store, wanted, worth), []
        for name in batch:
            if name in known:
                if name not in values:  # the row is damaged
                    values[name] = work.make(Path(name))
            else:
                new = next(fresh)
                values[name] = new.values
                made.append(new)
                done += 1
                progress(done, len(stale))
        if store and made:
            _keep(store, made, marks, work)
        for name in batch:
            if (found := values[name]) is not PASSED_OVER:
                yield by_name[name], found[:wanted]


def marks_still_true(paths: Sequence[Path], work: Work, store: Store) -> dict[str, Kept]:
    """Return, by file name, what is kept of those records that have not changed since."""
    return _still_true({str(path): mark_of(path) for path in paths}, work, store)


def _still_true(marks: dict[str, FileMark], work: Work, store: Store | None) -> dict[str, Kept]:
    """Return what is kept of the records as they stand, and forget what is kept of others."""
    if store is None:
        return {}
    found: dict[str, Kept] = {}
    for what in work.makes:
        known = store.known(what)
        if gone := known.keys() - marks.keys():
            store.forget(what, gone)
        true = {
            name
            for name, kept in known.items()
            if name in marks and _holds(name, kept, marks[name], work)
        }
        found = {name: known[name] for name in true if what == work.makes[0] or name in found}
    return found


def _holds(name: str, kept: Kept, mark: FileMark, work: Work) -> bool:
    same = kept.mark == mark or (
        kept.mark.size == mark.size and kept.content == content_of(Path(name))
    )
    return same and kept.beside == _beside_now(kept.beside, work)


def _beside_now(kept: str, work: Work) -> str:
    """Return what ``beside`` would be kept as now."""
    if not kept.startswith("{"):  # the record reads no other file
        return work.of
    try:
        known = json.loads(kept)
        read = _Beside(known["files"], known["in_library"])
    except (ValueError, TypeError, KeyError):
        return ""
    return _beside(read, work)


def _beside(read: _Beside, work: Work) -> str:
    if not any(read):
        return work.of
    texts = library_marks(work.library) if read.in_library else ()
    marks = mark_of_all([*(mark_of(Path(file)) for file in read.files), *texts])
    return json.dumps({**read._asdict(), "marks": marks, "of": work.of})


def _kept_values(
    batch: Sequence[str],
    known: dict[str, Kept],
    work: Work,
    store: Store | None,
    wanted: int,
    worth: Callable[[str], bool] | None,
) -> dict[str, tuple[Any, ...]]:
    held = [name for name in batch if name in known]
    if store is None or not held:
        return {}
    first, *others = work.makes[:wanted]
    columns = [store.values(first, held, worth), *(store.values(what, held) for what in others)]
    values: dict[str, tuple[Any, ...]] = {
        name: tuple(column[name] for column in columns)
        for name in held
        if all(name in column for column in columns)
    }
    return values | {name: PASSED_OVER for name, value in columns[0].items() if value is UNWANTED}


def _made(name: str, work: Work) -> _Fresh:
    path = Path(name)
    return _Fresh(name, content_of(path), _read_beside(path), work.make(path))


def _read_beside(path: Path) -> _Beside:
    """Return what a record names (source texts, pictures), as far as its text tells."""
    import tomllib

    try:
        text = path.read_text("utf-8")
        if "file" not in text and "source" not in text:
            return _Beside()
        data = tomllib.loads(text)
        files = [str(path.parent / name) for name in _named_files(data)]
        return _Beside(files, any(_library_ids(data)))
    except (OSError, ValueError, RecursionError):
        return _Beside()


def _library_ids(data: Any, key: str = "") -> Iterator[str]:
    """Yield the ids of sources without words of their own, wherever in a record.

    >>> list(_library_ids({"inscription": [{"source": {"id": "kokin-53"}}], "id": "D-1"}))
    ['kokin-53']
    """
    if isinstance(data, list):
        for each in data:
            yield from _library_ids(each, key)
    elif isinstance(data, dict):
        if key == "source" and data.get("id") and not (data.get("text") or data.get("file")):
            yield str(data["id"])
        for name, value in data.items():
            yield from _library_ids(value, name)


def _named_files(data: Any) -> Iterator[str]:
    """Yield what stands under the key ``file``, wherever in a record.

    >>> list(_named_files({"image": [{"file": "a.png"}], "source": {"file": "b.txt"}}))
    ['a.png', 'b.txt']
    """
    if isinstance(data, list):
        for each in data:
            yield from _named_files(each)
    elif isinstance(data, dict):
        for key, value in data.items():
            if key == "file" and isinstance(value, str):
                yield value
            else:
                yield from _named_files(value)


def _keep(store: Store, made: Sequence[_Fresh], marks: dict[str, FileMark], work: Work) -> None:
    for place, what in enumerate(work.makes):
        store.keep(
            what,
            (
                KeptValue(
                    each.name,
                    Kept(marks[each.name], each.content, _beside(each.beside, work)),
                    each.values[place],
                )
                for each in made
            ),
            LARGEST,
        )
