"""What the records of a collection say against each other: persons, objects, texts.

Nothing here is an attribution: two signatures of one name may be of two persons, and a finding
only asks to look.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from inscribe.checking.ages import YEARS, births
from inscribe.checking.examined import Remark
from inscribe.checking.wording import Compared, other_words
from inscribe.concordance import Document

MILLIMETRES = 0.3  # by which two measurements of one object may differ
FEWEST = 4  # signs that two texts must have to be of one object
MOST_NAMED = 5  # other records named in one remark


class Against(NamedTuple):
    """A remark on a record because of other records."""

    file: str
    object: str
    remark: Remark


class _Birth(NamedTuple):
    year: int
    why: str
    document: Document


def against_each_other(documents: Sequence[Document], known: Compared) -> Iterator[Against]:
    """Yield what the inscriptions of a collection say against each other.

    ``known`` are wordings that were compared before; what is compared now is added.
    """
    yield from _births(documents)
    yield from _same_objects(documents)
    for document, said in other_words(documents, known):
        yield _against(document, "other-words", said)


def _births(documents: Iterable[Document]) -> Iterator[Against]:
    """Yield names with birth years that differ, on each record that gives one."""
    by_name: defaultdict[str, list[_Birth]] = defaultdict(list)
    for document in documents:
        for name, birth in _births_of(document):
            by_name[name].append(birth)
    for name, given in by_name.items():
        for one in given:
            others = [
                f"{other.document.object}: {other.year} ({other.why})"
                for other in given
                if abs(other.year - one.year) > YEARS and other.document.file != one.document.file
            ]
            if others:
                said = "; ".join(dict.fromkeys(others[:MOST_NAMED]))
                yield _against(
                    one.document,
                    "births-differ",
                    f"{name} was born about {one.year} ({one.why}), but {said}",
                )


def _births_of(document: Document) -> Iterator[tuple[str, _Birth]]:
    """Yield the years in which those who signed were born, as given and by age and date."""
    for each in births(document):
        if each.name:
            yield each.name, _Birth(each.born, f"{each.age} in {each.year}", document)
    _, born_as_given, _ = document.said.maker
    if born_as_given is not None and document.carver and document.inscription == 1:
        yield document.carver, _Birth(born_as_given, "as the record says", document)


def _same_objects(documents: Iterable[Document]) -> Iterator[Against]:
    """Yield records that seem to be of one object: the same texts, and the same measurements."""
    by_object: defaultdict[str, list[Document]] = defaultdict(list)
    for document in documents:
        by_object[document.file].append(document)
    alike: defaultdict[tuple[str, ...], list[Document]] = defaultdict(list)
    for each in by_object.values():
        texts = tuple(document.normal for document in each)
        if sum(map(len, texts)) >= FEWEST and any(each[0].said.sizes):
            alike[each[0].kind, *texts].append(each[0])
    for group in alike.values():
        for one, other in combinations(group[:50], 2):
            if _measure_alike(one.said.sizes, other.said.sizes):
                for here, there in ((one, other), (other, one)):
                    said = f"{there.object} ({there.file}) has the same texts and measurements"
                    yield _against(here, "same-object", said)


def _measure_alike(one: Sequence[float | None], other: Sequence[float | None]) -> bool:
    """Whether two objects measure the same, in everything that was measured of both."""
    both = [(a, b) for a, b in zip(one, other, strict=True) if a is not None and b is not None]
    return bool(both) and all(abs(a - b) <= MILLIMETRES for a, b in both)


def _against(document: Document, code: str, said: str) -> Against:
    return Against(document.file, document.object, Remark(code, None, said))
