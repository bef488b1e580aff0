"""Owning and upkeep of steamer and lab on top of what growing costs: by hand, and where they have no place."""

from __future__ import annotations

from typing import Any, Final

import numpy_financial as npf
import pytest

from farmbook.interpret.numbers import Array
from farmbook.model.choices.equipment_cost import EquipmentCost
from farmbook.model.cost.steamer_year import CabinetYear, SteamerInUseYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import BOUGHT, MADE, SpawnSource
from farmbook.model.heat.steaming import CABINET, VESSEL, Steaming
from farmbook.sections.declare import Input, Option
from tests.model import growing_case, spawn_case
from tests.model.growing_case import one

CABINET_YEAR: Final = -npf.pmt(0.08, 10, 10_000, -1000) + 300
VESSEL_YEAR: Final = -npf.pmt(0.08, 15, 40_000, -4000) + 900
LAB_YEAR: Final = -npf.pmt(0.10, 5, 60_000, -6000) + 700
OWNED: Final[dict[Input, Any]] = {
    Steaming.yearly_return: 0.08,
    CabinetYear.price: 10_000,
    CabinetYear.life: 10,
    CabinetYear.salvage: 1000,
    CabinetYear.upkeep: 300,
    VesselYear.price: 40_000,
    VesselYear.life: 15,
    VesselYear.salvage: 4000,
    VesselYear.upkeep: 900,
}
SECTIONS: Final = (*spawn_case.SECTIONS, CabinetYear, VesselYear, SteamerInUseYear, EquipmentCost)
BAGS: Final = 50_000
GROWN: Final = 3.14701528
"""The small farm's money spent on growing, over all bags filled, with spawn bought and the cabinet in use."""


def worked(changes: dict[Input, Any] | None = None, system: str = "metric") -> dict[str, Array]:
    """The small farm with steamers and lab of round numbers."""
    return growing_case.worked({**spawn_case.LAB, **OWNED, **(changes or {})}, system, SECTIONS)


@pytest.mark.parametrize("system", ["metric", "us"])
def test_grown_cost_with_the_cabinet_by_hand(system: str) -> None:
    """50,000 bags filled a year, 93.1% of them moved to fruiting, and 0.70955 kg taken to customers from each filled."""
    found = worked(system=system)
    whole = GROWN + CABINET_YEAR / BAGS
    assert one(found, "equipment_cost.in_all") == pytest.approx(CABINET_YEAR, rel=1e-9)
    assert one(found, "equipment_cost.lab") == 0
    assert one(found, "equipment_cost.cost_per_filled") == pytest.approx(whole, rel=1e-9)
    assert one(found, "equipment_cost.cost_per_live") == pytest.approx(whole / 0.931, rel=1e-9)
    assert one(found, "equipment_cost.cost_per_taken") == pytest.approx(whole / 0.70955248896, rel=1e-9)


@pytest.mark.parametrize(("kind", "steamer"), [(CABINET, CABINET_YEAR), (VESSEL, VESSEL_YEAR)])
@pytest.mark.parametrize(("supply", "lab"), [(BOUGHT, 0), (MADE, LAB_YEAR)])
def test_only_what_is_in_use_counts(kind: Option, steamer: float, supply: Option, lab: float) -> None:
    found = worked({Steaming.kind: kind, SpawnSource.supply: supply})
    assert one(found, "equipment_cost.steamer") == pytest.approx(steamer, rel=1e-9)
    assert one(found, "equipment_cost.lab") == pytest.approx(lab, rel=1e-9)
    more = one(found, "equipment_cost.cost_per_filled") - one(found, "growing_cost.grown_cost_per_filled")
    assert more * BAGS == pytest.approx(steamer + lab, rel=1e-9)


def test_a_dearer_steamer_leaves_the_grown_cost_without_it_as_it_was() -> None:
    before, after = worked(), worked({CabinetYear.price: 20_000})
    assert one(after, "growing_cost.cost_per_taken") == one(before, "growing_cost.cost_per_taken")
    assert one(after, "equipment_cost.cost_per_taken") > one(before, "equipment_cost.cost_per_taken")


def test_without_a_crop_there_is_no_such_cost() -> None:
    """The equipment is paid for all the same; over nothing it makes no cost of a bag or a weight."""
    lost = worked({Crop.loss_at_steaming: 1})
    for name in ("cost_per_live", "cost_per_filled", "cost_per_taken"):
        assert one(lost, f"equipment_cost.{name}") == 0
    trimmed = worked({Crop.trim: 1})
    assert one(trimmed, "equipment_cost.cost_per_taken") == 0
    assert one(trimmed, "equipment_cost.cost_per_filled") > GROWN
