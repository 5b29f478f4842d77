"""Every worn place of an inscription, and what may have stood there, from all that is known.

The language (the formula of signatures, or the words and the metre of verse) gives each sign a
chance; a source found in the library, as probable as it is, overrules it; what the reader still
sees of the sign weighs both.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from operator import itemgetter
from typing import TYPE_CHECKING

from inscribe import notebook, tables
from inscribe.errors import InputError
from inscribe.forms import normalise, normalise_text
from inscribe.restoring import gaps, seen
from inscribe.restoring.answering import SURE, Answer, named, weigh
from inscribe.restoring.by_passage import by_passage
from inscribe.restoring.inscription import WornInscription, inscription, of_read
from inscribe.restoring.listed import listed_at
from inscribe.restoring.model import Candidate, Evidence, Lacuna, Restoration
from inscribe.restoring.name_chances import NO_NAMES, Names
from inscribe.restoring.seen import Seen, is_unread, seen_in
from inscribe.restoring.spellings import says
from inscribe.signs import Certainty, Kind, Sign, Transcription, transcription

if TYPE_CHECKING:
    from inscribe.files import StrPath
    from inscribe.reading import Choice, Interpretation, PassageLike
    from inscribe.sources import Hit, Library

AROUND = 8  # signs shown on either side
MOST_PLACES = 20  # worn places treated in one run, each of which takes some 10 ms
LEAST = 0.001  # probability below which a candidate says nothing
# Legible signs of a set phrase that tell it: more where a formula knows short words as well.
_OF_A_TEXT, _OF_A_SIGNATURE = 2, 3


def restore(
    text: Transcription,
    library: Library | StrPath | None = None,
    seen_of_it: Seen | None = None,
    *,
    sign: int | None = None,
    places: range | None = None,
    most: int = 10,
    register: Choice = "auto",
    names: Names = NO_NAMES,
    copied: str = "",
    passages: Sequence[PassageLike] = (),
) -> Restoration:
    """Return the worn places of ``text`` with up to ``most`` candidates each, the likeliest first.

    Args:
        text: the inscription; it is never changed.
        library: source texts to look in: an open library, or its file.
        seen_of_it: what can still be seen of the sign; it is applied to every place looked at.
        sign: look at this sign only (counted from 0), even if it was read.
        places: look at these of the worn places only (counted from 0), ``MOST_PLACES`` at most;
            None for the first ones.
        most: candidates a place.
        register: verse, signature or prose, or "auto" to let the text decide.
        names: carvers' names read in the same collection, with how often (``names_read`` of a
            :class:`inscribe.concordance.Collection`); a worn name may well be one of them.
        copied: the words of the source that a record names, where it names one.
        passages: what somebody settled of the passages of ``text``.

    Raises:
        InputError: there is no sign or place of that number, or it is a kao or a seal.

    >>> from inscribe import parse
    >>> [found.text for found in restore(parse("嘉永□年癸丑")).lacunae[0].candidates]
    ['六']
    """
    found = _worn(text) if sign is None else [_chosen(text, sign)]
    wanted = _among(found, places)
    worn = _worn_out(text, {each.index for each in found})
    made = inscription(worn, register, names, passages)
    hits, from_sources = _told_by_sources(worn, made, library, copied) if wanted else ((), {})
    here = by_passage(made, names)
    lacunae = []
    for each in wanted:
        described = seen_in(each, seen_of_it or Seen())
        there = from_sources.get(each.index, [])
        part = here.get(each.index, made)
        if worn.signs[each.index].kind is Kind.GAP:
            candidates, remark = gaps.candidates(part, each.index, there, most)
        else:
            candidates, remark = _candidates(part, each.index, there, described, most), ""
        morae = part.missing_morae(each.index)
        lacunae.append(_lacuna(made, worn, worn.signs[each.index], morae, candidates, remark))
    return Restoration(made.text, made.register, tuple(lacunae), hits, len(found))


def likeliest(
    text: Transcription,
    read: Interpretation,
    library: Library | StrPath | None = None,
    names: Names = NO_NAMES,
    copied: str = "",
) -> dict[int, Candidate]:
    """Return what most probably stood in each place of one worn sign, by the sign's index.

    ``read`` is what ``text`` says as it stands; the other arguments are those of :func:`restore`.
    """
    signs = [sign for sign in text.signs if is_unread(sign)]
    worn = _worn_out(text, {sign.index for sign in signs})
    made = of_read(normalise(worn), read, names)
    _, from_sources = _told_by_sources(worn, made, library, copied)
    here = by_passage(made, names)
    found: dict[int, Candidate] = {}
    for sign in signs:
        there, described = from_sources.get(sign.index, []), seen_in(sign, Seen())
        for best in _candidates(here.get(sign.index, made), sign.index, there, described, 1):
            found[sign.index] = best
    return found


def _told_by_sources(
    worn: Transcription, made: WornInscription, library: Library | StrPath | None, copied: str
) -> tuple[tuple[Hit, ...], dict[int, list[Answer]]]:
    """Return the sources that are found or named, and what they have in the worn places."""
    if library is None and not copied:
        return (), {}
    from inscribe.restoring import sourced

    hits = sourced.sources_of(worn, made.passages, library, copied)
    return hits, sourced.answers(worn, hits)


def _worn(text: Transcription) -> list[Sign]:
    return [sign for sign in text.signs if sign.kind is Kind.GAP or is_unread(sign)]


def _among(worn: list[Sign], places: range | None) -> list[Sign]:
    if places is None:
        return worn[:MOST_PLACES]
    if len(places) > MOST_PLACES:
        raise InputError(
            f"{len(places)} worn places are more than the limit of {MOST_PLACES} in one run",
            hint="divide them among several runs",
        )
    if places.stop > len(worn):
        count = notebook.counted(len(worn), "worn place")
        raise InputError(f"there is no worn place {places.stop}", hint=f"there are {count}")
    return [worn[place] for place in places]


def _chosen(text: Transcription, index: int) -> Sign:
    if not 0 <= index < len(text.signs):
        raise InputError(
            f"there is no sign {index + 1}",
            hint=f"count from 1 to {len(text.signs)}, gaps included",
        )
    sign = text.signs[index]
    if sign.kind in (Kind.KAO, Kind.SEAL):
        raise InputError(f"sign {index + 1} is a {sign.kind.value}, which is not restored")
    return sign


def _worn_out(text: Transcription, worn: set[int]) -> Transcription:
    """Return the inscription with the signs of these indexes unreadable."""
    return transcription(
        [
            [
                [
                    replace(sign, text="", noted="", certainty=Certainty.UNREADABLE)
                    if sign.index in worn and sign.kind is Kind.CHARACTER
                    else sign
                    for sign in column.signs
                ]
                for column in face.columns
            ]
            for face in text.faces
        ]
    )


def _candidates(
    made: WornInscription, sign: int, answers: list[Answer], described: Seen, most: int
) -> tuple[Candidate, ...]:
    language = made.weights(sign, described.characters if described else ())
    shares = _shares(language)
    legible = _OF_A_SIGNATURE if made.register == "signature" else _OF_A_TEXT
    phrase, listed = listed_at(made.text, made.offset(sign), legible)
    rest = 1 - sum(listed.values())
    shares = {each: share * rest for each, share in shares.items()}
    for each, share in listed.items():
        shares[each] = shares.get(each, 0.0) + share
    mixed = dict(shares)
    if answers:
        whole = sum(answer.weight for answer in answers)
        trust = min(SURE, whole)
        mixed = {each: share * (1 - trust) for each, share in shares.items()}
        for answer in answers:
            lets = weigh(answer, language, made, sign)
            for each, share in lets.items():
                mixed[each] = mixed.get(each, 0.0) + trust * share * answer.weight / whole
    if described:
        mixed = {each: share * described.weight(each) for each, share in mixed.items()}
    mixed = _each_once(mixed)
    if described.parts:
        mixed = seen.lacking_below(mixed, described, LEAST)
    total = sum(mixed.values()) or 1.0
    likely = [item for item in mixed.items() if item[1] >= LEAST * total]
    ranked = sorted(likely or mixed.items(), key=lambda item: (-item[1], item[0]))
    return tuple(
        Candidate(
            rank,
            each,
            share / total,
            tuple(_evidence(made, sign, each, answers, described, phrase * (each in listed))),
            seen.other_forms(each),
        )
        for rank, (each, share) in enumerate(ranked[: most if likely else 1], start=1)
    )


def _each_once(shares: dict[str, float]) -> dict[str, float]:
    """Return shares in which the forms of one character are added up, under the likeliest."""
    found: dict[str, float] = {}
    form_of: dict[str, str] = {}
    for sign, share in sorted(shares.items(), key=itemgetter(1), reverse=True):
        form = form_of.setdefault(_current(sign), sign)
        found[form] = found.get(form, 0.0) + share
    return found


@tables.cached(8192)
def _current(sign: str) -> str:
    return normalise_text(sign).text


def _shares(language: dict[str, float]) -> dict[str, float]:
    if not language:
        return {}
    top = max(language.values())
    weights = {sign: math.exp(weight - top) for sign, weight in language.items()}
    total = sum(weights.values())
    return {sign: weight / total for sign, weight in weights.items()}


def _evidence(
    made: WornInscription,
    sign: int,
    candidate: str,
    answers: list[Answer],
    described: Seen,
    phrase: str,
) -> Iterator[Evidence]:
    for answer in answers:
        stands = answer.stands
        how = "" if answer.agrees else " in other wording"
        if candidate not in stands:
            how += ", which it may say" if says(candidate, stands) else " instead"
        yield Evidence("source", f"{named(answer.hit)} has {stands} here{how}")
    if phrase:
        yield Evidence("lexicon", f"in {phrase}, a set phrase")
    yield from made.evidence(sign, candidate)
    for said in described.evidence(candidate) if described else ():
        yield Evidence("seen", said)


def _lacuna(
    made: WornInscription,
    text: Transcription,
    sign: Sign,
    morae: int | None,
    candidates: tuple[Candidate, ...],
    remark: str,
) -> Lacuna:
    at = made.offset(sign.index)
    length = made.length(sign.index)
    return Lacuna(
        sign.index,
        sign.column,
        sign.index - text.columns[sign.column].signs[0].index,
        "gap" if sign.kind is Kind.GAP else "sign",
        made.text[max(0, at - AROUND) : at],
        made.text[at + length : at + length + AROUND],
        morae,
        candidates,
        remark,
    )
