"""Twin of the plan month by month: what the weeks come to, spawn, sales, and with the other subjects down to the cash."""

from __future__ import annotations

import math
from datetime import date, timedelta
from itertools import pairwise

from tests.twin.farm_twin_calendar import BEFORE
from tests.twin.farm_twin_ground import ROUNDING, Given, Results, agree, over, whole_up
from tests.twin.farm_twin_month_cash import cash, household
from tests.twin.farm_twin_month_costs import bills_by_month, capital_by_month, supplies
from tests.twin.farm_twin_month_sales import sales
from tests.twin.farm_twin_month_steps import DAYS_IN_A_WEEK, MONTHS_IN_A_YEAR, Monthly, Months, running
from tests.twin.farm_twin_sales_tax import sales_tax

__all__ = ["calendar_months", "months"]

DAY_ZERO = date(1899, 12, 30)
EARLIEST, LATEST = date(2000, 1, 1), date(2099, 12, 31)


def calendar_months(given: Given) -> Months:
    """The plan's months from the one that holds its start, and where their ends fall among the weeks."""
    typed = DAY_ZERO + timedelta(days=math.floor(float(given["plan.start"])))
    first = min(max(typed, EARLIEST), LATEST).replace(day=1)
    firsts = [first]
    while len(firsts) <= int(given["plan.months"]):
        firsts.append((firsts[-1] + timedelta(days=31)).replace(day=1))
    monday = first - timedelta(days=first.weekday())
    positions = [BEFORE + (day - monday).days / DAYS_IN_A_WEEK for day in firsts]
    days = [float((after - day).days) for day, after in pairwise(firsts)]
    counted = [float((day - DAY_ZERO).days) for day in firsts[:-1]]
    return Months(days, [day.month for day in firsts[:-1]], counted, positions[0], positions[1:])


def whole_rows(position: float) -> int:
    """Whole rows to the ninth decimal."""
    return math.floor(round(position, 9))


def reached(weekly: Monthly, position: float) -> float:
    """A running sum of weeks at a place among its rows: so many whole rows, and part of the next."""
    whole = whole_rows(position)
    before = weekly[whole - 1]
    return before if position <= whole else before * (1 - position + whole) + weekly[whole] * (position - whole)


WEEKLY = {
    "filled": "filling.filled",
    "loads": "shortages.loads",
    "picked": "picks.picked",
    "sold": "cold_room.sold",
    "spoiled": "cold_room.spoiled",
    "hired": "week_hours.hired",
}
"""The weekly amounts of which months are made."""


def totals(out: Results, when: Months) -> Results:
    """What the weeks come to in each month."""
    found: Results = {}
    for name, series in WEEKLY.items():
        weekly = running([float(each) for each in out[series]])
        before = reached(weekly, when.before)
        found[f"{name}_so_far"] = [reached(weekly, end) for end in when.ends]
        found[name] = []
        for at_end in found[f"{name}_so_far"]:
            more = at_end - before
            found[name].append(more if more > ROUNDING * at_end else 0.0)
            before = at_end
    part = when.ends[-1] % 1
    found |= {
        "whole_at_end": float(math.floor(when.ends[-1])),
        "part_at_end": part,
        "beyond": 1 - part if part > 0 else 0.0,
    }
    for name, weekly in (("filled", out["filling.filled"]), ("sold", out["cold_room.sold"])):
        found[f"{name}_by_weeks"] = by_weeks([float(each) for each in weekly], out, when, found["beyond"])
        found[f"{name}_by_months"] = sum(found[name])
    found["brought"] = found["sold"]
    kept = float(out.get("shocks.weight_kept", 1.0))
    found["sold"] = [min(s, (s + lost) * kept) for s, lost in zip(found["sold"], found["spoiled"], strict=True)]
    found["bags_agree"] = float(agree(found["filled_by_weeks"], found["filled_by_months"]))
    found["weight_agrees"] = float(agree(found["sold_by_weeks"], found["sold_by_months"]))
    found["weeks_make_months"] = min(found["bags_agree"], found["weight_agrees"])
    return {f"month_totals.{name}": value for name, value in found.items()}


def by_weeks(weekly: Monthly, out: Results, when: Months, beyond: float) -> float:
    """Whole weeks of the plan, less what of the first lies before it and of the last after it."""
    in_all = 0.0
    for row, each in enumerate(weekly):
        in_all += each if row >= BEFORE and row < when.ends[-1] else 0.0
    first, last = math.floor(when.before), math.floor(when.ends[-1])
    return in_all - weekly[first] * (when.before - first) - weekly[last] * beyond


def spawn_by_month(given: Given, out: Results, when: Months) -> Results:
    """Spawn is ordered, or started, some weeks before the bags are filled."""
    filled = running([float(each) for each in out["filling.filled"]])
    ahead = float(out["ordering.in_weeks"])
    rows = [min(end + ahead, len(filled) - 1) for end in when.ends]
    before = when.before + ahead
    bags_before = 0.0 if out["farm.is_new"] else reached(filled, before)
    a_week = float(given["farm.bags_filled_a_week"])
    packs_for_a_bag = over(over(out["spawn.order_a_week"], given["spawn.pack_weight"]), a_week)
    for_a_bag = float(out["spawn.cost_per_bag_inoculated"]) * float(out["crop.inoculated_per_filled"])
    materials = over(out["own_spawn_work.materials_in_all"], a_week)
    lab_bills = float(out["own_spawn_work.yearly_bills"]) / MONTHS_IN_A_YEAR
    pack_cost = over(for_a_bag, packs_for_a_bag)
    so_far, bags, packs_so_far, packs, cost = [], [], [], [], []
    earlier, packs_earlier = bags_before, whole_up(bags_before * packs_for_a_bag)
    for row in rows:
        so_far.append(reached(filled, row))
        bags.append(so_far[-1] - earlier)
        packs_so_far.append(whole_up(so_far[-1] * packs_for_a_bag))
        packs.append(packs_so_far[-1] - packs_earlier)
        made = bags[-1] * materials + lab_bills
        cost.append(made if out["spawn_source.made"] else packs[-1] * pack_cost)
        earlier, packs_earlier = so_far[-1], packs_so_far[-1]
    found: Results = {
        "rows": rows,
        "whole": [float(whole_rows(row)) for row in rows],
        "rows_before": before,
        "whole_before": float(whole_rows(before)),
        "bags_before": bags_before,
        "bags_so_far": so_far,
        "bags": bags,
        "packs_for_a_bag": packs_for_a_bag,
        "packs_so_far": packs_so_far,
        "packs": packs,
        "pack_cost": pack_cost,
        "spawn_cost_for_a_bag": for_a_bag,
        "materials_for_a_bag": materials,
        "lab_bills": lab_bills,
        "cost": cost,
    }
    return {f"month_spawn.{name}": value for name, value in found.items()}


STEPS = (spawn_by_month, sales, supplies, bills_by_month, capital_by_month, sales_tax, household, cash)
"""After the weeks, in the order in which each uses those before."""


def months(given: Given, out: Results) -> Results:
    """The plan by months, of a farm whose typical year, weeks and loans are worked out in `out`, by this twin or any other.

    Lines of the months that stand in `out` already stay as they are, whatever the weeks come to.
    """
    when = calendar_months(given)
    every = {**totals(out, when), **out}
    for step in STEPS:
        every = {**every, **step(given, every, when), **{name: out[name] for name in out if name.startswith("month_")}}
    return {name: value for name, value in every.items() if name.startswith("month_")}
