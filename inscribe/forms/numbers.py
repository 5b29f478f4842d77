"""Signs that write a number: plain, in the longer forms used against forgery, or joined.

>>> value_of("廿"), value_of("壱"), value_of("萬"), value_of("花")
(20, 1, 10000, None)
"""

from __future__ import annotations

from inscribe import tables
from inscribe.errors import TableError


def value_of(sign: str) -> int | None:
    """Return the number a single sign writes, or None."""
    return numbers().get(sign)


@tables.compiled
def numbers() -> dict[str, int]:
    """Return the value of every sign that writes a number.

    Raises:
        TableError: a value is not a whole number.
    """
    found: dict[str, int] = {}
    for (sign, value, _), place in tables.rows("numbers", ("sign", "value", "kind")):
        if not value.isascii() or not value.isdigit():
            raise TableError(f"{value!r} is not a number", place, "write it in digits")
        found.setdefault(sign, int(value))
    return found
