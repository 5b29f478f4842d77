"""Two texts held against each other by ear, quickly: where they go together, and where not.

Each text is read once, sign by sign, in the likeliest way, and the two strings of sounds are
aligned by plain edit distance (rapidfuzz). That is too rough to tell a difference in wording from
a spelling, but it shows which stretches of two long texts belong together, and places where both
may be cut: ends of signs in the middle of sounds they share.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from inscribe.collation.align.sides import WORN, Side, Sounds

if TYPE_CHECKING:
    from rapidfuzz.distance import Opcode

# Sounds in a row that are not shared, after which a stretch that goes together has ended; and how
# much more of it must be shared than not. Of two random texts about a seventh is shared.
GAP = 12
LEAST = 8
EXPECTED = 5  # of so many sounds one differs, at most, in texts that go together: else it is slower


class MeetingPoint(NamedTuple):
    """A place between two signs of the copy and two of the source, inside sounds they share."""

    i: int
    j: int
    safety: int  # sounds shared without a break on both sides, at least


def stretches(copy: Side, source: Side) -> list[list[MeetingPoint]]:
    """Return the places, first to last, of each stretch in which two texts go together."""
    from rapidfuzz.distance import Levenshtein

    one, other = copy.sounds, source.sounds
    most = max(len(one.letters), len(other.letters)) // EXPECTED
    steps = Levenshtein.opcodes(one.letters, other.letters, score_hint=most)
    runs = [_run(step, one.letters, other.letters) for step in steps]
    found = (list(_places(runs[a : b + 1], one, other)) for a, b in _together(runs))
    return [places for places in found if len(places) > 1]


def whereabouts(copy: Side, source: Side) -> tuple[int, int]:
    """Return the signs of the source, from and to, that sound most like the whole of the copy."""
    from rapidfuzz import fuzz

    one, other = copy.sounds, source.sounds
    found = fuzz.partial_ratio_alignment(one.letters, other.letters)
    if found is None or len(one.letters) > len(other.letters):
        return 0, len(source)
    starts = sorted(other.sign_at)
    before = [at for at in starts if at <= found.dest_start]
    after = [at for at in starts if at >= found.dest_end]
    return (
        other.sign_at[before[-1]] if before else 0,
        other.sign_at[after[0]] if after else len(source),
    )


def loudness(side: Side) -> int:
    """Return how many sounds a text has, as it is likeliest read."""
    return len(side.sounds.letters)


def begin_and_end_alike(copy: Side, source: Side, sounds: int) -> bool:
    """Whether two texts share so many sounds at their beginning, and as many at their end."""
    one, other = copy.sounds.letters, source.sounds.letters
    return one[:sounds] == other[:sounds] and one[-sounds:] == other[-sounds:]


class _SoundStep(NamedTuple):
    """A step of the alignment of sounds."""

    a: int
    b: int
    length: int
    score: int  # sounds shared, less those that are not; what cannot be read counts for nothing


def _run(step: Opcode, one: str, other: str) -> _SoundStep:
    length = max(step.src_end - step.src_start, step.dest_end - step.dest_start)
    if step.tag == "equal":
        return _SoundStep(step.src_start, step.dest_start, length, length)
    worn = one.count(WORN, step.src_start, step.src_end)
    worn += other.count(WORN, step.dest_start, step.dest_end)
    return _SoundStep(step.src_start, step.dest_start, length, min(worn - length, 0))


def _together(runs: Sequence[_SoundStep]) -> Iterator[tuple[int, int]]:
    """Yield first and last run of each stretch that goes together (best-scoring, gaps bounded)."""
    at = 0
    while at < len(runs):
        score = best = 0
        end = at
        for place in range(at, len(runs)):
            run = runs[place]
            score += run.score
            if score > best:
                best, end = score, place
            if score < 0 or score < best - GAP:
                break
        if best >= LEAST:
            yield at, end
        at = end + 1


def _places(runs: Sequence[_SoundStep], one: Sounds, other: Sounds) -> Iterator[MeetingPoint]:
    for run in runs:
        if run.score > 0:
            for n in range(run.length + 1):
                i, j = one.sign_at.get(run.a + n), other.sign_at.get(run.b + n)
                if i is not None and j is not None:
                    yield MeetingPoint(i, j, min(n, run.length - n))
