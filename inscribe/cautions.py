"""What must be said where it matters: of signatures, of reading worn signs, of filled gaps."""

from __future__ import annotations

from inscribe import tables


def caution(key: str, language: str = "en") -> str:
    """Return the caution of a key of ``cautions.tsv``, in English or Japanese (ja).

    >>> caution("attribution").partition(":")[0]
    'A signature is not an attribution'
    """
    return _cautions()[key][language == "ja"]


@tables.cached()
def _cautions() -> dict[str, tuple[str, str]]:
    found: dict[str, tuple[str, str]] = {}
    for row in tables.rows("cautions"):
        found.setdefault(row["key"], (row["en"], row["ja"]))
    return found
