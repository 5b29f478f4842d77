"""What a signature says: its parts, and its readings in Japanese order, ranked.

In reading order: ``reader`` (the way in), ``pieces`` and ``names`` (what a stretch could be),
``split`` (the likeliest division), ``formulas``, ``scope`` and ``spans`` (Chinese order to
Japanese), ``options`` (how each piece is read), ``dates``, ``seals``, ``likelihood`` (how much a
text looks like a signature), ``full_names``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.signatures.dates import dated_pieces as dated_pieces
    from inscribe.reading.signatures.full_names import (
        NameLookUp as NameLookUp,
        full_readings as full_readings,
        look_up as look_up,
    )
    from inscribe.reading.signatures.likelihood import (
        is_quoted as is_quoted,
        signature_likelihood as signature_likelihood,
    )
    from inscribe.reading.signatures.names import is_kanji as is_kanji
    from inscribe.reading.signatures.pieces import SignaturePiece as SignaturePiece
    from inscribe.reading.signatures.reader import read_signature as read_signature
    from inscribe.reading.signatures.signed import (
        is_half_in_kana as is_half_in_kana,
        is_signature as is_signature,
        may_be_signature as may_be_signature,
    )
    from inscribe.reading.signatures.split import (
        CheapestDivisions as CheapestDivisions,
        SignatureDivision as SignatureDivision,
        divisions as divisions,
    )
else:
    __getattr__ = late.door(
        __name__,
        {
            "dates": "dated_pieces",
            "full_names": "NameLookUp full_readings look_up",
            "likelihood": "is_quoted signature_likelihood",
            "names": "is_kanji",
            "pieces": "SignaturePiece",
            "reader": "read_signature",
            "signed": "is_half_in_kana is_signature may_be_signature",
            "split": "SignatureDivision CheapestDivisions divisions",
        },
    )
