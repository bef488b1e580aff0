"""Twin of the climate of both rooms: heat that goes out through walls and with the air, beside heat that comes in."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, nothing_left, over, same

__all__ = ["climate"]

MONTHS = 12
DAYS_IN_A_WEEK = 7
HOURS_IN_A_DAY = 24
HOURS_IN_A_WEEK = 168
SECONDS_IN_AN_HOUR = 3600
WATTS = 1000
"""In a kilowatt."""
JOULES_TO_WARM_A_CUBIC_METRE_OF_AIR = 1200.0
KILOGRAMS_IN_A_LITRE_OF_MIST = 0.99821
KILOJOULES_TO_EVAPORATE_A_KILOGRAM = 2453.5
ROOMS = {"incubation_climate": "incubation_room", "fruiting_climate": "fruiting_room"}
"""Each climate and the room that has it."""


def outdoors(given: Given, out: Results) -> dict[str, float]:
    """Hours of a month, and money for a kilowatt-hour of what the rooms are heated with."""
    by = given["climate.heated_by"]
    burnt = float(out["energy.propane_heat"] if same(by, "propane") else given["energy.gas_price"])
    return {
        "hours": float(given["farm.weeks_worked"]) * HOURS_IN_A_WEEK / MONTHS,
        "fuel_price": burnt,
        "heating_price": float(given["energy.electricity_price"]) if same(by, "electricity") else burnt,
    }


def the_room(given: Given, out: Results, place: str) -> dict[str, float]:
    """Watts that go out for each degree, and kilowatts that bags, fans and lamps give off and mist takes up."""
    taken = float(out[f"{ROOMS[place]}.taken"])
    walls = over(given[f"{place}.outer_area"], given[f"{place}.insulation"])
    air_an_hour = float(given[f"{place}.air_volume"]) * float(given[f"{place}.air_changes"])
    air = air_an_hour * JOULES_TO_WARM_A_CUBIC_METRE_OF_AIR / SECONDS_IN_AN_HOUR
    bags = float(given[f"{place}.bag_heat"]) * taken / WATTS
    lamps = float(given[f"{place}.lamps"]) * float(given[f"{place}.lit"]) / HOURS_IN_A_DAY
    known = bool(given[f"{place}.outer_area_given"] and given[f"{place}.air_volume_given"])
    misted = float(given[f"{place}.mist"]) * taken if known else 0.0
    gained = bags + float(given[f"{place}.fans"]) + lamps
    taken_up = (
        misted
        * KILOGRAMS_IN_A_LITRE_OF_MIST
        * KILOJOULES_TO_EVAPORATE_A_KILOGRAM
        / (HOURS_IN_A_DAY * SECONDS_IN_AN_HOUR)
    )
    return {
        "known": float(known),
        "wall_leak": walls,
        "air_leak": air,
        "leak": walls + air,
        "bags_warm": bags,
        "lamps_on_average": lamps,
        "gained": gained,
        "misted": misted,
        "evaporating": taken_up,
        "gain": gained - taken_up,
    }


def by_month(given: Given, place: str, room: dict[str, float], hours: float) -> dict[str, list[float]]:
    """Kilowatts that go out in each month and that are wanted, and kilowatt-hours put in or taken away."""
    names = ("difference", "lost", "wanted", "heat", "taken_out", "cold")
    found: dict[str, list[float]] = {name: [] for name in names}
    for outside in given["climate.outside"]:
        warmer = float(given[f"{place}.temperature"]) - float(outside)
        goes_out = room["leak"] * warmer / WATTS
        wanted = goes_out - room["gain"] if room["known"] else 0.0
        found["difference"].append(warmer)
        found["lost"].append(goes_out)
        found["wanted"].append(wanted)
        found["heat"].append(wanted * hours if wanted > 0 else 0.0)
        found["taken_out"].append(-wanted * hours if wanted < 0 else 0.0)
        by_air = warmer >= float(given["climate.free_cooling"])
        found["cold"].append(0.0 if by_air else found["taken_out"][-1])
    return found


def bought_in_a_year(given: Given, place: str, room: dict[str, float], heat: float, cold: float) -> dict[str, float]:
    """Kilowatt-hours of heating, cooling, light and fans, and cubic metres of water, in the weeks worked."""
    days = DAYS_IN_A_WEEK * float(given["farm.weeks_worked"])
    return {
        "heating_energy": over(heat, given["climate.heating_performance"]),
        "cooling_energy": over(cold, given["climate.cooling_performance"]),
        "light_energy": float(given[f"{place}.lamps"]) * float(given[f"{place}.lit"]) * days,
        "fan_energy": float(given[f"{place}.fans"]) * HOURS_IN_A_DAY * days,
        "water": room["misted"] / 1000 * days,
    }


def paid_in_a_year(given: Given, bought: dict[str, float], heating_price: float) -> dict[str, float]:
    """The bills of one room."""
    price = float(given["energy.electricity_price"])
    bills = {
        "heating_cost": bought["heating_energy"] * heating_price,
        "cooling_cost": bought["cooling_energy"] * price,
        "light_cost": bought["light_energy"] * price,
        "fan_cost": bought["fan_energy"] * price,
    }
    return bills | {
        "energy_cost": sum(bills.values()),
        "water_cost": bought["water"] * float(given["energy.water_price"]),
    }


def balance(room: dict[str, float], months: dict[str, list[float]], hours: float) -> dict[str, float]:
    """A year's heat, cold, heat lost and heat gained, and whether what comes in is what goes out."""
    heat, out = sum(months["heat"]), sum(months["taken_out"])
    lost = sum(months["lost"]) * hours if room["known"] else 0.0
    gained = room["gained"] * hours * MONTHS if room["known"] else 0.0
    evaporated = room["evaporating"] * hours * MONTHS if room["known"] else 0.0
    return {
        "heat_a_year": heat,
        "taken_out_a_year": out,
        "cold_a_year": sum(months["cold"]),
        "lost_a_year": lost,
        "gained_a_year": gained,
        "heat_in": heat + gained,
        "evaporated_a_year": evaporated,
        "heat_out": lost + evaporated + out,
        "heat_adds_up": nothing_left(heat + gained - out - lost - evaporated, heat + gained, out),
    }


def one_room(given: Given, out: Results, place: str, outside: dict[str, float]) -> Results:
    """The climate of one room."""
    room = the_room(given, out, place)
    months = by_month(given, place, room, outside["hours"])
    counted = {"hours": outside["hours"] if room["known"] else 0.0}
    year = balance(room, months, outside["hours"])
    bought = bought_in_a_year(given, place, room, year["heat_a_year"], year["cold_a_year"])
    shown = {name: row for name, row in months.items() if name != "taken_out"}
    return {**room, **counted, **shown, **year, **bought, **paid_in_a_year(given, bought, outside["heating_price"])}


def climate(given: Given, out: Results) -> Results:
    """Both rooms, each for itself and the two together."""
    outside = outdoors(given, out)
    rooms = {place: one_room(given, out, place, outside) for place in ROOMS}
    found: Results = {f"outdoors.{name}": value for name, value in outside.items()}
    for place, room in rooms.items():
        found |= {f"{place}.{name}": value for name, value in room.items() if name != "heat"}
    for which in ("heat", "cold"):
        found[f"room_energy.{which}"] = [
            sum(pair) for pair in zip(*(each[which] for each in rooms.values()), strict=True)
        ]
    return found | {
        "room_energy.known": float(all(room["known"] for room in rooms.values())),
        "room_energy.cost": sum(room["energy_cost"] for room in rooms.values()),
        "room_energy.water_cost": sum(room["water_cost"] for room in rooms.values()),
    }
