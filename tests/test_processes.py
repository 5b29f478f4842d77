"""Processes the program starts: they load nothing from the user's folder, and none is waited for
that is no longer there."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from inscribe import workers
from inscribe.errors import InputError
from inscribe.reading.mecab.apart import run_apart

EXAMPLES = Path(__file__).parent.parent / "examples"
PROGRAM = [sys.executable, "-P", "-m", "inscribe"]
NAMES = ("json", "gc", "pathlib", "fugashi", "unidic", "unidic_lite", "inscribe", "multiprocessing")
HAS_FORK = pytest.mark.skipif(os.name != "posix", reason="signals as POSIX has them")


@pytest.fixture
def hostile_folder(tmp_path: Path) -> Path:
    """A folder with modules named as those of Python, each of which leaves a mark when loaded."""
    folder = tmp_path / "hostile"
    folder.mkdir()
    mark = tmp_path / "loaded"
    for name in NAMES:
        (folder / f"{name}.py").write_text(f"open({str(mark)!r}, 'a').write('{name} ')\n", "utf-8")
    return folder


def loaded(folder: Path) -> str:
    mark = folder.parent / "loaded"
    return mark.read_text("utf-8") if mark.exists() else ""


def test_a_process_apart_loads_nothing_from_where_the_user_is(
    hostile_folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(hostile_folder)
    monkeypatch.setenv("PYTHONPATH", str(hostile_folder))
    monkeypatch.syspath_prepend("")
    code = "import gc, pathlib, fugashi, inscribe, multiprocessing"
    assert run_apart(code, "", tmp_path) == ""
    assert run_apart(code, "", hostile_folder) == ""
    assert run_apart("import unidic", "", hostile_folder).startswith("ModuleNotFoundError")
    assert loaded(hostile_folder) == ""


def test_the_dictionary_is_made_without_the_modules_of_the_users_folder(
    hostile_folder: Path, tmp_path: Path
) -> None:
    home = str(Path(__file__).parent.parent)
    code = (
        "import sys; sys.path += [sys.argv[1], sys.argv.pop(1) + '/tests']\n"
        "from inscribe.reading.mecab import compiling, unidic\n"
        "from pathlib import Path\n"
        "import dictionary_rows\n"
        "print(compiling.dictionary('words', [Path(sys.argv[1])], dictionary_rows.write))\n"
        "compiling._write_apart(unidic.words, Path(sys.argv[2]), Path('x'))\n"
    )
    table = tmp_path / "words.tsv"
    table.write_text("one", "utf-8")
    run = subprocess.run(
        [sys.executable, "-P", "-c", code, home, str(table), str(tmp_path)],
        cwd=hostile_folder,
        env={**os.environ, "INSCRIBE_CACHE": "cache"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert Path(hostile_folder, run.stdout.strip()).is_file(), run.stderr
    assert "missing 1 required positional argument" in run.stderr  # it got as far as the call
    assert loaded(hostile_folder) == ""


def test_a_process_that_is_ended_from_outside_is_told(tmp_path: Path) -> None:
    ended = run_apart("import os; os.kill(os.getpid(), 9)", "", tmp_path)
    assert ended == "the process was ended from outside (9)"


def test_workers_that_start_anew_load_nothing_from_the_users_folder(hostile_folder: Path) -> None:
    code = (
        "from multiprocessing import get_context\n"
        "from inscribe.workers import _safe_path\n"
        "if __name__ == '__main__':\n"
        "    with _safe_path():\n"
        "        process = get_context('spawn').Process(target=len, args=('',))\n"
        "        process.start()\n"
        "    process.join()\n"
        "    print(process.exitcode)\n"
    )
    script = hostile_folder / "script.py"
    script.write_text(code, "utf-8")
    home = str(Path(__file__).parent.parent)
    run = subprocess.run(
        [sys.executable, "-P", str(script)],
        cwd=hostile_folder,
        env={k: v for k, v in os.environ.items() if k != "PYTHONSAFEPATH"} | {"PYTHONPATH": home},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (run.stdout, loaded(hostile_folder)) == ("0\n", ""), run.stderr


def doubled(number: int) -> int:
    return 2 * number


def ended_at_seven(number: int) -> int:
    if number == 7:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def fails_at_seven(number: int) -> int:
    if number == 7:
        raise InputError("seven is not wanted")
    return number


def test_work_on_all_cores_keeps_its_order() -> None:
    assert list(workers.on_all_cores(doubled, range(1000), 7)) == list(range(0, 2000, 2))


def test_things_are_taken_only_a_little_ahead() -> None:
    taken = 0

    def things() -> Iterator[int]:
        nonlocal taken
        while taken < 100_000:
            taken += 1
            yield taken

    results = workers.on_all_cores(doubled, things(), 10)
    assert next(results) == 2
    assert taken < 10 * workers.MOST * workers.AHEAD
    results.close()


def test_an_error_in_a_worker_is_raised_here() -> None:
    with pytest.raises(InputError, match="seven is not wanted"):
        list(workers.on_all_cores(fails_at_seven, range(100), 5))


@HAS_FORK
def test_a_worker_that_is_killed_is_noticed() -> None:
    with pytest.raises(InputError, match="a worker process was ended from outside"):
        list(workers.on_all_cores(ended_at_seven, range(100), 5))


@pytest.fixture(scope="module")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of records and a table of texts, large enough to be read by workers for a while."""
    folder = tmp_path_factory.mktemp("records")
    for number in range(800):
        shutil.copy(EXAMPLES / "DEMO-008.toml", folder / f"r{number}.toml")
    texts = (f'{{"id": "t{n}", "text": "はるのよのゆめ{n}はなのいろは"}}\n' for n in range(20_000))
    (folder / "texts.jsonl").write_text("".join(texts), "utf-8")
    return folder


def children(process: subprocess.Popen[str]) -> list[int]:
    """Wait for the workers of a running program, and return their numbers."""
    listed = Path(f"/proc/{process.pid}/task/{process.pid}/children")
    while process.poll() is None:
        if found := listed.read_text("utf-8").split():
            return [int(number) for number in found]
        time.sleep(0.01)
    pytest.fail("the work was over before a worker was seen")


def runs(number: int) -> bool:
    try:
        state = Path(f"/proc/{number}/stat").read_text("utf-8")
    except OSError:
        return False
    return state.rpartition(")")[2].split()[0] != "Z"


COMMANDS = {
    "check": ["check", "."],
    "entry": ["entry", ".", "--format", "json"],
    "concord": ["concord", ".", "夢", "--no-cache"],
    "source add": ["source", "add", "texts.jsonl", "--library", "l.sqlite"],
}


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="looks into /proc")
@pytest.mark.skipif(workers.count() == 1, reason="one core: there are no workers")
@pytest.mark.parametrize("ended", ["worker", "program"])
@pytest.mark.parametrize("command", COMMANDS)
def test_no_process_is_waited_for_that_is_gone(
    command: str, ended: str, collection: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = str(Path(__file__).parent.parent)
    process = subprocess.Popen(
        [*PROGRAM, *COMMANDS[command]],
        cwd=collection,
        env={**os.environ, "PYTHONPATH": home},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    found = children(process)
    os.kill(found[0] if ended == "worker" else process.pid, signal.SIGKILL)
    _, said = process.communicate(timeout=60)
    if ended == "worker":
        assert process.returncode == 2
        assert said.startswith("inscribe: a worker process was ended from outside")
        assert said.count("\n") == 1
    end = time.monotonic() + 10
    while any(map(runs, found)) and time.monotonic() < end:
        time.sleep(0.05)
    assert not any(map(runs, found))
    assert "Traceback" not in said
