"""Words as manuscripts cut them short: 思 for 思ひ, 吉野山 for 吉野の山."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.words import LATER, OKURIGANA_LEFT_OUT

# A character that is a form of a verb by itself (見 mi, 来 ki) is seldom a shortened 見え.
_WHOLE_VERBS = frozenset("見着似煮干射居来寝経得為")
SHORTENED = (
    "連用形-一般",
    "終止形-一般",
    "連体形-一般",
    "未然形-一般",
    "已然形-一般",
    "命令形",
    "連用形-イ音便",
    "連用形-促音便",
    "連用形-撥音便",
)
_AS_SUBJECT = 800  # what わが costs more as the subject of a clause
_WITHOUT_NO = 3500  # of a place: 志賀浦 for 志賀の浦
_WITHOUT_NO_NOUN = 6000  # of another noun: 鶯鳴 for 鶯の鳴く
TWO_NOUNS = re.compile("([\u4e00-\u9fff々]+)の([\u4e00-\u9fff々]+)")
_KANJI_ALONE = re.compile("[\u4e00-\u9fff々]{1,3}")
_KANJI = "([\u4e00-\u9fff]+)"
_WITH_OKURIGANA = re.compile(f"{_KANJI}[\u3041-\u3096]{{0,2}}{_KANJI}[\u3041-\u3096]")
_OKURIGANA_INSIDE = re.compile(f"{_KANJI}[いきぎしちにびみりえけげせてねべめれ]{_KANJI}")
_WITHOUT_OKURIGANA = 3500
_WITHOUT_INNER_KANA = 1800
_OLDER_RULES = 1500
_WITHOUT_SHI = 2000
_WHOLE_VERB = 2500
_WHOLE_ENDING = 1000  # both kana of an ending left out
_SHORT_BESIDE_NOUN = 1500
_SELDOM_SHORTENED = {
    "連用形-一般": 300,
    "終止形-一般": 500,
    "未然形-一般": 1500,
    "已然形-一般": 1000,
}


def shortened(
    entry: DictionaryEntry, stem: str, ending: str, usual_nouns: Collection[str]
) -> Iterator[DictionaryEntry]:
    """Yield a form as carved where okurigana were left out: 思 for 思ひ, 過る for 過ぐる."""
    more = _SELDOM_SHORTENED.get(entry.form, 0) + _SHORT_BESIDE_NOUN * (
        len(stem) > 1 and stem in usual_nouns
    )
    if stem in _WHOLE_VERBS:
        if ending[-1] == "よ":  # 見よ is miyo
            return
        more += _WHOLE_VERB
    if entry.form == "命令形" and ending[-1] != "よ":  # 行 for 行け: hardly ever
        return
    if len(ending) == 1:
        yield left_out(entry._replace(written=stem, cost=entry.cost + more))
    elif ending[0] == "し":  # 悲き for 悲しき
        more += _WITHOUT_SHI
        yield entry._replace(
            written=stem + ending[1:], cost=entry.cost + more, note=OKURIGANA_LEFT_OUT
        )
    elif len(ending) == 2 and ending[1] in "るれよ":
        cost = entry.cost + _WITHOUT_INNER_KANA + more
        yield entry._replace(written=stem + ending[1], cost=cost, note=OKURIGANA_LEFT_OUT)
        if ending[1] != "よ":  # 過は for 過ぐれば
            yield left_out(entry._replace(written=stem, cost=entry.cost + _WHOLE_ENDING + more))


def bare_compounds(entry: DictionaryEntry) -> Iterator[DictionaryEntry]:
    """Yield a compound noun without the okurigana of its parts: 雪折 for 雪折れ, 立姿 for 立ち姿.

    Most end in a verb, and may as well be one with its okurigana left out: they cost as much more.
    """
    yield from _bare(entry, _WITH_OKURIGANA)


def bare_inside(entry: DictionaryEntry) -> Iterator[DictionaryEntry]:
    """Yield a compound noun without the okurigana inside it: 渡舟 for 渡し舟."""
    yield from _bare(entry, _OKURIGANA_INSIDE)


def _bare(entry: DictionaryEntry, pattern: re.Pattern[str]) -> Iterator[DictionaryEntry]:
    match = pattern.fullmatch(entry.written)
    if match:
        yield left_out(entry._replace(written=match[1] + match[2], origin=LATER))


def inner_left_out(entry: DictionaryEntry) -> DictionaryEntry:
    """Return a form whose ending alone is written, as older rules had it: 暮す, 移ふ, 変る."""
    return entry._replace(cost=entry.cost + _OLDER_RULES, note=OKURIGANA_LEFT_OUT)


def left_out(entry: DictionaryEntry) -> DictionaryEntry:
    """Return a form as one written without its okurigana."""
    return entry._replace(cost=entry.cost + _WITHOUT_OKURIGANA, note=OKURIGANA_LEFT_OUT)


def as_subject(entry: DictionaryEntry, particle: int) -> Iterator[DictionaryEntry]:
    """Yield わが in one sign as a pronoun and its particle, before a verb: 我思ふ人."""
    if entry.kana == "わが" and len(entry.written) == 1:
        yield entry._replace(right_connection=particle, cost=entry.cost + _AS_SUBJECT)


def without_no(entry: DictionaryEntry, particle: int) -> Iterator[DictionaryEntry]:
    """Yield a noun in kanji behind which の, of the class ``particle``, is not written."""
    if particle and _KANJI_ALONE.fullmatch(entry.written):
        more = _WITHOUT_NO if "固有名詞" in entry.part_of_speech else _WITHOUT_NO_NOUN
        yield entry._replace(
            kana=f"{entry.kana} の",
            cost=entry.cost + more,
            note="の not written",
            right_connection=particle,
        )


def without_its_no(written: str, kana: str, known: Collection[str]) -> str:
    """Return 世の中, 若の浦 as manuscripts also write them, 世中, 若浦, unless that is a word.

    >>> without_its_no("世の中", "よのなか", ()), without_its_no("花の色", "はなのいろ", ("花色",))
    ('世中', '')
    """
    match = TWO_NOUNS.fullmatch(written)
    short = match[1] + match[2] if match else ""
    return short if short not in known and kana.count("の") == 1 else ""


def ends_in_a_verb(written: str, kana: str, stems: dict[str, set[str]]) -> bool:
    """Whether the last of several signs is a verb and its ending: 言問, 月待.

    >>> ends_in_a_verb("月待", "つきまち", {"待": {"ま"}})
    True
    """
    last = stems.get(written[-1], ()) if len(written) > 1 else ()
    return any(stem and kana[:-1].endswith(stem) for stem in last)
