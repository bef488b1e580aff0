"""Twin of what stands beside the plan: its last year beside a typical one, and a spell in which no bags are filled."""

from __future__ import annotations

import math

from tests.twin.farm_twin_calendar import Calendar
from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_month_steps import MONTHS_IN_A_YEAR

__all__ = ["beside_the_plan"]

NEAR = 0.1
"""The last year of the plan may be so far from a typical one, as a share of its takings."""
SUMMED = {
    "bags": "month_totals.filled",
    "sold": "month_totals.sold",
    "spoiled": "month_totals.spoiled",
    "sales": "month_sales.sales",
    "goods_and_work": "month_household.goods_and_work",
    "standing_and_selling": "month_household.standing_and_selling",
}


def last_year(given: Given, out: Results) -> Results:
    """The last twelve months added up, and why they differ from a typical year."""

    def in_all(name: str) -> float:
        """Of the last twelve months."""
        return float(sum(out[name][-MONTHS_IN_A_YEAR:]))

    found: Results = {what: in_all(name) for what, name in SUMMED.items()}
    months = int(given["plan.months"])
    share = over(found["bags"], out["farm.bags_filled_a_year"])
    left = found["sales"] - found["goods_and_work"] - found["standing_and_selling"]
    more = left - float(out["year.cash_profit"])
    takings = float(out["customer_year.takings_in_all"])
    by_bags = (takings - float(out["year.goods"]) - float(out["year.selling"])) * (share - 1)
    paid = in_all("month_bills.wages") + in_all("month_bills.piece")
    paid += MONTHS_IN_A_YEAR * float(out["month_household.pay"])
    by_wages = float(out["hours.labour_cost"]) - paid
    rest = more - by_bags - by_wages
    changes = float(sum(name != "" for name in given["step_up.name"]))
    apart = over(abs(rest), takings)
    found |= {
        "counts": [float(month >= months - MONTHS_IN_A_YEAR) for month in range(months)],
        "bags_share": share,
        "left": left,
        "typical_left": float(out["year.cash_profit"]),
        "more": more,
        "by_bags": by_bags,
        "by_wages": by_wages,
        "by_rest": rest,
        "apart": apart,
        "many_changes": changes,
        "near": float(changes > 0 or apart <= NEAR),
    }
    return {f"last_year.{name}": value for name, value in found.items()}


def stop(given: Given, out: Results, when: Calendar) -> Results:
    """No bags for some weeks: what is not sold, less what is not spent."""
    first, long = float(given["stop.from_week"]), float(given["stop.weeks"])
    down = [first <= week < first + long for week in when.numbers]
    bags = sum(float(each) for each, is_down in zip(out["filling.filled"], down, strict=True) if is_down)
    roster = sum(float(each) for each, is_down in zip(out["week_hours.hired"], down, strict=True) if is_down)
    hours = roster * (1 - float(given["stop.wages_kept"]))
    not_ready = bags * float(out["crop.taken_per_filled"])
    a_bag = float(out["bag.material_cost"]) + float(out["one_more.steam_goods"])
    a_bag += float(out["one_more.spawn_goods"]) * float(out["crop.inoculated_per_filled"])
    on_bags, on_wages = bags * a_bag + not_ready * float(out["one_more.piece"]), hours * float(out["farm.labour_rate"])
    picks = [math.floor(round(days / 7, 9)) for days in out["lags.to_pick"]]
    last_flush = max(int(out["crop.flushes_counted"]), 1) - 1
    whole = float(out["lags.to_pick"][last_flush]) / 7 - picks[last_flush]
    missed_from = first + picks[0]
    # what is filled in one week is picked in two, where days do not make whole weeks
    back = first + long + picks[last_flush] + (whole > 0)
    ready, sold = (
        sum(float(each) for each, week in zip(out[name], when.numbers, strict=True) if missed_from <= week < back)
        for name in ("picks.ready", "cold_room.sold")
    )
    weight = not_ready * min(over(sold, ready), 1.0)
    lost = weight * float(out["customer_year.last_one"])
    found = {
        "bags": bags,
        "hours": hours,
        "weight": weight,
        "takings_lost": lost,
        "saved_a_bag": a_bag,
        "saved_on_bags": on_bags,
        "saved_on_wages": on_wages,
        "cost": lost - on_bags - on_wages - float(given["stop.insured"]),
        "first_missed": missed_from,
        "back": back,
    }
    return {f"stop.{name}": value for name, value in found.items()}


def beside_the_plan(given: Given, out: Results) -> Results:
    """Of a farm whose year, weeks and months are worked out in `out`."""
    return last_year(given, out) | stop(given, out, Calendar(given))
