"""Further stages of the fuzzer: manifests made elsewhere, proverbs, passages."""

from __future__ import annotations

import json
import tempfile
from pathlib import Path
from typing import Any

from fuzz_stages import Stage, filled, lawful, text_of

from inscribe import notation, reading, tables
from inscribe.errors import InscribeError
from inscribe.importing import import_plan, proposed_mapping, read_manifest, with_pictures
from inscribe.reading.passages import proverb_words
from inscribe.record import loads

KEYS = (
    "type", "id", "label", "items", "annotations", "metadata", "value", "body", "target", "service",
    "width", "height", "motivation", "format", "language", "none", "ja", "selector", "structures",
    "summary", "requiredStatement", "profile", "@context", "xywh",
)  # fmt: skip
PLAIN: tuple[Any, ...] = (
    "Manifest", "Canvas", "AnnotationPage", "Annotation", "Image", "TextualBody", "Choice",
    "SpecificResource", "FragmentSelector", "painting", "supplementing", "ImageService3",
    "https://x.example/c#xywh=1,2,3,4", "#xywh=percent:1,2,3,4", "../a.jpg", "武州住嶺暁作",
    None, True, -1, 0, 600, 1.5, 1e308, [], {},
)  # fmt: skip


def _json_of(data: list[int], depth: int = 0) -> Any:
    """Return a value that the bytes spell, of the words of manifests; they are used up."""
    byte = data.pop() if data else 0
    if byte < 128 or depth > 40:
        return PLAIN[byte % len(PLAIN)]
    if byte < 180:
        return [_json_of(data, depth + 1) for _ in range(byte % 4)]
    keys = [KEYS[data.pop() % len(KEYS)] for _ in range(byte % 7) if data]
    return {key: _json_of(data, depth + 1) for key in keys}


def manifest_stage() -> Stage:
    path = Path(tempfile.mkdtemp(), "m.json")

    def stage(data: bytes) -> bool:
        left = list(data)
        items = [_json_of(left) for _ in range(3)]
        rest = _json_of(left)
        head = {"@context": "http://iiif.io/api/presentation/3/context.json", "type": "Manifest"}
        made = head | {"items": items} | (rest if isinstance(rest, dict) else {})
        path.write_text(json.dumps(made), "utf-8")
        try:
            found = read_manifest(path)
            plan = with_pictures(import_plan(found.list, proposed_mapping(found.list)), found)
        except InscribeError:
            return False
        for each in plan.outcomes:
            if each.what == "new":
                loads(each.text)
        return True

    return filled(stage)


def proverbs_stage() -> Stage:
    known = [row["written"] for row in tables.rows("proverbs")]

    def stage(data: bytes) -> bool:
        whole = known[(data[0] * 256 + data[1]) % len(known)]
        cut = data[2] % (len(whole) + 1)
        text = (
            whole[:cut] + text_of(data[2:])[:8].replace("\ud800", "") + whole[cut + data[-1] % 3 :]
        )
        found = proverb_words(text)
        if found is not None:
            written = "".join(word.written for word in found[0])
            lawful(written == text, "a proverb's words are the text")
        return found is not None

    return filled(stage)


def passages_stage() -> Stage:
    def stage(data: bytes) -> bool:
        try:
            text = notation.parse(text_of(data[:60] if data[0] < 255 else data[:10]))
        except InscribeError:
            return False
        if len(text.signs) > 300:
            return False
        found = reading.read(text).passages
        for each in found:
            lawful(0 <= each.first <= each.last < len(text.signs), "a passage lies in its text")
        signs = [n for each in found for n in range(each.first, each.last + 1)]
        lawful(len(signs) == len(set(signs)), "no sign is of two passages")
        return bool(found)

    return filled(stage)


STAGES = {"manifest": manifest_stage, "proverbs": proverbs_stage, "passages": passages_stage}
