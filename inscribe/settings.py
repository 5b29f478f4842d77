"""Settings: what holds for every command until the command line says otherwise.

A file ``inscribe.toml`` is looked for in the folder of what a command is given and in those above
it, then in the user's own configuration folder. Each key may be left out:

    library = "sources.sqlite"     # the library of source texts
    glossary = ["tables"]          # folders of your own tables
    records = "records"            # names settled in these records are read so
    style = "house.toml"           # the house style of entries
    labels = "en"                  # or "ja"
    letters = "hepburn"            # or "iso3602"
    reader = "A. Reader"           # who records and settles

Paths are taken from the folder of the file. For each key there is a variable of the environment,
``INSCRIBE_LIBRARY`` and so on (several folders as in PATH); it goes before the file, and the
command line before both.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inscribe.errors import InputError, Place, did_you_mean

FILE = "inscribe.toml"
PATHS = frozenset({"library", "glossary", "records", "style"})
CHOICES = {"labels": ("en", "ja"), "letters": ("hepburn", "iso3602")}
KEYS = ("library", "glossary", "records", "style", "labels", "letters", "reader")

# The options that take a setting as their default, by command: the setting and the parameter.
_USES = {
    "read": {"letters": "letters", "records": "records", "library": "library_file"},
    "collate": {"library": "library_file"},
    "name": {"records": "records"},
    "entry": {"library": "library_file", "style": "style_file", "labels": "labels"},
    "check": {"library": "library_file"},
    "restore": {"library": "library_file"},
    "concord": {"library": "library_file"},
    "new": {"reader": "reader", "library": "library_file"},
    "settle": {"reader": "by", "library": "library_file"},
    "merge": {"reader": "by"},
}
_LIBRARY_COMMANDS = ("add", "list", "remove", "export", "find")


@dataclass(frozen=True, slots=True)
class Setting:
    """The value of one key (of ``glossary`` a tuple of folders), and where it was found."""

    key: str
    value: str | tuple[str, ...]
    origin: str


def settings(beside: Path | None = None) -> tuple[Setting, ...]:
    """Return the settings that hold for work on what lies at ``beside`` (else: here).

    Raises:
        InputError: the file of settings cannot be read, or has an unknown key or a wrong value.
    """
    file = settings_file(beside)
    written = _written(file) if file else {}
    found = []
    for key in KEYS:
        variable = f"INSCRIBE_{key.upper()}"
        if given := os.environ.get(variable):
            several = key == "glossary"
            value = tuple(given.split(os.pathsep)) if several else given
            found.append(Setting(key, _chosen(key, value, Place(variable)), variable))
        elif key in written:
            found.append(Setting(key, written[key], str(file)))
    return tuple(found)


def settings_file(beside: Path | None = None) -> Path | None:
    """Return the nearest file of settings, from a place upwards, or the user's own."""
    start = (beside or Path()).absolute()
    for folder in (start, *start.parents):
        if (folder / FILE).is_file():
            return folder / FILE
    own = _own_file()
    return own if own.is_file() else None


def defaults(found: tuple[Setting, ...]) -> dict[str, Any]:
    """Return the settings as defaults of options, by command, as the command line takes them."""
    values = {setting.key: setting.value for setting in found}
    made: dict[str, Any] = {}
    for command, uses in _USES.items():
        options = {option: values[key] for key, option in uses.items() if key in values}
        if options:
            made[command] = options
    if "library" in values:
        made["source"] = {each: {"library_file": values["library"]} for each in _LIBRARY_COMMANDS}
    if "glossary" in values:
        made["glossaries"] = values["glossary"]
    return made


def _own_file() -> Path:
    return own_folder("config", ".config", xdg=os.name != "nt") / FILE


def own_folder(kind: str, at_home: str, *, xdg: bool) -> Path:
    """Return the user's folder for files of a kind, config or data.

    Where the system keeps to the base directories of XDG it is worked out here (``at_home`` is the
    folder in the user's home), for importing platformdirs takes longer than half of click.
    """
    base, home = os.environ.get(f"XDG_{kind.upper()}_HOME"), os.environ.get("HOME")
    if xdg and (base or home):
        return (Path(base) if base else Path.home() / at_home) / "inscribe"
    import platformdirs

    return Path(getattr(platformdirs, f"user_{kind}_dir")("inscribe", appauthor=False))


def _written(file: Path) -> dict[str, str | tuple[str, ...]]:
    import tomllib

    from inscribe.files import read_text

    try:
        said = tomllib.loads(read_text(file))
    except tomllib.TOMLDecodeError as error:
        raise InputError(f"this is not TOML: {error}", Place(str(file)), "mend it") from error
    return {key: _value(key, value, file) for key, value in said.items()}


def _value(key: str, value: object, file: Path) -> str | tuple[str, ...]:
    place = Place(str(file))
    if key not in KEYS:
        hint = did_you_mean(key, KEYS) or f"the keys are {', '.join(KEYS)}"
        raise InputError(f"there is no setting {key!r}", place, hint)
    if key == "glossary" and isinstance(value, list) and all(isinstance(v, str) for v in value):
        return tuple(str(file.parent / folder) for folder in value)
    if not isinstance(value, str):
        wanted = "a list of folders" if key == "glossary" else "a text"
        raise InputError(f"the setting {key} is not {wanted}", place, "write it in quotes")
    if key == "glossary":
        return (str(file.parent / value),)
    return _chosen(key, str(file.parent / value) if key in PATHS else value, place)


def _chosen(key: str, value: str | tuple[str, ...], place: Place) -> str | tuple[str, ...]:
    if key in CHOICES and value not in CHOICES[key]:
        hint = f"use one of {', '.join(CHOICES[key])}"
        raise InputError(f"the setting {key} is {value!r}", place, hint)
    return value
