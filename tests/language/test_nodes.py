"""Every node and function: random expressions worked out here are the cells that other programs work out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from farmbook.expr import nodes as n
from farmbook.expr.functions import FUNCTIONS
from farmbook.expr.sentences import Either, Figure, Sentence
from farmbook.expr.walk import ordered_axes, walk
from farmbook.layout.template import Block, Template
from farmbook.sections.declare import Input, NumberInput
from farmbook.sections.model import Model
from farmbook.units import displayed
from tests.language.books import ENGINES, Worked, differences, opened, work_out
from tests.language.pool import ROW, SIZES, Pool
from tests.language.random_expressions import random_lines
from tests.model.helpers import converted

LINES, SEED = 360, 71
NAMES = {ROW: ("Oak", "none", "", "")}


@cache
def model() -> Model:
    return Model([Pool])


@cache
def lines() -> tuple[n.Line, ...]:
    return tuple(random_lines(model(), LINES, SEED))


@cache
def given() -> Mapping[Input, Any]:
    """Numbers drawn at random; the optional one is left blank."""
    rng = np.random.default_rng(SEED)
    found: dict[Input, Any] = {Pool.word: "Three-Phase", Pool.note: "none"}
    for declared, bound in model().inputs.items():
        if isinstance(declared, NumberInput) and not declared.optional:
            found[declared] = rng.uniform(0.4, 2.6, tuple(SIZES[axis] for axis in ordered_axes(bound.cell.axes)))
    return found


@cache
def worked(system: str) -> Worked:
    return work_out(model(), system, SIZES, given(), names=NAMES, further=lines())


def sheets() -> Sequence[Template]:
    """Every line by its lists."""
    bound = [each.cell for each in model().inputs.values()]
    tables = {cell.axes: [each.name for each in bound if each.axes == cell.axes] for cell in bound if cell.axes}
    single = tuple(cell.name for cell in bound if not cell.axes)
    blocks: list[Block] = []
    beside = {each.used for each in model().inputs.values() if not each.cell.axes}
    shown = [line for line in (*model().lines, *lines()) if line.kind in ("worked", "used") and line not in beside]
    for axes in dict.fromkeys(ordered_axes(line.axes) for line in shown):
        names = tuple(line.name for line in shown if ordered_axes(line.axes) == axes)
        if not axes:
            blocks.append(Block("list", "Single", names))
        elif [axis.direction for axis in axes] == ["across", "down"]:
            of = axes[1].name
            blocks += [Block("table", "Side by side", names[at : at + 2], axis=of) for at in range(0, len(names), 2)]
        elif len(axes) == 2:
            blocks.append(Block("matrix", lines=names))
        elif axes[0].direction == "across":
            blocks.append(Block("across", "Across", names, axis=axes[0].name))
        else:
            blocks += [Block("table", "Down", names[at : at + 8], axis=axes[0].name) for at in range(0, len(names), 8)]
    return (
        template("Inputs", "inputs", Block("inputs", "Single", inputs=single)),
        template("Tables", "inputs", *(Block("input_table", "Table", inputs=tuple(each)) for each in tables.values())),
        template("Worked", "worked", *blocks),
        template("Constants", "reference", Block("constants", "Constants")),
    )


def template(name: str, kind: str, *blocks: Block) -> Template:
    return Template(f"{name}.toml", name, name, "What?", kind, blocks)


def nodes() -> list[n.Expr]:
    return [node for root in worked("us").roots.values() for node in walk(root)]


def test_every_node_is_among_the_random_expressions() -> None:
    found = {type(node) for line in lines() for node in walk(line.expr)} | {type(node) for node in nodes()}
    assert set(n.Expr.__subclasses__()) - found == {Either, Figure, Sentence}


def test_every_function_and_sign_is_among_the_random_expressions() -> None:
    assert {node.function for node in nodes() if isinstance(node, n.Call)} == set(FUNCTIONS)
    assert {node.sign for node in nodes() if isinstance(node, n.Compare)} == {"<", "<=", ">", ">="}
    assert {node.kind for node in nodes() if isinstance(node, n.Logic)} == {"all", "any", "not"}


def test_the_expressions_have_results_worth_comparing() -> None:
    found = worked("metric")
    numbers = [found[line.name] for line in lines() if found[line.name].dtype.kind == "f"]
    assert all(np.isfinite(each).all() for each in numbers)
    assert np.mean([bool((each != 0).any()) for each in numbers]) > 0.85
    assert max(np.abs(each).max() for each in numbers) < 1e7
    assert [float(found[f"pool.{name}"]) for name in ("one_phase", "three_phase")] == [0, 1]
    texts = {"chosen": 'the "second" & last', "label": "Three-Phase", "words": "no figure on three phases"}
    assert {name: str(found[f"random.{name}"]) for name in texts} == texts
    assert {type(each) for each in found["random.each_figure"]} == {float, str}


def test_no_two_things_stand_in_one_cell() -> None:
    """Tables whose opening values lie above or beside them take the room for these."""
    book, _ = worked("metric").laid_out(sheets(), "pool.heading")
    for sheet in book.sheets:
        taken = [(cell.row, cell.column + over) for cell in sheet.cells for over in range(cell.across)]
        twice = {place for place in taken if taken.count(place) > 1} if len(set(taken)) < len(taken) else set()
        assert twice == set(), sheet.name


@pytest.mark.parametrize("program", ENGINES)
@pytest.mark.parametrize("system", ["metric", "us"])
def test_the_cells_are_what_the_engine_found(tmp_path: Path, system: str, program: str) -> None:
    path = tmp_path / "nodes.xlsx"
    worked(system).written(path, sheets(), "pool.heading")
    with opened(program, path) as book:
        assert differences(path, book) == []


def test_both_systems_mean_the_same() -> None:
    metric, us = worked("metric"), worked("us")
    for line in lines():
        if metric[line.name].dtype.kind != "f":
            assert str(metric[line.name]) == str(us[line.name])
            continue
        back = converted(us[line.name], displayed(line.unit, "us"), line.unit)
        np.testing.assert_allclose(back, metric[line.name], rtol=1e-9, atol=1e-9, err_msg=line.name)
