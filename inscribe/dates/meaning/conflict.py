"""Why the parts of a date may disagree: ranked explanations, each with what it would change.

The weights are judgements from practice (no source): a sign mistaken for a look-alike first, then
a year off by one or by ten, another era with a sign in common, and last another cycle of sixty.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.dates import calendar
from inscribe.dates.meaning.candidates import DEFAULT_RANGE, pair_fits
from inscribe.dates.meaning.conflict_days import (
    of_the_day,
    of_the_leap_month,
    of_the_misplaced,
    of_the_odd_month,
    of_the_season,
)
from inscribe.dates.meaning.conflict_years import of_the_odd_number, of_the_unknown_era
from inscribe.dates.meaning.mistakes import pair_weight, year_name
from inscribe.dates.model import DateReading, Explanation
from inscribe.dates.written import Expression, are_alike, as_kanji

MOST = 8


def explanations_of(
    reading: DateReading, expression: Expression, between: tuple[int, int] | None
) -> tuple[Explanation, ...]:
    """Return the explanations of a conflict, the likeliest first, no two with the same reading."""
    found: list[Explanation] = []
    if "year" in reading.conflicts:
        found += _of_the_pair(reading, expression, between or DEFAULT_RANGE)
        found += _of_the_number(reading, expression)
        found += _of_the_era(reading, expression)
        found += of_the_unknown_era(reading, expression)
        found += of_the_odd_number(expression)
        found += _of_the_cycle(reading, expression)
    if "month" in reading.conflicts:
        found += of_the_leap_month(reading)
        found += of_the_season(reading)
        found += of_the_odd_month(reading, expression)
    if expression.misplaced:
        found += of_the_misplaced(reading, *expression.misplaced)
    elif "day" in reading.conflicts:
        found += of_the_day(reading, expression)
    if not found:
        text = "no year fits all that is written: look at each of its signs again"
        found.append(Explanation("year", "", "", None, 0.1, text))
    ranked = sorted(found, key=lambda each: -each.weight)
    unique = {(each.written, each.read): each for each in reversed(ranked)}
    return tuple(sorted(unique.values(), key=lambda each: -each.weight)[:MOST])


def _has_pair(expression: Expression) -> bool:
    return bool(expression.stem or expression.branch or expression.odd_pair)


def _of_the_pair(
    reading: DateReading, expression: Expression, between: tuple[int, int]
) -> Iterator[Explanation]:
    """One or both signs of the sexagenary year are read wrongly."""
    written = _written_pair(expression)
    if not written:
        return
    years = _years_meant(reading, expression, between)
    if not years and len(written) == 2 and not _is_pair(written[0], written[1]):
        yield _of_the_partners(written)
    for year in years:
        right = _right_signs(expression, year)
        wrong = [(a, b) for a, b in zip(written, right, strict=True) if a != b]
        if not wrong:
            continue
        weight, why = pair_weight(wrong, len(written))
        known = None if len(reading.candidates) > 1 else year
        in_year = f" ({known})" if known else ""
        text = f"read {right}{in_year} for {written}: {why}"
        yield Explanation("sexagenary year", written, right, known, weight, text)


def _of_the_partners(written: str) -> Explanation:
    """Say what each sign of a pair that does not exist may stand with."""
    stem, branch = written[0], written[1]
    stems = "".join(sign for sign in calendar.STEMS if _is_pair(sign, branch))
    branches = "".join(sign for sign in calendar.BRANCHES if _is_pair(stem, sign))
    parts = [f"{branch} goes only with {stems}"] if stems else []
    parts += [f"{stem} only with {branches}"] if branches else []
    text = ", ".join(parts) or f"neither sign of {written} is one of the cycle"
    return Explanation("sexagenary year", written, "", None, 0.2, text)


def _is_pair(stem: str, branch: str) -> bool:
    known = stem in calendar.STEMS and branch in calendar.BRANCHES
    return known and calendar.index_of(stem, branch) is not None


def _written_pair(expression: Expression) -> str:
    return expression.odd_pair or (expression.stem or "") + (expression.branch or "")


def _right_signs(expression: Expression, year: int) -> str:
    """Return the sexagenary name of ``year``, or the half of it that is written."""
    right = calendar.pair_of_year(year)
    return right if len(_written_pair(expression)) == 2 else right[expression.stem is None]


def _years_meant(
    reading: DateReading, expression: Expression, between: tuple[int, int]
) -> list[int]:
    """Return the years the rest of the date names, against which the pair is held."""
    if reading.year is not None:
        return [reading.year]
    if reading.candidates:
        return [each.year for each in reading.candidates]
    era = calendar.by_name().get(expression.era or "")
    first, last = (era.first, min(era.last, era.first + 99)) if era else between
    years = range(first, last + 1)
    return [year for year in years if _one_sign_is_wrong(expression, year, bool(era))]


def _one_sign_is_wrong(expression: Expression, year: int, in_era: bool) -> bool:
    """Return whether all but one sign are the year's, and that one (without an era) looks alike."""
    signs = zip(_written_pair(expression), _right_signs(expression, year), strict=True)
    wrong = [(a, b) for a, b in signs if a != b]
    return len(wrong) == 1 and (in_era or are_alike(*wrong[0]))


def _of_the_number(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The number of the year is wrong, in the same era."""
    era = calendar.by_name().get(expression.era or "")
    if era is None or expression.number is None:
        return
    written = expression.number
    for number in range(1, min(era.years, 99) + 1):
        year = era.western(number)
        if number == written or not pair_fits(year, expression):
            continue
        weight, why = _number_weight(expression, number)
        if not _has_pair(expression) and weight < 0.5:
            continue
        read = year_name(era, number)
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
    """Another era is meant, one that shares a sign with the era written."""
    if expression.era is None or expression.numbers or expression.odd_number:
        return
    near = reading.year or calendar.by_name()[expression.era].first
    for era in calendar.by_name().values():
        shared = _shared(era.name, expression.era)
        if era.name == expression.era or shared is None or abs(era.first - near) > 300:
            continue
        for number in _numbers_meant(era, expression):
            year = era.western(number)
            weight, why = shared
            weight -= abs(year - near) / 5000 + (0 if _has_pair(expression) else 0.1)
            read = year_name(era, number)
            text = f"read {read} ({era.romaji} {number}, {year}): {why}"
            yield Explanation("era", expression.era, era.name, year, weight, text)
    if not _has_pair(expression):
        yield from _continued(reading, expression)


def _numbers_meant(era: calendar.Era, expression: Expression) -> list[int]:
    """Return the years of another era that the rest of the date fits."""
    if expression.number:
        numbers = [expression.number] if expression.number <= era.years else []
    else:
        numbers = list(range(1, min(era.years, 99) + 1))
    return [number for number in numbers if pair_fits(era.western(number), expression)]


def _continued(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The era had ended, and its years were counted on."""
    if reading.year is None:
        return
    for era, number in calendar.of_year(reading.year):
        if number < 1 or era.name == "白鳳":
            continue
        read = year_name(era, number)
        text = (
            f"{read} ({reading.year}) is the same year: the old era was counted on after it ended"
        )
        yield Explanation("era", expression.era or "", read, reading.year, 0.7, text)


def _shared(name: str, written: str) -> tuple[float, str] | None:
    """Return the weight of reading one era name for another, and why; None if no sign is shared."""
    if name[0] == written[0]:
        return 0.6, f"the era name begins with the same sign as {written}"
    if name[-1] == written[-1]:
        return 0.45, f"the era name ends with the same sign as {written}"
    return None


def _of_the_cycle(reading: DateReading, expression: Expression) -> Iterator[Explanation]:
    """The sexagenary year is right and the era is not: the nearest years that carry it."""
    if expression.stem is None or expression.branch is None or reading.year is None:
        return
    if calendar.index_of(expression.stem, expression.branch) is None or expression.unknown_era:
        return
    near = reading.year
    pair = expression.stem + expression.branch
    for year in calendar.years_of(expression.stem, expression.branch, near - 60, near + 60):
        named = [(era, number) for era, number in calendar.of_year(year) if number > 0]
        if not named or any(era.name == expression.era for era, _ in named):
            continue
        names = " or ".join(year_name(era, number) for era, number in named)
        same_number = any(number == expression.number for _, number in named)
        weight = (0.35 if same_number else 0.25) - abs(year - near) / 1000
        also = ", the same year of another era" if same_number else ""
        why = f"the sexagenary year is right and the era year is not{also}"
        text = f"{pair} is {names} ({year}): {why}"
        yield Explanation("another cycle", reading.era or "", names, year, weight, text)
