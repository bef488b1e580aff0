"""Checks of the statements: figures that must not be falsified, and farms that they leave in peace."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from tests.checks.checked import Checked
from tests.checks.table_plan import LINE, STRANGE, TAXED

__all__ = ["STATEMENTS"]

LISTED: Final = {"loans.counted": "worked out from the list"}
BOTH_RUN: Final = {**LISTED, "loan.drawn_in": 0}
OWNED: Final = {
    "opening.land": 40000,
    "opening.land_market": 90000,
    "opening.other_current": 700,
    "opening.other_due": 1200,
    "opening.other_long": 30000,
}
PUT_IN: Final = {"opening.put_in": 9000, "opening.put_in_month": 5}
OWNED_IN_ONE_SUM: Final = {"capital.counted": "one sum", "capital.own_loss": 5000}
CORPORATION: Final = {"household.form": "corporation", "household.owner_pay": 30000}
FARMS: Final[tuple[dict[str, Any], ...]] = (
    *STRANGE,
    {},
    LISTED,
    OWNED,
    PUT_IN,
    {**LINE, "household.needs": 300000},
    OWNED_IN_ONE_SUM,
    CORPORATION,
    TAXED,
)

STATEMENTS: Final[Mapping[str, Checked]] = {
    "bags_value.counts_add_up": Checked(
        slips=(
            "bags_value.waiting",
            "bags_value.incubating",
            "bags_value.fruiting",
            "bags_value.lost_so_far",
            "bags_value.dumped_so_far",
            "bags_value.by_flows",
        ),
        holds=FARMS,
    ),
    "month_balance.balances": Checked(
        slips=(
            "month_balance.total_assets",
            "month_balance.current_assets",
            "month_balance.receivables",
            "month_balance.bags_in_process",
            "month_balance.fixed",
            "month_balance.equity",
            "month_balance.other_short",
            "month_income.after_tax",
            "month_income.left",
        ),
        slips_where={**LISTED, **TAXED},
        holds=FARMS,
    ),
    "month_balance.cash_agrees": Checked(
        slips=("month_balance.cash", "month_cash.without_line", "month_cash.closing"), holds=FARMS
    ),
    "month_income.two_ways_agree": Checked(
        slips=("month_income.sales", "month_income.costs", "month_income.wages", "month_income.left"), holds=FARMS
    ),
    "month_balance.debt_agrees": Checked(
        slips=(
            "month_balance.loans_current",
            "month_balance.loans_later",
            "month_balance.debt_by_payments",
            "loan_months.owed",
            "loan_months.payments",
        ),
        slips_where=LISTED,
        holds=FARMS,
    ),
    "month_balance.receivables_agree": Checked(
        slips=("month_balance.receivables", "month_sales.owed_counted", "month_sales.owed"), holds=FARMS
    ),
    "month_balance.payables_agree": Checked(
        slips=("month_balance.payables", "month_supplies.purchases_so_far", "month_supplies.owed"), holds=FARMS
    ),
    "month_balance.fixed_agrees": Checked(
        slips=(
            "month_balance.fixed",
            "month_capital.value",
            "equipment_schedule.value",
            "equipment_schedule.items_value",
        ),
        holds=(
            *FARMS,
            {"item.bought_in": [3, 84, None]},
            {"capital.steamer_bought_in": 4, "capital.lab_bought_in": 2, "spawn.supply": "made on the farm"},
            {"item.age": [60, 3, None]},
        ),
    ),
    "month_balance.current_portion_agrees": Checked(
        slips=("month_balance.repaid_so_far", "loan_months.due_at_start", "loan_months.payments"),
        slips_where=BOTH_RUN,
        holds=(*FARMS, BOTH_RUN),
    ),
    "year_statements.cash_agrees": Checked(
        slips=(
            "year_statements.closing",
            "year_statements.received",
            "year_statements.paid_running",
            "year_statements.sales_tax",
            "year_statements.from_loans",
            "year_balance.cash",
        ),
        slips_where={**LISTED, **TAXED},
        holds=FARMS,
    ),
    "year_statements.equity_agrees": Checked(
        slips=(
            "year_statements.equity",
            "year_statements.after_tax",
            "year_statements.drawn",
            "year_balance.total_assets",
        ),
        slips_where={**LISTED, "household.needs": 30000},
        holds=FARMS,
    ),
    "coverage_price.price_proves": Checked(
        slips=("coverage_price.price", "coverage_price.costs", "coverage_price.wanted", "coverage_price.income_then"),
        slips_where={**LISTED, "household.needs": 2e6},
        holds=(*FARMS, {"household.needs": 300000, **LISTED}, {"household.tax_rate": 1, **LISTED}),
    ),
    "farm_ratios.shares_agree": Checked(
        slips=("farm_ratios.expense", "farm_ratios.income", "year_statements.costs", "year_statements.sales"),
        holds=FARMS,
    ),
    "farm_ratios.returns_agree": Checked(
        slips=("farm_ratios.return_on_assets", "farm_ratios.profit_margin", "farm_ratios.turnover"), holds=FARMS
    ),
}
