"""The closed lists of words that results and files use, each of them named once.

What is open (kinds of fitting, hands, parts of a signature) stands in the glossary instead.
"""

from __future__ import annotations

from typing import Literal, NewType

# The place of a sign in its transcription, from 0. A place in a text (an offset) is a plain int:
# ``NormalText.origin`` leads from one to the other, and mypy refuses an offset for a sign.
SignIndex = NewType("SignIndex", int)

# What an inscription says.
Register = Literal["verse", "signature", "prose"]
Kind = Literal["verse", "prose", "chinese", "heading", "signature", "date", "dedication", "seal"]
Role = Literal["composed", "wrote", "carved", "ordered"]  # what a person did who is named
# Dates.
Agreement = Literal["agrees", "conflict", "unchecked"]
Precision = Literal["day", "part of month", "month", "season", "year", "era", "none"]
Part = Literal["year", "month", "day"]
# A copy and its source.
GroupKind = Literal[
    "same", "form", "kana", "spelling", "replaced", "omitted", "added", "moved", "unread", "beside"
]
SourceKind = Literal["print", "manuscript", "painting", "modern edition"]
Verdict = Literal["forced", "eased", "undecided", "unexplained", "unmeasured"]
# Worn places, concordance, checks.
EvidenceKind = Literal[
    "source", "formula", "collection", "date", "metre", "lexicon", "frequency", "seen"
]
How = Literal[
    "same signs", "another form", "same sound", "sound but for length", "inflected", "pattern"
]
Severity = Literal["error", "contradiction", "doubt"]
# What blocks a record, the gravest first; what an index is of; what becomes of a row of a list.
Block = Literal["error", "contradiction", "unreadable", "name", "source", "other"]
IndexKind = Literal["persons", "places", "dates", "works", "lines", "formulas", "hands"]
RowFate = Literal["new", "changed", "same", "not ours", "left out"]
ComparedKind = Literal["agreed", "one legible", "one sure", "different"]  # of two transcriptions
