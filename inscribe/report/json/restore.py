"""Worn places and what may fill them, as plain data."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from inscribe.report import Style

if TYPE_CHECKING:
    from inscribe.restoring import Candidate, Lacuna, Restoration

CAUTIONS = ("restored", "handling")


def restoration_as_json(found: Restoration) -> dict[str, Any]:
    """Return the worn places of one inscription; signs and columns count from 0."""
    style = Style()
    return {
        "text": found.text,
        "register": found.register,
        "worn_places": found.worn,
        "lacunae": [_lacuna(each) for each in found.lacunae],
        "sources": [
            {"id": hit.text.id, "title": hit.text.title, "score": round(hit.score, 4)}
            for hit in found.sources
        ],
        "cautions": [style.caution(key) for key in CAUTIONS] if found.lacunae else [],
    }


def _lacuna(lacuna: Lacuna) -> dict[str, Any]:
    return {
        "sign": lacuna.sign,
        "column": lacuna.column,
        "sign_in_column": lacuna.sign_in_column,
        "kind": lacuna.kind,
        "before": lacuna.before,
        "after": lacuna.after,
        "missing_morae": lacuna.missing,
        "remark": lacuna.remark,
        "candidates": [_candidate(each) for each in lacuna.candidates],
    }


def _candidate(candidate: Candidate) -> dict[str, Any]:
    return {
        "rank": candidate.rank,
        "text": candidate.text,
        "probability": round(candidate.probability, 4),
        "forms": list(candidate.forms),
        "evidence": [{"kind": each.kind, "text": each.text} for each in candidate.evidence],
    }
