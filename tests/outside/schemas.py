"""Where the published schemas lie: ``shared/schemas`` beside the checkout, or as a variable says.

LIDO 1.1 (CC BY 4.0) and EpiDoc 9.4 (GPL 2 or later) are not copied into this repository.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

VARIABLE = "INSCRIBE_SCHEMAS"
BESIDE = Path(__file__).parents[3] / "shared" / "schemas"


def schema_file(*parts: str) -> Path:
    """Return a schema's file; where it is not there, the test is passed over and says why."""
    path = Path(os.environ.get(VARIABLE) or BESIDE).joinpath(*parts)
    if not path.is_file():
        pytest.skip(f"there is no {path}; set {VARIABLE} to the folder of the schemas")
    return path
