r"""Where the columns of another list go, as a file: headings and columns of ``people.tsv``.

>>> print(as_toml({"俳号": "pen", 'Inv. "A"': "note"}), end="")
"俳号" = "pen"
"Inv. \"A\"" = "note"
>>> of_toml(as_toml({"俳号": "pen"}), "columns.toml")
{'俳号': 'pen'}
"""

from __future__ import annotations

import json
import tomllib
from collections.abc import Mapping

from inscribe.errors import InputError, Place


def as_toml(mapping: Mapping[str, str]) -> str:
    """Return a mapping as a file that may be put right by hand."""
    return "".join(
        f"{_quoted(heading)} = {_quoted(column)}\n" for heading, column in mapping.items()
    )


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def of_toml(text: str, name: str) -> dict[str, str]:
    """Return the mapping of such a file.

    Raises:
        InputError: the file is not TOML, or gives something else than columns.
    """
    try:
        data = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        hint = 'write each as "heading" = "column"'
        raise InputError(f"the mapping is not TOML ({error})", Place(name), hint) from error
    for heading, column in data.items():
        if not isinstance(column, str):
            hint = 'write it as "heading" = "column"'
            raise InputError(f"“{heading}” goes to no column", Place(name), hint)
    return data
