"""Words of the source and what becomes of them: wording, habits, slips, savings."""

from __future__ import annotations

import random
from typing import NamedTuple

from carvers.carver_a.tables import (
    BLANK,
    KANJI,
    OLD_KANA,
    OLD_KANJI,
    PARTICLES,
    PLAIN,
    PRINT,
    SENSE,
)
from carvers.carver_a.worlds import World

Words = list["Word"]


class Word(NamedTuple):
    """A word of the source (`first`: its first sign, `part`: text, title or author) and what has
    become of it so far, and why.
    """

    src: str
    now: str
    first: int
    line: int
    part: str = "text"
    cause: str = ""


def is_kana(sign: str) -> bool:
    """Whether a sign is kana (or a mark among them)."""
    return "ぁ" <= sign <= "ヿ"


def words_of(text: str) -> Words:
    """The words of a text of the list."""
    words, first, line = list[Word](), 0, 0
    for token in text.split():
        part = {"＃": "title", "＠": "author"}.get(token[0], "text")
        line += token == "／" or part == "author"
        if token != "／":
            words.append(Word(bare := token.lstrip("＃＠"), bare, first, line, part))
            first, line = first + len(bare), line + (part == "title")
    return words


def signs_of(words: Words) -> str:
    """All signs of the draft in order, lost patches among them."""
    return "".join(word.now for word in words)


def drafted(words: Words, world: World, rng: random.Random) -> Words:
    """What the print before him read (at times with 詠 added to the name), in the writer's own
    letters, used wherever they occur, room or no room.
    """
    kinds = [
        k
        for k in ("kanji", "old", "kana", "plain", "nameless", "repeat")
        if rng.random() < world.habits * 0.25
    ]
    table = (OLD_KANJI if "old" in kinds else {}) | (PLAIN if "plain" in kinds else {})
    table |= dict(rng.sample(sorted(OLD_KANA.items()), 2)) if "kana" in kinds else {}
    always, written = rng.sample(sorted(KANJI), 14) if "kanji" in kinds else [], list[Word]()
    for word in words:
        now = KANJI[word.src] if word.src in always else "".join(table.get(s, s) for s in word.src)
        now = (
            shorter(word, "r") or now
            if "repeat" in kinds
            else ""
            if word.part != "text" and "nameless" in kinds
            else now
        )
        word = word._replace(now=now, cause="habit") if now != word.src else word
        read = word.src in PRINT and rng.random() < world.wording
        written.append(word._replace(now=PRINT[word.src], cause="wording") if read else word)
    added = rng.random() < world.wording and words[-1].part == "author" and written[-1].now
    return written + ([Word("", "詠", -1, -1, "author", "wording")] if added else [])


def slip(words: Words, rng: random.Random, memory: bool) -> Words:
    """One slip of eye, memory or paste; unchanged if the text gives no occasion."""
    kinds = ("skip", "once", "twice", "sense", "sign", "patch", "particle")
    kind = rng.choices(kinds, (2, 2, 2, 7 if memory else 1, 2, 1, 2))[0]
    free = [i for i, w in enumerate(words) if not w.cause and w.part == "text"]
    for i in rng.sample(free, len(free)):
        same = [
            j
            for j in range(i + 2, min(i + 9, len(words)))
            if words[j].src == words[i].src and words[j].part == "text"
        ]
        if kind == "skip" and same:
            return [
                w._replace(now="", cause="slip") if i < j <= same[0] else w
                for j, w in enumerate(words)
            ]
        now = slipped(words[i].src, words[i - 1].now if i else "", kind, rng)
        if now is not None:
            return [w._replace(now=now, cause="slip") if j == i else w for j, w in enumerate(words)]
    return words


def slipped(text: str, before: str, kind: str, rng: random.Random) -> str | None:
    """The word as the slip leaves it, or None when this kind of slip cannot happen to it."""
    at = rng.randrange(len(text))
    if kind == "once":
        double = next(
            (i for i in range(len(text)) if text[i] == (text[i - 1] if i else before[-1:])), None
        )
        return None if double is None else text[:double] + text[double + 1 :]
    if kind == "twice":
        return text + text[-1] if rng.random() < 0.5 else text * 2
    if kind in ("sign", "patch") and len(text) > 1:
        return text[:at] + BLANK * (kind == "patch") + text[at + 1 :]
    return (
        SENSE.get(text)
        if kind == "sense"
        else ""
        if kind == "particle" and text in PARTICLES
        else None
    )


def shorter(word: Word, kind: str) -> str | None:
    """The word saved upon in one way, None if it cannot be; '' if it is dropped."""
    text = word.src
    if kind in "pat":
        gone = (
            text in PARTICLES
            if kind == "p"
            else word.part == {"a": "author", "t": "title"}[kind] and text
        )
        return "" if gone else None
    if kind in "ko":
        ending = len(text) in (2, 3) and text[-2] >= "一" and is_kana(text[-1])
        return KANJI.get(text) if kind == "k" else text[:-1] if ending else None
    if len(text) > 3 and PLAIN.get(text[2], text[2]) + text[3] == text[:2]:
        return text[:2] + "〱" + text[4:]
    double = next((i for i in range(1, len(text)) if text[i] == text[i - 1]), 0)
    mark = "ゝ" if is_kana(text[double : double + 1]) else "々"
    return (
        text[:double] + mark + text[double + 1 :]
        if double
        else {"こと": "ヿ", "より": "ゟ"}.get(text)
    )


def save_once(words: Words, kinds: str, after: int, every: bool) -> Words | None:
    """One saving (or all alike) of the first kind that still offers one, at words from sign
    `after` on; None if nothing is left to save.
    """
    starts = [len(signs_of(words[:i])) for i in range(len(words))]
    for kind in kinds:
        found = {
            i: new
            for i, w in enumerate(words)
            if starts[i] >= after
            and w.now
            and (new := shorter(w, kind)) is not None
            and (not w.cause or (w.cause == "habit" and not new))
        }
        if found:
            chosen = list(found) if every else list(found)[len(found) // 2 :][:1]
            return [
                w._replace(now=found[i], cause="space") if i in chosen else w
                for i, w in enumerate(words)
            ]
    return None
