"""What sort of word it is in plain words, for UniDic's terms and those of signatures.

>>> grammar_of("助動詞", "けり"), grammar_of("名詞-普通名詞-一般", "花")
('past, recalled or found', 'noun')
>>> grammar_of("art_name", ""), grammar_of("助動詞", "たり-完了")
('art name', 'lasting result')
"""

from __future__ import annotations

from inscribe import tables


@tables.cached()
def _by_part() -> dict[tuple[str, str], tuple[str, str]]:
    rows = tables.rows("grammar_words")
    return {(row["pos"], row["lemma"]): (row["en"], row["gloss"]) for row in rows}


def grammar_of(part_of_speech: str, lemma: str) -> str:
    """Return what sort of word it is, in plain words; nothing where that is not known."""
    if not part_of_speech or part_of_speech.isascii():  # signatures say it in English
        return part_of_speech.replace("_", " ").replace(":", " of ")
    return _row(part_of_speech, lemma)[0]


def gloss_of_auxiliary(part_of_speech: str, lemma: str) -> str:
    """Return what an auxiliary says, nothing for any other word."""
    return _row(part_of_speech, lemma)[1]


@tables.cached(4096)
def _row(part_of_speech: str, lemma: str) -> tuple[str, str]:
    known = _by_part()
    parts = part_of_speech.split("-")
    for count in range(len(parts), 0, -1):
        part = "-".join(parts[:count])
        if found := known.get((part, lemma)) or known.get((part, "")):
            return found
    return "", ""
