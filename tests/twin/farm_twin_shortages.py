"""Twin of what is short: places, loads, hands and cold room, held against every week of the plan."""

from __future__ import annotations

from tests.twin.farm_twin_calendar import Calendar
from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same, whole_up
from tests.twin.farm_twin_week_steps import DAYS_IN_A_WEEK, Weekly, changed

__all__ = ["shortages"]

AS_MUCH_AS_EVER = 1e9
"""Stands for room that is never full, where its size is not known."""
AHEAD = 20
"""Weeks that the schedule looks beyond the plan."""


def beyond(wanted: Weekly, had: Weekly) -> Weekly:
    """What is missing, week by week."""
    return [max(want - have, 0.0) for want, have in zip(wanted, had, strict=True)]


def lead(days: float) -> Results:
    """Days before filling as weeks, whole ones, as it is done in a week; none for what is wanted only afterwards."""
    in_weeks = max(days, 0.0) / DAYS_IN_A_WEEK
    whole = whole_up(in_weeks)
    return {"days": days, "in_weeks": in_weeks, "whole": whole, "within_reach": float(whole + 1 <= AHEAD)}


def ahead(weekly: Weekly, days: float) -> Weekly:
    """What is done so many days before the bags of each week are filled, whole weeks before."""
    weeks = int(whole_up(max(days, 0.0) / DAYS_IN_A_WEEK))
    return [weekly[min(row + weeks, len(weekly) - 1)] for row in range(len(weekly))]


def leads(given: Given, out: Results) -> tuple[float, float]:
    """Days from steaming own spawn, and from ordering or starting spawn, to filling."""
    bench = float(out["lags.to_bench"])
    bought = float(given["spawn.lead_time"]) * DAYS_IN_A_WEEK
    if not out["spawn_source.made"]:
        return 0.0, bought - bench
    return float(out["own_spawn.days_before"][0]) - bench, float(out["own_spawn.lead_days"]) - bench


def rooms(given: Given, out: Results, when: Calendar) -> Results:
    """Places of both rooms."""
    of_spawn = over(out["incubation_room.spawn_places"], given["farm.bags_filled_a_week"])
    pairs = zip(out["in_process.incubating"], out["filling.filled"], strict=True)
    taken = [bags + filled * of_spawn for bags, filled in pairs]
    had = {
        room: float(out[f"{room}_room.places"]) if out[f"{room}_room.known"] else AS_MUCH_AS_EVER
        for room in ("incubation", "fruiting")
    }
    fruiting = [had["fruiting"] + more for more in changed(given, when, "more_fruiting")]
    incubation = [had["incubation"] + more for more in changed(given, when, "more_incubation")]
    return {
        "spawn_places": of_spawn,
        "incubation_taken": taken,
        "incubation_had": had["incubation"],
        "incubation_short": beyond(taken, incubation),
        "fruiting_had": had["fruiting"],
        "fruiting_places": fruiting,
        "fruiting_short": beyond(out["in_process.places"], fruiting),
    }


def steamer(given: Given, out: Results, when: Calendar, days: float) -> Results:
    """Loads, own spawn steamed between the bags."""
    filled = out["filling.filled"]
    spawn = ahead(filled, days)
    share = float(out["own_spawn.places_per_bag"]) if out["spawn_source.made"] else 0.0
    places = float(out["steamer_in_use.bags_per_run"])
    loads = [
        whole_up(over(bags + later_bags * share, places)) for bags, later_bags in zip(filled, spawn, strict=True)
    ]  # fmt: skip
    known = same(given["steamer.kind"], "pressure vessel") or given["farm.bags_per_load_given"]
    possible = float(out["steamer_in_use.loads_possible"]) if known else AS_MUCH_AS_EVER
    there = [possible + more for more in changed(given, when, "more_loads")]
    return {
        "spawn_steamed": spawn,
        "steamed_for_a_bag": share,
        "loads": loads,
        "loads_had": possible,
        "loads_short": beyond(loads, there),
    }


def hands_and_cold(given: Given, out: Results) -> Results:
    """Hours beyond the roster and the owner's, and weight that the cold room does not hold."""
    own, needed = float(given["hours.own_hours"]), out["week_hours.needed"]
    cold = float(given["limits.cold_room"]) if given["limits.cold_room_given"] else AS_MUCH_AS_EVER
    left, ready = out["cold_room.left"], sum(out["picks.ready"])
    hours = beyond(needed, [hired + own for hired in out["week_hours.hired"]])
    return {
        "hours_short": beyond_rounding(hours, needed),
        "cold_had": cold,
        "cold_short": beyond_rounding(beyond(left, [cold] * len(left)), [ready] * len(left)),
    }


def beyond_rounding(missing: Weekly, of: Weekly) -> Weekly:
    """What is missing where it is more than the last digits of what it is missing from."""
    return [short if short > ROUNDING * abs(whole) else 0.0 for short, whole in zip(missing, of, strict=True)]


def flags(out: Results, found: Results, when: Calendar) -> Results:
    """Which weeks of the plan are short of what."""
    rooms_short = [sum(each) for each in zip(found["incubation_short"], found["fruiting_short"], strict=True)]
    # of a room that has been emptied and given back only the last digits of all that it held may be left
    in_all = sum(out["filling.filled"])
    places_short = beyond_rounding(rooms_short, [in_all] * len(rooms_short))
    loads_or_cold = [max(each) for each in zip(found["loads_short"], found["cold_short"], strict=True)]
    short = {"places": places_short, "hands": found["hours_short"], "others": loads_or_cold}
    weeks = {
        kind: [planned and amount > 0 for planned, amount in zip(when.in_plan, amounts, strict=True)]
        for kind, amounts in short.items()
    }
    any_short = [any(each) for each in zip(*weeks.values(), strict=True)]
    counts: Results = {f"weeks_short_of_{kind}": float(sum(flagged)) for kind, flagged in weeks.items()}
    counts |= {f"{kind}_enough": float(not any(flagged)) for kind, flagged in weeks.items()}
    return counts | {
        "places_short": places_short,
        "is_short": any_short,
        "weeks_short": float(sum(any_short)),
        "weeks_planned": float(sum(when.in_plan)),
    }


def shortages(given: Given, out: Results, when: Calendar) -> Results:
    """All that may be short, and how far ahead spawn is thought of."""
    steaming, first = leads(given, out)
    found = rooms(given, out, when) | steamer(given, out, when, steaming) | hands_and_cold(given, out)
    found |= flags(out, found, when)
    parts = {"shortages": found, "steaming_ahead": lead(steaming), "ordering": lead(first)}
    return {f"{part}.{name}": value for part, lines in parts.items() for name, value in lines.items()}
