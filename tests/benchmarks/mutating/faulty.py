"""A fault put into the package as it stands in this process, after it was imported.

A function is given the code of the faulty module, wherever it is held: decorated, imported into
other modules, bound to a class. A constant takes the value that the faulty module gives it, in
every module that imported it. Both cost milliseconds; importing the package anew costs seconds.
"""

from __future__ import annotations

import ast
import contextlib
import gc
import sys
from types import CodeType, FunctionType, ModuleType
from typing import Any

Place = tuple[str, int]  # the qualified name of a function and its first line


def put_in(module: ModuleType, file: str, tree: ast.Module, *, in_function: bool) -> None:
    """Put the faulty module's code and constants into the imported one.

    Raises:
        Exception: whatever the faulty module raises when it is imported.
    """
    code = compile(tree, module.__file__ or file, "exec", dont_inherit=True)
    _exchange_functions(code, module.__file__ or file)
    if not in_function:
        _exchange_constants(code, module)


def _codes(code: CodeType) -> dict[Place, CodeType]:
    """Return the code of every function in a module, also of those inside others."""
    found: dict[Place, CodeType] = {}
    for part in code.co_consts:
        if isinstance(part, CodeType):
            found[part.co_qualname, part.co_firstlineno] = part
            found.update(_codes(part))
    return found


def _exchange_functions(code: CodeType, file: str) -> None:
    faulty = _codes(code)
    for each in gc.get_objects():
        if isinstance(each, FunctionType) and each.__code__.co_filename == file:
            new = faulty.get((each.__code__.co_qualname, each.__code__.co_firstlineno))
            if new is not None and new != each.__code__:
                with contextlib.suppress(ValueError):  # another number of free variables
                    each.__code__ = new


def _exchange_constants(code: CodeType, module: ModuleType) -> None:
    space: dict[str, Any] = {
        name: value for name, value in vars(module).items() if name[:2] == "__"
    }
    exec(code, space)  # the module of this very project, with a fault
    for name, value in space.items():
        old = vars(module).get(name, value)
        if isinstance(value, type) or getattr(old, "__module__", None) == module.__name__:
            _exchange_defaults(old, value)
        elif name[:2] != "__" and not isinstance(value, ModuleType):
            for other in list(sys.modules.values()):
                if other.__name__.startswith("inscribe") and vars(other).get(name) is old:
                    setattr(other, name, value)


def _exchange_defaults(old: Any, new: Any) -> None:
    while hasattr(old, "__wrapped__") and hasattr(new, "__wrapped__"):
        old, new = old.__wrapped__, new.__wrapped__
    if isinstance(old, FunctionType) and isinstance(new, FunctionType):
        old.__defaults__, old.__kwdefaults__ = new.__defaults__, new.__kwdefaults__
