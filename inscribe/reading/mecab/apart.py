"""Python run in a process of its own, which loads nothing but Python and the installed packages.

The process is started in Python's isolated mode: no module in the user's current folder, and none
that ``PYTHONPATH`` names, can take the place of one of Python's own. Where the packages are
installed outside the folders this mode knows, those folders are searched last.
"""

from __future__ import annotations

import json
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

_PACKAGES = ("inscribe", "fugashi", "unidic_lite")
_SEARCH_LAST = "import json, sys; sys.path += json.loads(sys.argv.pop(1))\n"


def run_apart(code: str, argument: str, work: Path) -> str:
    """Run Python code in the folder ``work``, its ``sys.argv[1]`` being ``argument``.

    Returns:
        The last line the process wrote to standard error if it failed, or what ended it; nothing
        if it went well.
    """
    done = subprocess.run(
        [sys.executable, "-I", "-X", "utf8", "-c", _SEARCH_LAST + code, _places(), argument],
        cwd=work,
        capture_output=True,
        stdin=subprocess.DEVNULL,
        check=False,
    )
    if done.returncode == 0:
        return ""
    last = done.stderr.decode("utf-8", "replace").strip().rpartition("\n")[2]
    return last or f"the process was ended from outside ({-done.returncode})"


def _places() -> str:
    """Return, as JSON, the folders packages are found in, but for the current folder."""
    here = Path.cwd()
    homes = [_home(name) for name in _PACKAGES]
    others = [path for path in sys.path if Path(path).is_absolute() and Path(path) != here]
    return json.dumps(list(dict.fromkeys([*homes, *others])))


def _home(package: str) -> str:
    """Return the folder that a package lies in."""
    found = find_spec(package)
    assert found is not None
    return str(Path(found.origin or "").resolve().parents[1])
