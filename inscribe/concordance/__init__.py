"""A concordance: every place where a word occurs, in any form and spelling, and clusters.

>>> from inscribe.concordance.documents import document_of_text
>>> from inscribe.concordance.finding import query_of, search
>>> poem = document_of_text("A", "夢としりせは(者)さめさらましを")
>>> [(hit.before, hit.match, hit.how) for hit in search([poem], query_of("ゆめ"))]
[('', '夢', 'same sound')]
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.concordance.answers import (
        Clusters as Clusters,
        Concordance as Concordance,
        clustered as clustered,
        concord as concord,
    )
    from inscribe.concordance.clustering import Cluster as Cluster
    from inscribe.concordance.documents import Document as Document
    from inscribe.concordance.finding import (
        ConcordanceQuery as ConcordanceQuery,
        How as How,
        Occurrence as Occurrence,
        query_of as query_of,
    )
    from inscribe.concordance.folder import (
        Collection as Collection,
        collection as collection,
        library_collection as library_collection,
    )
    from inscribe.concordance.tally import Order as Order
else:
    __getattr__ = late.door(
        __name__,
        {
            "answers": "Clusters Concordance clustered concord",
            "clustering": "Cluster",
            "documents": "Document",
            "finding": "ConcordanceQuery How Occurrence query_of",
            "folder": "Collection collection library_collection",
            "tally": "Order",
        },
    )
