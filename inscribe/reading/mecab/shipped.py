"""What the wheel brings of a dictionary, so that the first reading need not gather its words.

Gathering the words of UniDic and of the tables takes nine tenths of the time, compiling them one.
So the wheel holds what was gathered (``glossary/build/wheel.py``), under the name that the
dictionary has in the cache: as that follows from code, tables and the UniDic installed, it is never
another's. In a checkout, and where a user's table changes the name, the words are gathered.
"""

from __future__ import annotations

from pathlib import Path

FOLDER = Path(__file__).parents[2] / "prepared"


def is_shipped(name: str) -> bool:
    """Whether the words of the dictionary of this name came with the package."""
    return (FOLDER / f"{name}.zip").is_file()


def lay_down(name: str, folder: Path) -> bool:
    """Lay what was gathered into ``folder``; False where there is none, or Python lacks lzma."""
    if not is_shipped(name):
        return False
    from zipfile import ZipFile

    try:
        with ZipFile(FOLDER / f"{name}.zip") as archive:
            archive.extractall(folder)
    except RuntimeError:  # Python was built without lzma
        return False
    return True


def pack(parts: Path, target: Path) -> None:
    """Write the files in the folder ``parts`` into one, the same bytes whenever it is done."""
    from zipfile import ZIP_LZMA, ZipFile, ZipInfo

    with ZipFile(target, "w") as archive:
        for path in sorted(parts.iterdir()):
            archive.writestr(ZipInfo(path.name), path.read_bytes(), ZIP_LZMA)
