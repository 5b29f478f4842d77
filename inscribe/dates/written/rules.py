"""The rules in the order they are tried.

Each takes the draft, the tokens and a position, fills the draft if it fits, and returns how many
tokens it used (0: it does not fit).
"""

from __future__ import annotations

from inscribe.dates.written.age_rules import age_word, number_as_age, preceded_age
from inscribe.dates.written.day_rules import (
    YEAR_PLACES,
    day_number,
    day_word,
    festival,
    first_of_branch,
    month,
    season,
)
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.look import Rule, Tokens, kind_at, number_at, piece
from inscribe.dates.written.pair_rules import damaged_pair, sexagenary, zodiac
from inscribe.dates.written.scanning import DateToken
from inscribe.dates.written.year_rules import (
    epoch,
    era,
    era_part,
    first_year,
    odd_number,
    unknown_era,
    year_number,
)

UNMISTAKABLE = "旹峕岢維"
_BLOCKED = {
    "era": ("era", "damaged_era", *YEAR_PLACES),
    "year": YEAR_PLACES,
    "month": ("months", "day"),
    "day": ("day", "days"),
}


def same(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """同年, 同月, 翌年: a date that rests on one named before."""
    if not kind_at(tokens, position, "same"):
        return 0
    unit, _, offset = tokens[position].meanings["same"].value.partition(":")
    if unit == "era" and not _year_follows(tokens, position + 1):
        return 0
    blocked = _BLOCKED[unit]
    known = draft.places.get("same", ())
    others = tuple(place for place in blocked if place != "same")
    if draft.has(*others) or not isinstance(known, tuple):
        return 0
    draft.fill(1, [piece(tokens[position], "same")], same=(*known, (unit, int(offset))))
    return 1


def _year_follows(tokens: Tokens, position: int) -> bool:
    """Return whether 五年 follows, as in 同五年."""
    return bool(number_at(tokens, position)) and kind_at(tokens, position + 1, "year")


def nothing_said(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """于時, 龍集 before a date; 之 and の within one; 夜 after a day."""
    if kind_at(tokens, position, "night") and draft.has("day", "day_word", "day_branch"):
        draft.fill(0, [piece(tokens[position], "night")])
        return 1
    token = tokens[position]
    if not draft.is_empty():
        kind = "intro" if token.can_be("intro") else "link"
    elif token.can_be("intro") and _may_open(token):
        kind = "intro"
    else:
        return 0
    if not token.can_be(kind):
        return 0
    draft.fill(0, [piece(token, kind)])
    return 1


def _may_open(token: DateToken) -> bool:
    """Return whether an introducing word cannot be the last sign of a name (萩次, 苗時)."""
    return len(token.text) > 1 or token.opens or token.text in UNMISTAKABLE


RULES: tuple[Rule, ...] = (
    preceded_age,
    epoch,
    era,
    unknown_era,
    odd_number,
    first_year,
    year_number,
    era_part,
    number_as_age,
    age_word,
    sexagenary,
    damaged_pair,
    zodiac,
    festival,
    month,
    season,
    first_of_branch,
    day_number,
    day_word,
    same,
    nothing_said,
)
