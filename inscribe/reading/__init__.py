"""Reading: what an inscription says, word by word, in kana and in Latin letters.

Rooms in the order of the work: ``spelling``, ``words``, ``mecab``, ``prose``, ``lexicon``,
``verse``, ``chinese``, ``names``, ``signatures``, and ``inscription``, which decides who reads
what.

>>> from inscribe.reading import read_text
>>> interpretation = read_text("年の内に／春は来にけり／一年を／去年とや言はむ／今年とや言はむ")
>>> interpretation.register, interpretation.proposals[0].reasons
('verse', ('tanka of 6-7-5-7-8 morae',))
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.inscription import Choice as Choice, read as read, read_text as read_text
    from inscribe.reading.passages import PassageLike as PassageLike
    from inscribe.reading.words import (
        Doubt as Doubt,
        Interpretation as Interpretation,
        Passage as Passage,
        Proposal as Proposal,
        Register as Register,
        SignaturePart as SignaturePart,
        Token as Token,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "inscription": "Choice read read_text",
            "passages": "PassageLike",
            "words": "Doubt Interpretation Passage SignaturePart Proposal Register Token",
        },
    )
