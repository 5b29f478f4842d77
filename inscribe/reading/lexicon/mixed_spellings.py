"""Compounds as manuscripts mix them: one part in its character, the other in kana or cut short.

夕暮 is also written 夕くれ, 故里 also ふる里. Where the kana of a compound divide into a reading of
either character is known from the words each is by itself.

>>> known = {"夕": {"ゆふ"}, "暮": {"くれ"}}
>>> sorted(mixed_spellings("夕暮", "ゆふぐれ", known))
['ゆふ暮', '夕ぐれ']
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

_UNVOICED = str.maketrans(
    "がぎぐげござじずぜぞだぢづでどばびぶべぼ", "かきくけこさしすせそたちつてとはひふへほ"
)
_COMPOUND_VERB = re.compile(
    "([\u4e00-\u9fff])([\u3041-\u3096]{1,2})([\u4e00-\u9fff]+[\u3041-\u3096]*)"
)
_KANJI = re.compile("[\u4e00-\u9fff]+")
_LEAST = 2  # kana; a part of one kana would be taken for a particle ...
_NO_PARTICLE = "べ"  # ... but 野へ: に and の, which follow it, do not follow the particle
_BETWEEN = ("", "の", "が")


def readings_of_signs(words: Iterable[tuple[str, str]]) -> dict[str, set[str]]:
    """Return what each sign that is a word by itself is read, of words and their kana."""
    readings: dict[str, set[str]] = {}
    for written, kana in words:
        if len(written) == 1 and written != kana:
            readings.setdefault(written, set()).add(kana)
    return readings


def mixed_spellings(written: str, kana: str, known: Mapping[str, set[str]]) -> Iterator[str]:
    """Yield a compound of two characters, or of two with の or が, with either part in kana.

    Of a longer one, with the first character in kana, or all but the last.

    >>> sorted(mixed_spellings("水無瀬川", "みなせがは", {"川": {"かは"}}))
    ['みなせ川']
    """
    first, between, second = written[:1], written[1:-1], written[-1:]
    if between not in _BETWEEN:
        yield from _of_many_signs(written, kana, known)
        return
    if first not in known or second not in known or first == second:
        return
    for head in known[first]:
        tail = kana[len(head) + len(between) :]
        if not kana.startswith(head + between) or not _is(tail, known[second]):
            continue
        if len(tail) >= _LEAST or between or tail == _NO_PARTICLE:
            yield first + between + tail
        if len(head) >= _LEAST:
            yield head + between + second
        return


def _of_many_signs(written: str, kana: str, known: Mapping[str, set[str]]) -> Iterator[str]:
    """Yield a compound of more than two kanji with its first sign in kana, or all but its last."""
    if not _KANJI.fullmatch(written):
        return
    for at in range(_LEAST, len(kana)):
        if _is_spelt(kana[at:], written[1:], known):
            yield kana[:at] + written[1:]
        if _is(kana[at:], known.get(written[-1], set())):
            yield kana[:at] + written[-1]


def _is_spelt(kana: str, written: str, known: Mapping[str, set[str]]) -> bool:
    """Whether kana are known readings of signs, one after the other."""
    if not written:
        return not kana
    heads = (kana[:at] for at in range(1, len(kana) + 1))
    return any(
        _is(head, known.get(written[0], set())) and _is_spelt(kana[len(head) :], written[1:], known)
        for head in heads
    )


def compound_stems(written: str, kana: str, *, covers: bool) -> Iterator[str]:
    """Yield the stem of a compound verb with okurigana left out, or with a part in kana.

    With ``covers``, its last sign stands for the ending too and stays.

    >>> list(compound_stems("思ひ知", "おもひし", covers=False))
    ['思知', 'おもひ知', '思ひし', '思し']
    """
    match = _COMPOUND_VERB.fullmatch(written)
    if match is None:
        return
    first, inner, last = match.groups()
    at = kana.find(inner, 1)
    if at < 0:
        return
    head, tail = kana[: at + len(inner)], kana[at + len(inner) :]
    yield first + last
    yield head + last
    if tail and not covers:
        yield first + inner + tail
        yield first + tail


def cut_short(written: str, kana: str) -> tuple[str, str] | None:
    """Return a compound verb's stem without its first okurigana, and the kana of its first stem.

    The second verb is in kana. None where a stem is not of that kind.

    >>> cut_short("飛び込", "とびこ"), cut_short("立ち止ま", "たちどま"), cut_short("込", "こ")
    (('飛こ', 'と'), ('立どま', 'た'), None)
    """
    match = _COMPOUND_VERB.fullmatch(written)
    at = kana.find(match[2], 1) if match else -1
    if match is None or at < 0:
        return None
    tail = kana[at + len(match[2]) :]
    return (match[1] + tail, kana[:at]) if tail else None


def _is(tail: str, readings: set[str]) -> bool:
    return any(tail[1:] == kana[1:] and _plain(tail) == _plain(kana) for kana in readings)


def _plain(kana: str) -> str:
    return kana[:1].translate(_UNVOICED)
