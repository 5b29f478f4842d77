"""A verb and the 之 after it, as they are said: kore o tsukuru, kore ni meisu."""

from __future__ import annotations

from inscribe import tables
from inscribe.reading.signatures.options import Unit, option, word_options
from inscribe.reading.signatures.pieces import SignaturePiece
from inscribe.reading.signatures.units import plain, unit
from inscribe.reading.words import SignatureWord

ALSO_READ = "{} may be read so too"
_TO = "に "  # 銘之 kore ni meisu
_DOES = "す"  # makes a Sino-Japanese word a verb
_SECOND = 1.2


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


def _around_object(kana: str) -> tuple[str, str]:
    """Return what of a verb's words stands before これを, and what after.

    >>> _around_object("つつしんで きざむ"), _around_object("{} きざみ たてまつる")
    (('つつしんで', 'きざむ'), ('', 'きざみ たてまつる'))
    """
    before, marked, after = kana.partition("{}")
    if not marked:
        before, _, after = kana.rpartition(" ")
    return before.strip(), after.strip()
