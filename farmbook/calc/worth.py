"""Money at different times: yearly cost of owning, payback, and the quantity at which a choice turns.

Worth is counted from the day of the purchase: a flow on that day is not discounted (a spreadsheet's NPV discounts it).
"""

from __future__ import annotations

from typing import Final, cast

from farmbook.expr.functions import Operand, maximum, minimum, ratio
from farmbook.expr.nodes import Constant
from farmbook.sources import ARITHMETIC
from farmbook.units import unit

__all__ = [
    "LONGEST_LIFE",
    "ONE_MONTH",
    "ONE_YEAR",
    "annuity_factor",
    "break_even_price",
    "break_even_quantity",
    "capital_recovery",
    "discount",
    "equal_share",
    "equivalent_annual_cost",
    "partial_budget",
    "present_worth",
    "share_of_year_to_pay",
    "straight_line",
    "unpaid_share_of_year",
]

ONE_YEAR: Final = Constant(1, "one_year", label="One year of interest", unit=unit("year"), source=ARITHMETIC.key)
ONE_MONTH: Final = Constant(1, "one_month", label="One month of interest", unit=unit("month"), source=ARITHMETIC.key)


LONGEST_LIFE: Final = Constant(
    1000,
    "longest_life",
    label="Longest life counted",
    unit=unit("year"),
    source=ARITHMETIC.key,
    note="Keeps the powers of interest within what a spreadsheet can hold.",
)


def discount(rate: Operand, time: Operand, period: Operand | float = ONE_YEAR) -> Operand:
    """Worth now of 1 at a later time; interest is added once every `period`: ONE_YEAR, or ONE_MONTH for a monthly rate.

    Units: rate [1/year], time [year], period [year]; gives [1].
    Source: net_present_value.
    """
    worth: Operand = (1 + rate * period) ** -(time / period)
    return worth


def equal_share(time: Operand) -> Operand:
    """What each period bears of an amount spread evenly, without interest.

    Units: time [year]; gives [1/year].
    Source: arithmetic.
    """
    return ratio(cast("Operand", 1), time)


def annuity_factor(rate: Operand, discount: Operand, equal_share: Operand) -> Operand:
    """Level payment for each 1 borrowed; `discount` is that of the whole term. At no interest, the equal share.

    Units: rate [1/year], discount [1], equal_share [1/year]; gives [1/year].
    Source: annuity.
    """
    return ratio(rate, 1 - discount, otherwise=equal_share)


def present_worth(flow: Operand, discount: Operand) -> Operand:
    """Worth now of a later flow of money.

    Units: flow [money], discount [1]; gives [money].
    Source: net_present_value.
    """
    return flow * discount


def capital_recovery(price: Operand, resale: Operand, annuity_factor: Operand, rate: Operand) -> Operand:
    """Yearly cost of owning: the fall in value paid off with interest, and interest on what it sells for at the end.

    Units: price [money], resale [money], annuity_factor [1/year], rate [1/year]; gives [money/year].
    Source: equivalent_annual_cost.
    """
    return (price - resale) * annuity_factor + resale * rate


def equivalent_annual_cost(capital_recovery: Operand, running_cost: Operand) -> Operand:
    """Yearly cost of owning and running, for comparing things of unequal life.

    Units: capital_recovery [money/year], running_cost [money/year]; gives [money/year].
    Source: equivalent_annual_cost.
    """
    return capital_recovery + running_cost


def share_of_year_to_pay(balance: Operand, flow: Operand) -> Operand:
    """Share of a year that its flow needs to bring a balance below zero up to zero; the whole year if it never does.

    The flow is zero or more: a year that loses money brings the balance no nearer.

    Units: balance [money], flow [money]; gives [1].
    Source: farm_management.
    """
    return minimum(ratio(-balance, flow, otherwise=1), 1)


def unpaid_share_of_year(balance: Operand, share_of_year: Operand) -> Operand:
    """Share of a year that still counts to the payback: none once the balance at its start is zero or more.

    Added up over the years this is the payback with part-years, simple or discounted as the flows are.

    Units: balance [money], share_of_year [1]; gives [1].
    Source: farm_management.
    """
    return share_of_year * (balance < 0)


def break_even_quantity(fixed_cost: Operand, price: Operand, variable_cost: Operand) -> Operand:
    """Quantity at which what each unit leaves has paid the fixed cost; zero where it leaves nothing (a flag says so).

    Units: fixed_cost [money], price [money/kg], variable_cost [money/kg]; gives [kg].
    Source: farm_management.
    """
    return ratio(fixed_cost, maximum(price - variable_cost, 0))


def break_even_price(cost: Operand, quantity: Operand, share_kept: Operand) -> Operand:
    """Price at which what is sold just pays its cost; fees that are a share of the price are divided through.

    Units: cost [money], quantity [kg], share_kept [1]; gives [money/kg].
    Source: farm_management.
    """
    return ratio(cost, quantity * share_kept)


def straight_line(price: Operand, resale: Operand, life: Operand) -> Operand:
    """What a thing loses in value each year of its life, every year alike.

    Units: price [money], resale [money], life [year]; gives [money/year].
    Source: farm_management.
    """
    return ratio(price - resale, life)


def partial_budget(added: Operand, saved: Operand | float, spent: Operand, given_up: Operand) -> Operand:
    """What a change is worth: returns added and costs saved, less costs added and returns given up.

    Units: added [money/year], saved [money/year], spent [money/year], given_up [money/year]; gives [money/year].
    Source: partial_budget.
    """
    change: Operand = added + saved - (spent + given_up)
    return change
