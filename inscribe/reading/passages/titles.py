"""Headings and dedications by their frame: 飛梅之図, 右忠岑歌; 為某君, 某所持."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain
from typing import NamedTuple

from inscribe import tables
from inscribe.reading.mecab import unidic_words
from inscribe.reading.passages.order import closing_words
from inscribe.reading.passages.sayings import is_known_saying
from inscribe.reading.words import Kind, words_from, words_of

_SUBJECT = 5.0  # log odds that a subject of fittings that stands before a text is its heading
_HEADING_SIGN = 0.6
_TO_A_GOD, _GOD_SIGN = 6.0, 2.3  # more than the god's name is worth as an invocation
_LONGEST = 12
_VIEW = 4  # signs of one view of eight, 石山秋月
_SIDES = {"右": "みぎ", "左": "ひだり"}  # 右忠岑歌: where the poem stands whose title it is
_SAYING_SIGN = 2.2  # as much as it is worth to be known as a saying: 瀟湘八景之内
_TO_A_PERSON = 4.0  # 寄某君 is no topic


class Frame(NamedTuple):
    """What a heading or a dedication begins and ends with, and what that is worth."""

    kind: str
    begins: str
    ends: str
    least: int
    most: int
    place: str
    weight: float
    said_first: str = ""  # kana of ``begins``, words divided by spaces
    said_last: str = ""  # and of ``ends``
    order: str = "straight"

    def fits(self, text: str) -> bool:
        """Whether a text is so framed."""
        inner = len(text) - len(self.begins) - len(self.ends)
        fitting = self.least <= inner <= self.most
        return fitting and text.startswith(self.begins) and text.endswith(self.ends)

    def inner_of(self, text: str) -> str:
        """Return what stands within the frame."""
        return text[len(self.begins) : len(text) - len(self.ends)]


def framed_weight(kind: Kind, text: str, *, first: bool, last: bool) -> float:
    """Return the log odds that a stretch is a heading or a dedication; 0 where nothing says so.

    ``first`` and ``last``: whether it may stand before, or after, the text it belongs to.

    >>> framed_weight("heading", "飛梅之図", first=True, last=False) > 5
    True
    >>> framed_weight("dedication", "為籾山君", first=True, last=True) > 5
    True
    """
    stem = _without_closing(text) if kind == "dedication" else text
    closed = stem != text  # 為某君某刻 is the carver's, 為某君造之 names none
    worth = [
        frame.weight
        for frame in _frames_like(kind, stem)
        if frame.fits(stem)
        and (frame.place == "any" or (first if frame.place == "first" else last))
        and not (closed and not frame.ends and not _names_with_respect(stem))
    ]
    if kind == "heading" and worth and begins_formula(text) and not _frames_one_word(text):
        worth = []
    if kind == "heading" and len(text) > 2 and is_subject(text):
        worth.append(_SUBJECT)
    if kind == "heading" and len(text) > 2 and is_work(text):
        worth.append(_SUBJECT)
    if kind == "heading" and "之内" in text:  # 近江八景之内石山秋月
        whole, part = text.split("之内", 1)
        if is_subject(part) or len(part) == _VIEW:  # not 六歌仙之内綾国
            worth.append(_SUBJECT * is_subject(part) + _SUBJECT * is_subject(whole))
        if worth and is_known_saying(whole):
            worth.append(_SUBJECT + _SAYING_SIGN * len(whole))
    if kind == "dedication" and worth and _is_given_to_a_god(text):
        worth = [_TO_A_GOD + _GOD_SIGN * len(text)]
    elif kind == "dedication" and worth and _names_with_respect(stem):
        worth.append(_TO_A_PERSON + max(worth))
    best = max(worth, default=0.0)
    return best + _HEADING_SIGN * len(text) if best and kind == "heading" else best


@tables.cached()
def set_headings() -> tuple[str, ...]:
    """Return the headings within whose frame nothing can stand: 題しらず, 読人不知."""
    return tuple(frame.begins + frame.ends for frame in _frames() if frame.most == 0)


def _frames_one_word(text: str) -> bool:
    """Whether nothing stands within the frame, or a word: 読人不知, 寿老人図, 為朝之図."""
    return any(frame.fits(text) and _is_one_word(frame.inner_of(text)) for frame in _frames())


def _is_one_word(text: str) -> bool:
    """Whether a text is a subject of fittings, a work, or a noun of the dictionary; or empty."""
    if not text or is_subject(text) or is_work(text):
        return True
    words = unidic_words(text) if len(text) > 1 else ()
    return len(words) == 1 and words[0].known


def _without_closing(text: str) -> str:
    """Return a text without the verb and the 之 that close it."""
    stem = text.removesuffix("之")
    verb = max((word for word in closing_words() if stem.endswith(word)), key=len, default="")
    return stem.removesuffix(verb) if verb else text


_SECTIONS = frozenset({"section", "chapter"})
_COURT, _OFFICES = 2, range(3, 7)  # signs of an office at court: 右京, 右京進


def begins_formula(text: str) -> bool:
    """Whether a text begins with what opens a signature: 倣古図, 右京進某 are no titles."""
    ends = (_COURT, *_OFFICES) if text[0] in _SIDES else _OFFICES
    if any(word.kind == "title" for end in ends for word in words_of(text[:end])):
        return True
    openers = (words_from(text[0]).get(text[0], ()), words_of(text[:2]))  # 写, 縮写
    return text[0] not in _SIDES and any(word.kind == "opener" for word in chain(*openers))


_WITH_OBJECT, _WHAT = frozenset("之焉是"), "所"


def is_verb_there(text: str, end: int) -> bool:
    """Whether the sign before ``end`` is a verb there, not the end of a title: 某図之, 某所図.

    >>> [is_verb_there(*of) for of in (("綾国図之", 3), ("綾国所図", 4), ("龍田川図綾国作", 4))]
    [True, True, False]
    """
    if end > 1 and text[end - 2] == _WHAT:
        return True
    if text[end : end + 1] in _WITH_OBJECT and len(text) == end + 1:
        return any(word.kind == "verb" for word in words_of(text[end - 1]))
    following = (text[end - 1 : end + 1], text[end - 1 : end + 2])
    return any(
        word.kind == "verb" for each in following if end < len(text) for word in words_of(each)
    )


def _is_given_to_a_god(text: str) -> bool:
    """Whether 奉納 and its like stand before a god or a Buddha: 奉納諏訪大明神."""
    return any(
        text.startswith(frame.begins) and is_known_saying(text[len(frame.begins) :])
        for frame in _frames()
        if frame.kind == "dedication" and frame.begins
    )


def _names_with_respect(text: str) -> bool:
    """Whether a text ends in 君, 先生 and their like."""
    return any(
        word.kind == "honorific"
        for at in range(1, len(text))
        for word in words_from(text[at]).get(text[at:], ())
    )


def frame_of(kind: Kind, text: str) -> Frame | None:
    """Return the likeliest frame of a heading or dedication whose words have a fixed reading."""
    if kind == "dedication" and _without_closing(text) != text:
        return None
    fitting = [frame for frame in _frames() if frame.kind == kind and frame.fits(text)]
    said = [frame for frame in fitting if frame.said_first or frame.said_last]
    return max(said, key=lambda frame: (frame.weight, len(frame.ends)), default=None)


def is_work(plain: str) -> bool:
    """Whether a text is the title of a work that the tables have, or of a part: 古今集秋歌上."""
    return any(
        word.kind == "work" and _are_sections(plain[end:])
        for end in range(2, len(plain) + 1)
        for word in words_from(plain[0]).get(plain[:end], ())
    )


def _are_sections(rest: str) -> bool:
    """Whether the rest of a title is parts of a work and nothing else: 巻第一春歌上."""
    return not rest or any(
        word.kind in _SECTIONS and _are_sections(rest[end:])
        for end in range(1, len(rest) + 1)
        for word in words_of(rest[:end])
    )


def is_subject(text: str) -> bool:
    """Whether a text is a subject of fittings as titles name it."""
    return bool(text) and any(word.kind == "subject" for word in words_from(text[0]).get(text, ()))


def ends_of_titles(plain: str, starts: Iterable[int]) -> Iterator[int]:
    """Yield the offsets at which a heading may end that begins at one of ``starts``."""
    for start in starts:
        for end in range(start + 2, min(len(plain), start + _LONGEST) + 1):
            if framed_weight("heading", plain[start:end], first=True, last=True):
                yield end


def _frames_like(kind: Kind, text: str) -> Iterator[Frame]:
    """Yield the frames of a kind whose first and last signs are those of a text, or open."""
    found = _frames_by_ends()
    for begins in (text[:1], ""):
        for ends in (text[-1:], ""):
            yield from found.get((kind, begins, ends), ())


@tables.cached()
def _frames_by_ends() -> dict[tuple[str, str, str], list[Frame]]:
    found: dict[tuple[str, str, str], list[Frame]] = {}
    for frame in _frames():
        found.setdefault((frame.kind, frame.begins[:1], frame.ends[-1:]), []).append(frame)
    return found


@tables.cached()
def _frames() -> tuple[Frame, ...]:
    found = [
        Frame(
            row["kind"],
            begins,
            ends,
            int(row["least"]),
            int(row["most"]),
            row["place"],
            float(row["weight"]),
            row["said_first"],
            row["said_last"],
            row["order"],
        )
        for row in tables.rows("passage_frames")
        for begins in tables.listed(row["begins"]) or ("",)
        for ends in tables.listed(row["ends"]) or ("",)
    ]
    above = [frame for frame in found if frame.begins == "右"]
    left = [frame._replace(begins="左", said_first=_SIDES["左"]) for frame in above]
    return (*found, *left)
