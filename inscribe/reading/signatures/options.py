"""How each piece of a signature may be read: its options, the best first, each with its reason."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from inscribe import tables
from inscribe.forms import KAO
from inscribe.reading import names
from inscribe.reading.names import choices, mixed_name
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.spelling import hepburn, hiragana
from inscribe.reading.words import POET, SignatureWord, words_of

CAPITALISED = frozenset(
    {
        "place",
        "city",
        "quarter",
        "title",
        "surname",
        "clan",
        "name",
        "art_name",
        "common_name",
        "unlisted_place",
        "subject",
    }
)
# What a name is by what stands beside it (the order kind of its piece).
GIVEN, PEN = "name:given", "name:pen"
_NO, _TEMPLE = "の", "寺"
UNREAD_KANA = "□"
UNREAD_ROMAJI = "…"
KAO_IN_LETTERS = "(kaō)"

KANA_ONLY = re.compile("[ぁ-ゖァ-ヺー]+")
# What each further reading of a word costs, and how steeply readings of names fall off.
_ALTERNATIVE = 1.1
_LEAST_SHARE = 1e-4
_NAME_OPTIONS = 6
_MOST_KNOWN = 10_000  # pieces whose readings are kept


class Option(NamedTuple):
    """One reading of a piece. ``cost`` is 0 for the best; ``reason`` says why it is read so."""

    kana: str  # words separated by spaces
    romaji: str
    cost: float = 0.0
    reason: str = ""


class Unit(NamedTuple):
    """A stretch of signs with its readings, in the order in which it is read aloud."""

    text: str
    kind: str
    first: int  # offsets in the normalised text, both counted
    last: int
    options: tuple[Option, ...]
    hyphen: bool = False  # joined to the word before with a hyphen
    gloss: str = ""


def letters(kana: str, *, capital: bool = False) -> str:
    """Return words in kana as Latin letters; を alone is the particle o, は after a word wa.

    >>> letters("これ を"), letters("この つば は"), letters("むさし の かみ", capital=True)
    ('kore o', 'kono tsuba wa', 'Musashi no kami')
    """
    spelt = kana.split()
    particles = {"を": "o", "は": "wa"} if len(spelt) > 1 else {"を": "o"}
    words = [particles.get(word) or _spelt(word) for word in spelt]
    text = " ".join(words)
    return text[:1].upper() + text[1:] if capital else text


def _spelt(word: str) -> str:
    """Return a word in Latin letters; one in katakana is a proper name."""
    spelt = hepburn(hiragana(word))
    return spelt[:1].upper() + spelt[1:] if "ァ" <= word[0] <= "ヺ" else spelt


def option(kana: str, cost: float = 0.0, reason: str = "", *, capital: bool = False) -> Option:
    """Return an option made from kana with marks of division."""
    romaji = letters(kana, capital=capital)
    return Option(hiragana(kana.replace("|", "")), romaji, cost, reason)


def word_options(word: SignatureWord, kana: str = "") -> tuple[Option, ...]:
    """Return the readings of a word of the glossary; ``kana`` replaces its first reading."""
    capital = word.kind in CAPITALISED
    if word.family == POET:
        return tuple(
            Option(kana, _full_name(kana), _ALTERNATIVE * rank, word.gloss)
            for rank, kana in enumerate((word.kana, *word.alternatives))
        )
    found = [option(kana or word.kana, capital=capital)]
    known = {found[0].kana}
    for rank, other in enumerate(word.alternatives, start=1):
        made = option(other, _ALTERNATIVE * rank + 0.9, f"{word.text} may be read so too")
        made = option(other, made.cost, made.reason, capital=capital)
        if made.kana not in known:
            known.add(made.kana)
            found.append(made)
    return tuple(found)


def _full_name(kana: str) -> str:
    """Return a whole name in Latin letters: Kakinomoto no Hitomaro, Nōin hōshi."""
    small = {_NO, *_ranks()}
    return " ".join(letters(word, capital=word not in small) for word in kana.split())


@tables.cached()
def _ranks() -> frozenset[str]:
    return frozenset(word for row in tables.rows("poets_ranks") for word in row["kana"].split())


def piece_options(piece: SignaturePiece) -> tuple[Option, ...]:
    """Return the readings of a piece that stands for itself."""
    return _options_of(piece._replace(first=0, last=0, cost=0.0))  # alike wherever it stands


@tables.cached(_MOST_KNOWN)
def _options_of(piece: SignaturePiece) -> tuple[Option, ...]:
    if piece.word is not None:
        return word_options(piece.word)
    if KANA_ONLY.fullmatch(piece.text) and piece.kind == "name":
        return (option(hiragana(piece.text), reason="written in kana", capital=True),)
    if piece.kind == "name" and (halves := mixed_name(piece.text)):
        return (option("|".join(halves), reason="partly written in kana", capital=True),)
    if piece.kind in ("name", "art_name", "common_name", "surname", "unlisted_place"):
        return _name_options(piece)
    if piece.kind == "unread":
        return (Option(UNREAD_KANA, UNREAD_ROMAJI, reason="unreadable"),)
    if piece.kind == "mark":
        if piece.text == KAO:
            return (Option("", KAO_IN_LETTERS, reason="a kao"),)
        return (Option("", "", reason="a mark without a reading"),)
    return _other_options(piece.text)


_NAME_KINDS: dict[str, names.NameKind] = {
    "name": "maker",
    GIVEN: "given",
    PEN: "art",
    "art_name": "art",
    "common_name": "common",
    "surname": "surname",
    "unlisted_place": "place",
}


def _name_kind(piece: SignaturePiece) -> names.NameKind:
    return _NAME_KINDS.get(piece.order_kind) or _NAME_KINDS[piece.kind]


def _name_options(piece: SignaturePiece) -> tuple[Option, ...]:
    temple = piece.kind == "unlisted_place" and piece.text[-1] == _TEMPLE
    by_sound = temple and len(piece.text) > 2 and not names.known(piece.text).place
    kind: names.NameKind = "maker" if by_sound else _name_kind(piece)
    found = names.readings(piece.text, kind)[:_NAME_OPTIONS]
    if piece.order_kind == GIVEN and names.is_said_alone(piece.text):  # 三輪某: Miwa bō
        sounds = {choice.kana for choice in choices(piece.text, "alone") if choice.is_on}
        found = tuple(sorted(found, key=lambda reading: reading.plain_kana not in sounds))
    best = found[0].score
    made = []
    for rank, reading in enumerate(found):
        share = min(1.0, max(reading.score / best, _LEAST_SHARE))
        romaji = reading.romaji.replace(UNREAD_KANA, UNREAD_ROMAJI)
        cost = -math.log(share) if rank else 0.0
        if piece.kind == "unlisted_place":
            romaji = _hyphened(piece.text, reading.plain_kana, romaji)
        made.append(Option(reading.plain_kana, romaji, cost, reading.reason))
    return tuple(made)


def _hyphened(place: str, kana: str, romaji: str) -> str:
    """Return a place with a hyphen before what it is, where the word division has one: Nagano-ken.

    >>> _hyphened("長野県", "ながのけん", "Naganoken")
    'Nagano-ken'
    """
    said = {word.kana for word in words_of(place[-1]) if word.kind == "place_suffix"}
    for suffix in said & _suffixes():
        end = hepburn(suffix)
        if len(kana) > len(suffix) and kana.endswith(suffix) and romaji.endswith(end):
            return f"{romaji[: -len(end)]}-{end}"
    return romaji


@tables.cached()
def _suffixes() -> frozenset[str]:
    rows = tables.rows("word_division")
    return frozenset(row["kana"] for row in rows if row["kind"] == "hyphen")


def _other_options(text: str) -> tuple[Option, ...]:
    kana = hiragana(text)
    if all("ぁ" <= char <= "ー" for char in kana):
        return (option(kana),)
    found = choices(text, "first") if len(text) == 1 else ()
    if not found:
        return (Option(text, text, reason="no reading is known"),)
    return tuple(
        option(c.kana, -math.log(max(c.share / found[0].share, _LEAST_SHARE)), f"{text}, unplaced")
        for c in found[:3]
    )
