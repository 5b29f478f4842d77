"""From text to the words and numbers a date can be made of.

>>> [(token.text, sorted(token.kinds)[0]) for token in scan("嘉永六年仲秋")]
[('嘉永', 'era'), ('六', 'number'), ('年', 'age_after'), ('仲秋', 'month')]
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from inscribe import tables
from inscribe.dates.calendar import by_name
from inscribe.dates.written import numerals
from inscribe.dates.written.unknown_eras import unknown_era_at
from inscribe.dates.written.unknown_numbers import unknown_number_at
from inscribe.dates.written.vocabulary import Meaning, words_from

UNREAD = "□■"
_YEAR_AND_MONTHS = ("歳暮春", "歳暮秋", "歳暮夏", "歳暮冬")
_SEPARATORS = re.compile(r"[\s　、，,・･.．。／/」「|｜]+")


class DateToken(NamedTuple):
    """A word or number and all it can mean; ``first`` and ``last`` are offsets in the text.

    ``opens``: it stands at the start of the text or after a separator, so that it cannot be the
    end of a name.
    """

    text: str
    first: int
    last: int
    meanings: Mapping[str, Meaning] = {}
    number: int | None = None
    opens: bool = False

    @property
    def kinds(self) -> frozenset[str]:
        """Everything the token can be."""
        return frozenset(self.meanings) | (frozenset({"number"}) if self.number else frozenset())

    def can_be(self, kind: str) -> bool:
        """Return whether the token can mean that."""
        return kind in self.meanings


def scan(text: str) -> tuple[DateToken, ...]:
    """Return the tokens of ``text`` in order; characters that mean nothing in a date are skipped.

    Words win over numbers where they are longer; a separator becomes a ``space`` token.
    """
    found: list[DateToken] = []
    position = 0
    while position < len(text):
        token = _token_at(text, position)
        if _is_era_before(found, position) and (odd := unknown_number_at(text, position)):
            token = _unread("unknown_number", odd, position)
        if token is not None:
            opens = position == 0 or (bool(found) and _ends_before(found[-1], position))
            found.append(token._replace(opens=True) if opens else token)
        position = token.last + 1 if token else position + 1
    return tuple(found)


def _ends_before(token: DateToken, position: int) -> bool:
    """Return whether ``token`` is a separator that ends where ``position`` begins."""
    return token.can_be("space") and token.last + 1 == position


def _is_era_before(found: list[DateToken], position: int) -> bool:
    return bool(found) and found[-1].can_be("era") and found[-1].last + 1 == position


def _token_at(text: str, position: int) -> DateToken | None:
    if separator := _SEPARATORS.match(text, position):
        meanings = {"space": Meaning("space", "", "", "")}
        return DateToken(separator.group(), position, separator.end() - 1, meanings)
    unknown = "" if _is_era(text, position - 2) else unknown_era_at(text, position)
    if unknown and not unknown.strip(UNREAD):
        return _unread("damaged_era", unknown, position) if len(unknown) > 1 else None
    damaged = _damaged_at(text, position)
    if unknown and (damaged is None or damaged.can_be("unread")):
        return _unread("unknown_era", unknown, position)
    if damaged:
        return damaged
    run = numerals.run_at(text, position)
    for word in words_from(text[position]):
        if len(word.text) <= len(run):
            break
        split = len(word.text) > 1 and _is_year_before_month(text, position)
        if text.startswith(word.text, position) and not split:
            last = position + len(word.text) - 1
            return DateToken(word.text, position, last, {m.kind: m for m in word.meanings})
    if run:
        return _number(run, position, text[position + len(run) : position + len(run) + 1])
    return None


def _is_year_before_month(text: str, position: int) -> bool:
    """Return whether 歳 is the year before a month's name: 庚午歳暮春, not the month 歳暮."""
    return text.startswith(_YEAR_AND_MONTHS, position)


def _is_era(text: str, position: int) -> bool:
    return position >= 0 and text[position : position + 2] in by_name()


# Patterns for damaged dates only, which are few.
_DAMAGED_NUMBER = (
    f"[{numerals.STARTS}{UNREAD}]{{1,{numerals.LONGEST}}}(?=[年秊季稔歳甲乙丙丁戊己庚辛壬癸])"
)
_YEAR_FOLLOWS = f"[{numerals.STARTS}{UNREAD}元甲乙丙丁戊己庚辛壬癸]"


def _damaged_at(text: str, position: int) -> DateToken | None:
    """Return an era, a number or a single sign that cannot (wholly) be read."""
    if not any(sign in text[position : position + 4] for sign in UNREAD):
        return None
    number = re.match(_DAMAGED_NUMBER, text[position : position + numerals.LONGEST + 1])
    if number and any(s in UNREAD for s in number.group()) and number.group().strip(UNREAD):
        return _unread("damaged_number", number.group(), position)
    name = text[position : position + 2]
    if len(name) == 2 and re.match(_YEAR_FOLLOWS, text[position + 2 :]) and _may_be_era(name):
        return _unread("damaged_era", name, position)
    if unread := re.match(f"[{UNREAD}]{{2,4}}(?=年)", text[position:]):
        return _unread("unread", unread.group(), position)
    return _unread("unread", text[position], position) if text[position] in UNREAD else None


def _unread(kind: str, text: str, position: int) -> DateToken:
    last = position + len(text) - 1
    return DateToken(text, position, last, {kind: Meaning(kind, text, "", text)})


def _may_be_era(name: str) -> bool:
    return "".join("□" if sign in UNREAD else sign for sign in name) in _damaged_eras()


@tables.cached()
def _damaged_eras() -> frozenset[str]:
    """Return every era name of two signs with one of them unreadable."""
    names = [name for name in by_name() if len(name) == 2]
    return frozenset(damaged for name in names for damaged in (f"□{name[1]}", f"{name[0]}□"))


def _number(run: str, position: int, following: str) -> DateToken:
    """Return the number at the start of a run of numeral signs.

    A run that is no number is cut so that the last number is as long as what follows allows: in
    一七十三翁 the age is 73, in 十二十二月 the month is 12.
    """
    whole = numerals.value_of(run)
    if whole is not None:
        return DateToken(run, position, position + len(run) - 1, number=whole)
    cut = next((c for c in range(1, len(run)) if _parts(run, c, following)), 1)
    value = numerals.value_of(run[:cut])
    return DateToken(run[:cut], position, position + cut - 1, number=value)


def _parts(run: str, cut: int, following: str) -> bool:
    """Return whether ``run`` is two numbers, the second one that may stand before ``following``."""
    first, second = numerals.value_of(run[:cut]), numerals.value_of(run[cut:])
    largest = {"月": 12, "日": 31}.get(following, 9999)
    return first is not None and second is not None and 0 < second <= largest
