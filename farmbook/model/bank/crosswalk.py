"""The first year's costs under the plain headings of a government's farm-loan plan."""

from __future__ import annotations

from farmbook.expr.functions import is_word, joined, total
from farmbook.expr.nodes import Expr, Label, Line, wrap
from farmbook.model.axes import BILL, MONTH
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import LISTED
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.year_statements import YearStatements
from farmbook.sections.declare import LineOf, line, text, uses
from farmbook.sections.section import Section

__all__ = ["Crosswalk"]


def _of_bills(label: str, word: str) -> LineOf:
    """Bills that bear one word as their heading."""

    def headed(self: Crosswalk) -> Expr:
        """Bills with this heading; nothing where bills stand as one sum."""
        return self.with_heading(word)

    return line(f"Form: {label}", unit="money")(headed)


class Crosswalk(Section):
    """A scenario with the table [crosswalk] gets this sheet. What has no heading of its own is under other."""

    title = "The headings of a form"
    table = "crosswalk"

    months = uses(PlanMonths)
    bills = uses(Bills)
    income = uses(MonthIncome)
    statements = uses(YearStatements)

    form = text("Form that the headings are for", default="", how="As the office calls it, with its date.")
    heading = text(
        "Bill: heading on the form",
        default="",
        axes=(BILL,),
        how="Car and truck, chemicals, custom hire, freight, fuel, insurance, rent, repairs, supplies, taxes or utilities.",
    )

    @line("Form, as typed", unit="1")
    def form_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.form, "(not said)")

    @line("Bill: heading, as typed", unit="1", axes=(BILL,))
    def heading_told(self) -> Expr:
        """Empty: it goes under other."""
        return Label(self.heading, "other")

    def with_heading(self, word: str) -> Expr:
        """A year's bills whose heading is this word."""
        listed = self.bills.chose(self.bills.counted, LISTED)
        return joined(total(self.bills.amount * is_word(self.heading, word), BILL) * listed, "money")

    def first_year(self, monthly: Line) -> Expr:
        """What a line by month comes to in the first twelve."""
        return total(monthly * (self.months.year <= 1), MONTH)

    car = _of_bills("car and truck", "car and truck")
    chemicals = _of_bills("chemicals", "chemicals")
    hire = _of_bills("custom hire", "custom hire")
    fuel = _of_bills("fuel", "fuel")
    insurance = _of_bills("insurance", "insurance")
    rent = _of_bills("rent", "rent")
    repairs = _of_bills("repairs", "repairs")
    taxes = _of_bills("taxes", "taxes")

    @line("Form: depreciation", unit="money")
    def depreciation(self) -> Expr:
        """Loss in value, straight line; a tax return may have another."""
        return self.statements.years.in_the_year(self.statements.loss, wrap(1))

    @line("Form: selling of the first year", unit="money")
    def selling(self) -> Expr:
        """Fees, packing, stalls, delivery."""
        return self.first_year(self.income.cash.sales.selling)

    @line("Form: fees and packing of the first year", unit="money")
    def fees(self) -> Expr:
        """They stand under other."""
        return self.first_year(self.income.cash.sales.fees_and_packing)

    @line("Form: freight and trucking", unit="money")
    def freight(self) -> Expr:
        """Stalls and delivery, and bills with this heading."""
        return self.selling - self.fees + self.with_heading("freight")

    @line("Form: labor hired", unit="money")
    def labor(self) -> Expr:
        """Wages and picking by the piece with payroll tax, and the owner's pay of a corporation."""
        return self.first_year(self.income.wages)

    @line("Form: seeds and plants", unit="money")
    def seeds(self) -> Expr:
        """Spawn used."""
        return self.first_year(self.income.spawn_used)

    @line("Form: supplies", unit="money")
    def supplies(self) -> Expr:
        """Mix, bags and ties used, and bills with this heading. Packing stands with fees, under other."""
        return self.first_year(self.income.cash.supplies.used_up) + self.with_heading("supplies")

    @line("Form: utilities", unit="money")
    def utilities(self) -> Expr:
        """Energy, and bills with this heading."""
        return self.first_year(self.income.cash.bills.energy) + self.with_heading("utilities")

    @line("Form: interest", unit="money")
    def interest(self) -> Expr:
        """With loan fees, as it grows."""
        return self.statements.years.in_the_year(self.statements.interest, wrap(1))

    @line("Form: all expenses", unit="money")
    def expenses(self) -> Expr:
        """Costs of running, loss in value and interest, as on the sheet Income."""
        costs = self.statements.years.in_the_year(self.statements.costs, wrap(1))
        return costs + self.depreciation + self.interest

    @line("Form: car to freight, added up", unit="money")
    def first_few(self) -> Expr:
        """Car and truck to freight."""
        return self.car + self.chemicals + self.hire + self.depreciation + self.freight

    @line("Form: fuel to repairs, added up", unit="money")
    def next_few(self) -> Expr:
        """In the order of the form."""
        return self.fuel + self.insurance + self.labor + self.rent + self.repairs

    @line("Form: seeds to interest, added up", unit="money")
    def last_few(self) -> Expr:
        """In the order of the form."""
        return self.seeds + self.supplies + self.taxes + self.utilities + self.interest

    @line("Form: other", unit="money")
    def other(self) -> Expr:
        """The rest: fees, packing, bills without a heading, what is set aside, less what went into bags that are still there."""
        return self.expenses - self.first_few - self.next_few - self.last_few
