"""One value of a record file, held against what its field may hold."""

from __future__ import annotations

import math
import re
from datetime import date, datetime
from typing import Any

from inscribe.record.fields.describing import (
    FIRST_YEAR,
    LAST_YEAR,
    MAX_CELLS,
    MAX_LINE,
    MAX_MM,
    MAX_PIXELS,
    MAX_TEXT,
    PIXELS,
    VERSION,
    Field,
)

# Control characters, direction overrides and what XML cannot hold; line breaks are let through.
FORBIDDEN = (
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef"
    "\ufffe\uffff\ud800-\udfff]"
)
_DAY = r"[0-9]{4}-[0-9]{2}-[0-9]{2}"
_TYPE_NAMES = {
    bool: "true or false",
    int: "a whole number",
    float: "a number",
    str: "a text",
    list: "a list",
    dict: "a table",
    date: "a date",
}


class ValueRefused(Exception):  # noqa: N818 - it never reaches a user
    """A value that its field may not hold: what is wrong, and what was expected."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


def checked(field: Field, value: Any) -> Any:
    """Return the value as the model holds it.

    Raises:
        Refused: the field may not hold the value.
    """
    match field.holds:
        case "line" | "text":
            return _text(field, value)
        case "size" | "offset":
            return _size(field, value)
        case "sign" | "column":
            return _sign(field, value)
        case "signs":
            return _signs(field, value)
        case "share":
            return _share(field, value)
        case "corners" | "crop" | "point":
            return _pixels(field, value)
        case "cells":
            return _cells(field, value)
        case "version":
            return _version(field, value)
        case "year":
            return _year(field, value)
        case _:
            return _date(field, value)


def _wrong_type(field: Field, value: Any, expected: str) -> ValueRefused:
    name = _TYPE_NAMES.get(type(value), "a date or time")
    return ValueRefused(f"{field.key} is {name}", f"expected {expected}")


def _text(field: Field, value: Any) -> str:
    if not isinstance(value, str):
        raise _wrong_type(field, value, "a text in quotation marks")
    several_lines = field.holds == "text"
    text = value.rstrip("\n") if several_lines else value
    limit = MAX_TEXT if several_lines else MAX_LINE
    if len(text) > limit:
        raise ValueRefused(f"{field.key} has more than {limit:,} characters", "shorten it")
    if not text.replace("\n", "").isprintable() and (found := re.search(FORBIDDEN, text)):
        code = f"U+{ord(found[0]):04X}"
        raise ValueRefused(f"{field.key} contains a control character ({code})", "remove it")
    if "\n" in text and not several_lines:
        raise ValueRefused(f"{field.key} has more than one line", "write it on one line")
    if field.required and not text.strip():
        raise ValueRefused(f"{field.key} is empty", f"expected {field.about}")
    if field.choices and text not in field.choices:
        choices = ", ".join(field.choices[:-1]) + f" or {field.choices[-1]}"
        raise ValueRefused(f"{field.key} is {text[:40]!r}", f"expected {choices}")
    return text


def _size(field: Field, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _wrong_type(field, value, "a number of mm")
    if isinstance(value, float) and not math.isfinite(value):
        raise ValueRefused(f"{field.key} is not a finite number", "expected mm")
    if value < 0 or (value == 0 and field.holds == "size"):
        least = "0 or more" if field.holds == "offset" else "more than 0"
        raise ValueRefused(f"{field.key} is not a possible size in mm", f"expected {least}")
    if value > MAX_MM:
        hint = f"expected at most {MAX_MM:g} mm; is the unit or the decimal point wrong?"
        raise ValueRefused(f"{field.key} is larger than any fitting", hint)
    return float(value)


def _sign(field: Field, value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise _wrong_type(field, value, f"a {field.holds.rstrip('s')}'s number, counted from 1")
    if not 1 <= value <= MAX_TEXT:
        kind = field.holds.rstrip("s")
        hint = f"expected a number; {kind}s count from 1"
        raise ValueRefused(f"{field.key} names no {kind}", hint)
    return value - 1


def _version(field: Field, value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise _wrong_type(field, value, f"{VERSION}")
    if value != VERSION:
        known = f"this inscribe knows version {VERSION} of the keys of records"
        hint = "get a newer inscribe" if value > VERSION else f"write {VERSION}, or leave it away"
        raise ValueRefused(f"{field.key} is {value}, and {known}", hint)
    return value


def _signs(field: Field, value: Any) -> tuple[int, int]:
    if not isinstance(value, list) or len(value) != 2:
        raise _wrong_type(field, value, "the first and last sign, as in [3, 4]")
    first, last = (_sign(field, number) for number in value)
    if last < first:
        raise ValueRefused("the last sign stands before the first", "expected the first sign first")
    return first, last


def _share(field: Field, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _wrong_type(field, value, "a number from -1 to 1")
    if not -1 <= value <= 1:
        raise ValueRefused(f"{field.key} is no share", "expected a number from -1 to 1")
    return float(value)


def _pixels(field: Field, value: Any) -> tuple[float, ...]:
    count = PIXELS[field.holds]
    if not isinstance(value, list) or len(value) != count:
        raise _wrong_type(field, value, f"{count} numbers of pixels: {field.about}")
    for number in value:
        if isinstance(number, bool) or not isinstance(number, int | float):
            raise _wrong_type(field, value, "numbers of pixels")
        if not -MAX_PIXELS <= number <= MAX_PIXELS:
            raise ValueRefused(f"{field.key} lies in no picture", "expected pixels")
    return tuple(float(number) for number in value)


def _cells(field: Field, value: Any) -> tuple[tuple[str, str], ...]:
    expected = 'pairs of a heading and a cell, as in [["No.", "12"], ["Place", "back"]]'
    if not isinstance(value, list):
        raise _wrong_type(field, value, expected)
    if len(value) > MAX_CELLS:
        raise ValueRefused(f"{field.key} has more than {MAX_CELLS:,} cells", "divide the list")
    for pair in value:
        if not isinstance(pair, list) or len(pair) != 2:
            raise ValueRefused(f"{field.key} holds more than pairs", f"expected {expected}")
    each = field._replace(holds="text")
    for text in (text for pair in value for text in pair):
        _text(each, text)
    return tuple((heading, cell) for heading, cell in value)


def _year(field: Field, value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise _wrong_type(field, value, "a year, as in 1830")
    if not FIRST_YEAR <= value <= LAST_YEAR:
        hint = f"expected a year from {FIRST_YEAR} to {LAST_YEAR}"
        raise ValueRefused(f"{field.key} is no year in which a fitting was made", hint)
    return value


def _date(field: Field, value: Any) -> date:
    if isinstance(value, datetime):
        return value.date()
    if isinstance(value, date):
        return value
    if isinstance(value, str) and re.fullmatch(_DAY, value):
        try:
            return date.fromisoformat(value)
        except ValueError:
            expected = "expected a day that exists"
            raise ValueRefused(f"there is no {value}", expected) from None
    raise _wrong_type(field, value, "a day, as in 2026-01-31")
