"""What is left for the people: after loans, tax and what must be put by, and after the household has lived."""

from __future__ import annotations

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.expr.functions import any_of, maximum
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.owning.capital import Capital
from farmbook.model.year.loans import Loans
from farmbook.model.year.year import Year
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Household"]


class Household(Section):
    """The family behind the farm."""

    title = "Left for the household"

    year = uses(Year)
    capital = uses(Capital)
    loans = uses(Loans)

    tax_rate = number(
        "Income tax and social insurance, of the profit",
        unit="share",
        usual=(0.1, 0.45),
        hard=(0, 1),
        default=0.25,
        how="Last year's bill over last year's profit; ask who does your taxes. One rate for everything.",
        source=COMMON_PRACTICE,
        note="From memory, and rough. No tax is counted on a loss.",
    )
    needs = number(
        "What the household needs a year",
        unit="money/year",
        usual=(15000, 90000),
        hard=(0, 10000000),
        default=0,
        how="Living, housing, insurance, school and household debts of twelve months.",
        source=COMMON_PRACTICE,
        note="0 until you give it.",
    )
    other_income = number(
        "Income from elsewhere a year",
        unit="money/year",
        usual=(0, 60000),
        hard=(0, 10000000),
        default=0,
        how="Wages, pensions and rents of the family, after tax.",
        source=COMMON_PRACTICE,
    )

    @line("Tax on the profit a year", unit="money/year")
    def tax(self) -> Expr:
        """Nothing in a year of loss."""
        return maximum(self.year.profit, 0) * self.tax_rate

    @line("Left for the household a year", unit="money/year")
    def left(self) -> Expr:
        """After loan payments, tax, and what replaces worn-out things."""
        return self.year.cash_profit - self.loans.paid - self.tax - self.capital.loss

    @line("Left when the household has lived, a year", unit="money/year")
    def left_over(self) -> Expr:
        """With what comes in from elsewhere. Below zero, the plan eats its own substance."""
        return self.left + self.other_income - self.needs

    @line("Left when the household has lived, a month", unit="money/month")
    def left_over_a_month(self) -> Expr:
        """A twelfth of the year; months differ."""
        return self.left_over / MONTHS_IN_A_YEAR

    @line("Household, in a sentence", unit="1")
    def told(self) -> Expr:
        """Income from elsewhere stands beside it; both count for what the household needs."""
        return say(
            "After loans, tax and replacement ",
            figure(self.left, -2, named=False),
            " a year is left for the household",
            ", with ",
            figure(self.other_income, -2, named=False),
            " more from elsewhere",
            either(self.lives, ".", ": less than it needs."),
        )

    @check(
        "The household can live on what is left",
        kind="alert",
        says="What is left for the household, with income from elsewhere, is less than it needs: see the sheet Year.",
    )
    def lives(self) -> Expr:
        """Fine as long as you have not said what it needs."""
        return any_of(self.needs <= 0, self.left_over >= 0)
