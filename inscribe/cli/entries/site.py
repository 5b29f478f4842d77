"""A site of many entries in a folder: no file is lost, and a stopped run can be taken up again."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from inscribe.cli.entries import files

if TYPE_CHECKING:
    from inscribe.entry import Entry
    from inscribe.report import Style

OWN = (Path("index.toml"), Path("volume.toml"))  # names that no record's page may take


def write_site(
    entries: list[tuple[Path, Entry]],
    below: Path,
    style: Style,
    folder: Path,
    *,
    library: Path,
    force: bool,
) -> None:
    """Write index, pages and volume into ``folder``; nothing where a file would be lost.

    Args:
        entries: the records' files and entries.
        below: the records' folder.
        style: the house style.
        folder: where the site goes.
        library: the file that has the words of sources named by their id alone.
        force: whether files of others may be written over.
    """
    from inscribe.indexing import index_folder
    from inscribe.report.pages import site

    records = [*((name, 1) for name in OWN), *((path.relative_to(below), 1) for path, _ in entries)]
    named = [names[0].as_posix() for names in files.file_names(records, "html")]
    headings = index_folder(below, library=library).headings
    made = list(site([entry for _, entry in entries], named[len(OWN) :], headings, style))
    if not force:
        there = [(folder / name, data) for name, data in made if (folder / name).exists()]
        others = [file for file, data in there if not files.is_written(file, data)]
        files.refuse_others(others)
    for name, data in made:
        if not files.is_written(folder / name, data):
            files.write_file(folder / name, data, force=force)
