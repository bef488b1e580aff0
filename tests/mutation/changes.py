"""Small changes of source text: one operator, number, condition, statement or argument at a time."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

__all__ = ["Change", "changes_of"]

COMPARED: Final[dict[type[ast.cmpop], type[ast.cmpop]]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
}
JOINED: Final[dict[type[ast.operator], type[ast.operator]]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
WORDS_OF_ERRORS: Final = {"ModelFault", "KindMismatch", "AssertionError", "ValueError", "field", "TypeVar", "cast"}
"""Calls whose arguments are left alone: what an error says, and what only the type checker reads."""


@dataclass(frozen=True)
class Change:
    """One change: characters `start` to `end` of a file become `after`."""

    file: str
    line: int
    start: int
    end: int
    before: str
    after: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.before} -> {self.after}"

    def made_in(self, text: str) -> str:
        """The file's text with the change made."""
        return text[: self.start] + self.after + text[self.end :]


def changes_of(path: Path, root: Path) -> list[Change]:
    """Every change of a file that this module knows, in reading order."""
    text = path.read_text(encoding="utf-8")
    starts = [0]
    for row in text.splitlines(keepends=True):
        starts.append(starts[-1] + len(row.encode()))
    raw, found = text.encode(), []
    for node, other in _others(ast.parse(text)):
        assert (
            isinstance(node, (ast.expr, ast.stmt)) and node.end_lineno is not None and node.end_col_offset is not None
        )
        first, last = starts[node.lineno - 1] + node.col_offset, starts[node.end_lineno - 1] + node.end_col_offset
        start, end = len(raw[:first].decode()), len(raw[:last].decode())
        before = text[start:end]
        if other != before and "\n" not in before:
            found.append(Change(path.relative_to(root).as_posix(), node.lineno, start, end, before, other))
    return found


def _others(tree: ast.AST) -> Iterator[tuple[ast.AST, str]]:
    """Nodes, each with other source that may stand in its place."""
    for node in _walk(tree):
        for other in _of(node):
            yield node, other


def _walk(node: ast.AST) -> Iterator[ast.AST]:
    """Nodes that run: not annotations, docstrings, imports, `__all__`, decorators' words or errors' words."""
    if isinstance(node, (ast.Import, ast.ImportFrom, ast.Raise, ast.Assert)):
        return
    if isinstance(node, ast.Assign) and any(
        isinstance(each, ast.Name) and each.id == "__all__" for each in node.targets
    ):
        return
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in WORDS_OF_ERRORS:
        return
    yield node
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns", "decorator_list", "type_comment"):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _is_docstring(child):
                yield from _walk(child)


def _is_docstring(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) and isinstance(node.value.value, str)


def _of(node: ast.AST) -> Iterator[str]:
    """What else a node might say."""
    if isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in COMPARED:
        yield ast.unparse(ast.Compare(node.left, [COMPARED[type(node.ops[0])]()], node.comparators))
    elif isinstance(node, ast.BinOp) and type(node.op) in JOINED:
        yield "(" + ast.unparse(ast.BinOp(node.left, JOINED[type(node.op)](), node.right)) + ")"
    elif isinstance(node, ast.BoolOp):
        yield "(" + ast.unparse(ast.BoolOp(ast.Or() if isinstance(node.op, ast.And) else ast.And(), node.values)) + ")"
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, (ast.Not, ast.USub)):
        yield ast.unparse(node.operand)
    elif isinstance(node, ast.IfExp):
        yield f"({ast.unparse(node.body)} if not ({ast.unparse(node.test)}) else {ast.unparse(node.orelse)})"
    elif isinstance(node, ast.Constant):
        yield from _constant(node.value)
    elif isinstance(node, ast.Call):
        yield from _call(node)
    elif (isinstance(node, ast.Expr) and isinstance(node.value, ast.Call)) or isinstance(
        node, (ast.AugAssign, ast.Continue, ast.Break)
    ):
        yield "pass"


def _constant(value: object) -> Iterator[str]:
    if isinstance(value, bool):
        yield str(not value)
    elif isinstance(value, int):
        yield str(value + 1)
    elif isinstance(value, float):
        yield repr(value * 1.03 if value else 1.0)


def _call(node: ast.Call) -> Iterator[str]:
    """`f(x)` without the call, and the first two arguments the other way round."""
    if any(isinstance(each, ast.Starred) for each in node.args):
        return
    if len(node.args) == 1 and not node.keywords and isinstance(node.func, ast.Name):
        yield ast.unparse(node.args[0])
    if len(node.args) >= 2:
        first, second, *rest = node.args
        yield ast.unparse(ast.Call(node.func, [second, first, *rest], node.keywords))
