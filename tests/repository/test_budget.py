"""Sizes of functions, classes and files, and what every function and file must have; prints the figures it holds."""

from __future__ import annotations

import ast
import io
import statistics
import sys
import tokenize
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from tests.repository.source_files import ROOT, Module, modules

MEDIAN_LINES, NINTH_LINES, MOST_LINES = 6, 25, 50
NINTH_FILE_LINES, MOST_FILE_LINES = 350, 500
MOST_METHODS = 20

Def = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True)
class Function:
    """One function: where it stands, how many code lines it has, whether readers outside its module see it."""

    place: str
    node: Def
    lines: int
    public: bool


def code_lines(text: str) -> set[int]:
    """The numbers of the lines that hold code: not blank, not only a comment."""
    idle = (tokenize.COMMENT, tokenize.NL, tokenize.NEWLINE, tokenize.INDENT, tokenize.DEDENT, tokenize.ENDMARKER)
    found: set[int] = set()
    for token in tokenize.generate_tokens(io.StringIO(text).readline):
        if token.type not in idle:
            found |= set(range(token.start[0], token.end[0] + 1))
    return found


def functions(module: Module) -> list[Function]:
    """Every function and method of a module, those inside others too; overloads are only types and left out."""
    lines = code_lines(module.text)
    return [
        Function(f"{module.path}:{node.lineno} {node.name}", node, size(node, lines), public)
        for node, public in definitions(module.tree, public=True)
        if isinstance(node, Def) and not overloaded(node)
    ]


def size(node: Def, lines: set[int]) -> int:
    """Code lines from `def` to the end, the docstring left out."""
    span = set(range(node.lineno, (node.end_lineno or node.lineno) + 1)) & lines
    if ast.get_docstring(node) is not None:
        first = node.body[0]
        span -= set(range(first.lineno, (first.end_lineno or first.lineno) + 1))
    return len(span)


def definitions(node: ast.AST, *, public: bool) -> Iterator[tuple[Def | ast.ClassDef, bool]]:
    """Functions and classes below a node; what lies inside a function or a private class is private."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, Def | ast.ClassDef):
            shown = public and not child.name.startswith("_")
            yield child, shown
            yield from definitions(child, public=shown and isinstance(child, ast.ClassDef))
        else:
            yield from definitions(child, public=public)


def untyped(function: Function) -> bool:
    """Whether a parameter or the result has no type; `self` and `cls` need none."""
    given = function.node.args
    parameters = [*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg, given.kwarg]
    bare = [each.arg for each in parameters if each is not None and each.annotation is None]
    return function.node.returns is None or bool(set(bare) - {"self", "cls"})


def undocumented(module: Module) -> list[str]:
    """Public functions and classes, and modules, without a docstring."""
    bare = [
        f"{module.path}:{node.lineno} {node.name}"
        for node, public in definitions(module.tree, public=True)
        if public and ast.get_docstring(node) is None and not overloaded(node)
    ]
    return bare if ast.get_docstring(module.tree) or not module.text else [f"{module.path}: no docstring", *bare]


def overloaded(node: Def | ast.ClassDef) -> bool:
    return "overload" in {ast.unparse(each) for each in node.decorator_list}


def classes(module: Module) -> list[ast.ClassDef]:
    return [node for node, _ in definitions(module.tree, public=True) if isinstance(node, ast.ClassDef)]


def section_names(sources: Sequence[Module]) -> set[str]:
    """The names of the classes that are sections of the model, at first hand or through others."""
    bases = {each.name: {ast.unparse(base) for base in each.bases} for module in sources for each in classes(module)}
    found = {"Section"}
    while more := {name for name, above in bases.items() if above & found} - found:
        found |= more
    return found


def large_classes(module: Module, sections: set[str]) -> list[str]:
    """Classes with too many methods; operators do not count, nor do sections, which have a method for each line."""
    found = []
    for node in classes(module):
        if node.name not in sections:
            methods = [each for each in node.body if isinstance(each, Def) and not overloaded(each)]
            count = len([each for each in methods if not each.name.startswith("__")])
            if count > MOST_METHODS:
                found.append(f"{module.path}:{node.lineno} {node.name} has {count} methods")
    return found


def star_imports(module: Module) -> list[str]:
    return [f"{module.path}:{found.line}" for found in module.imports if found.target.endswith(".*")]


def bare_excepts(module: Module) -> list[str]:
    return [
        f"{module.path}:{node.lineno}"
        for node in ast.walk(module.tree)
        if isinstance(node, ast.ExceptHandler) and node.type is None
    ]


def ninth_tenth(numbers: Sequence[int]) -> float:
    """The 90th percentile."""
    return statistics.quantiles(numbers, n=10, method="inclusive")[8]


def file_lines(module: Module) -> int:
    return len(module.text.splitlines())


@cache
def package() -> tuple[Module, ...]:
    return tuple(modules())


@cache
def own_tests() -> tuple[Module, ...]:
    return tuple(modules(ROOT / "tests"))


def report(name: str, sources: Sequence[Module]) -> str:
    """The figures in one paragraph."""
    lines = [function.lines for module in sources for function in functions(module)]
    files = [file_lines(module) for module in sources if module.text]
    return (
        f"{name}: {len(files)} files of {statistics.median(files):.0f} lines (median), "
        f"{ninth_tenth(files):.0f} (90th percentile), {max(files)} (longest); "
        f"{len(lines)} functions of {statistics.median(lines):.0f}, {ninth_tenth(lines):.0f}, {max(lines)} code lines"
    )


def too_long(sources: Sequence[Module]) -> list[str]:
    """Functions and files over the limit that none may pass."""
    every = [function for module in sources for function in functions(module)]
    found = [f"{function.place}: {function.lines} code lines" for function in every if function.lines > MOST_LINES]
    long_files = [module for module in sources if file_lines(module) > MOST_FILE_LINES]
    return found + [f"{module.path}: {file_lines(module)} lines" for module in long_files]


def test_the_figures(capsys: pytest.CaptureFixture[str]) -> None:
    lines = [function.lines for module in package() for function in functions(module)]
    files = [file_lines(module) for module in package() if module.text]
    with capsys.disabled():
        sys.stdout.write(f"\n{report('package', package())}\n{report('tests', own_tests())}\n")
    assert statistics.median(lines) <= MEDIAN_LINES
    assert ninth_tenth(lines) <= NINTH_LINES
    assert ninth_tenth(files) <= NINTH_FILE_LINES


@pytest.mark.parametrize("sources", [package, own_tests])
def test_no_function_and_no_file_is_too_long(sources: Callable[[], tuple[Module, ...]]) -> None:
    assert too_long(sources()) == []


def test_classes_are_small() -> None:
    sections = section_names(package())
    assert "Report" in sections
    assert [fault for module in package() for fault in large_classes(module, sections)] == []


def test_every_function_is_typed() -> None:
    every = [function for module in (*package(), *own_tests()) for function in functions(module)]
    assert [function.place for function in every if untyped(function)] == []


def test_everything_public_is_documented() -> None:
    assert [fault for module in package() for fault in undocumented(module)] == []


def test_no_star_imports_and_no_bare_excepts() -> None:
    every = (*package(), *own_tests())
    assert [fault for module in every for fault in (*star_imports(module), *bare_excepts(module))] == []


def invented(tmp_path: Path, text: str) -> Module:
    folder = tmp_path / "farmbook"
    folder.mkdir()
    (folder / "invented.py").write_text(text, encoding="utf-8")
    return modules(folder)[0]


SAMPLE = '''"""Sample."""
from os.path import *

def plain(a: int, b) -> int:
    """Docstring
    of two lines."""
    # a comment

    def inner() -> int:
        return (
            a
        )
    return inner()

class Shown:
    def method(self) -> None:
        try:
            pass
        except:
            pass

    def _hidden(self): ...

class _Private:
    """Private."""
    def anything(self) -> None: ...
'''


def test_a_sample_is_measured_right(tmp_path: Path) -> None:
    module = invented(tmp_path, SAMPLE)
    measured = {function.node.name: function.lines for function in functions(module)}
    assert measured == {"plain": 6, "inner": 4, "method": 5, "_hidden": 1, "anything": 1}
    assert [function.node.name for function in functions(module) if untyped(function)] == ["plain", "_hidden"]
    assert undocumented(module) == ["farmbook/invented.py:15 Shown", "farmbook/invented.py:16 method"]
    assert star_imports(module) == ["farmbook/invented.py:2"]
    assert bare_excepts(module) == ["farmbook/invented.py:19"]


def test_what_is_too_large_is_caught(tmp_path: Path) -> None:
    methods = "".join(f"    def m{number}(self) -> None: ...\n" for number in range(21))
    body = "".join(f"    x = {number}\n" for number in range(50))
    module = invented(tmp_path, f"class Big:\n{methods}\ndef long() -> None:\n{body}" + "\n" * 500)
    assert large_classes(module, section_names([module])) == ["farmbook/invented.py:1 Big has 21 methods"]
    assert large_classes(module, {"Big"}) == []
    assert too_long([module]) == [
        "farmbook/invented.py:24 long: 51 code lines",
        f"farmbook/invented.py: {file_lines(module)} lines",
    ]


def test_a_section_made_from_another_is_a_section(tmp_path: Path) -> None:
    module = invented(tmp_path, "class Heat(Section): ...\nclass Steam(Heat, words=1): ...\nclass Pipe: ...\n")
    assert section_names([module]) == {"Section", "Heat", "Steam"}
