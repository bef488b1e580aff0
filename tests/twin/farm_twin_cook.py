"""Twin of how hard a bag is cooked: what temperatures count for, how fast the middle warms, one load by the hour."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tests.twin.farm_twin_ground import Given, Results, over, same

__all__ = ["cabinet_cook", "cook_curve", "core_heating", "lethal_rates", "vessel_cook"]

REFERENCE, HUNDRED = 121.1, 100.0
ROWS = 50
CLOSE, FAR = 1.0, 3.0
MARK = (190 - 32) / 1.8
PROBED = (150, 180, 190)
BAGS = ("slow", "expected", "fast")
LETHAL_ROWS = {fahrenheit: (fahrenheit - 32) / 1.8 for fahrenheit in (190, 200, 205, 208, 212, 240, 250, 259)}
"""Temperatures of the table of rates: degF in the names of its lines, and the same in degC."""


def counts_for(celsius: float, z: float) -> float:
    """How many minutes at 121.1 degC a minute at a temperature is worth; nothing where no z stands."""
    return float(10 ** over(celsius - REFERENCE, z))


def lethal_rates(given: Given, out: Results) -> Results:
    """An hour at each temperature, in seconds at 121.1 degC and in minutes at 100 degC."""
    z = float(given["cook.z_value"])
    in_boiling = 1 / counts_for(HUNDRED, z)
    found = {
        "at_boiling_point": 3600 * counts_for(out["site.boiling_point"], z),
        "boiling_for_reference": in_boiling,
    }
    for fahrenheit, celsius in LETHAL_ROWS.items():
        worth = counts_for(celsius, z)
        found[f"at_{fahrenheit}f"] = 3600 * worth
        found[f"at_{fahrenheit}f_boiling"] = 60 * worth * in_boiling
    return {f"lethal_rates.{name}": value for name, value in found.items()}


def bags_side_by_side(given: Given) -> float:
    """Bags that touch between two gaps; 0 for a row without end."""
    standing = given["cook.standing"].lower()
    if "pair" in standing:
        return 2.0
    return 1.0 if "gap" in standing else 0.0


def through(diffusivity: float, thickness: float) -> float:
    """Rate per hour at which a slab warms by its two faces in the end: (pi over thickness) squared times it."""
    return over(math.pi**2 * diffusivity, thickness**2)


def by_size(given: Given) -> Results:
    """Warming by the faces of the bag, or of the bags that stand together; the spread makes a slow bag of it."""
    thick = given["cook.thickness"] * bags_side_by_side(given)
    sides = (float(thick), float(given["cook.width"]), float(given["cook.length"]))
    usual = [through(given["cook.diffusivity"], side) for side in sides]
    quicker = over(given["cook.fast_diffusivity"], given["cook.diffusivity"])
    free = 3 if bags_side_by_side(given) else 2
    spread, rate = float(given["cook.spread"]), sum(usual)
    return {
        "bag_number": [1.0, 2.0, 3.0],
        "side": [-1.0, 0.0, 1.0],
        "pace": [1 - spread, 1.0, 1 + spread],
        "by_size": [rate - rate * spread, rate, rate * quicker],
        "bags_from_gap_to_gap": bags_side_by_side(given),
        "thickness_from_gap_to_gap": thick,
        "through_thickness": usual[0],
        "through_width": usual[1],
        "through_length": usual[2],
        "rate_by_size": rate,
        "best_rate_by_size": rate * quicker,
        "lag_factor": (4 / math.pi) ** free,
        "late_by_size": free * math.log(4 / math.pi),
    }


def reading(given: Given, fahrenheit: int) -> tuple[bool, float, float]:
    """Whether the probe was read there, the temperature in degC, and the hours."""
    name = f"cook.hours_to_{fahrenheit}f"
    return bool(given[f"{name}_given"]), (fahrenheit - 32) / 1.8, float(given[name])


def by_probe(given: Given, chamber: float, start: float) -> Results:
    """Warming by the fall of the gap between the first and the last reading; the course goes through the last one."""
    cool, warm, hot = (reading(given, fahrenheit) for fahrenheit in PROBED)
    first, last = cool if cool[0] else warm, hot if hot[0] else warm
    middle = warm[2] if warm[0] else first[2]
    first_gap, last_gap = chamber - first[1], chamber - last[1]
    fall = first_gap / last_gap if last_gap else 1.0
    rate = over(math.log(max(fall, 1.0)), last[2] - first[2])
    number = cool[0] + warm[0] + hot[0]
    from_start = (chamber - start) / last_gap if last_gap else 1.0

    def worked_at(hours: float) -> float:
        """Back or on from the last reading, but never cooler than loaded."""
        return chamber - (chamber - start) * math.exp(min(0.0, exponent(hours)))

    def exponent(hours: float) -> float:
        return rate * (last[2] - hours) - math.log(max(from_start, 1.0))

    return {
        "probe_start": start,
        "probe_first_gap": chamber - start,
        "fall_to_last_reading": from_start,
        "late_by_probe": exponent(0.0),
        "worked_at_first": worked_at(first[2]),
        "worked_at_middle": worked_at(middle),
        "worked_at_last": worked_at(last[2]),
        "readings_given": float(number),
        "first_reading": first[1],
        "last_reading": last[1],
        "first_hours": first[2],
        "last_hours": last[2],
        "first_reading_gap": first_gap,
        "last_reading_gap": last_gap,
        "reading_gap_fall": fall,
        "probe_rate": rate,
        "middle_hours": middle,
        "middle_fits": float(first[2] <= middle <= last[2]),
        "probe_counts": float(number >= 2 and rate > 0),
    }


def core_heating(given: Given, out: Results) -> Results:
    """How fast the middle of the coldest bag closes on its chamber."""
    cabinet = min(float(given["cabinet.hold_temperature"]), float(out["site.boiling_point"]))
    in_cabinet = probe_in(given) == "cabinet"
    chamber = cabinet if in_cabinet else float(out["vessel_heat.hold_temperature"])
    start = float(given["cabinet.start_temperature" if in_cabinet else "vessel.start_temperature"])
    found = {**by_size(given), **by_probe(given, chamber, start)}
    found |= {
        "cabinet_chamber": cabinet,
        "probe_chamber": chamber,
        "readings_in_order": float(found["readings_given"] == 0 or (found["probe_counts"] and found["middle_fits"])),
        "rates_in_order": float(found["rate_by_size"] <= found["best_rate_by_size"]),
        "meaning": 1.0 + found["probe_counts"],
    }
    return {f"core_heating.{name}": value for name, value in found.items()}


def probe_in(given: Given) -> str:
    """The steamer that the probe was in."""
    return "cabinet" if same(given["cook.probe_place"], "steam cabinet") else "vessel"


@dataclass(frozen=True)
class Warming:
    """How one bag warms in one steamer: by its share of the gap an hour, and how late it starts."""

    by_probe: bool
    late: float
    pace: float
    fall: float


def warming_in(steamer: str, given: Given, out: Results) -> dict[str, Warming]:
    """By the readings in the steamer that the probe was in, by the size of the bag in the other."""
    spread = float(given["cook.spread"])
    heat_up = float(out[f"{steamer}_run.heat_up_time"])
    probed = bool(out["core_heating.probe_counts"]) and probe_in(given) == steamer
    rate = float(out["core_heating.probe_rate" if probed else "core_heating.rate_by_size"])
    fast = rate + rate * spread if probed else float(out["core_heating.best_rate_by_size"])
    found = {}
    for bag, pace in zip(BAGS, (rate - rate * spread, rate, fast), strict=True):
        fall = fall_by_rising(max(0.0, pace * heat_up))
        by_shape = float(out["core_heating.late_by_size"]) - math.log(fall)
        late = float(out["core_heating.late_by_probe"]) if probed else by_shape
        found[bag] = Warming(probed, late, pace, fall)
    return found


def fall_by_rising(warming: float) -> float:
    """How much smaller the gap is after an even rise of so much warming than after a sudden one at its end.

    A sudden one lets the gap decay from then on. An even one is many small ones, each with its own time to decay: their
    mean gap, the integral of exp(-u) from 0 to the warming, over the warming.
    """
    return 1.0 if warming == 0 else warming / -math.expm1(-warming)


@dataclass(frozen=True)
class Load:
    """One load: chamber and start in degC, hold and heat-up in hours, and the figures that all loads share."""

    chamber: float
    start: float
    hold: float
    heat_up: float
    z: float


@dataclass(frozen=True)
class Cook:
    """One bag of a load."""

    load: Load
    warming: Warming

    def middle(self, hours: float) -> float:
        """Temperature in the middle, so many hours after the chamber has become hot."""
        gap = self.load.chamber - self.load.start
        return self.load.chamber - gap * math.exp(min(0.0, self.warming.late - self.warming.pace * hours))

    def counted(self) -> tuple[list[float], list[float], list[float]]:
        """Middle, what an hour counts for, and seconds counted so far, row by row."""
        temperatures, rates, so_far = [], [], []
        row, z = self.load.hold / ROWS, self.load.z
        before, seconds = counts_for(self.middle(0), z), 0.0
        for number in range(1, ROWS + 1):
            here = self.middle(number * row)
            worth = counts_for(here, z)
            seconds += 3600 * row * (before + worth) / 2
            temperatures.append(here)
            rates.append(3600 * worth)
            so_far.append(seconds)
            before = worth
        return temperatures, rates, so_far

    def closing(self, left: float) -> float:
        """Warming times hours until no more than this gap is left; 0 where it is left from the start."""
        gap = self.load.chamber - self.load.start
        if left == 0 or gap / left <= 1:
            return 0.0
        return max(0.0, self.warming.late + math.log(gap / left))

    def hours_until(self, left: float) -> float:
        """Hours until no more than this gap to the chamber is left; all of the hold where nothing warms."""
        return self.closing(left) / self.warming.pace if self.warming.pace else self.load.hold


def one_bag(cook: Cook) -> Results:
    """What comes of one bag of a load."""
    load, warming = cook.load, cook.warming
    temperatures, rates, so_far = cook.counted()
    minutes, hot = so_far[-1] / 60, cook.hours_until(CLOSE)
    cooking = load.hold - cook.hours_until(load.chamber - MARK) if load.chamber > MARK else 0.0
    return {
        "core": temperatures,
        "rate": rates,
        "so_far": so_far,
        "cooked": minutes,
        "boiled": minutes / counts_for(HUNDRED, load.z),
        "lost": load.hold - over(minutes / 60, counts_for(load.chamber, load.z)),
        "end": cook.middle(load.hold),
        "hot_after": hot,
        "core_hold": max(0.0, load.hold - hot),
        "at_mark": max(0.0, cooking),
        "warming": warming.pace,
        "hours_to_a_third": over(1, warming.pace),
        "late": warming.late,
        "heat_up_warming": max(0.0, warming.pace * load.heat_up),
        "heat_up_fall": warming.fall,
        "begin": cook.middle(0),
        "warming_to_close": cook.closing(CLOSE),
        "warming_to_mark": cook.closing(load.chamber - MARK),
    }


def one_load(load: Load, warming: dict[str, Warming], out: Results, *, idle: bool) -> Results:
    """A load with its slow bag, the bag by size or probe, and its fast bag."""
    gap, expected = load.chamber - load.start, warming["expected"]
    too_fast = expected.by_probe and expected.pace > out["core_heating.best_rate_by_size"]
    bags = [one_bag(Cook(load, warming[bag])) for bag in BAGS]
    found: Results = {name: [bag[name] for bag in bags] for name in bags[0]}
    _, by_size_or_probe, fast = found["end"]
    _, minutes, _ = found["cooked"]
    surest = by_size_or_probe if expected.by_probe else fast
    return found | {
        "hold": load.hold,
        "heat_up": load.heat_up,
        "first_gap": gap,
        "chamber_rate": 3600 * counts_for(load.chamber, load.z),
        "as_loaded": load.start,
        "gap_to_close": gap / CLOSE,
        "gap_to_mark": gap / (load.chamber - MARK) if load.chamber != MARK else 1.0,
        "hold_past_mark": load.hold if load.chamber > MARK else 0.0,
        "probe_counts": float(expected.by_probe),
        "probe_too_fast": float(too_fast),
        "probe_not_too_fast": float(idle or not too_fast),
        "hours": [number * load.hold / ROWS for number in range(1, ROWS + 1)],
        "row_time": load.hold * 60 / ROWS,
        "end_by_size_or_probe": by_size_or_probe,
        "cooked_by_size_or_probe": minutes,
        "surest_end": surest,
        "middle_gets_hot": float(idle or load.chamber - surest <= FAR),
        "middle_is_known": float(idle or expected.by_probe or load.chamber - by_size_or_probe <= FAR),
    }


def cabinet_cook(given: Given, out: Results) -> Results:
    """One load of the steam cabinet."""
    load = Load(
        chamber=float(out["core_heating.cabinet_chamber"]),
        start=min(float(given["cabinet.start_temperature"]), float(out["core_heating.cabinet_chamber"])),
        hold=float(given["cabinet.hold_time"]),
        heat_up=float(out["cabinet_run.heat_up_time"]),
        z=float(given["cook.z_value"]),
    )
    idle = out["cabinet_heat.in_use"] == 0
    found = one_load(load, warming_in("cabinet", given, out), out, idle=idle)
    return {f"cabinet_cook.{name}": value for name, value in found.items()}


def vessel_cook(given: Given, out: Results) -> Results:
    """One run of the pressure vessel."""
    load = Load(
        chamber=float(out["vessel_heat.hold_temperature"]),
        start=min(float(given["vessel.start_temperature"]), float(out["vessel_heat.hold_temperature"])),
        hold=float(given["vessel.hold_time"]),
        heat_up=float(out["vessel_run.heat_up_time"]),
        z=float(given["cook.z_value"]),
    )
    idle = out["vessel_heat.in_use"] == 0
    found = one_load(load, warming_in("vessel", given, out), out, idle=idle)
    return {f"vessel_cook.{name}": value for name, value in found.items()}


def cook_curve(given: Given, out: Results) -> Results:
    """The course of the steamer in use, up to the end of its hold."""
    name = "vessel_cook" if out["vessel_heat.in_use"] else "cabinet_cook"
    found = {which: out[f"{name}.{which}"] for which in ("hold", "hours", "core")}
    found["expected_end"] = out[f"{name}.end"][1]
    return {f"cook_curve.{name}": value for name, value in found.items()}
