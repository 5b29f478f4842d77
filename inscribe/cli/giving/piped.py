"""Standard input, taken whole."""

from __future__ import annotations

import sys

from inscribe import files
from inscribe.errors import InputError, Place

STANDARD_INPUT = "-"


def read_standard_input(limit: int = files.MAX_BYTES) -> str:
    """Return all of standard input as text.

    Raises:
        InputError: it is not UTF-8, or longer than ``limit`` bytes.
    """
    data = sys.stdin.buffer.read(limit + 1)
    if len(data) > limit:
        raise InputError(
            f"the input is longer than the limit of {limit // 2**20} MiB",
            Place("standard input"),
            "use --lines or smaller pieces",
        )
    return files.decode(data, "standard input")


def read_transcription() -> str:
    """Return all of standard input, which is to be a transcription.

    Raises:
        InputError: it is not UTF-8, too long, or a document of another kind.
    """
    return files.transcribed(read_standard_input(), "standard input").strip("\n")
