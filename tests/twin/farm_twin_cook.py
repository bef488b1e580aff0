"""Twin of how hard a bag is cooked: what temperatures count for, how fast the middle warms, one load by the hour."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tests.twin.farm_twin_ground import Given, Results, over, same

__all__ = ["cabinet_cook", "core_heating", "lethal_rates", "vessel_cook"]

REFERENCE, HUNDRED = 121.1, 100.0
ROWS = 192
CLOSE, FAR = 1.0, 3.0
MARK = (190 - 32) / 1.8
PROBED = (150, 180, 190)
LETHAL_ROWS = {fahrenheit: (fahrenheit - 32) / 1.8 for fahrenheit in (190, 200, 205, 208, 212, 240, 250, 259)}
"""Temperatures of the table of rates: degF in the names of its lines, and the same in degC."""


def counts_for(celsius: float, z: float) -> float:
    """How many minutes at 121.1 degC a minute at a temperature is worth; nothing where no z stands."""
    return float(10 ** over(celsius - REFERENCE, z))


def lethal_rates(given: Given, out: Results) -> Results:
    """An hour at each temperature, in seconds at 121.1 degC and in minutes at 100 degC."""
    z = float(given["lethal_rates.z_value"])
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
    standing = given["core_heating.standing"].lower()
    if "pair" in standing:
        return 2.0
    return 1.0 if "gap" in standing else 0.0


def through(diffusivity: float, thickness: float) -> float:
    """Rate per hour at which a slab warms by its two faces in the end: (pi over thickness) squared times it."""
    return over(math.pi**2 * diffusivity, thickness**2)


def by_size(given: Given) -> Results:
    """Warming by the faces of the bag, or of the bags that stand together."""
    thick = given["core_heating.thickness"] * bags_side_by_side(given)
    sides = (float(thick), float(given["core_heating.width"]), float(given["core_heating.length"]))
    usual = [through(given["core_heating.diffusivity"], side) for side in sides]
    quicker = over(given["core_heating.fast_diffusivity"], given["core_heating.diffusivity"])
    free = 3 if bags_side_by_side(given) else 2
    return {
        "bags_from_gap_to_gap": bags_side_by_side(given),
        "thickness_from_gap_to_gap": thick,
        "through_thickness": usual[0],
        "through_width": usual[1],
        "through_length": usual[2],
        "rate_by_size": sum(usual),
        "best_rate_by_size": sum(usual) * quicker,
        "lag_factor": (4 / math.pi) ** free,
        "late_by_size": free * math.log(4 / math.pi),
    }


def reading(given: Given, fahrenheit: int) -> tuple[bool, float, float]:
    """Whether the probe was read there, the temperature in degC, and the hours."""
    name = f"core_heating.hours_to_{fahrenheit}f"
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
    cabinet = min(float(given["cabinet_heat.hold_temperature"]), float(out["site.boiling_point"]))
    in_cabinet = probe_in(given) == "cabinet"
    chamber = cabinet if in_cabinet else float(out["vessel_heat.hold_temperature"])
    start = float(given["cabinet_heat.start_temperature" if in_cabinet else "vessel_heat.start_temperature"])
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
    return "cabinet" if same(given["core_heating.probe_place"], "steam cabinet") else "vessel"


@dataclass(frozen=True)
class Warming:
    """How fast the middle warms in one steamer, in shares of the gap an hour, and how late it starts."""

    by_probe: bool
    late: dict[str, float]
    paces: dict[str, float]
    falls: dict[str, float]


def warming_in(steamer: str, given: Given, out: Results) -> Warming:
    """By the readings in the steamer that the probe was in, by the size of the bag in the other."""
    spread = float(given["core_heating.spread"])
    heat_up = float(out[f"{steamer}_run.heat_up_time"])
    if out["core_heating.probe_counts"] and probe_in(given) == steamer:
        rate = float(out["core_heating.probe_rate"])
        paces = {"slow": rate - rate * spread, "expected": rate, "fast": rate + rate * spread}
        falls = {name: fall_by_rising(max(0.0, pace * heat_up)) for name, pace in paces.items()}
        return Warming(True, dict.fromkeys(paces, float(out["core_heating.late_by_probe"])), paces, falls)
    rate, best = float(out["core_heating.rate_by_size"]), float(out["core_heating.best_rate_by_size"])
    paces = {"slow": rate - rate * spread, "expected": rate, "fast": best}
    falls = {name: fall_by_rising(max(0.0, pace * heat_up)) for name, pace in paces.items()}
    late = {name: float(out["core_heating.late_by_size"]) - math.log(fall) for name, fall in falls.items()}
    return Warming(False, late, paces, falls)


def fall_by_rising(warming: float) -> float:
    """How much smaller the gap is after an even rise of so much warming than after a sudden one at its end.

    A sudden one lets the gap decay from then on. An even one is many small ones, each with its own time to decay: their
    mean gap, the integral of exp(-u) from 0 to the warming, over the warming.
    """
    return 1.0 if warming == 0 else warming / -math.expm1(-warming)


@dataclass(frozen=True)
class Cook:
    """One load: chamber and start in degC, hold, row and heat-up in hours, and the figures that all loads share."""

    chamber: float
    start: float
    hold: float
    row: float
    heat_up: float
    warming: Warming
    z: float

    def middle(self, pace: str, hours: float) -> float:
        """Temperature in the middle, so many hours after the chamber has become hot."""
        gap, rate = self.chamber - self.start, self.warming.paces[pace]
        return self.chamber - gap * math.exp(min(0.0, self.warming.late[pace] - rate * hours))

    def counted(self, pace: str) -> tuple[list[float], list[float], list[float]]:
        """Middle, what an hour counts for, and seconds counted so far, row by row."""
        temperatures, rates, so_far = [], [], []
        before, seconds = counts_for(self.middle(pace, 0), self.z), 0.0
        for number in range(1, ROWS + 1):
            here = self.middle(pace, number * self.row)
            worth = counts_for(here, self.z)
            hours = min(number * self.row, self.hold) - min((number - 1) * self.row, self.hold)
            seconds += 3600 * hours * (before + worth) / 2
            temperatures.append(here)
            rates.append(3600 * worth)
            so_far.append(seconds)
            before = worth
        return temperatures, rates, so_far

    def closing(self, pace: str, left: float) -> float:
        """Warming times hours until no more than this gap is left; 0 where it is left from the start."""
        gap = self.chamber - self.start
        if left == 0 or gap / left <= 1:
            return 0.0
        return max(0.0, self.warming.late[pace] + math.log(gap / left))

    def hours_until(self, pace: str, left: float) -> float:
        """Hours until no more than this gap to the chamber is left; all of the hold where nothing warms."""
        rate = self.warming.paces[pace]
        return self.closing(pace, left) / rate if rate else self.hold


def one_pace(cook: Cook, name: str) -> Results:
    """A load at one pace of warming; `name` is slow, expected or fast."""
    temperatures, rates, so_far = cook.counted(name)
    end = "" if name == "expected" else f"_{name}"
    minutes, hot = so_far[-1] / 60, cook.hours_until(name, CLOSE)
    cooking = cook.hold - cook.hours_until(name, cook.chamber - MARK) if cook.chamber > MARK else 0.0
    return {
        f"core_{name}": temperatures,
        f"rate_{name}": rates,
        f"so_far_{name}": so_far,
        f"cooked{end}": minutes,
        f"boiled{end}": minutes / counts_for(HUNDRED, cook.z),
        f"lost{end}": cook.hold - over(minutes / 60, counts_for(cook.chamber, cook.z)),
        f"end{end}": cook.middle(name, cook.hold),
        f"hot_after{end}": hot,
        f"core_hold{end}": max(0.0, cook.hold - hot),
        f"at_mark{end}": max(0.0, cooking),
        f"warming{end}": cook.warming.paces[name],
        f"late{end}": cook.warming.late[name],
        f"heat_up_warming{end}": max(0.0, cook.warming.paces[name] * cook.heat_up),
        f"heat_up_fall{end}": cook.warming.falls[name],
        f"begin{end}": cook.middle(name, 0),
        f"warming_to_close{end}": cook.closing(name, CLOSE),
        f"warming_to_mark{end}": cook.closing(name, cook.chamber - MARK),
    }


def one_load(cook: Cook, out: Results, *, idle: bool) -> Results:
    """A load at the slow, the expected and the fast pace."""
    gap, expected = cook.chamber - cook.start, cook.warming.paces["expected"]
    too_fast = cook.warming.by_probe and expected > out["core_heating.best_rate_by_size"]
    found: Results = {
        "hold": cook.hold,
        "heat_up": cook.heat_up,
        "first_gap": gap,
        "chamber_rate": 3600 * counts_for(cook.chamber, cook.z),
        "as_loaded": cook.start,
        "gap_to_close": gap / CLOSE,
        "gap_to_mark": gap / (cook.chamber - MARK) if cook.chamber != MARK else 1.0,
        "hold_past_mark": cook.hold if cook.chamber > MARK else 0.0,
        "probe_counts": float(cook.warming.by_probe),
        "hours_to_a_third": over(1, expected),
        "probe_too_fast": float(too_fast),
        "probe_not_too_fast": float(idle or not too_fast),
        "hours": [number * cook.row for number in range(1, ROWS + 1)],
        "hours_held": [min(number * cook.row, cook.hold) for number in range(1, ROWS + 1)],
        "hours_left_over": max(0.0, cook.hold - ROWS * cook.row),
    }
    for name in cook.warming.paces:
        found |= one_pace(cook, name)
    found["surest_end"] = found["end" if cook.warming.by_probe else "end_fast"]
    found["middle_gets_hot"] = float(idle or cook.chamber - found["surest_end"] <= FAR)
    found["middle_is_known"] = float(idle or cook.warming.by_probe or cook.chamber - found["end"] <= FAR)
    found["rows_are_enough"] = float(idle or found["hours_left_over"] == 0)
    return found


def cabinet_cook(given: Given, out: Results) -> Results:
    """One load of the steam cabinet."""
    cook = Cook(
        chamber=float(out["core_heating.cabinet_chamber"]),
        start=min(float(given["cabinet_heat.start_temperature"]), float(out["core_heating.cabinet_chamber"])),
        hold=float(given["cabinet_run.hold_time"]),
        row=float(given["cabinet_cook.cabinet_step"]) / 60,
        heat_up=float(out["cabinet_run.heat_up_time"]),
        warming=warming_in("cabinet", given, out),
        z=float(given["lethal_rates.z_value"]),
    )
    idle = out["cabinet_heat.in_use"] == 0
    return {f"cabinet_cook.{name}": value for name, value in one_load(cook, out, idle=idle).items()}


def vessel_cook(given: Given, out: Results) -> Results:
    """One run of the pressure vessel."""
    cook = Cook(
        chamber=float(out["vessel_heat.hold_temperature"]),
        start=min(float(given["vessel_heat.start_temperature"]), float(out["vessel_heat.hold_temperature"])),
        hold=float(given["vessel_run.hold_time"]),
        row=float(given["vessel_cook.vessel_step"]) / 60,
        heat_up=float(out["vessel_run.heat_up_time"]),
        warming=warming_in("vessel", given, out),
        z=float(given["lethal_rates.z_value"]),
    )
    idle = out["vessel_heat.in_use"] == 0
    return {f"vessel_cook.{name}": value for name, value in one_load(cook, out, idle=idle).items()}
