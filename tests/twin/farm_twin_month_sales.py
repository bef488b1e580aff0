"""Twin of sales by month: each customer in turn takes what those before left, and pays some days later."""

from __future__ import annotations

import math
from typing import Any

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over
from tests.twin.farm_twin_month_steps import (
    DAYS_IN_A_WEEK,
    MONTHS_IN_A_YEAR,
    Monthly,
    Months,
    alike,
    changes,
    months_of,
    paid_later,
    running,
)

__all__ = ["sales"]


def most_of(out: Results, first: float, when: Months) -> tuple[Monthly, list[Monthly]]:
    """How far customers have been won at the end of each month, and what each in turn takes at most in it."""
    rows = [math.floor(end) - 1 for end in when.ends]
    learned = [first + (1 - first) * float(out["start_up.learned"][row]) for row in rows]
    most = []
    for a_week, season in zip(out["in_turn.most"], out["in_turn.season"], strict=True):
        months = zip(when.by_calendar(season), when.days, learned, strict=True)
        most.append([float(a_week) * share * days / DAYS_IN_A_WEEK * far for share, days, far in months])
    return learned, most


def shared_out(out: Results, most: list[Monthly]) -> Results:
    """What is sold in each month, handed to the customers in turn, and stretched to what is sold."""
    turns, sold = range(len(most)), [float(each) for each in out["month_totals.sold"]]
    a_week = [float(each) for each in out["in_turn.most"]]
    share = [over(each, sum(a_week)) for each in a_week]
    tables: dict[str, list[Monthly]] = {name: [[] for _ in turns] for name in ("left_for_it", "gets")}
    lines: dict[str, Monthly] = {name: [] for name in ("placed", "stretched", "strayed")}
    for month, weight in enumerate(sold):
        earlier, left = 0.0, []
        for turn in turns:
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
    gone = [sum(row) for row in tables["gets"]]
    all_of_it, in_all = sum(gone), float(out["month_totals.sold_by_months"])
    fits = abs(all_of_it - in_all) <= ROUNDING * in_all
    added_up = {"gone_there": gone, "gone": all_of_it, "shares_add_up": float(fits or sum(a_week) <= 0)}
    return {**tables, **lines, **added_up, "share": share, "all_most": sum(a_week)}


def money(out: Results, gets: list[Monthly], most: list[Monthly], when: Months) -> Results:
    """Sales, and what selling costs besides hours; nobody drives to a customer who takes nothing in a month."""
    takings, selling, going = (
        [float(each) for each in out[f"in_turn.{name}"]] for name in ("takings", "selling", "going")
    )
    there = [[weight * price for weight in row] for row, price in zip(gets, takings, strict=True)]
    fees, going_a_week = [], []
    for month in range(len(when.days)):
        fees.append(sum(row[month] * each for row, each in zip(gets, selling, strict=True)))
        there_now = [row[month] > 0 and wants[month] > 0 for row, wants in zip(gets, most, strict=True)]
        going_a_week.append(sum(each for is_on, each in zip(there_now, going, strict=True) if is_on))
    costs = zip(fees, going_a_week, when.days, strict=True)
    return {
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
    waiting = sum(month * lag for month, (lag, _, _) in zip(typical, lags, strict=True))
    worked = 0.0 if out["farm.is_new"] else waiting
    owed = float(given["opening.customers_owe"]) if given["opening.customers_owe_given"] else worked
    return {
        "lag": [lag for lag, _, _ in lags],
        "lag_whole": [float(whole) for _, whole, _ in lags],
        "lag_part": [part for _, _, part in lags],
        "paid_later_still": [
            float(takings) * part for takings, (_, _, part) in zip(out["in_turn.takings"], lags, strict=True)
        ],
        "typical_month": typical,
        "waiting": waiting,
        "opening_worked": worked,
        "opening_owed": owed,
    }


def owing(found: Results, days_to_pay: Monthly) -> Results:
    """Who has paid what by when, of the plan's sales and of what was owed before."""
    paid = [paid_later(row, days) for row, days in zip(found["sales_so_far"], days_to_pay, strict=True)]
    all_paid = [sum(column) for column in zip(*paid, strict=True)]
    count = len(all_paid)
    typical = list(zip(found["typical_month"], found["lag"], strict=True))
    still_waiting = [sum(each * max(lag - month, 0.0) for each, lag in typical) for month in range(1, count + 1)]
    left = [found["opening_owed"] * over(each, found["waiting"]) for each in still_waiting]
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
        "still_waiting": still_waiting,
        "opening_left": left,
        "collected": collected,
        "owed": owed,
        "owed_by_sales": by_sales,
    }


def sales(given: Given, out: Results, when: Months) -> Results:
    """Sales by month, and what customers owe."""
    learned, most = most_of(out, float(given["start_up.sales_at_first"]), when)
    found: Results = {"learned": learned, "most": most, **shared_out(out, most)}
    found |= money(out, found["gets"], most, when)
    found |= opening(given, out)
    found |= owing(found, [float(each) for each in out["in_turn.days_to_pay"]])
    found["rounding"] = ROUNDING * (sum(found["sales"]) + found["opening_owed"])
    found["sales_add_up"] = alike(found["owed"], found["owed_by_sales"], found["rounding"])
    return {f"month_sales.{name}": value for name, value in found.items()}
