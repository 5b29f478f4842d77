"""Numbers of years, months, days and ages as they are said.

>>> year(7, SpokenDate("ねん", "nen")).romaji, month(4).romaji, day(24, with_unit=True).romaji
('shichinen', 'shigatsu', 'nijūyokka')
"""

from __future__ import annotations

from typing import NamedTuple


class SpokenDate(NamedTuple):
    """A reading: kana, modified Hepburn, and other romanised readings."""

    kana: str
    romaji: str
    also: tuple[str, ...] = ()


_DIGITS = (
    ("", ""),
    ("いち", "ichi"),
    ("に", "ni"),
    ("さん", "san"),
    ("し", "shi"),
    ("ご", "go"),
    ("ろく", "roku"),
    ("しち", "shichi"),
    ("はち", "hachi"),
    ("く", "ku"),
)
_EVERYDAY = {4: ("よん", "yon"), 7: ("なな", "nana"), 9: ("きゅう", "kyū")}
_DAYS = {
    1: ("ついたち", "tsuitachi"),
    2: ("ふつか", "futsuka"),
    3: ("みっか", "mikka"),
    4: ("よっか", "yokka"),
    5: ("いつか", "itsuka"),
    6: ("むいか", "muika"),
    7: ("なのか", "nanoka"),
    8: ("ようか", "yōka"),
    9: ("ここのか", "kokonoka"),
    10: ("とおか", "tōka"),
    14: ("じゅうよっか", "jūyokka"),
    20: ("はつか", "hatsuka"),
    24: ("にじゅうよっか", "nijūyokka"),
}
_HUNDREDS = {
    3: ("さんびゃく", "sanbyaku"),
    6: ("ろっぴゃく", "roppyaku"),
    8: ("はっぴゃく", "happyaku"),
}
_THOUSANDS = {3: ("さんぜん", "sanzen"), 8: ("はっせん", "hassen")}
_DOUBLED = {1: ("いっ", "is"), 8: ("はっ", "has"), 10: ("じゅっ", "jus")}  # before -sai, -sō


def _number(number: int, ones: dict[int, tuple[str, str]]) -> SpokenDate:
    """Return a number below 10000; ``ones`` replaces readings of the last digit."""
    kana = romaji = ""
    for unit, special, name in (
        (1000, _THOUSANDS, ("せん", "sen")),
        (100, _HUNDREDS, ("ひゃく", "hyaku")),
        (10, {}, ("じゅう", "jū")),
    ):
        digit = number // unit % 10
        if not digit:
            continue
        plain = _EVERYDAY.get(digit, _DIGITS[digit]) if digit > 1 else ("", "")
        parts = special.get(digit, (plain[0] + name[0], plain[1] + name[1]))
        kana, romaji = kana + parts[0], romaji + parts[1]
    digit = number % 10
    last = ones.get(digit, _DIGITS[digit])
    return SpokenDate(kana + last[0], romaji + last[1])


def year(number: int, unit: SpokenDate) -> SpokenDate:
    """Return the number of a year with 年 or another word for year after it."""
    four = {"nen": ("よ", "yo"), "": ("よん", "yon")}.get(unit.romaji, _DIGITS[4])
    said = _number(number, {4: four})
    return SpokenDate(said.kana + unit.kana, said.romaji + unit.romaji)


def month(number: int) -> SpokenDate:
    """Return the number of a month with 月 after it."""
    said = _number(number, {})
    return SpokenDate(said.kana + "がつ", said.romaji + "gatsu")


def day(number: int, *, with_unit: bool) -> SpokenDate:
    """Return a day of the month, with 日 written after it or not."""
    if number in _DAYS:
        kana, romaji = _DAYS[number]
        return SpokenDate(kana, romaji)
    said = _number(number, {})
    if not with_unit:
        return SpokenDate(said.kana, said.romaji)
    return SpokenDate(said.kana + "にち", said.romaji + "nichi")


def age(number: int) -> SpokenDate:
    """Return the number of an age by itself."""
    return _number(number, _EVERYDAY)


def counted_age(number: int, text: str, after: SpokenDate) -> SpokenDate:
    """Return an age with the word after it: rokujūhassai, nanajūsan-ō, nanajūsan rōjin."""
    said = age(number)
    if after.romaji == "sai":
        ones = number % 10 or (10 if number % 100 else 0)
        if ones in _DOUBLED:
            kana, romaji = _DOUBLED[ones]
            cut = {1: ("いち", "ichi"), 8: ("はち", "hachi"), 10: ("じゅう", "jū")}[ones]
            stem = SpokenDate(said.kana.removesuffix(cut[0]), said.romaji.removesuffix(cut[1]))
            return SpokenDate(stem.kana + kana + "さい", stem.romaji + romaji + "sai")
        return SpokenDate(said.kana + "さい", said.romaji + "sai")
    joint = "-" if len(text) == 1 else " "
    return SpokenDate(said.kana + after.kana, said.romaji + joint + after.romaji)
