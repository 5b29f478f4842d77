"""A simulated carver who weighs every word before he writes it.

He plans by eye, with an error of a tenth or more; crowds gradually as the end comes near; writes
words shorter, drops particles and leaves off the end when he believes that he runs out of room;
sometimes starts a new column at the end of a phrase; and slips, skipping a word or writing it
shorter out of habit, anywhere. His texts are words in a row, invented, without sense. The world
"ordinary" has common plates and a fair eye; "wild" has other sizes, a worse eye and less temper.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, field

from carvers.contract import Cause, Plate

# Words in kana and the shorter writing they have; a word without one stands alone.
_WRITTEN = """
ゆめ:夢 はな:花 つき:月 こころ:心 ひと:人 みづ:水 こゑ:声 かぜ:風 あき:秋 はる:春 なみだ:涙
ころも:衣 つゆ:露 しも:霜 ゆき:雪 くも:雲 みち:道 ふね:舟 さくら:桜 もみぢ:紅葉 むかし:昔
かすみ:霞 とき:時 ひかり:光 たび:旅 かげ:影 すがた:姿 まこと:誠 おと:音 かね:鐘
こと:ヿ より:ゟ あらし:嵐
やま:山
松 岩 海 浪 里 野 竹 鶴 寺 夕暮 都 旅人 いと さへ ばかり ながら ほのぼの しばし いづこ まだ さぞ
"""
WORDS = tuple(tuple(word.split(":")) for word in _WRITTEN.split())
PARTICLES = ["の", "を", "に", "は", "も", "ぞ", "と", "や"]


@dataclass(frozen=True)
class World:
    """What plates and hands vary between."""

    name: str
    height: tuple[float, float]  # mm
    pitch: tuple[float, float]  # mm
    signs: tuple[int, int]
    misjudged: float  # standard error of the carver's eye
    slips: float  # chance of a slip at a word
    temper: float  # how readily he gives something up when short of room


WORLDS = (
    World("ordinary", (92, 99), (3.4, 5.4), (18, 60), 0.10, 0.05, 0.5),
    World("wild", (70, 110), (3.0, 6.2), (12, 80), 0.15, 0.06, 0.35),
)


@dataclass(frozen=True)
class Word:
    """A word of the source, and its shorter writing (the same where it has none)."""

    text: str
    shorter: str

    @property
    def is_particle(self) -> bool:
        """Whether it is a particle."""
        return self.text in PARTICLES


@dataclass
class Work:
    """The plate under his hands: signs and places of each column, and what became of words."""

    world: World
    natural: float  # the pitch he would like, mm
    usable: float  # the length of a column, mm
    count: int  # columns he means to fill
    eye: float  # how much longer the text seems to him than it is
    squeeze: float  # the tightest he will write, as a share of ``natural``
    signs: list[str] = field(default_factory=lambda: [""])
    places: list[list[tuple[float, float]]] = field(default_factory=lambda: [[]])
    length: float = 0.0  # of the column he is at
    causes: list[Cause] = field(default_factory=list)

    def pressure(self, left: int) -> float:
        """Return what seems still to come, ``left`` signs, over the room there is."""
        return left * self.natural * self.eye / max(self.room(), 0.1)

    def room(self) -> float:
        """Return the length left in all columns."""
        return (self.count - len(self.signs)) * self.usable + self.usable - self.length

    def turn(self) -> None:
        """Begin a new column."""
        self.signs.append("")
        self.places.append([])
        self.length = 0.0


def words_of(rng: random.Random, signs: int) -> list[Word]:
    """Return words of about ``signs`` signs."""
    words: list[Word] = []
    while sum(len(word.text) for word in words) < signs:
        text, *shorter = rng.choice(WORDS)
        words.append(Word(text, shorter[0] if shorter else text))
        if rng.random() < 0.6:
            particle = rng.choice(PARTICLES)
            words.append(Word(particle, particle))
    return words


def chosen(rng: random.Random, word: Word, work: Work, left: int) -> tuple[str, str]:
    """Return what he writes for a word, and why where it is not the word."""
    short = work.pressure(left)
    if work.room() / (work.natural * work.squeeze) < 1:
        return "", "space"
    if rng.random() < work.world.slips:
        forgets = rng.random() < 0.5 or word.shorter == word.text
        return ("", "slip") if forgets else (word.shorter, "habit")
    pressed = min(1.0, max(0.0, (short * work.squeeze - 0.85) * 4)) * work.world.temper * 2
    if word.shorter != word.text and rng.random() < pressed:
        return word.shorter, "space"
    if word.is_particle and rng.random() < pressed * 0.4:
        return "", "space"
    if short * work.squeeze > 1.15 and left < 8 and rng.random() < pressed * 0.5:
        return "", "space"
    return word.text, ""


def cut(rng: random.Random, text: str, work: Work, pitch: float) -> None:
    """Cut the signs of a word, into the next column where this one is full."""
    for sign in text:
        step = pitch * math.exp(rng.gauss(0, 0.04))
        if work.length + step > work.usable * 1.02 and len(work.signs) < work.count:
            work.turn()
        work.signs[-1] += sign
        work.places[-1].append((work.length, step))
        work.length += step


def note(work: Work, first: int, word: Word, written: str, cause: str) -> None:
    """Note a difference; omissions that follow each other are one, of the first's cause."""
    last, end = first + len(word.text) - 1, sum(map(len, work.signs))
    before = work.causes[-1] if work.causes else None
    if not written and before and before["copy_first"] < 0 and before["last"] == first - 1:
        before["last"] = last
        before["cause"] = "space" if cause == "space" else before["cause"]
        return
    copied = (end, end + len(written) - 1) if written else (-1, -1)
    work.causes.append(
        Cause(first=first, last=last, copy_first=copied[0], copy_last=copied[1], cause=cause)
    )


def carve(rng: random.Random, world: World, words: list[Word], work: Work) -> None:
    """Carve the words one after another."""
    need = sum(len(word.text) for word in words)
    at = 0
    for word in words:
        left = need - at
        short = work.pressure(left)
        pitch = work.natural * min(1.0, max(work.squeeze, 1 / short if short > 1 else 1.0))
        written, cause = chosen(rng, word, work, left)
        if cause:
            note(work, at, word, written, cause)
        at += len(word.text)
        cut(rng, written, work, pitch)
        roomy = len(work.signs) < work.count and work.length > 0.8 * work.usable
        if roomy and rng.random() < 0.1:
            work.turn()


def plate(rng: random.Random) -> Plate:
    """Return one plate as somebody with callipers sets it down."""
    world = rng.choice(WORLDS)
    words = words_of(rng, rng.randint(*world.signs))
    need = sum(len(word.text) for word in words)
    height, top = rng.uniform(*world.height), rng.uniform(2.5, 7.0)
    natural = rng.uniform(*world.pitch)
    usable = height - top - max(1.5, top + rng.gauss(0, 1.0))
    wished = need * natural / usable + rng.choice((-0.35, -0.2, 0.0, 0.2, 0.5, 0.8))
    count = max(1, min(5, round(wished)))
    eye = math.exp(rng.gauss(0, world.misjudged))
    work = Work(world, natural, usable, count, eye, rng.uniform(0.68, 0.85))
    carve(rng, world, words, work)
    return recorded(rng, words, work, height, top)


def recorded(rng: random.Random, words: list[Word], work: Work, height: float, top: float) -> Plate:
    """Return the plate with errors of 0.15 mm."""

    def mm(value: float) -> float:
        return round(max(0.0, value + rng.gauss(0, 0.15)), 1)

    carved = [n for n, signs in enumerate(work.signs) if signs]
    across = 14.5 / len(carved)
    wide = min(across * 0.9, work.natural)
    ends = [sum(work.places[n][-1]) for n in carved]
    boxes = [
        (round(14.5 - (k + 0.5) * across - wide / 2, 1), mm(top + y), round(wide, 1), round(s, 1))
        for k, n in enumerate(carved)
        for y, s in work.places[n]
    ]
    return Plate(
        source=lines_of(words),
        copy="／".join(work.signs[n] for n in carved),
        length=round(height, 1),
        width=14.5,
        columns=[(mm(top), mm(top + end), round(wide, 1)) for end in ends],
        boxes=boxes if rng.random() < 0.33 else None,
        takes_room=[],
        world=work.world.name,
        causes=work.causes,
    )


def lines_of(words: list[Word]) -> str:
    """Return the words in lines of five to eight signs."""
    lines = [""]
    for word in words:
        if len(lines[-1]) >= 5:
            lines.append("")
        lines[-1] += word.text
    return "／".join(lines)


def plates(seed: int, count: int) -> list[Plate]:
    """Return ``count`` plates, the same for the same seed."""
    rng = random.Random(seed)
    return [plate(rng) for _ in range(count)]
