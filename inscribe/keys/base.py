"""What values the keys of JSON hold: numbers that count, shares, days, in words and bounds.

A key is described by ``Annotated``: a text is said of it in the schema, a :class:`Keyword` stands
in the schema as it is. Of several texts the last comes first.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple


class Keyword(NamedTuple):
    """A keyword of JSON Schema and its value."""

    name: str
    value: float | str


FROM_ZERO = "counted from 0 (on the command line and in records from 1)"

Count = Annotated[int, Keyword("minimum", 0)]
Rank = Annotated[int, Keyword("minimum", 1), "the place in the ranking, from 1"]
Share = Annotated[float, Keyword("minimum", 0), Keyword("maximum", 1)]
Mm = Annotated[float, "in mm"]
Day = Annotated[str, Keyword("format", "date"), "a day of the Gregorian calendar, as 1853-02-08"]
Sign = Annotated[int, Keyword("minimum", 0), f"a sign, {FROM_ZERO}"]
Column = Annotated[int, Keyword("minimum", 0), f"a column, {FROM_ZERO}"]
Start = Annotated[int, Keyword("minimum", 0), f"the first sign, {FROM_ZERO}"]
End = Annotated[int, Keyword("minimum", 0), f"the sign after the last, {FROM_ZERO}"]
Difference = Annotated[int, Keyword("minimum", 0), f"a place in differences, {FROM_ZERO}"]
Line = Annotated[int, Keyword("minimum", 1), "a line of the file, counted from 1"]
Inscription = Annotated[
    int, Keyword("minimum", 1), "the number of the inscription on the object, counted from 1"
]
_TWO, _NO_MORE = Keyword("minItems", 2), Keyword("maxItems", 2)
Pair = Annotated[list[Count], _TWO, _NO_MORE]
Signs = Annotated[Pair, f"the first and the last sign, {FROM_ZERO}"]
Window = Annotated[Pair, f"the first sign, {FROM_ZERO}, and the one after the last"]
Lines = Annotated[Pair, "the first and the last line of the text, counted from 1"]
Reasons = Annotated[list[str], "why, the weightiest reason first"]
