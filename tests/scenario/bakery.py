"""A small model that only the tests know: a bakery, with every kind of input a section may declare."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from farmbook.errors import ScenarioProblems
from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Expr, RawInput
from farmbook.scenario.load import load
from farmbook.scenario.scenario import Scenario
from farmbook.sections.declare import Input, Option, check, choice, line, member, names, number, text
from farmbook.sections.model import Model
from farmbook.sections.section import Section

LOAF = Axis("loaf", "loaf", "down", 10, named=True, most=6)
STALL = Axis("stall", "stall", "across", 20, named=True, most=3)
RISE = Axis("rise", "rise", "down", 30, ordered=True, members=("first", "second"))

WOOD = Option("wood", "wood")
GAS = Option("gas", "gas")
ELECTRICITY = Option("power", "electricity")


class Bakery(Section):
    """The oven and the dough."""

    title = "The bakery"

    sign = text("Sign over the door", default="(no sign)", how="As painted.")
    oven_heat = number(
        "Heat of the oven", unit="degC", usual=(180, 260), hard=(50, 400), default=220, how="Probe in the middle."
    )
    dough = number("Dough in a tin", unit="kg_wet/bag_filled", usual=(0.4, 2), hard=(0, 10), default=0.8, how="Scale.")
    oven_power = number("Power of the oven", unit="kW", usual=(5, 40), hard=(1, 200), how="Nameplate.")
    wall = number(
        "Insulation of the oven", unit="m2*delta_degC/W", usual=(0.5, 5), hard=(0.1, 20), default=2, how="Label."
    )
    power_price = number("Price of power", unit="money/kWh", usual=(0.05, 0.4), hard=(0, 5), default=0.2, how="Bill.")
    bake_off = number("Weight lost in baking", unit="share", usual=(0.08, 0.2), hard=(0, 1), default=0.12, how="Scale.")
    burnt = number("Loaves burnt", unit="share", usual=(0.003, 0.03), hard=(0, 1), default=0.01, how="Count.")
    own_time = number("Baking time, timed", unit="h/run", usual=(0.3, 1.5), hard=(0, 10), optional=True, how="Watch.")
    fuel = choice("Fuel", WOOD, GAS, ELECTRICITY, default=GAS, how="What is burnt.")
    rest = number(
        "Rest of the dough", unit="h", axes=(RISE,), usual=(0.5, 12), hard=(0, 48), default=(8, 1), how="Watch."
    )
    risen = number("Volume gained", unit="share", axes=(RISE,), usual=(0.2, 1.5), hard=(0, 4), how="Jar with a mark.")

    @line("Power paid for an hour", unit="money/h")
    def hour(self) -> Expr:
        """At full power."""
        return self.oven_power * self.power_price

    @check("The oven is hot enough", kind="error", says="The oven is colder than baking needs; look at its heat.")
    def hot(self) -> Expr:
        """Bread needs heat."""
        return self.oven_power > 0

    @check("Baking loss is sane", kind="alert", says="More is lost in baking than is left; look at the scale.")
    def sane(self) -> Expr:
        """Half at most."""
        return 1 - self.bake_off > self.bake_off


class Sale(Section):
    """Loaves and the stalls that sell them."""

    title = "Loaves and stalls"

    loaves = names(LOAF, "Loaf", how="One row for each kind.")
    stalls = names(STALL, "Stall", how="Where bread is sold.")
    best = member(STALL, "Best stall", how="The one you would keep.")
    flour_price = number(
        "Price of flour", unit="money/kg_wet", axes=(LOAF,), usual=(0.3, 3), hard=(0, 50), how="Invoice."
    )
    salt = number("Salt", unit="kg/kg_wet", axes=(LOAF,), usual=(0, 0.03), hard=(0, 0.2), optional=True, how="Scale.")
    width = number(
        "Width of the tin", unit="m", axes=(LOAF,), usual=(0.1, 0.4), hard=(0.01, 2), default=0.3, how="Tape."
    )
    sold = number(
        "Loaves a day", unit="count", axes=(LOAF, STALL), usual=(0, 200), hard=(0, 5000), default=0, how="Count."
    )
    keeping = number(
        "Share sold by batch",
        unit="share",
        axes=(RISE, STALL),
        usual=(0, 1),
        hard=(0, 1),
        default=(0.7, 0.3),
        how="Count.",
    )


MODEL = Model([Bakery, Sale])

GOOD = """
units = "metric"
currency = "EUR"

[bakery]
oven_power = 18
risen = [0.9, 0.5]

[loaf.rye]
flour_price = 1.1

[loaf.white_tin]
flour_price = 0.9

[stall.green_market]
"""


def changed(old: str, new: str) -> str:
    """The good file with one piece replaced."""
    assert old in GOOD
    return GOOD.replace(old, new, 1)


def written(folder: Path, content: str, name: str = "oak_lane.toml") -> Path:
    """Put a scenario file into a folder."""
    path = folder / name
    path.write_text(content, encoding="utf-8")
    return path


def loaded(folder: Path, content: str = GOOD) -> Scenario:
    """A scenario of the bakery."""
    return load(written(folder, content), MODEL)


def told(folder: Path, content: str) -> list[tuple[str, str, str]]:
    """Every problem of a scenario of the bakery: where, given, wanted."""
    with pytest.raises(ScenarioProblems) as caught:
        load(written(folder, content), MODEL)
    return [(problem.where, problem.given, problem.wanted) for problem in caught.value.problems]


def cell(declared: Input) -> RawInput:
    """The cell of an input of the bakery."""
    return MODEL.inputs[declared].cell


def basis(declared: Input) -> RawInput:
    """The basis cell of an input of the bakery."""
    found = MODEL.inputs[declared].basis
    assert found is not None
    return found


def numbers(scenario: Scenario, declared: Input) -> Any:
    """The numbers in an input's cells, as nested lists."""
    return scenario.cells[cell(declared)].numbers.tolist()[0]


def texts(scenario: Scenario, raw: RawInput) -> Any:
    """The texts in cells, as nested lists."""
    return scenario.cells[raw].texts.tolist()[0]
