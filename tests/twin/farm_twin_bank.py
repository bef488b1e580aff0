"""What a lender is shown, from its description: the request, the project, security, debts, past years, what is to be kept."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import date
from typing import Any, Final

import numpy as np

from tests.twin.farm_twin_ground import Given, Numbers, Results, agree, over, same, taken_of_a_profit
from tests.twin.farm_twin_loans import Loan, first_full_year, level_payment, listed, loans_of, loans_of_a_year, run

__all__ = ["crosswalk", "the_bank"]

YEAR: Final = 12
DAY_ZERO: Final = date(1899, 12, 30)


def the_bank(given: Given, out: Results) -> Results:
    """All that exists only where a loan is asked for."""
    if "request.loan" not in given:
        return {}
    found = request(given)
    found |= project(given, out)
    found |= collateral(given, found)
    found |= people_and_debts(given)
    found |= record(given, out)
    found |= permits(given, out, found)
    found |= covenants(given, out)
    found |= bands(given, out)
    return found | largest_loan(given, out, found)


def request(given: Given) -> Results:
    """The loan of the list that bears the name; of two, both together."""
    names = given["loan.name"]
    asked = [float(name != "" and same(name, given["request.loan"])) for name in names]
    picked = [loan for loan, is_it in zip(loans_of(given), asked, strict=True) if is_it]

    def of_it(what: Callable[[Loan], float]) -> float:
        return sum((float(what(loan)) for loan in picked), 0.0)

    found: Results = {
        "request.asked": asked,
        "request.amount": of_it(lambda loan: loan.amount),
        "request.rate": of_it(lambda loan: loan.rate),
        "request.term": of_it(lambda loan: loan.term),
        "request.interest_only": of_it(lambda loan: loan.interest_only),
        "request.drawn_in": of_it(lambda loan: loan.drawn_in),
        "request.ends_in": of_it(lambda loan: loan.ends),
        "request.payment": of_it(lambda loan: float(level_payment(loan))),
        "request.paid_a_year": of_it(lambda loan: first_full_year(loan)[0]),
        "request.interest_a_year": of_it(lambda loan: first_full_year(loan)[1]),
    }
    found["request.counted"] = float(found["request.amount"] <= 0 or listed(given) or not given["opening.cash_given"])
    return found


def total(out: Results, name: str, many: int | None = None) -> float:
    """What a line by month comes to: in all of them, or the first so many."""
    return sum(by_month(out, name)[:many])


def by_month(out: Results, name: str) -> list[float]:
    """A line by month."""
    return [float(each) for each in out[name]]


def by_year(out: Results, name: str) -> list[float]:
    """The same, twelve months each."""
    line = by_month(out, name)
    return [sum(line[first : first + YEAR]) for first in range(0, len(line), YEAR)]


def project(given: Given, out: Results) -> Results:
    """What it takes and where that comes from."""
    bought, fees = total(out, "month_capital.bought"), total(out, "loan_months.fees")
    contingency = bought * given["request.contingency"]
    working = max(float(out["month_cash.needed"]) - bought, 0.0)
    borrowed = total(out, "loan_months.drawn")
    own = float(given["request.owner_cash"]) + float(given["opening.put_in"])
    needs, has = bought + contingency + working + fees, borrowed + own + float(given["request.grants"])
    gains = max(float(out["last_year.more"]), 0.0)
    return {
        "project.bought": bought,
        "project.set_aside": contingency,
        "project.working": working,
        "project.fees": fees,
        "project.uses_in_all": needs,
        "project.borrowed": borrowed,
        "project.own_money": own,
        "project.sources_in_all": has,
        "project.own_share": over(own, has),
        "project.over": has - needs,
        "project.paid_for": float(bought <= 0 or has - needs >= -float(out["month_cash.rounding"])),
        "project.payback": over(bought + contingency, gains),
        "project.adds": float(bought <= 0 or float(out["last_year.more"]) >= -float(out["month_cash.rounding"])),
    }


def collateral(given: Given, found: Results) -> Results:
    """Thing by thing."""
    value, owed = given["security.market_value"], given["security.owed_on_it"]
    lendable = [max(float(left), 0.0) for left in value * given["security.lendable"] - owed]
    net = value * given["security.forced"] * (1 - given["security.selling"]) - owed
    forced = [max(float(left), 0.0) for left in net]
    amount = found["request.amount"]
    return {
        "collateral.lendable_value": lendable,
        "collateral.forced_value": forced,
        "collateral.market_in_all": float(sum(value)),
        "collateral.owed_in_all": float(sum(owed)),
        "collateral.lendable_in_all": sum(lendable),
        "collateral.forced_in_all": sum(forced),
        "collateral.loan_to_value": over(amount, sum(lendable)),
        "collateral.margin": over(sum(lendable), amount),
        "collateral.shortfall": max(amount - sum(forced), 0.0),
        "collateral.carries": float(sum(value) <= 0 or sum(lendable) >= amount),
    }


def people_and_debts(given: Given) -> Results:
    """Owners by share, loans by their next payment, debts of the household."""
    owners = sum(name != "" for name in given["owner.name"])
    shares = float(sum(given["owner.share"]))
    loans = loans_of(given)
    running = [loan for loan in loans if loan.drawn_in <= 0]
    debts = sum(name != "" for name in given["household_debt.name"])
    paid, counted = float(sum(given["household_debt.paid"])), float(given["household.debts"])
    return {
        "people.many_owners": owners,
        "people.shares": shares,
        "people.shares_add_up": float(owners == 0 or agree(shares, 1)),
        "debts.owed_at_start": [loan.amount if loan.drawn_in <= 0 else 0.0 for loan in loans],
        "debts.next_due": [loan.begins + loan.every for loan in loans],
        "loan_list.level_payment": [float(level_payment(loan)) for loan in loans],
        "loan_list.months_between": [loan.every for loan in loans],
        "loans.paid": loans_of_a_year(given)[0],
        "loan_months.owed_at_start": sum(loan.amount for loan in running) * listed(given),
        "loan_months.due_at_start": max(sum(loan.amount - float(run(loan, YEAR).owed[YEAR]) for loan in running), 0.0)
        * listed(given),
        "debts.owed_in_all": float(sum(given["household_debt.owed"])),
        "debts.paid_in_all": paid,
        "debts.many": debts,
        "debts.as_counted": float(debts == 0 or agree(paid, counted)),
    }


def record(given: Given, out: Results) -> Results:
    """Past years, the best of them, and the years of the plan above it."""

    def past(name: str) -> Numbers:
        return np.asarray(given[f"record.{name}"], dtype=float)

    def each(above: Iterable[float], below: Iterable[float]) -> list[float]:
        return [over(one, other) for one, other in zip(above, below, strict=True)]

    def best(values: Sequence[float]) -> list[float]:
        return [max(0.0, *values[: place + 1]) for place in range(len(values))]

    bags, picked = by_year(out, "month_totals.filled"), by_year(out, "month_totals.picked")
    sold, sales = by_year(out, "month_totals.sold"), by_year(out, "month_sales.sales")
    per_bag, price = each(past("picked"), past("bags")), each(past("sales"), past("sold"))
    plan_per_bag, plan_price = each(picked, bags), each(sales, sold)
    best_bag, best_price = best(per_bag), best(price)
    above_bag = [float(one - best_bag[-1] > best_bag[-1] * 1e-9) for one in plan_per_bag]
    above_price = [float(one - best_price[-1] > best_price[-1] * 1e-9) for one in plan_price]
    years_above = sum(above_bag) * (best_bag[-1] > 0)
    prices_above = sum(above_price) * (best_price[-1] > 0)
    return {
        "record.profit": past("sales") - past("costs") - past("interest") - past("worn"),
        "record.per_bag": per_bag,
        "record.price": price,
        "record.best_per_bag_so_far": best_bag,
        "record.best_price_so_far": best_price,
        "record.many": len(per_bag),
        "record.best_per_bag": best_bag[-1],
        "record.best_price": best_price[-1],
        "record.month_per_bag": each(past("month_picked"), past("month_bags")),
        "record.year_bags": float(sum(past("month_bags"))),
        "record.year_picked": float(sum(past("month_picked"))),
        "reached.plan_bags": bags,
        "reached.plan_picked": picked,
        "reached.plan_sold": sold,
        "reached.plan_sales": sales,
        "reached.plan_per_bag": plan_per_bag,
        "reached.plan_price": plan_price,
        "reached.yield_above": above_bag,
        "reached.price_above": above_price,
        "reached.years_above_yield": years_above,
        "reached.years_above_price": prices_above,
        "reached.yield_reached": float(years_above == 0),
        "reached.price_reached": float(prices_above == 0),
    }


def permits(given: Given, out: Results, found: Results) -> Results:
    """What runs out, and whether the lease lasts."""
    until = np.asarray(given["permit.until"], dtype=float)
    runs_out = [float(0 < day < float(out["plan_months.end"])) for day in until]
    first = date.fromordinal(DAY_ZERO.toordinal() + int(out["plan_start.first_of_month"]))
    later = first.year * YEAR + first.month - 1 + whole_part(found["request.ends_in"])
    loan_until = (date(later // YEAR, later % YEAR + 1, 1) - DAY_ZERO).days
    typed = bool(given["request.lease_until_given"])
    beyond = (float(given["request.lease_until"]) - loan_until) * typed
    return {
        "permits.ends": until,
        "permits.runs_out": runs_out,
        "permits.running_out": sum(runs_out),
        "permits.loan_until": loan_until,
        "permits.lease_beyond": beyond,
        "permits.lease_outlasts": float(not typed or found["request.amount"] <= 0 or beyond >= 0),
    }


def whole_part(number: float) -> int:
    """The whole months in a number of them, as spreadsheets cut a month."""
    return int(np.trunc(round(number, 9)))


def yearly(out: Results, name: str) -> list[float]:
    """A line by year, as it stands."""
    return [float(each) for each in out[name]]


def covenants(given: Given, out: Results) -> Results:
    """Four things, year by year."""
    payments, cover = yearly(out, "coverage.payments"), yearly(out, "coverage.after_household")
    due, current = yearly(out, "farm_ratios.due"), yearly(out, "farm_ratios.current")
    closing = by_month(out, "month_cash.closing")
    room = float(out["month_cash.rounding"])
    least = float(given["request.wanted_cash"]) - room
    short = [float(cash < least) for cash in closing]
    months_short = [sum(short[first : first + YEAR]) for first in range(0, len(closing), YEAR)]
    kept = {
        "coverage": [
            paid <= 0 or one >= given["request.wanted_coverage"] for paid, one in zip(payments, cover, strict=True)
        ],
        "current": [
            owed <= 0 or one >= given["request.wanted_current"] for owed, one in zip(due, current, strict=True)
        ],
        "debt": [
            owed <= has * given["request.most_debt"]
            for owed, has in zip(
                yearly(out, "year_balance.total_liabilities"), yearly(out, "year_balance.total_assets"), strict=True
            )
        ],
        "cash": [not given["opening.cash_given"] or one == 0 for one in months_short],
    }
    flags = {f"covenants.{name}_kept": [float(each) for each in line] for name, line in kept.items()}
    not_kept = sum(1 - each for line in flags.values() for each in line)
    return {
        **flags,
        "covenants.short_of_cash": short,
        "covenants.months_short": months_short,
        "covenants.kept": np.sum(list(flags.values()), axis=0),
        "covenants.years_short": sum(1 - each for each in flags["covenants.coverage_kept"]),
        "covenants.not_kept": not_kept,
        "covenants.all_kept": float(not_kept == 0),
    }


BANDS: Final = (
    ("cover", "cover", "coverage.after_household", "coverage.payments", True),
    ("current", "current", "farm_ratios.current", "farm_ratios.due", True),
    ("working", "working", "farm_ratios.working_capital_share", "year_statements.sales", True),
    ("debt", "debt", "farm_ratios.debt_to_assets", "year_balance.total_assets", False),
    ("returned", "return", "farm_ratios.return_on_assets", "year_balance.total_assets", True),
    ("margin", "margin", "farm_ratios.profit_margin", "year_statements.sales", True),
    ("expense", "expense", "farm_ratios.expense", "year_statements.sales", False),
    ("interest", "interest", "farm_ratios.interest", "year_statements.sales", False),
    ("income", "income", "farm_ratios.income", "year_statements.sales", True),
)
"""Name, name of its limits, ratio, what it is over, and whether more of it is better."""


def bands(given: Given, out: Results) -> Results:
    """No figure (1), weak (2), to be watched (3), good (4)."""
    found: Results = {}
    for name, limits, ratio, over_what, more in BANDS:
        good, weak = float(given[f"request.{limits}_good"]), float(given[f"request.{limits}_weak"])
        judged = zip(yearly(out, ratio), yearly(out, over_what), strict=True)
        found[f"bands.{name}"] = [band(value, good, weak, more=more) if below > 0 else 1.0 for value, below in judged]
    return found


def band(value: float, good: float, weak: float, *, more: bool) -> float:
    """Both limits count, whatever their order."""
    if more:
        return 2.0 + (value > weak) + (value >= good)
    return 2.0 + (value < weak) + (value <= good)


def largest_loan(given: Given, out: Results, found: Results) -> Results:
    """By what a typical year can pay, and what it could without the loan."""
    in_plan = listed(given)
    paid, interest = loans_of_a_year(given)
    income = float(out["coverage.typical_income"])
    earned = income + float(out["capital.loss"]) + interest
    pay = float(given["household.owner_pay"]) if same(given["household.form"], "corporation") else 0.0
    home = float(given["household.other_income"]) + pay
    living = float(given["household.needs"]) + float(given["household.debts"])
    others = paid - found["request.paid_a_year"] * in_plan
    can_go = over(float(out["coverage.typical_capacity"]), float(given["request.wanted_coverage"]))
    room = max(can_go - others, 0.0)
    each = over(found["request.paid_a_year"], found["request.amount"])
    tax = max(income + found["request.interest_a_year"] * in_plan, 0.0) * taken_of_a_profit(given)
    left = earned + home - living
    return {
        "largest_loan.others": others,
        "largest_loan.room": room,
        "largest_loan.for_each": each,
        "largest_loan.largest": over(room, each),
        "largest_loan.tax_without": tax,
        "largest_loan.capacity_without": left - tax,
        "largest_loan.coverage_without": over(left - tax, others),
    }


HEADED: Final = {
    "car": "car and truck",
    "chemicals": "chemicals",
    "hire": "custom hire",
    "fuel": "fuel",
    "insurance": "insurance",
    "rent": "rent",
    "repairs": "repairs",
    "taxes": "taxes",
}


def crosswalk(given: Given, out: Results) -> Results:
    """The first year's costs by the headings of a form; what has none is under other."""
    if "crosswalk.form" not in given:
        return {}

    def headed(word: str) -> float:
        rows: Any = zip(given["bill.amount"], given["bill.heading"], strict=True)
        return float(sum(amount for amount, heading in rows if same(heading, word))) * same(
            given["bills.counted"], "worked out from the list"
        )

    found = {f"crosswalk.{name}": headed(word) for name, word in HEADED.items()}
    selling, fees = total(out, "month_sales.selling", YEAR), total(out, "month_sales.fees_and_packing", YEAR)
    wages = ("month_bills.wages", "month_bills.piece")
    pay = float(out["month_household.pay"]) * YEAR
    found |= {
        "crosswalk.selling": selling,
        "crosswalk.fees": fees,
        "crosswalk.depreciation": total(out, "month_capital.loss", YEAR),
        "crosswalk.freight": selling - fees + headed("freight"),
        "crosswalk.labor": sum(total(out, name, YEAR) for name in wages) + pay,
        "crosswalk.seeds": total(out, "month_income.spawn_used", YEAR),
        "crosswalk.supplies": total(out, "month_supplies.used_up", YEAR) + headed("supplies"),
        "crosswalk.utilities": total(out, "month_bills.energy", YEAR) + headed("utilities"),
        "crosswalk.interest": total(out, "month_income.interest", YEAR),
    }
    known = sum(value for name, value in found.items() if name not in ("crosswalk.selling", "crosswalk.fees"))
    expenses = total(out, "month_income.costs", YEAR) + found["crosswalk.depreciation"] + found["crosswalk.interest"]
    return found | {"crosswalk.expenses": expenses, "crosswalk.other": expenses - known}
