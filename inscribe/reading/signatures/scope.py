"""How far a formula of a signature reaches: what its opener governs, and what closes it.

An opener (於, 応, 為, 倣, 以) governs what follows it until a closer of its family (需, 図), or
until what it governs is complete.
"""

from __future__ import annotations

from collections.abc import Sequence

from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.signatures.spans import NAMES, PLACES
from inscribe.reading.words import SignatureWord, words_of

_PEOPLE = NAMES | {"surname", "clan", "title", "office", "place", "patron", "unread", "generation"}
_AFTER_PEOPLE = frozenset({"honorific", "relation", "school"})
_SUBJECTS: dict[str, frozenset[str]] = {
    "place": PLACES | {"residence", "opening", "art_name"},
    "stay": PLACES | {"opening"},
    "patron": _PEOPLE | _AFTER_PEOPLE | {"heading", "city", "place_suffix"},
    "purpose": _PEOPLE
    | _AFTER_PEOPLE
    | {"heading", "city", "place_suffix", "age", "invocation", "subject", "remark"},
    "model": _PEOPLE
    | _AFTER_PEOPLE
    | {"model_subject", "subject", "heading", "city", "place_suffix"},
    "gift": _PEOPLE
    | _AFTER_PEOPLE
    | {"heading", "city", "place_suffix", "subject", "invocation", "unlisted_place", "age"},
    "naming": NAMES,
    "order": _PEOPLE | _AFTER_PEOPLE | {"heading", "prefix"},
    "company": _PEOPLE | _AFTER_PEOPLE | {"heading", "prefix"},
    "line": _PEOPLE | _AFTER_PEOPLE | {"model_subject", "city", "unlisted_place"},
    "work": frozenset({"work", "poet", "chapter", "section", "poem_word"}),
    "means": _PEOPLE | _AFTER_PEOPLE | {"material", "model_subject", "city"},
}
_ENDS_PEOPLE = frozenset({"honorific", "relation", "model_subject", "material"})
_RECEIVERS = frozenset(
    {
        "honorific",
        "patron",
        "place",
        "city",
        "place_suffix",
        "subject",
        "invocation",
        "relation",
        "age",
    }
)
_MAKERS = NAMES | {"surname", "clan"}
_HOUSE = "家"
_RESPECT = frozenset("君氏殿公翁侯")
_LINKS = frozenset("之ノの")
_KIN = frozenset(
    {"父", "母", "兄", "弟", "妻", "先考", "先妣", "父母", "両親", "祖父", "祖母", "師"}
)
# What else a closer may be: the 写 of 倣某写某作, 流 and 意匠.
_MAY_CLOSE = frozenset({"closer", "verb", "model_subject", "heading", "school", "opener"})
_AFTER_WORK = frozenset({"date", "age", "mark"})


def scope(
    pieces: Sequence[SignaturePiece], start: int, family: str
) -> tuple[list[SignaturePiece], list[SignaturePiece], int]:
    """Return what an opener governs, its closers, and the position after them."""
    allowed = _SUBJECTS[family]
    end = start
    while end < len(pieces) and not _closes(pieces, end, family):
        if pieces[end].kind == "age" and pieces[end].word is None:
            break
        if pieces[end].kind not in allowed or _complete(pieces, start, end, family):
            break
        end += 1
    by_deed = family == "gift" or (family == "purpose" and len(pieces[start - 1].text) > 1)
    if by_deed and not any(p.kind in _RECEIVERS for p in pieces[start:end]):
        return [], [], start  # 寄贈綾郷作, 為記念綾郷作: a bare name is the maker's
    subject = list(pieces[start:end])
    if _is_linking(pieces, end, family):
        subject.append(pieces[end])
        end += 1
    first_closer = end
    while end < len(pieces) and _closes(pieces, end, family) and end - first_closer < 2:
        end += 1
    return subject, list(pieces[first_closer:end]), end


def _closes(pieces: Sequence[SignaturePiece], at: int, family: str) -> bool:
    """Return whether a piece closes the formula: not the verb of 以鉄作, 従某学, nor before 之."""
    if pieces[at].kind == "verb" and (
        (family == "means" and pieces[at - 1].kind == "material")
        or (at + 1 < len(pieces) and pieces[at + 1].kind == "object")
        or family == "line"
    ):
        return False
    return as_closer(pieces[at], family) is not None


def _is_linking(pieces: Sequence[SignaturePiece], at: int, family: str) -> bool:
    """Return whether a 之 stands at a place and links the subject with its closer (綾郷之意)."""
    return (
        at + 1 < len(pieces)
        and pieces[at].text == "之"
        and as_closer(pieces[at + 1], family) is not None
    )


def _complete(pieces: Sequence[SignaturePiece], start: int, end: int, family: str) -> bool:
    """Return whether what an opener governs is complete before ``end``: a name, then no closer.

    A province after a town (於武州江戸越前…) is where the maker comes from.
    """
    if end == start:
        return False
    before, piece = pieces[end - 1], pieces[end]
    if family == "naming":
        return before.kind in NAMES
    if _is_occasion(piece) and (piece.text[0] in _LINKS or family in ("purpose", "gift")):
        return before.kind in NAMES  # but 為還暦之祝, 為亡父追善, 祝某氏還暦 go on
    if (
        family == "gift"
        and before.kind in ("place_suffix", "patron", "age")
        and piece.kind in NAMES
    ):
        return not _is_addressed(pieces, end)
    if family in ("place", "stay"):
        return _place_complete(pieces, end)
    if before.kind == "model_subject" and piece.kind in _MAKERS and _ends_in_work(pieces, end):
        return True  # 倣古法某作: the work is the maker's, not the model
    if piece.kind in _AFTER_PEOPLE or any(
        as_closer(p, family) for p in pieces[end : end + 4] if family in ("patron", "model")
    ):
        return False
    if "remark" in (before.kind, piece.kind):
        return before.text != _HOUSE  # 為某家重宝: for a treasure of the house
    if before.kind in _ENDS_PEOPLE or (end - start > 1 and _honours(before)):
        return piece.kind not in ("honorific", "material", "patron")
    if before.kind in NAMES:
        return piece.kind in ("surname", "clan", "title", "heading", "place", "city") or (
            before.kind == "name" and piece.kind in NAMES
        )
    return before.kind == "patron" and not _is_addressed(pieces, end)


def _place_complete(pieces: Sequence[SignaturePiece], end: int) -> bool:
    """Return whether a place ends before a piece: at a province after a town, at the maker's."""
    before, piece = pieces[end - 1], pieces[end]
    if "art_name" in (before.kind, piece.kind):
        return not _is_dwelling(pieces, end)
    if piece.kind == "unread":
        return not _place_goes_on(pieces, end)
    return piece.kind == "place" and before.kind != "opening"


def _is_dwelling(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether a studio goes on to where in it: 於霞友軒南窓下, not 於江戸霞友軒作."""
    after = pieces[at + (pieces[at].kind == "art_name")].kind if at + 1 < len(pieces) else ""
    return after in ("residence", "place_suffix")


def _honours(piece: SignaturePiece) -> bool:
    """Return whether a title may be a word of respect after a family: 為三輪上人綾国作."""
    return piece.kind == "title" and any(w.kind == "honorific" for w in words_of(piece.text))


def _is_occasion(piece: SignaturePiece) -> bool:
    """Return whether a piece is what something is made for: 追善, 記念, 還暦; not 某君."""
    person = piece.text[-1] in _RESPECT
    return (piece.kind == "patron" and not person) or (
        piece.kind == "age" and piece.word is not None
    )


def _is_addressed(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether a name with a word of respect begins here: 三輪氏 in 贈老友三輪氏."""
    while at < len(pieces) and pieces[at].kind in _MAKERS:
        at += 1
    return at < len(pieces) and pieces[at].kind == "honorific"


def _ends_in_work(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether nothing but names and a verb (or a date after it) follows: 某作."""
    end = at
    while end < len(pieces) and pieces[end].kind in _MAKERS:
        end += 1
    rest = pieces[end:]
    return bool(rest) and rest[0].text == "作" and all(p.kind in _AFTER_WORK for p in rest[1:])


def _place_goes_on(pieces: Sequence[SignaturePiece], at: int) -> bool:
    """Return whether unread signs after a place belong to it: a place or 住 follows them."""
    for piece in pieces[at:]:
        if piece.kind != "unread":
            return piece.kind in PLACES | {"residence"}
    return False


def as_closer(piece: SignaturePiece, family: str) -> SignatureWord | None:
    """Return the closer a piece is, or could be, in a formula of this family."""
    wanted = "model" if family == "means" else family
    if piece.kind == "pictured" and wanted == "model":
        return piece.word
    if piece.kind not in _MAY_CLOSE:
        return None
    for word in words_of(piece.text):
        if word.kind == "closer" and word.family == wanted:
            return word
    return None


def verb_follows(pieces: Sequence[SignaturePiece], at: int, family: str) -> bool:
    """Return whether the making is told after a formula, so that the sentence goes on."""
    if family == "model" and any(piece.kind in _MAKERS for piece in pieces[at:]):
        return True  # 倣古図某: a name alone implies that it made this
    if family == "naming" and at < len(pieces):
        return pieces[at].kind in _MAKERS  # 改綾国嶺暁: the old name, then the new
    if family == "patron":  # 応某氏需 at the end of all ends: ni ōzu
        return any(piece.kind not in _AFTER_WORK for piece in pieces[at:])
    if family in ("purpose", "model", "gift"):  # a name may stand between: 為某君某作
        return any(piece.kind == "verb" for piece in pieces[at:])
    return at < len(pieces) and pieces[at].kind in ("verb", "adverb", "object")


def owns(before: SignaturePiece, piece: SignaturePiece) -> bool:
    """Return whether の stands between two things a formula governs: 某氏還暦, 父還暦, 浅草寓居."""
    if piece.kind == "residence":
        return before.kind in PLACES and len(piece.text) > 1
    if piece.kind not in ("patron", "age"):
        return False
    return before.kind == "honorific" or (before.kind == "patron" and before.text in _KIN)
