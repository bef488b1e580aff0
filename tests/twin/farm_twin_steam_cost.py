"""Twin of what a load of either steamer takes and costs: energy by its kind, the highest kW, water and work."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, agree, over, same
from tests.twin.farm_twin_steam import (
    COLD_WATER_KILOGRAMS_IN_A_LITRE,
    JOULES_IN_A_KILOWATT_HOUR,
    bags_in_a_load,
    heats_with,
    in_use,
    kilowatts_of,
)

__all__ = ["cabinet_cost", "steamer_in_use", "vessel_cost"]

JOULES_IN_A_BTU = 1055.05585262
KILOWATT_HOURS_IN_A_LITRE_OF_PROPANE = 91333 * JOULES_IN_A_BTU / JOULES_IN_A_KILOWATT_HOUR / 3.785411784
KILOWATT_HOURS_IN_A_CUBIC_METRE_OF_GAS = 1037 * JOULES_IN_A_BTU / JOULES_IN_A_KILOWATT_HOUR / 0.3048**3


def metered(given: Given, place: str) -> Results:
    """kWh by the meter of what heats the steamer; a meter of anything else is left aside."""
    propane = given[f"{place}.own_propane"] * KILOWATT_HOURS_IN_A_LITRE_OF_PROPANE
    fuel = 0.0
    if heats_with(given, place, "natural gas"):
        fuel = float(given[f"{place}.own_gas"])
    if heats_with(given, place, "propane"):
        fuel = float(propane)
    electric = float(given[f"{place}.own_energy"]) if heats_with(given, place, "electricity") else 0.0
    return {"propane_metered": propane, "fuel_metered": fuel, "metered_energy": electric + fuel}


def energy_of_a_load(given: Given, out: Results, place: str) -> Results:
    """Energy of a load, by the meter or as worked out."""
    found = metered(given, place)
    worked, own = float(out[f"{place}_run.worked_energy"]), float(found["metered_energy"])
    energy = own if own > 0 else worked
    apart = over(own - worked, worked) if own > 0 else 0.0
    return found | {
        "energy_per_run": energy,
        "energy_difference": apart,
        "energy_per_bag": over(energy, bags_in_a_load(given, place)),
        "energy_per_dry": over(energy, out[f"{place}_heat.load_dry"]),
        "meter_agrees": float(abs(apart) <= 0.25 or not in_use(given, place)),
    }


def bought(given: Given, out: Results, place: str, energy: float) -> Results:
    """The energy as it is bought, and its cost."""
    electricity = energy if heats_with(given, place, "electricity") else 0.0
    gas = energy if heats_with(given, place, "natural gas") else 0.0
    litres = energy / KILOWATT_HOURS_IN_A_LITRE_OF_PROPANE if heats_with(given, place, "propane") else 0.0
    costs = {
        "electricity_cost": electricity * given["energy.electricity_price"],
        "gas_cost": gas * given["energy.gas_price"],
        "propane_cost": litres * given["energy.propane_price"],
    }
    money = sum(costs.values())
    return costs | {
        "electricity_per_run": electricity,
        "gas_per_run": gas,
        "gas_volume_per_run": gas / KILOWATT_HOURS_IN_A_CUBIC_METRE_OF_GAS,
        "propane_per_run": litres,
        "energy_cost_per_run": money,
        "energy_price": over(money, energy),
        "hold_hour_cost": out[f"{place}_run.hold_power"] * over(money, energy),
    }


def peak_of_a_month(given: Given, out: Results, place: str) -> Results:
    """The charge for the highest kW, shared by the loads of a month."""
    loads = out[f"{place}_run.loads_a_week"] * given["farm.weeks_worked"] / 12
    counts = given["energy.own_added_peak_given"] and out[f"{place}_heat.in_use"] == 1
    highest = float(given["energy.own_added_peak"]) if counts else kilowatts_of(given, place)
    added = highest if heats_with(given, place, "electricity") else 0.0
    month = added * given["energy.demand_charge"]
    return {
        "loads_a_month": loads,
        "own_peak_counts": float(bool(counts)),
        "highest_power": highest,
        "added_peak": added,
        "demand_cost_per_month": month,
        "demand_cost_per_run": over(month, loads),
    }


def steam_let_out(given: Given, out: Results, place: str) -> Results:
    """Hours of standing loss, and steam that leaves through the vent."""
    return {"vent_steam": out[f"{place}_run.hours_of_loss"] * given[f"{place}.vent_flow"]}


def kilograms_boiled(out: Results, place: str, kilowatt_hours: float) -> float:
    """What so much heat boils off the water that the steamer boils."""
    joules_a_kilogram = 1000 * (out[f"{place}_heat.in_steam"] - out[f"{place}_heat.in_feed"])
    return over(kilowatt_hours * JOULES_IN_A_KILOWATT_HOUR, joules_a_kilogram)


def water_lines(given: Given, place: str, kilograms: float) -> Results:
    """Litres by the meter or as worked out, and their cost."""
    worked = kilograms / COLD_WATER_KILOGRAMS_IN_A_LITRE
    own = bool(given[f"{place}.own_water_given"])
    litres = float(given[f"{place}.own_water"]) if own else worked
    return {
        "make_up_water": kilograms,
        "worked_water": worked,
        "water_per_run": litres,
        "water_difference": over(litres - worked, worked) if own else 0.0,
        "water_given": float(bool(own)),
        "water_cost_per_run": litres / 1000 * given["energy.water_price"],
    }


def sum_of_a_load(given: Given, out: Results, place: str, found: Results) -> Results:
    """Work, and everything together."""
    work = out[f"{place}_run.handling_hours"] + given[f"{place}.watching_hours"]
    paid = work * out["farm.labour_rate"]
    without_peak = found["energy_cost_per_run"] + found["water_cost_per_run"] + paid
    place_in_it = over(without_peak, bags_in_a_load(given, place))
    peak = 12 * found["demand_cost_per_month"]
    a_bag_of_it = over(peak, given["farm.bags_filled_a_week"] * given["farm.weeks_worked"])
    return {
        "place_cost": place_in_it,
        "demand_cost_per_bag": a_bag_of_it,
        "labour_hours_per_run": work,
        "labour_cost_per_run": paid,
        "cost_per_run": without_peak + found["demand_cost_per_run"],
        "cost_per_bag": place_in_it + a_bag_of_it,
    }


def without_water(given: Given, out: Results, place: str) -> Results:
    """Energy, highest kW and vent of either steamer."""
    found = energy_of_a_load(given, out, place)
    found |= bought(given, out, place, found["energy_per_run"])
    found |= peak_of_a_month(given, out, place)
    return found | steam_let_out(given, out, place)


def cabinet_cost(given: Given, out: Results) -> Results:
    """A load of the cabinet."""
    found = without_water(given, out, "cabinet")
    into_steam = found["energy_per_run"] * out["cabinet_run.efficiency"]
    boiled = kilograms_boiled(out, "cabinet", into_steam)
    drains = same(given["cabinet.condensate"], "drains away hot")
    found |= {"water_boiled": boiled, **water_lines(given, "cabinet", boiled if drains else found["vent_steam"])}
    found |= sum_of_a_load(given, out, "cabinet", found)
    return {f"cabinet.{name}": value for name, value in found.items()}


def water_of_the_vessel(given: Given, out: Results, found: Results) -> Results:
    """What boils in the vessel and what is left of the water put in."""
    into_steam = found["energy_per_run"] * out["vessel_run.efficiency"]
    through_walls = out["vessel_heat.wall_loss"] * out["vessel_run.hours_of_loss"]
    standing = out["vessel_heat.standing_heat"]
    kept = out["vessel_heat.load_heat"] + through_walls + standing
    back = same(given["vessel.condensate"], "falls back to the boil")
    free = 0.0 if not back or agree(into_steam, kept) else max(0.0, into_steam - kept)
    boiled = kilograms_boiled(out, "vessel", max(0.0, into_steam - standing))
    boiled_off = kilograms_boiled(out, "vessel", free)
    return {
        "heat_into_steam": into_steam,
        "heat_kept": kept,
        "falls_back": float(back),
        "not_taken_up": free,
        "water_boiled": boiled,
        "water_boiled_off": boiled_off,
        **water_lines(given, "vessel", boiled_off if back else boiled),
    }


def vessel_cost(given: Given, out: Results) -> Results:
    """A load of the pressure vessel."""
    found = without_water(given, out, "vessel")
    found["vent_steam"] += given["vessel.purge_steam"]
    found |= water_of_the_vessel(given, out, found)
    by_hand = out["vessel_heat.by_hand"] == 1
    left = given["vessel.water_put_in"] - found["water_per_run"] if by_hand else 0.0
    found |= {"water_left": left, "water_lasts": float(not in_use(given, "vessel") or not by_hand or left > 0)}
    found |= sum_of_a_load(given, out, "vessel", found)
    return {f"vessel.{name}": value for name, value in found.items()}


def steamer_in_use(given: Given, out: Results) -> Results:
    """The figures of the steamer in use."""
    place = "vessel" if same(given["steamer.kind"], "pressure vessel") else "cabinet"
    every = {**given, **out}
    of_the_run = ("heat_up_time", "cycle_time", "loads_a_week", "loads_possible", "bags_possible")
    of_the_load = (
        "hold_time",
        "energy_per_run",
        "energy_cost_per_run",
        "demand_cost_per_run",
        "demand_cost_per_month",
        "water_per_run",
        "water_cost_per_run",
        "watching_hours",
        "labour_hours_per_run",
        "labour_cost_per_run",
        "cost_per_run",
        "place_cost",
        "demand_cost_per_bag",
        "cost_per_bag",
    )
    found = {name: every[f"{place}_run.{name}"] for name in (*of_the_run, "handling_hours")}
    found |= {name: every[f"{place}.{name}"] for name in of_the_load}
    found["bags_per_run"] = bags_in_a_load(given, place)
    found["hold_temperature"] = every[
        "vessel_heat.hold_temperature" if place == "vessel" else "cabinet.hold_temperature"
    ]
    bags = out["to_steam.places"]
    found["room_to_spare"] = over(found["bags_possible"] - bags, bags)
    return {f"steamer_in_use.{name}": value for name, value in found.items()}
