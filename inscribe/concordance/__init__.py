"""A concordance: every place where a word occurs, in any form and spelling, and clusters.

>>> from inscribe.concordance.documents import document_of_text
>>> from inscribe.concordance.search import query_of, search
>>> poem = document_of_text("A", "夢としりせは(者)さめさらましを")
>>> [(hit.before, hit.match, hit.how) for hit in search([poem], query_of("ゆめ"))]
[('', '夢', 'same sound')]
"""
