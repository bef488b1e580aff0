"""Twin of both steamers, cabinet and pressure vessel: heats in joules, powers in watts, times in seconds."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import Given, Results, over, same, whole_up

__all__ = [
    "COLD_WATER_KILOGRAMS_IN_A_LITRE",
    "JOULES_IN_A_KILOWATT_HOUR",
    "bags_in_a_load",
    "cabinet_heat",
    "heats_with",
    "in_use",
    "usual_efficiency",
    "vessel_heat",
]

JOULES_IN_A_KILOWATT_HOUR = 3.6e6
SECONDS_IN_AN_HOUR = 3600.0

ROOM_FOR_A_BAG, STEEL_FOR_A_BAG, POWER_FOR_A_BAG = 0.0217, 0.4, 0.036
"""Cubic metres, kilograms and kilowatts of a cabinet, where they are not typed."""
# J/kg/K: polypropylene and stainless steel from tables of materials.
OF_POLYPROPYLENE, OF_STEEL = 1700.0, 500.0
STEAM_AT_BOILING, STEAM_RISE = 2_675_570.0, 1530.0
"""J/kg of saturated steam at 100 degC above water at the freezing point, and how much more for each K."""
COLD_WATER_KILOGRAMS_IN_A_LITRE = 0.99821
ELECTRIC, BURNER = 0.96, 0.8


def in_use(given: Given, place: str) -> bool:
    """Whether the farm steams in this steamer; the checks of the other one are silent."""
    return same(given["steamer.kind"], "cabinet" if place == "cabinet" else "pressure vessel")


def heats_with(given: Given, place: str, what: str) -> bool:
    """Whether this is what heats a steamer."""
    return same(given[f"{place}.fuel"], what)


def usual_efficiency(given: Given, place: str) -> float:
    """Share of the energy that usually gets into the steam."""
    shares = {"electricity": ELECTRIC, "natural gas": BURNER, "propane": BURNER}
    return shares.get(given[f"{place}.fuel"].lower(), 0.0)


def bags_in_a_load(given: Given, place: str) -> float:
    """Places that are filled; of a cabinet of no known size, half of a week's bags."""
    if place == "vessel":
        return float(given["vessel.bags_per_run"])
    if given["farm.bags_per_load_given"]:
        return float(given["farm.bags_per_load"])
    return whole_up(given["farm.bags_filled_a_week"] / 2)


def wood_heat_of_a_kilogram(cold: float, hot: float) -> float:
    """J to warm a kilogram of dry wood, the integral of 0.1031 + 0.003867 T kJ/kg/K (Wood Handbook 2010, ch. 4)."""
    before, after = cold + 273.15, hot + 273.15
    return 1000 * (0.1031 * (after - before) + 0.003867 * (after**2 - before**2) / 2)


def wood_capacity(cold: float, hot: float) -> float:
    """J/kg/K of dry wood on its way from cold to hot; at one temperature the equation itself."""
    if hot == cold:
        return 1000 * (0.1031 + 0.003867 * (cold + 273.15))
    return wood_heat_of_a_kilogram(cold, hot) / (hot - cold)


def in_water(celsius: float) -> float:
    """J in a kilogram of liquid water above its freezing point: a cubic through the steam tables."""
    return 4204.03 * celsius - 0.547787 * celsius**2 + 4.16115e-3 * celsius**3


def bound_water(water: float, dry: float, cold: float, hot: float) -> Results:
    """What the water that wood binds, 30 % of its weight at most, adds (Wood Handbook 2010, ch. 4, water in percent)."""
    percent = min(30.0, 100 * over(water, dry))
    kelvin = (cold + hot) / 2 + 273.15
    correction = percent * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * percent)
    return {
        "bound_share": percent / 100,
        "bound_correction": correction,
        "bound_capacity": correction * (1 + percent / 100),
    }


def of_its_size(given: Given, what: str, a_bag: float) -> dict[str, float]:
    """What a cabinet for so many bags usually has, and what this one is taken to have."""
    usual = bags_in_a_load(given, "cabinet") * a_bag
    typed = bool(given[f"cabinet.{what}_given"])
    return {f"usual_{what}": usual, f"{what}_counted": float(given[f"cabinet.{what}"]) if typed else usual}


def steel_warmed(given: Given, place: str) -> float:
    """Kilograms of racks and shell."""
    if place == "cabinet":
        return of_its_size(given, "steel", STEEL_FOR_A_BAG)["steel_counted"]
    return float(given[f"{place}.steel"])


def kilowatts_of(given: Given, place: str) -> float:
    """Of generator or burner; a cabinet's by its size where it is not typed."""
    if place == "cabinet":
        return of_its_size(given, "power", POWER_FOR_A_BAG)["power_counted"]
    return float(given[f"{place}.power"])


def load_heats(given: Given, out: Results, place: str, hot: float) -> Results:
    """What a load weighs and takes up."""
    cold = float(given[f"{place}.start_temperature"])
    bags = bags_in_a_load(given, place)
    dry, water = bags * out["bag.dry_mass"], bags * out["bag.water_mass"]
    plastic = bags * given["bag.bag_mass"] / 1000
    bound = bound_water(float(water), float(dry), cold, hot)
    joules = {
        "wood_heat": dry * (wood_heat_of_a_kilogram(cold, hot) + 1000 * bound["bound_capacity"] * (hot - cold)),
        "water_heat": water * (in_water(hot) - in_water(cold)),
        "bag_heat": plastic * OF_POLYPROPYLENE * (hot - cold),
        "steel_heat": steel_warmed(given, place) * OF_STEEL * (hot - cold),
    }
    every = sum(joules.values())
    return {
        "load_dry": dry,
        "load_water": water,
        "load_plastic": plastic,
        "rise": hot - cold,
        "mean_temperature": cold + (hot - cold) / 2,
        "mean_absolute_temperature": (cold + 273.15 + hot + 273.15) / 2,
        "wood_capacity": wood_capacity(cold, hot) / 1000,
        **bound,
        "start_degrees": cold,
        "feed_degrees": float(given[f"{place}.feed_temperature"]),
        "hold_degrees": hot,
        "in_start": in_water(cold) / 1000,
        **{name: each / JOULES_IN_A_KILOWATT_HOUR for name, each in joules.items()},
        "load_heat": every / JOULES_IN_A_KILOWATT_HOUR,
        "water_share": over(joules["water_heat"], every),
    }


def wall_lines(given: Given, place: str, area: float, hot: float) -> Results:
    """What goes through the shell."""
    difference = hot - given[f"{place}.surroundings"]
    watts = over(area * difference, given[f"{place}.insulation"])
    return {"inside_area": area, "wall_difference": difference, "wall_loss": watts / 1000}


def condensate(given: Given, place: str, hot: float, steam: float, boiled: float) -> Results:
    """Joules that a kilogram of steam brings, and that a kilogram of condensate takes away."""
    feed, drain = in_water(boiled), in_water(hot)
    drained = over(steam - feed, steam - drain)
    is_drained = same(given[f"{place}.condensate"], "drains away hot")
    return {
        "in_feed": feed / 1000,
        "in_drain": drain / 1000,
        "in_steam": steam / 1000,
        "drained_multiplier": drained,
        "multiplier": drained if is_drained else 1.0,
    }


def losses(given: Given, place: str, found: Results, hot: float) -> Results:
    """Vent, standing loss, and whether the hold is the hottest."""
    kilograms_a_second = given[f"{place}.vent_flow"] / SECONDS_IN_AN_HOUR
    vent = kilograms_a_second * (found["in_steam"] - found["in_feed"])
    names = ("start_temperature", "feed_temperature", "surroundings")
    warmest = max(float(given[f"{place}.{name}"]) for name in names)
    return {
        "vent_power": vent,
        "standing_loss": found["multiplier"] * found["wall_loss"] + vent,
        "warmest_at_start": warmest,
        "sound": float(hot > warmest),
        "temperatures_in_order": float(hot > warmest or not in_use(given, place)),
    }


def cabinet_heat(given: Given, out: Results) -> Results:
    """All heats of the cabinet."""
    hot = float(given["cabinet.hold_temperature"])
    width, height = (float(given[f"cabinet.{side}"]) for side in ("width", "height"))
    size = of_its_size(given, "length", over(ROOM_FOR_A_BAG, width * height))
    length = size["length_counted"]
    walls = 2 * length * height + 2 * width * height
    area = 2 * (length * width + width * height + length * height)
    found = {**load_heats(given, out, "cabinet", hot), **wall_lines(given, "cabinet", area, hot)}
    found |= condensate(given, "cabinet", hot, STEAM_AT_BOILING, float(given["cabinet.feed_temperature"]))
    found |= losses(given, "cabinet", found, hot)
    below = hot < out["site.boiling_point"]
    found |= size | of_its_size(given, "steel", STEEL_FOR_A_BAG)
    found |= {
        "in_use": float(in_use(given, "cabinet")),
        "floor_and_roof": area - walls,
        "walls": walls,
        "heat_to_supply": found["load_heat"] * found["multiplier"],
        "below_boiling": float(below or not in_use(given, "cabinet")),
        "sound": float(below and found["sound"] == 1),
    }
    return {f"cabinet_heat.{name}": value for name, value in found.items()}


def standing_water(given: Given, hot: float) -> Results:
    """Water put in by hand, which is warmed before it boils."""
    by_hand = same(given["vessel.feed"], "put in before each load")
    kilograms = given["vessel.water_put_in"] * COLD_WATER_KILOGRAMS_IN_A_LITRE if by_hand else 0.0
    tap = in_water(float(given["vessel.feed_temperature"]))
    return {
        "by_hand": float(by_hand),
        "standing_water": kilograms,
        "in_tap": tap / 1000,
        "standing_heat": kilograms * (in_water(hot) - tap) / JOULES_IN_A_KILOWATT_HOUR,
    }


def vessel_heat(given: Given, out: Results) -> Results:
    """All heats of the pressure vessel."""
    hot = float(out["vessel_steam.absolute_temperature"]) - 273.15
    across, along = given["vessel.diameter"], given["vessel.length"]
    wall, end = math.pi * across * along, math.pi * (across / 2) ** 2
    found = {**load_heats(given, out, "vessel", hot), **wall_lines(given, "vessel", wall + 2 * end, hot)}
    found |= standing_water(given, hot)
    boiled = hot if found["by_hand"] else float(given["vessel.feed_temperature"])
    steam = STEAM_AT_BOILING + STEAM_RISE * (hot - 100)
    found |= condensate(given, "vessel", hot, steam, boiled)
    found |= losses(given, "vessel", found, hot)
    purge = given["vessel.purge_steam"] * (steam - in_water(boiled)) / JOULES_IN_A_KILOWATT_HOUR
    working, rated = given["vessel.working_pressure"], given["vessel.rated_pressure"]
    found |= {
        "in_use": float(in_use(given, "vessel")),
        "within_rating": float(working <= rated or not in_use(given, "vessel")),
        "hold_temperature": hot,
        "wall": wall,
        "end": end,
        "purge_heat": purge,
        "heat_to_supply": found["load_heat"] * found["multiplier"] + purge + found["standing_heat"],
    }
    return {f"vessel_heat.{name}": value for name, value in found.items()}
