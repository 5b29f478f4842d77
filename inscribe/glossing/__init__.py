"""What each word means, in a few English words: for a literal translation, made word by word.

In: an interpretation. Out: the same with a gloss on each word, and the words as an interlinear
line: signs, kana, Latin letters, gloss. Searched only when it is asked for.

In reading order: ``classical`` (glosses of the tables of verse), ``dictionary`` (those of EDICT),
``words`` (all of it).

``glossing/words.py``: a word without a gloss of its own gets one from the tables of verse (by
today's dictionary form; where they have several, from EDICT), else from ``glosses.tsv`` (86,000
rows, built by ``python glossary/build glosses``, found by halving; 4.5 MB, 1.5 MB of the wheel),
where writing, reading and sort agree. Auxiliaries and parts of speech in plain words:
``grammar_words.tsv``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.glossing.words import (
        WordMeaning as WordMeaning,
        glossed_words as glossed_words,
        with_glosses as with_glosses,
    )
else:
    __getattr__ = late.door(
        __name__,
        {"words": "WordMeaning glossed_words with_glosses"},
    )
