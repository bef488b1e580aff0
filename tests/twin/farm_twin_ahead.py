"""Twin of the next weeks: thirteen of them as they hang on the wall, the card of this one, and cash four weeks on."""

from __future__ import annotations

import math
from datetime import date, timedelta

from tests.twin.farm_twin_calendar import BEFORE, Calendar
from tests.twin.farm_twin_ground import Given, Results, chosen_rows, over, whole_up
from tests.twin.farm_twin_steam import COLD_WATER_KILOGRAMS_IN_A_LITRE
from tests.twin.farm_twin_week_steps import DAYS_IN_A_WEEK, Weekly, so_far

__all__ = ["the_next_weeks"]

WEEKS_ON_THE_WALL = 13
FOUR_WEEKS = 28
SPREADS = 3
"""Spreads above the mean at which lost bags are too many."""
WETTEST = 0.95
"""No sawdust holds more water than this share."""
GENERATIONS = 4
DAY_ZERO = date(1899, 12, 30)
LOOKED_UP = {
    "monday": "plan_weeks.monday",
    "week": "plan_weeks.number",
    "filled": "filling.filled",
    "loads": "shortages.loads",
    "opened": "in_process.opened",
    "picked": "picks.picked",
    "ready": "picks.ready",
    "wanted": "cold_room.wanted",
    "incubation": "shortages.incubation_taken",
    "fruiting": "in_process.places",
    "hours": "week_hours.needed",
    "incubation_short": "shortages.incubation_short",
    "fruiting_short": "shortages.fruiting_short",
    "places_short": "shortages.places_short",
    "loads_short": "shortages.loads_short",
    "hours_short": "shortages.hours_short",
    "cold_short": "shortages.cold_short",
    "short": "shortages.is_short",
}
"""Lines of the schedule that are shown of each of the thirteen weeks."""


def wall(given: Given, out: Results, when: Calendar) -> Results:
    """Thirteen weeks from the one of the Monday typed, or from the first of the plan."""
    first = float((when.first_monday - DAY_ZERO).days)
    today = float(given["plan.this_monday"]) if given["plan.this_monday_given"] else first
    passed = math.floor(round((today - first) / DAYS_IN_A_WEEK, 9))
    # a week stands before the first shown, and one after the last
    now = min(max(BEFORE + 1 + passed, 2), when.rows - WEEKS_ON_THE_WALL)
    rows = range(now, now + WEEKS_ON_THE_WALL)
    found: Results = {name: [float(out[line][row - 1]) for row in rows] for name, line in LOOKED_UP.items()}
    at_the_end = float(out["crop.standing_at_end"])
    for_end, for_start = for_weeks_ahead(out["filling.filled"], rows, int(out["ordering.whole"]))
    found |= {
        "monday_now": today,
        "passed": float(passed),
        "row_now": float(now),
        "cleared": [float(out["in_process.dumped"][row - 1]) * at_the_end for row in rows],
        "number": [1.0 + week for week in range(WEEKS_ON_THE_WALL)],
        "row": [float(row) for row in rows],
        "supplied": for_end,
        "supplied_before": for_start,
    }
    return {f"ahead.{name}": value for name, value in found.items()}


def for_weeks_ahead(filled: Weekly, rows: range, weeks: int) -> tuple[Weekly, Weekly]:
    """Bags filled until so many weeks after each week, and until the week before that; the last week stands for all after it."""
    filled_so_far = so_far([float(each) for each in filled])
    reached = [min(row + weeks, len(filled_so_far)) for row in rows]
    return [filled_so_far[row - 1] for row in reached], [filled_so_far[row - 2] for row in reached]


def spawn(given: Given, out: Results) -> Results:
    """Bags of spawn to order, or batches of own spawn to start, as many as the bags so far take in whole ones."""
    made = bool(out["spawn_source.made"])
    pack = float(out["month_spawn.packs_for_a_bag"])
    pairs = zip(out["ahead.supplied"], out["ahead.supplied_before"], strict=True)
    packs = [0.0 if made else whole_up(now * pack) - whole_up(before * pack) for now, before in pairs]
    first = int(out["ahead.row_now"])
    rows = range(first, first + WEEKS_ON_THE_WALL)
    tables: dict[str, list[Weekly]] = {name: [] for name in ("served", "served_before", "started")}
    weeks_before, for_a_bag = [], []
    for generation in range(GENERATIONS):
        days = float(out["own_spawn.days_before"][generation]) - float(out["lags.to_bench"])
        weeks = whole_up(max(days, 0.0) / DAYS_IN_A_WEEK)
        a_bag = over(out["own_spawn.batches"][generation], given["farm.bags_filled_a_week"]) if made else 0.0
        served, before = for_weeks_ahead(out["filling.filled"], rows, int(weeks))
        batches = [whole_up(now * a_bag) - whole_up(then * a_bag) for now, then in zip(served, before, strict=True)]
        in_one = float(out["own_spawn.started_in_batch"][generation])
        started = [each * in_one for each in batches]
        for table, line in zip(tables.values(), (served, before, started), strict=True):
            table.append(line)
        weeks_before.append(weeks)
        for_a_bag.append(a_bag)
    found = {"packs": packs, "weeks_before": weeks_before, "batches_for_a_bag": for_a_bag, **tables}
    return {f"spawn_ahead.{name}": value for name, value in found.items()}


def mix(given: Given, out: Results, bags: float) -> Results:
    """What to weigh out of the chosen recipe, and how much more sawdust and less water when the sawdust comes wetter."""
    rows, chosen = range(len(given["ingredient.name"])), chosen_rows(given)
    a_batch = [sum(float(out["mixing.delivered_per_batch"][row][each]) for each in chosen) for row in rows]
    dry_share = [float(each) for each in given["ingredient.dry_matter"]]
    dry = [weight * share for weight, share in zip(a_batch, dry_share, strict=True)]
    batches = over(bags, out["mixing.bags_per_batch"])
    typed = 1 - dry_share[0]
    moisture = [max(min(typed + float(more), WETTEST), 0.0) for more in given["week.wetter_by"]]
    sawdust = [over(dry[0], 1 - water) for water in moisture]
    hose = float(out["mixing.chosen_water_per_batch"])
    return {
        "weight_per_batch": a_batch,
        "weight_this_week": [weight * batches for weight in a_batch],
        "dry_per_batch": dry,
        "dry_share": dry_share,
        "sawdust_dry": dry[0],
        "sawdust_typed": a_batch[0],
        "moisture_typed": typed,
        "moisture": moisture,
        "sawdust": sawdust,
        "water": [max(hose - (weight - a_batch[0]) / COLD_WATER_KILOGRAMS_IN_A_LITRE, 0.0) for weight in sawdust],
        "batches": whole_up(batches),
    }


def lost_bags(out: Results, row: int) -> Results:
    """How many lost ones the plan of a week counts on, and how many more chance brings."""
    looked_over = float(out["in_process.moved"][row])
    mean = looked_over - float(out["in_process.opened"][row])
    spread = math.sqrt(max(mean * (1 - over(mean, looked_over)), 0.0))
    return {
        "looked_over": looked_over,
        "lost_expected": mean,
        "act_above": float(math.floor(round(mean + SPREADS * spread, 9))),
    }


def card(given: Given, out: Results) -> Results:
    """The first of the thirteen weeks."""
    names = (
        "monday",
        "loads",
        "opened",
        "cleared",
        "picked",
        "ready",
        "wanted",
        "places_short",
        "hours_short",
        "hours",
    )
    found: Results = {name: out[f"ahead.{name}"][0] for name in names}
    row, bags, monday = int(out["ahead.row_now"]) - 1, out["ahead.filled"][0], found["monday"]
    started = [line[0] for line in out["spawn_ahead.started"]]
    ready = [monday + float(days) for days in given["own_spawn.run_days"]]
    flushes = {
        name: [float(flush[row + later]) for flush in out["picks.by_flush"]]
        for later, name in enumerate(("picked_by_flush", "picked_next", "picked_after"))
    }
    found |= {
        "bags": bags,
        "packs": out["spawn_ahead.packs"][0],
        "started": started,
        "ready_on": [day if count > 0 else 0.0 for day, count in zip(ready, started, strict=True)],
        **flushes,
        **mix(given, out, bags),
        **lost_bags(out, row),
    }
    return {f"this_week.{name}": value for name, value in found.items()}


def four_weeks_on(out: Results, when: Calendar) -> Results:
    """Cash at the end of the month into which the day falls that is four weeks from this Monday."""
    day = DAY_ZERO + timedelta(days=out["this_week.monday"] + FOUR_WEEKS)
    counted, first = (12.0 * each.year + each.month for each in (day, when.firsts[0]))
    month = max(min(counted - first + 1, float(when.months)), 1.0)
    return {
        "four_weeks_on.day": out["this_week.monday"] + FOUR_WEEKS,
        "four_weeks_on.months_counted": counted,
        "four_weeks_on.first_counted": first,
        "four_weeks_on.month": month,
        "four_weeks_on.closing": float(out["month_cash.closing"][int(month) - 1]),
    }


def the_next_weeks(given: Given, out: Results) -> Results:
    """From one date, of a farm whose year, weeks and months are worked out in `out`."""
    when = Calendar(given)
    every = {**out}
    every |= wall(given, every, when)
    every |= spawn(given, every)
    every |= card(given, every)
    every |= four_weeks_on(every, when)
    return {name: value for name, value in every.items() if name not in out}
