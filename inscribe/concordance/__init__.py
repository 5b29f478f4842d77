"""A concordance: every place where a word occurs, in any form and spelling, and clusters.

``documents`` is one inscription as plain data, ``said`` what it says of persons, places and dates,
``folder`` reads them all, ``finding`` looks for a word, ``occurrences`` (a place of it),
``in_library`` the source texts. Measure:
``tests/benchmarks/concord.py``.

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
        clusters_of_folder as clusters_of_folder,
        concord as concord,
    )
    from inscribe.concordance.clustering import Cluster as Cluster, clusters as clusters
    from inscribe.concordance.documents import (
        Document as Document,
        document_of_read as document_of_read,
        documents_of_read as documents_of_read,
        of_rows as of_rows,
        rows_of as rows_of,
    )
    from inscribe.concordance.finding import (
        ConcordanceQuery as ConcordanceQuery,
        How as How,
        query_of as query_of,
    )
    from inscribe.concordance.folder import (
        Collection as Collection,
        OpenFolder as OpenFolder,
        collection as collection,
        documents_read as documents_read,
        open_folder as open_folder,
        store_of as store_of,
    )
    from inscribe.concordance.in_library import library_collection as library_collection
    from inscribe.concordance.occurrences import Occurrence as Occurrence
    from inscribe.concordance.said import (
        NAME as NAME,
        PassageSaid as PassageSaid,
        SaidThere as SaidThere,
        Signing as Signing,
    )
    from inscribe.concordance.tally import Order as Order
else:
    __getattr__ = late.door(
        __name__,
        {
            "answers": "Clusters Concordance clustered clusters_of_folder concord",
            "clustering": "Cluster clusters",
            "documents": "Document document_of_read documents_of_read of_rows rows_of",
            "finding": "ConcordanceQuery How query_of",
            "occurrences": "Occurrence",
            "folder": "Collection OpenFolder collection documents_read open_folder store_of",
            "in_library": "library_collection",
            "said": "NAME PassageSaid SaidThere Signing",
            "tally": "Order",
        },
    )
