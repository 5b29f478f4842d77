"""What ``read``, ``restore`` and ``source find`` offered, taken by its number."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from inscribe import notebook, reading
from inscribe.errors import InputError
from inscribe.notation import render
from inscribe.record import CopiedText, Decision, Inscription, Override, Record, with_signs
from inscribe.settling.applying import Settled, Who
from inscribe.signs import Certainty, Kind, Sign, place_of, transcription
from inscribe.sources import spelling_of

if TYPE_CHECKING:
    from inscribe.reading.words import Interpretation, Proposal, Token
    from inscribe.sources import Library

NO_NAMES: Mapping[str, int] = {}


def reading_taken(
    record: Record,
    number: int,
    inscription: int,
    who: Who,
    *,
    library_file: Path | None = None,
) -> Settled:
    """Return a record with the words settled by which one of the readings differs from others.

    Args:
        record: the record.
        number: the reading as ``inscribe read`` ranks them, from 1.
        inscription: which inscription, from 0.
        who: who settles it, and why.
        library_file: where the words of a source are that the record names by id alone.

    Raises:
        InputError: there is no such reading, or its words cannot be settled one by one.
    """
    each = record.inscriptions[inscription]
    source = spelling_of(each.source, library_file or Path()) if each.source else ""
    found = _read(record, each, source)
    _require(number, len(found.proposals), "reading")
    wanted = found.proposals[number - 1]
    others = found.proposals[1:] if number == 1 else found.proposals[:1]
    words = [word for word in wanted.tokens if word.kana and _differs(word, others)]
    if not words:
        said = "the readings offered do not differ in words that can be settled"
        raise InputError(said, hint="settle a word: inscribe settle RECORD 浅霧軒=あさぎりけん")
    t = each.transcription
    made, done = list(each.overrides), []
    for word in words:
        of = "".join(s.text for s in t.signs[word.first : word.last + 1] if s.is_legible)
        kana = word.kana.replace(" ", "")
        kind: Literal["word", "name"] = "name" if _is_name(word) else "word"
        new = Override(word.first, word.last, kana, of, kind, who.by, who.reason, who.on)
        made = [o for o in made if o.first > new.last or o.last < new.first] + [new]
        done.append(f"{place_of(t, new.first, new.last)}: {of} = {kana}")
    settled = replace(each, overrides=tuple(sorted(made, key=lambda o: o.first)))
    if _read(record, settled, source).proposals[0].romaji != wanted.romaji:
        words_said = ", ".join(f"{word.surface}={word.kana.replace(' ', '')}" for word in words)
        raise InputError(
            f"reading {number} differs in more than words that can be settled one by one",
            hint=f"settle its words: {words_said}",
        )
    return Settled(_with(record, inscription, settled), done)


def _read(record: Record, each: Inscription, source: str) -> Interpretation:
    return reading.read(
        each.transcription,
        each.register,
        each.overrides,
        between=record.between,
        alternatives=True,
        passages=each.passages,
        source=source,
    )


def _differs(word: Token, others: Sequence[Proposal]) -> bool:
    """Whether another reading does not have this word at these signs."""
    place = (word.first, word.last, word.kana)
    return any(place not in {(w.first, w.last, w.kana) for w in other.tokens} for other in others)


def _is_name(word: Token) -> bool:
    return word.romaji[:1].isupper()


def restoration_taken(
    record: Record,
    number: int,
    inscription: int,
    who: Who,
    *,
    sign: int | None = None,
    library: Library | None = None,
    names: Mapping[str, int] = NO_NAMES,
) -> Settled:
    """Return a record in which a worn sign (from 0) is restored as ``inscribe restore`` proposed.

    What is restored is marked so: a suggestion, until someone has seen it on the object.

    Raises:
        InputError: several signs are worn and none is named, or there is no such proposal.
    """
    from inscribe.restoring import restore_inscription

    each = record.inscriptions[inscription]
    t = each.transcription
    found = restore_inscription(each, library, sign=sign, most=max(10, number), names=names)
    if not found.lacunae:
        raise InputError("no sign of the inscription is worn", hint="see: inscribe restore RECORD")
    if len(found.lacunae) > 1:
        places = ", ".join(str(lacuna.sign + 1) for lacuna in found.lacunae)
        raise InputError("several signs are worn", hint=f"name one with --sign: {places}")
    lacuna = found.lacunae[0]
    _require(number, len(lacuna.candidates), "proposal", f" for sign {lacuna.sign + 1}")
    taken = lacuna.candidates[number - 1]
    written = _restored(taken.text, each.notation)
    worn = t.signs[lacuna.sign]
    before = render(transcription([[[worn]]]), each.notation)
    grown = with_signs(each, lacuna.sign, lacuna.sign + 1, written)
    last = lacuna.sign + len(grown.transcription.signs) - len(t.signs)
    reason = "; ".join(filter(None, (who.reason, *(e.text for e in taken.evidence))))[:900]
    made = Decision(lacuna.sign, last, written, before, "restored", who.by, reason, who.on)
    settled = replace(grown, decisions=(*grown.decisions, made))
    done = [f"{place_of(t, lacuna.sign, lacuna.sign)}: {before} restored as {written}"]
    return Settled(_with(record, inscription, settled), done)


def _restored(text: str, notation: str) -> str:
    from inscribe.notation import segments

    signs = [Sign(each, Kind.CHARACTER, Certainty.RESTORED) for each in segments(text)]
    return render(transcription([[signs]]), notation)


def source_taken(
    record: Record, number: int, inscription: int, who: Who, library: Library
) -> Settled:
    """Return a record that names as its source a text that ``inscribe source find`` found.

    Raises:
        InputError: there is no such hit.
    """
    from inscribe.sources import copied_signs, find

    each = record.inscriptions[inscription]
    hits = find(library, copied_signs(each), max(5, number))
    _require(number, len(hits), "text", " found")
    text = hits[number - 1].text
    before = each.source.id or each.source.title or "its words" if each.source else ""
    source = CopiedText(id=text.id, title=text.title, by=who.by, on=who.on, reason=who.reason)
    gone = f" (before: {before})" if before else ""
    done = [f"source: {text.id}{gone}, with probability {hits[number - 1].score:.2f}"]
    return Settled(_with(record, inscription, replace(each, source=source)), done)


def _require(number: int, count: int, what: str, more: str = "") -> None:
    if number > count:
        there = f"there {'is' if count == 1 else 'are'} {notebook.counted(count, what)}{more}"
        raise InputError(f"{there}, and {number} is none of them")


def _with(record: Record, number: int, made: Inscription) -> Record:
    before, after = record.inscriptions[:number], record.inscriptions[number + 1 :]
    return record._replace(inscriptions=(*before, made, *after))
