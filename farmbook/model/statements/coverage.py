"""What can go to loans once the household has lived and tax is paid, and how it covers what is due."""

from __future__ import annotations

from farmbook.calc.ratios import coverage, earned_before_owning, repayment_capacity
from farmbook.expr.functions import all_of, any_of, joined, maximum, previous, starting, total
from farmbook.expr.nodes import Expr, wrap
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import LOAN, MONTH, PLAN_YEAR
from farmbook.model.calendar.plan_months import MONTHS_A_YEAR
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.repaying.loans_then import LoansAtMonth
from farmbook.model.statements.year_statements import YearStatements
from farmbook.model.year.year import Year
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_RATIOS

__all__ = ["Coverage"]


class Coverage(Section):
    """A corporation pays its owner a wage: it is a cost already, and counts as income of the household, which lives on it."""

    title = "Coverage of loan payments"

    book = uses(MonthCash)
    then = uses(LoansAtMonth)
    statements = uses(YearStatements)
    year = uses(Year)

    # The household

    @line("Coverage: household income from elsewhere and owner's pay, a year", unit="money")
    def household_income(self) -> Expr:
        """Owner's pay of a corporation alone, before payroll tax."""
        pay = self.book.home.owner_pay * self.book.home.household.incorporated
        return joined(self.book.home.household.other_income + pay, "money")

    @line("Coverage: living and debts of the household, a year", unit="money")
    def living(self) -> Expr:
        """As on the sheet Year."""
        return joined(self.book.home.household.goes, "money")

    # Year by year

    @line("Coverage: principal and interest due in the year", unit="money", axes=(PLAN_YEAR,))
    def payments(self) -> Expr:
        """As scheduled, balloons with them; the credit line aside."""
        return self.statements.years.of_year(self.book.loans.payments)

    @line("Coverage: can go to loans, before the household", unit="money", axes=(PLAN_YEAR,), source=FARM_RATIOS)
    def earned(self) -> Expr:
        """Left before loss in value and interest of loans; the credit line and loan fees are paid first."""
        return self.statements.left - self.statements.other_interest

    @line("Can go to loans, the household paid", unit="money", axes=(PLAN_YEAR,), source=FARM_RATIOS)
    def capacity(self) -> Expr:
        """Capital debt repayment capacity: with income from elsewhere, less living and tax."""
        return repayment_capacity(self.earned, self.household_income, self.living, self.statements.tax)

    @line("Coverage, the household paid", unit="1", axes=(PLAN_YEAR,), source=FARM_RATIOS, zero_is_none=True)
    def after_household(self) -> Expr:
        """Money there for each 1.00 of loan payments due."""
        return coverage(self.capacity, self.payments)

    @line("Coverage before the household is paid", unit="1", axes=(PLAN_YEAR,), source=FARM_RATIOS, zero_is_none=True)
    def before_household(self) -> Expr:
        """Business coverage: left before loss in value, interest and tax. Read it beside the other, never alone."""
        return coverage(self.earned, self.payments)

    @line("Left after loan payments", unit="money", axes=(PLAN_YEAR,), source=FARM_RATIOS)
    def margin(self) -> Expr:
        """Capital debt repayment margin."""
        return self.capacity - self.payments

    @line("Left after loan payments and replacing", unit="money", axes=(PLAN_YEAR,), source=FARM_RATIOS)
    def replacement_margin(self) -> Expr:
        """Replacing counts as the loss in value of the year."""
        return self.margin - self.statements.loss

    @line("Coverage of loans and replacing", unit="1", axes=(PLAN_YEAR,), source=FARM_RATIOS, zero_is_none=True)
    def after_replacement(self) -> Expr:
        """Nothing where no loan is paid."""
        return coverage(self.capacity, (self.payments + self.statements.loss) * (self.payments > 0))

    # Which year counts

    @line("Loans of interest only in the month", unit="count", axes=(MONTH,))
    def interest_only(self) -> Expr:
        """Of those that have come by its end, as they stood before its payment."""
        rows = self.then.rows
        waits = (previous(self.then.left, MONTH) > rows.level_payments) * (rows.drawn_in <= self.then.months.number)
        return total(waits * (rows.amount > 0), LOAN)

    @line("Year of full loan payments", unit="flag", axes=(PLAN_YEAR,))
    def is_full(self) -> Expr:
        """No loan pays interest only at any time in it, and something is paid."""
        waiting = self.statements.years.of_year(self.interest_only) * self.book.loans.loans.listed
        return all_of(waiting <= 0, self.payments > 0)

    @line("A year of full loan payments has come", unit="flag", axes=(PLAN_YEAR,))
    def full_by_now(self) -> Expr:
        """This year or an earlier one."""
        return starting(0, maximum(previous(self.full_by_now, PLAN_YEAR), self.is_full))

    @line("First year of full loan payments", unit="count", zero_is_none=True)
    def first_full_year(self) -> Expr:
        """Of the plan."""
        with_full = total(self.full_by_now, PLAN_YEAR)
        return (total(1 - self.full_by_now, PLAN_YEAR) + 1) * (with_full > 0)

    @line("Coverage of the first year, the household paid", unit="1", zero_is_none=True)
    def coverage_ramp(self) -> Expr:
        """Of the plan; loans may pay interest only in it."""
        return self.statements.years.in_the_year(self.after_household, wrap(1))

    @line("Coverage of the first year of full payments, the household paid", unit="1", zero_is_none=True)
    def coverage_full(self) -> Expr:
        """No figure where the plan has no such year."""
        return self.statements.years.in_the_year(self.after_household, self.first_full_year)

    # A typical year

    @line("Typical year: owner's pay of a corporation, payroll tax with it", unit="money")
    def typical_pay(self) -> Expr:
        """Twelve months."""
        return self.book.home.pay * MONTHS_A_YEAR

    @line("Typical year: income from operations", unit="money")
    def typical_income(self) -> Expr:
        """After loss in value and interest, before tax and household."""
        return joined(self.year.profit, "money") - self.typical_pay

    @line("Typical year: tax on that", unit="money")
    def typical_tax(self) -> Expr:
        """Nothing on a loss."""
        return maximum(self.typical_income, 0) * self.book.home.household.tax_slope

    @line("Typical year: loan payments due", unit="money")
    def typical_payments(self) -> Expr:
        """A full year of level payments."""
        return joined(self.year.loans.paid, "money")

    @line("Typical year: can go to loans, before the household", unit="money", source=FARM_RATIOS)
    def typical_earned(self) -> Expr:
        """Loss in value and interest put back."""
        return earned_before_owning(
            self.typical_income, joined(self.year.capital.loss, "money"), joined(self.year.loans.interest, "money")
        )

    @line("Typical year: can go to loans, the household paid", unit="money", source=FARM_RATIOS)
    def typical_capacity(self) -> Expr:
        """With income from elsewhere, less living and tax."""
        return repayment_capacity(self.typical_earned, self.household_income, self.living, self.typical_tax)

    @line("Coverage of a typical year, the household paid", unit="1", source=FARM_RATIOS, zero_is_none=True)
    def typical_coverage(self) -> Expr:
        """Money there for each 1.00 of loan payments due."""
        return coverage(self.typical_capacity, self.typical_payments)

    @line("Typical year: coverage before the household is paid", unit="1", source=FARM_RATIOS, zero_is_none=True)
    def typical_before(self) -> Expr:
        """Read it beside the other, never alone."""
        return coverage(self.typical_earned, self.typical_payments)

    @line("Typical year: left after loan payments", unit="money", source=FARM_RATIOS)
    def typical_margin(self) -> Expr:
        """Capital debt repayment margin."""
        return self.typical_capacity - self.typical_payments

    @line("A loan is paid in the first year or a typical one", unit="flag")
    def is_due(self) -> Expr:
        """Else there is nothing to cover."""
        first = self.statements.years.in_the_year(self.payments, wrap(1))
        return any_of(first > 0, self.typical_payments > 0)

    @line("Coverage in the year of full payments, in words", unit="1")
    def told_full(self) -> Expr:
        """Where there is one, and it is not the first of all."""
        return say(
            ", ",
            figure(self.coverage_full, 2, named=False),
            " in year ",
            figure(self.first_full_year, 0, named=False),
            ", the first of full payments,",
        )

    @line("Coverage year by year, in words", unit="1")
    def years_told(self) -> Expr:
        """The first year, that of full payments where it is a later one, a typical year."""
        return say(
            figure(self.coverage_ramp, 2, named=False),
            " in the first year",
            either(self.first_full_year > 1, self.told_full, ""),
            " and ",
            figure(self.typical_coverage, 2, named=False),
            " in a typical one",
        )

    @line("Coverage, in words", unit="1")
    def told(self) -> Expr:
        """Where a loan is paid."""
        return say("Once the household is paid, for each 1.00 due on loans there is ", self.years_told, ".")

    @line("Coverage: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(either(self.is_due, self.told, "No loan is paid in the first year, nor in a typical one."))
