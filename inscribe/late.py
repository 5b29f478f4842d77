"""What is done when it is first asked for: a package's imports, and fields of a value.

A value with such fields (:class:`Late`) is made for every text that is read, and its class is
imported by every command, so it is written out: a dataclass takes half a millisecond to import.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any, Self


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


def door(package: str, rooms: Mapping[str, str]) -> Callable[[str], Any]:
    """Return the ``__getattr__`` of a room: its public names, imported when first used.

    ``rooms`` gives, for each file or inner room of the package, the names that others may use.

    >>> door("inscribe.record", {"loader": "load loads"})("load").__name__
    'load'
    """
    homes = {name: f"{package}.{file}" for file, public in rooms.items() for name in public.split()}
    return names(package, homes)


class Late:
    """A value that never changes, fields of which are made when they are first asked for, and once.

    A subclass names its fields in ``FIELDS``, in the order its ``__init__`` takes them, and in
    ``LATE`` those that may be given as functions that make them.
    """

    FIELDS: tuple[str, ...] = ()
    LATE: tuple[str, ...] = ()
    __slots__ = ("_makers",)
    _makers: dict[str, Callable[[], Any]]

    def _keep(self, **values: Any) -> None:
        keep = object.__setattr__
        makers = {name: values.pop(name) for name in self.LATE if callable(values[name])}
        if makers:
            keep(self, "_makers", makers)
        for name, value in values.items():
            keep(self, name, value)

    def __getattr__(self, name: str) -> Any:
        if name not in self.LATE:
            raise AttributeError(name)
        made = self._makers[name]()
        object.__setattr__(self, name, made)
        return made

    def replaced(self, **changes: Any) -> Self:
        """Return the same value with other fields."""
        fields = {name: getattr(self, name) for name in self.FIELDS}
        return type(self)(**(fields | changes))

    def _values(self) -> tuple[Any, ...]:
        return tuple([getattr(self, name) for name in self.FIELDS])

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{name} cannot be changed")

    def __eq__(self, other: object) -> bool:
        return type(other) is type(self) and other._values() == self._values()

    def __hash__(self) -> int:
        return hash(self._values())

    def __repr__(self) -> str:
        values = zip(self.FIELDS, self._values(), strict=True)
        return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in values)})"

    def __reduce__(self) -> tuple[type[Self], tuple[Any, ...]]:
        return type(self), self._values()
