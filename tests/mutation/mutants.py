"""Small wrongs put into a source file, one at a time: signs, bounds, numbers, and, or, not."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice

COMPARED: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE), ast.LtE: (ast.Lt, ast.Gt), ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt), ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,), ast.IsNot: (ast.Is,), ast.In: (ast.NotIn,), ast.NotIn: (ast.In,),
}  # fmt: skip
RECKONED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult, ast.Mod: ast.FloorDiv, ast.Pow: ast.Mult,
    ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd,
}  # fmt: skip
CALLED = {
    "min": "max", "max": "min", "minimum": "maximum", "maximum": "minimum", "sin": "cos",
    "cos": "sin", "argmin": "argmax", "argmax": "argmin", "any": "all", "all": "any",
    "floor": "ceil", "ceil": "floor", "left": "right", "searchsorted": "argsort",
    "cumsum": "cumprod", "mean": "sum", "zeros": "ones", "nanmin": "nanmax", "nanmax": "nanmin",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """A wrong that can be put into a file: its number there, and what it is.

    ``function`` is the function or method that holds it, ``lines`` are those of its statement.
    """

    number: int
    function: str
    line: int
    lines: tuple[int, ...]
    what: str
    boundary: bool


def mutants(source: str) -> list[Mutant]:
    """Give every mutant of a file, in its order."""
    return [
        Mutant(
            number=number,
            function=function,
            line=node.lineno,
            lines=tuple(range(first, (node.end_lineno or first) + 1)),
            what=what,
            boundary=boundary,
        )
        for number, (function, first, (node, what, boundary, _)) in enumerate(
            _places(ast.parse(source))
        )
    ]


def spoilt(source: str, mutant: Mutant) -> ast.Module:
    """Give a file with one wrong in it."""
    tree = ast.parse(source)
    for _, _, (node, _, _, spoil) in islice(_places(tree), mutant.number, mutant.number + 1):
        spoil(node)
    return tree


Place = tuple[ast.expr, str, bool, Callable[[ast.expr], None]]


def _places(tree: ast.Module) -> Iterator[tuple[str, int, Place]]:
    """Give the function, the first line of the statement, and the wrong."""
    for name, outer in _functions_by_name(tree):
        for function in ast.walk(outer):
            if not isinstance(function, ast.FunctionDef):
                continue
            for statement in function.body:
                for first, node in _reckoned_nodes(statement, statement.lineno):
                    for wrong in _wrongs(node):
                        yield name, first, wrong


def _functions_by_name(
    node: ast.Module | ast.ClassDef, within: str = ""
) -> Iterator[tuple[str, ast.FunctionDef]]:
    """Give functions and methods by their qualified names, without what is inside of them."""
    for one in node.body:
        if isinstance(one, ast.FunctionDef):
            yield f"{within}{one.name}", one
        elif isinstance(one, ast.ClassDef):
            yield from _functions_by_name(one, f"{within}{one.name}.")


def _reckoned_nodes(node: ast.AST, first: int) -> Iterator[tuple[int, ast.expr]]:
    """Walk what is reckoned: no inner functions (they come by themselves), words or types."""
    if isinstance(node, ast.FunctionDef | ast.JoinedStr | ast.Raise | ast.Assert):
        return
    if isinstance(node, ast.stmt):
        first = node.lineno
    if isinstance(node, ast.expr):
        yield first, node
    for name, child in ast.iter_fields(node):
        if name in {"annotation", "returns", "type_comment"}:
            continue
        for one in child if isinstance(child, list) else [child]:
            if isinstance(one, ast.AST):
                yield from _reckoned_nodes(one, first)


def _wrongs(node: ast.expr) -> Iterator[Place]:
    told = ast.unparse(node)[:60]
    if isinstance(node, ast.Compare) and len(node.ops) == 1:
        for wrong in COMPARED.get(type(node.ops[0]), ()):
            boundary = wrong.__name__.rstrip("E") == type(node.ops[0]).__name__.rstrip("E")
            yield node, f"{told}: {wrong.__name__}", boundary, _set_comparison(wrong)
    elif isinstance(node, ast.BinOp) and type(node.op) in RECKONED:
        other = RECKONED[type(node.op)]
        yield node, f"{told}: {other.__name__}", False, _set_operator(other)
    elif isinstance(node, ast.BoolOp):
        both = ast.Or if isinstance(node.op, ast.And) else ast.And
        yield node, f"{told}: {both.__name__}", False, _set_operator(both)
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub | ast.Not | ast.Invert):
        yield node, f"{told}: sign or not left out", False, _drop_sign
    elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
        value = node.value + 1 if isinstance(node.value, int) else node.value * 1.5 + 0.1
        yield node, f"{told} becomes {value:g}", False, _set_value(value)
    elif isinstance(node, ast.Call):
        name = (
            node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        )
        if name in CALLED:
            yield node, f"{told}: {CALLED[name]}", False, _set_name(CALLED[name])


def _set_comparison(wrong: type[ast.cmpop]) -> Callable[[ast.expr], None]:
    return lambda node: setattr(node, "ops", [wrong()])


def _set_operator(wrong: type[ast.AST]) -> Callable[[ast.expr], None]:
    return lambda node: setattr(node, "op", wrong())


def _set_value(value: float) -> Callable[[ast.expr], None]:
    return lambda node: setattr(node, "value", value)


def _drop_sign(node: ast.expr) -> None:
    assert isinstance(node, ast.UnaryOp)
    node.op = ast.UAdd() if not isinstance(node.op, ast.Not) else ast.Not()
    if isinstance(node.op, ast.Not):
        node.operand = ast.UnaryOp(
            op=ast.Not(), operand=node.operand, lineno=node.lineno, col_offset=0
        )


def _set_name(wrong: str) -> Callable[[ast.expr], None]:
    def do(node: ast.expr) -> None:
        assert isinstance(node, ast.Call)
        if isinstance(node.func, ast.Attribute):
            node.func.attr = wrong
        elif isinstance(node.func, ast.Name):
            node.func.id = wrong

    return do
