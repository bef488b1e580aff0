"""Twin of a run of either steamer: hours, power, amps, and the loads that a week leaves room for."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import Given, Results, over, whole_up
from tests.twin.farm_twin_steam import (
    JOULES_IN_A_KILOWATT_HOUR,
    POWER_FOR_A_BAG,
    bags_in_a_load,
    heats_with,
    in_use,
    kilowatts_of,
    of_its_size,
    usual_efficiency,
)

__all__ = ["cabinet_run", "steaming", "vessel_run"]

SECONDS_IN_AN_HOUR = 3600.0
HOURS_IN_A_DAY, DAYS_IN_A_WEEK = 24, 7


def whole_down(amount: float) -> float:
    """The whole number that fits into an amount, to the ninth decimal."""
    return float(math.floor(round(amount, 9)))


def steaming(given: Given, out: Results) -> Results:
    """What both steamers share, and what heat in the steam costs by what makes it."""
    kilowatt_hours_in_a_litre = 91333 * 1055.05585262 / JOULES_IN_A_KILOWATT_HOUR / 3.785411784
    propane = given["energy.propane_price"] / kilowatt_hours_in_a_litre
    return {
        "steaming.yearly_rate": given["steamer.yearly_return"],
        "steaming.staffed_week": given["steamer.staffed_hours"] * given["steamer.staffed_days"],
        "energy.propane_heat": propane,
        "energy.electric_steam": given["energy.electricity_price"] / 0.96,
        "energy.gas_steam": given["energy.gas_price"] / 0.8,
        "energy.propane_steam": propane / 0.8,
    }


def heat_up(given: Given, out: Results, place: str) -> Results:
    """Seconds to temperature with the power that the losses leave."""
    own = given[f"{place}.own_efficiency_given"]
    share = float(given[f"{place}.own_efficiency"]) if own else usual_efficiency(given, place)
    into_steam = 1000 * kilowatts_of(given, place) * share
    left = into_steam - 0.5 * 1000 * out[f"{place}_heat.standing_loss"]
    joules = out[f"{place}_heat.heat_to_supply"] * JOULES_IN_A_KILOWATT_HOUR
    worked = joules / left / SECONDS_IN_AN_HOUR if left > 0 else 0.0
    timed = bool(given[f"{place}.own_heat_up_time_given"])
    hours = float(given[f"{place}.own_heat_up_time"]) if timed else worked
    return {
        "usual_efficiency": usual_efficiency(given, place),
        "efficiency": share,
        "steam_power": into_steam / 1000,
        "power_left": left / 1000,
        "worked_heat_up_time": worked,
        "heat_up_time": hours,
        "heat_up_given": float(bool(timed)),
        "heat_up_difference": over(hours - worked, worked) if timed else 0.0,
    }


def reaches(out: Results, place: str, found: Results) -> bool:
    """Whether the power is enough to stay hot."""
    return bool(found["steam_power"] > out[f"{place}_heat.standing_loss"])


def draw(given: Given, out: Results, place: str, found: Results) -> Results:
    """Power and energy."""
    drawn = over(out[f"{place}_heat.standing_loss"], found["efficiency"])
    hours_of_loss = found["worked_heat_up_time"] / 2 + given[f"{place}.hold_time"]
    lost = out[f"{place}_heat.standing_loss"] * hours_of_loss
    return {
        "electric": float(heats_with(given, place, "electricity")),
        "on_gas": float(heats_with(given, place, "natural gas")),
        "on_propane": float(heats_with(given, place, "propane")),
        "hold_power": drawn,
        "hours_of_loss": hours_of_loss,
        "heat_lost": lost,
        "worked_energy": (energy := over(out[f"{place}_heat.heat_to_supply"] + lost, found["efficiency"])),
        "heat_rest": energy - out[f"{place}_heat.load_heat"] - lost,
        "reaches_temperature": float(not in_use(given, place) or reaches(out, place, found)),
    }


def clock(given: Given, out: Results, place: str, heating: float) -> Results:
    """How long a load takes the steamer, and how many a week brings."""
    work = over(bags_in_a_load(given, place), given[f"{place}.handling_rate"])
    both_ways = over(work, given[f"{place}.people_loading"])
    cycle = both_ways + heating + given[f"{place}.hold_time"] + given[f"{place}.cool_down_time"]
    loads = over(out["to_steam.places"], bags_in_a_load(given, place))
    return {
        "handling_hours": work,
        "handling_time": both_ways,
        "cycle_time": cycle,
        "loads_a_week": loads,
        "hours_between_loads": over(HOURS_IN_A_DAY * DAYS_IN_A_WEEK, loads),
        "hours_taken_a_week": cycle * loads,
        "loads_handled": whole_down(over(out["steaming.staffed_week"], both_ways)),
    }


def current(given: Given, place: str) -> Results:
    """Amps of the steamer, and whether the service carries them if it is the one in use."""
    kilowatts = kilowatts_of(given, place) if heats_with(given, place, "electricity") else 0.0
    single = over(1000 * kilowatts, given["energy.voltage"])
    three = over(1000 * kilowatts, given["energy.voltage"] * math.sqrt(3))
    amps = {"single-phase": single, "three-phase": three}.get(given["energy.phases"].lower(), 0.0)
    idle = not in_use(given, place)
    return {
        "electric_power": kilowatts,
        "single_phase_amps": single,
        "three_phase_amps": three,
        "amps": amps,
        "circuit_amps": amps * 5 / 4,
        "service_is_enough": float(idle or amps * 5 / 4 <= given["energy.service_amps"]),
    }


def whether_it_fits(given: Given, out: Results, place: str, found: Results) -> Results:
    """Whether the bags of a week can be steamed."""
    fit = found["loads_a_week"] <= found["loads_possible"]
    works = out[f"{place}_heat.sound"] == 1 and reaches(out, place, found)
    return {
        "gets_hot": float(works),
        "does_a_load": float(works and found["loads_possible"] > 0),
        "bags_possible": found["loads_possible"] * bags_in_a_load(given, place),
        "loads_fit": float(fit or not in_use(given, place)),
        "fits": float(fit and works),
    }


def one_run(given: Given, out: Results, place: str) -> Results:
    """What both steamers have in common."""
    found = heat_up(given, out, place)
    found |= draw(given, out, place, found)
    found |= clock(given, out, place, found["heat_up_time"])
    return found | current(given, place)


def cabinet_run(given: Given, out: Results) -> Results:
    """Loads that start in the morning; one that is cool by a later morning is taken out as that morning's goes in."""
    found = one_run(given, out, "cabinet")
    days = whole_up(found["cycle_time"] / HOURS_IN_A_DAY)
    found |= of_its_size(given, "power", POWER_FOR_A_BAG)
    found |= {
        "days_of_a_load": days,
        "loads_started": whole_up(over(given["steamer.staffed_days"], days)),
        "loads_out": whole_down(over(DAYS_IN_A_WEEK, days)),
    }
    found["loads_possible"] = min(found["loads_started"], found["loads_out"], found["loads_handled"])
    found |= whether_it_fits(given, out, "cabinet", found)
    return {f"cabinet_run.{name}": value for name, value in found.items()}


def vessel_run(given: Given, out: Results) -> Results:
    """Loads one after the other while somebody is there; the last of the day cools down by itself."""
    found = one_run(given, out, "vessel")
    day = min(HOURS_IN_A_DAY, given["steamer.staffed_hours"] + given["vessel.cool_down_time"])
    loads = whole_down(over(day, found["cycle_time"]))
    by_days = loads * given["steamer.staffed_days"]
    found |= {"day_available": day, "loads_a_day": loads, "loads_possible": min(by_days, found["loads_handled"])}
    found |= whether_it_fits(given, out, "vessel", found)
    return {f"vessel_run.{name}": value for name, value in found.items()}
