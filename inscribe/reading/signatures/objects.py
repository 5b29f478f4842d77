"""A verb and the 之 after it, as they are said: kore o tsukuru, kore ni meisu."""

from __future__ import annotations

from collections.abc import Sequence

from inscribe import tables
from inscribe.reading.signatures.options import Unit, option, word_options
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.signatures.units import plain, unit
from inscribe.reading.words import SignatureWord, causative

ALSO_READ = "{} may be read so too"
_TO = "に "  # 銘之 kore ni meisu
_DOES = "す"  # makes a Sino-Japanese word a verb
_SECOND = 1.2
_ORDER = "opener:order"


def object_then_verb(verb: SignaturePiece, thing: SignaturePiece) -> list[Unit]:
    """Return これを and the verb; an adverb within the verb's reading goes before both."""
    if verb.kind == "unread":
        return [unit(thing, (option("これ を"),)), plain(verb)]
    word = verb.word or SignatureWord(verb.text, "verb", verb.text)
    finite = tables.listed(word.with_object) or (word.kana + _DOES,)
    particles = tuple("に" if kana.startswith(_TO) else "を" for kana in finite)
    finite = tuple(kana.removeprefix(_TO) for kana in finite)
    parted = [_around_object(kana) for kana in finite]
    adverb = parted[0][0]
    spoken_forms = tuple(after for _, after in parted)
    spoken = SignatureWord(word.text, word.kind, spoken_forms[0], alternatives=spoken_forms[1:])
    said = [
        option(f"これ {particle}", _SECOND * rank, ALSO_READ.format(f"{verb.text}{thing.text}"))
        for rank, particle in enumerate(dict.fromkeys(particles))
    ]
    said[0] = said[0]._replace(reason="")
    units = [unit(thing, tuple(said)), unit(verb, word_options(spoken))]
    if adverb:
        units.insert(0, unit(verb, (option(adverb),)))
    return units


def done_by_others(pieces: Sequence[SignaturePiece]) -> Sequence[SignaturePiece]:
    """Return the pieces, a verb after 令 and whom it names as one has it done: horashimu."""
    ordered = False
    found = []
    for piece in pieces:
        if ordered and piece.word and piece.kind in ("verb", "transitive"):
            kana = _caused(piece.word)
            word = piece.word._replace(kana=kana, with_object=kana, alternatives=())
            piece = piece._replace(word=word)
            ordered = False
        ordered = ordered or piece.order_kind == _ORDER
        found.append(piece)
    return found


def _caused(word: SignatureWord) -> str:
    finite = tables.listed(word.with_object) or (word.kana + _DOES,)
    before, space, verb = finite[0].removeprefix(_TO).rpartition(" ")
    return before + space + causative(verb)


def _around_object(kana: str) -> tuple[str, str]:
    """Return what of a verb's words stands before これを, and what after.

    >>> _around_object("つつしんで きざむ"), _around_object("{} きざみ たてまつる")
    (('つつしんで', 'きざむ'), ('', 'きざみ たてまつる'))
    """
    before, marked, after = kana.partition("{}")
    if not marked:
        before, _, after = kana.rpartition(" ")
    return before.strip(), after.strip()
