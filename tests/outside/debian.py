"""Files of Debian's packages, where they are installed or unpacked.

``INSCRIBE_DEBIAN`` names the folder in which the packages were unpacked (``dpkg -x``); without it
they are looked for where Debian installs them. A test that asks for a file that is not there is
skipped and says which package it wants. ``.ci/run`` gets them.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

FOLDER = Path(os.environ.get("INSCRIBE_DEBIAN", "/")) / "usr/share"


def file(name: str, package: str) -> Path:
    """Return a file below ``/usr/share``; the test that asks is skipped where it is not."""
    path = FOLDER / name
    if not path.exists():
        pytest.skip(f"the Debian package {package} is not installed")
    return path
