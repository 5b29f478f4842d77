"""Entries that are read as one word and shown as the several they are: 夏来, natsu ki.

What often stands together is likelier than its words alone, and a reader of Latin letters still
wants each word by itself. So such an entry keeps its one cost and its one place in the grammar,
and carries its words along: those of a noun or verb as ``verse_groups.tsv`` divides it,
those of particles and auxiliaries as the particles among them do.

>>> groups()["夏来", "なつ"].written
('夏', '来')
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.mecab import DictionaryEntry
from inscribe.reading.spelling import modern_kana

_TERMS = {
    "名詞": "名詞-普通名詞-一般",
    "代名詞": "代名詞",
    "連体詞": "連体詞",
    "動詞": "動詞-一般",
    "形容詞": "形容詞-一般",
    "助詞": "助詞-格助詞",
}
# Particles that stand apart after an auxiliary (めや, ずは); what bends is joined to it: ねど.
_APART = ("やは", "やも", "かも", "とも", "は", "も", "や")
_BOUNDARY = "|"
_TOLD_APART = str.maketrans({"/": " or ", ":": "=", ",": ";"})  # what divides cells


class WordGroup(NamedTuple):
    """The words of an entry: as written, in historical kana, and UniDic's terms for them."""

    written: tuple[str, ...]
    kana: tuple[str, ...]
    parts_of_speech: tuple[str, ...]


class Words(NamedTuple):
    """A word of a set phrase as its entry has it."""

    written: str
    kana: str
    part_of_speech: str
    gloss: str = ""


@tables.cached()
def groups() -> dict[tuple[str, str], WordGroup]:
    """Return the groups by the spelling and the historical kana of their entries."""
    found: dict[tuple[str, str], WordGroup] = {}
    for row in tables.rows("verse_groups"):
        written = tuple(row["written"].split())
        spoken = tuple(row["historical"].replace("-", "").split(" "))
        group = WordGroup(written, spoken, tuple(_TERMS[term] for term in row["pos"].split()))
        found["".join(written), "".join(spoken)] = group
    return found


def with_words(
    entry: DictionaryEntry, group: WordGroup | None, *, in_kana: bool
) -> DictionaryEntry:
    """Return the entry with its words, whose spelling is in kana or as the group has it."""
    if group is None:
        return entry
    words: list[Words] = []
    rest, said = entry.written, entry.kana
    for written, kana, term in zip(*group, strict=True):
        spelt = len(kana if in_kana else written)
        if len(words) == len(group.written) - 1:
            gloss = f"{''.join(group.written)} ({entry.gloss})" if entry.gloss else ""
            words.append(Words(rest, said.lstrip(_BOUNDARY), entry.part_of_speech, gloss))
            break
        particle = term.startswith("助詞")
        head, said = _cut(said, len(kana if particle else modern_kana(kana, "名詞")))
        words.append(Words(rest[:spelt], kana if particle else head, term))
        rest = rest[spelt:]
    if not all(word.written and word.kana for word in words):
        return entry
    return entry._replace(kana=" ".join(word.kana for word in words), parts=as_cell(words))


def as_cell(words: Sequence[Words]) -> str:
    """Return the words as an entry keeps them."""
    return "/".join(
        f"{word.written}:{word.part_of_speech}:{word.gloss.translate(_TOLD_APART)}"
        for word in words
    )


def _cut(said: str, count: int) -> tuple[str, str]:
    """Cut kana after ``count`` signs, those that tell where parts meet not counted.

    >>> _cut("もの|おもう", 2)
    ('もの', '|おもう')
    """
    taken = ""
    while count and said:
        count -= said[0] != _BOUNDARY
        taken, said = taken + said[0], said[1:]
    return taken.strip(_BOUNDARY), said


def divided(written: str, single: dict[str, list[DictionaryEntry]]) -> list[DictionaryEntry]:
    """Return the words of a string of particles, or of auxiliaries and the particle after them.

    Nothing where they are joined: にけり, ねど.
    """
    after = [end for end in _APART if written.endswith(end) and len(end) < len(written)]
    for particle in after:
        if any(entry.conjugation != "*" for entry in single.get(written[: -len(particle)], ())):
            return [single[written[: -len(particle)]][0], single[particle][0]]
    return []


def particles(
    written: str, single: dict[str, list[DictionaryEntry]], least: int = 2
) -> list[DictionaryEntry]:
    """Return the particles a string is made of, at least so many; nothing if it is not."""
    if not written:
        return []
    for length in range(len(written) - least + 1, 0, -1):
        known = [e for e in single.get(written[:length], ()) if e.part_of_speech.startswith("助詞")]
        rest = particles(written[length:], single, 1) if known else []
        if known and (rest or length == len(written)):
            return [known[0], *rest]
    return []
