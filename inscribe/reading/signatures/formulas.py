"""Turn the pieces of a signature into the order in which it is read aloud.

Signatures are written partly in Chinese word order: the opener 於 stands before its place and is
read after it (ni oite), 応 waits for 需 (motome ni ōjite), 造 is read after its object 之 (kore o
tsukuru). Each function takes the pieces from a position on and returns the units in reading
order, with how many pieces they used.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.signatures.objects import ALSO_READ, done_by_others, object_then_verb
from inscribe.reading.signatures.options import Option, Unit, option, piece_options
from inscribe.reading.signatures.pieces import SignaturePiece, is_seal
from inscribe.reading.signatures.scope import as_closer, owns, scope, verb_follows
from inscribe.reading.signatures.spans import (
    NAMES,
    PLACES,
    PartSpan,
    add_names,
    add_phrases,
    add_places,
)
from inscribe.reading.signatures.stays import STAY, opener_options, stay
from inscribe.reading.signatures.units import (
    clan_options,
    plain,
    unit,
    with_sorts_of_names,
)
from inscribe.reading.words import SignatureWord

_PART_OF_FAMILY = {
    "means": "material",
    "purpose": "patron",
    "gift": "patron",
    "line": "relation",
    "company": "relation",
    "order": "relation",
    "work": "heading",
}
_NAMES_ALONE = "naming"  # what such a formula gives is the name in it
_OF = "の "
Dated = dict[tuple[int, int], tuple[Option, ...]]
# Words of living before a place (住武州), as they are said after it.
_LIVING = {
    "住": ("に じゅうす", "に すむ", "じゅう"),
    "居": ("に おる", "に きょす", "きょ"),
    "寓": ("に ぐうす", "ぐう"),
}


class Arrangement:
    """The units in reading order, and the parts they belong to."""

    def __init__(self, ends: bool) -> None:
        self.ends = ends
        self.units: list[Unit] = []
        self.spans: list[PartSpan] = []


def arranged(pieces: Sequence[SignaturePiece], dated: Dated, *, ends: bool = False) -> Arrangement:
    """Return the units of a divided signature in reading order, with its parts.

    ``dated`` holds the readings of dates and ages by their first and last offset. ``ends``: the
    text is a sentence of its own (motome ni ōzu), not all that is carved (motome ni ōjite …).
    """
    made = Arrangement(ends)
    pieces = with_sorts_of_names(done_by_others(_place_before_verb(pieces)))
    position = 0
    while position < len(pieces):
        used = _arrange_next(pieces, position, dated, made)
        position += used
    add_places(pieces, made.spans)
    add_phrases(pieces, made.spans)
    add_names(pieces, made.spans)
    return made


def _place_before_verb(pieces: Sequence[SignaturePiece]) -> Sequence[SignaturePiece]:
    """Return the pieces with a place that ends the making (鐫之於東都) before its verb."""
    for at, piece in enumerate(pieces):
        verb = at - 2 if at and pieces[at - 1].kind == "object" else at - 1
        if piece.order_kind != "opener:place" or verb < 0 or pieces[verb].kind != "verb":
            continue
        end = at + 1
        while end < len(pieces) and pieces[end].kind in PLACES | {"opening"}:
            end += 1
        if end > at + 1 and all(p.kind in ("date", "age", "mark") for p in pieces[end:]):
            return (*pieces[:verb], *pieces[at:end], *pieces[verb:at], *pieces[end:])
    return pieces


def _arrange_next(
    pieces: Sequence[SignaturePiece], at: int, dated: Dated, made: Arrangement
) -> int:
    piece = pieces[at]
    following = pieces[at + 1] if at + 1 < len(pieces) else None
    if piece.kind == "opener" and piece.word and following:
        return _formula(pieces, at, piece.word, made)
    if piece.kind in ("verb", "transitive", "unread") and following and following.kind == "object":
        return _verb_and_object(piece, following, made)
    if piece.kind == "object" and following:
        return _object_before(pieces, at, made)
    if piece.kind == "office" and at and made.units and made.units[-1].kind == "place":
        return _office(piece, made)
    if piece.kind == "residence" and piece.text in _LIVING and _places_follow(pieces, at):
        return _residence_before(pieces, at, made)
    if piece.kind in ("date", "age") and piece.word is None:
        made.units.append(unit(piece, dated[piece.first, piece.last]))
    elif piece.kind == "clan" and following and following.kind in NAMES and not _told(pieces, at):
        made.units.append(unit(piece, clan_options(piece)))
    elif piece.kind == "name" and following and following.kind == "name":
        made.units.append(plain(piece._replace(kind="art_name", order_kind="art_name")))
    else:
        made.units.append(plain(piece, linked=at > 0 and pieces[at - 1].text == "之"))
    _add_own_span(piece, at, made.spans)
    return 1


def _told(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether a clan is told as such and no part of the name after it: 本姓橘."""
    return at > 0 and pieces[at - 1].kind == "heading"


def _add_own_span(piece: SignaturePiece, at: int, spans: list[PartSpan]) -> None:
    """Add the part that a piece is by itself, if any."""
    if piece.order_kind == "closer:patron" or (piece.kind == "closer" and not at):
        spans.append(PartSpan("patron", piece.first, piece.last))
    if piece.kind == "mark":
        spans.append(PartSpan("seal" if is_seal(piece.text) else "kao", piece.first, piece.last))
    if key := _KEYS.get(piece.kind):
        first = piece.first
        if piece.kind in _GOES_ON and spans and spans[-1][::2] == ("date", first - 1):
            first = spans.pop().first
        spans.append(PartSpan(key, first, piece.last))


_GOES_ON = frozenset({"date", "day_word"})  # a date after a date: 庚寅冬至 and 日
_KEYS = {
    "title": "title",
    "office": "title",
    "tonsured": "title",
    "appraised": "remark",
    "verb": "verb",
    "transitive": "verb",
    "object": "object",
    "date": "date",
    "day_word": "date",
    "age": "age",
    "generation": "generation",
    "school": "school",
    "heading": "heading",
    "material": "material",
    "subject": "subject",
    "remark": "remark",
    "patron": "patron",
}


def _verb_and_object(verb: SignaturePiece, thing: SignaturePiece, made: Arrangement) -> int:
    made.units += object_then_verb(verb, thing)
    made.spans += [
        PartSpan("verb", verb.first, verb.last),
        PartSpan("object", thing.first, thing.last),
    ]
    return 2


def _object_before(pieces: Sequence[SignaturePiece], at: int, made: Arrangement) -> int:
    """之 that does not follow a verb: the object of the next one, or の between two names."""
    thing, following = pieces[at], pieces[at + 1]
    if following.kind in ("verb", "transitive") and (at == 0 or following.text != "作"):
        made.units += object_then_verb(following, thing)
        made.spans += [
            PartSpan("object", thing.first, thing.last),
            PartSpan("verb", following.first, following.last),
        ]
        return 2
    if at and thing.text == "之":
        made.units.append(unit(thing, (option("の"), option("これ を", 1.5, "之 as the object"))))
        return 1
    made.units.append(unit(thing, piece_options(thing)))
    made.spans.append(PartSpan("object", thing.first, thing.last))
    return 1


def _office(piece: SignaturePiece, made: Arrangement) -> int:
    """A province and an office are one title: 武蔵守 Musashi no kami."""
    province = made.units[-1]
    made.spans = [span for span in made.spans if span.first != province.first]
    made.units.append(unit(piece, piece_options(piece)))
    made.spans.append(PartSpan("title", province.first, piece.last))
    return 1


def _places_follow(pieces: Sequence[SignaturePiece], at: int) -> bool:
    before_is_place = at > 0 and pieces[at - 1].kind in PLACES
    follows = at + 1 < len(pieces) and pieces[at + 1].kind in (
        "place",
        "city",
        "quarter",
        "unlisted_place",
    )
    return follows and not before_is_place


def _residence_before(pieces: Sequence[SignaturePiece], at: int, made: Arrangement) -> int:
    end = at + 1
    while end < len(pieces) and pieces[end].kind in PLACES:
        made.units.append(plain(pieces[end]))
        end += 1
    made.spans.append(PartSpan("place", pieces[at + 1].first, pieces[end - 1].last))
    made.spans.append(PartSpan("residence", pieces[at].first, pieces[end - 1].last))
    living = pieces[at]
    usual, *others = _LIVING[living.text]
    options = (
        option(usual),
        *(option(o, 1.2 + 0.4 * n, ALSO_READ.format(living.text)) for n, o in enumerate(others)),
    )
    made.units.append(unit(living, options))
    return end - at


def _formula(
    pieces: Sequence[SignaturePiece], at: int, opener: SignatureWord, made: Arrangement
) -> int:
    """An opener, what it governs, and its closer: read from behind."""
    subject, closers, end = scope(pieces, at + 1, opener.family)
    if not subject and not closers:
        patterns = (opener.kana, opener.with_object)
        if opener.family in ("gift", "purpose"):
            patterns = (_without_particle(opener.kana), _without_particle(opener.with_object))
        spoken = opener_options(opener, *patterns)
        made.units.append(unit(pieces[at], spoken))
        return 1
    units = [
        _governed(piece, before) for before, piece in zip([None, *subject], subject, strict=False)
    ]
    if opener.family == STAY and closers:
        made.units += stay(pieces[at], units, closers)
        made.spans.append(PartSpan("place", subject[0].first, closers[0].first - 1))
        return end - at
    linked = bool(subject) and subject[-1].text == "之"
    for closer in closers:
        word = as_closer(closer, opener.family)
        kana = (word.kana if word else closer.text).removeprefix(_OF)
        units.append(unit(closer, (option(_OF + kana if units and not linked else kana),)))
        linked = False
    told = made.ends or any(piece.kind == "verb" for piece in pieces[:at])
    ending = opener.family == "patron" and end == len(pieces)
    hanging = ending and not (subject and told)  # 応需 alone: motome ni ōjite
    joined = hanging or verb_follows(pieces, end, opener.family)
    main = opener.with_object if joined else opener.kana
    other = opener.kana if joined else opener.with_object
    ahead, _, after = main.rpartition("{}")
    if ahead:  # 右 stands before what it is said of, 又号 on both sides
        units.insert(0, unit(pieces[at], (option(ahead.strip()),)))
    if after:
        spoken = opener_options(opener, after if ahead else main, after if ahead else other)
        units.append(unit(pieces[at], spoken))
    made.units += units
    if opener.family == _NAMES_ALONE:
        return end - at
    first, last = pieces[at].first, pieces[end - 1].last
    if opener.family == "place":
        first = subject[0].first if subject else first
    made.spans.append(PartSpan(_PART_OF_FAMILY.get(opener.family, opener.family), first, last))
    return end - at


def _governed(piece: SignaturePiece, before: SignaturePiece | None) -> Unit:
    """Return a piece of what a formula governs; a 之 in it is no object but links (no)."""
    if piece.text == "之":
        return unit(piece, (option("の"),))
    if piece.word and before and owns(before, piece):
        return unit(piece, (option(_OF + piece.word.kana.removeprefix(_OF)),))
    return plain(piece)


def _without_particle(pattern: str) -> str:
    """Return a pattern without what it says of a receiver: {} に きぞう, きぞう."""
    return pattern.removeprefix("{} に ").removeprefix("{} を ")
