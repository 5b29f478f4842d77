"""What must be said where it matters: of signatures, of reading worn signs, of filled gaps."""

from __future__ import annotations

from inscribe import tables


def caution(key: str, language: str = "en") -> str:
    """Return the caution of a key of ``glossary/cautions.tsv``, in English or Japanese (ja)."""
    return _cautions()[key][language == "ja"]


@tables.compiled
def _cautions() -> dict[str, tuple[str, str]]:
    found: dict[str, tuple[str, str]] = {}
    for (key, _, en, ja), _place in tables.rows("cautions", ("key", "when", "en", "ja")):
        found.setdefault(key, (en, ja))
    return found
