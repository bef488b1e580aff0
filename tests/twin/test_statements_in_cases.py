"""The balance sheet of every case in which things go badly: it balances in every month, without a plug, and can fail to."""

from __future__ import annotations

from functools import cache
from typing import Final

import numpy as np
import pytest

from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Line
from farmbook.interpret.numbers import Engine, Values
from farmbook.model.axes import MONTH
from farmbook.model.statements.month_balance import MonthBalance
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.year_statements import YearStatements
from farmbook.model.stress.bad_cases import CASES, BadCase
from farmbook.results import lowered, whole_farm
from tests.twin.farms import axis_sizes, cells_of
from tests.twin.month_farms import month_farm
from tests.twin.test_bad_cases import FARMS

IDENTITIES: Final = (
    MonthBalance.balances,
    MonthBalance.cash_agrees,
    MonthBalance.debt_agrees,
    MonthBalance.receivables_agree,
    MonthBalance.payables_agree,
    MonthBalance.fixed_agrees,
    MonthBalance.current_portion_agrees,
    MonthIncome.two_ways_agree,
    YearStatements.cash_agrees,
    YearStatements.equity_agrees,
)
TO_BUILD: Final = {
    **FARMS["running"],
    "stress.building": 0.2,
    "item.bought_in": [3, 20, None],
    "capital.steamer_bought_in": 4,
    "capital.lab_bought_in": 2,
    "spawn.supply": "made on the farm",
}
ALL: Final = (*FARMS.values(), TO_BUILD)
BY_NAME: Final = {case.key(): case for case in CASES}
CASE = pytest.mark.parametrize("case", BY_NAME)


@cache
def with_statements(case: str) -> BadCase:
    """The case once more, with the statements too: the book writes only what its answers need."""
    plain = BY_NAME[case]
    wanted = (*plain.wanted, *IDENTITIES, MonthBalance.equity)
    kept: type[BadCase] = type(f"{plain.__name__}Stated", (plain,), {"wanted": wanted}, words=f"{plain.words}, stated")
    return kept(whole_farm())


@cache
def of_farms(case: str) -> Values:
    """All lines of some farms over three years, the case's among them."""
    roots = dict(lowered("metric").roots)
    roots |= {line: lower(line, "metric") for line in with_statements(case).lines}
    farms = [month_farm(changes, 36) for changes in ALL]
    sizes = axis_sizes(farms[0].names, farms[0].months)
    return Engine(Graph(roots), dict(sorted(sizes.items(), key=lambda each: each[0].order)), "metric").run(
        cells_of(farms, "metric")
    )


def own(case: str, name: str) -> Line:
    """A line that the case makes again."""
    section = with_statements(case)
    return next(line for line in section.lines if line.name == f"{name}_{section.key()}")


@CASE
def test_statements_tie_in_every_month(case: str) -> None:
    section, values = with_statements(case), of_farms(case)
    for identity in IDENTITIES:
        held = values[section.of(identity)]
        assert held.reshape(-1).tolist() == [1] * len(ALL), identity.name


@CASE
def test_what_is_your_own_moves_in_some_farm(case: str) -> None:
    values = of_farms(case)
    moved = values[own(case, "month_balance.equity")] - values[whole_farm().line(MonthBalance.equity)]
    assert np.abs(moved).max() > 1


@CASE
def test_a_falsified_month_breaks_the_balance(case: str) -> None:
    """Cash of one month is taken as another than it is, once more and once less, in the numbers that the check reads."""
    values = of_farms(case)
    of = with_statements(case).of
    owned, owed, equity = (
        values[of(line)] for line in (MonthBalance.total_assets, MonthBalance.total_liabilities, MonthBalance.equity)
    )
    rounding = values[of(MonthBalance.rounding)].reshape(-1)
    assert owned.shape[1] == whole_farm().made_for(36)[MONTH]
    for slip in (1.0, -1.0):
        wrong = owned.copy()
        wrong[:, 7] += slip
        assert (((wrong - owed - equity) ** 2).sum(axis=1) > rounding**2).all()
        assert (((owned - owed - equity) ** 2).sum(axis=1) <= rounding**2).all()
