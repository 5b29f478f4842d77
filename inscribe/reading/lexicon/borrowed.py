"""Forms that manuscripts write as Chinese is written, or end with a sign borrowed for its sound.

What stands before a verb and is read after it (不見 mizu, 可忘 wasurubeki) is in
``glossary/verse/verse_before_verbs.tsv``.
"""

from __future__ import annotations

from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.lexicon.stems import ClassIndex
from inscribe.reading.mecab import DictionaryEntry

CHINESE_ORDER = "written in Chinese order"
_CHINESE_ORDER_COST = 1500
_BORROWED = {"しき": ("敷", 2100), "しく": ("敷", 1500)}  # 嬉敷, 久敷: what it costs more


def in_chinese_order(
    entry: DictionaryEntry, stem: str, index: ClassIndex
) -> Iterator[DictionaryEntry]:
    """Yield a form of a verb whose auxiliary is written before it: 不見 mizu, 可忘 wasurubeki."""
    if len(stem) != 1:
        return
    for row in _before_verbs().get(entry.form, ()):
        right = index.auxiliary(row["conjugation"], row["form"], row["kana"])
        yield entry._replace(
            written=row["written"] + stem,
            kana=entry.kana + row["kana"],
            cost=entry.cost + _CHINESE_ORDER_COST,
            right_connection=-1 if right is None else right,
            note=CHINESE_ORDER,
        )


@tables.cached()
def _before_verbs() -> dict[str, list[tables.Row]]:
    """Return what is written before verbs, by the form of the verb that it wants."""
    found: dict[str, list[tables.Row]] = {}
    for row in tables.rows("verse_before_verbs"):
        found.setdefault(row["after"], []).append(row)
    return found


def borrowed_ending(entry: DictionaryEntry, stem: str, ending: str) -> Iterator[DictionaryEntry]:
    """Yield an adjective whose ending is written with a sign of that sound: 嬉敷, 久敷."""
    if ending in _BORROWED:
        sign, more = _BORROWED[ending]
        yield entry._replace(written=stem + sign, cost=entry.cost + more)
