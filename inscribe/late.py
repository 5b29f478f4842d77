"""Public names of a package, imported when they are first used."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any


def names(package: str, homes: Mapping[str, str]) -> Callable[[str], Any]:
    """Return a package's ``__getattr__``: the module of each public name, from ``homes``.

    An entry is a module, where the name itself is found, or ``module:name`` where it is called
    otherwise there.

    >>> names("inscribe", {"load_record": "inscribe.record:load"})("load_record").__name__
    'load'
    """

    def attribute(name: str) -> Any:
        if name not in homes:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        module, _, there = homes[name].partition(":")
        found = getattr(import_module(module), there or name)
        if (room := sys.modules.get(package)) is not None:
            setattr(room, name, found)  # from now on it is found without asking here
        return found

    return attribute


def door(package: str, rooms: Mapping[str, str]) -> Callable[[str], Any]:
    """Return the ``__getattr__`` of a room: its public names, imported when first used.

    ``rooms`` gives, for each file or inner room of the package, the names that others may use.

    >>> door("inscribe.record", {"reading": "load loads"})("load").__name__
    'load'
    """
    homes = {name: f"{package}.{file}" for file, public in rooms.items() for name in public.split()}
    return names(package, homes)
