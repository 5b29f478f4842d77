"""The particles and auxiliaries of classical verse as dictionary entries.

A form costs what its frequency in verse says (``glossary/verse/verse_frequencies.tsv``), else what
UniDic says. A frozen string of them, にけり, costs little more than its dearer part.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from inscribe import tables
from inscribe.reading.lexicon.connections import own_class
from inscribe.reading.lexicon.groups import Words, as_cell, divided, groups, particles, with_words
from inscribe.reading.lexicon.stems import ClassIndex
from inscribe.reading.mecab import DictionaryEntry

COST_FACTOR = 700  # MeCab's, from UniDic's dicrc
COST_CONSTANT = 1700  # so that the particle の costs what UniDic says
_PRONOUNS = frozenset("我吾")  # which verse has as what they are, and not for a kana
_PARTICLE_COST = {"格助詞": 6500, "係助詞": 6500, "接続助詞": 7000, "副助詞": 7500, "終助詞": 8500}
_LONG_FINAL_COST = 5500  # a final particle of two kana or more
_BORROWED_COST = 11500  # a particle written with a borrowed character that the table gives
_PARENT_COST = 12000  # or with the one that its kana was made from
_VOICED = dict(zip("かそてはと", "がぞでばど", strict=True))


def particle_entries(
    index: ClassIndex, costs: dict[tuple[str, int], int]
) -> Iterator[DictionaryEntry]:
    """Yield the particles and auxiliaries; ``costs`` are UniDic's, by spelling and class."""
    frequent = _frequency_costs()
    strings: list[tables.Row] = []
    single: dict[str, list[DictionaryEntry]] = {}
    given = {(row["written"], row["kana"]) for row in tables.rows("verse_particles")}
    for row in tables.rows("verse_particles"):
        if "連語" in row["pos"]:
            strings.append(row)
            continue
        written, kana, pos = row["written"], row["kana"], row["pos"].replace(",", "-")
        conjugation, form, gloss = row["conjugation"], row["form"], row["gloss"]
        number = _function_class(index, pos, conjugation, form, written)
        if number is None:
            continue
        default = _PARTICLE_COST.get(pos.partition("-")[2], 8500)
        if written != kana and len(written) == 1:
            default = _BORROWED_COST
        if pos.endswith("終助詞") and len(written) > 1:
            default = _LONG_FINAL_COST
        shape = form if conjugation == "*" else f"{conjugation}/{form.partition('-')[0]}"
        cost = frequent.get((written, pos, shape), costs.get((written, number), default))
        number = own_class(index.classes, number, written, kana)
        entry = DictionaryEntry(
            written, number, cost, kana, pos, conjugation, form, written, "和", gloss
        )
        single.setdefault(written, []).append(entry)
        yield with_words(entry, groups().get((written, written)), in_kana=True)
        if written == kana and pos.startswith("助詞") and not pos.endswith("終助詞"):
            for sign in parents().get(kana, ()):
                if (sign, kana) not in given and sign not in _PRONOUNS:
                    yield entry._replace(written=sign, cost=_PARENT_COST)
    for row in strings:
        for entry in _string_entries(row, single, index):
            own = frequent.get((entry.written, entry.part_of_speech, "*"))
            yield entry if own is None else entry._replace(cost=own)


@tables.cached()
def parents() -> dict[str, tuple[str, ...]]:
    """Return the characters that a kana was made from, which hands also write in their full form.

    >>> "二" in parents()["に"], "登" in parents()["と"]
    (True, True)
    """
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("manyogana"):
        if row["note"] == "kana":
            voiced = _VOICED.get(row["kana"], "")
            for kana in (row["kana"], *voiced):
                found[kana] = (*found.get(kana, ()), row["written"])
    return found


def _frequency_costs() -> dict[tuple[str, str, str], int]:
    """Return the costs of function words from how often verse has them.

    MeCab's cost is 700 times the negative logarithm of the probability, but for a constant; the
    constant is set so that the particle の costs what UniDic says.
    """
    costs: dict[tuple[str, str, str], int] = {}
    for row in tables.rows("verse_frequencies"):
        cost = int(COST_CONSTANT - COST_FACTOR * math.log(float(row["weight"]) / 1000))
        costs[row["written"], row["pos"], row["form"]] = cost
    return costs


def _string_entries(
    row: tables.Row, single: dict[str, list[DictionaryEntry]], index: ClassIndex
) -> Iterator[DictionaryEntry]:
    """Yield a fixed string of function words as one entry.

    Before it, it behaves like its first word, after it like its last: にけり follows what に
    follows, and is followed by what follows けり. It costs as much as the dearer of its words, so
    that the string is a little likelier than its words one by one.
    """
    written, kana, gloss = row["written"], row["kana"], row["gloss"]
    pos, form = row["pos"].partition(",")[0] + "-連語", row["form"]
    if written in _CONTRACTED:
        ending = index.number("動詞-一般", "文語四段-ハ行", "連体形-一般")
        head = single["と"][0]._replace(written=written, cost=_CONTRACTED_COST, kana=kana)
        assert ending is not None
        # as to iu would: a word of its own
        yield head._replace(part_of_speech="助詞-連語", right_connection=ending, gloss=gloss)
        return
    heads = [
        part for part in _parts(written, single, first=True) if part.part_of_speech[:2] == pos[:2]
    ]
    negative = written.startswith(_NEGATIVE)
    heads = [part for part in heads if (part.conjugation == _ZU) == negative] or heads
    tails = _parts(written, single, first=False)
    if not heads or not tails:
        return
    wanted = [tail for tail in tails if tail.form == form] or tails
    inside = particles(written, single) if pos.startswith("助詞") else divided(written, single)
    parts = as_cell([Words(part.written, part.kana, *_told(part)) for part in inside])
    spoken = " ".join(part.kana for part in inside) or kana
    for head in {entry.connection: entry for entry in heads}.values():
        cost = max(head.cost, wanted[0].cost) + _STRING_MORE
        yield DictionaryEntry(
            written,
            head.connection,
            cost,
            spoken,
            pos,
            row["conjugation"],
            form,
            written,
            "和",
            gloss,
            right_connection=wanted[0].connection,
            parts=parts,
        )


def _told(entry: DictionaryEntry) -> tuple[str, str]:
    return entry.part_of_speech, entry.gloss


def _parts(
    written: str, single: dict[str, list[DictionaryEntry]], *, first: bool
) -> list[DictionaryEntry]:
    for length in range(len(written) - 1, 0, -1):
        part = written[:length] if first else written[-length:]
        if part in single:
            return single[part]
    return []


_ZU = "文語助動詞-ズ"
_NEGATIVE = ("なく", "なふ")  # of ず; なむ, なば, なまし are of ぬ
_CONTRACTED = ("てふ", "ちふ", "とふ")  # to + iu run together
_CONTRACTED_COST = 7000
_STRING_MORE = 2500


# Auxiliaries UniDic has under another name, or not at all: the class that stands where they stand.
_LIKE = {
    "文語助動詞-ル": "文語下二段-ラ行",
    "文語助動詞-ラル": "文語下二段-ラ行",
    "文語助動詞-ス": "文語下二段-サ行",
    "文語助動詞-サス": "文語下二段-サ行",
    "文語助動詞-シム": "文語下二段-マ行",
    "文語助動詞-ムズ": "文語助動詞-ム",
    "文語助動詞-マシ": "文語助動詞-ム",
    "文語助動詞-マシジ": "文語助動詞-マジ",
    "文語助動詞-メリ": "文語助動詞-ナリ-伝聞",
    "文語助動詞-ユ": "文語下二段-ラ行",
    "文語助動詞-ラユ": "文語下二段-ラ行",
    "文語助動詞-タシ": "文語形容詞-ク",
    "文語助動詞-マホシ": "文語形容詞-ク",
}


def _function_class(
    index: ClassIndex, pos: str, conjugation: str, form: str, written: str
) -> int | None:
    for name in (conjugation, _LIKE.get(conjugation, conjugation)):
        for shape in (form, "終止形-一般", "連体形-一般"):
            if (number := index.number(pos, name, shape, written)) is not None:
                return number
    if pos == "助動詞" and (number := index.auxiliary(conjugation, form, written)) is not None:
        return number
    return index.number(pos, "文語助動詞-ム", "終止形-一般")
