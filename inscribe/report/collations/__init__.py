"""A collation laid out once (``layout``), and in Markdown; ``report.terminal`` shows the same."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.report.collations.layout import (
        AlignedCell as AlignedCell,
        DifferenceRow as DifferenceRow,
        columns as columns,
        judgements as judgements,
        levels as levels,
        relineation as relineation,
        rows as rows,
        standing_beside as standing_beside,
        verdict as verdict,
    )
    from inscribe.report.collations.markdown import (
        collation_as_markdown as collation_as_markdown,
        witnesses_as_markdown as witnesses_as_markdown,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "layout": (
                "AlignedCell DifferenceRow columns judgements levels relineation rows "
                "standing_beside verdict"
            ),
            "markdown": "collation_as_markdown witnesses_as_markdown",
        },
    )
