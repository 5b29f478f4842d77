"""How he works: the print before him, his plan, his slips, and the cutting to the foot."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from random import Random

from carvers.carver_d.texts import POEMS, TITLES, Word
from carvers.carver_d.worlds import World

ROOM_ENDS = 0.45  # of a sign, by which he lets the last one go below his foot line


@dataclass(frozen=True)
class Piece:
    """A stretch of the source, what stands for it in the copy, and why."""

    source: str
    written: str
    cause: str
    word: Word | None = None


@dataclass(frozen=True)
class Sheet:
    """The metal: length, width, tops and feet of the columns, their width, sign size, all in mm."""

    length: float
    width: float
    top: float
    feet: tuple[float, ...]
    column: float
    size: float


@dataclass(frozen=True)
class Cut:
    """What was cut: each sign's column, upper and lower edge."""

    pieces: list[Piece]
    signs: list[tuple[int, float, float]]


def printed(random: Random, world: World) -> list[Piece]:
    """Return the text as the reference has it, and as his print had it."""
    words: list[Word] = []
    for _ in range(random.choice((1, 1, 1, 2))):
        words += random.choice(POEMS)
    kanji = random.random() * 0.9
    made = []
    if random.random() < world.title:
        made.append(Piece(title := random.choice(TITLES), title, ""))
    for word in words:
        text = word.short if random.random() < kanji else word.kana
        made.append(Piece(text, text, "", word))
        if random.random() < world.print_differs:
            made[-1] = replace(made[-1], written=_other(random, word, text), cause="wording")
    return [each for each in made if each.written != each.source or not each.cause]


def _other(random: Random, word: Word, text: str) -> str:
    """Return what another print has for a word: another, none, one more, another particle."""
    if word.other and random.random() < 0.8:
        return word.other
    if word.particle:
        return random.choice(["", "は", "も", "の", text + "も"])
    return random.choice(["", text, text + "の", text + "や", word.short])


def slipped(random: Random, world: World, pieces: list[Piece]) -> list[Piece]:
    """Return the pieces with his slips and habits, which know nothing of the room."""
    made: list[Piece] = []
    at = 0
    while at < len(pieces):
        piece = pieces[at]
        again = [n for n in range(at + 1, len(pieces)) if pieces[n].written == piece.written]
        near = [n for n in again if n - at < 12]
        if near and not piece.cause and random.random() < world.skips * world.slips * 3:
            made.append(piece)
            made += [
                replace(each, written="", cause="slip") for each in pieces[at + 1 : near[0] + 1]
            ]
            at = near[0] + 1
            continue
        made.append(piece if piece.cause else _slip(random, world, piece))
        at += 1
    return made


def _slip(random: Random, world: World, piece: Piece) -> Piece:
    word = piece.word
    draw = random.random()
    if draw < world.slips:
        gone = random.choice(["", "", piece.written[1:], piece.written[:1] + piece.written])
        return replace(piece, written=gone, cause="slip")
    if draw < world.slips + world.forgets:
        other = word.other if word and word.other else ""
        return replace(piece, written=other, cause="slip")
    if word and word.short != piece.written and random.random() < world.habit:
        return replace(piece, written=word.short, cause="habit")
    return piece


def shorter(piece: Piece) -> list[Piece]:
    """Return what may be written of a piece to save room, the mildest first."""
    if not piece.written or piece.cause in ("slip", "wording") or piece.word is None:
        return []
    ways = []
    if len(piece.word.short) < len(piece.written):
        ways.append(piece.word.short)
    if piece.word.particle:
        ways.append("")
    return [replace(piece, written=way, cause="space") for way in ways]


def sheet(random: Random, world: World, signs: int) -> Sheet:
    """Return the metal and his layout for a text of so many signs."""
    length, width = random.uniform(93, 98), random.uniform(13.2, 15.4)
    top = random.uniform(*world.margins)
    bottom = top if world.equal else random.uniform(*world.margins) * random.uniform(0.5, 1.5)
    columns = random.choice((1, 2, 2, 2, 3, 3, 4))
    room = columns * (length - top - bottom)
    size = min(14.0, random.uniform(*world.fill) * room / signs)
    feet = tuple(length - bottom + random.gauss(0, world.ragged) for _ in range(columns))
    return Sheet(length, width, top, feet, width / (columns + 0.6) * 0.8, size)


def planned(random: Random, world: World, pieces: list[Piece], on: Sheet, seal: float) -> Cut:
    """Return the pieces as he means to write them and the size he begins with, then cut."""
    room = sum(foot - on.top for foot in on.feet) - seal
    size = on.size
    if world.plan != "none":
        believed = room * math.exp(random.gauss(0, world.eye))
        need = len("".join(each.written for each in pieces)) * size
        size *= max(random.uniform(world.squeeze, 1.0), min(1.0, believed / need))
        if world.plan == "strict" or random.random() < 0.4:
            pieces = _shortened(random, pieces, size, believed)
    return cut(random, world, pieces, replace(on, size=size), seal)


def _shortened(random: Random, pieces: list[Piece], size: float, room: float) -> list[Piece]:
    """Return the pieces shortened anywhere until he believes that they fit, or no way is left."""
    made = list(pieces)
    order = list(range(len(made)))
    random.shuffle(order)
    for at in order:
        if len("".join(each.written for each in made)) * size <= room:
            break
        if ways := shorter(made[at]):
            made[at] = ways[0]
    return made


def cut(random: Random, world: World, pieces: list[Piece], on: Sheet, seal: float) -> Cut:
    """Return what was cut, sign by sign, shortening and crowding where he sees the end come."""
    feet = [*on.feet[:-1], on.feet[-1] - seal]
    column, at, scale = 0, on.top, 1.0
    stops = random.random() < world.cuts
    looks = random.uniform(0.3, 1.2)  # how much of a column is left when he looks
    done: list[Piece] = []
    signs: list[tuple[int, float, float]] = []
    for n, piece in enumerate(pieces):
        left = sum(foot - on.top for foot in feet[column + 1 :]) + feet[column] - at
        rest = sum(len(each.written) for each in pieces[n:]) * on.size
        sees = left < looks * (feet[0] - on.top)
        need = rest / max(left * math.exp(random.gauss(0, world.eye)), 0.5 * on.size)
        if sees and need > 1.02 and not (stops and world.plan == "none"):
            scale = max(world.squeeze * random.uniform(0.9, 1.0), min(scale, 1 / need))
            if need * world.squeeze > 0.97 and (ways := shorter(piece)):
                piece = ways[-1] if need * world.squeeze > 1.15 else ways[0]
        written = ""
        for sign in piece.written:
            tall = on.size * scale * math.exp(random.gauss(0, world.uneven))
            if at + tall > feet[column] + ROOM_ENDS * on.size:
                if column == len(feet) - 1:
                    break
                column, at = column + 1, on.top + random.gauss(0, 0.3)
            signs.append((column, at, at + tall))
            at += tall
            written += sign
        if written != piece.written or (piece.written and not written):
            done.append(replace(piece, written=written, cause="space"))
            done += [_gone(each) for each in pieces[n + 1 :]]
            break
        done.append(piece)
    return Cut(done, signs)


def _gone(piece: Piece) -> Piece:
    return replace(piece, written="", cause=piece.cause if not piece.written else "space")
