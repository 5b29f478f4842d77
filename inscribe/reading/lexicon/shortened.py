"""Forms of verbs and adjectives as manuscripts cut them short: 思 for 思ひ."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.words import OKURIGANA_LEFT_OUT

# A character that is a form of a verb by itself (見 mi, 来 ki) is not a shortened 見え or 来たり.
WHOLE_VERBS = frozenset("見着似煮干射居来寝経得為")
SHORTENED = ("連用形-一般", "終止形-一般", "連体形-一般", "未然形-一般", "已然形-一般", "命令形")
_WITHOUT_OKURIGANA = 3500
_WITHOUT_INNER_KANA = 1800
_SHORT_BESIDE_NOUN = 1500
_SELDOM_SHORTENED = {
    "連用形-一般": 300,
    "終止形-一般": 500,
    "未然形-一般": 2000,
    "已然形-一般": 1400,
}


def shortened(
    entry: DictionaryEntry, stem: str, ending: str, usual_nouns: Collection[str]
) -> Iterator[DictionaryEntry]:
    """Yield a form as carved where okurigana were left out: 思 for 思ひ, 過る for 過ぐる."""
    more = _SELDOM_SHORTENED.get(entry.form, 0) + _SHORT_BESIDE_NOUN * (
        len(stem) > 1 and stem in usual_nouns
    )
    if entry.form == "命令形" and ending[-1] != "よ":  # 行 for 行け: hardly ever
        return
    if len(ending) == 1:
        yield left_out(entry._replace(written=stem, cost=entry.cost + more))
    elif len(ending) == 2 and ending[1] in "るれよ":
        cost = entry.cost + _WITHOUT_INNER_KANA + more
        yield entry._replace(written=stem + ending[1], cost=cost, note=OKURIGANA_LEFT_OUT)


def left_out(entry: DictionaryEntry) -> DictionaryEntry:
    """Return a form as one written without its okurigana."""
    return entry._replace(cost=entry.cost + _WITHOUT_OKURIGANA, note=OKURIGANA_LEFT_OUT)
