"""What is said in words of dates, signs, texts, copies and worn places, asked for by example.

``tests/data/answers/sentences.jsonl`` has what was asked and every sentence of the answer a line:
the program's own, looked over. ``python tests/sentences.py`` writes it anew; a change of it has to
be looked at. To ask more, add a line whose ``said`` is ``[]``.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from pathlib import Path

from inscribe.collation import collate
from inscribe.dates import compared, resolve
from inscribe.errors import InscribeError
from inscribe.forms import normalise_text
from inscribe.notation import parse
from inscribe.reading import read
from inscribe.reading.suspicious import suspicions
from inscribe.restoring import restore

FILE = Path(__file__).parent / "data/answers/sentences.jsonl"
BETWEEN = "｜"  # between two texts that are held against each other


def of_date(text: str) -> Iterator[str]:
    found = resolve(text)
    yield f"{found.agreement}: {found.why}"
    yield from (each.text for each in found.explanations)
    yield from found.cautions


def of_dates(text: str) -> Iterator[str]:
    *dates, last = text.split(BETWEEN)
    born = int(last) if last.isdigit() else None
    if born is None:
        dates.append(last)
    found = compared([resolve(each) for each in dates], born=born)
    yield found.agreement
    yield from found.statements


def of_signs(text: str) -> Iterator[str]:
    for change in normalise_text(text).changes:
        doubt = ", doubtful" if change.doubtful else ""
        yield f"{change.sign} {change.before}>{change.after} {change.kind}: {change.note}{doubt}"


def of_suspicions(text: str) -> Iterator[str]:
    for found in suspicions(parse(text).signs):
        yield f"{found.sign}-{found.end} {found.kind}: {found.said}"


def of_text(text: str) -> Iterator[str]:
    found = read(parse(text))
    for passage in found.passages:
        yield f"{passage.kind} {passage.text}: {'; '.join(passage.reasons)}"
    for proposal in found.proposals[:1]:
        yield f"{found.register}: {'; '.join(proposal.reasons)}"
    for doubt in found.doubts:
        yield f"{doubt.first}-{doubt.last}: {doubt.why}"


def of_copy(text: str) -> Iterator[str]:
    copy, source = text.split(BETWEEN)
    found = collate(parse(copy), parse(source))
    for group in found.groups:
        if group.why or group.kind != "same":
            yield f"{group.kind} {group.copy.text}/{group.source.text}: {group.why}"
    yield from found.notes


def of_worn(text: str) -> Iterator[str]:
    for lacuna in restore(parse(text)).lacunae:
        yield lacuna.remark
        for candidate in lacuna.candidates[:3]:
            yield f"{candidate.text}: {'; '.join(each.text for each in candidate.evidence)}"


KINDS: dict[str, Callable[[str], Iterator[str]]] = {
    "date": of_date,
    "dates": of_dates,
    "signs": of_signs,
    "suspicions": of_suspicions,
    "text": of_text,
    "copy": of_copy,
    "worn": of_worn,
}


def said(kind: str, given: str) -> list[str]:
    """Return every sentence that is said of what is given, or why it cannot be used."""
    try:
        return [each for each in KINDS[kind](given) if each]
    except InscribeError as error:
        return [str(error)]


def kept() -> list[tuple[str, str, list[str]]]:
    """Return what was asked and said, as it is kept."""
    lines = map(json.loads, FILE.read_text("utf-8").splitlines())
    return [(line["of"], line["given"], line["said"]) for line in lines]


def main() -> None:
    """Write the answers to what is asked in the file anew."""
    rows = [{"of": kind, "given": text, "said": said(kind, text)} for kind, text, _ in kept()]
    lines = (json.dumps(row, ensure_ascii=False) for row in rows)
    FILE.write_text("".join(f"{line}\n" for line in lines), "utf-8")


if __name__ == "__main__":
    main()
