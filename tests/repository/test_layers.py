"""Who may import whom: lower layers know nothing of higher ones, and each heavy library has one place."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Sequence
from functools import cache
from itertools import groupby
from pathlib import Path

import pytest

from farmbook.model.farm import SECTIONS
from farmbook.sections.section import Section
from tests.repository.source_files import PACKAGE, Import, Module, modules

LAYERS: dict[str, tuple[str, ...]] = {
    "version": (),
    "errors": (),
    "stopping": (),
    "writing": ("errors", "stopping"),
    "units": ("errors",),
    "sources": ("errors",),
    "expr": ("errors", "units", "sources", "expr"),
    "interpret": ("errors", "units", "sources", "expr", "interpret"),
    "calc": ("errors", "units", "sources", "expr", "calc"),
    "sections": ("errors", "units", "sources", "expr", "sections"),
    "model": ("errors", "units", "sources", "expr", "calc", "sections", "model"),
    "scenario": ("errors", "units", "sources", "expr", "interpret", "calc", "sections", "model", "scenario"),
    "layout": ("errors", "units", "sources", "expr", "interpret", "calc", "sections", "model", "layout"),
}
"""First part of a module's name: what it may import. Modules not named here come later and are bound by LATER."""

LATER: tuple[tuple[str, ...], ...] = (
    ("workbook",),
    ("results",),
    (
        "figures",
        "tables",
        "output",
        "finding",
        "relevance",
        "sheet_text",
        "show",
        "explain",
        "matters",
        "matters_text",
        "read_back",
        "printing",
        "asking",
    ),
    ("cli", "__main__"),
)
"""What comes after the layers above, lowest first. Modules of one group may not import those of a later one."""

LIBRARIES: dict[str, str] = {
    "numpy": r"expr\.number_rules|interpret(\..+)?|scenario(\..+)?|tables",
    "numpy_financial": r"interpret(\..+)?",
    "xlsxwriter": r"workbook(\..+)?",
    "openpyxl": r"workbook(\..+)?",
    "pandas": r"tables",
    "tomlkit": r"scenario\.rewrite",
}
"""Third-party library: the modules that may import it. Any other library is refused everywhere."""

GROUND, WIRING = "axes", "farm"
"""The module of the model on which all its rooms stand, and the one that puts them together."""


def short(name: str) -> str:
    """A module's name without the package's own."""
    return name.removeprefix(PACKAGE).lstrip(".")


def layer(name: str) -> str:
    return short(name).partition(".")[0]


def interpreter(name: str) -> str:
    """The interpreter that a module is, or of whose folder it is a part."""
    return ".".join(short(name).split(".")[:2])


def allowed_layers(own: str) -> set[str] | None:
    """The layers that a layer may import; None for a layer that the table does not know."""
    if own in LAYERS:
        return set(LAYERS[own])
    below = set(LAYERS)
    for group in LATER:
        below |= set(group)
        if own in group:
            return below
    return None


def resolved(found: Import, names: set[str]) -> str:
    """The module that an import reaches: `from a.b import c` may name the module `a.b.c` or something within `a.b`."""
    return found.target if found.target in names else found.target.rpartition(".")[0]


def layer_faults(package: Sequence[Module]) -> list[str]:
    """Imports of own modules from a lower layer into a higher one, or from one interpreter into another."""
    names = {module.name for module in package}
    faults = []
    for module in package:
        own = layer(module.name)
        allowed = allowed_layers(own)
        if own and allowed is None:
            faults.append(f"{module.path}: the layer of `{own}` is not in the table")
            continue
        for found in module.imports:
            if found.target.split(".")[0] == PACKAGE and allowed is not None:
                faults += own_import_faults(module, found, resolved(found, names), allowed)
    return faults


def own_import_faults(module: Module, found: Import, target: str, allowed: set[str]) -> list[str]:
    place = f"{module.path}:{found.line}"
    if (
        layer(module.name) == "interpret"
        and layer(target) == "interpret"
        and interpreter(module.name) != interpreter(target)
    ):
        return [f"{place}: interpreters never import one another ({target})"]
    if layer(target) and layer(target) not in allowed:
        return [f"{place}: {layer(module.name)} may not import {target}"]
    return []


def library_faults(package: Sequence[Module]) -> list[str]:
    """Libraries imported where they have no place."""
    faults = []
    for module in package:
        for found in module.imports:
            library = found.target.split(".")[0]
            if library in sys.stdlib_module_names or library == PACKAGE:
                continue
            if not re.fullmatch(LIBRARIES.get(library, "$nowhere"), short(module.name)):
                faults.append(f"{module.path}:{found.line}: {library} has no place in {module.name}")
    return faults


def late_faults(package: Sequence[Module]) -> list[str]:
    """Imports inside functions without the comment that says why."""
    return [
        f"{module.path}:{found.line}: an import inside a function needs the comment `# for start-up speed`"
        for module in package
        for found in module.imports
        if found.inside_function and not found.marked
    ]


def room(name: str) -> str:
    """Of a module of the model, the folder or single file that holds its subject; empty for every other module."""
    layer, _, rest = short(name).partition(".")
    return rest.partition(".")[0] if layer == "model" else ""


def subject_faults(package: Sequence[Module], order: Sequence[str]) -> list[str]:
    """Modules of the model that import from a room later in `order`, and those that the wiring does not reach."""
    names = {module.name for module in package}
    place = {each: number for number, each in enumerate((GROUND, *order, WIRING))}
    used = reached(imports_of(package), [f"{PACKAGE}.model.{WIRING}"])
    faults = []
    for module in package:
        own = room(module.name)
        if not own or module.folder:
            continue
        if own not in place or module.name not in used:
            faults.append(f"{module.path}: the farm does not use this")
            continue
        for found in module.imports:
            target = room(resolved(found, names))
            if target and place.get(target, 0) > place[own]:
                faults.append(f"{module.path}:{found.line}: `{own}` is read before `{target}` and may not import it")
    return faults


def imports_of(package: Sequence[Module]) -> dict[str, set[str]]:
    """For each module the own modules that it imports at import; imports inside functions do not count."""
    names = {module.name for module in package}
    return {
        module.name: {resolved(found, names) for found in module.imports if not found.inside_function} & names
        for module in package
    }


def cycles(package: Sequence[Module]) -> list[str]:
    """Every module that, at import, imports itself by way of others."""
    needs = imports_of(package)
    return [name for name in sorted(needs) if name in reached(needs, needs[name])]


def reached(needs: dict[str, set[str]], start: Iterable[str]) -> set[str]:
    found: set[str] = set()
    waiting = list(start)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += needs[name]
    return found


def reading_order() -> list[str]:
    """The rooms of the sections, each once, as the farm wires them."""
    return list(dict.fromkeys(room(section.__module__) for section in SECTIONS))


@cache
def package() -> tuple[Module, ...]:
    return tuple(modules())


def test_layers_import_only_what_lies_below_them() -> None:
    assert layer_faults(package()) == []


def test_each_library_is_imported_only_in_its_own_place() -> None:
    assert library_faults(package()) == []


def test_imports_inside_functions_say_that_they_are_for_start_up_speed() -> None:
    assert late_faults(package()) == []


def test_rooms_of_the_model_import_only_earlier_ones() -> None:
    assert subject_faults(package(), reading_order()) == []


def test_sections_of_a_room_are_wired_together() -> None:
    rooms = [room(section.__module__) for section in SECTIONS]
    assert [each for each, _ in groupby(rooms)] == reading_order()


def test_no_module_imports_itself_in_a_circle() -> None:
    assert cycles(package()) == []


def test_every_section_is_wired_into_the_farm_once() -> None:
    every = {
        section
        for section in descendants(Section)
        if section.__module__.startswith(f"{PACKAGE}.model.") and section.declared
    }
    assert len(SECTIONS) == len(set(SECTIONS))
    assert every == set(SECTIONS)


def descendants(kind: type[Section]) -> set[type[Section]]:
    return {below for child in kind.__subclasses__() for below in (child, *descendants(child))}


def invented(folder: Path, **files: str) -> list[Module]:
    """A package of the same name with these modules; `a__b` stands for `a/b.py`."""
    for name, text in files.items():
        path = folder / PACKAGE / (name.replace("__", "/") + ".py")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return modules(folder / PACKAGE)


@pytest.mark.parametrize(
    ("name", "line"),
    [
        ("errors", "import farmbook.units"),
        ("units", "from farmbook.expr import nodes"),
        ("expr__walk", "from ..interpret import words"),
        ("interpret__words", "from farmbook.interpret.formula import formula_of"),
        ("interpret__words", "from . import formula"),
        ("model__mix__bag", "from farmbook.layout.page import Page"),
        ("model__mix__bag", "from farmbook.interpret import words"),
        ("sections__section", "from farmbook.model.mix.bag import Bag"),
        ("scenario__load", "from farmbook.layout import page"),
        ("layout__page", "from farmbook.scenario.load import load"),
        ("workbook__write", "def f():\n    from farmbook.cli import main  # for start-up speed"),
        ("wizard", "import re"),
    ],
)
def test_a_wrong_layer_is_caught(tmp_path: Path, name: str, line: str) -> None:
    every = dict.fromkeys(("units", "expr__nodes", "interpret__words", "interpret__formula", "scenario__load"), "")
    every |= dict.fromkeys(("layout__page", "model__mix__bag", "cli"), "")
    package = invented(tmp_path, **(every | {name: line}))
    assert [fault.partition(":")[0] for fault in layer_faults(package)] == [f"farmbook/{name.replace('__', '/')}.py"]


def test_what_only_type_checkers_read_is_no_import(tmp_path: Path) -> None:
    text = "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from farmbook.cli import main\n    import pandas\n"
    package = invented(tmp_path, errors=text, cli="")
    assert layer_faults(package) == []
    assert library_faults(package) == []


@pytest.mark.parametrize(
    ("name", "line"),
    [
        ("layout__page", "import numpy as np"),
        ("model__bag", "from openpyxl import Workbook"),
        ("cli", "import openpyxl"),
        ("workbook__write", "import pandas.testing"),
        ("errors", "import attrs"),
    ],
)
def test_a_library_out_of_place_is_caught(tmp_path: Path, name: str, line: str) -> None:
    assert len(library_faults(invented(tmp_path, **{name: line}))) == 1
    assert library_faults(invented(tmp_path / "right", interpret__numbers="import numpy.typing as npt")) == []


def test_a_late_import_without_its_reason_is_caught(tmp_path: Path) -> None:
    text = "def f():\n    import json\ndef g():\n    import csv  # for start-up speed\n"
    package = invented(tmp_path, cli=text)
    assert [fault.split(": ")[0] for fault in late_faults(package)] == ["farmbook/cli.py:2"]


def test_a_room_that_looks_ahead_is_caught(tmp_path: Path) -> None:
    package = invented(
        tmp_path,
        model__axes="from farmbook.model.mix import bag",
        model__mix__bag="import farmbook.model.crop.crop",
        model__mix__orphan="",
        model__crop__crop="from farmbook.sections.section import Section\nfrom farmbook.model.mix.bag import Bag",
        model__crop__deep__down="from farmbook.model import farm",
        model__attic="",
        model__farm="from farmbook.model.crop.crop import crop\nfrom farmbook.model.crop.deep import down\nimport farmbook.model.attic",
    )
    faults = subject_faults(package, ["mix", "crop"])
    assert [fault.split(":")[0].removeprefix("farmbook/model/") for fault in faults] == [
        "attic.py",
        "axes.py",
        "crop/deep/down.py",
        "mix/bag.py",
        "mix/orphan.py",
    ]
    assert {"farmbook.model.mix.bag", "farmbook.model.crop.crop"} <= set(cycles(package))
