"""Looking at the tokens round a position, and turning them into the pieces of a date."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from inscribe.dates.model import DatePiece
from inscribe.dates.written.expression import UnfinishedExpression
from inscribe.dates.written.scanning import DateToken

Tokens = Sequence[DateToken]
MOST_LINKS = 3  # in a row between two parts of a date
Rule = Callable[[UnfinishedExpression, Tokens, int], int]


def kind_at(tokens: Tokens, position: int, kind: str) -> bool:
    """Return whether there is a token at ``position`` that can be ``kind``."""
    return position < len(tokens) and tokens[position].can_be(kind)


def number_at(tokens: Tokens, position: int) -> int | None:
    """Return the number at ``position``, or None."""
    return tokens[position].number if position < len(tokens) else None


def piece(token: DateToken, kind: str) -> DatePiece:
    """Return the token as a piece of that kind."""
    meaning = token.meanings[kind]
    return DatePiece(
        kind,
        token.text,
        token.first,
        token.last,
        meaning.kana,
        meaning.romaji,
        meaning.value,
        meaning.also,
    )


def number_piece(token: DateToken, kind: str) -> DatePiece:
    """Return a number as a piece of that kind; its reading depends on what follows it."""
    return DatePiece(kind, token.text, token.first, token.last, value=str(token.number))


def skip_links(tokens: Tokens, position: int) -> int:
    """Return the first position from ``position`` on that is no link (之, の), of few."""
    furthest = position + MOST_LINKS
    while position < furthest and kind_at(tokens, position, "link"):
        position += 1
    return position


def links(tokens: Tokens, first: int, until: int) -> list[DatePiece]:
    """Return the link tokens from ``first`` up to ``until`` as pieces."""
    return [piece(token, "link") for token in tokens[first:until]]


def first_kind(tokens: Tokens, position: int, *kinds: str) -> str | None:
    """Return the first of the kinds that the token at ``position`` can be, or None."""
    return next((kind for kind in kinds if kind_at(tokens, position, kind)), None)


def is_month_or_day(tokens: Tokens, position: int) -> bool:
    """Return whether 月 or 日 stands at ``position``."""
    return first_kind(tokens, position, "month_unit", "day_unit") is not None
