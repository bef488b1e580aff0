"""Twin of the customers: month by month they come one after the other and take what those before them left."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same, spread

__all__ = ["customers"]

MONTHS = 12
DAYS_IN_A_YEAR = 365
AFTER_ALL_OTHERS = 1000.0
"""Added to the turn of a customer who takes the rest."""
NEVER = 1e12
"""Stands for what a kilogram brings in where none is taken, so that such a customer comes last."""

ON_THE_WAY = ("unserved", "sells", "room", "earlier")
"""Worked out on the way to others."""

Columns = dict[str, list[float]]


def nearest(amount: float) -> float:
    """The nearest whole number to the ninth decimal, halves away from zero."""
    size = round(abs(float(amount)), 9)
    whole = float(math.floor(size))
    return math.copysign(whole + 1 if size - whole >= 0.5 else whole, amount)


def comes_to_nothing(difference: float, one: float, other: float) -> float:
    """1 where a sum that should come to nothing does, but for rounding of its two parts."""
    return float(abs(difference) <= ROUNDING * (abs(one) + abs(other)))


def column(given: Given, name: str) -> list[float]:
    """A number of every customer, row by row."""
    return [float(each) for each in given[f"customer.{name}"]]


def in_use(given: Given) -> list[bool]:
    """Which rows have a customer."""
    return [name != "" for name in given["customer.name"]]


def columns(lines: list[dict[str, float]]) -> Columns:
    """Rows of named numbers as one list for each name."""
    return {name: [line[name] for line in lines] for name in lines[0]}


def of_one_kilogram(given: Given, out: Results, row: int) -> dict[str, float]:
    """What becomes of the price of one kilogram at one customer's."""
    typed, inside = column(given, "price")[row], column(given, "tax_inside")[row]
    passed_on = same(given["selling.tax"], "registered: passed on")
    kept = over(typed, 1 + inside) if passed_on else typed
    fee = typed * column(given, "fee")[row]
    sold = 1 - min(column(given, "unsold")[row], 1.0)
    years_waited = column(given, "days_to_pay")[row] / DAYS_IN_A_YEAR
    waiting = kept * sold * years_waited * float(out["steaming.yearly_rate"])
    return {
        "without_tax": over(1, 1 + inside),
        "price_kept": kept,
        "tax_in_price": typed - kept,
        "fee_taken": fee,
        "after_fees": kept - fee,
        "share_sold": sold,
        "credit": waiting,
        "brings": kept * sold - fee * sold - column(given, "packing")[row] - waiting,
    }


def turns(given: Given) -> Columns:
    """Who is served when: by the order typed, those who take the rest after all others, and down the rows."""
    rest = column(given, "takes_rest")
    turn = [typed + (AFTER_ALL_OTHERS if rest[row] > 0 else 0.0) for row, typed in enumerate(column(given, "order"))]
    return {
        "row": [row + 1.0 for row in range(len(turn))],
        "turn": turn,
        "turn_key": [nearest(each) * 100 + row + 1 for row, each in enumerate(turn)],
    }


def a_month(keys: list[float], rooms: list[float], supply: float) -> Columns:
    """One month's kilograms handed out in turn; each of one key is served as if the others of that key were not there."""
    found: Columns = {}
    asked = handed_out = wanting = 0.0
    lines: dict[int, dict[str, float]] = {}
    for key in sorted(set(keys)):
        here = [row for row, own in enumerate(keys) if own == key]
        for row in here:
            offered = max(0.0, min(rooms[row], supply - asked))
            gets = offered if offered > rooms[row] * ROUNDING else 0.0
            left = rooms[row] - gets
            left = left if left > supply * ROUNDING else 0.0
            lines[row] = {
                "room": rooms[row],
                "earlier": asked,
                "unserved": max(0.0, supply - asked),
                "gets": gets,
                "sells": float(gets > 0),
                "still_takes": left,
                "takes_next": float(left > 0 and wanting <= 0),
                "handed_out_before": handed_out,
            }
        asked += sum(lines[row]["room"] for row in here)
        handed_out += sum(lines[row]["gets"] for row in here)
        wanting += sum(lines[row]["still_takes"] for row in here)
    found = columns([lines[row] for row in range(len(keys))])
    had = zip(found.pop("handed_out_before"), found["gets"], strict=True)
    after = [handed_out - before - gets for before, gets in had]
    enough = supply * ROUNDING
    found["takes_last"] = [float(bool(opened) and after[row] <= enough) for row, opened in enumerate(found["sells"])]
    return found


def the_months(given: Given, keys: list[float], weeks: float, supply: float) -> list[Columns]:
    """Twelve months, January first."""
    most, season = column(given, "most_a_week"), given["customer.season"]
    return [
        a_month(keys, [most[row] * float(season[row][month]) * weeks for row in range(len(keys))], supply)
        for month in range(MONTHS)
    ]


def month_lines(months: list[Columns], brings: list[float], supply: float) -> Columns:
    """What is placed in each month, what is not, and what one kilogram more and the last one bring."""
    found: Columns = {"placed": [], "homeless": [], "next_brings": [], "last_brings": []}
    for month in months:
        found["placed"].append(sum(month["gets"]))
        found["homeless"].append(max(0.0, supply - sum(month["room"])))
        for which in ("next", "last"):
            takers = zip(month[f"takes_{which}"], brings, strict=True)
            found[f"{which}_brings"].append(sum(each for takes, each in takers if takes))
    return found


def a_customers_year(given: Given, row: int, one: dict[str, float], months: list[Columns]) -> dict[str, float]:
    """Kilograms and money of one customer in a year."""
    taken = sum(month["gets"][row] for month in months)
    spoilt = taken * min(column(given, "unsold")[row], 1.0)
    weeks = sum(one["weeks"] for month in months if month["sells"][row])
    found = {
        "taken": taken,
        "sold": taken - spoilt,
        "unsold": spoilt,
        "takings": (taken - spoilt) * one["price_kept"],
        "tax_collected": (taken - spoilt) * one["tax_in_price"],
        "fees": (taken - spoilt) * one["fee_taken"],
        "packing_cost": taken * column(given, "packing")[row],
        "weeks_there": weeks,
        "stall_cost": weeks * column(given, "stall")[row],
        "delivery_cost": weeks * column(given, "delivery")[row],
        "hours": weeks * column(given, "selling_hours")[row],
        "elsewhere": taken * one["next_one"],
    }
    paid = sum(found[name] for name in ("fees", "packing_cost", "stall_cost", "delivery_cost"))
    left = found["takings"] - paid
    net = left - found["hours"] * one["labour_rate"] - taken * one["credit"]
    next_to_be_served = any(month["takes_next"][row] for month in months)
    worth_going = 0.0 if next_to_be_served else net - found["elsewhere"]
    return found | {
        "left": left,
        "net": net,
        "net_per_taken": over(net, taken),
        "is_next": float(next_to_be_served),
        "worth_going": worth_going,
        "leaves_less": float(nearest(worth_going * 100) < 0),
    }


def placings(given: Given, year: Columns) -> Columns:
    """Who leaves most for each kilogram, and whose takings are largest, among the rows with a customer."""
    used, taken = in_use(given), year["taken"]
    rows = range(len(used))
    wanted = [NEVER if taken[row] == 0 else -year["net_per_taken"][row] * 1e6 for row in rows]
    net_key = [nearest(wanted[row]) * 100 + row + 1 for row in rows]
    takings_key = [nearest(-year["takings"][row] * 1e2) * 100 + row + 1 for row in rows]
    ahead = [sum(used[other] and net_key[other] < net_key[row] for other in rows) for row in rows]
    in_front = min((takings_key[row] for row in rows if used[row]), default=0.0)
    in_all = sum(year["takings"])
    larger = [sum(used[other] and takings_key[other] < takings_key[row] for other in rows) for row in rows]
    return {
        "net_size": wanted,
        "larger": [float(each) for each in larger],
        "net_key": net_key,
        "rank": [1.0 + ahead[row] if taken[row] > 0 else 0.0 for row in rows],
        "share_of_takings": [over(each, in_all) for each in year["takings"]],
        "takings_key": takings_key,
        "is_largest": [float(used[row] and takings_key[row] <= in_front) for row in rows],
    }


def in_all(given: Given, year: Columns, by_month: Columns) -> dict[str, float]:
    """All customers together."""
    sums = {
        "taken": "taken",
        "sold": "sold",
        "unsold": "unsold",
        "takings": "takings",
        "tax": "tax_collected",
        "fees": "fees",
        "packing": "packing_cost",
        "stalls": "stall_cost",
        "delivery": "delivery_cost",
        "hours": "hours",
    }
    found = {f"{what}_in_all": sum(year[name]) for what, name in sums.items()}
    left = sum(by_month["homeless"])
    return found | {
        "taken_or_left": found["taken_in_all"] + left,
        "sold_or_unsold": found["sold_in_all"] + found["unsold_in_all"],
        "not_placed": sum(by_month["homeless"]),
        "served": float(sum(each > 0 for each in year["taken"])),
        "not_worth_going": float(sum(year["leaves_less"])),
        "hours_a_week": over(found["hours_in_all"], given["farm.weeks_worked"]),
        "average_price": over(found["takings_in_all"], found["sold_in_all"]),
        "largest_share": sum(
            share for share, largest in zip(year["share_of_takings"], year["is_largest"], strict=True) if largest
        ),
    }


def verdicts(given: Given, out: Results, found: dict[str, float]) -> dict[str, float]:
    """The checks of the customers."""
    harvested = float(out["harvest.taken_a_year"])
    taken, sold, lost = found["taken_in_all"], found["sold_in_all"], found["unsold_in_all"]
    homeless, placed = found["not_placed"], found["placed_in_all"]
    return {
        "one_takes_the_rest": float(sum(each > 0 for each in column(given, "takes_rest")) <= 1),
        "everything_has_a_customer": float(homeless <= ROUNDING * harvested),
        "taken_adds_up": comes_to_nothing(taken + homeless - harvested, taken + homeless, harvested),
        "sold_adds_up": comes_to_nothing(sold + lost - taken, sold + lost, taken),
        "months_add_up": comes_to_nothing(placed - taken, placed, taken),
    }


def marginal_money(by_month: Columns) -> dict[str, float]:
    """What one kilogram more brings in the mean of the months, and what the last of those placed brings."""
    placed = by_month["placed"]
    for_the_last = sum(kilograms * each for kilograms, each in zip(placed, by_month["last_brings"], strict=True))
    return {
        "next_one": sum(by_month["next_brings"]) / MONTHS,
        "last_weighed": for_the_last,
        "placed_in_all": sum(placed),
        "last_one": over(for_the_last, sum(placed)),
    }


def customers(given: Given, out: Results) -> Results:
    """Who takes how much in which month, and what it brings."""
    rows = range(len(given["customer.name"]))
    price, turn = columns([of_one_kilogram(given, out, row) for row in rows]), turns(given)
    weeks, supply = float(given["farm.weeks_worked"]) / MONTHS, float(out["harvest.taken_a_year"]) / MONTHS
    months = the_months(given, turn["turn_key"], weeks, supply)
    by_month = month_lines(months, price["brings"], supply)
    margin = marginal_money(by_month)
    every = {"weeks": weeks, "labour_rate": float(out["farm.labour_rate"]), **margin}
    ones = [every | {name: values[row] for name, values in price.items()} for row in rows]
    year = columns([a_customers_year(given, row, ones[row], months) for row in rows])
    of_a_week = the_months(given, turn["turn_key"], 1.0, float(out["harvest.taken_a_week"]))
    shared = [(month["unserved"], month["room"]) for month in of_a_week]
    year["all_it_takes"] = [sum(most[row] for left, most in shared if left[row] > most[row]) for row in rows]
    year["what_is_left"] = [sum(left[row] for left, most in shared if left[row] <= most[row]) for row in rows]
    year["months_there"] = [sum(month["sells"][row] for month in of_a_week) for row in rows]
    year["still_taken"] = list(year["taken"])
    year |= placings(given, year)
    whole = in_all(given, year, by_month)
    checked = verdicts(given, out, whole | margin)
    first = {"one_takes_the_rest": checked.pop("one_takes_the_rest")}
    rest = {"who_take_the_rest": float(sum(each > 0 for each in column(given, "takes_rest")))}
    price["price_paid"] = [float(each) for each in given["customer.price"]]
    registered = {"registered": float(same(given["selling.tax"], "registered: passed on"))}
    told = [name for name in months[0] if name not in ON_THE_WAY]
    by_both = {name: spread([[month[name][row] for month in months] for row in rows]) for name in told}
    for name in ("room", "earlier"):
        by_both[f"{name}_a_week"] = spread([[month[name][row] for month in of_a_week] for row in rows])
    parts: dict[str, Results] = {
        "customers": {**registered, **price, **turn, **rest, **first},
        "customer_months": {
            "supply_a_week": float(out["harvest.taken_a_week"]),
            "weeks": weeks,
            "supply": supply,
            "rounding": supply * ROUNDING,
            **by_both,
            **by_month,
        },
        "customer_year": {**year, **whole, **margin, **checked},
    }
    return {f"{part}.{name}": value for part, found in parts.items() for name, value in found.items()}
