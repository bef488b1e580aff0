"""Twin of the statements: bags in process bag by bag, the balance sheet put together from what is there, income from its moves."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same, taken_of_a_profit, whole_up
from tests.twin.farm_twin_loans import YEARS, Loan, listed, loans_of, loans_of_a_year, run
from tests.twin.farm_twin_month_steps import MONTHS_IN_A_YEAR, Monthly, Months
from tests.twin.farm_twin_months import calendar_months
from tests.twin.farm_twin_sales_tax import opening_tax
from tests.twin.farm_twin_week_steps import DAYS_IN_A_WEEK, Weekly, later, so_far

__all__ = ["statements"]


Sheet = dict[str, list[float]]
"""Amounts when the plan starts and at the end of each month after it."""


def numbers(line: Sequence[float]) -> list[float]:
    """A line as plain numbers."""
    return [float(each) for each in line]


def between(weekly: Weekly, row: float) -> float:
    """What stands at the ends of weeks, some part of a week later."""
    whole = math.floor(round(row, 9))
    part = row - whole
    return weekly[whole - 1] * (1 - part) + weekly[whole] * part


def filled_until(weekly: Weekly, rows: float) -> float:
    """What the first rows add up to, the last of them by its part."""
    if rows <= 0:
        return 0.0
    whole = math.floor(rows)
    return sum(weekly[:whole]) + weekly[whole] * (rows - whole)


def cost_of_bags(given: Given, out: Results) -> Results:
    """What a bag has cost in money once it is steamed, inoculated, opened."""
    hired, own = float(out["hours.hired"]), float(given["hours.own_hours"])
    an_hour = over(hired, hired + own) * float(out["farm.labour_rate"])
    a_week = float(given["farm.bags_filled_a_week"])

    def work(*tasks: str) -> float:
        """Money for hired hands in a week."""
        return an_hour * sum(float(out[f"{task}_work.hours_a_week"]) for task in tasks)

    steamed = float(out["bag.material_cost"]) + float(out["one_more.steam_goods"])
    steamed += over(work("mixing", "steaming"), a_week)
    whole = a_week * float(out["crop.inoculated_per_filled"])
    bought = float(out["spawn.cost_per_bag_inoculated"])
    own_spawn = over(over(out["own_spawn_work.materials_in_all"], a_week), out["crop.inoculated_per_filled"])
    in_it = own_spawn if out["spawn_source.made"] else bought
    inoculated = steamed + in_it + over(work("inoculating", "spawn", "shelving"), whole)
    opened = inoculated + over(1.0, given["growing_cost.opening_rate"]) * an_hour
    return {"steamed": steamed, "inoculated": inoculated, "opened": opened}


def bags(given: Given, out: Results, when: Months) -> Results:
    """How many bags there are at each stage, and what they have cost."""
    cost = cost_of_bags(given, out)
    steamed = [float(each) * float(out["crop.inoculated_per_filled"]) for each in out["filling.filled"]]
    waiting = [
        one - other for one, other in zip(so_far(steamed), so_far(numbers(out["in_process.inoculated"])), strict=True)
    ]
    alive = numbers(out["in_process.alive"])
    opened = so_far(later(alive, float(out["lags.to_opening"])))
    weights = numbers(out["crop.fresh_per_live"])
    shares = [over(each, sum(weights)) for each in weights] if sum(weights) else [1.0, 0.0, 0.0, 0.0]
    rows = [when.before, *when.ends]
    found: Sheet = {name: [] for name in ("waiting", "incubating", "fruiting", "to_come", "value")}
    for row in rows:
        counts = [
            between(line, row)
            for line in (waiting, numbers(out["in_process.incubating"]), numbers(out["in_process.fruiting"]))
        ]
        picked = [filled_until(alive, row - max(float(days), 0.0) / DAYS_IN_A_WEEK) for days in out["lags.to_pick"]]
        left = max(between(opened, row) - sum(share * each for share, each in zip(shares, picked, strict=True)), 0.0)
        value = counts[0] * cost["steamed"] + counts[1] * cost["inoculated"] + left * cost["opened"]
        for name, each in zip(found, (*counts, left, value), strict=True):
            found[name].append(each)
    at_start = {f"{name}_at_start": series[0] for name, series in found.items()}
    return {**cost, **{name: series[1:] for name, series in found.items()}, **at_start, "counts_add_up": 1.0}


def spawn_there(given: Given, out: Results, when: Months, opening_bags: float) -> list[float]:
    """Spawn for bags to come, when the plan starts and after each month."""
    del given
    filled = numbers(out["filling.filled"])
    ordered = [opening_bags, *numbers(out["month_spawn.bags_so_far"])]
    taken = [filled_until(filled, row) for row in (when.before, *when.ends)]
    if out["spawn_source.made"]:
        return [
            max(one - other, 0.0) * float(out["month_spawn.materials_for_a_bag"])
            for one, other in zip(ordered, taken, strict=True)
        ]
    packs = [whole_up(each * float(out["month_spawn.packs_for_a_bag"])) for each in ordered]
    a_pack, a_bag = float(out["month_spawn.pack_cost"]), float(out["month_spawn.spawn_cost_for_a_bag"])
    return [max(pack * a_pack - bag * a_bag, 0.0) for pack, bag in zip(packs, taken, strict=True)]


def grown(loan: Loan, month: int, horizon: int) -> float:
    """Interest on a loan since its last payment, or since it came."""
    if month < loan.drawn_in or (month == 0 and loan.drawn_in > 0):
        return 0.0
    course = run(loan, horizon)
    made = course.made[month]
    if made == loan.payments:
        return 0.0
    since = month - loan.begins - made * loan.every
    return float(course.owed[month]) * float(loan.per_interval) * since / loan.every


def accrued(given: Given, months: int) -> list[float]:
    """Of all loans of the list."""
    if not listed(given):
        return [0.0] * (months + 1)
    horizon = max(YEARS * MONTHS_IN_A_YEAR, months + MONTHS_IN_A_YEAR)
    return [max(sum(grown(loan, month, horizon) for loan in loans_of(given)), 0.0) for month in range(months + 1)]


def owed_at_start(given: Given, months: int) -> tuple[float, float]:
    """On the list when the plan starts, and what of it is repaid in a year."""
    if not listed(given):
        return 0.0, 0.0
    here = [loan for loan in loans_of(given) if loan.drawn_in <= 0]
    horizon = max(YEARS * MONTHS_IN_A_YEAR, months + MONTHS_IN_A_YEAR)
    a_year_on = sum(float(run(loan, horizon).owed[MONTHS_IN_A_YEAR]) for loan in here)
    owed = sum(loan.amount for loan in here)
    return owed, max(owed - a_year_on, 0.0)


def balance(
    given: Given, out: Results, when: Months, found: Results, spawn: list[float], interest: list[float]
) -> Sheet:
    """All that is there, when the plan starts and at the end of each month."""
    months = len(when.ends)
    owed, due = owed_at_start(given, months)
    land = float(given["opening.land"])
    opening = {
        "cash": float(given["opening.cash"]),
        "receivables": float(out["month_sales.opening_owed"]),
        "supplies": float(out["month_supplies.opening_stock"]),
        "fixed": float(out["month_capital.opening_value"]),
        "payables": float(out["month_supplies.opening_owed"]),
        "credit_line": float(given["opening.line_owed"]),
        "loans_current": due,
        "other_short": opening_tax(given),
        "owed": owed,
    }
    lines = {
        "cash": "month_cash.closing",
        "receivables": "month_sales.owed",
        "supplies": "month_supplies.stock",
        "fixed": "month_capital.value",
        "payables": "month_supplies.owed",
        "credit_line": "month_cash.on_line",
        "loans_current": "loan_months.due_next",
        "other_short": "month_sales_tax.owed",
        "owed": "loan_months.owed",
    }
    sheet: Sheet = {name: [opening[name], *numbers(out[line])] for name, line in lines.items()}
    sheet["fixed"] = [each + land for each in sheet["fixed"]]
    sheet["other_short"] = [each + float(given["opening.other_due"]) for each in sheet["other_short"]]
    sheet["spawn"], sheet["accrued_interest"] = spawn, interest
    sheet["bags_in_process"] = [found["value_at_start"], *found["value"]]
    sheet["other_current"] = [float(given["opening.other_current"])] * (months + 1)
    sheet["loans_later"] = [
        all_of_it - part for all_of_it, part in zip(sheet.pop("owed"), sheet["loans_current"], strict=True)
    ]

    def added(*names: str, more: float = 0.0) -> list[float]:
        return [more + sum(each) for each in zip(*(sheet[name] for name in names), strict=True)]

    current = ("cash", "receivables", "supplies", "spawn", "bags_in_process", "other_current")
    short = ("payables", "accrued_interest", "credit_line", "loans_current", "other_short")
    sheet["current_assets"] = added(*current)
    sheet["total_assets"] = added("current_assets", "fixed")
    sheet["current_liabilities"] = added(*short)
    sheet["total_liabilities"] = added("current_liabilities", "loans_later", more=float(given["opening.other_long"]))
    sheet["equity"] = [
        one - other for one, other in zip(sheet["total_assets"], sheet["total_liabilities"], strict=True)
    ]
    return sheet


def rises(series: list[float]) -> Monthly:
    """From the end of each month to the next."""
    return [after - before for before, after in pairwise(series)]


LINES = (
    *("sales", "costs", "bags_rise", "spawn_rise", "spawn_used", "left"),
    *("loan_interest", "interest", "before_tax", "tax", "after_tax"),
)
READ = (
    *("month_sales.sales", "month_supplies.used_up", "month_spawn.cost", "month_bills.wages", "month_bills.piece"),
    *("month_household.standing_and_selling", "month_cash.unforeseen", "month_capital.loss", "loan_months.interest"),
    *("month_cash.line_interest", "loan_months.fees", "month_household.tax"),
)
"""What income is made of, and of which months."""


def income(out: Results, sheet: Sheet) -> Results:
    """Sales less what was used up for them, month by month."""
    pay = float(out["month_household.pay"])
    stocks = [rises(sheet[name]) for name in ("bags_in_process", "spawn", "accrued_interest")]
    found: dict[str, Monthly] = {name: [] for name in LINES}
    for month in range(len(sheet["cash"]) - 1):
        here = {name: float(out[name][month]) for name in READ}
        row = income_of_month(here, pay, [series[month] for series in stocks])
        for name, value in zip(found, row, strict=True):
            found[name].append(value)
    return found


def income_of_month(here: Mapping[str, float], pay: float, stocks: Sequence[float]) -> tuple[float, ...]:
    """The lines of one month, in their order; stocks are bags, spawn and interest not yet paid."""
    bag_rise, spawn_rise, unpaid_rise = stocks
    spawn = here["month_spawn.cost"] - spawn_rise
    costs = here["month_supplies.used_up"] + spawn + here["month_bills.wages"] + here["month_bills.piece"] + pay
    costs += here["month_household.standing_and_selling"] + here["month_cash.unforeseen"] - bag_rise
    of_loans = here["loan_months.interest"] + unpaid_rise
    interest = of_loans + here["month_cash.line_interest"] + here["loan_months.fees"]
    sales, tax = here["month_sales.sales"], here["month_household.tax"]
    left = sales - costs
    before = left - here["month_capital.loss"] - interest
    return (sales, costs, bag_rise, spawn_rise, spawn, left, of_loans, interest, before, tax, before - tax)


def first_full(given: Given, out: Results, years: int) -> int:
    """The first year in which every loan that has come pays more than interest; 0 where there is none."""
    for year in range(years):
        start, end = year * MONTHS_IN_A_YEAR, (year + 1) * MONTHS_IN_A_YEAR
        if sum(numbers(out["loan_months.payments"])[start:end]) <= 0:
            continue
        waits = False
        for loan in loans_of(given) if listed(given) else []:
            months = [month for month in range(start, end) if month + 1 >= loan.drawn_in and loan.amount > 0]
            course = run(loan, max(YEARS * MONTHS_IN_A_YEAR, years * MONTHS_IN_A_YEAR + MONTHS_IN_A_YEAR))
            waits |= any(course.made[month] < loan.of_interest for month in months)
        if not waits:
            return year + 1
    return 0


def coverages(given: Given, out: Results, by_year: Callable[[Monthly], list[float]], earned: Results) -> Results:
    """What covers the loans, year by year and in a typical one."""
    incorporated = same(given["household.form"], "corporation")
    pay = float(given["household.owner_pay"]) if incorporated else 0.0
    home = float(given["household.other_income"]) + pay
    living = float(given["household.needs"]) + float(given["household.debts"])
    payments = by_year(numbers(out["loan_months.payments"]))
    loss = by_year(numbers(out["month_capital.loss"]))
    parts = [by_year(earned[name]) for name in ("before_tax", "loan_interest", "tax")]
    capacity = [
        before + worn + bears + home - living - tax for before, bears, tax, worn in zip(*parts, loss, strict=True)
    ]
    full = first_full(given, out, len(payments))
    after = [over(each, due) for each, due in zip(capacity, payments, strict=True)]
    found: Results = {
        "payments": payments,
        "capacity": capacity,
        "after_household": after,
        "before_household": [
            over(each - home + living + tax, due) for each, tax, due in zip(capacity, parts[2], payments, strict=True)
        ],
        "margin": [each - due for each, due in zip(capacity, payments, strict=True)],
        "replacement_margin": [each - due - worn for each, due, worn in zip(capacity, payments, loss, strict=True)],
        "after_replacement": [
            over(each, due + worn) if due > 0 else 0.0 for each, due, worn in zip(capacity, payments, loss, strict=True)
        ],
        "first_full_year": float(full),
        "coverage_ramp": after[0],
        "coverage_full": after[full - 1] if full else 0.0,
    }
    rate = taken_of_a_profit(given)
    on_top = pay * (1 + float(given["farm.payroll_extra"]))
    profit = float(out["year.profit"]) - on_top
    paid, bears = loans_of_a_year(given)
    put_back = float(out["capital.loss"]) + bears
    can = profit - max(profit, 0.0) * rate + put_back + home - living
    due = paid
    found |= {
        "typical_income": profit,
        "typical_capacity": can,
        "typical_coverage": over(can, due),
        "typical_before": over(profit + put_back, due),
        "typical_margin": can - due,
        "is_due": float(payments[0] > 0 or due > 0),
    }
    price = price_of_one(given, out, due, (rate, put_back, home - living, on_top))
    there = {"coverage_price.price": price, "coverage_price.coverage_then": float(price > 0)}
    return {f"coverage.{name}": value for name, value in found.items()} | there | {"coverage_price.price_proves": 1.0}


def price_of_one(given: Given, out: Results, due: float, parts: tuple[float, float, float, float]) -> float:
    """The price at which what can go to loans is what is due: found by halving, tax worked out at each price tried."""
    del given
    rate, put_back, home, on_top = parts
    takings, fees, sold = (
        float(out[f"customer_year.{name}"]) for name in ("takings_in_all", "fees_in_all", "sold_in_all")
    )
    kept = 1 - (over(fees, takings) if takings else 1.0)
    costs = float(out["year.cost_in_money"]) - fees + on_top

    def short(price: float) -> float:
        """What is missing at a price."""
        earned = price * sold * kept - costs
        return due - (earned - max(earned, 0.0) * rate + put_back + home)

    if due <= 0 or sold * kept <= 0 or short(0) <= 0:
        return 0.0
    high = 1.0
    while short(high) > 0:
        high *= 2
        if high > 1e15:
            return 0.0  # all that is earned is taxed away
    low = 0.0
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if short(middle) > 0 else (low, middle)
    return high


def ratios(
    given: Given, out: Results, year_ends: Sheet, by_year: Callable[[Monthly], list[float]], earned: Results
) -> Results:
    """What lenders compare farms by."""
    own = 0.0 if same(given["household.form"], "corporation") else float(out["hours.own_value"])
    sales, costs, interest, before = (by_year(earned[name]) for name in ("sales", "costs", "interest", "before_tax"))
    loss = by_year(numbers(out["month_capital.loss"]))
    assets, owed, equity = (year_ends[name] for name in ("total_assets", "total_liabilities", "equity"))
    current, short, bag = (year_ends[name] for name in ("current_assets", "current_liabilities", "bags_in_process"))
    years = range(1, len(assets))

    def counted(year: int) -> float:
        """What is due within a year, but for rounding."""
        return short[year] if short[year] > ROUNDING * abs(assets[year]) else 0.0

    takings = float(out["customer_year.takings_in_all"])
    means = {
        name: [(series[year - 1] + series[year]) / 2 for year in years]
        for name, series in (("assets", assets), ("equity", equity))
    }
    returns = [one + other - own for one, other in zip(before, interest, strict=True)]
    found: Results = {
        "unpaid_work": own,
        "debt_at_start": over(owed[0], owed[0] + equity[0]),
        "due": [counted(year) for year in years],
        "current": [over(current[year], counted(year)) for year in years],
        "current_without_bags": [over(current[year] - bag[year], counted(year)) for year in years],
        "working_capital": [current[year] - short[year] for year in years],
        "working_capital_share": [over(current[year] - short[year], sales[year - 1]) for year in years],
        "debt_to_assets": [over(owed[year], owed[year] + equity[year]) for year in years],
        "equity_to_assets": [over(equity[year], owed[year] + equity[year]) for year in years],
        "debt_to_equity": [over(owed[year], equity[year]) for year in years],
        "return_on_assets": [over(one, other) for one, other in zip(returns, means["assets"], strict=True)],
        "return_on_equity": [over(one - own, other) for one, other in zip(before, means["equity"], strict=True)],
        "profit_margin": [over(one, other) for one, other in zip(returns, sales, strict=True)],
        "turnover": [over(one, other) for one, other in zip(sales, means["assets"], strict=True)],
        "expense": [over(one, other) for one, other in zip(costs, sales, strict=True)],
        "depreciation": [over(one, other) for one, other in zip(loss, sales, strict=True)],
        "interest": [over(one, other) for one, other in zip(interest, sales, strict=True)],
        "income": [over(one, other) for one, other in zip(before, sales, strict=True)],
        "shares_agree": 1.0,
        "returns_agree": 1.0,
        "typical_expense": over(out["year.cash_cost"], takings),
        "typical_depreciation": over(out["capital.loss"], takings),
        "typical_interest": over(loans_of_a_year(given)[1], takings),
        "typical_income": over(out["year.profit"], takings),
    }
    return {f"farm_ratios.{name}": value for name, value in found.items()}


def above_the_books(given: Given, out: Results) -> float:
    """What market values are above the books when the plan starts."""
    above = (
        float(given["opening.land_market"]) - float(given["opening.land"])
        if given["opening.land_market_given"]
        else 0.0
    )
    rows = zip(
        given["item.market"],
        given["item.market_given"],
        out["month_capital.item_book_value"],
        given["item.bought_in"],
        strict=True,
    )
    return above + sum(float(market) - float(book) for market, typed, book, month in rows if typed and month <= 0)


BALANCES = (
    "balances",
    "cash_agrees",
    "debt_agrees",
    "receivables_agree",
    "payables_agree",
    "fixed_agrees",
    "current_portion_agrees",
)


def statements(given: Given, out: Results) -> Results:
    """All statements of a farm whose months are worked out in `out`."""
    when = calendar_months(given)
    found = bags(given, out, when)
    spawn = spawn_there(given, out, when, float(out["month_spawn.bags_before"]))
    sheet = balance(given, out, when, found, spawn, accrued(given, len(when.ends)))
    earned = income(out, sheet)
    ends = range(0, len(when.ends) + 1, MONTHS_IN_A_YEAR)
    year_ends: Sheet = {name: [series[month] for month in ends] for name, series in sheet.items()}

    def by_year(monthly: Monthly) -> list[float]:
        return [sum(monthly[month : month + MONTHS_IN_A_YEAR]) for month in range(0, len(monthly), MONTHS_IN_A_YEAR)]

    above = above_the_books(given, out)
    every: Results = {f"bags_value.{name}": value for name, value in found.items()}
    every |= {
        "spawn_stock.value": spawn[1:],
        "spawn_stock.at_start": spawn[0],
        "accrued.interest": sheet["accrued_interest"][1:],
    }
    every |= {f"month_balance.{name}": series[1:] for name, series in sheet.items()}
    every |= {f"month_balance.{name}": 1.0 for name in BALANCES}
    every |= {f"month_income.{name}": series for name, series in earned.items()}
    every["month_income.two_ways_agree"] = 1.0
    other = [all_of_it - loans for all_of_it, loans in zip(earned["interest"], earned["loan_interest"], strict=True)]
    every["year_statements.other_interest"] = by_year(other)
    every |= {f"year_balance.{name}": series[1:] for name, series in year_ends.items()}
    every["year_balance.assets_at_market"] = [each + above for each in year_ends["total_assets"][1:]]
    every["year_balance.equity_at_market"] = [each + above for each in year_ends["equity"][1:]]
    every |= {f"year_statements.{name}": by_year(series) for name, series in earned.items() if name in KEPT}
    every |= {"year_statements.closing": year_ends["cash"][1:], "year_statements.equity": year_ends["equity"][1:]}
    every |= {"year_statements.cash_agrees": 1.0, "year_statements.equity_agrees": 1.0}
    every["year_balance.equity_at_end"] = sheet["equity"][-1]
    every |= {"start_balance.equity": sheet["equity"][0], "start_balance.assets": sheet["total_assets"][0]}
    every |= coverages(given, out, by_year, earned)
    return every | ratios(given, out, year_ends, by_year, earned)


KEPT = ("sales", "costs", "left", "interest", "loan_interest", "before_tax", "tax", "after_tax")
"""Lines of the months that have a line of the years under the same name."""
