"""An interpretation as the JSON contract has it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inscribe.glossing import grammar_of

if TYPE_CHECKING:
    from inscribe.forms import Change
    from inscribe.reading.words import (
        Doubt,
        Interpretation,
        MayName,
        Passage,
        Proposal,
        SignaturePart,
        Token,
    )


def reading_as_json(interpretation: Interpretation) -> dict[str, Any]:
    """Return the object that ``inscribe read --format json`` prints."""
    best, *others = interpretation.proposals
    return {
        "text": interpretation.text,
        "normalised": interpretation.normalised,
        "modern": interpretation.modern,
        "kana": best.kana,
        "romaji": best.romaji,
        "register": interpretation.register,
        "tokens": [token_as_json(token) for token in best.tokens],
        "alternatives": [_alternative(proposal) for proposal in others],
        "signature": _signature(interpretation.signature),
        "dates": [_date(date) for date in interpretation.dates],
        "changes": [change_as_json(change) for change in interpretation.changes],
        "doubts": [_doubt(doubt) for doubt in interpretation.doubts],
        "reasons": list(best.reasons),
        "phrases": [list(phrase) for phrase in best.phrases],
        "passages": [_passage(passage) for passage in interpretation.passages],
        "persons": [person_as_json(person) for person in interpretation.persons],
    }


def person_as_json(named: MayName) -> dict[str, Any]:
    """Return a person of the user's list whom some signs may name."""
    return {
        "signs": [named.first, named.last],
        "text": named.text,
        "id": named.id,
        "name": named.name,
        "as": " and ".join(named.kinds),
        "why": named.why,
        "chance": round(named.chance, 3),
        "outside_life": named.life,
    }


def _passage(passage: Passage) -> dict[str, Any]:
    best, *others = passage.proposals
    return {
        "kind": passage.kind,
        "signs": [passage.first, passage.last],
        "text": passage.text,
        "normalised": passage.normalised,
        "kana": best.kana,
        "romaji": best.romaji,
        "role": passage.role,
        "chance": round(passage.chance, 3),
        "reasons": [*passage.reasons, *best.reasons],
        "alternatives": [_alternative(proposal) for proposal in others],
        "signature": _signature(passage.signature),
    }


def token_as_json(token: Token) -> dict[str, Any]:
    """Return one word."""
    return {
        "surface": token.surface,
        "normalised": token.normalised,
        "kana": token.kana,
        "romaji": token.romaji,
        "signs": [token.first, token.last],
        "gloss": token.gloss,
        "grammar": grammar_of(token.part_of_speech, token.lemma),
    }


def change_as_json(change: Change) -> dict[str, Any]:
    """Return one step of normalisation."""
    return {
        "sign": change.sign,
        "from": change.before,
        "to": change.after,
        "kind": change.kind,
        "source": change.table,
    }


def _alternative(proposal: Proposal) -> dict[str, Any]:
    return {
        "romaji": proposal.romaji,
        "kana": proposal.kana,
        "reason": "; ".join(proposal.reasons),
    }


def _signature(parts: dict[str, SignaturePart] | None) -> dict[str, Any] | None:
    if parts is None:
        return None
    return {
        key: {
            "text": part.text,
            "kana": part.kana,
            "romaji": part.romaji,
            "signs": [part.first, part.last],
            "alternatives": list(part.alternatives),
        }
        for key, part in parts.items()
    }


def _date(date: Any) -> dict[str, Any]:
    from inscribe.report.json.date import date_as_json

    return date_as_json(date)


def _doubt(doubt: Doubt) -> dict[str, Any]:
    return {"signs": [doubt.first, doubt.last], "why": doubt.why}
