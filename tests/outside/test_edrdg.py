"""Tables of facts against EDICT, ENAMDICT and KANJIDIC2, of which they were not made.

Source: the dictionaries of the Electronic Dictionary Research and Development Group (Debian
packages edict, enamdict, kanjidic-xml). A reading is held where a dictionary has the word, or has
its parts or its signs so read. What the dictionaries have not is listed, with its reason, in
``explained.tsv``; another disagreement, or one that is gone, fails.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import edrdg
import jaconv
import pytest

from inscribe import tables
from inscribe.dates import calendar

READ = (
    "cities", "date_words", "day_words", "festivals", "month_names", "name_preferences",
    "name_endings", "passage_roles", "poets", "provinces", "seal_endings", "signature_parts",
    "solar_terms", "subjects", "surname_preferences", "techniques", "titles", "works",
    "place_names", "surnames",
)  # fmt: skip
ROMANISED = ("date_words", "day_words", "eras", "festivals", "month_names", "solar_terms")
ORDINALS = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth",
    "eleventh", "twelfth",
)  # fmt: skip
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
Said = tuple[str, str]


@cache
def explained() -> dict[str, set[Said]]:
    """Return what is listed of each check: the writing, and what the table says."""
    found: dict[str, set[Said]] = {}
    for line in Path(__file__).with_name("explained.tsv").read_text("utf-8").splitlines()[1:]:
        check, written, ours, _ = line.split("\t")
        found.setdefault(check, set()).add((written, ours))
    return found


def readings_in(table: str) -> Iterator[Said]:
    """Yield each writing and reading of a table."""
    for row in tables.rows(table):
        if "names" in row:  # 一宮=いちのみや:9168/いちみや:9498
            for name, _, read in (each.partition("=") for each in row["names"].split(";")):
                yield from ((name, one.partition(":")[0]) for one in read.split("/"))
        elif "readings" in row:
            yield from ((row["written"], r.partition(":")[0]) for r in row["readings"].split(";"))
        else:
            for cell in (row["kana"], row.get("also", "")):
                yield from ((row["written"], kana) for kana in tables.listed(cell))


@pytest.mark.parametrize("table", READ)
def test_readings_are_those_of_the_dictionaries(table: str) -> None:
    strange = {said for said in readings_in(table) if not edrdg.is_held(*said)}
    assert strange == explained().get(table, set())


def folded(romaji: str) -> str:
    """Return Latin letters as kana are typed: long vowels twice, no marks."""
    doubled = romaji.lower().translate(
        str.maketrans({"ā": "aa", "ī": "ii", "ū": "uu", "ē": "ee", "ō": "ou"})
    )
    return re.sub(r"[ '’-]", "", doubled).replace("oo", "ou").replace("cch", "tch")


@pytest.mark.parametrize("table", ROMANISED)
def test_latin_letters_are_those_of_jaconv(table: str) -> None:
    """Source: jaconv (PyPI, MIT licence), Hepburn of kana; every further one reads the signs."""
    strange = set()
    for row in tables.rows(table):
        first, *further = row["romaji"].split(";")
        if folded(first) != folded(jaconv.kana2alphabet(row["kana"])):
            strange.add((row["written"], first))
        for other in further:
            if not edrdg.is_held(row["written"], jaconv.alphabet2kana(folded(other))):
                strange.add((row["written"], other))
    assert strange == explained().get(f"{table}, romaji", set())


def differing(check: str, said: Callable[[str, str], set[str]], ours: Iterator[Said]) -> None:
    """Hold what the table says of words against what glosses say, where they say anything."""
    strange = set()
    compared = 0
    for written, value in ours:
        known = {each for gloss in edrdg.words(written).values() for each in said(written, gloss)}
        compared += bool(known)
        if known and value not in known:
            strange.add((written, value))
    assert strange == explained().get(check, set())
    assert compared > 5


def months_said(_: str, gloss: str) -> set[str]:
    """Return the lunar months that a gloss names: fourth month of the lunar calendar."""
    lunar = {
        str(n) for n, word in enumerate(ORDINALS, 1) if re.search(f"{word} (?:lunar )?month", gloss)
    }
    return lunar | set(re.findall(r"(\d+)(?:st|nd|rd|th) (?:lunar )?month", gloss))


def test_names_of_months_mean_the_month_that_edict_says() -> None:
    rows = tables.rows("month_names")
    differing("month", months_said, ((row["written"], row["month"]) for row in rows))


def days_said(_: str, gloss: str) -> set[str]:
    """Return the days that a gloss names, as month and day: 9th day of the 9th lunar month."""
    found = re.findall(r"(\d+)(?:st|nd|rd|th) day of the (\d+)", gloss)
    days = {f"{month}/{day}" for day, month in found}
    for number, name in enumerate(MONTHS, 1):
        days |= {f"{number}/{day}" for day in re.findall(rf"\b{name} (\d+)", gloss)}
        days |= {f"{number}/{d}" for d in re.findall(rf"(\d+)(?:st|nd|rd|th) of {name}", gloss)}
        for n, word in enumerate(ORDINALS, 1):
            days |= {f"{number}/{n}"} if f"{word} of {name}" in gloss else set()
    days |= {"12/30"} if "New Year's Eve" in gloss else set()
    return days | ({"1/1"} if "New Year's Day" in gloss else set())


def test_feasts_fall_on_the_day_that_edict_says() -> None:
    rows = tables.rows("festivals")
    ours = ((row["written"], f"{row['month']}/{row['day']}") for row in rows)
    differing("day", days_said, ours)


def test_solar_terms_fall_on_the_day_that_edict_says() -> None:
    compared = 0
    for row in tables.rows("solar_terms"):
        for gloss in edrdg.words(row["written"]).values():
            for day in days_said("", gloss) if "solar term" in gloss or "approx" in gloss else ():
                month, number = (int(part) for part in day.split("/"))
                compared += 1
                assert row["earliest"] <= f"{month:02}-{number:02}" <= row["latest"], row
    assert compared > 15


def test_eras_are_those_of_jmdict() -> None:
    """Source: JMdict as EDICT has it, 嘉永 [かえい] Kaei era (1848.2.28-1854.11.27)."""
    strange = set()
    compared = 0
    for era in calendar.by_name().values():
        if not any(" era" in gloss for gloss in edrdg.words(era.name).values()):
            strange.add((era.name, "no era of EDICT"))
        for gloss in edrdg.words(era.name).values():
            days = re.search(r"([A-Z][\w'-]*) era \((\d+)\.(\d+)\.(\d+)-(?:(\d+)\.)?", gloss)
            if days:
                compared += 1
                start = tuple(int(days[n]) for n in (2, 3, 4))
                if era.start != start:
                    strange.add((era.name, ".".join(map(str, era.start))))
                if days[5] and era.last != int(days[5]):
                    strange.add((era.name, f"to {era.last}"))
        if edrdg.words(era.name) and era_kana(era.name) not in edrdg.words(era.name):
            strange.add((era.name, era_kana(era.name)))
    assert strange == explained().get("eras", set())
    assert compared > 200


def short(romaji: str) -> str:
    return romaji.replace("ou", "o").replace("uu", "u")


def era_kana(name: str) -> str:
    return next(row["kana"] for row in tables.rows("eras") if row["written"] == name)


def test_sexagenary_names_are_those_of_edict() -> None:
    """Source: EDICT, 甲子 [きのえね] Wood Rat (1st year of the sexagenary cycle, ...)."""
    compared = 0
    for index in range(60):
        pair = calendar.pair(index)
        said = {
            kana
            for kana, gloss in edrdg.words(pair).items()
            if re.search(rf"\({index + 1}(st|nd|rd|th) year of the sexagenary", gloss)
        }
        stem, branch = (
            next(
                row
                for row in tables.rows("cycle")
                if row["kind"] == kind and row["written"] == sign
            )
            for kind, sign in zip(("stem", "branch"), pair, strict=True)
        )
        assert (int(stem["value"]), int(branch["value"])) == (index % 10, index % 12)
        compared += bool(said)
        there = edrdg.words(pair).keys()  # of a few EDICT has the Chinese sounds only
        joined = {stem["kun"] + branch["kun"], stem["kun"] + "の" + branch["kun"]}
        assert joined & there or len(there) == 1, pair
        assert folded(stem["kun_romaji"]) == folded(jaconv.kana2alphabet(stem["kun"]))
        assert folded(branch["kun_romaji"]) == folded(jaconv.kana2alphabet(branch["kun"]))
        for row in (stem, branch):
            on = jaconv.alphabet2kana(folded(row["on_romaji"]))
            assert on in edrdg.readings_of_signs()[row["written"]], row
    assert compared == 60


def test_short_names_of_provinces_mean_the_province_that_edict_says() -> None:
    compared = 0
    strange = set()
    for row in tables.rows("provinces"):
        meant = {
            folded(jaconv.kana2alphabet(kana))
            for p in row["province"].split(";")
            for kana in edrdg.words(p)
        }
        for gloss in edrdg.words(row["written"]).values():
            named = re.findall(
                r"([A-Z][\w']+) \(former province|another name for ([A-Z]\w+)", gloss
            )
            for each in {short(folded(a or b)) for a, b in named}:
                compared += 1
                if each not in {short(m) for m in meant}:
                    strange.add((row["written"], row["province"]))
    assert strange == explained().get("province", set())
    assert compared > 50


MODERN = {  # a classical verb's class: how its modern verb ends, by its last kana, and bends
    "下二": (dict(zip("うくぐすずつぬぶむる", "えけげせでてねべめれ", strict=True)), "v1"),
    "上二": (dict(zip("うくぐすずつぬぶむる", "いきぎしじちにびみり", strict=True)), "v1"),
}


def test_verbs_of_signatures_bend_as_their_modern_verbs_do() -> None:
    """Verbs that no row names bend by the four grades, but for those in す."""
    listed = {row["kana"]: row["class"] for row in tables.rows("signature_verbs")}
    rows = tables.rows("signature_parts")
    native = {row["native"] for row in rows if row["native"] and row["sort"] != "manner"}
    named = {kana for kana in native if kana[-1] in "うくぐすずつぬぶむる" and len(kana) > 1}
    unlisted = {kana: "四段" for kana in named - set(listed) if kana[-1] not in "すず"}
    strange = set()
    for kana, bends in {**listed, **unlisted}.items():
        ends, modern_class = MODERN.get(bends, ({}, "v1" if bends == "上一" else "v5"))
        modern = f"{kana[:-1]}{ends[kana[-1]]}る" if ends else kana
        if not any(each.startswith(modern_class) for each in edrdg.verb_classes(modern)):
            strange.add((kana, bends))
    assert strange == explained().get("signature_verbs", set())
