"""The dictionary of classical verse: what is in it, and how it is made from the tables.

In reading order: ``dictionary`` (where it is), ``building`` (how it is put together), ``paradigms``
and ``verbs`` (conjugation), ``nouns``, ``particles``, ``vocabulary`` (words drawn from UniDic),
``shortened`` (forms cut short), ``compounds`` (nouns that are no native words),
``groups`` (entries of several words), ``mixed_spellings``, ``connections`` (what may follow what).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.lexicon.dictionary import (
        FEATURES as FEATURES,
        prepare_for as prepare_for,
        verse_dictionary as verse_dictionary,
    )
    from inscribe.reading.lexicon.paradigms import inflections as inflections
else:
    __getattr__ = late.door(
        __name__,
        {
            "dictionary": "FEATURES prepare_for verse_dictionary",
            "paradigms": "inflections",
        },
    )
