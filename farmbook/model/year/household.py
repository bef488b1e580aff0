"""What is left for the people: after loans, tax and what must be put by, and after the household has lived."""

from __future__ import annotations

from typing import Final

from farmbook.calc.calendar import MONTHS_IN_A_YEAR
from farmbook.calc.tax import social_on_each_more, tax_on_each_more
from farmbook.expr.functions import any_of, maximum, minimum
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.owning.capital import Capital
from farmbook.model.year.loans import Loans
from farmbook.model.year.year import Year
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, SOCIAL_INSURANCE

__all__ = ["Household"]

SOLE_TRADER: Final = Option("sole trader", "sole trader or partnership")
CORPORATION: Final = Option("corporation", "corporation")
IN_ONE_RATE: Final = Option("in the one rate", "in the one rate")
OWN_RATE: Final = Option("by its own rate", "by its own rate")


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
        how="Last year's bill over last year's profit; ask who does your taxes. Income tax alone where insurance has its own rate.",
        source=COMMON_PRACTICE,
        note="From memory, and rough. No tax is counted on a loss.",
    )
    form = choice(
        "Who the farm belongs to",
        SOLE_TRADER,
        CORPORATION,
        default=SOLE_TRADER,
        how="It changes what the owner's pay is, and what tax is taken of. Ask who does your taxes.",
        source=COMMON_PRACTICE,
    )
    social = choice(
        "Social insurance of the self-employed",
        IN_ONE_RATE,
        OWN_RATE,
        default=IN_ONE_RATE,
        how="By its own rate where it is taken of the profit. In a corporation payroll tax on the owner's pay stands for it.",
        source=COMMON_PRACTICE,
    )
    social_rate = number(
        "Social insurance of the self-employed: rate",
        unit="share",
        usual=(0.05, 0.3),
        hard=(0, 1),
        default=0.153,
        how="Of your country, for the self-employed. Read only where it has its own rate.",
        source=SOCIAL_INSURANCE,
        note="Read for one country in one year; rates change.",
        decided=True,
    )
    social_share = number(
        "Social insurance of the self-employed: taken of so much of the profit",
        unit="share",
        usual=(0.5, 1),
        hard=(0, 1),
        default=0.9235,
        how="The part of the profit that the rate is taken of; all of it in most countries.",
        source=SOCIAL_INSURANCE,
        note="From memory, for one country.",
        decided=True,
    )
    social_deducted = number(
        "Social insurance of the self-employed: part that income tax may deduct",
        unit="share",
        usual=(0, 1),
        hard=(0, 1),
        default=0.5,
        how="Ask who does your taxes; 0 where income tax is taken of all the profit.",
        source=SOCIAL_INSURANCE,
        note="From memory, for one country.",
        decided=True,
    )
    needs = number(
        "What the household needs a year",
        unit="money/year",
        usual=(15000, 90000),
        hard=(0, 10000000),
        default=0,
        how="Living, housing, insurance and school of twelve months. Debts have an input of their own.",
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

    debts = number(
        "Household debts paid a year",
        unit="money/year",
        usual=(0, 30000),
        hard=(0, 10000000),
        default=0,
        how="House, car and card payments of the family that are not in what it needs.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("The farm is a corporation", unit="flag")
    def incorporated(self) -> Expr:
        """Its owner gets a wage."""
        return self.chose(self.form, CORPORATION)

    @line("Social insurance of the self-employed by its own rate", unit="flag")
    def social_apart(self) -> Expr:
        """Never in a corporation: payroll tax goes with its owner's pay."""
        return self.chose(self.social, OWN_RATE) * (1 - self.incorporated)

    @line("Social insurance on each more of profit", unit="share", source=SOCIAL_INSURANCE)
    def social_slope(self) -> Expr:
        """0 where the one rate holds it."""
        return social_on_each_more(self.social_rate, self.social_share) * self.social_apart

    @line("Tax on each more of profit", unit="share", source=SOCIAL_INSURANCE)
    def tax_slope(self) -> Expr:
        """With social insurance of its own rate, part of which income tax deducts. At most all of it."""
        return minimum(tax_on_each_more(self.tax_rate, self.social_slope, self.social_deducted), 1)

    @line("Tax on the profit a year", unit="money/year")
    def tax(self) -> Expr:
        """Social insurance with it. Nothing in a year of loss."""
        return maximum(self.year.profit, 0) * self.tax_slope

    @line("Left for the household a year", unit="money/year")
    def left(self) -> Expr:
        """After loan payments, tax, and what replaces worn-out things."""
        return self.year.cash_profit - self.loans.paid - self.tax - self.capital.loss

    @line("Living and debts of the household, a year", unit="money/year")
    def goes(self) -> Expr:
        """All that it needs, whatever it draws."""
        return self.needs + self.debts

    @line("Left when the household has lived, a year", unit="money/year")
    def left_over(self) -> Expr:
        """With what comes in from elsewhere. Below zero, the plan eats its own substance."""
        return self.left + self.other_income - self.goes

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
        return any_of(self.goes <= 0, self.left_over >= 0)
