"""The prices of alignment, from one documented table (glossary/collation_costs.tsv)."""

from __future__ import annotations

from inscribe import tables
from inscribe.errors import TableError

TABLE = "collation_costs"


@tables.compiled
def prices() -> dict[str, int]:
    """Return the price of each step, in thousandths of one sign put wrongly.

    Raises:
        TableError: a price is not a whole number of zero or more.
    """
    found: dict[str, int] = {}
    for (step, price, _), place in tables.rows(TABLE, ("step", "price", "meaning")):
        if not price.isdecimal():
            raise TableError(f"the price {price!r} is not a whole number", place)
        found.setdefault(step, int(price))
    return found
