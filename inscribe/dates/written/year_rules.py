"""The rules by which tokens fill era and year: 嘉永六年, 安政改元, 嘉永年間, 皇紀二千六百年."""

from __future__ import annotations

from inscribe.dates.model import DatePiece
from inscribe.dates.written import numerals
from inscribe.dates.written.age_rules import number_as_age
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.look import (
    Tokens,
    first_kind,
    kind_at,
    links,
    number_at,
    number_piece,
    piece,
    skip_links,
)
from inscribe.dates.written.unknown_eras import SURE, eras_like, had_year

FIRST_YEAR, LAST_YEAR = 1, 2700  # western years a carver may mean
# What a bare year number may be: a western year in plain digits, or one counted from 660 BC.
WESTERN_YEARS = range(1500, 2101)
KOKI_YEARS = range(2200, 2701)


ERAS = ("era", "damaged_era", "unknown_era")


def era(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """嘉永 before a year, and □永 with a sign that cannot be read."""
    kind = first_kind(tokens, position, "era", "damaged_era")
    if kind is None or draft.has(*ERAS, "epoch", "number", "same"):
        return 0
    token = tokens[position]
    text = token.meanings[kind].value.replace("■", "□")
    draft.fill(1, [piece(token, kind)], **{kind: text})
    return 1


def unknown_era(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """元緑 before a year: the name of no era; surely a date if it is like one with that year."""
    if not kind_at(tokens, position, "unknown_era"):
        return 0
    if draft.has(*ERAS, "epoch", "number", "same", "months"):
        return 0
    token = tokens[position]
    number = number_at(tokens, position + 1) or 1
    sure = any(like.share >= SURE and had_year(like.era, number) for like in eras_like(token.text))
    said = [piece(token, "unknown_era")._replace(kana=token.text, romaji=token.text)]
    draft.fill(2 if sure else 0, said, unknown_era=token.text.replace("■", "□"))
    return 1


def odd_number(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """天明零年, 天保△年: an era had no year zero, and △ is no number."""
    if draft.has("number", "numbers", "odd_number", "months"):
        return 0
    after_era = draft.last_kind() in (*ERAS, "link")
    token, unit = tokens[position], skip_links(tokens, position + 1)
    with_year = kind_at(tokens, unit, "year")
    if not token.can_be("unknown_number") and (token.number != 0 or not (after_era or with_year)):
        return 0
    if draft.pieces and not after_era:
        return 0
    said = (token.text, token.text)  # as it stands, for it is no number that can be said
    pieces = [DatePiece("odd_number", token.text, token.first, token.last, *said)]
    if with_year:
        pieces += [*links(tokens, position + 1, unit), piece(tokens[unit], "year")]
    draft.fill(2 if after_era else 0, pieces, odd_number=token.text)
    return len(pieces)


def era_part(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """年間, 年中, 初年, 末 after an era without a year."""
    if not draft.has("era") or draft.last_kind() not in ("era", "link"):
        return 0
    if draft.has("number", "stem", "branch", "months"):
        return 0
    at = position + (
        kind_at(tokens, position, "year") and kind_at(tokens, position + 1, "era_part")
    )
    if not kind_at(tokens, at, "era_part"):
        return 0
    if kind_at(tokens, at, "initial") and number_at(tokens, at + 1):
        return 0
    pieces = [piece(tokens[position], "year")] if at > position else []
    pieces.append(piece(tokens[at], "era_part"))
    draft.fill(1, pieces, era_part="".join(each.text for each in pieces))
    return len(pieces)


def first_year(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """元年 and 改元 after an era."""
    if draft.has("number") or not draft.has("era", "unknown_era"):
        return 0
    if kind_at(tokens, position, "kaigen"):
        draft.fill(1, [piece(tokens[position], "kaigen")], number=1, number_text="改元")
        return 1
    if not kind_at(tokens, position, "first"):
        return 0
    pieces = [piece(tokens[position], "first")]
    if kind_at(tokens, position + 1, "year"):
        pieces.append(piece(tokens[position + 1], "year"))
    draft.fill(1, pieces, number=1, number_text="元")
    return len(pieces)


def epoch(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """皇紀二千六百年, 西暦一九一二年."""
    number = number_at(tokens, position + 1)
    if not kind_at(tokens, position, "epoch") or not number or draft.has("epoch", "number"):
        return 0
    start = tokens[position].meanings["epoch"]
    if not FIRST_YEAR <= number + int(start.value) <= LAST_YEAR:
        return 0
    pieces = [piece(tokens[position], "epoch"), number_piece(tokens[position + 1], "year_number")]
    if kind_at(tokens, position + 2, "year"):
        pieces.append(piece(tokens[position + 2], "year"))
    text = tokens[position + 1].text
    draft.fill(2, pieces, number=number, number_text=text, epoch=int(start.value))
    return len(pieces)


def year_number(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """六年 after an era, 六 after an era, 三年 alone, 二千五百十三年 since the first emperor."""
    if draft.has("number", "numbers", "era_part"):
        return 0
    if draft.has("same") and draft.places["same"] != (("era", 0),):
        return 0
    number = number_at(tokens, position)
    if not number:
        return _damaged_number(draft, tokens, position)
    token, unit = tokens[position], skip_links(tokens, position + 1)
    with_year = kind_at(tokens, unit, "year")
    has_era = draft.has(*ERAS, "same")
    after_era = has_era and draft.last_kind() in (*ERAS, "link")
    if not with_year and not after_era and not _pair_with_year(tokens, position + 1):
        return 0
    if number_as_age(draft, tokens, position, test=True) or (draft.pieces and not has_era):
        return 0
    if not with_year and kind_at(tokens, position + 1, "month_unit"):
        return _year_and_month(draft, tokens, position)
    if not with_year and (kind_at(tokens, position + 1, "day_unit") or draft.has("months")):
        return 0
    pieces = [number_piece(token, "year_number")]
    if with_year:  # 九つのとし too
        pieces += [*links(tokens, position + 1, unit), piece(tokens[unit], "year")]
    places: dict[str, object] = {"number": number, "number_text": token.text}
    if not has_era and (start := _epoch_of(token.text, number)) is not None:
        places["epoch"] = start
    strength = 1 if has_era or "epoch" in places else 0
    draft.fill(strength + ("epoch" in places), pieces, **places)
    return len(pieces)


def _epoch_of(text: str, number: int) -> int | None:
    """Return what to add to a year number without an era, or None if it stands for no such year."""
    if number in WESTERN_YEARS and all(sign in numerals.DIGITS for sign in text):
        return 0
    return -660 if number in KOKI_YEARS and len(text) >= 4 else None


def _pair_with_year(tokens: Tokens, position: int) -> bool:
    """Return whether 丑年 or 癸丑年 follows, so that a number before it is a year's (六丑年)."""
    end = position + kind_at(tokens, position, "stem")
    return kind_at(tokens, end, "branch") and kind_at(tokens, skip_links(tokens, end + 1), "year")


def _damaged_number(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """十□年 or □年 after an era; □三年 alone is kept, and says nothing of the year."""
    kind = first_kind(tokens, position, "damaged_number", "unread")
    with_year = kind_at(tokens, position + 1, "year")
    if kind and draft.is_empty() and with_year:
        kept = [piece(tokens[position], kind), piece(tokens[position + 1], "year")]
        draft.fill(0, kept, number_text=tokens[position].text)
        return len(kept)
    if kind is None or not draft.has(*ERAS):
        return 0
    if kind == "unread" and not with_year and not kind_at(tokens, position + 1, "stem"):
        return 0
    token = tokens[position]
    values = numerals.possible_values(token.text) if kind == "damaged_number" else ()
    pieces = [piece(token, kind)]
    if with_year:
        pieces.append(piece(tokens[position + 1], "year"))
    draft.fill(1, pieces, numbers=values, number_text=token.text)
    return len(pieces)


def _year_and_month(draft: UnfinishedExpression, tokens: Tokens, position: int) -> int:
    """嘉永六十二月: year 6, month 12; but 嘉永十二月 is a month without a year."""
    token = tokens[position]
    if token.number is not None and token.number <= 12:
        return 0
    parts = numerals.split_off_last(token.text, 12)
    if parts is None or draft.has("months"):
        return 0
    head, tail = parts
    year, month = numerals.value_of(head), numerals.value_of(tail)
    cut = token.first + len(head)
    pieces = [
        DatePiece("year_number", head, token.first, cut - 1, value=str(year)),
        DatePiece("month_number", tail, cut, token.last, value=str(month)),
        piece(tokens[position + 1], "month_unit"),
    ]
    draft.fill(2, pieces, number=year, number_text=head, months=(month, month))
    return 2
