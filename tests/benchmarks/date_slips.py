"""How often the right year stands first, or among the first three, when a date contradicts itself.

Run: ``python tests/benchmarks/date_slips.py``. Dates of 1596-1912 are made, and one slip is put
into each, all slips of a kind being equally likely; "consistent" counts those that by chance give
another date that agrees with itself, which nothing can notice. The weights of the explanations
were set by judgement before this was measured, and not changed after.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable

from inscribe.dates import resolve
from inscribe.dates.calendar import cycle, eras
from inscribe.dates.meaning.mistakes import year_name
from inscribe.dates.written.lookalikes import are_alike
from inscribe.dates.written.numerals import as_kanji, value_of

Made = tuple[eras.Era, int, str]
DATES = 4000
NUMERALS = "一二三四五六七八九十"
KNOWN = [era for era in eras.by_name().values() if 1596 <= era.first <= 1868 and not era.court]


def year_off(made: Made, chance: random.Random, by: int) -> Made | None:
    era, number, pair = made
    wrong = number + chance.choice([-by, by])
    return (era, wrong, pair) if wrong > 0 else None


def sign_replaced(made: Made, chance: random.Random, alike: bool) -> Made | None:
    era, number, pair = made
    place = chance.randrange(2)
    others = [sign for sign in (cycle.STEMS, cycle.BRANCHES)[place] if sign != pair[place]]
    if alike:
        others = [sign for sign in others if are_alike(sign, pair[place])]
    if not others:
        return None
    return era, number, pair[:place] + chance.choice(others) + pair[place + 1 :]


def numeral_misread(made: Made, chance: random.Random) -> Made | None:
    era, number, pair = made
    written = as_kanji(number)
    ways = [
        written[:at] + other + written[at + 1 :]
        for at, sign in enumerate(written)
        for other in NUMERALS
        if are_alike(sign, other)
    ]
    wrong = value_of(chance.choice(ways)) if ways else None
    return (era, wrong, pair) if wrong else None


def other_era(made: Made, chance: random.Random) -> Made | None:
    era, number, pair = made
    alike = [
        other
        for other in KNOWN
        if other != era and (other.name[0] == era.name[0] or other.name[1] == era.name[1])
    ]
    return (chance.choice(alike), number, pair) if alike else None


SLIPS: dict[str, Callable[[Made, random.Random], Made | None]] = {
    "year off by one": lambda made, chance: year_off(made, chance, 1),
    "year off by ten": lambda made, chance: year_off(made, chance, 10),
    "numeral taken for a look-alike": numeral_misread,
    "cycle sign taken for a look-alike": lambda made, chance: sign_replaced(made, chance, True),
    "cycle sign taken for any other": lambda made, chance: sign_replaced(made, chance, False),
    "era taken for one that shares a sign": other_era,
}


def main() -> None:
    chance = random.Random(1603)
    made_of, first, third, consistent = Counter(), Counter(), Counter(), Counter()
    for _ in range(DATES):
        era = chance.choice(KNOWN)
        number = chance.randrange(1, min(era.years, 45) + 1)
        year = era.western(number)
        slip = chance.choice(list(SLIPS))
        wrong = SLIPS[slip]((era, number, cycle.pair(cycle.year_index(year))), chance)
        if wrong is None:
            continue
        found = resolve(year_name(wrong[0], wrong[1]) + wrong[2])
        made_of[slip] += 1
        consistent[slip] += found.agreement == "agrees"
        first[slip] += any(each.year == year for each in found.explanations[:1])
        third[slip] += any(each.year == year for each in found.explanations[:3])
    print(f"{'slip':38}{'dates':>7}{'first':>8}{'first 3':>9}{'consistent':>12}")
    for slip, number in made_of.items():
        shares = f"{first[slip] / number:8.1%}{third[slip] / number:9.1%}{consistent[slip]:12}"
        print(f"{slip:38}{number:7}{shares}")


if __name__ == "__main__":
    main()
