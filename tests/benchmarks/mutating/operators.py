"""Where small faults may be put into a module, and the module with one of them.

The kinds of fault are those of mutmut 3 and cosmic-ray 8 (both BSD or MIT licensed; their lists of
operators, none of their code): a comparison turned or moved by one, ``and`` for ``or``, a condition
denied, a number raised by one, a text changed, an operator changed, ``None`` for what is assigned
or handed over, a loop that does nothing, ``break`` and ``continue`` exchanged, True for False.

No fault is put into docstrings, annotations, imports, decorators (the size of a cache decides
nothing), ``strict=True`` of zip (an assertion), ``__all__``, slots, what only the type checker
reads, or the wording of errors.

>>> for fault in faults("def f(x):\\n    return x < 3 and x\\n"):
...     print(fault.line, fault.kind, fault.shown)
2 and/or x < 3 or x
2 comparison x <= 3
2 comparison x >= 3
2 number 4
"""

from __future__ import annotations

import ast
import copy
from collections.abc import Callable, Iterator
from dataclasses import dataclass

_NEXT: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}
_OTHER: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.Div,
    ast.Pow: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
_NOT_RUN = frozenset(("__all__", "__slots__"))
_IN_CLASS_TABLES = (ast.Raise, ast.Import, ast.ImportFrom, ast.Global)

Change = Callable[[ast.AST], ast.AST]


@dataclass(frozen=True)
class Fault:
    """One fault that may be put into a module.

    Attributes:
        number: which node, in the order of :func:`_nodes`.
        choice: which of that node's faults.
        kind: the kind of fault.
        line: the line of the node, from 1.
        before: the node as it stands.
        shown: the node with the fault.
        function: the lines of the smallest function it lies in; (0, 0) outside functions.
        name: the name that the module gives what it lies in; "" where there is none.
    """

    number: int
    choice: int
    kind: str
    line: int
    before: str
    shown: str
    function: tuple[int, int]
    name: str


def faults(source: str) -> list[Fault]:
    """Return every fault that may be put into a module."""
    return [
        Fault(
            number,
            choice,
            kind,
            _line(node),
            _said(node),
            _said(change(copy.deepcopy(node))),
            *where,
        )
        for number, (node, where) in enumerate(_nodes(ast.parse(source)))
        for choice, (kind, change) in enumerate(_changes(node))
    ]


def faulty(source: str, fault: Fault) -> ast.Module:
    """Return the module with the fault put in."""
    tree = ast.parse(source)
    nodes = [node for node, _ in _nodes(tree)]
    old = nodes[fault.number]
    new = _changes(old)[fault.choice][1](copy.deepcopy(old))
    for parent in ast.walk(tree):
        for field, value in ast.iter_fields(parent):
            if value is old:
                setattr(parent, field, new)
            elif isinstance(value, list) and any(part is old for part in value):
                setattr(parent, field, [new if part is old else part for part in value])
    return ast.fix_missing_locations(tree)


def _said(node: ast.AST) -> str:
    return ast.unparse(ast.fix_missing_locations(node)).partition("\n")[0]


def _line(node: ast.AST) -> int:
    line = getattr(node, "lineno", None)
    return (
        line if line is not None else min(n.lineno for n in ast.walk(node) if hasattr(n, "lineno"))
    )


Where = tuple[tuple[int, int], str]


def _nodes(tree: ast.Module) -> Iterator[tuple[ast.AST, Where]]:
    """Yield the nodes that may bear a fault, each with the function or name that it lies in."""

    def inside(node: ast.AST, where: Where) -> Iterator[tuple[ast.AST, Where]]:
        if isinstance(node, _IN_CLASS_TABLES) or _is_for_types(node):
            return
        if isinstance(node, ast.FunctionDef):
            where = ((node.lineno, node.end_lineno or node.lineno), node.name)
        elif where == ((0, 0), "") and isinstance(node, ast.Assign | ast.AnnAssign | ast.ClassDef):
            where = ((0, 0), _name(node))
            if where[1] in _NOT_RUN:
                return
        yield node, where
        for child in _children(node):
            yield from inside(child, where)

    for node in tree.body:
        yield from inside(node, ((0, 0), ""))


def _children(node: ast.AST) -> Iterator[ast.AST]:
    """Yield the parts that are run: no docstrings, annotations, decorators, bases."""
    left_out = {"annotation", "returns", "decorator_list", "bases", "type_comment"}
    for field, value in ast.iter_fields(node):
        if field in left_out or (field == "value" and getattr(node, "arg", "") == "strict"):
            continue
        parts = value if isinstance(value, list) else [value]
        if field == "body" and isinstance(node, ast.FunctionDef | ast.ClassDef):
            parts = parts[1:] if ast.get_docstring(node) is not None else parts
        yield from (part for part in parts if isinstance(part, ast.AST))


def _is_for_types(node: ast.AST) -> bool:
    if isinstance(node, ast.If):
        return ast.unparse(node.test) == "TYPE_CHECKING"
    if isinstance(node, ast.Expr):  # a docstring, also of an attribute
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.Call):
        return ast.unparse(node.func) in {"TypeVar", "ParamSpec", "cast", "NewType"}
    return False


def _name(node: ast.Assign | ast.AnnAssign | ast.ClassDef) -> str:
    if isinstance(node, ast.ClassDef):
        return node.name
    target = node.targets[0] if isinstance(node, ast.Assign) else node.target
    return ast.unparse(target)


def _changes(node: ast.AST) -> list[tuple[str, Change]]:
    """Return what may be made of a node: the kind of each fault and what makes it."""
    return [*_of_expression(node), *_of_statement(node)]


def _of_expression(node: ast.AST) -> list[tuple[str, Change]]:
    found: list[tuple[str, Change]] = []
    if isinstance(node, ast.Compare):
        for place, op in enumerate(node.ops):
            found += [("comparison", _turned(place, new)) for new in _NEXT.get(type(op), ())]
    elif isinstance(node, ast.BoolOp):
        found.append(("and/or", _with(op=ast.Or() if isinstance(node.op, ast.And) else ast.And())))
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub):
        found.append(("not or minus left out", lambda n: n.operand))  # type: ignore[attr-defined]
    elif isinstance(node, ast.BinOp | ast.AugAssign) and type(node.op) in _OTHER:
        found.append(("operator", _with(op=_OTHER[type(node.op)]())))
    elif isinstance(node, ast.Constant):
        found += _of_constant(node.value)
    elif isinstance(node, ast.Lambda):
        found.append(("None returned", _with(body=ast.Constant(None))))
    elif isinstance(node, ast.Call):
        found += [
            ("None handed over", _none_for(i)) for i, a in enumerate(node.args) if _replaced(a)
        ]
        found += [
            ("argument left out", _without(i))
            for i, k in enumerate(node.keywords)
            if k.arg not in (None, "strict")
        ]
    return found


def _of_statement(node: ast.AST) -> list[tuple[str, Change]]:
    found: list[tuple[str, Change]] = []
    if isinstance(node, ast.If | ast.IfExp | ast.While):
        found.append(("condition denied", _denied))
    elif isinstance(node, ast.comprehension) and node.ifs:
        found.append(("filter left out", _with(ifs=[])))
    elif isinstance(node, ast.For):
        found.append(("loop not run", _with(iter=ast.List([], ast.Load()))))
    elif isinstance(node, ast.Break):
        found.append(("break/continue", lambda n: ast.Continue()))
    elif isinstance(node, ast.Continue):
        found.append(("break/continue", lambda n: ast.Break()))
    elif isinstance(node, ast.Assign) and not _is_none(node.value):
        found.append(("None assigned", _with(value=ast.Constant(None))))
    return found


def _of_constant(value: object) -> list[tuple[str, Change]]:
    if isinstance(value, bool):
        return [("True/False", lambda n: ast.Constant(not value))]
    if isinstance(value, int | float):
        return [("number", lambda n: ast.Constant(value + 1))]
    if isinstance(value, str):
        return [("text", lambda n: ast.Constant(f"XX{value}XX"))]
    return []


def _replaced(node: ast.expr) -> bool:
    return not _is_none(node) and not isinstance(node, ast.Starred | ast.GeneratorExp)


def _is_none(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and node.value is None


def _with(**fields: object) -> Change:
    def change(node: ast.AST) -> ast.AST:
        for field, value in fields.items():
            setattr(node, field, value)
        return node

    return change


def _turned(place: int, new: type[ast.cmpop]) -> Change:
    def change(node: ast.AST) -> ast.AST:
        assert isinstance(node, ast.Compare)
        node.ops[place] = new()
        return node

    return change


def _denied(node: ast.AST) -> ast.AST:
    assert isinstance(node, ast.If | ast.IfExp | ast.While)
    node.test = ast.UnaryOp(ast.Not(), node.test)
    return node


def _none_for(place: int) -> Change:
    def change(node: ast.AST) -> ast.AST:
        assert isinstance(node, ast.Call)
        node.args[place] = ast.Constant(None)
        return node

    return change


def _without(place: int) -> Change:
    def change(node: ast.AST) -> ast.AST:
        assert isinstance(node, ast.Call)
        del node.keywords[place]
        return node

    return change
