"""The steamer in use, and cabinet against pressure vessel: a year by hand, what turns the choice, every answer."""

from __future__ import annotations

from typing import Any, Final

import numpy as np
import numpy_financial as npf
import pytest

from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.steamer_year import CabinetYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.heat.steaming import CABINET, VESSEL, Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.model.steam.vessel import Vessel
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.sections.declare import Input, LineOf, NumberInput, Option
from tests.model import steam_case
from tests.model.helpers import evaluate, systems_agree, with_used
from tests.model.steam_case import BY_HAND, IN_VESSEL, NAMES, worked

PAIRS: Final = {
    "bags_per_run": ("farm.bags_per_load_used", "vessel.bags_per_run_used"),
    "hold_temperature": ("cabinet.hold_temperature_used", "vessel_heat.hold_temperature"),
    "heat_up_time": ("cabinet_run.heat_up_time", "vessel_run.heat_up_time"),
    "hold_time": ("cabinet.hold_time_used", "vessel.hold_time_used"),
    "cycle_time": ("cabinet_run.cycle_time", "vessel_run.cycle_time"),
    "loads_a_week": ("cabinet_run.loads_a_week", "vessel_run.loads_a_week"),
    "loads_possible": ("cabinet_run.loads_possible", "vessel_run.loads_possible"),
    "bags_possible": ("cabinet_run.bags_possible", "vessel_run.bags_possible"),
    "energy_per_run": ("cabinet.energy_per_run", "vessel.energy_per_run"),
    "energy_cost_per_run": ("cabinet.energy_cost_per_run", "vessel.energy_cost_per_run"),
    "demand_cost_per_run": ("cabinet.demand_cost_per_run", "vessel.demand_cost_per_run"),
    "demand_cost_per_month": ("cabinet.demand_cost_per_month", "vessel.demand_cost_per_month"),
    "water_per_run": ("cabinet.water_per_run", "vessel.water_per_run"),
    "water_cost_per_run": ("cabinet.water_cost_per_run", "vessel.water_cost_per_run"),
    "handling_hours": ("cabinet_run.handling_hours", "vessel_run.handling_hours"),
    "watching_hours": ("cabinet.watching_hours_used", "vessel.watching_hours_used"),
    "labour_hours_per_run": ("cabinet.labour_hours_per_run", "vessel.labour_hours_per_run"),
    "labour_cost_per_run": ("cabinet.labour_cost_per_run", "vessel.labour_cost_per_run"),
    "cost_per_run": ("cabinet.cost_per_run", "vessel.cost_per_run"),
    "place_cost": ("cabinet.place_cost", "vessel.place_cost"),
    "demand_cost_per_bag": ("cabinet.demand_cost_per_bag", "vessel.demand_cost_per_bag"),
    "cost_per_bag": ("cabinet.cost_per_bag", "vessel.cost_per_bag"),
}
SECTIONS: Final = with_used(SteamerChoice)
# 3 loads a week of 100 bags in 48 weeks: 144 loads, 14,400 bags. Filling a bag takes 0.5, and taking one out 0.4.
YEAR: Final[dict[Input, Any]] = {
    **BY_HAND,
    Energy.electricity_price: 0,
    Energy.demand_charge: 0,
    Energy.water_price: 0,
    Recipe.price: [0],
    Bag.bag_price: 0.28,
    Bag.tie_price: 0.02,
    Mixing.bags_per_hour: 100,
    GrowingCost.culling_rate: 50,
    GrowingCost.shelving_rate: 200,
    Spawn.spawn_rate: 0.02,
    Spawn.price: 4,
    Spawn.freight: 1,
    Spawn.bad_on_arrival: 0,
    Spawn.bags_per_hour: 100,
    Spawn.set_up_hours: 0,
    Crop.loss_at_steaming: 0.05,
    VesselHeat.loss_at_steaming: 0.01,
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
BAGS: Final = 14_400
LOST_LATER: Final = 0.5 + 0.5 + 0.5 + 0.2 + 0.1 + 0.4
"""A bag lost in the spawn run: filled, steamed, 0.1 kg of spawn at 5, inoculated, shelved, and taken out again."""


def year(changes: dict[Input, Any] | None = None, system: str = "metric") -> dict[str, Any]:
    return evaluate(SECTIONS, system, {**YEAR, **(changes or {})}, NAMES)


# The steamer in use


@pytest.mark.parametrize("name", PAIRS)
def test_the_steamer_chosen_feeds_the_farm(name: str) -> None:
    """Both are worked out all the time; the word in the cell says which one the rest of the book reads."""
    different: dict[Input, Any] = {
        Steaming.staffed_hours: 18,
        VesselHeat.bags_per_run: 80,
        VesselRun.handling_rate: 60,
    }
    for kind, place in ((CABINET, 0), (VESSEL, 1)):
        found = evaluate(steam_case.SECTIONS, "metric", {**BY_HAND, **different, Steaming.kind: kind}, NAMES)
        assert float(found[f"steamer_in_use.{name}"]) == float(found[PAIRS[name][place]])
        assert float(found[PAIRS[name][0]]) != float(found[PAIRS[name][1]])


def test_every_line_of_the_steamer_in_use_is_looked_at() -> None:
    lines = {declared.name for declared in SteamerInUse.declared if isinstance(declared, LineOf)}
    assert lines - set(PAIRS) == {"room_to_spare"}


def test_room_to_spare() -> None:
    """Five loads of 100 bags for 300, and one load more than can be done."""
    assert worked()["steamer_in_use.room_to_spare"] == pytest.approx(2 / 3)
    assert worked({Farm.bags_filled_a_week: 600})["steamer_in_use.room_to_spare"] == pytest.approx(-1 / 6)
    assert worked({Farm.bags_filled_a_week: None})["steamer_in_use.room_to_spare"] == 0


def test_neither_steamer_feeds_on_the_other() -> None:
    """What is typed for the one leaves every figure of the other as it was."""
    before = worked()
    after = worked({VesselRun.power: 33, VesselHeat.steel: 77, Vessel.own_water: 5, VesselHeat.bags_per_run: 41})
    assert {name: value for name, value in after.items() if name.startswith("cabinet")} == {
        name: value for name, value in before.items() if name.startswith("cabinet")
    }
    after = worked({CabinetRun.power: 33, Cabinet.own_energy: 5, CabinetRun.handling_rate: 9})
    assert [name for name in after if name.startswith("vessel") and after[name] != before[name]] == []


# A year by hand


def test_owning_agrees_with_a_finance_library() -> None:
    found = year()
    assert found["cabinet_year.owning_cost"] == pytest.approx(-npf.pmt(0.08, 10, 10_000, -1000), rel=1e-11)
    assert found["vessel_year.owning_cost"] == pytest.approx(-npf.pmt(0.08, 15, 40_000, -4000), rel=1e-11)


def test_owning_without_a_return_is_the_fall_in_value_spread_evenly() -> None:
    found = year({Steaming.yearly_return: 0})
    assert found["cabinet_year.owning_cost"] == pytest.approx(900)
    assert found["vessel_year.owning_cost"] == pytest.approx(2400)


@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("cabinet_year.loads_a_year", 144),
        ("cabinet_year.running_cost", 144 * 50),  # 2.5 hours at 20
        ("cabinet_year.work_a_year", 360),
        ("cabinet_year.yearly_cost", 900 + 144 * 50 + 300),
        ("cabinet_year.lost", 0.05),
        ("cabinet_year.lost_cost", BAGS * 0.05 * (0.5 + 0.4)),
        ("cabinet_year.good_bags", BAGS * 0.95),
        ("cabinet_year.cost_per_good_bag", (8400 + 648) / 13_680),
        ("vessel_year.yearly_cost", 2400 + 144 * 50 + 900),
        ("vessel_year.lost", 0.01),
        ("vessel_year.lost_cost", BAGS * 0.01 * (0.5 + 0.4)),
        ("vessel_year.good_bags", BAGS * 0.99),
        ("vessel_year.cost_per_good_bag", (10_500 + 129.6) / 14_256),
        ("steamer_choice.extra_cost", 2100),
        ("steamer_choice.typed_gap", 0.04),
        ("steamer_choice.saved_at_steaming", 576 * (0.5 + 0.5 + 0.4)),  # 4% of the bags
        ("steamer_choice.left_to_save", 2100 - 806.4),
        ("steamer_choice.break_even_gap", (2100 - 806.4) / (14_256 * LOST_LATER)),
        ("steamer_choice.good_bag_difference", 10_629.6 / 14_256 - 9048 / 13_680),
        ("steamer_choice.dearer", 10_629.6 / 14_256),
        ("steamer_choice.apart", 1 - 9048 / 13_680 / (10_629.6 / 14_256)),
    ],
)
@pytest.mark.parametrize("system", ["metric", "us"])
def test_year_by_hand(system: str, name: str, by_hand: float) -> None:
    """Steaming a bag costs 0.5 either way: 2.5 hours at 20 over 100 bags; no return on the money is asked for."""
    assert year({Steaming.yearly_return: 0}, system)[name] == pytest.approx(by_hand, rel=1e-9)


def test_at_the_break_even_gap_bags_saved_pay_what_it_costs_more() -> None:
    """Bags saved at steaming count with 1.4 each, those saved in the spawn run, of the bags inoculated, with 2.2."""
    found = year()
    saved = BAGS * 0.04 * 1.4 + found["steamer_choice.break_even_gap"] * BAGS * 0.99 * LOST_LATER
    assert saved == pytest.approx(float(found["vessel_year.yearly_cost"] - found["cabinet_year.yearly_cost"]))


def test_a_bag_saved_is_worth_what_was_spent_on_it_where_it_is_lost() -> None:
    """Dearer spawn makes a bag lost in the spawn run dearer, so fewer must be saved; one that bursts never got any."""
    plain, dear = year(), year({Spawn.price: 14})
    assert dear["steamer_choice.saved_at_steaming"] == pytest.approx(plain["steamer_choice.saved_at_steaming"])
    fewer = dear["steamer_choice.break_even_gap"] / plain["steamer_choice.break_even_gap"]
    assert fewer == pytest.approx(LOST_LATER / (LOST_LATER + 1))  # 0.1 kg of spawn, 10 dearer


DEAR: Final[dict[Input, Any]] = {VesselYear.price: 400_000}
PAID: Final[dict[Input, Any]] = {VesselYear.price: 0, VesselYear.salvage: 0, VesselYear.upkeep: 0}


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        (PAID, "It pays as it stands"),
        ({**PAID, Steaming.kind: VESSEL}, "It pays as it stands"),
        ({Crop.loss_in_spawn_run: [0.093]}, "It can: "),
        ({Crop.loss_in_spawn_run: [0.092]}, "It cannot by saving bags alone"),
        ({**DEAR, Crop.loss_in_spawn_run: [1]}, "It cannot by saving bags alone"),
        ({**DEAR, VesselHeat.loss_at_steaming: 1}, "It cannot by saving bags alone"),
        ({**DEAR, Steaming.kind: VESSEL}, "It does if the cabinet would lose so many more"),
    ],
)
def test_whether_better_cooking_can_pay_is_said_in_words(changes: dict[Input, Any], words: str) -> None:
    """With the vessel of these tests 9.24% of the bags inoculated must be saved: see the test below."""
    assert str(year(changes)["steamer_choice.saving_in_words"]).startswith(words)


def test_how_many_bags_better_cooking_must_save() -> None:
    """Owning it costs 3,104.60 more a year, upkeep 600; bags that do not burst bring 806.40 of it back."""
    more = -npf.pmt(0.08, 15, 40_000, -4000) + npf.pmt(0.08, 10, 10_000, -1000)
    assert more == pytest.approx(3104.60, abs=0.005)
    assert year()["steamer_choice.break_even_gap"] == pytest.approx((more + 600 - 806.4) / (14_256 * LOST_LATER))
    assert year(PAID)["steamer_choice.break_even_gap"] < 0
    assert year(DEAR)["steamer_choice.break_even_gap"] > 1
    nothing_left = year({**DEAR, VesselHeat.loss_at_steaming: 1})
    assert nothing_left["steamer_choice.break_even_gap"] == nothing_left["steamer_choice.most_to_save"] == 0
    most = year({Crop.loss_in_spawn_run: [0.1]})["steamer_choice.most_to_save"]
    assert most == pytest.approx(BAGS * 0.99 * 0.1 * LOST_LATER)


@pytest.mark.parametrize("loses", [Crop.loss_at_steaming, VesselHeat.loss_at_steaming], ids=lambda each: each.dotted)
@pytest.mark.parametrize("kind", [CABINET, VESSEL])
def test_a_steamer_that_loses_every_bag_is_not_the_cheaper_one(loses: NumberInput, kind: Option) -> None:
    """Without a good bag there is no cost for each, and 0 of it would win every comparison."""
    found = year({loses: 1, Steaming.kind: kind})
    assert str(found["steamer_choice.verdict"]).startswith("Not compared")
    assert found["steamer_choice.good_bag_difference"] == found["steamer_choice.vessel_cheaper"] == 0
    assert found["steamer_choice.good_either_way"] == 0
    assert year()["steamer_choice.good_either_way"] == 1


@pytest.mark.parametrize(("section", "place"), [(CabinetYear, "cabinet_year"), (VesselYear, "vessel_year")])
def test_a_steamer_that_sells_for_more_than_it_cost_is_caught(section: type[CabinetYear], place: str) -> None:
    """Of both, whichever is in use: the comparison would call the one that gains in value the cheaper one."""
    for kind in (CABINET, VESSEL):
        prices = {section.price: 800, Steaming.kind: kind}
        assert year({**prices, section.salvage: 800})[f"{place}.salvage_fits"] == 1
        assert year({**prices, section.salvage: 801})[f"{place}.salvage_fits"] == 0


# Every answer


def answer(changes: dict[Input, Any]) -> str:
    return str(year(changes)["steamer_choice.verdict"])


TWINS: Final[dict[Input, Any]] = {
    VesselYear.price: 10_000,
    VesselYear.life: 10,
    VesselYear.salvage: 1000,
    VesselYear.upkeep: 300,
    VesselHeat.loss_at_steaming: 0.05,
}


def test_two_steamers_that_cost_the_same_are_too_close_to_call() -> None:
    assert year(TWINS)["steamer_choice.apart"] == pytest.approx(0, abs=1e-12)
    assert answer(TWINS).startswith("Too close to call")


def test_a_difference_counts_when_it_is_larger_than_the_inputs_are_known_to() -> None:
    """A tenth of the dearer one: with as many good bags either way, upkeep may differ by a ninth of the whole."""
    found = year(TWINS)
    whole = float(found["cabinet_year.yearly_cost"] + found["cabinet_year.lost_cost"])
    near, past = 300 + whole / 9 - 1, 300 + whole / 9 + 1
    assert answer({**TWINS, VesselYear.upkeep: near}).startswith("Too close to call")
    assert answer({**TWINS, VesselYear.upkeep: past}) == "The cabinet costs less for each good bag."
    assert answer({**TWINS, CabinetYear.upkeep: near}).startswith("Too close to call")
    assert answer({**TWINS, CabinetYear.upkeep: past}) == "The pressure vessel costs less for each good bag."


@pytest.mark.parametrize(
    "broken",
    [
        {CabinetRun.cool_down_time: 200},
        {CabinetRun.power: 1},
        {VesselRun.hold_time: 30},
        {VesselRun.power: 1},
        {Farm.bags_filled_a_week: 501},
    ],
)
@pytest.mark.parametrize("kind", [CABINET, VESSEL])
def test_a_steamer_that_cannot_do_the_work_is_not_compared(broken: dict[Input, Any], kind: Option) -> None:
    assert answer({**broken, Steaming.kind: kind}).startswith("Not compared")


def test_fewer_lost_bags_can_turn_the_choice() -> None:
    """The same steamers, but the cabinet loses a quarter of its bags."""
    assert year({**TWINS, Crop.loss_at_steaming: 0.25})["steamer_choice.answer"] == 4
    assert year({**TWINS, VesselHeat.loss_at_steaming: 0.25})["steamer_choice.answer"] == 3


# Both kinds of book, cleared cells


@pytest.mark.parametrize("kind", [{}, IN_VESSEL], ids=["cabinet", "vessel"])
def test_both_unit_systems_give_the_same_answers(kind: dict[Input, Any]) -> None:
    assert systems_agree(SECTIONS, {**YEAR, **kind}, NAMES) == []


NUMBERS: Final = tuple(
    declared
    for section in (Steaming, CabinetYear, VesselYear)
    for declared in section.declared
    if isinstance(declared, NumberInput)
)


@pytest.mark.parametrize("declared", NUMBERS, ids=lambda declared: declared.dotted)
@pytest.mark.parametrize("value", [None, 0], ids=["cleared", "zero"])
def test_a_cleared_or_zero_cell_never_makes_an_error_value(declared: NumberInput, value: float | None) -> None:
    numbers = [found for found in year({declared: value}).values() if found.dtype.kind == "f"]
    assert all(np.isfinite(found).all() for found in numbers)
