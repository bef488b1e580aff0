"""What is strange about farms that steam under pressure, lie high up, use a probe or make their own spawn."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

__all__ = ["BY_NAME"]

IN_THE_VESSEL: Final = {"steamer.kind": "pressure vessel"}
STOVE_TOP: Final = {
    **IN_THE_VESSEL,
    "vessel.bags_per_run": 8,
    "vessel.feed": "put in before each load",
    "vessel.condensate": "falls back to the boil",
    "vessel.water_put_in": 4,
    "vessel.diameter": 0.4,
    "vessel.length": 0.5,
    "vessel.steel": 12,
    "vessel.power": 2,
    "vessel.fuel": "Propane",
}
MADE: Final = {"spawn.supply": "Made on the farm"}
WITH_SAWDUST: Final = {**MADE, "own_spawn.route": "one grain, then sawdust spawn"}

BY_NAME: Final[Mapping[str, Mapping[str, Any]]] = {
    "steams under pressure": IN_THE_VESSEL,
    "steams in a pot": STOVE_TOP,
    "pot that boils dry": {**STOVE_TOP, "vessel.water_put_in": 0.1, "vessel.power": 6},
    "pot with its meters read": {**STOVE_TOP, "vessel.own_propane": 2, "vessel.own_water": 3, "vessel.own_gas": 9},
    "vessel that lets nothing out": {
        **IN_THE_VESSEL,
        "vessel.condensate": "falls back to the boil",
        "vessel.purge_steam": 0,
        "vessel.vent_flow": 0,
        "vessel.own_water": 60,
    },
    "vessel whose meter shows too little": {
        **IN_THE_VESSEL,
        "vessel.feed": "put in before each load",
        "vessel.own_energy": 1,
    },
    "vessel above its rating": {**IN_THE_VESSEL, "vessel.working_pressure": 140},
    "vessel too weak": {**IN_THE_VESSEL, "vessel.power": 1},
    "vessel colder than its water": {
        **IN_THE_VESSEL,
        "vessel.working_pressure": 0,
        "vessel.feed_temperature": 95,
        "site.altitude": 5500,
    },
    "vessel that drains hand-fed water": {**IN_THE_VESSEL, "vessel.feed": "PUT IN before each load"},
    "vessel used day and night": {**IN_THE_VESSEL, "steamer.staffed_hours": 24, "steamer.staffed_days": 7},
    "own peak, with the vessel in use": {**IN_THE_VESSEL, "energy.own_added_peak": 21},
    "own peak, fuel in use": {"energy.own_added_peak": 21, "cabinet.fuel": "natural gas"},
    "cabinet on gas, its meter read": {"cabinet.fuel": "Natural gas", "cabinet.own_gas": 500},
    "cabinet on propane, its meter read": {"cabinet.fuel": "propane", "cabinet.own_propane": 60},
    "cabinet on propane, the wrong meter read": {"cabinet.fuel": "propane", "cabinet.own_energy": 300},
    "own share into the steam": {"cabinet.own_efficiency": 0.5, "vessel.own_efficiency": 1},
    "high up": {"site.altitude": 2400},
    "in a hollow": {"site.altitude": -430},
    "loads that take days": {"cabinet.cool_down_time": 90, "steamer.staffed_days": 2.5},
    "loads within the day": {"cabinet.cool_down_time": 0.5, "cabinet.hold_time": 1},
    "loads of a whole day": {
        "cabinet.own_heat_up_time": 8.76,
        "cabinet.cool_down_time": 14,
        "cabinet.hold_time": 0,
    },
    "vessel that loses every bag": {"vessel.loss_at_steaming": 1},
    "vessel that loses every bag, in use": {**IN_THE_VESSEL, "vessel.loss_at_steaming": 1},
    "vessel that costs nothing": {"vessel.price": 0, "vessel.salvage": 0, "vessel.upkeep": 0},
    "no return wanted": {"steamer.yearly_return": 0, "make_or_buy.wanted_return": 0},
    "no loss under pressure": {**IN_THE_VESSEL, "vessel.loss_at_steaming": 0, "crop.loss_at_steaming": 0.03},
    "bags in pairs": {"cook.standing": "touching in pairs"},
    "bags in rows": {"cook.standing": "Solid rows", "cabinet.hold_time": 8},
    "probe in the cabinet": {"cook.hours_to_150f": 4, "cook.hours_to_190f": 9.5},
    "probe read three times": {
        "cook.hours_to_150f": 4,
        "cook.hours_to_180f": 7,
        "cook.hours_to_190f": 9.5,
    },
    "probe read in the wrong order": {"cook.hours_to_150f": 9, "cook.hours_to_180f": 7},
    "probe read once": {"cook.hours_to_190f": 9.5},
    "probe that contradicts itself": {
        "cook.hours_to_150f": 4,
        "cook.hours_to_180f": 12,
        "cook.hours_to_190f": 9.5,
    },
    "probe in the vessel": {
        "cook.probe_place": "pressure vessel",
        "cook.hours_to_150f": 1,
        "cook.hours_to_180f": 1.8,
    },
    "rows of time too short": {
        "cook.cabinet_step": 1,
        "cook.vessel_step": 0.25,
        "vessel.hold_time": 5,
    },
    "made, one grain": {**MADE, "own_spawn.route": "one grain, then bags"},
    "made, two grains": MADE,
    "made, with sawdust spawn": WITH_SAWDUST,
    "made, four generations": {
        **MADE,
        "own_spawn.route": "two grains, then SAWDUST spawn",
        "own_spawn.failure": 0.4,
    },
    "made, cooked in the cooker": {**WITH_SAWDUST, "own_spawn.sawdust_cooked_in": "pressure cooker"},
    "made, steamed under pressure": {**WITH_SAWDUST, **IN_THE_VESSEL, "make_or_buy.limit": "the steamer"},
    "made, and grows old": {**WITH_SAWDUST, "own_spawn.shelf_life": 1, "own_spawn.batch_weeks": 3},
    "made, own hours and own moisture": {**MADE, "own_spawn.own_hours": 11, "own_spawn.own_moisture": 0.5},
    "made, losses past all bags": {**MADE, "spawn.extra_loss": 0.5, "recipe.loss_in_spawn_run": [0.9, 0.9, 0.9]},
    "made, and all lost at steaming": {**WITH_SAWDUST, "crop.loss_at_steaming": 1},
    "made, no extra loss": {**MADE, "spawn.extra_loss": 0},
    "lab that is paid back at once": {"make_or_buy.lab_price": 10, "make_or_buy.trials": 0, "spawn.price": 60},
    "lab that earns": {"spawn.price": 12, "spawn.extra_loss": 0, "make_or_buy.lab_price": 20000},
    "lab that earns less than wanted": {
        "spawn.price": 11,
        "spawn.extra_loss": 0,
        "make_or_buy.wanted_return": 0.3,
    },
    "lab for a broken number of years": {"make_or_buy.life": 6.5},
    "lab for one year": {"make_or_buy.life": 1, "spawn.price": 40},
    "lab that sells dearer than it cost": {"make_or_buy.resale": 60000},
    "own spawn would lose more bags than there are": {"recipe.loss_in_spawn_run": 0.7, "spawn.extra_loss": 0.4},
    "the lab holds the farm back": {"make_or_buy.limit": "the lab or the spawn run room"},
}
"""By the dotted names of the inputs, in their declared units."""
