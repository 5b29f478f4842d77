"""The moves of an alignment: every step that two texts allow from a given place."""

from __future__ import annotations

from collections.abc import Iterator

from inscribe.collation.align.searching import pairs
from inscribe.collation.align.searching.costs import prices
from inscribe.collation.align.searching.parents import parent_moves
from inscribe.collation.align.searching.states import AlignmentMove, Mode, State
from inscribe.collation.align.searching.unwritten import (
    UNWRITTEN,
    linking_moves,
    linking_tails,
    linking_words,
    particle_moves,
)
from inscribe.collation.align.searching.worn import moves_in_gap, unread_moves
from inscribe.collation.align.sides import Reading, Side, may_be_inflected, meanings, shared_word
from inscribe.reading import spelling

COPY_AHEAD: Mode = "copy ahead"
OPEN = frozenset({"wrong", "added", "omitted"})  # modes of a difference that is not closed yet
# What a reader is told instead of a table's name.
SAID_BY = {
    "collation_readings": "as manuscripts write it",
    "verse_nouns": "a word of verse",
    "verse_verbs": "a verb of verse",
    "verse_adjectives": "an adjective of verse",
}
SOURCE_AHEAD: Mode = "source ahead"


class Moves:
    """The moves between two given texts."""

    def __init__(self, copy: Side, source: Side, *, linking: bool = False) -> None:
        self.copy = copy
        self.source = source
        self.price = prices()
        self._copy_end = len(copy)
        self._source_end = len(source)
        self._answering: dict[State, tuple[AlignmentMove, ...]] = {}
        self._worn = any(sort in ("unread", "gap") for sort in (*copy.sort, *source.sort))
        self._same = self.price["same"]
        self._linking = linking
        self._unsaid = linking_words(copy.norm)

    def after(self, state: State) -> tuple[AlignmentMove, ...]:
        """Return every step from ``state``."""
        if state.mode == "closed":
            return (*self._wrong(state, self.price["open"]), *self.answering(state))
        if state.mode in OPEN:
            close = AlignmentMove(State(state.i, state.j), 0, "close")
            return (close, *self._wrong(state, 0))
        return self.answering(state)

    def answering(self, state: State) -> tuple[AlignmentMove, ...]:
        """Return the steps by which the texts answer each other, in whatever spelling."""
        known = self._answering.get(state)
        if known is None:
            known = self._answering[state] = self._answers(state)
        return known

    def _answers(self, state: State) -> tuple[AlignmentMove, ...]:
        i, j, mode, _ = state
        if mode == "closed":
            found = (*self._matches(i, j), *self._readings(i, j))
            return (*found, *unread_moves(self.copy, self.source, i, j)) if self._worn else found
        if mode == "copy ahead":
            return tuple(self._catch_up(state, self.source, j))
        if mode == "source ahead":
            return tuple(self._catch_up(state, self.copy, i))
        return tuple(moves_in_gap(state, self.copy, self.source)) if "gap" in mode else ()

    def _matches(self, i: int, j: int) -> Iterator[AlignmentMove]:
        copy, source = self.copy, self.source
        in_copy, in_source = i < self._copy_end, j < self._source_end
        if in_copy and in_source:
            found = pairs.match(copy, i, source, j)
            if found is pairs.SAME:
                yield AlignmentMove(State(i + 1, j + 1), self._same, "same")
            elif found:
                yield AlignmentMove(
                    State(i + 1, j + 1), self.price[found.step], found.step, found.why
                )
            if len(copy.norm[i]) > 1 or len(source.norm[j]) > 1:
                yield from self._joined(i, j)
        if in_copy and copy.sort[i] == "stop":
            yield AlignmentMove(
                State(i + 1, j), self.price["punctuation"], "punctuation", "punctuation"
            )
        if in_source and source.sort[j] == "stop":
            yield AlignmentMove(
                State(i, j + 1), self.price["punctuation"], "punctuation", "punctuation"
            )
        if copy.joins[i] or source.joins[j]:
            yield from particle_moves(copy, source, i, j)
        if self._linking:
            yield from linking_moves(copy, source, i, j, self._unsaid)

    def _joined(self, i: int, j: int) -> Iterator[AlignmentMove]:
        """A sign that stands for several (repeat mark, ligature) against those several."""
        copy, source = self.copy, self.source
        if len(copy.norm[i]) > 1 and (end := pairs.spelled_out(source, j, copy.norm[i])):
            yield self._join_step(copy.raw[i], copy.norm[i], State(i + 1, end))
        if len(source.norm[j]) > 1 and (end := pairs.spelled_out(copy, i, source.norm[j])):
            yield self._join_step(source.raw[j], source.norm[j], State(end, j + 1))

    def _join_step(self, raw: str, norm: str, state: State) -> AlignmentMove:
        step = "repeat" if raw[:1] in pairs.REPEAT_MARKS else "ligature"
        return AlignmentMove(state, self.price[step], step, f"{raw} stands for {norm}")

    def _readings(self, i: int, j: int) -> Iterator[AlignmentMove]:
        copy, source = self.copy, self.source
        if i == self._copy_end or j == self._source_end:
            return
        if copy.sort[i] == source.sort[j] == "kanji" and copy.norm[i] == source.norm[j]:
            yield from self._okurigana(i, j)
            if self._parts_here(i, j):
                yield from self._one_word(i, j)
        elif source.letters[j]:
            begins = source.letters[j][0] if copy.sort[i] != "kana" or copy.letters[i] else ""
            for reading in copy.readings_at(i, begins):
                yield self._read(reading, i, copy, State(i, j, "copy ahead"))
            if copy.letters[i]:
                for reading in source.readings_at(j, copy.letters[i][0]):
                    yield self._read(reading, j, source, State(i, j, "source ahead"))
        elif copy.letters[i]:
            begins = "" if source.sort[j] == "kana" else copy.letters[i][0]
            for reading in source.readings_at(j, begins):
                yield self._read(reading, j, source, State(i, j, "source ahead"))
        elif copy.sort[i] == source.sort[j] == "kanji":
            yield from self._other_characters(i, j)
        else:  # a mark like 〳〵 against a Chinese character
            yield from self._repeating(i, j)

    def _repeating(self, i: int, j: int) -> Iterator[AlignmentMove]:
        for side, at, mode in ((self.copy, i, COPY_AHEAD), (self.source, j, SOURCE_AHEAD)):
            if side.sort[at] == "kana":
                for reading in side.readings_at(at, ""):
                    yield self._read(reading, at, side, State(i, j, mode))

    def _other_characters(self, i: int, j: int) -> Iterator[AlignmentMove]:
        """Two different characters: the same word in all, or part of a word of several."""
        copy, source = self.copy, self.source
        if word := shared_word(copy.norm[i], source.norm[j]):
            why = f"{copy.norm[i]} and {source.norm[j]} both write {word}"
            price = self.price["other_character"]
            yield AlignmentMove(State(i + 1, j + 1), price, "other_character", why)
            yield from self._unwritten_ending(i, j, word, why)
        yield from parent_moves(copy, source, i, j)
        for reading in copy.readings_at(i, ""):
            if reading.length > 1:
                yield self._read(reading, i, copy, State(i, j, "copy ahead"))
        for reading in source.readings_at(j, ""):
            if reading.length > 1:
                yield self._read(reading, j, source, State(i, j, "source ahead"))

    def _unwritten_ending(self, i: int, j: int, word: str, why: str) -> Iterator[AlignmentMove]:
        """Yield the moves where one side leaves the ending of ``word`` out: 逢, 会ふ."""
        ending, price = spelling.fold(word.partition(".")[2]), self.price["other_character"]
        for mode, behind, at in (
            (COPY_AHEAD, self.source, j + 1),
            (SOURCE_AHEAD, self.copy, i + 1),
        ):
            letters = behind.letters[at] if at < len(behind.letters) else ""
            if ending and letters and spelling.exchanged(ending[0], letters[0]):
                yield AlignmentMove(
                    State(i + 1, j + 1, mode, letters[0]), price, "other_character", why
                )

    def _parts_here(self, i: int, j: int) -> bool:
        """Whether both texts go on with different characters, as 山振 and 山吹 do."""
        in_copy, in_source = i + 1 < self._copy_end, j + 1 < self._source_end
        if not (in_copy and in_source and self.copy.sort[i + 1] == self.source.sort[j + 1]):
            return False
        return self.copy.sort[i + 1] == "kanji" and self.copy.norm[i + 1] != self.source.norm[j + 1]

    def _one_word(self, i: int, j: int) -> Iterator[AlignmentMove]:
        """Yield the moves over a word of the tables that the two write in different characters."""
        written = [r for r in self.copy.readings_at(i, "") if r.length > 1 and r.source in SAID_BY]
        for reading in self.source.readings_at(j, "") if written else ():
            for own in written:
                is_same = reading.length > 1 and own.pattern == reading.pattern
                if is_same and reading.source in SAID_BY and self._means(i, own, j, reading):
                    state = State(i + own.length, j + reading.length)
                    why = _reason(self.copy, i, own)
                    yield AlignmentMove(state, self.price["word"], "word", why)

    def _means(self, i: int, own: Reading, j: int, other: Reading) -> bool:
        """Whether what a word of the copy and one of the source write has a meaning in common."""
        one = "".join(self.copy.norm[i : i + own.length])
        return bool(meanings(one) & meanings("".join(self.source.norm[j : j + other.length])))

    def _read(self, reading: Reading, start: int, side: Side, at: State) -> AlignmentMove:
        """Return the step of reading."""
        end, price = start + reading.length, self.price[reading.step]
        i, j = (end, at.j) if at.mode == "copy ahead" else (at.i, end)
        why = _reason(side, start, reading)
        return AlignmentMove(State(i, j, at.mode, reading.pattern), price, reading.step, why)

    def _okurigana(self, i: int, j: int) -> Iterator[AlignmentMove]:
        yield from self._owing(State(i + 1, j + 1, "copy ahead"), self.copy, i, self.source, j)
        yield from self._owing(State(i + 1, j + 1, "source ahead"), self.source, j, self.copy, i)

    def _owing(
        self, state: State, ahead: Side, at: int, behind: Side, place: int
    ) -> Iterator[AlignmentMove]:
        """Yield the moves over a character that both sides have, and over its okurigana.

        One side goes on in kana with what the reading of the character has said already.
        """
        if place + 1 >= len(behind.letters) or not behind.letters[place + 1]:
            return
        char, letter = ahead.norm[at], behind.letters[place + 1]
        left = pairs.tails(char)
        if self._linking and ahead is self.copy:
            left = (*left, *linking_tails(ahead, at))
        if letter == "は" and not may_be_inflected(behind.letters[place + 2 : place + 3]):
            return
        for owed in left:
            if spelling.starts_alike(owed, letter):
                why = f"{char} is written with more or fewer kana"
                yield AlignmentMove(
                    state._replace(owed=owed), self.price["okurigana"], "okurigana", why
                )

    def _catch_up(self, state: State, behind: Side, at: int) -> Iterator[AlignmentMove]:
        if at == len(behind.letters):
            return
        letters = behind.letters[at]
        if letters and spelling.starts_alike(state.owed, letters):
            yield self._supplied(
                state, 1, letters, AlignmentMove(state, self.price["kana"], "kana")
            )
        for reading in behind.readings_at(at, state.owed[0]):
            if spelling.starts_alike(state.owed, reading.pattern):
                step = AlignmentMove(
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

    def _supplied(
        self, state: State, length: int, pattern: str, step: AlignmentMove
    ) -> AlignmentMove:
        """Return the move by which the side that is behind supplies the sounds ``pattern``.

        The sounds that are owed become fewer, or none, or the other side owes the rest.
        """
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
        return AlignmentMove(new, step.price, step.step, step.why)

    def _wrong(self, state: State, opening: int) -> list[AlignmentMove]:
        i, j, mode, _ = state
        more_copy, more_source = i < self._copy_end, j < self._source_end
        price = self.price["wrong"] + opening
        found = []
        if mode in ("closed", "wrong") and more_copy and more_source:
            found.append(AlignmentMove(State(i + 1, j + 1, "wrong"), price, "wrong"))
        if mode in ("closed", "wrong", "added") and more_copy:
            found.append(AlignmentMove(State(i + 1, j, "added"), price, "wrong"))
        if mode in ("closed", "wrong", "omitted") and more_source:
            found.append(AlignmentMove(State(i, j + 1, "omitted"), price, "wrong"))
        return found


def _reason(side: Side, start: int, reading: Reading) -> str:
    if reading.step == "long":
        return "historical against modern spelling"
    written = "".join(side.norm[start : start + reading.length])
    return f"{written} is read {reading.spoken} ({SAID_BY.get(reading.source, reading.source)})"
