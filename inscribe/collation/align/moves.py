"""The moves of an alignment: every step that two texts allow from a given place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from inscribe.collation.align import pairs, readings
from inscribe.collation.align.costs import prices
from inscribe.collation.align.readings import Reading
from inscribe.collation.align.sides import Side
from inscribe.reading import spelling

Mode = Literal[
    "closed", "copy ahead", "source ahead", "wrong", "added", "omitted", "copy gap", "source gap"
]
COPY_AHEAD: Mode = "copy ahead"
# What a reader is told instead of a table's name.
SAID_BY = {
    "collation_readings": "as manuscripts write it",
    "verse_nouns": "a word of verse",
    "verse_verbs": "a verb of verse",
    "verse_adjectives": "an adjective of verse",
}
SOURCE_AHEAD: Mode = "source ahead"
UNWRITTEN = ("の", "か", "つ")  # particles that scribes leave out between two characters
# Particles and ends of words that Chinese order leaves unwritten.
LINKING = frozenset("をにのはもとがかへてでしじすりるれたむん")
LINKING_WORDS = ("こと", "なり", "して", "ば")  # and words
# Signs that are said twice, the second time after what they govern (school grammar of Chinese).
SAID_TWICE = {"未": "ず", "将": "んとす", "且": "んとす"} | dict.fromkeys("当応須宜", "べし")
SILENT = frozenset("而於于乎矣焉也之")  # signs that the Japanese order may leave unsaid
AS_VERB = ("せ", "し", "す", "する")  # what makes a verb of a character read by its sound: 同ぜず
MOST_UNREAD = 3  # signs that one unreadable sign may stand for


class State(NamedTuple):
    """A place in copy and source, and what is going on there."""

    i: int
    j: int
    mode: Mode = "closed"
    owed: str = ""  # letters the side that is behind has yet to supply


class Step(NamedTuple):
    """One move of the alignment: where it leads, what it costs, and its reason."""

    state: State
    price: int
    step: str  # row of the cost table
    why: str = ""


class Moves:
    """The moves between two given texts."""

    def __init__(self, copy: Side, source: Side, *, linking: bool = False) -> None:
        self.copy = copy
        self.source = source
        self.price = prices()
        self._copy_end = len(copy)
        self._source_end = len(source)
        self._answering: dict[State, tuple[Step, ...]] = {}
        self._worn = any(sort in ("unread", "gap") for sort in (*copy.sort, *source.sort))
        self._same = self.price["same"]
        self._linking = linking
        self._unsaid = (*LINKING_WORDS, *(SAID_TWICE[s] for s in copy.norm if s in SAID_TWICE))

    def after(self, state: State) -> Iterator[Step]:
        """Yield every step from ``state``."""
        if state.mode == "closed":
            yield from self._wrong(state, self.price["open"])
            yield from self.answering(state)
        elif state.mode in ("wrong", "added", "omitted"):
            yield Step(State(state.i, state.j), 0, "close")
            yield from self._wrong(state, 0)
        else:
            yield from self.answering(state)

    def answering(self, state: State) -> tuple[Step, ...]:
        """Return the steps by which the texts answer each other, in whatever spelling."""
        known = self._answering.get(state)
        if known is None:
            known = self._answering[state] = tuple(self._answers(state))
        return known

    def _answers(self, state: State) -> Iterator[Step]:
        if state.mode == "closed":
            yield from self._matches(state.i, state.j)
            yield from self._readings(state.i, state.j)
            if self._worn:
                yield from self._unread(state.i, state.j)
        elif state.mode == "copy ahead":
            yield from self._catch_up(state, self.source, state.j)
        elif state.mode == "source ahead":
            yield from self._catch_up(state, self.copy, state.i)
        elif state.mode in ("copy gap", "source gap"):
            yield from self._in_gap(state)

    def _matches(self, i: int, j: int) -> Iterator[Step]:
        copy, source = self.copy, self.source
        in_copy, in_source = i < self._copy_end, j < self._source_end
        if in_copy and in_source:
            found = pairs.match(copy, i, source, j)
            if found is pairs.SAME:
                yield Step(State(i + 1, j + 1), self._same, "same")
            elif found:
                yield Step(State(i + 1, j + 1), self.price[found.step], found.step, found.why)
            if len(copy.norm[i]) > 1 or len(source.norm[j]) > 1:
                yield from self._joined(i, j)
        if in_copy and copy.sort[i] == "stop":
            yield Step(State(i + 1, j), self.price["punctuation"], "punctuation", "punctuation")
        if in_source and source.sort[j] == "stop":
            yield Step(State(i, j + 1), self.price["punctuation"], "punctuation", "punctuation")
        yield from self._particle(i, j)
        if self._linking:
            yield from self._unwritten(i, j)

    def _particle(self, i: int, j: int) -> Iterator[Step]:
        """A particle that one side writes between two words and the other does not: 花夢, 花の夢."""
        copy, source, price = self.copy, self.source, self.price["link"]
        if j < self._source_end and source.norm[j] in UNWRITTEN and copy.joins[i]:
            why = f"{source.norm[j]} is read between the two characters"
            yield Step(State(i, j + 1), price, "unwritten", why)
        if i < self._copy_end and copy.norm[i] in UNWRITTEN and source.joins[j]:
            why = f"{copy.norm[i]} is read between the two characters"
            yield Step(State(i + 1, j), price, "unwritten", why)

    def _unwritten(self, i: int, j: int) -> Iterator[Step]:
        """What Chinese order leaves unwritten, and what the Japanese order leaves unsaid."""
        price, source = self.price["unwritten"], self.source
        if i and j < self._source_end:
            if source.norm[j] in LINKING:
                yield Step(State(i, j + 1), price, "unwritten")
            for word in self._unsaid:
                if "".join(source.norm[j : j + len(word)]) == word:
                    yield Step(State(i, j + len(word)), price, "unwritten")
        if i < self._copy_end and self.copy.norm[i] in SILENT:
            yield Step(State(i + 1, j), price, "unwritten")

    def _joined(self, i: int, j: int) -> Iterator[Step]:
        """A sign that stands for several (repeat mark, ligature) against those several."""
        copy, source = self.copy, self.source
        if len(copy.norm[i]) > 1 and (end := _spelled_out(source, j, copy.norm[i])):
            yield self._join_step(copy.raw[i], copy.norm[i], State(i + 1, end))
        if len(source.norm[j]) > 1 and (end := _spelled_out(copy, i, source.norm[j])):
            yield self._join_step(source.raw[j], source.norm[j], State(end, j + 1))

    def _join_step(self, raw: str, norm: str, state: State) -> Step:
        step = "repeat" if raw[:1] in pairs.REPEAT_MARKS else "ligature"
        return Step(state, self.price[step], step, f"{raw} stands for {norm}")

    def _readings(self, i: int, j: int) -> Iterator[Step]:
        copy, source = self.copy, self.source
        if i == self._copy_end or j == self._source_end:
            return
        if copy.sort[i] == source.sort[j] == "kanji" and copy.norm[i] == source.norm[j]:
            yield from self._okurigana(i, j)
        elif source.letters[j]:
            for reading in copy.readings_at(i, source.letters[j][0]):
                yield from self._read(reading, i, copy, State(i, j, "copy ahead"))
            if copy.letters[i]:
                for reading in source.readings_at(j, copy.letters[i][0]):
                    yield from self._read(reading, j, source, State(i, j, "source ahead"))
        elif copy.letters[i]:
            for reading in source.readings_at(j, copy.letters[i][0]):
                yield from self._read(reading, j, source, State(i, j, "source ahead"))
        elif copy.sort[i] == source.sort[j] == "kanji":
            yield from self._other_characters(i, j)
        else:  # a mark like 〳〵 against a Chinese character
            yield from self._repeating(i, j)

    def _repeating(self, i: int, j: int) -> Iterator[Step]:
        for side, at, mode in ((self.copy, i, COPY_AHEAD), (self.source, j, SOURCE_AHEAD)):
            if side.sort[at] == "kana":
                for reading in side.readings_at(at, ""):
                    yield from self._read(reading, at, side, State(i, j, mode))

    def _other_characters(self, i: int, j: int) -> Iterator[Step]:
        """Two different characters: the same word in all, or part of a word of several."""
        copy, source = self.copy, self.source
        if word := readings.shared_word(copy.norm[i], source.norm[j]):
            why = f"{copy.norm[i]} and {source.norm[j]} both write {word}"
            price = self.price["other_character"]
            yield Step(State(i + 1, j + 1), price, "other_character", why)
            yield from self._unwritten_ending(i, j, word, why)
        for reading in copy.readings_at(i, ""):
            if reading.length > 1:
                yield from self._read(reading, i, copy, State(i, j, "copy ahead"))
        for reading in source.readings_at(j, ""):
            if reading.length > 1:
                yield from self._read(reading, j, source, State(i, j, "source ahead"))

    def _unwritten_ending(self, i: int, j: int, word: str, why: str) -> Iterator[Step]:
        """The ending of ``word`` is written on one side only: 逢 against 会ふ."""
        ending, price = spelling.fold(word.partition(".")[2]), self.price["other_character"]
        for mode, behind, at in (
            (COPY_AHEAD, self.source, j + 1),
            (SOURCE_AHEAD, self.copy, i + 1),
        ):
            letters = behind.letters[at] if at < len(behind.letters) else ""
            if ending and letters and spelling.exchanged(ending[0], letters[0]):
                yield Step(State(i + 1, j + 1, mode, letters[0]), price, "other_character", why)

    def _read(self, reading: Reading, start: int, side: Side, at: State) -> Iterator[Step]:
        """The step of reading."""
        end, price = start + reading.length, self.price[reading.step]
        i, j = (end, at.j) if at.mode == "copy ahead" else (at.i, end)
        why = _reason(side, start, reading)
        yield Step(State(i, j, at.mode, reading.pattern), price, reading.step, why)

    def _okurigana(self, i: int, j: int) -> Iterator[Step]:
        yield from self._owing(State(i + 1, j + 1, "copy ahead"), self.copy, i, self.source, j)
        yield from self._owing(State(i + 1, j + 1, "source ahead"), self.source, j, self.copy, i)

    def _owing(
        self, state: State, ahead: Side, at: int, behind: Side, place: int
    ) -> Iterator[Step]:
        """The same character on both sides, read longer on the side that is ahead."""
        if place + 1 >= len(behind.letters) or not behind.letters[place + 1]:
            return
        char, letter = ahead.norm[at], behind.letters[place + 1]
        left = pairs.tails(char)
        if self._linking and ahead is self.copy:
            left = (*left, *AS_VERB, *_tails_of_words(ahead, at))
        for owed in left:
            if spelling.starts_alike(owed, letter):
                why = f"{char} is written with more or fewer kana"
                yield Step(state._replace(owed=owed), self.price["okurigana"], "okurigana", why)

    def _catch_up(self, state: State, behind: Side, at: int) -> Iterator[Step]:
        if at == len(behind.letters):
            return
        letters = behind.letters[at]
        if letters and spelling.starts_alike(state.owed, letters):
            yield self._supplied(state, 1, letters, Step(state, self.price["kana"], "kana"))
        for reading in behind.readings_at(at, state.owed[0]):
            if spelling.starts_alike(state.owed, reading.pattern):
                step = Step(
                    state, self.price[reading.step], reading.step, _reason(behind, at, reading)
                )
                yield self._supplied(state, reading.length, reading.pattern, step)
                end = at + reading.length
                if behind.joins[end]:
                    linked = step._replace(price=step.price + self.price["link"])
                    for particle in UNWRITTEN:
                        if spelling.starts_alike(state.owed, reading.pattern + particle):
                            pattern = reading.pattern + particle
                            yield self._supplied(state, reading.length, pattern, linked)

    def _supplied(self, state: State, length: int, pattern: str, step: Step) -> Step:
        """The side behind supplies ``pattern``: the debt shrinks, is paid, or changes sides."""
        owed = state.owed
        ahead = state.mode
        i, j = (state.i, state.j + length) if ahead == "copy ahead" else (state.i + length, state.j)
        if len(owed) > len(pattern):
            new = State(i, j, ahead, owed[len(pattern) :])
        elif len(owed) == len(pattern):
            new = State(i, j)
        else:
            other: Mode = "source ahead" if ahead == "copy ahead" else "copy ahead"
            new = State(i, j, other, pattern[len(owed) :])
        return Step(new, step.price, step.step, step.why)

    def _wrong(self, state: State, opening: int) -> Iterator[Step]:
        i, j, mode = state.i, state.j, state.mode
        more_copy, more_source = i < self._copy_end, j < self._source_end
        price = self.price["wrong"] + opening
        if mode in ("closed", "wrong") and more_copy and more_source:
            yield Step(State(i + 1, j + 1, "wrong"), price, "wrong")
        if mode in ("closed", "wrong", "added") and more_copy:
            yield Step(State(i + 1, j, "added"), price, "wrong")
        if mode in ("closed", "wrong", "omitted") and more_source:
            yield Step(State(i, j + 1, "omitted"), price, "wrong")

    def _unread(self, i: int, j: int) -> Iterator[Step]:
        copy = self.copy.sort[i] if i < self._copy_end else ""
        source = self.source.sort[j] if j < self._source_end else ""
        if copy == "unread":
            yield self._unread_step(State(i + 1, j), 2, self.copy.raw[i])
            for width in range(1, min(MOST_UNREAD, self._source_end - j) + 1):
                yield self._unread_step(State(i + 1, j + width), width, self.copy.raw[i])
        if source == "unread":
            yield self._unread_step(State(i, j + 1), 2, self.source.raw[j])
            for width in range(1, min(MOST_UNREAD, self._copy_end - i) + 1):
                yield self._unread_step(State(i + width, j + 1), width, self.source.raw[j])
        if copy == "gap":
            yield Step(State(i + 1, j, "copy gap"), self.price["gap"], "gap", "a gap in the copy")
        if source == "gap":
            yield Step(
                State(i, j + 1, "source gap"), self.price["gap"], "gap", "a gap in the source"
            )

    def _unread_step(self, state: State, width: int, sign: str) -> Step:
        price = self.price["unread"] + self.price["unread_more"] * (width - 1)
        is_mark = sign in pairs.REPEAT_MARKS
        why = "the sign that it repeats cannot be read" if is_mark else "the sign cannot be read"
        return Step(state, price, "unread", why)

    def _in_gap(self, state: State) -> Iterator[Step]:
        i, j = state.i, state.j
        yield Step(State(i, j), 0, "close")
        if state.mode == "copy gap" and j < self._source_end:
            yield Step(State(i, j + 1, "copy gap"), self.price["gap_sign"], "gap")
        if state.mode == "source gap" and i < self._copy_end:
            yield Step(State(i + 1, j, "source gap"), self.price["gap_sign"], "gap")


def _spelled_out(side: Side, at: int, text: str) -> int:
    """Return where ``text`` ends if several signs from ``at`` spell it out, else 0."""
    end, written = at, ""
    while end < len(side.norm) and len(written) < len(text):
        written += side.norm[end]
        end += 1
    alike = written == text or (
        len(written) == len(text)
        and all(map(spelling.is_kana, written + text))
        and spelling.fold(written) == spelling.fold(text)
    )
    return end if alike and end - at > 1 else 0


def _reason(side: Side, start: int, reading: Reading) -> str:
    if reading.step == "long":
        return "historical against modern spelling"
    written = "".join(side.norm[start : start + reading.length])
    return f"{written} is read {reading.spoken} ({SAID_BY.get(reading.source, reading.source)})"


def _tails_of_words(side: Side, at: int) -> Iterator[str]:
    """Yield how the words at a sign may end that are said to be its own: 需 もとめ, め."""
    for reading in side.readings_at(at, ""):
        if reading.length == 1 and reading.step == "word":
            yield from (reading.pattern[cut:] for cut in range(1, len(reading.pattern)))
