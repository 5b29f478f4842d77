"""The rules for month and day: 八月, 閏十一月, 仲秋, 春, 五日, 中浣, 吉日, 端午."""

from __future__ import annotations

from inscribe.dates.model import DatePiece
from inscribe.dates.written.age_rules import number_as_age
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.look import (
    Tokens,
    kind_at,
    links,
    number_at,
    number_piece,
    piece,
    skip_links,
)
from inscribe.dates.written.scanning import DateToken

MONTHS = 12
LARGEST_DAY = 99  # as a slip of the carver or the reader; the day is then a conflict
LAST_DAY = "30"  # in the tables: the last day, of a short month too
YEAR_PLACES = ("number", "stem", "branch", "same")


def month(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """八月, 閏十一月, 仲秋, 閏月, 八月の."""
    if draft.has("day", "days", "day_branch") or (
        "months" in draft.places and not _in_season(draft)
    ):
        return _same_month_again(draft, tokens, position)
    pieces, at = [], position
    leap = kind_at(tokens, at, "leap")
    if leap:
        pieces.append(piece(tokens[at], "leap"))
        at = skip_links(tokens, at + 1)
    number = number_at(tokens, at)
    if number and kind_at(tokens, at + 1, "month_unit"):
        pieces += [number_piece(tokens[at], "month_number"), piece(tokens[at + 1], "month_unit")]
        odd = {} if number <= MONTHS else {"odd_month": tokens[at].text}
        draft.fill(1, pieces, months=(number, number), leap=leap, **odd)
        return at + 2 - position
    if kind_at(tokens, at, "month"):
        return at - position + _named_month(draft, tokens, at, pieces, leap)
    if leap and kind_at(tokens, at, "month_unit"):
        draft.fill(1, [*pieces, piece(tokens[at], "month_unit")], leap=True)
        return at + 1 - position
    return 0


def _named_month(
    draft: UnfinishedExpression, tokens: Tokens, position: int, before: list[DatePiece], leap: bool
) -> int:
    """Fill 仲秋, also 仲秋月 and 仲秋之月; return the tokens used from its name on."""
    token = tokens[position]
    number = int(token.meanings["month"].value)
    pieces, end = [*before, piece(token, "month")], position + 1
    unit = skip_links(tokens, end)
    if kind_at(tokens, unit, "month_unit"):
        pieces += [*links(tokens, end, unit), piece(tokens[unit], "month_unit")]
        end = unit + 1
    draft.fill(1, pieces, months=(number, number), month_word=token.text, leap=leap)
    return end - position


def _in_season(draft: UnfinishedExpression) -> bool:
    months = draft.places["months"]
    return isinstance(months, tuple) and months[0] != months[1]


def _same_month_again(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """八月 仲秋: a second name of the month adds nothing; one of another (三月仲秋) contradicts."""
    if not kind_at(tokens, position, "month") or draft.last_kind() not in ("month_unit", "month"):
        return 0
    word, number = tokens[position].text, int(tokens[position].meanings["month"].value)
    if draft.places.get("months") == (number, number):
        draft.fill(0, [piece(tokens[position], "month")], month_word=word)
    else:
        draft.fill(0, [piece(tokens[position], "month")], misplaced=(word, number, None))
    return 1


def season(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """壬辰春, 春日, 秋之日, 春三月."""
    kind = next((k for k in ("season_day", "season") if kind_at(tokens, position, k)), None)
    if kind is None or draft.has("months", "day"):
        return 0
    token = tokens[position]
    first, last = (int(part) for part in token.meanings[kind].value.split("-"))
    places: dict[str, object] = {"months": (first, last), "season": token.text}
    if kind == "season_day":
        places |= {"season": token.text.removesuffix("日"), "day_word": "日"}
    draft.fill(1 if draft.has(*YEAR_PLACES, "era") else 0, [piece(token, kind)], **places)
    return 1


def day_number(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """五日, 初八日, 念三日, 十五 after a month, 中の五日 (the fifteenth)."""
    if draft.has("day", "days"):
        return 0
    before, add = _before_day(tokens, position)
    at = position + len(before)
    number = number_at(tokens, at)
    if not number or number + add > (LARGEST_DAY if kind_at(tokens, at + 1, "day_unit") else 31):
        return 0
    with_unit = kind_at(tokens, at + 1, "day_unit")
    if kind_at(tokens, at + 1, "month_unit"):
        return 0
    if not with_unit and not (before or draft.last_kind() in ("month_unit", "month")):
        return 0
    if not with_unit and number_as_age(draft, tokens, at, test=True):
        return 0
    pieces = [*before, number_piece(tokens[at], "day_number")]
    if with_unit:
        pieces.append(piece(tokens[at + 1], "day_unit"))
    draft.fill(1 if draft.has("months", "same") else 0, pieces, day=number + add)
    return len(pieces)


def _before_day(tokens: Tokens, position: int) -> tuple[list[DatePiece], int]:
    """Return the pieces of 初 or 中の before the number of a day, and what they add to it."""
    if kind_at(tokens, position, "initial") and number_at(tokens, position + 1):
        return [piece(tokens[position], "initial")], 0
    end = skip_links(tokens, position + 1)
    if kind_at(tokens, position, "third") and number_at(tokens, end) and end > position + 1:
        add = int(tokens[position].meanings["third"].value)
        return [piece(tokens[position], "third"), *links(tokens, position + 1, end)], add
    return [], 0


def first_of_branch(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """初午, 初卯日: the month's first day of that branch."""
    at = position + 1
    if not kind_at(tokens, position, "initial") or not kind_at(tokens, at, "branch"):
        return 0
    if draft.has("day", "days", "day_branch"):
        return 0
    pieces = [piece(tokens[position], "initial"), piece(tokens[at], "branch")]
    if kind_at(tokens, at + 1, "day_unit"):
        pieces.append(piece(tokens[at + 1], "day_unit"))
    strength = 1 if draft.has("months") else 0
    branch = tokens[at].meanings["branch"].value
    draft.fill(strength, pieces, day_branch=branch, day_turn=1)
    return len(pieces)


def day_word(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """吉日, 中浣, 望, 日 after a month."""
    kind = next((k for k in ("auspicious", "part", "day") if kind_at(tokens, position, k)), None)
    if kind is None:
        return 0
    token = tokens[position]
    plain = token.text == "日"
    if len(token.text) == 1 and kind == "auspicious" and not draft.has("months"):
        return 0
    if plain and not draft.has("months", "season"):
        return 0
    if kind == "day" and not plain and not draft.has("months", "number", "stem", "same"):
        return 0
    if (kind != "auspicious" and draft.has("day", "days")) or draft.has("day_word"):
        return _second_day_word(draft, token, kind)
    places: dict[str, object] = {"day_word": token.text}
    if not plain:
        places |= days_meant(token.meanings[kind].value)
    draft.fill(1, [piece(token, kind)], **places)
    return 1


def _second_day_word(draft: UnfinishedExpression, token: DateToken, kind: str) -> int:
    """中浣吉日, 五日吉辰: a lucky day said after a day already named."""
    if kind != "auspicious" or draft.last_kind() == "auspicious":
        return 0
    word = f"{draft.places.get('day_word', '')}{token.text}"
    draft.fill(0, [piece(token, kind)], day_word=word)
    return 1


def festival(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """端午, 端午之日, 正月元日, 重陽; 冬至 and the other solar terms.

    After a day (九月九日重陽) it adds nothing; one of another day or month contradicts.
    """
    if draft.has("term", "misplaced"):
        return 0
    if kind_at(tokens, position, "term") and not draft.has("day", "days"):
        first, last = tokens[position].meanings["term"].value.split()
        places: dict[str, object] = {"term": (first, last), "day_word": tokens[position].text}
        strength = 1 if draft.has(*YEAR_PLACES) else 0
        draft.fill(strength, [piece(tokens[position], "term")], **places)
        return 1
    if not kind_at(tokens, position, "festival"):
        return 0
    token = tokens[position]
    month_part, _, day = token.meanings["festival"].value.partition("-")
    month_number = int(month_part)
    stands = draft.places.get("months")
    filled: dict[str, object] = {"day_word": token.text}
    meant = days_meant(day)
    other_month = isinstance(stands, tuple) and not stands[0] <= month_number <= stands[1]
    if draft.has("days", "day_branch", "day_word") or (draft.has("day") and stands is None):
        return 0
    if other_month or (draft.has("day") and meant != {"day": draft.places["day"]}):
        filled["misplaced"] = (token.text, month_number, meant.get("day"))
    elif not draft.has("day"):
        filled |= {"months": (month_number, month_number), **meant}
    strength = 1 if draft.has(*YEAR_PLACES, "months") else 0
    pieces = [piece(token, "festival"), *_said_day(tokens, position + 1)]
    draft.fill(strength, pieces, **filled)
    return len(pieces)


def _said_day(tokens: Tokens, position: int) -> list[DatePiece]:
    """Return the pieces of 之日 after a day that has a name, or nothing."""
    unit = skip_links(tokens, position)
    if unit == position or not kind_at(tokens, unit, "day_unit"):
        return []
    return [*links(tokens, position, unit), piece(tokens[unit], "day_unit")]


def days_meant(value: str) -> dict[str, object]:
    """Return the places that the days of a table fill: one day, several, or the month's last."""
    if not value:
        return {}
    first, _, last = value.partition("-")
    if last or first == LAST_DAY:
        return {"days": (int(first), int(last or first))}
    return {"day": int(first)}
