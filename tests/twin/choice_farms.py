"""Farms that fruiting places, hands, the steamer, customers and the incubation room hold back, each in many ways."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from farmbook.model.axes import RECIPE
from tests.twin.edge_farms import NAMES, PLAUSIBLE, changes_of
from tests.twin.farms import Farm, farm_of

__all__ = ["BASES", "RECIPES", "TWISTS", "choice_farm"]

RECIPES: Final = ("Common mix", "Rich mix", "Lean mix", "")
Named = Mapping[str, Any]

ROOMY: Final[Named] = {
    "customer.most_a_week": [45, 110, 60, 2500, 20],
    "customer.price": [22, 15.5, 11, 8.4, 40],
    "recipe.parts": [[78, 60, 88, 0], [10, 39, 6, 0], [11, 0, 5, 0], [1, 1, 1, 0], [0, 0, 0, 0]],
    "recipe.target_moisture": [0.6, 0.62, 0.61, 0.6],
    "recipe.loss_in_spawn_run": [0.04, 0.085, 0.025, 0.04],
    "recipe.efficiency_given": [
        [0.46, 0.26, 0.13, 0.06],
        [0.5, 0.29, 0.16, 0.08],
        [0.41, 0.23, 0.12, 0.05],
        [0.46, 0.26, 0.13, 0.06],
    ],
    "vessel.price": 40000,
    "vessel.loss_at_steaming": 0.018,
    "vessel.bags_per_run": 120,
}
BASES: Final[Mapping[str, Named]] = {
    "fruiting": {"fruiting_room.own_places": 2300, "farm.bags_per_load": 600},
    "labour": {"hours.counted": "hours paid", "hours.hired_hours": 55, "hours.own_hours": 45},
    "steamer": {"farm.bags_per_load": 130, "vessel.bags_per_run": 55, "steamer.staffed_days": 4},
    "customer": {"customer.most_a_week": [25, 60, 30, 40, 0]},
    "incubation": {"incubation_room.own_places": 1400},
}
"""Each with one stage made narrow."""
IN_THE_VESSEL: Final[Named] = {"steamer.kind": "pressure vessel"}
OWN_SPAWN: Final[Named] = {"spawn.supply": "made on the farm", "own_spawn.route": "one grain, then sawdust spawn"}
TWISTS: Final[Mapping[str, Named]] = {
    "as it is": {},
    "rich in use, one flush": {"mix.chosen_recipe": "Rich mix", "crop.flushes_kept": 1},
    "in the vessel, its peak read": {**IN_THE_VESSEL, "energy.own_added_peak": 41, "energy.demand_charge": 9},
    "own spawn steamed, four flushes": {**OWN_SPAWN, "crop.flushes_kept": 4},
    "by records, the peak of the cabinet read": {
        "energy.own_added_peak": 21,
        "energy.demand_charge": 9,
        "crop.yield_given": "weight picked per bag filled",
        "crop.weight_given": [0.4, 0.2, None, None],
        "bills.energy": 9500,
    },
    "by totals, in the vessel": {
        **IN_THE_VESSEL,
        "bag.counted": "one figure",
        "spawn.counted": "one figure",
        "crop.yield_given": "weight picked from a bag",
        "crop.losses_given": "in one share",
        "crop.days_given": "in one number",
        "capital.counted": "one sum",
        "bills.counted": "one sum",
        "bills.in_all": 24000,
        "bills.energy": 8000,
    },
    "by totals, own loss in value": {
        "crop.losses_given": "in one share",
        "crop.never_fruits": 0.12,
        "capital.counted": "one sum",
        "capital.own_loss": 6500,
        "bills.counted": "one sum",
        "bills.in_all": 26000,
        "crop.flushes_kept": 3,
    },
    "lean in use, picked by the piece": {
        "mix.chosen_recipe": "Lean mix",
        "picking.paid": "by the piece",
        "growing_cost.fruiting_room_rate": 0.05,
        "cabinet.fuel": "natural gas",
        "crop.loss_at_steaming": 0.05,
    },
    "later flushes hardly give, a cheap vessel": {
        "recipe.efficiency_given": [[0.6, 0.05, 0.02, 0.01], [0.68, 0.06, 0.03, 0.01], [0.5, 0.04, 0.02, 0], [0] * 4],
        "crop.added_days": [0, 22, 22, 22],
        "vessel.price": 9000,
        "vessel.upkeep": 300,
        "vessel.salvage": 1000,
        "vessel.bags_per_run": 260,
    },
    "flushes that keep giving, a cheap vessel": {
        "recipe.efficiency_given": [[0.3, 0.26, 0.24, 0.22], [0.32, 0.28, 0.27, 0.25], [0.28, 0.22, 0.2, 0.2], [0] * 4],
        "crop.added_days": [0, 8, 8, 8],
        "vessel.price": 9000,
        "vessel.upkeep": 300,
        "vessel.salvage": 1000,
        "vessel.bags_per_run": 260,
    },
    "three flushes that give, then hardly any": {
        "recipe.efficiency_given": [
            [0.3, 0.27, 0.26, 0.02],
            [0.32, 0.3, 0.28, 0.02],
            [0.28, 0.24, 0.22, 0.02],
            [0] * 4,
        ],
        "crop.added_days": [0, 8, 8, 30],
    },
    "prices that fall steeply": {"customer.price": [30, 13, 7, 4.4, 40], "crop.flushes_kept": 3},
}


def choice_farm(base: str, twist: str, other: str) -> Farm:
    """The plausible farm with one stage made narrow, and one recipe set beside the one in use."""
    named = {**ROOMY, **BASES[base], **TWISTS[twist], "mix.other_recipe": other}
    return farm_of({**PLAUSIBLE, **changes_of(named)}, {**NAMES, RECIPE: RECIPES})
