"""Differences between source and copy: savings, slips, wordings, habits."""

from __future__ import annotations

from random import Random
from typing import NamedTuple

from carvers.carver_b.tables import (
    ENDINGS,
    HENTAI,
    OLDER,
    SENSE,
    SHORTER,
    SIMILAR,
    TEXTS,
    UNVOICED,
    VARIANTS,
    Pairs,
    is_kanji,
    need,
)
from carvers.carver_b.worlds import World
from carvers.contract import common_start


class Text(NamedTuple):
    """A source: its signs, where its lines start, and the span of its title or author line, if
    any.
    """

    signs: str
    starts: tuple[int, ...]
    name: tuple[int, int] | None


class Edit(NamedTuple):
    """Source signs first..last become `put`; last = first - 1 puts something in before `first`."""

    first: int
    last: int
    put: str
    cause: str


def choose_text(rng: Random) -> Text:
    """A source text, about half of them with a title or author line, some in older print."""
    name, _, poem = rng.choice(TEXTS).partition("|")
    poem = poem.replace("つつ", "つゝ") if rng.random() < 0.25 else poem
    for new, old in OLDER if rng.random() < 0.2 else []:
        poem = poem.replace(new, old)
    lines = poem.split("／")
    place = (
        None
        if not name or rng.random() < 0.5
        else 0
        if name == "題不知" or rng.random() < 0.35
        else len(lines)
    )
    if place is not None:
        lines.insert(place, name)
    starts = [sum(map(len, lines[:k])) for k in range(len(lines))]
    return Text(
        "".join(lines),
        tuple(starts),
        None if place is None else (starts[place], starts[place] + len(name) - 1),
    )


def changed(text: Text, table: Pairs, cause: str) -> list[Edit]:
    """Every place where a row of the table applies within one line of the verse, cut down to the
    signs that really differ.
    """
    found, named = list[Edit](), range(text.name[0], text.name[1] + 1) if text.name else range(0)
    for old, new in table:
        for i in range(len(text.signs) - len(old) + 1):
            broken = any(i < s < i + len(old) for s in text.starts) or i in named
            if old != new and not broken and text.signs.startswith(old, i):
                head = common_start(old, new)
                stop = head - 1 if head else None
                tail = common_start(old[:stop:-1], new[:stop:-1])
                found.append(
                    Edit(i + head, i + len(old) - tail - 1, new[head : len(new) - tail], cause)
                )
    return found


def closes(text: Text, i: int) -> bool:
    """Whether a word seems to end with sign i: the line ends, or a kanji follows."""
    return i + 1 == len(text.signs) or i + 1 in text.starts or is_kanji(text.signs[i + 1])


def small_words(text: Text, cause: str) -> list[Edit]:
    """Particles and okurigana one could leave out (guessed from their neighbours)."""
    s, found = text.signs, list[Edit]()
    for i in range(1, len(s)):
        fits = (is_kanji(s[i - 1]) and s[i] in "はもぞとるりれきくけしむふひみえちつ") or (
            s[i] in "のをに" and s[i - 1] not in "もこそか"
        )
        named = text.name and text.name[0] <= i <= text.name[1]
        found += (
            [Edit(i, i, "", cause)]
            if fits and closes(text, i) and i not in text.starts and not named
            else []
        )
    return found


def repeats(text: Text, cause: str) -> list[Edit]:
    """Repeated signs within a line that a repeat mark could stand for."""
    s, found = text.signs, list[Edit]()
    for i in range(1, len(s)):
        if s[i] == s[i - 1] and i not in text.starts and s[i] not in "ゝのに":
            found.append(Edit(i, i, "々" if is_kanji(s[i]) else "ゝ", cause))
        if (
            i > 1
            and len(s[i : i + 2]) == 2
            and s[i : i + 2] == s[i - 2 : i]
            and not {i - 1, i, i + 1} & set(text.starts)
        ):
            found.append(Edit(i, i + 1, "〱", cause))
    return found


def savers(text: Text) -> list[Edit]:
    """All that would save room."""
    lighter = [(old, new) for new, old in OLDER if len(new) == 1]
    name = [Edit(*text.name, "", "space")] * 3 if text.name else []
    return (
        changed(text, SHORTER + lighter, "space")
        + small_words(text, "space")
        + repeats(text, "space")
        + name
    )


def skips(text: Text) -> list[Edit]:
    """Leaps of the eye from a sign or word to the same one further on, longer likenesses counted
    more often.
    """
    s, found = text.signs, list[Edit]()
    starts = [(length, at) for length in (1, 2, 2, 3) for at in range(len(s) - length)]
    for k, i in starts:
        j = s.find(s[i : i + k], i + k + 1, i + 14)
        found += (
            [Edit(i + k, j + k - 1, "", "slip")]
            if j > 0 and (k > 1 or is_kanji(s[i]) or i + 1 in text.starts)
            else []
        )
    return found


def slips(rng: Random, text: Text) -> list[Edit]:
    """Slips of one kind, picked at random among the kinds this text allows."""
    s = text.signs
    doubles = [
        Edit(i, i + k - 1, "", "slip")
        for k in (1, 2)
        for i in range(k, len(s) - k + 1)
        if s[i - k : i] == s[i : i + k]
    ]
    twice = [
        Edit(i, i - 1, s[i - k : i], "slip")
        for k in (1, 1, 2)
        for i in range(k, len(s))
        if i in text.starts or k == 1
    ]
    forgotten = [Edit(i, i, "", "slip") for i in range(1, len(s))]
    kinds = (
        [skips(text)] * 2
        + [doubles] * 2
        + [twice]
        + [forgotten] * 2
        + [small_words(text, "slip")] * 2
    )
    return rng.choice(
        [
            kind
            for kind in kinds
            + [changed(text, SENSE, "slip")] * 2
            + [changed(text, SIMILAR, "slip")]
            if kind
        ]
    )


def wordings(rng: Random, text: Text) -> list[Edit]:
    """What a differing print may have had; single kana differ only where a word ends."""
    extra = [
        Edit(i, i - 1, rng.choice("のはもぞ"), "wording")
        for i in text.starts[1:]
        if is_kanji(text.signs[i - 1])
    ]
    kana = [(new, old) for old, new in SHORTER if is_kanji(new[0])]
    other = [e for e in changed(text, VARIANTS, "wording") if closes(text, e.last)]
    kinds = [other] * 4 + [
        small_words(text, "wording"),
        extra,
        changed(text, SHORTER, "wording"),
        changed(text, kana, "wording"),
    ]
    return rng.choice([kind for kind in kinds if kind] or [[]])


def habits(rng: Random, text: Text) -> list[Edit]:
    """One habit, carried through the whole text."""
    if text.name and rng.random() < 0.12:
        return [Edit(*text.name, "", "habit")]
    kana = [(new, old) for old, new in SHORTER if is_kanji(new[0])]
    table = rng.choice([HENTAI, OLDER, SHORTER, SHORTER, SHORTER[1:3], ENDINGS, UNVOICED, kana])
    found = repeats(text, "habit") if rng.random() < 0.15 else changed(text, table, "habit")
    if table is not UNVOICED and len(found) > 2:
        kept = {e.put for e in rng.sample(found, 2)}
        found = [e for e in found if e.put in kept]
    return sorted(found, key=lambda e: e.first)


def clear(edit: Edit, others: list[Edit]) -> bool:
    """Whether an edit neither overlaps nor touches another; single signs changed into single signs
    may touch.
    """
    gaps = [
        0 if all(e.first == e.last and len(e.put) == 1 for e in (edit, o)) else 1 for o in others
    ]
    return not any(
        edit.first <= o.last + gap and o.first <= edit.last + gap
        for o, gap in zip(others, gaps, strict=False)
    )


def unforced(rng: Random, world: World, text: Text) -> list[Edit]:
    """Differences that have nothing to do with room."""
    done: list[Edit] = []
    for mean, kind in ((world.wording, wordings), (world.slip, slips), (world.habit, habits)):
        for _ in range(sum(rng.random() < mean / 5 for _ in range(5))):
            options = kind(rng, text)
            for e in options if kind is habits else rng.sample(options, min(1, len(options))):
                done += [e] if clear(e, done) else []
    return done


def planned(rng: Random, text: Text, fill: float, done: list[Edit]) -> tuple[list[Edit], float]:
    """What he drops before the first cut, and by what factor he makes the signs smaller."""
    seen = fill * rng.lognormvariate(0, 0.06)
    shrink = max(1.0, min(seen, rng.uniform(1.05, 1.45)))
    lack, drops = need(text.signs) * (1 - shrink / seen), list[Edit]()
    for e in rng.sample(options := savers(text), len(options)):
        saved = need(text.signs[e.first : e.last + 1]) - need(e.put)
        if lack > 0.3 and saved > 0 and clear(e, done + drops):
            drops, lack = [*drops, e], lack - saved
    return drops, shrink
