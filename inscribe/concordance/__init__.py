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
    from inscribe.concordance.clustering import Cluster as Cluster, clusters as clusters
    from inscribe.concordance.documents import Document as Document
    from inscribe.concordance.finding import (
        How as How,
        Occurrence as Occurrence,
        query_of as query_of,
        search as search,
    )
    from inscribe.concordance.folder import (
        Collection as Collection,
        collection as collection,
        library_collection as library_collection,
    )
    from inscribe.concordance.tally import Order as Order, counts as counts, ordered as ordered
else:
    __getattr__ = late.door(
        __name__,
        {
            "clustering": "Cluster clusters",
            "documents": "Document",
            "finding": "Occurrence How query_of search",
            "folder": "Collection collection library_collection",
            "tally": "Order counts ordered",
        },
    )
