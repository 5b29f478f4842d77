"""Public names of a package that are imported from their modules when they are first used."""

from __future__ import annotations

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
        return getattr(import_module(module), there or name)

    return attribute
