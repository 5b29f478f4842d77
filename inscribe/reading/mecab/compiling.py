"""Compiled user dictionaries for MeCab: built once into a cache, used by every later run.

A dictionary is known by its name and by the content of the files it is made from (tables and the
code that turns them into entries), so that a changed table means another file. It is built
beside its place and put there in one step: a second process never sees half of it. Where the cache
is of no use, the dictionary lives in a temporary folder (``places``).
"""

from __future__ import annotations

import contextlib
import os
import sys
import zlib
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING, NamedTuple

from inscribe.errors import InputError, Place
from inscribe.reading.mecab.places import Trouble, nowhere, places, tell_of
from inscribe.reading.mecab.sealing import is_sealed, seal, seal_beside
from inscribe.reading.mecab.shipped import is_shipped, lay_down

if TYPE_CHECKING:
    from inscribe.reading.mecab.preparing import Tell

_LAYOUT = 4  # raise it when the way a dictionary is compiled changes
_MAGIC = 0xEF718F77  # MeCab writes it, mixed with the size, at the start of each dictionary
_ABANDONED = 24 * 3600  # seconds after which a folder begun is not being worked on any more
_KEPT = 3  # dictionaries of one name, of different versions or tables
_COMPILE = "import sys, fugashi; fugashi.build_dictionary(sys.argv[1])"
_WRITE = """
import gc, importlib, json, sys
from pathlib import Path
from inscribe import errors, tables
gc.disable()
module, function, made, *folders = json.loads(sys.argv[1])
try:
    for folder in reversed(folders):
        tables.add_folder(Path(folder))
    getattr(importlib.import_module(module), function)(Path(made))
except errors.InscribeError as error:
    sys.exit(str(error))
"""


class MecabRow(NamedTuple):
    """One entry as MeCab wants it; the feature is handed back with the word as it is."""

    written: str
    left: int
    right: int
    cost: int
    feature: str


def dictionary(name: str, sources: Sequence[Path], write_parts: Callable[[Path], None]) -> Path:
    """Return the file of the compiled dictionary ``name``, to be laid over UniDic.

    ``write_parts`` is called only to build it, in a process of its own: it writes ``entries.csv``
    into the folder given.

    Raises:
        InputError: MeCab could not compile the entries, or no folder can be written to.
    """
    file_name, troubles = f"{keyed(name, sources)}.dic", list[Trouble]()
    for folder in places(troubles):
        path = folder / file_name
        if _is_sound(path) and is_sealed(path):
            tell_of(troubles)
            return path
        try:
            folder.mkdir(parents=True, exist_ok=True)
            from inscribe.reading.mecab.preparing import preparing

            with preparing(name, is_slow=not is_shipped(path.stem)) as tell:
                _build(path, write_parts, tell)
        except (OSError, InputError) as error:  # a process it is made in tells a full disk so too
            troubles.append(error)
            continue
        _remove_older(path, name)
        tell_of(troubles)
        return path
    raise nowhere(troubles)


def dictionary_folder(
    name: str, sources: Sequence[Path], write_parts: Callable[[Path], None]
) -> Path:
    """Return the folder of a whole dictionary of its own, with its own connection costs.

    ``write_parts`` is called only to build it: it writes ``entries.csv`` and what MeCab needs
    beside it (``dicrc``, ``matrix.bin``, ``unk.dic``, ``char.bin``) into the folder given, and
    ``NAME.more`` for each further dictionary to be laid over it, which becomes ``NAME.dic``.

    Raises:
        InputError: MeCab could not compile the entries, or no folder can be written to.
    """
    folder_name, troubles = keyed(name, sources), list[Trouble]()
    for folder in places(troubles):
        path = folder / folder_name
        if _is_whole(path):
            tell_of(troubles)
            return path
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            with _one_at_a_time(path):
                if not _is_whole(path):
                    from inscribe.reading.mecab.preparing import preparing

                    with preparing(name, is_slow=not is_shipped(path.name)) as tell:
                        _build_folder(path, write_parts, tell)
        except (OSError, InputError) as error:  # a process it is made in tells a full disk so too
            troubles.append(error)
            continue
        _remove_older(path, name)
        tell_of(troubles)
        return path
    raise nowhere(troubles)


@contextlib.contextmanager
def _one_at_a_time(path: Path) -> Iterator[None]:
    """Let one process build what several want; where files cannot be locked, each builds it."""
    try:
        import fcntl
    except ImportError:
        yield
        return
    lock = path.with_name(f".{path.name}.lock")
    with lock.open("w") as file:
        fcntl.flock(file, fcntl.LOCK_EX)
        try:
            yield
        finally:
            lock.unlink(missing_ok=True)


def _build_folder(path: Path, write_parts: Callable[[Path], None], tell: Tell) -> None:
    import shutil
    import tempfile

    with tempfile.TemporaryDirectory(dir=path.parent, prefix=f".{path.name}-") as work:
        made = Path(work, "made")
        made.mkdir()
        tell("gathering the words")
        if not lay_down(path.name, made):
            _write_apart(write_parts, made, path)
        tell("compiling them")
        _compile("x -d . -o . -s -f utf8 -t utf8 entries.csv", made, "sys.dic", path)
        for more in made.glob("*.more"):
            name = more.name.removesuffix(".more") + ".dic"
            _compile(f"x -d . -u {name} -f utf8 -t utf8 {more.name}", made, name, path)
            more.unlink()
        (made / "entries.csv").unlink()
        seal(made, path)
        try:
            made.replace(path)
        except OSError:
            if not _is_whole(path):  # damaged, or another process was quicker
                shutil.rmtree(path, ignore_errors=True)
                made.replace(path)


def _is_whole(folder: Path) -> bool:
    """Whether every file of a finished folder is there, none of them cut short or written over."""
    return is_sealed(folder) and _is_sound(folder / "sys.dic")


def keyed(name: str, sources: Sequence[Path]) -> str:
    """Return what a dictionary made from these files is called in the cache."""
    check = zlib.crc32(f"{_LAYOUT} {sys.byteorder}".encode())
    for path in sources:
        check = zlib.crc32(path.read_bytes(), check)
    return f"{name}-{check:08x}"


def _is_sound(path: Path) -> bool:
    try:
        with path.open("rb") as file:
            head = file.read(4)
            size = os.fstat(file.fileno()).st_size
    except OSError:
        return False
    return len(head) == 4 and int.from_bytes(head, sys.byteorder) == (size & 0xFFFFFFFF) ^ _MAGIC


def _build(path: Path, write_parts: Callable[[Path], None], tell: Tell) -> None:
    import tempfile

    from inscribe.reading.mecab.unidic import folder as unidic_folder

    with tempfile.TemporaryDirectory(dir=path.parent, prefix=f".{path.stem}-") as work:
        tell("gathering the words")
        if not lay_down(path.stem, Path(work)):
            _write_apart(write_parts, Path(work), path)
        tell("compiling them")
        source = quote(str(unidic_folder()))
        arguments = f"x -d {source} -u made.dic -f utf8 -t utf8 entries.csv"
        made = _compile(arguments, Path(work), "made.dic", path)
        seal_beside(path).unlink(missing_ok=True)
        made.replace(path)
        seal(path, path)


def _compile(arguments: str, work: Path, made_name: str, path: Path) -> Path:
    """Compile in a process of its own: MeCab prints to standard output and may end its process."""
    from inscribe.reading.mecab.apart import run_apart

    problem = run_apart(_COMPILE, arguments, work)
    made = work / made_name
    if problem or not _is_sound(made):
        reason = problem or "it came out damaged"
        raise InputError(f"the dictionary could not be compiled: {reason}", Place(str(path)))
    return made


def write_rows(path: Path, rows: Iterable[MecabRow]) -> None:
    """Write entries as MeCab compiles them."""
    with path.open("w", encoding="utf-8", newline="\n") as file:
        for row in rows:
            written = row.written
            if "," in written or '"' in written:
                written = '"' + written.replace('"', '""') + '"'
            file.write(f"{written},{row.left},{row.right},{row.cost},{row.feature}\n")


def _write_apart(write_parts: Callable[[Path], None], made: Path, path: Path) -> None:
    """Write the parts in a process of its own, which gives back the memory it took."""
    import json

    from inscribe import tables
    from inscribe.reading.mecab.apart import run_apart

    folders = [str(folder.absolute()) for folder in tables.folders()[:-1]]
    wanted = [write_parts.__module__, write_parts.__qualname__, str(made.absolute()), *folders]
    if problem := run_apart(_WRITE, json.dumps(wanted), made):
        raise InputError(f"the dictionary could not be written: {problem}", Place(str(path)))


def _remove_older(path: Path, name: str) -> None:
    """Keep the newest few of a name: two installed versions must not take each other's away.

    What a stopped run left half-made goes too, once no other run can still be at it.
    """
    import shutil
    import time

    for left in path.parent.glob(f".{name}-*"):
        if left.is_dir() and time.time() - _time(left) > _ABANDONED:
            shutil.rmtree(left, ignore_errors=True)
    alike = [p for p in path.parent.glob(f"{name}-*") if len(p.name) == len(path.name)]
    for other in sorted(alike, key=_time, reverse=True)[_KEPT:]:
        if other.is_dir():
            shutil.rmtree(other, ignore_errors=True)
        elif other != path:
            with contextlib.suppress(OSError):  # in use on Windows, or not ours: it does no harm
                other.unlink()
                seal_beside(other).unlink(missing_ok=True)


def _time(path: Path) -> float:
    try:
        return path.stat().st_ctime
    except OSError:  # removed meanwhile
        return 0
