"""A sign looked up, as the plain object of the JSON contract."""

from __future__ import annotations

from typing import Any

from inscribe.forms import CharacterPart, Description


def sign_as_json(found: Description) -> dict[str, Any]:
    """Return the keys of the contract first, then what more is known of the sign.

    ``parts`` names every part at any depth, the larger first; ``layout`` says where each stands.
    """
    return {
        "char": found.char,
        "relations": [
            {"char": other, "kind": relation.kind, "table": relation.table, "note": relation.note}
            for other, relation in found.relations.items()
        ],
        "on": list(found.readings.on),
        "kun": list(found.readings.kun),
        "names": list(found.readings.names),
        "parts": list(_names(found.parts)),
        "strokes": next(iter(found.character.strokes), None),
        **_more(found),
    }


def _more(found: Description) -> dict[str, Any]:
    step, merged, mark = found.step, found.merged, found.repeats
    return {
        "code_points": list(found.code_points),
        "name": found.name,
        "current": found.current,
        "form": {"kind": step.kind, "table": step.table, "note": step.note} if step else None,
        "word": {"form": merged.word, "meaning": merged.meaning} if merged else None,
        "readings_of": found.readings_of,
        "senses": list(found.character.senses),
        "stroke_counts": list(found.character.strokes),
        "layout": [_part(part) for part in found.parts],
        "kana": list(found.kana),
        "parent": found.parent,
        "hentaigana": list(found.hentaigana),
        "sounds": list(found.sounds),
        "number": found.number,
        "repeats": {"what": mark.repeats, "voiced": mark.voiced} if mark else None,
    }


def _names(parts: tuple[CharacterPart, ...]) -> dict[str, None]:
    names: dict[str, None] = {}
    level = list(parts)
    while level:
        for part in level:
            names |= dict.fromkeys(name for name in (part.char, part.whole) if name)
        level = [inner for part in level for inner in part.parts]
    return names


def _part(part: CharacterPart) -> dict[str, Any]:
    return {
        "part": part.char,
        "position": part.position,
        "whole": part.whole or part.char,
        "parts": [_part(inner) for inner in part.parts],
    }
