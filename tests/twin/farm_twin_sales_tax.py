"""Twin of sales tax by month: each customer's payments bear its tax, purchases bear theirs, and the office gets what is left."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, over, same
from tests.twin.farm_twin_month_steps import Monthly, Months, changes, paid_later, running

__all__ = ["opening_tax", "sales_tax"]

PERIODS = {"each month": 1, "each quarter": 3, "each year": 12}


def shares(given: Given, out: Results) -> Monthly:
    """Tax on what each customer in turn pays, of what is left without it."""
    columns = [int(each) for each in out["in_turn.column"]]
    paying = [float(each) > 0 for each in out["in_turn.takings"]]
    return [
        float(given["customer.tax_inside"][column - 1]) if column and pays else 0.0
        for column, pays in zip(columns, paying, strict=True)
    ]


def on_sales(out: Results, share: Monthly) -> Monthly:
    """Of the plan's own sales, customer by customer, by days to pay."""
    paid = []
    rows = zip(out["month_sales.gets"], out["in_turn.takings"], out["in_turn.days_to_pay"], share, strict=True)
    for row, takings, days, tax in rows:
        paid.append(paid_later(running([float(weight) * float(takings) * tax for weight in row]), float(days)))
    return changes([sum(column) for column in zip(*paid, strict=True)])


def opening_share(out: Results, share: Monthly) -> float:
    """Of what customers owed at the start."""
    waits = [
        float(month) * float(lag)
        for month, lag in zip(out["month_sales.typical_month"], out["month_sales.lag"], strict=True)
    ]
    return over(sum(each * tax for each, tax in zip(waits, share, strict=True)), float(out["month_sales.waiting"]))


def purchases(given: Given, out: Results, month: int) -> float:
    """Tax on what is paid in a month."""
    bought = ("month_capital.bought", "month_capital.replacing")
    parts = {
        "sales_tax.on_supplies": ("month_supplies.paid",),
        "sales_tax.on_bills": ("month_bills.energy", "month_bills.bills_paid"),
        "sales_tax.on_bought": bought,
    }
    return sum(float(given[rate]) * float(out[name][month]) for rate, names in parts.items() for name in names)


def counted(given: Given) -> float:
    """1 where it lies in cash, and is passed on at all."""
    return float(same(given["sales_tax.counted"], "in cash") and same(given["selling.tax"], "registered: passed on"))


def opening_tax(given: Given) -> float:
    """Owed to the office when the plan starts."""
    return float(given["sales_tax.owed_first"]) * counted(given)


def sales_tax(given: Given, out: Results, when: Months) -> Results:
    """What comes in, what goes out, and what is owed to the office, period by period of the calendar."""
    counts = counted(given)
    share = shares(given, out) if counts else [0.0] * len(out["in_turn.column"])
    of_plan, earlier = on_sales(out, share), opening_share(out, share)
    months_of_one = PERIODS[str(given["sales_tax.paid_over_each"]).lower()]
    owed = opening_tax(given)
    found: dict[str, Monthly] = {name: [] for name in ("collected", "paid", "paid_over", "net", "owed")}
    for month, calendar in enumerate(when.by_calendar([float(each) for each in range(12)])):
        old = float(out["month_sales.collected"][month]) - float(out["month_sales.paid"][month])
        came = (of_plan[month] + old * earlier) * counts
        went = purchases(given, out, month) * counts
        over_to = owed if int(calendar) % months_of_one == 0 else 0.0
        owed += came - went - over_to
        for name, value in zip(found, (came, went, over_to, came - went - over_to, owed), strict=True):
            found[name].append(value)
    return {f"month_sales_tax.{name}": value for name, value in found.items()} | {"month_sales_tax.tax_adds_up": 1.0}
