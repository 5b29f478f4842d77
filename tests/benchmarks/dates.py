"""How fast dates are found, and how many made-up ones are resolved as they were made.

Run: ``python tests/benchmarks/dates.py``. The dates are made from the eras and the calendar in
twelve shapes; a text counts as right if year, month, leap month and day come back.
"""

from __future__ import annotations

import random
import timeit

from inscribe.dates import find, resolve
from inscribe.dates.calendar import cycle, eras, lunisolar
from inscribe.dates.written.numerals import as_kanji

SHAPES = [
    "{e}{n}年{p}{m}月{d}日",
    "{e}{n}{p}年{m}月{d}日",
    "于時{e}{n}{p}歳{m}月{d}日",
    "{e}{n}年{b}{m}月{d}日",
    "{e}{n}{b}年{m}月{d}日",
    "{e}{n}稔歳次{p}{m}月{d}日",
    "{e}{n}{p}{m}月{d}日作",
    "江戸住某作{e}{n}年{m}月{d}日",
    "{e}{p}{m}月{d}日",
    "維{e}{n}秊龍集{p}{m}月{d}日造之",
    "{e}第{n}{p}之歳{m}月{d}日",
    "{e}{n}年{m}月{d}日行年六十八歳",
]
WITHOUT = "あらざらむこの世のほかの思ひ出に今ひとたびの逢ふこともがな"
WITH = "於東都某造之嘉永六年癸丑仲秋吉日"


def made(chance: random.Random) -> tuple[str, lunisolar.LunarDay]:
    year = chance.randrange(1600, 1872)
    month = chance.choice(lunisolar.months_of(year))
    day = lunisolar.LunarDay(year, month.number, month.leap, chance.randrange(1, month.length + 1))
    era, number = eras.of_year(year)[-1]
    pair = cycle.pair(cycle.year_index(year))
    number_written = "元" if number == 1 else as_kanji(number)
    if chance.random() < 0.3:
        number_written = number_written.replace("二十", "廿").replace("三十", "卅")
    text = chance.choice(SHAPES).format(
        e=era.name,
        n=number_written,
        p=pair,
        b=pair[1],
        m=("閏" if month.leap else "") + ("正" if month.number == 1 else as_kanji(month.number)),
        d=as_kanji(day.day),
    )
    return text, day


def microseconds(text: str) -> float:
    find(text)
    return timeit.timeit(lambda: find(text), number=2000) / 2000 * 1e6


def main() -> None:
    chance = random.Random(1600)
    wrong = []
    for _ in range(5000):
        text, day = made(chance)
        found = resolve(text)
        if (found.year, found.month, found.leap, found.day) != (
            day.year,
            day.month,
            day.leap,
            day.day,
        ):
            wrong.append(text)
    print(f"made-up dates resolved as made   {5000 - len(wrong)} of 5000")
    for text in wrong[:10]:
        print(f"  not: {text}")
    print(f"a poem without a date            {microseconds(WITHOUT):8.1f} µs")
    print(f"a signature with a date          {microseconds(WITH):8.1f} µs")


if __name__ == "__main__":
    main()
