"""The source files of the package as syntax trees, and what each one imports."""

from __future__ import annotations

import ast
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

__all__ = ["PACKAGE", "ROOT", "Import", "Module", "modules"]

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = "farmbook"
START_UP = "start-up speed"
"""What the comment beside an import inside a function says."""


@dataclass(frozen=True)
class Import:
    """One imported module; `line` counts from 1."""

    target: str
    line: int
    inside_function: bool
    marked: bool


@dataclass(frozen=True)
class Module:
    """One source file: its dotted name, its text, and whether it is the `__init__` of a folder."""

    name: str
    text: str
    path: str
    folder: bool = False

    @cached_property
    def tree(self) -> ast.Module:
        """The syntax tree."""
        return ast.parse(self.text)

    @property
    def imports(self) -> list[Import]:
        """Every import that runs; those for type checkers alone are left out."""
        return [found for node, deep in _statements(self.tree) for found in self._targets(node, deep)]

    def _targets(self, node: ast.stmt, deep: bool) -> Iterator[Import]:
        marked = START_UP in self.text.splitlines()[node.lineno - 1]
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield Import(alias.name, node.lineno, deep, marked)
        elif isinstance(node, ast.ImportFrom):
            for alias in node.names:
                yield Import(f"{self._base(node)}.{alias.name}", node.lineno, deep, marked)

    def _base(self, node: ast.ImportFrom) -> str:
        """The absolute name of the module that a `from` import names, dots resolved."""
        if not node.level:
            return node.module or ""
        up = node.level - 1 if self.folder else node.level
        parts = self.name.split(".")
        return ".".join([*parts[: len(parts) - up], *([node.module] if node.module else [])])


def _statements(tree: ast.Module) -> Iterator[tuple[ast.stmt, bool]]:
    """Every statement with whether it stands inside a function; blocks under TYPE_CHECKING are left out."""
    waiting: list[tuple[ast.AST, bool]] = [(tree, False)]
    while waiting:
        node, deep = waiting.pop()
        if isinstance(node, ast.stmt):
            yield node, deep
        deep = deep or isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        waiting += [(child, deep) for child in _run_children(node)]


def _run_children(node: ast.AST) -> Iterable[ast.AST]:
    if isinstance(node, ast.If) and ast.unparse(node.test) in ("TYPE_CHECKING", "typing.TYPE_CHECKING"):
        return node.orelse
    return ast.iter_child_nodes(node)


def modules(folder: Path = ROOT / PACKAGE) -> list[Module]:
    """Every Python file below a folder, named from that folder on, in the order of the paths."""
    found = []
    for path in sorted(folder.rglob("*.py")):
        parts = path.relative_to(folder.parent).with_suffix("").parts
        package = parts[-1] == "__init__"
        name = ".".join(parts[:-1] if package else parts)
        shown = path.relative_to(folder.parent).as_posix()
        found.append(Module(name, path.read_text(encoding="utf-8"), shown, package))
    return found
