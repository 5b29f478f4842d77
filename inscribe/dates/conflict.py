"""Why the parts of a date may disagree: ranked explanations, each with what it would change.

The weights are judgements from practice (no source): a sign mistaken for a look-alike first, then
a year off by one or by ten, another era with a sign in common, and last another cycle of sixty.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.dates import calendar, cycle, eras
from inscribe.dates.expression import Expression
from inscribe.dates.model import DateReading, Explanation
from inscribe.dates.numerals import as_kanji

MOST = 8


def explanations_of(
    reading: DateReading, expression: Expression, between: tuple[int, int]
) -> tuple[Explanation, ...]:
    """Return the explanations of a conflict, the likeliest first, no two with the same reading."""
    found = [
        *_of_the_pair(reading, expression, between),
        *_of_the_number(reading, expression),
        *_of_the_era(reading, expression),
        *_of_the_cycle(reading, expression),
        *_of_the_leap_month(reading),
        *_of_the_day(reading),
    ]
    ranked = sorted(found, key=lambda each: -each.weight)
    unique = {(each.written, each.read): each for each in reversed(ranked)}
    return tuple(sorted(unique.values(), key=lambda each: -each.weight)[:MOST])


@tables.compiled
def lookalikes() -> frozenset[frozenset[str]]:
    """Return the pairs of signs taken for one another."""
    found = tables.rows("date_lookalikes", ("one", "other"))
    return frozenset(frozenset(cells) for cells, _ in found)


def are_alike(one: str, other: str) -> bool:
    """Return whether two signs are taken for one another in worn or running writing."""
    return frozenset((one, other)) in lookalikes()


def _year_name(era: eras.Era, number: int) -> str:
    return f"{era.name}{'元' if number == 1 else as_kanji(number)}年"


def _fits(expression: Expression, year: int) -> bool:
    return expression.branch is not None and bool(
        cycle.years_of(expression.stem, expression.branch, year, year)
    )


def _of_the_pair(
    reading: DateReading, expression: Expression, between: tuple[int, int]
) -> Iterator[Explanation]:
    """One or both signs of the sexagenary year are read wrongly."""
    if expression.branch is None:
        return
    written = (expression.stem or "") + expression.branch
    for year in _years_meant(reading, expression, between):
        right = cycle.pair(cycle.year_index(year))
        right = right if expression.stem else right[1]
        wrong_signs = [(a, b) for a, b in zip(written, right, strict=True) if a != b]
        if not wrong_signs:
            continue
        alike = all(are_alike(a, b) for a, b in wrong_signs)
        if alike:
            signs = " and ".join(f"{b} misread as {a}" for a, b in wrong_signs)
            weight, why = 0.9, f"{signs}: the signs look alike"
        elif len(wrong_signs) == 1 and expression.stem:
            a, b = wrong_signs[0]
            weight, why = 0.5, f"one of its two signs is wrong ({a} for {b})"
        else:
            weight, why = 0.3, "the sexagenary year is wrong and the era year right"
        yield Explanation(
            "sexagenary year",
            written,
            right,
            year,
            weight,
            f"read {right} ({year}) for {written}: {why}",
        )


def _years_meant(
    reading: DateReading, expression: Expression, between: tuple[int, int]
) -> list[int]:
    """Return the years the rest of the date names, against which the pair is held."""
    if reading.year is not None:
        return [reading.year]
    era = eras.by_name().get(expression.era or "")
    first, last = (era.first, era.last) if era else between
    if expression.stem is None or expression.branch is None:
        return []
    years = range(first, min(last, first + 80) + 1) if era else range(first, last + 1)
    one_right = (
        year
        for year in years
        if (pair := cycle.pair(cycle.year_index(year)))[0] == expression.stem
        or pair[1] == expression.branch
    )
    return [y for y in one_right if era or _alike_somewhere(expression, y)]


def _alike_somewhere(expression: Expression, year: int) -> bool:
    written = (expression.stem or "") + (expression.branch or "")
    right = cycle.pair(cycle.year_index(year))
    return all(a == b or are_alike(a, b) for a, b in zip(written, right, strict=True))


def _of_the_number(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The number of the year is wrong, in the same era."""
    era = eras.by_name().get(expression.era or "")
    if era is None or expression.number is None:
        return
    written = expression.number
    for number in range(1, min(era.years, 99) + 1):
        year = era.western(number)
        if number == written or (expression.branch and not _fits(expression, year)):
            continue
        weight, why = _number_weight(expression, number)
        if not expression.branch and weight < 0.5:
            continue
        read = _year_name(era, number)
        text = f"read {read} ({year}) for {era.name}{expression.number_text}年: {why}"
        yield Explanation("era year", expression.number_text, read, year, weight, text)


def _number_weight(expression: Expression, number: int) -> tuple[float, str]:
    """Return how likely the written number stands for ``number``, and why."""
    assert expression.number is not None
    written = expression.number_text
    right = "元" if number == 1 else as_kanji(number)
    if len(written) == len(right):
        wrong = [(a, b) for a, b in zip(written, right, strict=True) if a != b]
        if len(wrong) == 1 and are_alike(*wrong[0]):
            return 0.85, f"{wrong[0][1]} misread as {wrong[0][0]}"
    difference = abs(number - expression.number)
    if difference == 1:
        return 0.8, "the year is off by one"
    if difference in (10, 20):
        return 0.65, f"the year is off by {difference}"
    return 0.4, "the number of the year is wrong"


def _of_the_era(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """Another era is meant, most likely one that shares a sign."""
    if expression.era is None or expression.number is None:
        return
    for era in eras.by_name().values():
        year = era.western(expression.number)
        if era.name == expression.era or not era.has(year):
            continue
        if expression.branch and not _fits(expression, year):
            continue
        shared = _shared(era.name, expression.era)
        if shared is None or abs(year - (reading.year or year)) > 300:
            continue
        weight, why = shared
        if not expression.branch:
            weight -= 0.1
        read = _year_name(era, expression.number)
        text = f"read {read} ({era.romaji} {expression.number}, {year}): {why}"
        yield Explanation("era", expression.era, era.name, year, weight, text)
    if not expression.branch:
        yield from _continued(reading, expression)


def _continued(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The era had ended, and its years were counted on."""
    if reading.year is None:
        return
    for era, number in eras.of_year(reading.year):
        if number < 1 or era.name == "白鳳":
            continue
        read = _year_name(era, number)
        text = (
            f"{read} ({reading.year}) is the same year: the old era was counted on after it ended"
        )
        yield Explanation("era", expression.era or "", read, reading.year, 0.7, text)


def _shared(name: str, written: str) -> tuple[float, str] | None:
    """Return the weight of reading one era name for another, and why; None if they share nothing."""
    if name[0] == written[0]:
        return 0.6, f"the era name begins with the same sign as {written}"
    if name[-1] == written[-1]:
        return 0.45, f"the era name ends with the same sign as {written}"
    return None


def _of_the_cycle(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The sexagenary year is right and the era is not: the nearest years that carry it."""
    if expression.stem is None or expression.branch is None or reading.year is None:
        return
    if cycle.index_of(expression.stem, expression.branch) is None:
        return
    near = reading.year
    pair = expression.stem + expression.branch
    for year in cycle.years_of(expression.stem, expression.branch, near - 60, near + 60):
        named = [(era, number) for era, number in eras.of_year(year) if number > 0]
        if not named or any(era.name == expression.era for era, _ in named):
            continue
        names = " or ".join(_year_name(era, number) for era, number in named)
        weight = 0.25 - abs(year - near) / 1000
        text = f"{pair} is {names} ({year}): the sexagenary year is right and the era year is not"
        yield Explanation("another cycle", reading.era or "", names, year, weight, text)


def _of_the_leap_month(reading: DateReading) -> Iterator[Explanation]:
    """The year had no such leap month."""
    year, month = reading.year, reading.month
    if not reading.leap or year is None or not calendar.is_tabulated(year):
        return
    there = calendar.leap_month(year)
    if month is None or there == month:
        return
    written = f"閏{as_kanji(month)}月"
    if there is not None:
        read = f"閏{as_kanji(there)}月"
        text = f"read {read} for {written}: the leap month of {year} stood after month {there}"
        weight = 0.6 if abs(there - month) == 1 else 0.45
        yield Explanation("leap month", written, read, year, weight, text)
    read = f"{as_kanji(month)}月"
    text = f"read {read} for {written}: {year} had no leap month {month}"
    yield Explanation("leap month", written, read, year, 0.4, text)
    for near in range(year - 10, year + 11):
        if near != year and calendar.leap_month(near) == month:
            era, number = eras.of_year(near)[-1]
            name = _year_name(era, number)
            weight = 0.38 - abs(near - year) / 100
            text = f"{written} occurred in {name} ({near})"
            yield Explanation("leap month", str(year), name, near, weight, text)


def _of_the_day(reading: DateReading) -> Iterator[Explanation]:
    """The month had only 29 days."""
    if reading.day is None or reading.month is None or reading.year is None:
        return
    month = calendar.month_of(reading.year, reading.month, reading.leap)
    if month is None or reading.day <= month.length:
        return
    text = (
        f"read day {month.length} for day {reading.day}: the month had {month.length} days by "
        "computation"
    )
    yield Explanation("day", str(reading.day), str(month.length), reading.year, 0.5, text)
