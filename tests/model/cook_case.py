"""An ordinary load to cook, in a cabinet and in a vessel whose temperatures are typed in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from typing import Any, Final
from unittest.mock import patch

from farmbook.expr.nodes import Expr
from farmbook.model.axes import INGREDIENT, RECIPE
from farmbook.model.bag import Bag
from farmbook.model.cabinet_cook import CabinetCook
from farmbook.model.cabinet_heat import CabinetHeat
from farmbook.model.cabinet_run import CabinetRun
from farmbook.model.cook_strength import LethalRates
from farmbook.model.core_heating import CoreHeating
from farmbook.model.declare import Uses, line, number
from farmbook.model.energy import Energy
from farmbook.model.farm_plan import Farm
from farmbook.model.recipe import Recipe
from farmbook.model.section import Section
from farmbook.model.site import Site as RealSite
from farmbook.model.steaming import Steaming
from farmbook.model.vessel_cook import VesselCook
from tests.model.helpers import evaluate, systems_agree

__all__ = ["ENDS", "PLACES", "Site", "VesselRun", "different_lines", "failing", "single", "worked"]


class Site(Section):
    """The place, with its boiling point typed in."""

    typed = number("Boiling point typed", unit="degC", usual=(80, 100), default=100, how="")

    @line("Boiling point here", unit="degC")
    def boiling_point(self) -> Expr:
        """As typed."""
        return self.typed


class VesselRun(Section):
    """A vessel, with its temperature typed in."""

    typed = number("Temperature typed", unit="degC", usual=(100, 130), default=121.1, how="")
    hold_time = number("Hold typed", unit="h/run", usual=(1, 5), default=3.5, how="")
    start_temperature = number("Start typed", unit="degC", usual=(0, 30), default=15.6, how="")

    @line("Temperature of the vessel", unit="degC")
    def temperature(self) -> Expr:
        """As typed."""
        return self.typed


@contextmanager
def _place_and_vessel() -> Iterator[None]:
    """Temperatures are typed in here; how a place and a pressure make them is another subject."""
    with ExitStack() as stack:
        for section in (LethalRates, CoreHeating, VesselCook):
            for name, put in (("site", Site), ("vessel", VesselRun)):
                used = vars(section).get(name)
                if isinstance(used, Uses):
                    stack.enter_context(patch.object(used, "section", put))
        yield


OWN: Final = (LethalRates, CoreHeating, CabinetCook, VesselCook)
SECTIONS: Final = (Farm, Recipe, Bag, RealSite, Steaming, Energy, CabinetHeat, CabinetRun, Site, VesselRun, *OWN)
NAMES: Final = {INGREDIENT: ("sawdust",), RECIPE: ("plain",)}
PLAIN: Final[dict[Any, Any]] = {
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1]],
    Recipe.target_moisture: [0.6],
    Recipe.dry_matter: [0.55],
    Recipe.price: [0.05],
    Farm.bags_filled_a_week: 300,
    Farm.bags_per_load: 100,
}
ENDS: Final = ("slow", "expected", "fast")
PLACES: Final = ("cabinet_cook", "vessel_cook")
CHECKS: Final = (
    "core_heating.readings_in_order",
    "core_heating.rates_in_order",
    "cabinet_cook.middle_gets_hot",
    "cabinet_cook.rows_are_enough",
    "vessel_cook.middle_gets_hot",
    "vessel_cook.rows_are_enough",
)


def worked(changes: Mapping[Any, Any] | None = None, system: str = "metric") -> dict[str, Any]:
    """Every line of the ordinary load with changes, single values as numbers."""
    with _place_and_vessel():
        found = evaluate(SECTIONS, system, {**PLAIN, **(changes or {})}, NAMES)
    return {name: value if value.ndim else value[()] for name, value in found.items()}


def different_lines(changes: Mapping[Any, Any]) -> list[str]:
    """The lines that a US book and a metric book do not agree on."""
    with _place_and_vessel():
        return systems_agree(SECTIONS, {**PLAIN, **changes}, NAMES)


def failing(changes: Mapping[Any, Any]) -> set[str]:
    """The checks that fail after changes."""
    found = worked(changes)
    return {name for name in CHECKS if found[name] != 1}


def single(place: str, what: str, end: str) -> str:
    """The name of a result: `cabinet_cook.lost_slow`, but `cabinet_cook.lost` for what is expected."""
    return f"{place}.{what}" if end == "expected" else f"{place}.{what}_{end}"
