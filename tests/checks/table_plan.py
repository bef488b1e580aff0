"""Checks of the plan by weeks and months: farms that break them, and farms that they leave in peace.

The plan of these farms has twelve months; the plausible farm says nothing of its rooms, its cold room or its cash, and has two
changes of its plan that change nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked

__all__ = ["PLAN"]

NEW: Final = {"farm.stage": "new farm"}
PAID: Final = {"hours.counted": "hours paid"}
NOTHING_CHANGES: Final = {"step_up.name": ("", "", "")}
SAWDUST: Final = {"spawn.supply": "made on the farm", "own_spawn.route": "one grain, then sawdust spawn"}
FEW_CUSTOMERS: Final = {"customer.most_a_week": [20, 30, 10, 5, 0], "plan.days_it_keeps": 10.5}
NOBODY: Final = {"customer.name": ("",) * 5}
WOUND_UP: Final = {"step_up.from_week": [10, 1, None], "step_up.more_bags": [-620, 0, None]}
SHUT: Final = {"plan.shut_weeks": [5, 0, 0, 0, 0, 5, 5, 5, 0, 0, 0, 0]}
LINE: Final = {"opening.line_owed": 20000, "opening.line_limit": 25000, "opening.line_rate": 0.12}
TAXED: Final = {
    "selling.tax": "registered: passed on",
    "customer.tax_inside": 0.1,
    "sales_tax.counted": "in cash",
    "sales_tax.on_supplies": 0.07,
    "sales_tax.on_bills": 0.1,
    "sales_tax.on_bought": 0.19,
    "sales_tax.owed_first": 900,
}
STRANGE: Final = (NEW, WOUND_UP, SHUT, NOBODY, {"farm.bags_filled_a_week": 0}, {"crop.loss_at_steaming": 1})
"""Farms of which no sum may be blamed."""

WEEKS: Final[Mapping[str, Checked]] = {
    # 50 weeks worked leave two
    "filling.shut_weeks_agree": Checked(
        fails=({"plan.shut_weeks": [1] + [0] * 10 + [3]}, {"plan.shut_weeks": 0}, {"farm.weeks_worked": 51.5, **SHUT}),
        holds=(
            {"plan.shut_weeks": [1] + [0] * 10 + [2]},
            {"plan.shut_weeks": [1] + [0] * 11},
            {"plan.shut_weeks": 0, "farm.weeks_worked": 52},
        ),
    ),
    # 26 weeks before the plan, one of them for a part of a week and one empty: 168 days
    "lags.within_reach": Checked(
        fails=({"crop.added_days": [0, 133.6, 14, 15]}, {"crop.spawn_run_days": 141.6}),
        holds=({"crop.added_days": [0, 133.5, 14, 15]}, {"crop.spawn_run_days": 141.5}),
    ),
    # 20 weeks after the plan, one of them in hand; a load is on the bench 1.42 days after filling
    "ordering.within_reach": Checked(
        fails=({"spawn.lead_time": 19.21}, {**SAWDUST, "own_spawn.run_days": [17, 11, 120, 12]}),
        holds=({"spawn.lead_time": 19.2}, {"spawn.lead_time": 0}, SAWDUST),
    ),
    "steaming_ahead.within_reach": Checked(
        fails=({**SAWDUST, "own_spawn.run_days": [140, 11, 13, 12]},),
        holds=({**SAWDUST, "own_spawn.run_days": [120, 11, 13, 12]}, {"own_spawn.run_days": [140, 11, 13, 12]}),
    ),
    "in_process.bags_add_up": Checked(
        slips=(
            "in_process.waiting_counted",
            "in_process.incubating",
            "in_process.fruiting",
            "in_process.lost_by_opening",
            "in_process.filled_counted",
            "in_process.gone_counted",
            "in_process.there_counted",
        ),
        holds=STRANGE,
    ),
    "cold_room.weight_adds_up": Checked(
        slips=("cold_room.ready_counted", "cold_room.gone_counted"), holds=(*STRANGE, FEW_CUSTOMERS)
    ),
    # 614 bags inoculated a week stand for 21 days; 589 live and take a place for 25
    "shortages.places_enough": Checked(
        fails=(
            {"incubation_room.own_places": 1841},
            {"fruiting_room.own_places": 2104},
            {"fruiting_room.own_places": 2105, "step_up.more_fruiting": [-1, 0, None]},
            {"fruiting_room.own_places": 2105, "step_up.more_bags": [10, 0, None]},
        ),
        holds=(
            {"incubation_room.own_places": 1842},
            {"fruiting_room.own_places": 2105},
            {"fruiting_room.own_places": 2104, "step_up.more_fruiting": [1, 0, None]},
            {"fruiting_room.own_places": 2105, "step_up.more_bags": [10, 0, None], "step_up.from_week": [52, 1, None]},
            {"fruiting_room.own_places": 300, "farm.bags_filled_a_week": 0},
        ),
    ),
    # the busiest week takes 112.6 hours
    "shortages.hands_enough": Checked(
        fails=(
            {**PAID, "hours.hired_hours": 67.5, "hours.own_hours": 45},
            {"step_up.more_hours": [-1, 0, None]},
            {"step_up.more_bags": [100, 0, None]},
            {**NEW, "start_up.first_filling": 1, "start_up.hands_from": 30},
        ),
        holds=(
            {**PAID, "hours.hired_hours": 67.7, "hours.own_hours": 45},
            {"step_up.more_hours": [1, 0, None]},
            {"step_up.more_bags": [100, 0, None], "step_up.more_hours": [30, 0, None]},
            NEW,
        ),
    ),
    # three loads of 310 can be steamed a week
    "shortages.others_enough": Checked(
        fails=(
            {"step_up.more_bags": [311, 0, None]},
            {"step_up.more_loads": [-2, 0, None]},
            {**FEW_CUSTOMERS, "limits.cold_room": 60},
        ),
        holds=(
            {"step_up.more_bags": [310, 0, None]},
            {"step_up.more_bags": [311, 0, None], "step_up.more_loads": [1, 0, None]},
            {**FEW_CUSTOMERS, "limits.cold_room": 6000},
            {"limits.cold_room": 0, "customer.most_a_week": 400},
        ),
    ),
}
MONTHS: Final[Mapping[str, Checked]] = {
    "month_totals.weeks_make_months": Checked(
        slips=(
            "month_totals.filled",
            "month_totals.filled_so_far",
            "month_totals.filled_by_weeks",
            "month_totals.sold",
            "month_totals.sold_so_far",
            "month_totals.sold_by_weeks",
        ),
        holds=STRANGE,
    ),
    "month_sales.sales_add_up": Checked(
        slips=(
            "month_sales.sales",
            "month_sales.due",
            "month_sales.paid",
            "month_sales.collected",
            "month_sales.owed",
            "month_sales.owed_counted",
        ),
        holds=(*STRANGE, {"opening.customers_owe": 400000}, {"customer.days_to_pay": [0, 200, 30.4375, 15, 365]}),
    ),
    "month_sales.shares_add_up": Checked(
        slips=("month_sales.gets", "month_sales.stretched", "month_sales.gone_there", "month_sales.gone"),
        holds=(*STRANGE, {"customer.season": [[1] * 5 + [0] * 3 + [1] * 4] * 5}, {"customer.most_a_week": 0}),
    ),
    "month_supplies.supplies_add_up": Checked(
        slips=(
            "month_supplies.purchases_so_far",
            "month_supplies.paid",
            "month_supplies.owed",
        ),
        holds=(*STRANGE, {"opening.supplier_days": 200}, {"opening.owed_to_suppliers": 90000}),
    ),
    "month_sales_tax.tax_adds_up": Checked(
        slips=(
            "month_sales_tax.net",
            "month_sales_tax.owed",
            "month_sales_tax.paid_over",
            "month_sales_tax.owed_by_cash",
        ),
        slips_where=TAXED,
        holds=(*STRANGE, TAXED, {**TAXED, **NEW}, {**TAXED, "sales_tax.owed_first": -4000}),
    ),
    "month_cash.cash_adds_up": Checked(
        slips=("month_cash.before_line", "month_cash.closing", "month_cash.without_line"),
        holds=(*STRANGE, LINE, {**LINE, "household.needs": 300000}, {"opening.cash": -1e6}),
    ),
    # a hundred in cash is 4,542.89 at the end of the first month, which is the lowest
    "month_cash.enough": Checked(
        fails=(
            {"opening.cash": 100, "opening.least_cash": 4542.95},
            {"opening.cash": 100, "opening.least_cash": 5000, "opening.line_limit": 457},
            {"opening.cash": 0, "household.needs": 200000},
        ),
        holds=(
            {"opening.cash": 100, "opening.least_cash": 4542.85},
            {"opening.cash": 100, "opening.least_cash": 5000, "opening.line_limit": 458},
            {"opening.cash": None, "household.needs": 200000},
        ),
    ),
    "last_year.near": Checked(
        fails=(
            {**NOTHING_CHANGES, "plan.yield_season": 0.8},
            {**NOTHING_CHANGES, "plan.yield_season": 1.3},
        ),
        holds=(
            NOTHING_CHANGES,
            {**NOTHING_CHANGES, "plan.yield_season": 0.95},
            {**NOTHING_CHANGES, "plan.yield_season": 1.05},
            {"plan.yield_season": 0.8},
        ),
    ),
}
PLAN: Final[Mapping[str, Checked]] = {**WEEKS, **MONTHS}
