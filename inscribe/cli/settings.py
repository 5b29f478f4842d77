"""``inscribe settings``: what holds for every command, and from where."""

from __future__ import annotations

from pathlib import Path

import click

from inscribe.cli.giving import example, format_option, library_path, output_options
from inscribe.cli.showing import write_result
from inscribe.errors import InputError, Place
from inscribe.settings import FILE, KEYS, PATHS, Setting, settings

DEFAULT = "the default"
KEYS_TOLD = """\b
A file inscribe.toml, in the folder of the records or above it, or in your
configuration folder (~/.config/inscribe), may hold
  library = "sources.sqlite"   the library of source texts
  glossary = ["tables"]        folders of your own tables
  records = "records"          names settled in these records are read so
  style = "house.toml"         the house style of entries
  labels = "en"                or "ja"
  letters = "hepburn"          or "iso3602"
  reader = "A. Reader"         who records and settles
Paths are taken from the folder of the file. Variables of the environment,
INSCRIBE_LIBRARY, INSCRIBE_GLOSSARY and so on, go before the file, and what
stands on the command line before both.

"""


@click.command(epilog=KEYS_TOLD + example("inscribe settings", "inscribe settings records/"))
@click.argument("path", required=False, metavar="[RECORD|FOLDER]")
@format_option("text", "json", name="shape")
@output_options
def command(path: str | None, shape: str, output: str | None, force: bool, quiet: bool) -> None:
    """Show the settings that hold here, or for work on a record or folder, and from where."""
    beside = Path(path) if path else Path()
    if not beside.exists():
        raise InputError("there is no such record or folder", Place(str(beside)), "check the path")
    found = settings(beside if beside.is_dir() else beside.parent)
    if not any(each.key == "library" for each in found):
        found = (Setting("library", str(library_path(None)), DEFAULT), *found)
    write_result(_shown(found, shape), output, force=force)


def _shown(found: tuple[Setting, ...], shape: str) -> str:
    if shape == "json":
        import json

        plain = {each.key: {"value": each.value, "from": each.origin} for each in found}
        return json.dumps(plain, ensure_ascii=False, indent=2)
    width = max(len(each.key) for each in found)
    lines = [f"{each.key:{width}}  {_words(each.value)}  ({_origin(each)})" for each in found]
    if all(each.origin == DEFAULT for each in found):
        lines += [f"no settings; a file {FILE} here or above it may hold\n  {', '.join(KEYS)}"]
    return "\n".join(lines)


def _origin(setting: Setting) -> str:
    """Return where a setting is from, and what of the files it names is not there."""
    paths = setting.value if isinstance(setting.value, tuple) else (setting.value,)
    missing = [path for path in paths if setting.key in PATHS and not Path(path).exists()]
    if setting.origin == DEFAULT:
        return f"{DEFAULT}; there is none yet" if missing else DEFAULT
    told = f"; not there: {', '.join(missing)}" if missing else ""
    return f"from {setting.origin}{told}"


def _words(value: str | tuple[str, ...]) -> str:
    return value if isinstance(value, str) else ", ".join(value)
