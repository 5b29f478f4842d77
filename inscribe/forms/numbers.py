"""Signs that write a number: plain, in the longer forms used against forgery, or joined.

>>> value_of("廿"), value_of("壱"), value_of("萬"), value_of("花")
(20, 1, 10000, None)
"""

from __future__ import annotations

from inscribe import tables


def value_of(sign: str) -> int | None:
    """Return the number a single sign writes, or None."""
    return numbers().get(sign)


@tables.cached()
def numbers() -> dict[str, int]:
    """Return the value of every sign that writes a number."""
    found: dict[str, int] = {}
    for row in tables.rows("numbers"):
        found.setdefault(row["written"], int(row["value"]))
    return found
