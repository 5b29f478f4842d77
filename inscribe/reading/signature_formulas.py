"""Turn the pieces of a signature into the order in which it is read aloud.

Signatures are written partly in Chinese word order: the opener 於 stands before its place and is
read after it (ni oite), 応 waits for 需 (motome ni ōjite), 造 is read after its object 之 (kore o
tsukuru). Each function takes the pieces from a position on and returns the units in reading
order, with how many pieces they used.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.signature_options import (
    Option,
    Unit,
    option,
    piece_options,
    word_options,
)
from inscribe.reading.signature_pieces import Piece, is_seal
from inscribe.reading.signature_spans import NAMES, PLACES, Span, add_names, add_phrases, add_places
from inscribe.reading.signature_words import Word, words_from

_PEOPLE = NAMES | {"surname", "clan", "title", "office", "place", "patron", "unread", "generation"}
_AFTER_PEOPLE = frozenset({"honorific", "relation", "school"})
_SUBJECTS: dict[str, frozenset[str]] = {
    "place": PLACES | {"residence", "opening"},
    "patron": _PEOPLE | _AFTER_PEOPLE | {"heading", "city", "place_suffix"},
    "purpose": _PEOPLE | _AFTER_PEOPLE | {"heading", "city", "place_suffix"},
    "model": _PEOPLE
    | _AFTER_PEOPLE
    | {"model_subject", "subject", "heading", "city", "place_suffix"},
    "means": _PEOPLE | _AFTER_PEOPLE | {"material", "model_subject", "city"},
}
_PART_OF_FAMILY = {"means": "material", "purpose": "patron"}
_OF = "の "
_CLAN_LINKED = 1.0
_ALSO_READ = "{} may be read so too"
_MAKERS = NAMES | {"surname", "clan"}
_AFTER_WORK = frozenset({"date", "age", "mark"})
Dated = dict[tuple[int, int], tuple[Option, ...]]
_LIVING = frozenset({"住", "居", "寓"})


class Arrangement:
    """The units in reading order, and the parts they belong to."""

    def __init__(self) -> None:
        self.units: list[Unit] = []
        self.spans: list[Span] = []


def arranged(pieces: Sequence[Piece], dated: Dated) -> Arrangement:
    """Return the units of a divided signature in reading order, with its parts.

    ``dated`` holds the readings of dates and ages by their first and last offset.
    """
    made = Arrangement()
    pieces = _place_before_verb(pieces)
    position = 0
    while position < len(pieces):
        used = _arrange_next(pieces, position, dated, made)
        position += used
    add_places(pieces, made.spans)
    add_phrases(pieces, made.spans)
    add_names(pieces, made.spans)
    return made


def _place_before_verb(pieces: Sequence[Piece]) -> Sequence[Piece]:
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


def _arrange_next(pieces: Sequence[Piece], at: int, dated: Dated, made: Arrangement) -> int:
    piece = pieces[at]
    following = pieces[at + 1] if at + 1 < len(pieces) else None
    if piece.kind == "opener" and piece.word and following:
        return _formula(pieces, at, piece.word, made)
    if piece.kind in ("verb", "unread") and following and following.kind == "object":
        return _verb_and_object(piece, following, made)
    if piece.kind == "object" and following:
        return _object_before(pieces, at, made)
    if piece.kind == "office" and at and made.units and made.units[-1].kind == "place":
        return _office(piece, made)
    if piece.kind == "residence" and piece.text in _LIVING and _places_follow(pieces, at):
        return _residence_before(pieces, at, made)
    if piece.kind in ("date", "age") and piece.word is None:
        made.units.append(_unit(piece, dated[piece.first, piece.last]))
    elif piece.kind == "clan" and following and following.kind in NAMES:
        made.units.append(_unit(piece, _clan_options(piece)))
    elif piece.kind == "name" and following and following.kind == "name":
        made.units.append(_plain(piece._replace(kind="art_name", order_kind="art_name")))
    else:
        made.units.append(_plain(piece))
    _add_own_span(piece, at, made.spans)
    return 1


def _add_own_span(piece: Piece, at: int, spans: list[Span]) -> None:
    """Add the part that a piece is by itself, if any."""
    if piece.order_kind == "closer:patron" or (piece.kind == "closer" and not at):
        spans.append(Span("patron", piece.first, piece.last))
    if piece.kind == "mark":
        spans.append(Span("seal" if is_seal(piece.text) else "kao", piece.first, piece.last))
    if key := _KEYS.get(piece.kind):
        first = piece.first
        if piece.kind in _GOES_ON and spans and spans[-1][::2] == ("date", first - 1):
            first = spans.pop().first
        spans.append(Span(key, first, piece.last))


_GOES_ON = frozenset({"date", "day_word"})  # a date after a date: 庚寅冬至 and 日
_KEYS = {
    "title": "title",
    "tonsured": "title",
    "appraised": "remark",
    "verb": "verb",
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


def _unit(piece: Piece, options: tuple[Option, ...], *, hyphen: bool = False) -> Unit:
    gloss = piece.word.gloss if piece.word else ""
    return Unit(piece.text, piece.kind, piece.first, piece.last, options, hyphen, gloss)


def _plain(piece: Piece) -> Unit:
    options = piece_options(piece)
    if piece.kind == "closer" and piece.word and piece.first:
        options = (option(f"の {piece.word.kana}"),)
    return _unit(piece, options, hyphen=_is_suffix(piece))


def _clan_options(piece: Piece) -> tuple[Option, ...]:
    """Return the readings of a clan before a name: Fujiwara, or Fujiwara no."""
    options = piece_options(piece)
    kana = piece.word.kana if piece.word else ""
    linked = option(f"{kana} の", _CLAN_LINKED, f"{piece.text} may be linked by no", capital=True)
    return (*options[:1], linked, *options[1:])


def _is_suffix(piece: Piece) -> bool:
    """Return whether a word is joined to the name before it with a hyphen: Tanaka-shi."""
    return piece.kind == "honorific" and piece.word is not None and " " not in piece.word.kana


def _verb_and_object(verb: Piece, thing: Piece, made: Arrangement) -> int:
    made.units += _object_then_verb(verb, thing)
    made.spans += [
        Span("verb", verb.first, verb.last),
        Span("object", thing.first, thing.last),
    ]
    return 2


def _object_then_verb(verb: Piece, thing: Piece) -> list[Unit]:
    """Return これを and the verb; an adverb within the verb's reading goes before both."""
    if verb.kind == "unread":
        return [_unit(thing, (option("これ を"),)), _plain(verb)]
    word = verb.word or Word(verb.text, "verb", verb.text)
    finite = word.with_object.split("/") if word.with_object else [word.kana]
    adverb = finite[0].rpartition(" ")[0]
    plain = tuple(kana.rpartition(" ")[2] for kana in finite)
    spoken = Word(word.text, word.kind, plain[0], alternatives=plain[1:])
    units = [_unit(thing, (option("これ を"),)), _unit(verb, word_options(spoken))]
    if adverb:
        units.insert(0, _unit(verb, (option(adverb),)))
    return units


def _object_before(pieces: Sequence[Piece], at: int, made: Arrangement) -> int:
    """之 that does not follow a verb: the object of the next one, or の between two names."""
    thing, following = pieces[at], pieces[at + 1]
    if following.kind == "verb" and (at == 0 or following.text != "作"):
        made.units += _object_then_verb(following, thing)
        made.spans += [
            Span("object", thing.first, thing.last),
            Span("verb", following.first, following.last),
        ]
        return 2
    if at and thing.text == "之":
        made.units.append(_unit(thing, (option("の"), option("これ を", 1.5, "之 as the object"))))
        return 1
    made.units.append(_unit(thing, piece_options(thing)))
    made.spans.append(Span("object", thing.first, thing.last))
    return 1


def _office(piece: Piece, made: Arrangement) -> int:
    """A province and an office are one title: 武蔵守 Musashi no kami."""
    province = made.units[-1]
    made.spans = [span for span in made.spans if span.first != province.first]
    made.units.append(_plain(piece))
    made.spans.append(Span("title", province.first, piece.last))
    return 1


def _places_follow(pieces: Sequence[Piece], at: int) -> bool:
    before_is_place = at > 0 and pieces[at - 1].kind in PLACES
    follows = at + 1 < len(pieces) and pieces[at + 1].kind in (
        "place",
        "city",
        "quarter",
        "unlisted_place",
    )
    return follows and not before_is_place


def _residence_before(pieces: Sequence[Piece], at: int, made: Arrangement) -> int:
    end = at + 1
    while end < len(pieces) and pieces[end].kind in PLACES:
        made.units.append(_plain(pieces[end]))
        end += 1
    made.spans.append(Span("place", pieces[at + 1].first, pieces[end - 1].last))
    made.spans.append(Span("residence", pieces[at].first, pieces[end - 1].last))
    living = pieces[at]
    options = (
        option("に じゅうす"),
        option("に すむ", 1.2, _ALSO_READ.format(living.text)),
        option("じゅう", 1.6, _ALSO_READ.format(living.text)),
    )
    made.units.append(_unit(living, options))
    return end - at


def _formula(pieces: Sequence[Piece], at: int, opener: Word, made: Arrangement) -> int:
    """An opener, what it governs, and its closer: read from behind."""
    subject, closers, end = _scope(pieces, at + 1, opener.family)
    if not subject and not closers:
        spoken = _opener_options(opener, opener.kana, opener.with_object)
        made.units.append(_unit(pieces[at], spoken))
        return 1
    units = [_governed(piece) for piece in subject]
    linked = bool(subject) and subject[-1].text == "之"
    for closer in closers:
        word = _as_closer(closer, opener.family)
        kana = (word.kana if word else closer.text).removeprefix(_OF)
        units.append(_unit(closer, (option(_OF + kana if units and not linked else kana),)))
        linked = False
    joined = _verb_follows(pieces, end, opener.family)
    main = opener.with_object if joined else opener.kana
    other = opener.kana if joined else opener.with_object
    units.append(_unit(pieces[at], _opener_options(opener, main, other)))
    made.units += units
    first, last = pieces[at].first, pieces[end - 1].last
    if opener.family == "place":
        first = subject[0].first if subject else first
    made.spans.append(Span(_PART_OF_FAMILY.get(opener.family, opener.family), first, last))
    return end - at


def _governed(piece: Piece) -> Unit:
    """Return a piece of what a formula governs; a 之 in it is no object but links (no)."""
    return _unit(piece, (option("の"),)) if piece.text == "之" else _plain(piece)


def _template(pattern: str) -> str:
    return pattern.replace("{}", "").strip()


def _opener_options(opener: Word, main: str, other: str) -> tuple[Option, ...]:
    patterns = dict.fromkeys(_template(p) for p in (main, other, *opener.alternatives))
    return tuple(
        option(p, 1.5 + 0.5 * rank if rank else 0.0, _ALSO_READ.format(opener.text) if rank else "")
        for rank, p in enumerate(patterns)
    )


def _scope(
    pieces: Sequence[Piece], start: int, family: str
) -> tuple[list[Piece], list[Piece], int]:
    """Return what an opener governs, its closers, and the position after them."""
    allowed = _SUBJECTS[family]
    end = start
    while end < len(pieces) and not _closes(pieces, end, family):
        if pieces[end].kind not in allowed or _complete(pieces, start, end, family):
            break
        end += 1
    subject = list(pieces[start:end])
    if _is_linking(pieces, end, family):
        subject.append(pieces[end])
        end += 1
    first_closer = end
    while end < len(pieces) and _closes(pieces, end, family) and end - first_closer < 2:
        end += 1
    return subject, list(pieces[first_closer:end]), end


def _closes(pieces: Sequence[Piece], at: int, family: str) -> bool:
    """Return whether a piece closes the formula: the verb of 以鉄作 or before 之 does not."""
    if pieces[at].kind == "verb" and (
        (family == "means" and pieces[at - 1].kind == "material")
        or (at + 1 < len(pieces) and pieces[at + 1].kind == "object")
    ):
        return False
    return _as_closer(pieces[at], family) is not None


def _is_linking(pieces: Sequence[Piece], at: int, family: str) -> bool:
    """Return whether a 之 stands at a place and links the subject with its closer (綾郷之意)."""
    return (
        at + 1 < len(pieces)
        and pieces[at].text == "之"
        and _as_closer(pieces[at + 1], family) is not None
    )


def _complete(pieces: Sequence[Piece], start: int, end: int, family: str) -> bool:
    """Return whether what an opener governs is complete before ``end``: a name, then no closer.

    A province after a town (於武州江戸越前…) is where the maker comes from.
    """
    if end == start:
        return False
    before, piece = pieces[end - 1], pieces[end]
    if family == "place" and piece.kind == "unread":
        return not _place_goes_on(pieces, end)
    if family == "place":
        return piece.kind == "place" and before.kind != "opening"
    if before.kind == "model_subject" and piece.kind in _MAKERS and _ends_in_work(pieces, end):
        return True  # 倣古法某作: the work is the maker's, not the model
    if piece.kind in _AFTER_PEOPLE or any(
        _as_closer(p, family) for p in pieces[end : end + 4] if family in ("patron", "model")
    ):
        return False
    if before.kind in ("honorific", "relation", "model_subject", "material"):
        return piece.kind not in ("honorific", "material", "patron")
    if before.kind in NAMES:
        return piece.kind in ("surname", "clan", "title", "heading", "place", "city") or (
            before.kind == "name" and piece.kind in NAMES
        )
    return before.kind == "patron"


def _ends_in_work(pieces: Sequence[Piece], at: int) -> bool:
    """Return whether nothing but names and a verb (or a date after it) follows: 某作."""
    end = at
    while end < len(pieces) and pieces[end].kind in _MAKERS:
        end += 1
    rest = pieces[end:]
    return bool(rest) and rest[0].text == "作" and all(p.kind in _AFTER_WORK for p in rest[1:])


def _place_goes_on(pieces: Sequence[Piece], at: int) -> bool:
    """Return whether unread signs after a place belong to it: a place or 住 follows them."""
    for piece in pieces[at:]:
        if piece.kind != "unread":
            return piece.kind in PLACES | {"residence"}
    return False


def _as_closer(piece: Piece, family: str) -> Word | None:
    """Return the closer a piece is, or could be, in a formula of this family."""
    wanted = "model" if family == "means" else family
    if piece.kind == "pictured" and wanted == "model":
        return piece.word
    if piece.kind not in ("closer", "verb", "model_subject"):
        return None
    for word in words_from(piece.text[0]).get(piece.text, ()):
        if word.kind == "closer" and word.family == wanted:
            return word
    return None


def _verb_follows(pieces: Sequence[Piece], at: int, family: str) -> bool:
    if family == "model" and any(piece.kind in _MAKERS for piece in pieces[at:]):
        return True  # 倣古図某: a name alone implies that it made this
    if family in ("purpose", "model"):  # a name may stand between: 為某君某作
        return any(piece.kind == "verb" for piece in pieces[at:])
    return at < len(pieces) and pieces[at].kind in ("verb", "adverb", "object")
