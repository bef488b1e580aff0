"""Permits, insurance and the lease: what must be there, and until when."""

from __future__ import annotations

from farmbook.expr.functions import all_of, any_of, month_start, negation, total
from farmbook.expr.nodes import Expr, Label
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import PERMIT
from farmbook.model.bank.request import Request
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.sections.declare import check, line, names, number, text, uses
from farmbook.sections.section import Section

__all__ = ["Permits"]


class Permits(Section):
    """Nothing in the sums rests on them, but the farm does."""

    title = "Permits, insurance and lease"
    table = "request"

    request = uses(Request)
    months = uses(PlanMonths)

    permits = names(PERMIT, "Permit", how="Zoning, boiler inspection, food safety, water, insurance: one row each.")
    office = text("Permit: from whom", default="", axes=(PERMIT,), how="Office or insurer.")
    state = text("Permit: where it stands", default="", axes=(PERMIT,), how="Granted, asked for, not needed, missing.")
    until = number(
        "Permit: valid until",
        unit="date",
        usual=(43831, 54788),
        hard=(36526, 73050),
        optional=True,
        axes=(PERMIT,),
        how="Year-month-day; empty where it has no end.",
        decided=True,
    )
    lease_until = number(
        "Lease of the site: last day",
        unit="date",
        usual=(43831, 54788),
        hard=(36526, 73050),
        optional=True,
        how="Year-month-day, as the lease says without renewal. Empty where you own the site.",
        decided=True,
    )

    @line("Permit: office, as typed", unit="1", axes=(PERMIT,))
    def office_told(self) -> Expr:
        """In words."""
        return Label(self.office, "-")

    @line("Permit: state, as typed", unit="1", axes=(PERMIT,))
    def state_told(self) -> Expr:
        """In words."""
        return Label(self.state, "-")

    @line("Permit: last day", unit="date", axes=(PERMIT,), zero_is_none=True)
    def ends(self) -> Expr:
        """No figure where it has no end."""
        return self.until + 0

    @line("Permit: runs out within the plan", unit="flag", axes=(PERMIT,))
    def runs_out(self) -> Expr:
        """Renew it in time, and put what that costs into the bills."""
        return all_of(self.ends > 0, self.ends < self.months.end)

    @line("Permits that run out within the plan", unit="count")
    def running_out(self) -> Expr:
        """Rows with a day before its end."""
        return total(self.runs_out, PERMIT)

    @line("Asked for: first day after the month of the last payment", unit="date")
    def loan_until(self) -> Expr:
        """By the calendar."""
        return month_start(self.months.start.first_of_month, self.request.ends_in)

    @line("Lease: days beyond the last payment of the loan", unit="day")
    def lease_beyond(self) -> Expr:
        """Below zero, the lease ends first; nothing where no day is given."""
        return (self.lease_until - self.loan_until) * self.given(self.lease_until)

    @line("Permits: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            figure(self.running_out, 0, named=False),
            " of the permits listed run out within the plan. ",
            either(self.lease_outlasts, "No lease ends before the loan.", "The lease ends before the loan does."),
        )

    @check(
        "The lease runs as long as the loan",
        kind="alert",
        says="The lease of the site ends before the loan asked for is paid off: see the sheet Permits.",
    )
    def lease_outlasts(self) -> Expr:
        """Fine where no day is given, or no loan is asked for."""
        return any_of(negation(self.given(self.lease_until)), self.request.amount <= 0, self.lease_beyond >= 0)
