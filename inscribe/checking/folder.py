"""A folder of records, checked: each by itself, on several cores, and all against each other.

What was found in a record, and between the records, is kept from one run to the next
(``inscribe.keeping``); the library, which may change, is asked each time.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from inscribe.checking.across import Against, against_each_other
from inscribe.checking.examine import examine
from inscribe.checking.examined import About, Remark
from inscribe.checking.findings import Checked, Finding, Looked, finding
from inscribe.checking.naming import (
    how_they_differ,
    leads_out,
    missing_sources,
    nearly_the_same,
)
from inscribe.checking.pictured import picture_problem
from inscribe.checking.two_ways import read_in_two_ways
from inscribe.checking.wording import Compared
from inscribe.concordance import Document, documents_read, of_rows, rows_of, store_of
from inscribe.files import StrPath
from inscribe.keeping import (
    FileMark,
    Kept,
    KeptValue,
    Store,
    Work,
    each_record,
    library_marks,
    made_together,
    mark_of,
    mark_of_all,
    names_settled,
)
from inscribe.record import Survey, survey
from inscribe.sources import Library, file_of

ACROSS = "across"  # under which what is found between records is kept
WORDINGS = "wordings"  # the same for the wordings that were compared
Progress = Callable[[int, int], None]


def check_folder(
    folder: StrPath,
    library: Library | StrPath | None = None,
    progress: Progress = lambda done, count: None,
    *,
    cache: Path | None = None,
    keep: bool = False,
) -> Checked:
    """Return the records of ``folder`` (or one record), and everything found in them.

    Args:
        folder: the folder, or a record file.
        library: where sources named by id are looked up: an open library, or its file; nothing is
            looked up where that file is missing.
        progress: hears how many of how many records are read.
        cache: the folder of the cache; None for ``INSCRIBE_CACHE`` or the user's own.
        keep: whether what is found in a record is kept for the next run.

    Raises:
        InputError: there is no such file or folder.

    >>> found = check_folder("examples/DEMO-004.toml")
    >>> found.records, found.findings[0].code, found.findings[0].line
    (1, 'unreadable', 18)
    """
    folder, file = Path(folder), file_of(library)
    there = Survey([folder]) if folder.is_file() else survey(folder)
    with (
        store_of(folder, cache, keep=keep) as store,
        names_settled(folder, there.records, examined(file), store, progress) as work,
    ):
        looked = [
            Looked(path, *_looked_at(values[0], path, file))
            for path, values in each_record(there.records, work, store, progress)
        ]
        between = _across(there.records, work, store, _names_library(looked))
    records = {str(each.file): each for each in looked}
    for said in (
        *_ids(looked),
        *_sources(looked, file),
        *_links(looked, folder),
        *read_in_two_ways(looked),
        *_pictures(looked),
        *(finding(a.remark.code, a.file, 1, a.remark.message, a.object) for a in between),
    ):
        records[said.file].findings.append(said)
    passed_over = [*_passed_over(there)]
    found = (*passed_over, *(said for each in looked for said in each.findings))
    return Checked(len(looked), found, tuple(looked))


def _looked_at(kept: Any, path: Path, library: Path | None) -> tuple[About | None, list[Finding]]:
    try:
        about = About.kept(kept["about"]) if kept["about"] is not None else None
        remarks = [Remark(*each) for each in kept["remarks"]]
    except (TypeError, KeyError, ValueError):  # what was kept is damaged
        about, remarks, _ = examine(path, library)
    of = about.id if about else ""
    return about, [finding(each.code, str(path), each.line, each.message, of) for each in remarks]


def _examined(path: Path, library: Path | None) -> tuple[Any, Any]:
    """Return what is found in a record, and its documents, as plain data."""
    about, remarks, documents = examine(path, library)
    found = {"about": about, "remarks": remarks}
    if not documents:  # the record cannot be read: why, the concordance says too
        return found, *documents_read(library).make(path)
    return found, {"rows": rows_of(documents), "problem": ""}


def examined(library: Path | None) -> Work:
    """Return the work of a check; ``library`` has the words of sources named by their id alone."""
    return Work(("findings", "documents"), partial(_examined, library=library), library=library)


def _names_library(looked: Sequence[Looked]) -> bool:
    return any(each.about and each.about.sources for each in looked)


def _across(
    paths: Sequence[Path], work: Work, store: Store | None, in_library: bool
) -> list[Against]:
    """Return what the records say against each other; kept as long as none of them changes.

    ``in_library`` tells whether one of them names a text of the library, which may change too.
    """
    if len(paths) < 2:
        return []
    texts = library_marks(work.library) if in_library else ()
    mark = mark_of_all([*(f"{path} {mark_of(path)}" for path in paths), *texts])
    rows = made_together(ACROSS, store, lambda: mark, lambda: _against(paths, work, store))
    return [Against(file, of, Remark(*remark)) for file, of, remark in rows]


def _against(paths: Sequence[Path], work: Work, store: Store | None) -> list[Against]:
    documents: list[Document] = []
    for _, (_, found) in each_record(paths, work, store, wanted=2):
        documents += of_rows(found["rows"])
    kept_words = store.values(WORDINGS, [""]).get("") if store else None
    compared: Compared = kept_words if isinstance(kept_words, dict) else {}
    made = list(against_each_other(documents, compared))
    if store:
        store.keep(WORDINGS, [KeptValue("", Kept(FileMark(0, 0), "", ""), compared)])
    return made


def _passed_over(there: Survey) -> Iterator[Finding]:
    for error in there.closed:
        yield finding("closed", error.place.file or "", None, f"{error.message}; {error.hint}")
    for path in there.linked:
        yield finding("linked", str(path), None, "a link to a folder is not followed")


def _ids(looked: Sequence[Looked]) -> Iterator[Finding]:
    first_with: dict[str, Path] = {}
    for each in looked:
        if each.about is None:
            continue
        identity = each.about.id
        if identity in first_with:
            said = f"{identity} is also the id of {first_with[identity]}"
            yield finding("duplicate-id", str(each.file), 1, said, identity)
        first_with.setdefault(identity, each.file)
    for one, others in nearly_the_same(first_with):
        for other in others:
            how = how_they_differ(one, other)
            said = f"{one} and {other} ({first_with[other]}) differ only in {how}"
            yield finding("nearly-same-id", str(first_with[one]), 1, said, one)


def _sources(looked: Sequence[Looked], library: Path | None) -> Iterator[Finding]:
    named = [each for each in looked if each.about and each.about.sources]
    ids = {identity for each in named for identity, _ in each.about.sources}  # type: ignore[union-attr]
    missing = missing_sources(ids, library)
    for each in named:
        assert each.about is not None
        for identity, line in each.about.sources:
            if identity in missing:
                meant = f"; did you mean {missing[identity]}?" if missing[identity] else ""
                said = f"no text {identity}{meant}"
                yield finding("source-missing", str(each.file), line, said, each.about.id)


def _pictures(looked: Sequence[Looked]) -> Iterator[Finding]:
    for each in looked:
        for name, line in each.about.pictures if each.about else ():
            if said := picture_problem(name, each.file.parent):
                of = each.about.id if each.about else ""
                yield finding("image-missing", str(each.file), line, said, of)


def _links(looked: Sequence[Looked], folder: Path) -> Iterator[Finding]:
    for each in looked:
        if leads_out(each.file, folder):
            said = f"the file is a link that leads out of the folder, to {each.file.resolve()}"
            of = each.about.id if each.about else ""
            yield finding("leads-out", str(each.file), None, said, of)
