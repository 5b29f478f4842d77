"""The prices of alignment, from one documented table (glossary/collation/collation_costs.tsv)."""

from __future__ import annotations

from inscribe import tables

TABLE = "collation_costs"


@tables.cached()
def prices() -> dict[str, int]:
    """Return the price of each step, in thousandths of one sign put wrongly."""
    found: dict[str, int] = {}
    for row in tables.rows(TABLE):
        found.setdefault(row["key"], int(row["cost"]))
    return found
