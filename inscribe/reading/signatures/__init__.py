"""What a signature says: its parts, and its readings in Japanese order, ranked.

In reading order: ``reader`` (the way in), ``pieces`` and ``names`` (what a stretch could be),
``unlisted`` (words by rule), ``split`` (the likeliest division), ``formulas``, ``scope``, ``units``
and ``spans`` (Chinese order to Japanese), ``options`` (how each piece is read), ``dates``,
``seals``, ``likelihood`` (how much a text looks like a signature), ``full_names``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from inscribe import late

if TYPE_CHECKING:
    from inscribe.reading.signatures.full_names import full_readings as full_readings
    from inscribe.reading.signatures.likelihood import (
        is_quoted as is_quoted,
        signature_likelihood as signature_likelihood,
    )
    from inscribe.reading.signatures.reader import read_signature as read_signature
else:
    __getattr__ = late.door(
        __name__,
        {
            "full_names": "full_readings",
            "likelihood": "is_quoted signature_likelihood",
            "reader": "read_signature",
        },
    )
