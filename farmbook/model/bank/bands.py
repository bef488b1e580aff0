"""Whether a ratio is good, to be watched or weak, in words, by limits that stand in cells."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from farmbook.expr.functions import sentence
from farmbook.expr.nodes import Expr
from farmbook.model.axes import PLAN_YEAR
from farmbook.model.statements.coverage import Coverage
from farmbook.model.statements.farm_ratios import FarmRatios
from farmbook.sections.declare import LineOf, NumberInput, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Bands"]


def _limit(label: str, default: float, unit: str = "share") -> NumberInput:
    """One end of what is to be watched."""
    return number(
        f"Bands: {label}",
        unit=unit,
        usual=(default / 2, default * 2),
        hard=(-10, 10),
        default=default,
        how="From guidance for crops and dairy, rounded; type what your lender goes by.",
        source=COMMON_PRACTICE,
        decided=True,
    )


def _band(label: str, value: Callable[[Any], Expr], over: Callable[[Any], Expr], name: str, *, more: bool) -> LineOf:
    """The band of a ratio in each year; `over` is what it is over, without which there is none."""

    def judged(self: Any) -> Expr:
        """By the limits on Inputs."""
        found, good, weak = value(self), getattr(self, f"{name}_good"), getattr(self, f"{name}_weak")
        steps = (found > weak) + (found >= good) if more else (found < weak) + (found <= good)
        return sentence(1 + (over(self) > 0) * (1 + steps), "no figure", "weak", "watch", "good")

    return line(f"{label}: band", unit="1", axes=(PLAN_YEAR,))(judged)


def _sales(self: Any) -> Expr:
    found: Expr = self.ratios.statements.sales
    return found


class Bands(Section):
    """They come from field crops and dairy; a rented building with a crop of weeks is another thing. No ratio is a decision."""

    title = "Bands of ratios"
    table = "request"

    coverage = uses(Coverage)
    ratios = uses(FarmRatios)

    cover_good = _limit("coverage is good from", 1.5, "1")
    cover_weak = _limit("coverage is weak up to", 1.1, "1")
    current_good = _limit("current ratio is good from", 2, "1")
    current_weak = _limit("current ratio is weak up to", 1.3, "1")
    working_good = _limit("working capital of sales is good from", 0.3)
    working_weak = _limit("working capital of sales is weak up to", 0.1)
    debt_good = _limit("debt over assets is good up to", 0.3)
    debt_weak = _limit("debt over assets is weak from", 0.6)
    return_good = _limit("return on assets is good from", 0.12)
    return_weak = _limit("return on assets is weak up to", 0.03)
    margin_good = _limit("profit margin is good from", 0.25)
    margin_weak = _limit("profit margin is weak up to", 0.1)
    expense_good = _limit("operating expense is good up to", 0.6)
    expense_weak = _limit("operating expense is weak from", 0.8)
    interest_good = _limit("interest is good up to", 0.05)
    interest_weak = _limit("interest is weak from", 0.1)
    income_good = _limit("income of sales is good from", 0.2)
    income_weak = _limit("income of sales is weak up to", 0.1)

    cover = _band(
        "Coverage, the household paid",
        lambda self: self.coverage.after_household,
        lambda self: self.coverage.payments,
        "cover",
        more=True,
    )
    current = _band(
        "Current ratio",
        lambda self: self.ratios.current,
        lambda self: self.ratios.due,
        "current",
        more=True,
    )
    working = _band(
        "Working capital of sales", lambda self: self.ratios.working_capital_share, _sales, "working", more=True
    )
    debt = _band(
        "Debt over assets",
        lambda self: self.ratios.debt_to_assets,
        lambda self: self.ratios.statements.balance.total_assets,
        "debt",
        more=False,
    )
    returned = _band(
        "Return on assets",
        lambda self: self.ratios.return_on_assets,
        lambda self: self.ratios.statements.balance.total_assets,
        "return",
        more=True,
    )
    margin = _band("Profit margin", lambda self: self.ratios.profit_margin, _sales, "margin", more=True)
    expense = _band("Operating expense", lambda self: self.ratios.expense, _sales, "expense", more=False)
    interest = _band("Interest of sales", lambda self: self.ratios.interest, _sales, "interest", more=False)
    income = _band("Income of sales", lambda self: self.ratios.income, _sales, "income", more=True)
