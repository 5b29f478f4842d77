"""From tokens to date expressions: which word fills which place in a date.

A run of tokens without anything else between them is read from left to right. At each point the
rules of :mod:`inscribe.dates.written.rules` are tried in order; a rule fills the places of one
expression (era, year, sexagenary year, month, day, age) and says how many tokens it used. A
place that is filled already, or a token that fits no rule, ends the expression.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.dates.model import Age, DatePiece
from inscribe.dates.written.age_rules import OLDEST
from inscribe.dates.written.expression import Expression, UnfinishedExpression
from inscribe.dates.written.look import piece
from inscribe.dates.written.rules import RULES
from inscribe.dates.written.scanning import DateToken, scan

_RECURRING = 1_000  # texts whose dates are kept: many objects bear the same
YOUNGEST = 10  # of those who sign with nothing but a number


@tables.cached(_RECURRING)
def expressions(text: str) -> tuple[Expression, ...]:
    """Return every date or age expression of ``text``, however weak, in order."""
    found: list[Expression] = []
    for run in _runs(scan(text)):
        found += _expressions_of(run)
    return tuple(found)


def _runs(tokens: tuple[DateToken, ...]) -> Iterator[list[DateToken]]:
    """Yield runs of tokens that follow each other without other characters between them."""
    run: list[DateToken] = []
    for token in tokens:
        if run and token.first != run[-1].last + 1:
            yield run
            run = []
        run.append(token)
    if run:
        yield run


def _expressions_of(run: list[DateToken]) -> list[Expression]:
    tokens = [token for token in run if not token.can_be("space")]
    found: list[Expression] = []
    draft, position = UnfinishedExpression(), 0
    while position < len(tokens):
        used = _apply(draft, tokens, position)
        if used:
            position += used
        elif draft.is_empty():
            position += 1
        else:
            found += draft.finished()
            draft = UnfinishedExpression()
    return found + draft.finished()


def _apply(draft: UnfinishedExpression, tokens: list[DateToken], position: int) -> int:
    """Let the first rule that fits fill the draft; return how many tokens it used."""
    for rule in RULES:
        used = rule(draft, tokens, position)
        if used:
            return used
    return 0


def bare_age(text: str) -> list[Expression]:
    """Return the age that a text is which is nothing but a number (七十有三), or nothing.

    >>> [each.age.years for each in bare_age("七十有三")]
    [73]
    """
    tokens = [token for token in scan(text) if not token.can_be("space")]
    if len(tokens) != 1 or not tokens[0].number or tokens[0].text != text.strip():
        return []
    token, years = tokens[0], tokens[0].number
    if not YOUNGEST <= years <= OLDEST:
        return []
    piece = DatePiece("age_number", token.text, token.first, token.last, value=str(years))
    return [Expression(age=Age(token.text, years), pieces=(piece,))]


def with_lone_stem(expression: Expression, text: str) -> Expression:
    """Return an expression with the one sign that ends its text, where that is a stem.

    It is what is left of the name of a year. In an inscription a name may begin so (甲斐); of a
    text that is a date this is not asked.

    >>> with_lone_stem(expressions("嘉永六年甲")[0], "嘉永六年甲").stem
    '甲'
    """
    tokens = scan(text)
    is_last = (
        len(tokens) > 1 and tokens[-2].last == expression.last and tokens[-1].last + 1 == len(text)
    )
    named = expression.stem or expression.branch or expression.odd_pair or expression.months
    if not is_last or named or not expression.era or not tokens[-1].can_be("stem"):
        return expression
    added = piece(tokens[-1], "stem")
    return expression._replace(stem=added.value, pieces=(*expression.pieces, added))
