"""A collation as plain data: the keys that scripts and measurements rely on."""

from __future__ import annotations

from typing import Any

from inscribe.collation import Collation, Fidelity, Group, SpaceAccount, Span, as_printed

KINDS = ("same", "form", "kana", "spelling", "replaced", "omitted", "added", "moved", "unread")


def collation_as_json(result: Collation) -> dict[str, Any]:
    """Return the collation of the JSON contract."""
    return {
        "groups": [_group(group) for group in result.groups],
        "fidelity": _fidelity(result.fidelity),
        "differences": _differences(result),
        "space": _space(result.space),
        "window": list(result.window),
        "breaks": [
            {"copy": b.copy, "source": b.source, "at_line_end": b.at_line_end}
            for b in result.breaks
        ],
        "beside": [
            {"kind": b.kind, "signs": [b.first, b.last], "text": b.text, "role": b.role}
            for b in result.beside
        ],
        "notes": list(result.notes),
        "same_text": result.is_of_same_text,
    }


def _group(group: Group) -> dict[str, Any]:
    shown: dict[str, Any] = {
        "kind": group.kind,
        "copy": _span(group.copy),
        "source": _span(group.source),
        "why": group.why,
    }
    return {**shown, "order": group.order} if group.order else shown


def _differences(result: Collation) -> list[dict[str, Any]]:
    """Return the differences, each with the entry an edition prints it in."""
    entries = {result.groups[at]: entry for entry in as_printed(result) for at in entry.groups}
    shown = []
    for group in result.differences:
        entry = entries.get(group, group)
        printed = {"copy": _span(entry.copy), "source": _span(entry.source)}
        shown.append({**_group(group), "printed": printed})
    return shown


def _span(span: Span) -> dict[str, Any]:
    return {"start": span.start, "end": span.end, "text": span.text}


def _fidelity(figures: Fidelity) -> dict[str, Any]:
    counts = {kind: getattr(figures, kind) for kind in KINDS}
    levels = {
        "as_carved": figures.as_carved,
        "characters": figures.characters,
        "sounds": figures.sounds,
        "words": figures.words,
    }
    shares = {name: {"signs": n, "share": round(share, 4)} for name, (n, share) in levels.items()}
    return {"signs_in_source": figures.signs_in_source, **counts, "levels": shares}


def _rounded(mm: float | None) -> float | None:
    return None if mm is None else round(mm, 1)


def _space(account: SpaceAccount | None) -> dict[str, Any] | None:
    if account is None:
        return None
    return {
        "capacity": account.capacity,
        "need": account.need,
        "beside": account.beside,
        "crowding": [
            {
                "column": c.index,
                "signs": c.signs,
                "length": c.length,
                "pitch": c.pitch,
                "crowding": c.crowding,
                "trend": c.trend,
                "free": c.free,
            }
            for c in account.columns
        ],
        "median_pitch": account.median_pitch,
        "capacity_uncrowded": account.uncrowded,
        "capacity_tightest": account.tightest,
        "length_wanted": _rounded(account.length_wanted),
        "length_given": _rounded(account.room),
        "missing": account.missing,
        "verdicts": [
            {
                "difference": j.difference,
                "verdict": j.verdict,
                "weight": j.weight,
                "chance": None if j.chance is None else round(j.chance, 3),
                "for": list(j.speaks_for),
                "against": list(j.speaks_against),
                "rival": j.rival,
                "evidence": list(j.evidence),
            }
            for j in account.judgements
        ],
        "wanted": list(account.wanted),
    }
