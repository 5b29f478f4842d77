"""The rules by which tokens are read as an age: 行年六十八歳, 七十三翁, 年七十有三, 古希."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.dates.calendar import by_name
from inscribe.dates.model import Age, DatePiece
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.scanning import DateToken

OLDEST = 120
YOUNGEST_SURE = 7  # 三才 is rather heaven, earth and man
LONG_LIFE = 100  # 百歳 is rather a wish
NAME_ENDINGS = "寿満"  # in 政寿七十三翁 the sign is the name's
WESTERN = "満"
ABOUT = "余"
YEARISH = frozenset({"年", "秊", "歳", "才"})
WEAK_AFTER = frozenset({"年", "女", "余", "有余", "尼", "寿"})


def preceded_age(draft: UnfinishedExpression, tokens: Sequence[DateToken], position: int) -> int:
    """行年六十八歳, 齢七十, 年七十三, 行年古稀: a word for "aged" before a number or its word."""
    token = tokens[position]
    if not token.can_be("age_before") or draft.has("age"):
        return 0
    if token.text in NAME_ENDINGS and draft.is_empty() and not token.opens:
        return 0
    at = position + 1
    while at < len(tokens) and tokens[at].can_be("link"):
        at += 1
    if at < len(tokens) and tokens[at].can_be("age_before") and _is_age(tokens, at + 1):
        at += 1
    if token.text not in YEARISH and at < len(tokens) and tokens[at].can_be("age"):
        return at - position + _fill_word(draft, tokens, at, _before(tokens[position:at]))
    if not _is_age(tokens, at):
        return 0
    if token.text in YEARISH and draft.last_kind() in ("year_number", "first", "era"):
        return 0
    before = _before(tokens[position:at])
    return _fill(draft, tokens, at, before, strength=2) + at - position


def _before(tokens: Sequence[DateToken]) -> list[DatePiece]:
    """Return the words before an age as pieces."""
    return [_piece(each, "age_before" if each.can_be("age_before") else "link") for each in tokens]


def number_as_age(
    draft: UnfinishedExpression, tokens: Sequence[DateToken], position: int, *, test: bool = False
) -> int:
    """六十八歳, 七十三翁, 十三童: a number with a word for someone that old after it."""
    number = tokens[position].number
    if not number or number > OLDEST or draft.has("age"):
        return 0
    if position + 1 >= len(tokens) or not tokens[position + 1].can_be("age_after"):
        return 0
    after = tokens[position + 1]
    if after.text in YEARISH and not _can_be_age(draft, number, after):
        return 0
    if not _is_said_of(after, number):
        return 0
    if test:
        return 1
    if draft.last_kind() == "era":  # an era's name without a year is a man's: the age stands alone
        return 0
    weak = after.text in WEAK_AFTER or number < YOUNGEST_SURE or number == LONG_LIFE
    return _fill(draft, tokens, position, [], strength=1 if weak else 2)


def _can_be_age(draft: UnfinishedExpression, number: int, after: DateToken) -> bool:
    """Return whether 六歳 is an age here and not a year: 嘉永六歳 is a year, 六年 always."""
    if after.can_be("year") and after.text in ("年", "秊"):
        return False
    if not draft.has("era") or draft.has("number", "stem", "branch", "era_part"):
        return True
    return number > by_name()[str(draft.places["era"])].years + 1  # a name like an era's


def _is_said_of(after: DateToken, number: int) -> bool:
    """Return whether the word after a number is said of someone of that age.

    三老人 are three old men, 二童子 two boys.
    """
    youngest, _, oldest = after.meanings["age_after"].value.partition("-")
    return not youngest or int(youngest) <= number <= int(oldest)


def age_word(draft: UnfinishedExpression, tokens: Sequence[DateToken], position: int) -> int:
    """古希, 米寿翁: a word that stands for an age."""
    token = tokens[position]
    if not token.can_be("age") or draft.has("age"):
        return 0
    return _fill_word(draft, tokens, position, [])


def _fill_word(
    draft: UnfinishedExpression,
    tokens: Sequence[DateToken],
    position: int,
    before: list[DatePiece],
) -> int:
    """Fill the age from the word at ``position``; return the tokens used from there.

    The word alone may be part of something else; 行年古稀 is an age.
    """
    token = tokens[position]
    pieces = [*before, _piece(token, "age")]
    end = position + 1
    while end < len(tokens) and tokens[end].can_be("age_after"):
        pieces.append(_piece(tokens[end], "age_after"))
        end += 1
    years = int(token.meanings["age"].value)
    text = "".join(piece.text for piece in pieces)
    draft.fill(
        1 + (len(pieces) > 1), pieces, age=Age(text, years, about="旬" in text or "秩" in text)
    )
    return end - position


def _is_age(tokens: Sequence[DateToken], position: int) -> bool:
    """Return whether a number stands there that is an age and not a month or a day."""
    if position >= len(tokens):
        return False
    number = tokens[position].number
    if not number or number > OLDEST:
        return False
    following = tokens[position + 1] if position + 1 < len(tokens) else None
    return following is None or not (
        following.can_be("month_unit") or following.can_be("day_unit") or following.can_be("first")
    )


def _fill(
    draft: UnfinishedExpression,
    tokens: Sequence[DateToken],
    position: int,
    before: list[DatePiece],
    strength: int,
) -> int:
    """Fill the age from the number at ``position``; return the tokens used from there."""
    token = tokens[position]
    pieces = [
        *before,
        DatePiece("age_number", token.text, token.first, token.last, value=str(token.number)),
    ]
    end = position + 1
    while end < len(tokens) and tokens[end].can_be("age_after"):
        pieces.append(_piece(tokens[end], "age_after"))
        end += 1
    text = "".join(piece.text for piece in pieces)
    assert token.number is not None
    age = Age(text, token.number, about=ABOUT in text, western=WESTERN in text)
    draft.fill(strength, pieces, age=age)
    return end - position


def _piece(token: DateToken, kind: str) -> DatePiece:
    meaning = token.meanings[kind]
    return DatePiece(
        kind, token.text, token.first, token.last, meaning.kana, meaning.romaji, meaning.value
    )
