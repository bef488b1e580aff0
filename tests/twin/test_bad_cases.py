"""If things go badly: the cash of each case beside the twin run again on a farm to which just that happens, and what stays."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping
from functools import cache
from math import prod
from pathlib import Path
from typing import Any, Final

import numpy as np
import pytest

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Array
from farmbook.model.axes import MONTH, WEEK
from farmbook.model.stress.bad_cases import CASES
from farmbook.results import whole_farm
from tests.demos import DEMOS, OTHERS
from tests.made import results_of
from tests.twin.farm_twin import schedule, twin
from tests.twin.farm_twin_ground import Given, Results
from tests.twin.farm_twin_months import months
from tests.twin.farms import Farm, in_declared_units, twin_inputs, values_of
from tests.twin.month_farms import month_farm

NAMES: Final = tuple(case.key() for case in CASES)
MOST_ROWS: Final = 50
WITH_WEEKS: Final = ("late_opening", "plant_stops")
"""They write the weeks again too."""
AS_PLANNED: Final = (
    "cold_room.wanted",
    "month_spawn.cost",
    "month_bills.wages",
    "month_bills.piece",
    "month_bills.energy",
    "month_bills.bills_paid",
    "month_supplies.full_week",
    "month_sales.takes",
    "month_sales.all_take",
    "month_sales.going_a_week",
)
"""In these two: what is ordered, hired or contracted, and what customers take."""
MONTHLY: Final = ("month_cash.closing", "month_cash.on_line")
IN_ALL: Final = tuple(
    f"month_cash.{name}" for name in ("lowest", "lowest_month", "peak", "most_missing", "months_below", "last_below")
)
NOTHING_OWED: Final[Mapping[str, Any]] = {
    "opening.cash": 9000,
    "opening.line_limit": 15000,
    "opening.least_cash": 2000,
    "opening.customers_owe": 0,
    "opening.owed_to_suppliers": 0,
    "opening.supply_weeks": 0,
    "household.needs": 30000,
    "customer.days_to_pay": [0, 20, 45, 10, 30],
    "loans.counted": "worked out from the list",
    "loan.amount": [60000, 9000, None],
    "loan.rate": [0.06, 0.04, None],
    "loan.term": [120, 36, None],
    "loan.drawn_in": [3, 0, None],
    "loan.floats": [1, 0, None],
    "stress.building": 0,
    "step_up.from_week": [1, 30, None],
    "step_up.more_bags": [0, 120, None],
}
BY_THE_PIECE: Final = "picked by the piece, spoiling some"
FARMS: Final[Mapping[str, Mapping[str, Any]]] = {
    "running": NOTHING_OWED,
    "new": {**NOTHING_OWED, "farm.stage": "new farm", "opening.cash": 40000},
    BY_THE_PIECE: {
        **NOTHING_OWED,
        "picking.paid": "by the piece",
        "customer.most_a_week": [40, 60, 20, 90, 30],
    },
}
MOVED: Final = "new, with few customers, who take less in summer, and supplies in stock"
"""Here each figure that stays as planned would move with the weeks. Other shocks reach its supplies before the plan."""
MOVED_FARM: Final[Mapping[str, Any]] = {
    **FARMS["new"],
    "opening.supply_weeks": 3,
    "start_up.sales_at_first": 0.2,
    "customer.most_a_week": [20, 30, 10, 40, 15],
    "customer.season": [[1] * 5 + [0.2] * 3 + [1] * 4] * 5,
}
Shocked = tuple[Given, Results]


def farm_of_name(name: str) -> Farm:
    """One of them over three years."""
    return month_farm(MOVED_FARM if name == MOVED else FARMS[name], 36)


@cache
def of_the_book(name: str) -> dict[str, Array]:
    """Cash of the plan and of each case, and what else is compared."""
    wanted = [line for line in whole_farm().lines if _is_compared(line)]
    return {
        line: value[0]
        for line, value in in_declared_units(values_of([farm_of_name(name)], "metric"), "metric", wanted).items()
    }


def _is_compared(line: Line) -> bool:
    plain = line.name.removesuffix(f"_{line.case}") if line.case else line.name
    return plain in (*MONTHLY, *IN_ALL, "household.left_over")


def moved(given: Given, out: Results, **more: Any) -> Shocked:
    """A farm with other inputs, by names with two underscores for the dot."""
    del out
    return {**given, **{name.replace("__", ".", 1): value for name, value in more.items()}}, {}


def alive(given: Given, out: Results, points: str) -> float:
    """Bags that still live through the spawn run with more points of loss."""
    living = float(out["crop.live_per_inoculated"])
    return max(1 - float(given[points]) / living, 0.0)


def lighter(given: Given, out: Results, kept: float) -> Shocked:
    """Less weight; picking by the piece is paid for what is picked."""
    return dict(given), {"shocks.weight_kept": kept, "picking.pick_cost": float(out["picking.pick_cost"]) * kept}


def cheaper(given: Given, out: Results, size: str) -> Shocked:
    return moved(given, out, customer__price=np.asarray(given["customer.price"]) * (1 - float(given[size])))


def dearer_loans(given: Given, out: Results, size: str) -> Shocked:
    points = float(given[size])
    rates = np.asarray(given["loan.rate"]) + np.asarray(given["loan.floats"]) * points
    return moved(given, out, loan__rate=rates, opening__line_rate=float(given["opening.line_rate"]) + points)


def lost(given: Given, out: Results) -> Shocked:
    a_load, bags = float(out["steamer_in_use.bags_per_run"]), float(out["farm.bags_filled_a_year"])
    loads = 1 - float(given["stress.loads"]) * 4 * a_load / bags
    return lighter(given, out, alive(given, out, "stress.points") * loads)


def dearer(given: Given, out: Results) -> Shocked:
    energy, goods, work = (1 + float(given[f"stress.{name}"]) for name in ("energy", "materials", "wages"))
    scaled = {
        "steamer_in_use.energy_cost_per_run": energy,
        "steamer_in_use.demand_cost_per_month": energy,
        "bills.lab_energy": energy,
        "bills.energy_of_rooms": energy,
        "bag.material_cost": goods,
        "farm.labour_rate": work,
        "picking.pick_cost": work,
    }
    return dict(given), {name: float(out[name]) * by for name, by in scaled.items()}


def late(given: Given, out: Results) -> Shocked:
    weeks, begins = float(given["stress.late"]), np.asarray(given["step_up.from_week"])
    return moved(
        given,
        out,
        start_up__first_filling=float(given["start_up.first_filling"]) + weeks,
        start_up__hands_from=float(given["start_up.hands_from"]) + weeks,
        step_up__from_week=begins + weeks * (begins > 1),
    )


def stopped(given: Given, out: Results) -> Shocked:
    """All bags are taken off the plan in one week, and put back some weeks later."""
    bags, begins = float(given["farm.bags_filled_a_week"]), float(given["stress.stopped_from"])
    weeks, more = np.array(given["step_up.from_week"]), np.array(given["step_up.more_bags"])
    weeks[[0, 2]], more[[0, 2]] = (begins, begins + float(given["stress.stopped_for"])), (-bags, bags)
    return moved(given, out, step_up__from_week=weeks, step_up__more_bags=more)


def bad(given: Given, out: Results) -> Shocked:
    kept = (1 - float(given["stress.bad_weight"])) * alive(given, out, "stress.bad_points")
    inputs, _ = cheaper(given, out, "stress.bad_price")
    inputs, _ = dearer_loans(inputs, out, "stress.bad_rate")
    return inputs, lighter(given, out, kept)[1]


HAPPENS: Final[Mapping[str, Callable[[Given, Results], Shocked]]] = {
    "prices_fall": lambda given, out: cheaper(given, out, "stress.price"),
    "less_picked": lambda given, out: lighter(given, out, 1 - float(given["stress.weight"])),
    "more_lost": lost,
    "rates_rise": lambda given, out: dearer_loans(given, out, "stress.rate"),
    "costs_rise": dearer,
    "late_payers": lambda given, out: moved(
        given, out, customer__days_to_pay=np.asarray(given["customer.days_to_pay"]) + float(given["stress.days"])
    ),
    "late_opening": late,
    "plant_stops": stopped,
    "bad_year": bad,
}
"""What happens to a farm in each case, as other inputs or other figures of the typical year; the best customer is held by hand below."""


def twin_months(given: Given, over: Results) -> Results:
    """Weeks and months, all the twin's own but for some figures put in place of its own."""
    found = {**twin(given), **over}
    found = {**found, **schedule(given, found)}
    return {**found, **months(given, found)}


@cache
def as_planned(name: str) -> Results:
    """What stays of the plan of a farm whose weeks are moved."""
    plan = twin_months(twin_inputs(farm_of_name(name)), {})
    return {line: plan[line] for line in AS_PLANNED}


def of_the_twin(case: str, name: str, planned: Results) -> Results:
    """A case of a farm by the twin; where weeks are moved, with these lines as planned."""
    given = twin_inputs(farm_of_name(name))
    shocked, over = HAPPENS[case](given, twin(given))
    return twin_months(shocked, {**over, **planned} if case in WITH_WEEKS else over)


@pytest.mark.parametrize(
    ("case", "name"), [*itertools.product(HAPPENS, FARMS), *itertools.product(WITH_WEEKS, (MOVED,))]
)
def test_cash_of_a_case_is_that_of_a_farm_to_which_it_happens(case: str, name: str) -> None:
    book, own = of_the_book(name), of_the_twin(case, name, as_planned(name))
    for line in (*MONTHLY, *IN_ALL):
        np.testing.assert_allclose(book[f"{line}_{case}"], own[line], rtol=1e-9, atol=1e-5, err_msg=line)


@pytest.mark.parametrize("moved", AS_PLANNED)
def test_each_line_that_stays_as_planned_would_move_the_cash(moved: str) -> None:
    apart = 0.0
    for name in (MOVED, BY_THE_PIECE):
        others = {line: value for line, value in as_planned(name).items() if line != moved}
        closing = of_the_twin("late_opening", name, others)["month_cash.closing"]
        apart += float(np.abs(of_the_book(name)["month_cash.closing_late_opening"] - closing).max())
    assert apart > 1


@pytest.mark.parametrize("name", FARMS)
def test_every_case_moves_some_farm(name: str) -> None:
    book = of_the_book(name)
    base = book["month_cash.closing"]
    still = [case for case in NAMES if np.allclose(book[f"month_cash.closing_{case}"], base)]
    assert still == []


@pytest.mark.parametrize("name", FARMS)
def test_a_typical_year_with_lower_prices_is_that_of_a_farm_with_lower_prices(name: str) -> None:
    given, book = twin_inputs(farm_of_name(name)), of_the_book(name)
    shocked, _ = cheaper(given, {}, "stress.price")
    own = twin(shocked)["household.left_over"]
    np.testing.assert_allclose(book["household.left_over_prices_fall"], own, rtol=1e-9, atol=1e-6)


def test_cases_of_size_nothing_are_the_plan_itself() -> None:
    nothing = {f"stress.{each}": 0 for each in ("price", "weight", "points", "loads", "rate", "energy", "materials")}
    nothing |= {f"stress.{each}": 0 for each in ("wages", "days", "building", "late", "stopped_for", "bad_price")}
    nothing |= {"stress.bad_weight": 0, "stress.bad_points": 0, "stress.bad_rate": 0}
    farm = month_farm({**FARMS["new"], **nothing}, 36)
    wanted = [line for line in whole_farm().lines if _is_compared(line)]
    found = in_declared_units(values_of([farm], "metric"), "metric", wanted)
    for line in wanted:
        if line.case and line.case != "customer_lost":
            plain = line.name.removesuffix(f"_{line.case}")
            np.testing.assert_array_equal(found[line.name], found[plain], err_msg=line.name)


def rows(case: str, of: Axis, scenario: Path) -> int:
    """How many rows over this list a case writes in a book: a line with a second list one for each of its members."""
    found, sizes = 0, results_of(scenario).scenario.sizes
    for line in results_of(scenario).roots:
        if line.case == case and of in line.axes:
            found += prod(sizes[axis] for axis in line.axes if axis is not of)
    return found


@pytest.mark.parametrize("scenario", [*DEMOS, *OTHERS], ids=lambda path: path.stem)
@pytest.mark.parametrize("case", NAMES)
def test_a_case_writes_few_rows(case: str, scenario: Path) -> None:
    assert 0 < rows(case, MONTH, scenario) <= MOST_ROWS
    assert (rows(case, WEEK, scenario) > 0) == (case in WITH_WEEKS)


def test_what_the_plan_starts_with_is_the_same_in_every_case() -> None:
    starts = (
        "month_sales.opening_owed",
        "month_sales.opening_left",
        "month_supplies.opening_owed",
        "month_supplies.opening_stock",
    )
    made = {line.name for line in whole_farm().lines if line.case}
    assert [f"{start}_{case}" for start in starts for case in NAMES if f"{start}_{case}" in made] == []


def test_the_best_customer_gone_by_hand() -> None:
    """Half of what went to it is sold at the lowest price of all; everybody else gets what they got."""
    farm = month_farm(FARMS["running"], 12)
    names = ("month_sales.gets", "month_sales.gets_customer_lost", "month_sales.sales_customer_lost")
    wanted = [line for line in whole_farm().lines if line.name in (*names, "in_turn.takings", "in_turn.is_there")]
    found = {name: value[0] for name, value in in_declared_units(values_of([farm], "metric"), "metric", wanted).items()}
    given = twin_inputs(farm)
    prices, best = np.asarray(given["customer.price"]), np.asarray(twin(given)["customer_year.is_largest"])
    is_best = (found["in_turn.is_there"] * best).sum(axis=1) > 0
    assert is_best.sum() == 1
    gets = np.where(is_best[:, None], found["month_sales.gets"] / 2, found["month_sales.gets"])
    np.testing.assert_allclose(found["month_sales.gets_customer_lost"], gets, rtol=1e-12)
    lowest = prices[prices > 0].min() / prices[best > 0][0]
    takings = found["in_turn.takings"] * np.where(is_best, lowest, 1)
    np.testing.assert_allclose(found["month_sales.sales_customer_lost"], takings @ gets, rtol=1e-9)
