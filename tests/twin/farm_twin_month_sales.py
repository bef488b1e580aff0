"""Twin of sales by month: each customer in turn takes what those before left, and pays some days later."""

from __future__ import annotations

import math
from typing import Any

from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_month_steps import (
    DAYS_IN_A_WEEK,
    MONTHS_IN_A_YEAR,
    Monthly,
    Months,
    changes,
    is_off,
    months_of,
    paid_later,
    running,
)

__all__ = ["sales"]


def most_of(out: Results, when: Months) -> tuple[Monthly, list[Monthly]]:
    """How far customers have been won at the end of each month, and what each in turn takes at most in it."""
    learned = [float(out["cold_room.learned_sales"][math.floor(end) - 1]) for end in when.ends]
    most = []
    for a_week, season in zip(out["in_turn.most"], out["in_turn.season"], strict=True):
        months = zip(when.by_calendar(season), when.days, learned, strict=True)
        most.append([float(a_week) * share * days / DAYS_IN_A_WEEK * far for share, days, far in months])
    return learned, most


def shared_out(out: Results, most: list[Monthly]) -> Results:
    """What is sold in each month, handed to the customers in turn, and stretched to what is sold."""
    sold, turns = out["month_totals.sold"], range(len(most))
    a_week = [float(each) for each in out["in_turn.most"]]
    share = [over(each, sum(a_week)) for each in a_week]
    tables: dict[str, list[Monthly]] = {name: [[] for _ in turns] for name in ("earlier", "left_for_it", "gets")}
    lines: dict[str, Monthly] = {name: [] for name in ("placed", "stretched", "strayed")}
    for month, weight in enumerate(sold):
        earlier, left = 0.0, []
        for turn in turns:
            tables["earlier"][turn].append(earlier)
            left.append(max(min(most[turn][month], weight - earlier), 0.0))
            tables["left_for_it"][turn].append(left[-1])
            earlier += most[turn][month]
        placed = sum(left)
        stretched, strayed = over(weight, placed), weight if placed <= 0 else 0.0
        for turn in turns:
            tables["gets"][turn].append(left[turn] * stretched + strayed * share[turn])
        lines["placed"].append(placed)
        lines["stretched"].append(stretched)
        lines["strayed"].append(strayed)
    got = [sum(each[month] for each in tables["gets"]) for month in range(len(sold))]
    off = [
        is_off(one, weight, so_far, weight)
        for one, weight, so_far in zip(got, sold, out["month_totals.sold_so_far"], strict=True)
    ]
    return {**tables, **lines, "share": share, "all_most": sum(a_week), "share_off": off}


def money(out: Results, gets: list[Monthly], when: Months) -> Results:
    """Sales, and what selling costs besides hours."""
    takings, selling, going = (
        [float(each) for each in out[f"in_turn.{name}"]] for name in ("takings", "selling", "going")
    )
    there = [[weight * price for weight in row] for row, price in zip(gets, takings, strict=True)]
    fees, going_a_week = [], []
    for month in range(len(when.days)):
        fees.append(sum(row[month] * each for row, each in zip(gets, selling, strict=True)))
        going_a_week.append(sum(each for row, each in zip(gets, going, strict=True) if row[month] > 0))
    costs = zip(fees, going_a_week, when.days, strict=True)
    return {
        "sales_there": there,
        "sales_so_far": [running(row) for row in there],
        "sales": [sum(row[month] for row in there) for month in range(len(when.days))],
        "fees_and_packing": fees,
        "going_a_week": going_a_week,
        "selling": [fee + a_week * days / DAYS_IN_A_WEEK for fee, a_week, days in costs],
    }


def opening(given: Given, out: Results) -> dict[str, Any]:
    """What customers owe when the plan starts, and in how many months they pay it."""
    columns = [int(each) for each in out["in_turn.column"]]
    typical = [
        0.0 if column == 0 else float(out["customer_year.takings"][column - 1]) / MONTHS_IN_A_YEAR for column in columns
    ]
    lags = [months_of(days) for days in out["in_turn.days_to_pay"]]
    worked = sum(month * lag for month, (lag, _, _) in zip(typical, lags, strict=True))
    worked = 0.0 if out["farm.is_new"] else worked
    owed = float(given["opening.customers_owe"]) if given["opening.customers_owe_given"] else worked
    return {
        "lag": [lag for lag, _, _ in lags],
        "lag_whole": [float(whole) for _, whole, _ in lags],
        "lag_part": [part for _, _, part in lags],
        "typical_month": typical,
        "typical_sales": sum(typical),
        "opening_worked": worked,
        "opening_owed": owed,
        "opening_lag": over(owed, sum(typical)),
    }


def owing(found: Results, days_to_pay: Monthly) -> Results:
    """Who has paid what by when, of the plan's sales and of what was owed before."""
    paid = [paid_later(row, days) for row, days in zip(found["sales_so_far"], days_to_pay, strict=True)]
    all_paid = [sum(column) for column in zip(*paid, strict=True)]
    left = []
    for month in range(1, len(all_paid) + 1):
        left.append(max(found["opening_owed"] - month * found["typical_sales"], 0.0))
    fallen = [-each for each in changes(left, found["opening_owed"])]
    collected = [new + old for new, old in zip(changes(all_paid), fallen, strict=True)]
    owed, still = [], found["opening_owed"]
    for sold, came in zip(found["sales"], collected, strict=True):
        still += sold - came
        owed.append(still)
    by_sales = []
    for month, rest in enumerate(left):
        unpaid = sum(row[month] - gone[month] for row, gone in zip(found["sales_so_far"], paid, strict=True))
        by_sales.append(unpaid + rest)
    return {
        "paid_so_far": paid,
        "all_paid_so_far": all_paid,
        "opening_left": left,
        "collected": collected,
        "owed": owed,
        "owed_by_sales": by_sales,
        "month_off": [is_off(*pair, so_far, pair[0]) for *pair, so_far in zip(owed, by_sales, all_paid, strict=True)],
    }


def sales(given: Given, out: Results, when: Months) -> Results:
    """Sales by month, and what customers owe."""
    learned, most = most_of(out, when)
    found: Results = {"learned": learned, "most": most, **shared_out(out, most)}
    found |= money(out, found["gets"], when)
    found |= opening(given, out)
    found |= owing(found, [float(each) for each in out["in_turn.days_to_pay"]])
    found["sales_add_up"] = float(not any(found["month_off"]))
    found["shares_add_up"] = float(not any(found["share_off"]) or found["all_most"] <= 0)
    return {f"month_sales.{name}": value for name, value in found.items()}
