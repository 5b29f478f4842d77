"""Whether want of space explains a difference.

In reading order: ``measures`` (pitch, crowding, room), ``evidence`` (one difference weighed),
``reasons`` (the same in words), ``account`` (the verdicts).

``measures.py`` makes pitch, crowding, foot line, free lengths and capacity out of plate and column
measurements (a column that the record does not measure ends where the boxes of its first and last
sign do, or is reckoned from three or more: ``record/boxes/columns.py``); ``evidence.py`` weighs
one difference by the coefficients of ``space_weights.tsv``; ``reasons.py`` says each feature on
the side it is weighed on; ``account.py`` turns the weight into a verdict. The coefficients come
from ``python tests/benchmarks/space.py --fit``: four simulated carvers
(``tests/benchmarks/carvers``) by authors who did not know the model; without ``--fit`` the script
fits on all but one and measures on that one, in turn. Another carver is a module with
``plates(seed, count)`` as ``carvers/contract.py`` says, and a line in ``CARVERS``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.collation.space.account import space_account as space_account
    from inscribe.collation.space.measures import missing as missing
else:
    __getattr__ = late.door(
        __name__,
        {
            "account": "space_account",
            "measures": "missing",
        },
    )
