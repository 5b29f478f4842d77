"""Whether a verb of verse is transitive, as EDICT says of the verb it has become.

消ゆ is 消える today, 消す still 消す; so which of the two 消 stands for hangs on を before it.
"""

from __future__ import annotations

from inscribe import tables
from inscribe.reading.lexicon import inflections
from inscribe.reading.words import ReadWord

UNTOLD = "不明"
_FINAL, _CONJUNCTIVE = "終止形-一般", "連用形-一般"


def transitivity(verb: ReadWord) -> str:
    """Return 他 of a transitive verb, 自 of another, 両 where it may be either, else 不明.

    >>> from inscribe.reading.verse.tagger import verse_words
    >>> [transitivity(verse_words(verb)[0]) for verb in ("消ゆ", "消す", "流るる")]
    ['自', '他', '自']
    """
    return _told().get((verb.written[:1], modern_form(verb)), UNTOLD)


def modern_form(verb: ReadWord) -> str:
    """Return the kana of the dictionary form that a classical verb has today: 流るる, ながれる."""
    conjugation = verb.conjugation.removeprefix("文語")
    endings = _endings(conjugation)
    if verb.form not in endings:
        return ""
    stem = verb.kana[: len(verb.kana) - len(endings[verb.form])]
    graded = "二段" in conjugation or "下一段" in conjugation
    return stem + (f"{endings[_CONJUNCTIVE]}る" if graded else endings[_FINAL])


@tables.cached()
def _endings(conjugation: str) -> dict[str, str]:
    return {each.form: each.modern for each in inflections(conjugation)}


@tables.cached()
def _told() -> dict[tuple[str, str], str]:
    return {(row["written"], row["kana"]): row["kind"] for row in tables.rows("verb_transitivity")}
