"""Slips that could be made in a calculation: an operator swapped, a term left out, a number moved by a few percent."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from types import CodeType
from typing import Any, Final

from farmbook.expr.nodes import Constant
from tests.calc.functions_of_calc import CALCULATIONS, MODULES

Calculation = Callable[..., Any]

MOVED: Final = 1.03
"""A number that is wrong is seldom wrong by less than three parts in a hundred."""

_SWAPPED: Final[Mapping[type[ast.operator], type[ast.operator]]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
}
_SWAPPED_TEST: Final[Mapping[type[ast.cmpop], type[ast.cmpop]]] = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE}


@dataclass(frozen=True)
class Slip:
    """One slip in one calculation; those `at_a_bound` change nothing until a limit or a zero is met."""

    text: str
    code: CodeType = field(repr=False)
    at_a_bound: bool


@contextmanager
def made(calculation: Calculation, slip: Slip) -> Iterator[None]:
    """Wherever the calculation is called, the slip is made."""
    right = calculation.__code__
    calculation.__code__ = slip.code
    try:
        yield
    finally:
        calculation.__code__ = right


@contextmanager
def moved(constant: Constant) -> Iterator[None]:
    """Wherever a calculation uses the constant, it is a few percent off; one that is zero is off by as much of one."""
    wrong = float(constant) * MOVED or MOVED - 1
    uses = [(vars(module), name) for module in MODULES for name, value in vars(module).items() if value is constant]
    defaults = {each: right for each in CALCULATIONS if constant in (right := each.__defaults__ or ())}
    for names, name in uses:
        names[name] = wrong
    for calculation, right in defaults.items():
        calculation.__defaults__ = tuple(wrong if value is constant else value for value in right)
    try:
        yield
    finally:
        for names, name in uses:
            names[name] = constant
        for calculation, right in defaults.items():
            calculation.__defaults__ = right


def slips(calculation: Calculation) -> list[Slip]:
    """Every slip that is one change to the body."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(calculation)))
    function = tree.body[0]
    assert isinstance(function, ast.FunctionDef)
    found = []
    for parent, part, place, node in _places(function):
        for changed, at_a_bound in _alternatives(node, calculation.__globals__):
            _put(parent, part, place, changed)
            keyword = f"{parent.arg}=" if isinstance(parent, ast.keyword) else ""
            text = f"{keyword}{ast.unparse(node)} became {ast.unparse(changed)}"
            bound = at_a_bound or bool(keyword)  # `otherwise` stands in for a division by zero
            found.append(Slip(text, _compiled(tree, calculation), bound))
            _put(parent, part, place, node)
    return found


def _places(function: ast.FunctionDef) -> Iterator[tuple[ast.AST, str, int | None, ast.expr]]:
    """Where an expression stands: what holds it, in which field, at which place of a list."""
    for statement in function.body:
        for parent in ast.walk(statement):
            for part, value in ast.iter_fields(parent):
                if part == "annotation":
                    continue
                for place, node in enumerate(value if isinstance(value, list) else [value]):
                    if isinstance(node, ast.expr):
                        yield parent, part, place if isinstance(value, list) else None, node


def _put(parent: ast.AST, part: str, place: int | None, node: ast.expr) -> None:
    if place is None:
        setattr(parent, part, node)
    else:
        getattr(parent, part)[place] = node


def _compiled(tree: ast.Module, calculation: Calculation) -> CodeType:
    """The code of the changed function, with annotations as in its module: not looked at."""
    module = compile(ast.fix_missing_locations(tree), inspect.getfile(calculation), "exec", annotations.compiler_flag)
    return next(each for each in module.co_consts if isinstance(each, CodeType))


def _alternatives(node: ast.expr, names: Mapping[str, Any]) -> list[tuple[ast.expr, bool]]:
    """What could stand here by a slip, and whether that shows only at a bound."""
    match node:
        case ast.BinOp(left, operator, right):
            swapped = ast.BinOp(left, _SWAPPED[type(operator)](), right)
            changed = [] if _only_carries_a_unit(right, names) else [swapped, left]
            return [(each, False) for each in (*changed, *([] if _only_carries_a_unit(left, names) else [right]))]
        case ast.UnaryOp():
            return [(node.operand, False)]
        case ast.Compare(left, [operator], right):
            return [(ast.Compare(left, [_SWAPPED_TEST[type(operator)]()], right), True)]
        case ast.Constant(int() | float() as value):
            return [(ast.Constant(value * MOVED or MOVED - 1), value == 0)]
        case ast.Call(ast.Name(function)):
            return _of_a_call(function, node)
    return []


def _only_carries_a_unit(node: ast.expr, names: Mapping[str, Any]) -> bool:
    """A constant that is no degree or one year: left out, it changes no number, only what the units agree to."""
    constant = names.get(node.id) if isinstance(node, ast.Name) else None
    return isinstance(constant, Constant) and float(constant) in {0.0, 1.0}


def _of_a_call(function: str, call: ast.Call) -> list[tuple[ast.expr, bool]]:
    first, *others = call.args
    match function:
        case "ratio":
            product = ast.BinOp(first, ast.Mult(), others[0])
            plain = ast.Call(call.func, call.args, [])
            return [(product, False), (first, False), *([(plain, True)] if call.keywords else [])]
        case "minimum" | "maximum":
            return [(first, True), (others[0], False)]
        case "mean":
            return [(first, False), (others[0], False)]
        case "where":
            return [(other, True) for other in others]
        case "absolute":
            return [(first, True)]
        case "exponential" | "natural_log" | "log_10" | "square_root" | "whole_up" | "whole_down" | "whole_near":
            return [(first, False)]
        case "joined" | "cast":
            return []
    raise AssertionError(f"no slip is known for {function}")
