"""What the lender may ask to be kept, year by year: asked, reached, met or not."""

from __future__ import annotations

from farmbook.expr.functions import any_of, negation, total
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import MONTH, PLAN_YEAR
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.statements.coverage import Coverage
from farmbook.model.statements.farm_ratios import FarmRatios
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Covenants"]


class Covenants(Section):
    """The lender's own figures count: type them over these. No figure here is a decision to lend."""

    title = "What is to be kept"
    table = "request"

    coverage = uses(Coverage)
    ratios = uses(FarmRatios)
    cash = uses(MonthCash)

    wanted_coverage = number(
        "To be kept: coverage, the household paid, at least",
        unit="1",
        usual=(1, 1.75),
        hard=(0.1, 10),
        default=1.25,
        how="As the lender says; many want 1.15 to 1.5.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    wanted_current = number(
        "To be kept: current ratio, at least",
        unit="1",
        usual=(1, 2),
        hard=(0, 10),
        default=1.25,
        how="As the lender says; many want 1.2 to 1.75.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    most_debt = number(
        "To be kept: debt over assets, at most",
        unit="share",
        usual=(0.3, 0.7),
        hard=(0, 5),
        default=0.6,
        how="As the lender says; above 60% a farm is hard to lend to.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    wanted_cash = number(
        "To be kept: cash, at least",
        unit="money",
        usual=(0, 20000),
        hard=(0, 100000000),
        default=0,
        how="At the end of every month, as the lender says.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    @line("Coverage is kept", unit="flag", axes=(PLAN_YEAR,))
    def coverage_kept(self) -> Expr:
        """The household paid; fine in a year without payments."""
        return any_of(self.coverage.payments <= 0, self.coverage.after_household >= self.wanted_coverage)

    @line("Current ratio is kept", unit="flag", axes=(PLAN_YEAR,))
    def current_kept(self) -> Expr:
        """At the end of the year; fine where nothing is due but a rounding."""
        due = self.ratios.due
        return any_of(due <= 0, self.ratios.current >= self.wanted_current)

    @line("Debt over assets is kept", unit="flag", axes=(PLAN_YEAR,))
    def debt_kept(self) -> Expr:
        """At the end of the year, at cost. Asked so that assets below zero do not keep it."""
        sheet = self.ratios.statements.balance
        return sheet.total_liabilities <= sheet.total_assets * self.most_debt

    @line("Month with less cash than is to be kept", unit="flag", axes=(MONTH,))
    def short_of_cash(self) -> Expr:
        """At its end, with the credit line."""
        return self.cash.closing < self.wanted_cash - self.cash.rounding

    @line("Months with less cash than is to be kept", unit="count", axes=(PLAN_YEAR,))
    def months_short(self) -> Expr:
        """Of the year."""
        return self.coverage.statements.years.of_year(self.short_of_cash)

    @line("Cash is kept", unit="flag", axes=(PLAN_YEAR,))
    def cash_kept(self) -> Expr:
        """At the end of each month. Fine as long as you have not said what cash there is."""
        return any_of(negation(self.cash.given(self.cash.cash)), self.months_short <= 0)

    @line("Of the four, kept in the year", unit="count", axes=(PLAN_YEAR,))
    def kept(self) -> Expr:
        """All four, if it goes well."""
        return self.coverage_kept + self.current_kept + self.debt_kept + self.cash_kept

    @line("Years in which coverage is not kept", unit="count")
    def years_short(self) -> Expr:
        """Of the plan."""
        return total(1 - self.coverage_kept, PLAN_YEAR)

    @line("What is to be kept and is not, all years", unit="count")
    def not_kept(self) -> Expr:
        """Of four a year."""
        others = (1 - self.current_kept) + (1 - self.debt_kept) + (1 - self.cash_kept)
        return self.years_short + total(others, PLAN_YEAR)

    @check(
        "What the lender asks to be kept is kept in every year",
        kind="alert",
        says="In some year of the plan coverage, current ratio, debt or cash is not as the lender asks: see the sheet Ratios.",
    )
    def all_kept(self) -> Expr:
        """By the figures typed on Inputs."""
        return self.not_kept <= 0

    @line("Ratios: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "With the household paid, each 1.00 of loan payments is covered by ",
            self.coverage.years_told,
            "; ",
            figure(self.wanted_coverage, 2, named=False),
            " is asked for. ",
            either(self.not_kept > 0, "Not all that is to be kept is kept.", "All that is to be kept is kept."),
        )
