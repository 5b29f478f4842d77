"""How a date is said: each of its words in kana and in modified Hepburn.

The convention is that of most catalogues (common practice, no source): Sino-Japanese numbers with
the counters of the calendar (yonen, shichinen, kunen; shigatsu, shichigatsu), days of the month in
their native reading (itsuka, hatsuka), ages in the everyday one (nanajūsan, rokujūhassai,
nanajūsan-ō), sexagenary years by their native names (癸丑 mizunoto-ushi; the Sino-Japanese reading,
kichū, is given beside it), era names capitalised. A sign that cannot be read stays □.

>>> from inscribe.dates import resolve
>>> " ".join(word.romaji for word in words(resolve("嘉永六年癸丑仲秋")))
'Kaei rokunen mizunoto-ushi chūshū'
>>> " ".join(word.romaji for word in words(resolve("行年七十三翁")))
'gyōnen nanajūsan-ō'
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from inscribe.dates import calendar
from inscribe.dates.meaning.spoken import SpokenDate, age, counted_age, day, month, year
from inscribe.dates.model import DatePiece, DateReading
from inscribe.scripts import hiragana


class SpokenWord(NamedTuple):
    """A word of a date as said; ``also`` are other romanised readings, the likelier first.

    ``first`` and ``last`` are offsets in the text that was searched.
    """

    text: str
    kana: str
    romaji: str
    first: int
    last: int
    also: tuple[str, ...] = ()


_UNREAD = frozenset("□■")
_BRANCHES = ("branch", "animal", "kana_branch", "literary_branch")
Pieces = Sequence[DatePiece]
_Taken = tuple[int, SpokenDate]


def words(reading: DateReading) -> tuple[SpokenWord, ...]:
    """Return the words of a date or age in order, each with its reading."""
    pieces, position = reading.pieces, 0
    found: list[SpokenWord] = []
    while position < len(pieces):
        taken, spoken = _next(pieces, position)
        group = pieces[position : position + taken]
        text = "".join(piece.text for piece in group)
        if spoken.romaji:
            word = SpokenWord(
                text, spoken.kana, spoken.romaji, group[0].first, group[-1].last, spoken.also
            )
            found.append(word)
        position += taken
    return tuple(found)


def _next(pieces: Pieces, position: int) -> _Taken:
    """Return how many pieces the next word is made of, and how it is said."""
    take = _WAYS.get(pieces[position].kind)
    return take(pieces, position) if take else (1, _plain(pieces[position]))


def _plain(piece: DatePiece) -> SpokenDate:
    return SpokenDate(piece.kana, piece.romaji, piece.also)


def _kind(pieces: Pieces, position: int) -> str:
    return pieces[position].kind if 0 <= position < len(pieces) else ""


def _era(pieces: Pieces, position: int) -> _Taken:
    from inscribe.dates.calendar import by_name

    era = by_name().get(pieces[position].value)
    return 1, SpokenDate(pieces[position].kana, pieces[position].romaji, era.also if era else ())


def _damaged_era(pieces: Pieces, position: int) -> _Taken:
    """Say the sign that is left of an era by the sound it has in eras: □政 …sei, 天□ Ten…."""
    import jaconv

    from inscribe.dates.calendar import by_name
    from inscribe.forms import readings

    name = pieces[position].text
    at = 0 if name[-1] in _UNREAD else 1
    like = [
        era.kana for era in by_name().values() if len(era.name) == 2 and era.name[at] == name[at]
    ]
    end = str.startswith if at == 0 else str.endswith
    sounds = [hiragana(on) for on in readings(name[at]).on]
    counts = {sound: sum(end(kana, sound) for kana in like) for sound in sounds}
    sound = max(counts, key=lambda each: (counts[each], len(each)), default="")
    if not sound or not counts[sound]:
        return 1, _plain(pieces[position])
    letters = str(jaconv.kana2alphabet(sound)).replace("ou", "ō").replace("uu", "ū")
    if at == 0:
        return 1, SpokenDate(f"{sound}□", f"{letters.capitalize()}□")
    return 1, SpokenDate(f"□{sound}", f"□{letters}")


def _year_number(pieces: Pieces, position: int) -> _Taken:
    number = int(pieces[position].value)
    if _kind(pieces, position + 1) == "year":
        return 2, year(number, _plain(pieces[position + 1]))
    return 1, year(number, SpokenDate("", ""))


def _first_year(pieces: Pieces, position: int) -> _Taken:
    if _kind(pieces, position + 1) == "year":
        return 2, SpokenDate(
            "がん" + pieces[position + 1].kana, "gan" + pieces[position + 1].romaji
        )
    return 1, _plain(pieces[position])


def _pair(pieces: Pieces, position: int) -> _Taken:
    end = position + 1
    while _kind(pieces, end) == "link":
        end += 1
    if _kind(pieces, end) not in _BRANCHES:
        return 1, _plain(pieces[position])
    stem, branch = pieces[position], pieces[end]
    signs = calendar.signs()
    first, second = signs[stem.value], signs[branch.value]
    on = f"{first.on_romaji}{second.on_romaji}"
    spoken = SpokenDate(stem.kana + branch.kana, f"{stem.romaji}-{branch.romaji}", (on,))
    return end + 1 - position, spoken


def _year_word(pieces: Pieces, position: int) -> _Taken:
    """Say 年 after a sexagenary year or a link: no toshi, toshi."""
    before = _kind(pieces, position - 1)
    if before == "link":
        return 1, SpokenDate("とし", "toshi")
    worn = before == "unread" and _kind(pieces, position - 2) == "stem"
    if before in _BRANCHES or worn:
        return 1, SpokenDate("のとし", "no toshi", (pieces[position].romaji,))
    return 1, _plain(pieces[position])


def _branch(pieces: Pieces, position: int) -> _Taken:
    """Say 丑年 ushidoshi; a branch in other company by its native name."""
    stands_alone = _kind(pieces, position - 1) in ("", "intro")
    if stands_alone and _kind(pieces, position + 1) == "year":
        piece = pieces[position]
        return 2, SpokenDate(
            piece.kana + "どし", piece.romaji + "doshi", (f"{piece.romaji} no toshi",)
        )
    return 1, _plain(pieces[position])


def _month_number(pieces: Pieces, position: int) -> _Taken:
    taken = 2 if _kind(pieces, position + 1) == "month_unit" else 1
    return taken, month(int(pieces[position].value))


def _leap(pieces: Pieces, position: int) -> _Taken:
    if _kind(pieces, position + 1) == "month_unit":
        return 2, SpokenDate("うるうづき", "urūzuki")
    return 1, _plain(pieces[position])


def _month_unit(pieces: Pieces, position: int) -> _Taken:
    """Say 仲秋月 chūshūgetsu, 仲秋の月 chūshū no tsuki."""
    if _kind(pieces, position - 1) == "link":
        return 1, SpokenDate("つき", "tsuki")
    return 1, SpokenDate("げつ", "getsu")


def _day_number(pieces: Pieces, position: int) -> _Taken:
    taken = 2 if _kind(pieces, position + 1) == "day_unit" else 1
    return taken, day(int(pieces[position].value), with_unit=taken == 2)


def _day_unit(pieces: Pieces, position: int) -> _Taken:
    if _kind(pieces, position - 1) in ("branch", "animal"):
        return 1, SpokenDate("のひ", "no hi")
    return 1, SpokenDate("ひ", "hi")


def _age_number(pieces: Pieces, position: int) -> _Taken:
    number = int(pieces[position].value)
    if _kind(pieces, position + 1) != "age_after":
        return 1, age(number)
    return 2, counted_age(number, pieces[position + 1].text, _plain(pieces[position + 1]))


_WAYS: dict[str, Callable[[Pieces, int], _Taken]] = {
    "era": _era,
    "damaged_era": _damaged_era,
    "year_number": _year_number,
    "first": _first_year,
    "stem": _pair,
    "kana_stem": _pair,
    "literary_stem": _pair,
    "year": _year_word,
    "branch": _branch,
    "animal": _branch,
    "month_number": _month_number,
    "leap": _leap,
    "month_unit": _month_unit,
    "day_number": _day_number,
    "day_unit": _day_unit,
    "age_number": _age_number,
}
