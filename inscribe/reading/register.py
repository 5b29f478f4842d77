"""Which register a text is in: verse, signature or prose.

Signatures are nearly all kanji and hold words of making, dwelling or dating. Verse is written in
kanji and kana and has the morae of a poem. Everything else is prose.
"""

from __future__ import annotations

import re

from inscribe.reading.tokens import Register

_KANA = re.compile("[\u3041-\u3096\u30a1-\u30fa]")
_SIGNING = re.compile(
    "[作造彫刻製鐫鋳鑑銘謹写模倣]|（花押）|（印|[住於]|行年|応[需求]|[歳才]|[年月]吉|吉日|為|守|法[橋眼]"
)
VERSE_MAX_SIGNS = 45


def register_of(text: str) -> Register:
    """Return the register a normalised text looks like before it is read.

    "verse" only means that it may be verse: its morae decide.

    >>> register_of("於東都応需造之"), register_of("花の色はうつりにけりな")
    ('signature', 'verse')
    """
    signs = len(text)
    kana = len(_KANA.findall(text)) if signs else 0
    if kana * 4 <= signs:
        return "signature" if _SIGNING.search(text) else "prose"
    return "verse" if signs <= VERSE_MAX_SIGNS else "prose"
