"""A farm with figures to reckon in the head: hours cost nothing, steam costs nothing, one customer pays 10 a kilogram."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from farmbook.interpret.numbers import Array
from farmbook.model.axes import BILL, CUSTOMER, INGREDIENT, ITEM, LOAN, RECIPE
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.mixing import Mixing
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import OwnedItems
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.selling.customers import Customers
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.trials.bag_size import BagTrial
from farmbook.model.trials.buy_in import BuyIn
from farmbook.model.trials.other_spawn import SpawnYears
from farmbook.model.trials.trials import Trials
from farmbook.model.trials.widenings_tried import WidenAnswer
from farmbook.sections.declare import Input
from tests.model.helpers import evaluate, with_used

__all__ = ["FULL", "tried"]

SECTIONS: Final = with_used(Trials, BagTrial, WidenAnswer, BuyIn, SpawnYears)
NAMES: Final = {
    INGREDIENT: ("sawdust",),
    RECIPE: ("plain",),
    CUSTOMER: ("inn",),
    ITEM: ("van",),
    BILL: ("rent",),
    LOAN: ("",),
}

# 1,000 bags a week for 50 weeks, 2.5 kg each with 1 kg of dry mix at 0.20, bag and tie 0.30. 0.1 kg of spawn at 6.25.
# A bag costs 0.50 + 0.625 = 1.125. One in ten is lost in the spawn run, the others give 0.5 kg: 0.45 kg at 10 for a bag
# filled, which leaves 4.50 - 1.125 = 3.375. Bags run through 21 days, 3,000 of them, and fruit 12 with washing.
GIVEN: Final[Mapping[Input, Any]] = {
    Farm.bags_filled_a_week: 1000,
    Farm.weeks_worked: 50,
    Farm.wage: 0,
    Recipe.chosen_recipe: "plain",
    Recipe.parts: [[1]],
    Recipe.target_moisture: [0.6],
    Recipe.dry_matter: [0.5],
    Recipe.price: [0.1],
    Bag.wet_fill: 2.5,
    Bag.bag_price: 0.28,
    Bag.tie_price: 0.02,
    Mixing.bags_per_hour: 100,
    Energy.electricity_price: 0,
    Energy.demand_charge: 0,
    Energy.water_price: 0,
    Crop.loss_at_steaming: 0,
    Crop.loss_in_spawn_run: [0.1],
    Crop.loss_before_first_pick: 0,
    Crop.loss_between_flushes: 0,
    Crop.flushes_kept: 1,
    Crop.efficiency_given: [[0.5, 0, 0, 0]],
    Crop.trim: 0,
    Crop.shrink: 0,
    Spawn.spawn_rate: 0.04,
    Spawn.price: 4,
    Spawn.freight: 1,
    Spawn.bad_on_arrival: 0.2,
    Harvest.spawn_run_days: 21,
    Harvest.days_to_first_pick: 11,
    Harvest.turn_round_days: 1,
    OwnedItems.price: 0,
    Bills.amount: 0,
    LoanList.amount: 0,
    LoanList.rate: 0,
    LoanList.term: 12,
    Customers.order: 1,
    Customers.price: 10,
    Customers.most_a_week: 1000,
    Customers.unsold: 0,
    Customers.packing: 0,
    Customers.days_to_pay: 0,
}
FULL: Final[Mapping[Input, Any]] = {IncubationRoom.own_places: 3000}
"""The incubation room just holds the bags, and limits; customers would take the crop of 2,222 bags."""


def tried(changes: Mapping[Input, Any] | None = None) -> Mapping[str, Array]:
    """Every line of the farm with some inputs changed, in metric."""
    return evaluate(SECTIONS, "metric", {**GIVEN, **(changes or {})}, NAMES)
