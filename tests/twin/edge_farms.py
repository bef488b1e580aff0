"""One plausible farm, and the same farm with one thing strange about it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from farmbook.expr.axis import Axis
from farmbook.model.axes import (
    BILL,
    CUSTOMER,
    GUARANTOR,
    HOUSEHOLD_DEBT,
    INGREDIENT,
    ITEM,
    LOAN,
    OWNER,
    PERMIT,
    RECIPE,
    SECURITY,
    STEP_UP,
)
from farmbook.model.bank.collateral import Collateral
from farmbook.model.bank.debts import Debts
from farmbook.model.bank.people import People
from farmbook.model.bank.request import Request
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.mixing import Mixing
from farmbook.model.crop.crop import Crop
from farmbook.model.decisions.volume_offer import VolumeOffer
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.model.mix.supplement import Supplement
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import OwnedItems
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm as Plan
from farmbook.model.rooms.fruiting_climate import FruitingClimate
from farmbook.model.rooms.incubation_climate import IncubationClimate
from farmbook.model.safety.safety import Safety
from farmbook.model.safety.safety_costs import SafetyCosts
from farmbook.model.selling.customers import Customers
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.results import whole_farm
from farmbook.sections.declare import Choice, Input, NumberInput
from tests.twin.edge_changes import BY_NAME
from tests.twin.farms import Farm, farm_of

__all__ = [
    "EDGES",
    "NAMES",
    "Changes",
    "at_a_limit",
    "changes_of",
    "edge_farm",
    "numbers",
    "other_options",
    "plausible",
    "with_one",
]

Changes = Mapping[Input, Any]

INGREDIENTS: Final = ("Beech sawdust", "Soybean hulls", "Wheat bran", "Gypsum", "")
RECIPES: Final = ("Common mix", "Rich mix", "")
CUSTOMERS: Final = ("Market", "Inns", "Shop", "Trader", "")
ITEMS: Final = ("Cooler", "Van", "")
LOANS: Final = ("Van loan", "Rooms", "")
STEP_UPS: Final = ("Second load", "Helper", "")
BILLS: Final = ("Rent", "Insurance", "")
NAMES: Final[Mapping[Axis, Sequence[str]]] = {
    CUSTOMER: CUSTOMERS,
    INGREDIENT: INGREDIENTS,
    ITEM: ITEMS,
    BILL: BILLS,
    LOAN: LOANS,
    STEP_UP: STEP_UPS,
    RECIPE: RECIPES,
    OWNER: ("Two sisters", ""),
    GUARANTOR: ("An uncle", ""),
    SECURITY: ("Steamer", "Van", ""),
    HOUSEHOLD_DEBT: ("House", "Car", ""),
    PERMIT: ("Zoning", "Boiler", ""),
}

# By dry mass: beech, hulls, bran, gypsum; the moistures, prices, densities and customers are plausible and invented.
PLAUSIBLE: Final[Changes] = {
    Plan.bags_filled_a_week: 620,
    Plan.bags_per_load: 310,
    CabinetRun.power: 36,
    CabinetHeat.length: 3.66,
    CabinetHeat.steel: 400,
    Recipe.chosen_recipe: "Common mix",
    RecipeBeside.other_recipe: "Rich mix",
    Recipe.parts: [[78, 60, 0], [10, 39, 0], [11, 0, 0], [1, 1, 0], [0, 0, 0]],
    Recipe.target_moisture: [0.6, 0.62, 0.6],
    Recipe.dry_matter: [0.58, 0.9, 0.88, 0.98, None],
    Recipe.nitrogen_tested: [0.0015, None, None, 0, None],
    Recipe.protein: [None, 0.12, None, None, None],
    Recipe.tag_protein: [None, 0.1, 0.15, None, None],
    Recipe.carbon: [0.49, 0.44, 0.45, 0, 0],
    Recipe.price: [0.05, 0.29, 0.33, 0.45, None],
    Recipe.bulk_density: [320, 610, 210, 880, 320],
    IncubationClimate.outer_area: 105,
    IncubationClimate.air_volume: 115,
    FruitingClimate.outer_area: 150,
    FruitingClimate.air_volume: 230,
    FruitingClimate.lamps: 0.3,
    Safety.co2_alarm: "alarm outside the door",
    SafetyCosts.respirators: 12,
    VolumeOffer.more: [0, 15, 0, 0, 0],
    VolumeOffer.less: [0, 0.8, 0, 0, 0],
    Customers.order: [2, 1, 3, 1, 1],
    Customers.takes_rest: [0, 0, 0, 1, 0],
    Customers.price: [22, 15.5, 11, 7.2, 40],
    Customers.most_a_week: [45, 110, 60, 400, 20],
    Customers.unsold: [0.08, 0.02, 0.04, 0, 0.03],
    Customers.fee: [0.03, 0, 0.01, 0, 0],
    Customers.stall: [40, 0, 0, 0, 10],
    Customers.delivery: [15, 40, 20, 0, 10],
    Customers.selling_hours: [9, 5, 3, 1, 4],
    Customers.days_to_pay: [0, 21, 30, 14, 0],
    OwnedItems.price: [9000, 21000, None],
    OwnedItems.salvage: [500, 4000, None],
    OwnedItems.life: [12, 7, None],
    Bills.amount: [9000, 2800, None],
    LoanList.amount: [18000, 40000, None],
    LoanList.drawn_in: [0, 4, None],
    LoanList.next_payment: [2, 1, None],
    LoanList.rate: [0.065, 0.05, None],
    LoanList.term: [36, 120, None],
    LoanList.interval: [3, 6, None],
    LoanList.interest_only: [0, 12, None],
    LoanList.balloon: [0, 6000, None],
    LoanList.fees: [150, 400, None],
    Request.loan: "Rooms",
    Collateral.market_value: [9000, 70000, None],
    Debts.owed: [0, 0, None],
    Debts.paid: [0, 0, None],
    People.net_worth: [250000, None],
    People.income: [40000, None],
}
EVERY_OWN_FIGURE: Final[Changes] = {
    Mixing.mixer_volume: 1.1,
    Energy.own_added_peak: 29,
    CabinetRun.own_heat_up_time: 6.5,
    Cabinet.own_energy: 410,
    Cabinet.own_water: 450,
    Crop.weight_given: [0.4, 0.2, 0.1, 0.04],
    Spawn.own_moisture: 0.55,
}
NOTHING_PAID: Final[Changes] = {
    Plan.wage: 0,
    Recipe.price: [0, 0, 0, 0, 0],
    Bag.bag_price: 0,
    Bag.tie_price: 0,
    Energy.electricity_price: 0,
    Energy.demand_charge: 0,
    Energy.water_price: 0,
    Spawn.price: 0,
    Spawn.freight: 0,
}
BY_INPUT: Final[Mapping[str, Changes]] = {
    "nothing strange": {},
    "every own figure": EVERY_OWN_FIGURE,
    "own figures of zero": {
        Cabinet.own_energy: 0,
        Cabinet.own_water: 0,
        Energy.own_added_peak: 0,
        Spawn.own_moisture: 0,
    },
    "own energy far off": {Cabinet.own_energy: 900},
    "own heat-up and no power": {CabinetRun.own_heat_up_time: 9, CabinetRun.power: 1},
    "nothing paid": NOTHING_PAID,
    "rooms paid by the week": {GrowingCost.incubation_room_rate: 0.07, GrowingCost.fruiting_room_rate: 0.21},
    "recipe chosen in capitals": {Recipe.chosen_recipe: "RICH MIX"},
    "recipe chosen not there": {Recipe.chosen_recipe: "summer mix"},
    "no recipe chosen": {Recipe.chosen_recipe: ""},
    "no recipe set beside": {RecipeBeside.other_recipe: ""},
    "recipe set beside not there": {RecipeBeside.other_recipe: "summer mix"},
    "recipe set beside itself": {RecipeBeside.other_recipe: "common MIX"},
    "recipe set beside that gives more and loses more": {
        Recipe.chosen_recipe: "Rich mix",
        RecipeBeside.other_recipe: "common mix",
        Crop.loss_in_spawn_run: [0.03, 0.3, 0],
        Crop.efficiency_given: [[0.4, 0.2, 0.1, 0.05], [0.6, 0.3, 0.15, 0.05], [0, 0, 0, 0]],
    },
    "recipe without parts": {Recipe.parts: [[0, 60, 0], [0, 39, 0], [0, 0, 0], [0, 1, 0], [0, 0, 0]]},
    "parts in a spare row": {Recipe.parts: [[78, 60, 5], [10, 39, 5], [11, 0, 5], [1, 1, 5], [9, 9, 9]]},
    "parts far from a hundred": {Recipe.parts: [[2.5, 3e5, 0], [0.5, 2e5, 0], [0, 0, 0], [0.01, 0, 0], [0, 0, 0]]},
    "ingredients too wet": {Recipe.dry_matter: [0.3, 0.5, 0.88, 0.98, None]},
    "ingredients just dry enough": {Recipe.dry_matter: [0.4, 0.4, 0.4, 0.4, None]},
    "no nitrogen known": {Recipe.nitrogen_tested: None, Recipe.protein: None, Recipe.tag_protein: None},
    "carbon forgotten": {Recipe.carbon: 0},
    "supplement": {Supplement.base: "beech sawdust", Supplement.rich: "Soybean hulls"},
    "supplement the wrong way round": {Supplement.base: "wheat bran", Supplement.rich: "BEECH SAWDUST"},
    "supplement too weak": {
        Supplement.base: "Beech sawdust",
        Supplement.rich: "Soybean hulls",
        Supplement.wanted: 0.03,
    },
    "supplement not there": {Supplement.base: "Beech sawdust", Supplement.rich: "Fish meal"},
    "mixer too small": {Mixing.mixer_volume: 0.2},
    "batches come out even": {Bag.wet_fill: 2.25, Mixing.batch_mass: 77.5},
    "batches one bag over": {Bag.wet_fill: 2.5, Mixing.batch_mass: 154.5},
    "one bag a batch": {Bag.wet_fill: 2.5, Mixing.batch_mass: 2.5},
    "generator too weak": {CabinetRun.power: 2},
    "just enough to warm, not to hold": {CabinetRun.power: 4},
    "hold at boiling": {CabinetHeat.hold_temperature: 100},
    "hold as cold as the start": {CabinetHeat.hold_temperature: 50, CabinetHeat.start_temperature: 50},
    "hold colder than the start": {CabinetHeat.hold_temperature: 40, CabinetHeat.start_temperature: 60},
    "hard frost": {CabinetHeat.start_temperature: -20, CabinetHeat.surroundings: -40},
    "no vent and no hold": {CabinetHeat.vent_flow: 0, CabinetRun.hold_time: 0},
    "more loads than hours": {Plan.bags_filled_a_week: 4000},
    "one bag a week": {Plan.bags_filled_a_week: 1, Plan.bags_per_load: 1},
    "service too small": {Energy.service_amps: 100},
    "one flush": {Crop.flushes_kept: 1},
    "four flushes": {Crop.flushes_kept: 4},
    "two and a half flushes": {Crop.flushes_kept: 2.5},
    "all lost at steaming": {Crop.loss_at_steaming: 1},
    "all lost in the spawn run": {Crop.loss_in_spawn_run: [1, 0, 0]},
    "all lost before the first pick": {Crop.loss_before_first_pick: 1},
    "all lost after the first flush": {Crop.loss_between_flushes: [0, 1, 0, 0]},
    "none lost": {Crop.loss_at_steaming: 0, Crop.loss_in_spawn_run: 0, Crop.loss_before_first_pick: 0},
    "lost before there is a flush": {Crop.loss_between_flushes: [0.02, 0.015, 0.03, 0.05]},
    "days before there is a flush": {Harvest.added_days: [3, 13, 14, 15]},
    "weights by records": {
        Crop.yield_given: "weight picked per bag filled",
        Crop.weight_given: [0.4, 0.2, 0.1, 0.04],
        Crop.flushes_kept: 3,
    },
    "weights missing": {
        Crop.yield_given: "WEIGHT picked per bag filled",
        Crop.weight_given: [0.4, None, None, None],
        Crop.flushes_kept: 3,
    },
    "nothing picked": {Crop.efficiency_given: 0},
    "all trimmed off": {Crop.trim: 1},
    "all dried away": {Crop.shrink: 1},
    "yield beyond belief": {Crop.efficiency_given: 1.5},
    "grain spawn, most of it bad": {Spawn.kind: "Grain spawn", Spawn.bad_on_arrival: 0.95, Spawn.spawn_rate: 0.3},
    "no spawn": {Spawn.spawn_rate: 0},
    "no lab days": {Spawn.lab_days: 0},
}


EDGES: Final = (*BY_INPUT, *BY_NAME)
"""The names of all strange farms."""


def edge_farm(name: str) -> Farm:
    """The plausible farm with the changes of one edge."""
    return plausible(BY_INPUT[name] if name in BY_INPUT else changes_of(BY_NAME[name]))


def plausible(changes: Changes | None = None) -> Farm:
    """The plausible farm, all else at its defaults."""
    return farm_of({**PLAUSIBLE, **(changes or {})}, NAMES)


def changes_of(named: Mapping[str, Any]) -> Changes:
    """Changes by the dotted names of the inputs; raises KeyError for a name that no input has."""
    inputs = {declared.dotted: declared for declared in whole_farm().inputs}
    return {inputs[name]: value for name, value in named.items()}


def numbers() -> list[NumberInput]:
    """Every number that a farm has."""
    return [declared for declared in whole_farm().inputs if isinstance(declared, NumberInput)]


def with_one(declared: NumberInput, value: float | None) -> Farm:
    """The plausible farm with one input, in all its cells, set to this, or cleared."""
    return plausible({declared: value})


def at_a_limit(declared: NumberInput, side: int) -> float:
    """The least (0) or most (1) that an input may be; ten times the usual most where there is no limit."""
    return min(declared.hard[side], 10 * declared.usual[1])


def other_options() -> list[tuple[Choice, str]]:
    """Every option of every choice that is not the default."""
    choices = [declared for declared in whole_farm().inputs if isinstance(declared, Choice)]
    return [(each, option) for each in choices for option in each.labels if option != each.default]
