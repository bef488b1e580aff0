"""Twin of the steam cabinet: heats in joules, powers in watts, times in seconds, and what a load costs."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import Given, Results, over

__all__ = ["cabinet_cost", "cabinet_heat", "cabinet_run"]

JOULES_IN_A_KILOWATT_HOUR = 3.6e6
SECONDS_IN_AN_HOUR = 3600.0
HOURS_IN_A_WEEK = 7 * 24

# J/kg/K: water as a mean from 20 degC to boiling, polypropylene and stainless steel from tables of materials.
OF_WATER, OF_POLYPROPYLENE, OF_STEEL = 4190.0, 1700.0, 500.0
STEAM_AT_BOILING = 2_675_570.0
"""J/kg of saturated steam at 100 degC, above water at the freezing point."""
COLD_WATER_KILOGRAMS_IN_A_LITRE = 0.99821


def wood_heat_of_a_kilogram(cold: float, hot: float) -> float:
    """J to warm a kilogram of dry wood, the integral of 0.1031 + 0.003867 T kJ/kg/K (Wood Handbook 2010, ch. 4)."""
    before, after = cold + 273.15, hot + 273.15
    return 1000 * (0.1031 * (after - before) + 0.003867 * (after**2 - before**2) / 2)


def wood_capacity(cold: float, hot: float) -> float:
    """J/kg/K of dry wood on its way from cold to hot; at one temperature the equation itself."""
    if hot == cold:
        return 1000 * (0.1031 + 0.003867 * (cold + 273.15))
    return wood_heat_of_a_kilogram(cold, hot) / (hot - cold)


def load_heats(given: Given, out: Results) -> Results:
    """What a load weighs and takes up."""
    cold, hot = float(given["cabinet_heat.start_temperature"]), float(given["cabinet_heat.hold_temperature"])
    bags = given["farm.bags_per_load"]
    dry, water = bags * out["bag.dry_mass"], bags * out["bag.water_mass"]
    plastic = bags * given["bag.bag_mass"] / 1000
    wood_heat = dry * wood_heat_of_a_kilogram(cold, hot)
    water_heat = water * OF_WATER * (hot - cold)
    bag_heat = plastic * OF_POLYPROPYLENE * (hot - cold)
    steel_heat = given["cabinet_heat.steel"] * OF_STEEL * (hot - cold)
    every = wood_heat + water_heat + bag_heat + steel_heat
    return {
        "load_dry": dry,
        "load_water": water,
        "load_plastic": plastic,
        "rise": hot - cold,
        "mean_temperature": cold + (hot - cold) / 2,
        "mean_absolute_temperature": (cold + 273.15 + hot + 273.15) / 2,
        "wood_capacity": wood_capacity(cold, hot) / 1000,
        "wood_heat": wood_heat / JOULES_IN_A_KILOWATT_HOUR,
        "water_heat": water_heat / JOULES_IN_A_KILOWATT_HOUR,
        "bag_heat": bag_heat / JOULES_IN_A_KILOWATT_HOUR,
        "steel_heat": steel_heat / JOULES_IN_A_KILOWATT_HOUR,
        "load_heat": every / JOULES_IN_A_KILOWATT_HOUR,
        "water_share": over(water_heat, every),
    }


def walls(given: Given) -> Results:
    """The six faces and what goes through them."""
    length, width, height = (given[f"cabinet_heat.{side}"] for side in ("length", "width", "height"))
    side_walls = 2 * length * height + 2 * width * height
    area = 2 * (length * width + width * height + length * height)
    difference = given["cabinet_heat.hold_temperature"] - given["cabinet_heat.surroundings"]
    watts = over(area * difference, given["cabinet_heat.insulation"])
    return {
        "floor_and_roof": area - side_walls,
        "walls": side_walls,
        "inside_area": area,
        "wall_difference": difference,
        "wall_loss": watts / 1000,
    }


def condensate(given: Given) -> Results:
    """Joules that a kilogram of steam brings, and that a kilogram of condensate takes away."""
    feed = OF_WATER * given["cabinet_heat.feed_temperature"]
    drain = OF_WATER * given["cabinet_heat.hold_temperature"]
    drained = over(STEAM_AT_BOILING - feed, STEAM_AT_BOILING - drain)
    multipliers = {"drains away hot": drained, "goes back to the steam generator": 1.0}
    return {
        "in_feed": feed / 1000,
        "in_drain": drain / 1000,
        "in_steam": STEAM_AT_BOILING / 1000,
        "drained_multiplier": drained,
        "multiplier": multipliers.get(given["cabinet_heat.condensate"].lower(), 0.0),
    }


def cabinet_heat(given: Given, out: Results) -> Results:
    """All heats of the cabinet."""
    found = {**load_heats(given, out), **walls(given), **condensate(given)}
    vent_kilograms_a_second = given["cabinet_heat.vent_flow"] / SECONDS_IN_AN_HOUR
    vent = vent_kilograms_a_second * (found["in_steam"] - found["in_feed"])
    names = ("start_temperature", "feed_temperature", "surroundings")
    warmest = max(float(given[f"cabinet_heat.{name}"]) for name in names)
    hold = given["cabinet_heat.hold_temperature"]
    found |= {
        "heat_to_supply": found["load_heat"] * found["multiplier"],
        "vent_power": vent,
        "standing_loss": found["multiplier"] * found["wall_loss"] + vent,
        "warmest_at_start": warmest,
        "temperatures_in_order": float(hold > warmest),
        "below_boiling": float(hold < 100),
    }
    return {f"cabinet_heat.{name}": value for name, value in found.items()}


def heat_up(given: Given, out: Results) -> Results:
    """Seconds to temperature with the power that the losses leave."""
    into_steam = 1000 * given["cabinet_run.power"] * given["cabinet_run.efficiency"]
    left = into_steam - 0.5 * 1000 * out["cabinet_heat.standing_loss"]
    joules = out["cabinet_heat.heat_to_supply"] * JOULES_IN_A_KILOWATT_HOUR
    worked = joules / left / SECONDS_IN_AN_HOUR if left > 0 else 0.0
    own = float(given["cabinet_run.own_heat_up_time"]) if given["cabinet_run.own_heat_up_time_given"] else None
    return {
        "steam_power": into_steam / 1000,
        "power_left": left / 1000,
        "worked_heat_up_time": worked,
        "heat_up_time": worked if own is None else own,
        "heat_up_difference": 0.0 if own is None else over(own - worked, worked),
    }


def hours(given: Given, out: Results, heating: float) -> Results:
    """How long a load takes the cabinet."""
    work = over(given["farm.bags_per_load"], given["cabinet_run.handling_rate"])
    clock = over(work, given["cabinet_run.people_loading"])
    cycle = clock + heating + given["cabinet_run.hold_time"] + given["cabinet_run.cool_down_time"]
    taken = cycle * out["farm.loads_a_week"]
    return {
        "handling_hours": work,
        "handling_time": clock,
        "cycle_time": cycle,
        "hours_between_loads": over(HOURS_IN_A_WEEK, out["farm.loads_a_week"]),
        "hours_taken_a_week": taken,
        "loads_fit": float(taken <= HOURS_IN_A_WEEK),
    }


def current(given: Given) -> Results:
    """Amps of the steam generator, and whether the service carries them."""
    volt_amperes = 1000 * given["cabinet_run.power"]
    single = over(volt_amperes, given["energy.voltage"])
    three = over(volt_amperes, given["energy.voltage"] * math.sqrt(3))
    amps = {"single-phase": single, "three-phase": three}.get(given["energy.phases"].lower(), 0.0)
    return {
        "single_phase_amps": single,
        "three_phase_amps": three,
        "amps": amps,
        "circuit_amps": amps * 5 / 4,
        "service_is_enough": float(amps * 5 / 4 <= given["energy.service_amps"]),
    }


def cabinet_run(given: Given, out: Results) -> Results:
    """Hours, power and energy of a load."""
    found = heat_up(given, out)
    drawn = over(out["cabinet_heat.standing_loss"], given["cabinet_run.efficiency"])
    found |= hours(given, out, found["heat_up_time"])
    found |= current(given)
    found["hold_power"] = drawn
    found["worked_energy"] = given["cabinet_run.power"] * found["heat_up_time"] + drawn * given["cabinet_run.hold_time"]
    found["reaches_temperature"] = float(found["steam_power"] > out["cabinet_heat.standing_loss"])
    return {f"cabinet_run.{name}": value for name, value in found.items()}


def own_or_worked(given: Given, name: str, worked: float) -> tuple[float, float]:
    """The grower's figure if there is one, and how far it is from the worked one."""
    if not given[f"{name}_given"]:
        return worked, 0.0
    return float(given[name]), over(float(given[name]) - worked, worked)


def energy_of_a_load(given: Given, out: Results) -> Results:
    """Kilowatt-hours of a load and what they cost."""
    energy, apart = own_or_worked(given, "cabinet.own_energy", float(out["cabinet_run.worked_energy"]))
    price = given["energy.electricity_price"]
    return {
        "energy_per_run": energy,
        "energy_difference": apart,
        "energy_per_bag": over(energy, given["farm.bags_per_load"]),
        "energy_per_dry": over(energy, out["cabinet_heat.load_dry"]),
        "energy_cost_per_run": energy * price,
        "hold_hour_cost": out["cabinet_run.hold_power"] * price,
        "meter_agrees": float(abs(apart) <= 0.25),
    }


def peak_of_a_month(given: Given, out: Results) -> Results:
    """The charge for the highest kW, shared by the loads of a month."""
    loads = out["farm.loads_a_week"] * given["farm.weeks_worked"] / 12
    own = given["energy.own_added_peak_given"]
    peak = given["energy.own_added_peak"] if own else given["cabinet_run.power"]
    month = peak * given["energy.demand_charge"]
    return {
        "loads_a_month": loads,
        "added_peak": peak,
        "demand_cost_per_month": month,
        "demand_cost_per_run": over(month, loads),
    }


def water_of_a_load(given: Given, out: Results, energy: float) -> Results:
    """Kilograms and litres of feed water."""
    heating, hold = out["cabinet_run.heat_up_time"], given["cabinet_run.hold_time"]
    vented = given["cabinet_heat.vent_flow"] * (hold + heating / 2)
    joules_a_kilogram = STEAM_AT_BOILING - OF_WATER * given["cabinet_heat.feed_temperature"]
    boiled = over(energy * given["cabinet_run.efficiency"] * JOULES_IN_A_KILOWATT_HOUR, joules_a_kilogram)
    kilograms = {"drains away hot": boiled, "goes back to the steam generator": vented}.get(
        given["cabinet_heat.condensate"].lower(), 0.0
    )
    worked = kilograms / COLD_WATER_KILOGRAMS_IN_A_LITRE
    litres, apart = own_or_worked(given, "cabinet.own_water", worked)
    return {
        "vent_steam": vented,
        "water_boiled": boiled,
        "make_up_water": kilograms,
        "worked_water": worked,
        "water_per_run": litres,
        "water_difference": apart,
        "water_cost_per_run": litres / 1000 * given["energy.water_price"],
    }


def cabinet_cost(given: Given, out: Results) -> Results:
    """What a load costs, and a bag in it."""
    found = {**energy_of_a_load(given, out), **peak_of_a_month(given, out)}
    found |= water_of_a_load(given, out, found["energy_per_run"])
    work = out["cabinet_run.handling_hours"] + given["cabinet.watching_hours"]
    paid = work * out["farm.labour_rate"]
    load = found["energy_cost_per_run"] + found["demand_cost_per_run"] + found["water_cost_per_run"] + paid
    found |= {
        "labour_hours_per_run": work,
        "labour_cost_per_run": paid,
        "cost_per_run": load,
        "cost_per_bag": over(load, given["farm.bags_per_load"]),
    }
    return {f"cabinet.{name}": value for name, value in found.items()}
