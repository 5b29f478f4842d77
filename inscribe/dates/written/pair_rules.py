"""The rules for sexagenary and zodiac years (and days): 癸丑, 癸の丑, 丑年, 庚申日."""

from __future__ import annotations

from inscribe.dates.model import DatePiece
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.look import (
    Tokens,
    first_kind,
    is_month_or_day,
    kind_at,
    links,
    number_at,
    piece,
    skip_links,
)
from inscribe.dates.written.scanning import DateToken

# The kinds of signs a pair may be made of; kana readings make one only together.
_HALVES = (
    ("stem", ("branch", "animal")),
    ("kana_stem", ("branch", "animal", "kana_branch")),
    ("literary_stem", ("literary_branch",)),
)


def sexagenary(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """癸丑, 癸の丑, 癸丑年, 癸丑之歳; of the day in 庚申日 or after a month."""
    stem, branch = _cycle_kinds(tokens, position)
    if stem is None or branch is None:
        return 0
    second = skip_links(tokens, position + 1)
    pieces = [piece(tokens[position], stem), *links(tokens, position + 1, second)]
    pieces.append(piece(tokens[second], branch))
    signs = (tokens[position].meanings[stem].value, tokens[second].meanings[branch].value)
    end = second + 1
    unit = skip_links(tokens, end)
    if kind_at(tokens, unit, "day_unit") or kind_at(tokens, unit, "night"):
        kind = "day_unit" if kind_at(tokens, unit, "day_unit") else "night"
        pieces += [*links(tokens, end, unit), piece(tokens[unit], kind)]
        return _day_pair(draft, pieces, signs, unit + 1 - position)
    if draft.has("stem", "odd_pair") or (
        draft.has("months") and draft.has("number", "branch", "same")
    ):
        return _day_pair(draft, pieces, signs, end - position)
    if draft.has("branch", "same"):
        return 0
    pieces += _year_unit(tokens, end)
    draft.fill(2, pieces, stem=signs[0], branch=signs[1])
    return _used(tokens, position, pieces)


def _cycle_kinds(tokens: Tokens, position: int) -> tuple[str | None, str | None]:
    """Return the kinds of a stem and a branch that follow each other from ``position`` on."""
    for stem, branches in _HALVES:
        if not kind_at(tokens, position, stem):
            continue
        second = skip_links(tokens, position + 1)
        if branch := first_kind(tokens, second, *branches):
            return stem, branch
    return None, None


def _day_pair(
    draft: UnfinishedExpression, pieces: list[DatePiece], signs: tuple[str, str], used: int
) -> int:
    if draft.has("day_branch"):
        return 0
    draft.fill(1, pieces, day_stem=signs[0], day_branch=signs[1])
    return used


def _year_unit(tokens: Tokens, position: int) -> list[DatePiece]:
    """Return the pieces of 年, 之歳, 年次 or 天 that close a sexagenary year."""
    unit = skip_links(tokens, position)
    kind = first_kind(tokens, unit, "year", "year_after_sign")
    if kind is None:
        return []
    if number_at(tokens, unit + 1):  # 癸丑 歳七十三: the word belongs to the age that follows
        dated = is_month_or_day(tokens, unit + 2) or kind_at(tokens, unit + 2, "age_after")
        if not dated:
            return []
    return [*links(tokens, position, unit), piece(tokens[unit], kind)._replace(kind="year")]


def _used(tokens: Tokens, position: int, pieces: list[DatePiece]) -> int:
    """Return how many tokens from ``position`` on the pieces cover."""
    end = position
    while end < len(tokens) and tokens[end].last <= pieces[-1].last:
        end += 1
    return end - position


def damaged_pair(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """癸□年, □丑年; 戌丑 where a pair must stand though it is none of the sixty."""
    if draft.has("stem", "branch", "odd_pair", "months", "same"):
        return 0
    second = skip_links(tokens, position + 1)
    kinds = (_half(tokens, position), _half(tokens, second))
    if "" in kinds or "unread" not in kinds + _odd(kinds):
        return 0
    closing = _year_unit(tokens, second + 1)
    after_year = draft.has("number", "numbers") or draft.last_kind() in ("era", "intro")
    if not closing and not (after_year and draft.has("era", "damaged_era", "number")):
        return 0
    pieces = [piece(tokens[position], kinds[0]), *links(tokens, position + 1, second)]
    pieces += [piece(tokens[second], kinds[1]), *closing]
    places = _damaged_places(tokens[position], tokens[second], kinds)
    if not places:
        return 0
    draft.fill(2 if closing else 1, pieces, **places)
    return _used(tokens, position, pieces)


def _half(tokens: Tokens, position: int) -> str:
    """Return what a token is as one half of a damaged or misread pair, or nothing."""
    kind = first_kind(tokens, position, "stem", "branch", "unread", "cycle_like")
    return kind if kind and len(tokens[position].text) == 1 else ""


def _odd(kinds: tuple[str, str]) -> tuple[str, ...]:
    """Return a mark that two halves, both legible, are not a stem and a branch."""
    return () if kinds == ("stem", "branch") else ("unread",)


def _damaged_places(
    first: DateToken, second: DateToken, kinds: tuple[str, str]
) -> dict[str, object]:
    if kinds == ("stem", "unread"):
        return {"stem": first.meanings["stem"].value}
    if kinds == ("unread", "branch"):
        return {"branch": second.meanings["branch"].value}
    if "unread" in kinds:
        return {}
    return {"odd_pair": first.text + second.text}


def zodiac(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """丑年, 六丑年, 巳八月; 庚申 is a pair and comes first; 子の日 is a day."""
    kind = next((k for k in ("branch", "animal") if kind_at(tokens, position, k)), None)
    if kind is None or draft.has("day_branch"):
        return 0
    token = tokens[position]
    sign, unit = token.meanings[kind].value, skip_links(tokens, position + 1)
    if kind_at(tokens, unit, "day_unit") and (draft.has("months") or kind == "branch"):
        pieces = [piece(token, kind), *links(tokens, position + 1, unit)]
        pieces.append(piece(tokens[unit], "day_unit"))
        draft.fill(0, pieces, day_branch=sign)
        return unit + 1 - position
    if draft.has("branch", "months", "same"):
        return 0
    closing = _year_unit(tokens, position + 1)
    if kind == "animal" and closing and kind_at(tokens, unit, "year_after_sign"):
        closing = []  # 竜天 is a name
    after_year = draft.last_kind() in ("year_number", "year", "first", "era", "intro")
    before_month = _starts_month(tokens, unit) and (draft.has("number", "era") or draft.is_empty())
    if not closing and not (after_year and draft.has("number", "era")) and not before_month:
        return 0
    strength = 2 if closing else int(draft.has("number", "era"))
    draft.fill(strength, [piece(token, kind), *closing], branch=sign)
    return 1 + len(closing)


def _starts_month(tokens: Tokens, position: int) -> bool:
    named = any(kind_at(tokens, position, kind) for kind in ("month", "season", "leap"))
    return named or bool(
        number_at(tokens, position) and kind_at(tokens, position + 1, "month_unit")
    )
