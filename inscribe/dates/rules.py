"""The rules by which tokens fill the places of a date: eras, years, months and days.

Each rule takes the draft, the tokens and a position, fills the draft if it fits, and returns how
many tokens it used (0: it does not fit). Ages have their own rules in ``age_rules``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from inscribe.dates import numerals
from inscribe.dates.age_rules import age_word, number_as_age, preceded_age
from inscribe.dates.expression import Draft
from inscribe.dates.model import Piece
from inscribe.dates.scan import Token

Tokens = Sequence[Token]
Rule = Callable[[Draft, Tokens, int], int]

YEAR_PLACES = ("number", "stem", "branch", "same")
LAST_DAY = "30"  # in the tables: the last day, of a short month too
EARLIEST_KOKI = 2200  # a bare year number from here on counts from 660 BC


def kind_at(tokens: Tokens, position: int, kind: str) -> bool:
    """Return whether there is a token at ``position`` that can be ``kind``."""
    return position < len(tokens) and tokens[position].can_be(kind)


def number_at(tokens: Tokens, position: int) -> int | None:
    """Return the number at ``position``, or None."""
    return tokens[position].number if position < len(tokens) else None


def piece(token: Token, kind: str) -> Piece:
    """Return the token as a piece of that kind."""
    meaning = token.meanings[kind]
    return Piece(
        kind, token.text, token.first, token.last, meaning.kana, meaning.romaji, meaning.value
    )


def number_piece(token: Token, kind: str) -> Piece:
    """Return a number as a piece of that kind; its reading depends on what follows it."""
    return Piece(kind, token.text, token.first, token.last, value=str(token.number))


def skip_links(tokens: Tokens, position: int) -> int:
    """Return the first position from ``position`` on that is no link (之, の)."""
    while kind_at(tokens, position, "link"):
        position += 1
    return position


def links(tokens: Tokens, first: int, until: int) -> list[Piece]:
    """Return the link tokens from ``first`` up to ``until`` as pieces."""
    return [piece(token, "link") for token in tokens[first:until]]


def days_meant(value: str) -> dict[str, object]:
    """Return the places that the days of a table fill: one day, several, or the month's last."""
    if not value:
        return {}
    first, _, last = value.partition("-")
    if last or first == LAST_DAY:
        return {"days": (int(first), int(last or first))}
    return {"day": int(first)}


def era(draft: Draft, tokens: Tokens, position: int) -> int:
    """嘉永六年, 嘉永六, 嘉永元年, 安政改元, 嘉永年間, 嘉永 before a sexagenary year."""
    if not kind_at(tokens, position, "era") or draft.has("era", "epoch", "stem", "number"):
        if not (draft.has("stem", "branch") and not draft.has("era", "number", "months")):
            return 0
        if not kind_at(tokens, position, "era"):
            return 0
    token = tokens[position]
    draft.fill(1, [piece(token, "era")], era=token.meanings["era"].value)
    return 1


def era_part(draft: Draft, tokens: Tokens, position: int) -> int:
    """年間, 初年, 末 after an era without a year."""
    if not kind_at(tokens, position, "era_part") or draft.last_kind() not in ("era", "link"):
        return 0
    if draft.has("number", "stem", "branch", "months") or not draft.has("era"):
        return 0
    if tokens[position].can_be("initial") and number_at(tokens, position + 1):
        return 0
    draft.fill(1, [piece(tokens[position], "era_part")], era_part=tokens[position].text)
    return 1


def first_year(draft: Draft, tokens: Tokens, position: int) -> int:
    """元年 and 改元 after an era."""
    if draft.has("number") or not draft.has("era"):
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


def epoch(draft: Draft, tokens: Tokens, position: int) -> int:
    """皇紀二千六百年, 西暦一九一二年."""
    number = number_at(tokens, position + 1)
    if not kind_at(tokens, position, "epoch") or not number or draft.has("epoch", "number"):
        return 0
    start = tokens[position].meanings["epoch"]
    pieces = [piece(tokens[position], "epoch"), number_piece(tokens[position + 1], "year_number")]
    if kind_at(tokens, position + 2, "year"):
        pieces.append(piece(tokens[position + 2], "year"))
    text = tokens[position + 1].text
    draft.fill(2, pieces, number=number, number_text=text, epoch=int(start.value))
    return len(pieces)


def year_number(draft: Draft, tokens: Tokens, position: int) -> int:
    """六年 after an era, 六 after an era, 三年 alone, 二千五百十三年 since the first emperor."""
    number = number_at(tokens, position)
    if not number or draft.has("number", "era_part", "same"):
        return 0
    token, with_year = tokens[position], kind_at(tokens, position + 1, "year")
    after_era = draft.last_kind() in ("era", "link") and draft.has("era")
    if not with_year and not after_era:
        return 0
    if not draft.has("era") and (number_as_age(draft, tokens, position, test=True) or draft.pieces):
        return 0
    if not with_year and kind_at(tokens, position + 1, "month_unit"):
        return _year_and_month(draft, tokens, position)
    if not with_year and (kind_at(tokens, position + 1, "day_unit") or draft.has("months")):
        return 0
    pieces = [number_piece(token, "year_number")]
    if with_year:
        pieces.append(piece(tokens[position + 1], "year"))
    places: dict[str, object] = {"number": number, "number_text": token.text}
    if not draft.has("era") and number >= 1000:
        places["epoch"] = -660 if number >= EARLIEST_KOKI else 0
    strength = 1 if draft.has("era") or "epoch" in places else 0
    draft.fill(strength + ("epoch" in places), pieces, **places)
    return len(pieces)


def _year_and_month(draft: Draft, tokens: Tokens, position: int) -> int:
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
        Piece("year_number", head, token.first, cut - 1, value=str(year)),
        Piece("month_number", tail, cut, token.last, value=str(month)),
        piece(tokens[position + 1], "month_unit"),
    ]
    draft.fill(2, pieces, number=year, number_text=head, months=(month, month))
    return 2


def sexagenary(draft: Draft, tokens: Tokens, position: int) -> int:
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
    if draft.has("stem") or (draft.has("months") and draft.has("number", "branch", "same")):
        return _day_pair(draft, pieces, signs, end - position)
    if draft.has("branch", "same"):
        return 0
    pieces += _year_unit(tokens, end)
    draft.fill(2, pieces, stem=signs[0], branch=signs[1])
    return _used(tokens, position, pieces)


def _cycle_kinds(tokens: Tokens, position: int) -> tuple[str | None, str | None]:
    """Return the kinds of a stem and a branch that follow each other from ``position`` on."""
    for stem, branches in (("stem", ("branch", "animal")), ("literary_stem", ("literary_branch",))):
        if not kind_at(tokens, position, stem):
            continue
        second = skip_links(tokens, position + 1)
        for branch in branches:
            if kind_at(tokens, second, branch):
                return stem, branch
    return None, None


def _day_pair(draft: Draft, pieces: list[Piece], signs: tuple[str, str], used: int) -> int:
    if draft.has("day_branch"):
        return 0
    draft.fill(1, pieces, day_stem=signs[0], day_branch=signs[1])
    return used


def _year_unit(tokens: Tokens, position: int) -> list[Piece]:
    """Return the pieces of 年, 之歳, or 年次 that close a sexagenary year."""
    unit = skip_links(tokens, position)
    if not kind_at(tokens, unit, "year") or number_at(tokens, unit + 1):
        # 癸丑 歳七十三: the word belongs to the age that follows
        follows_age = number_at(tokens, unit + 1) and not _is_month_or_day(tokens, unit + 2)
        if follows_age or not kind_at(tokens, unit, "year"):
            return []
    return [*links(tokens, position, unit), piece(tokens[unit], "year")]


def _is_month_or_day(tokens: Tokens, position: int) -> bool:
    return kind_at(tokens, position, "month_unit") or kind_at(tokens, position, "day_unit")


def _used(tokens: Tokens, position: int, pieces: list[Piece]) -> int:
    """Return how many tokens from ``position`` on the pieces cover."""
    end = position
    while end < len(tokens) and tokens[end].last <= pieces[-1].last:
        end += 1
    return end - position


def zodiac(draft: Draft, tokens: Tokens, position: int) -> int:
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
    after_year = draft.last_kind() in ("year_number", "year", "first", "era", "intro")
    before_month = _starts_month(tokens, unit) and draft.has("number", "era")
    if not closing and not (after_year and draft.has("number", "era")) and not before_month:
        return 0
    draft.fill(2 if closing else 1, [piece(token, kind), *closing], branch=sign)
    return 1 + len(closing)


def _starts_month(tokens: Tokens, position: int) -> bool:
    named = any(kind_at(tokens, position, kind) for kind in ("month", "season", "leap"))
    return named or bool(
        number_at(tokens, position) and kind_at(tokens, position + 1, "month_unit")
    )


def month(draft: Draft, tokens: Tokens, position: int) -> int:
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
    if number and number <= 12 and kind_at(tokens, at + 1, "month_unit"):
        pieces += [number_piece(tokens[at], "month_number"), piece(tokens[at + 1], "month_unit")]
        draft.fill(1, pieces, months=(number, number), leap=leap)
        return at + 2 - position
    if kind_at(tokens, at, "month"):
        return _named_month(draft, tokens[at], pieces, leap) and at + 1 - position
    if leap and kind_at(tokens, at, "month_unit"):
        draft.fill(1, [*pieces, piece(tokens[at], "month_unit")], leap=True)
        return at + 1 - position
    return 0


def _named_month(draft: Draft, token: Token, pieces: list[Piece], leap: bool) -> int:
    number = int(token.meanings["month"].value)
    pieces.append(piece(token, "month"))
    draft.fill(1, pieces, months=(number, number), month_word=token.text, leap=leap)
    return 1


def _in_season(draft: Draft) -> bool:
    months = draft.places["months"]
    return isinstance(months, tuple) and months[0] != months[1]


def _same_month_again(draft: Draft, tokens: Tokens, position: int) -> int:
    """八月 仲秋: a second name of the same month adds nothing."""
    if not kind_at(tokens, position, "month") or not draft.has("months"):
        return 0
    number = int(tokens[position].meanings["month"].value)
    if draft.places["months"] != (number, number):
        return 0
    draft.fill(0, [piece(tokens[position], "month")], month_word=tokens[position].text)
    return 1


def season(draft: Draft, tokens: Tokens, position: int) -> int:
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


def day_number(draft: Draft, tokens: Tokens, position: int) -> int:
    """五日, 初八日, 念三日, 十五 after a month."""
    at = position + (kind_at(tokens, position, "initial") and bool(number_at(tokens, position + 1)))
    number = number_at(tokens, at)
    if not number or number > 31 or draft.has("day", "days"):
        return 0
    with_unit = kind_at(tokens, at + 1, "day_unit")
    if not with_unit and not (draft.last_kind() in ("month_unit", "month") or at > position):
        return 0
    if not with_unit and number_as_age(draft, tokens, at, test=True):
        return 0
    pieces = [piece(tokens[position], "initial")] if at > position else []
    pieces.append(number_piece(tokens[at], "day_number"))
    if with_unit:
        pieces.append(piece(tokens[at + 1], "day_unit"))
    draft.fill(1 if draft.has("months", "same") else 0, pieces, day=number)
    return len(pieces)


def day_word(draft: Draft, tokens: Tokens, position: int) -> int:
    """吉日, 中浣, 望, 日 after a month."""
    kind = next((k for k in ("auspicious", "part", "day") if kind_at(tokens, position, k)), None)
    if kind is None:
        return 0
    token = tokens[position]
    plain = token.text == "日"
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


def _second_day_word(draft: Draft, token: Token, kind: str) -> int:
    """中浣吉日, 五日吉辰: a lucky day said after a day already named."""
    if kind != "auspicious" or draft.last_kind() == "auspicious":
        return 0
    word = f"{draft.places.get('day_word', '')}{token.text}"
    draft.fill(0, [piece(token, kind)], day_word=word)
    return 1


def festival(draft: Draft, tokens: Tokens, position: int) -> int:
    """端午, 正月元日, 重陽; 冬至 and the other solar terms."""
    if draft.has("day", "days", "term"):
        return 0
    if kind_at(tokens, position, "term"):
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
    if isinstance(stands, tuple) and not stands[0] <= month_number <= stands[1]:
        return 0
    draft.fill(
        1 if draft.has(*YEAR_PLACES, "months") else 0,
        [piece(token, "festival")],
        months=(month_number, month_number),
        day_word=token.text,
        **days_meant(day),
    )
    return 1


def same(draft: Draft, tokens: Tokens, position: int) -> int:
    """同年, 同月, 翌年: a date that rests on one named before."""
    if not kind_at(tokens, position, "same"):
        return 0
    unit, _, offset = tokens[position].meanings["same"].value.partition(":")
    blocked = {"year": YEAR_PLACES, "month": ("months", "day"), "day": ("day", "days")}[unit]
    known = draft.places.get("same", ())
    others = tuple(place for place in blocked if place != "same")
    if draft.has(*others) or not isinstance(known, tuple):
        return 0
    draft.fill(1, [piece(tokens[position], "same")], same=(*known, (unit, int(offset))))
    return 1


def nothing_said(draft: Draft, tokens: Tokens, position: int) -> int:
    """于時, 龍集 before a date; 之 and の within one; 夜 after a day."""
    if kind_at(tokens, position, "night") and draft.has("day", "day_word", "day_branch"):
        draft.fill(0, [piece(tokens[position], "night")])
        return 1
    for kind in ("intro", "link"):
        if kind_at(tokens, position, kind) and (kind == "intro" or not draft.is_empty()):
            draft.fill(0, [piece(tokens[position], kind)])
            return 1
    return 0


RULES: tuple[Rule, ...] = (
    preceded_age,
    epoch,
    era,
    first_year,
    year_number,
    era_part,
    number_as_age,
    age_word,
    sexagenary,
    zodiac,
    festival,
    month,
    season,
    day_number,
    day_word,
    same,
    nothing_said,
)
