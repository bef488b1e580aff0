"""Twin of the money by month: profit, household and tax, and cash with the credit line under it."""

from __future__ import annotations

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same, taken_of_a_profit
from tests.twin.farm_twin_month_steps import MONTHS_IN_A_YEAR, Monthly, Months, alike, running

__all__ = ["cash", "household"]


def added(*series: Monthly) -> Monthly:
    """Month by month, all together."""
    return [sum(each) for each in zip(*series, strict=True)]


def household(given: Given, out: Results, when: Months) -> Results:
    """From sales to profit, what is drawn or paid to the owner, and the tax set aside."""
    count = len(when.days)
    incorporated = same(given["household.form"], "corporation")
    wanted = float(given["household.needs"]) + float(given["household.debts"]) - float(given["household.other_income"])
    drawn = 0.0 if incorporated else max(wanted, 0.0) / MONTHS_IN_A_YEAR
    on_top = 1 + float(given["farm.payroll_extra"])
    pay = float(given["household.owner_pay"]) * on_top / MONTHS_IN_A_YEAR if incorporated else 0.0
    goods = added(
        *(
            out[name]
            for name in ("month_supplies.used_up", "month_spawn.cost", "month_bills.wages", "month_bills.piece")
        ),
        [pay] * count,
    )
    standing = added(*(out[name] for name in ("month_bills.energy", "month_bills.bills_paid", "month_sales.selling")))
    left = [sold - one - other for sold, one, other in zip(out["month_sales.sales"], goods, standing, strict=True)]
    lost, interest = out["month_capital.loss"], [float(each) for each in out["loan_months.interest"]]
    profit = [each - less - paid for each, less, paid in zip(left, lost, interest, strict=True)]
    of_year, tax_of_year, tax = [], [], []
    earned = set_aside = 0.0
    for month, each in enumerate(profit):
        if month % MONTHS_IN_A_YEAR == 0:
            earned = set_aside = 0.0
        earned += each
        due = max(earned, 0.0) * taken_of_a_profit(given)
        tax.append(due - set_aside)
        set_aside = due
        of_year.append(earned)
        tax_of_year.append(due)
    found = {
        "drawn": drawn,
        "pay": pay,
        "goods_and_work": goods,
        "standing_and_selling": standing,
        "left": left,
        "profit": profit,
        "profit_of_year": of_year,
        "tax_of_year": tax_of_year,
        "tax": tax,
    }
    return {f"month_household.{name}": value for name, value in found.items()}


def paid_and_collected(given: Given, out: Results) -> Results:
    """Everything that is paid in a month but loans and line, and what is left of what came."""
    pay, drawn = float(out["month_household.pay"]), float(out["month_household.drawn"])
    found: dict[str, Monthly] = {
        name: []
        for name in (
            "supplies_and_wages",
            "running",
            "unforeseen",
            "invested",
            "household_and_tax",
            "paid_out",
            "before_loans",
            "loan_money",
            "from_loans",
            "from_owner",
            "net",
        )
    }
    for month, came in enumerate(out["month_sales.collected"]):
        here = {
            name: float(out[name][month])
            for name in ("month_supplies.paid", "month_bills.wages", "month_bills.piece", "month_capital.bought")
        }
        suppliers = here["month_supplies.paid"] + here["month_bills.wages"] + here["month_bills.piece"] + pay
        every = suppliers + out["month_household.standing_and_selling"][month]
        unforeseen = every * float(given["opening.contingency"])
        invested = here["month_capital.bought"] + out["month_capital.replacing"][month]
        home = drawn + out["month_household.tax"][month]
        gone = every + unforeseen + invested + home
        lent = float(out["loan_months.drawn"][month]) - float(out["loan_months.fees"][month])
        loans = lent - float(out["loan_months.payments"][month])
        put_in = float(given["opening.put_in"]) if month < float(given["opening.put_in_month"]) <= month + 1 else 0.0
        left = came - gone + out["month_sales_tax.net"][month]
        lines = (suppliers, every, unforeseen, invested, home, gone, left, lent, loans, put_in, left + loans + put_in)
        for name, value in zip(found, lines, strict=True):
            found[name].append(value)
    return found


def credit_line(given: Given, net: Monthly) -> Results:
    """The line is drawn on so far as cash would fall below the least, and paid back as soon as there is more."""
    least, limit = float(given["opening.least_cash"]), float(given["opening.line_limit"])
    cash, owed = float(given["opening.cash"]), float(given["opening.line_owed"])
    without = cash
    names = ("without_line", "line_interest", "before_line", "on_line", "closing", "missing")
    found: dict[str, Monthly] = {name: [] for name in names}
    for each in net:
        without += each
        interest = owed * float(given["opening.line_rate"]) / MONTHS_IN_A_YEAR
        before = cash + each - interest
        then = min(max(owed + least - before, 0.0), limit)
        after = before + then - owed
        for name, value in zip(names, (without, interest, before, then, after, max(least - after, 0.0)), strict=True):
            found[name].append(value)
        cash, owed = after, then
    found["opening"] = [float(given["opening.cash"]), *found["closing"][:-1]]
    return {**found, "months_clear": float(sum(each <= 0 for each in found["on_line"]))}


def lowest(found: Results, when: Months) -> Results:
    """The lowest cash and when it comes, the most on the line, and the most that is missing."""
    closing, owed_at_start = found["closing"], found.pop("owed_at_start")
    low, count = min(closing), len(closing)
    where = 0
    while closing[where] > low + found["rounding"]:
        where += 1
    below = [month for month, each in enumerate(found["missing"], 1) if each > found["rounding"]]
    return {
        "lowest": low,
        "back_to_lowest": [
            float(count - month) if cash <= low + found["rounding"] else 0.0 for month, cash in enumerate(closing)
        ],
        "lowest_month": 1.0 + where,
        "lowest_drawn": [cash if month == where else 0.0 for month, cash in enumerate(closing)],
        "lowest_day": when.first_days[where],
        "peak": max(owed_at_start, *found["on_line"]),
        "most_missing": max(found["missing"]),
        "below_in": [float(month) if month in below else 0.0 for month in range(1, count + 1)],
        "last_below": float(max(below, default=0)),
        "months_below": float(len(below)),
    }


def lowest_within(given: Given, found: Results, collected: Monthly) -> Results:
    """Cash on the day by which the bills of a month are paid but only a part of its receipts has come; the first of the lowest."""
    late = 1 - float(given["opening.early_receipts"])
    within = [before - late * came for before, came in zip(found["before_line"], collected, strict=True)]
    low, count = min(within), len(within)
    as_low = [month for month, cash in enumerate(within) if cash - low <= found["rounding"]]
    return {
        "within": within,
        "lowest_within": low,
        "back_to_lowest_within": [float(count - month) if month in as_low else 0.0 for month in range(count)],
        "lowest_within_month": 1.0 + as_low[0],
    }


def start_of_it(given: Given, before_loans: Monthly, collected: Monthly) -> Results:
    """How deep the farm's own money goes down, before any loan, and within a month before customers have paid."""
    late = 1 - float(given["opening.early_receipts"])
    so_far = running(before_loans)
    within = [gone - came * late for gone, came in zip(so_far, collected, strict=True)]
    return {"unfunded": so_far, "unfunded_within": within, "needed": -min(0.0, *within)}


def rounding(given: Given, found: Results, collected: Monthly) -> float:
    """Cash that is a rounding of all that moves in the plan."""
    moved = abs(sum(found["running"]) + sum(collected))
    return ROUNDING * (moved + abs(float(given["opening.cash"])) + float(given["opening.line_owed"]))


def two_ways(given: Given, found: Results) -> float:
    """With the credit line, and without it less the interest paid."""
    owed = float(given["opening.line_owed"])
    with_line = [after - then + owed for after, then in zip(found["closing"], found["on_line"], strict=True)]
    without = [each - paid for each, paid in zip(found["without_line"], running(found["line_interest"]), strict=True)]
    return alike(with_line, without, found["rounding"])


def cash(given: Given, out: Results, when: Months) -> Results:
    """Cash at the end of each month, and what it comes to over the plan."""
    count = len(when.days)
    found = paid_and_collected(given, out)
    found |= credit_line(given, found["net"])
    found["rounding"] = rounding(given, found, out["month_sales.collected"])
    found["owed_at_start"] = float(given["opening.line_owed"])
    found |= lowest(found, when)
    found |= lowest_within(given, found, out["month_sales.collected"])
    found |= start_of_it(given, found["before_loans"], out["month_sales.collected"])
    nothing = found["most_missing"] <= found["rounding"]
    certain = 0.0
    for name in ("month_bills.wages", "month_bills.bills_paid", "loan_months.payments"):
        certain += sum(float(each) for each in out[name])
    fixed = certain / count + float(out["month_household.pay"]) + float(out["month_household.drawn"])
    fixed += float(out["month_bills.rooms_a_month"])
    found |= {
        "fixed": fixed,
        "months_in_hand": over(max(found["lowest"], 0.0), fixed),
        "enough": float(nothing or not given["opening.cash_given"]),
        "cash_adds_up": two_ways(given, found),
    }
    return {f"month_cash.{name}": value for name, value in found.items()}
