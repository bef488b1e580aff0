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
    """What is sold in each month, handed to the customers in turn, and stretched to what is sold.

    In a case that moves weeks customers take what they take as planned.
    """
    turns, sold = range(len(most)), [float(each) for each in out["month_totals.sold"]]
    a_week = [float(each) for each in out["in_turn.most"]]
    share = [over(each, sum(a_week)) for each in a_week]
    brought, as_planned = out["month_totals.brought"], out.get("month_sales.takes")
    all_of_them = out.get("month_sales.all_take", [sum(column) for column in zip(*most, strict=True)])
    tables: dict[str, list[Monthly]] = {name: [[] for _ in turns] for name in ("takes", "earlier", "gets")}
    lines: dict[str, Monthly] = {name: [] for name in ("all_take", "stretched")}
    for month, weight in enumerate(sold):
        all_take, earlier = float(all_of_them[month]), 0.0
        stretched = weight / all_take if 0 < all_take < weight else 1.0
        for turn in turns:
            takes = most[turn][month] if all_take > 0 else float(brought[month]) * share[turn]
            if as_planned is not None:
                takes = float(as_planned[turn][month])
            gets = max(min(takes, weight - earlier), 0.0) * stretched
            for name, value in (("takes", takes), ("earlier", earlier), ("gets", gets)):
                tables[name][turn].append(value)
            earlier += takes
        lines["all_take"].append(all_take)
        lines["stretched"].append(stretched)
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
    costs = zip(fees, out.get("month_sales.going_a_week", going_a_week), when.days, strict=True)
    return {
        "there": [running(row) for row in there],
        "sales": [sum(row[month] for row in there) for month in range(len(when.days))],
        "fees_and_packing": fees,
        "going_a_week": going_a_week,
        "selling": [fee + a_week * days / DAYS_IN_A_WEEK for fee, a_week, days in costs],
    }


def in_time(found: Results, takings: Monthly) -> Results:
    """What went to each customer early enough to be paid within the plan, and how long sales are owed in it all together."""
    count, early, late, owed = len(found["gets"][0]), [], [], 0.0
    for row, lag, whole, price in zip(found["gets"], found["lag"], found["lag_whole"], takings, strict=True):
        early.append(sum(weight for month, weight in enumerate(row, 1) if month + whole <= count))
        late.append(sum(w * (count + 1 - month) for month, w in enumerate(row, 1) if month + whole > count))
        owed += (early[-1] * lag + late[-1]) * price
    return {"gone_in_time": early, "gone_late": late, "owed_counted": owed}


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
        "paid_first": [
            float(takings) * (1 - part) for takings, (_, _, part) in zip(out["in_turn.takings"], lags, strict=True)
        ],
        "typical_month": typical,
        "waiting": waiting,
        "opening_worked": worked,
        "opening_owed": owed,
    }


def owing(found: Results, days_to_pay: Monthly) -> Results:
    """Who has paid what by when, of the plan's sales and of what was owed before."""
    so_far = found.pop("there")
    paid = [paid_later(row, days) for row, days in zip(so_far, days_to_pay, strict=True)]
    all_paid = [sum(column) for column in zip(*paid, strict=True)]
    count = len(all_paid)
    due = []
    for row, whole in zip(found["gets"], found["lag_whole"], strict=True):
        due.append([row[month - int(whole)] if month >= whole else 0.0 for month in range(count)])
    typical = list(zip(found["typical_month"], found["lag"], strict=True))
    still_waiting = [sum(each * max(lag - month, 0.0) for each, lag in typical) for month in range(1, count + 1)]
    left = [found["opening_owed"] * over(each, found["waiting"]) for each in still_waiting]
    fallen = [-each for each in changes(left, found["opening_owed"])]
    collected = [new + old for new, old in zip(changes(all_paid), fallen, strict=True)]
    owed, still = [], found["opening_owed"]
    for sold, came in zip(found["sales"], collected, strict=True):
        still += sold - came
        owed.append(still)
    return {
        "due": due,
        "paid": changes(all_paid),
        "still_waiting": still_waiting,
        "opening_left": left,
        "collected": collected,
        "owed": owed,
    }


def sales(given: Given, out: Results, when: Months) -> Results:
    """Sales by month, and what customers owe."""
    learned, most = most_of(out, float(given["start_up.sales_at_first"]), when)
    found: Results = {"learned": learned, "most": most, **shared_out(out, most)}
    found |= money(out, found["gets"], most, when)
    found |= opening(given, out)
    found |= owing(found, [float(each) for each in out["in_turn.days_to_pay"]])
    found["rounding"] = ROUNDING * (sum(found["sales"]) + found["opening_owed"])
    found |= in_time(found, [float(each) for each in out["in_turn.takings"]])
    added_up = sum(owed - left for owed, left in zip(found["owed"], found["opening_left"], strict=True))
    apart = abs(added_up - found["owed_counted"])
    found["sales_add_up"] = float(apart <= abs(found["rounding"]) * len(found["owed"]))
    return {f"month_sales.{name}": value for name, value in found.items()}
