"""The loan that is asked for: which one of the list, who asks, and what for."""

from __future__ import annotations

from farmbook.calc.worth import ONE_MONTH
from farmbook.expr.functions import all_of, any_of, negation, same_text, total
from farmbook.expr.nodes import Expr, Label
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import LOAN
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.year.loans import Loans
from farmbook.sections.declare import check, line, member, text, uses
from farmbook.sections.section import Section

__all__ = ["Request"]


class Request(Section):
    """One loan of the list; a scenario with this table gets the sheets for the bank."""

    title = "The loan asked for"
    table = "request"

    rows = uses(LoanList)
    loans = uses(Loans)
    cash = uses(MonthCash)

    loan = member(LOAN, "Loan asked for", how="One of the loans of the list, by its name.")
    purpose = text("What it is for", default="", how="In one line: what is bought or built with it.")
    security = text("Security offered, in words", default="", how="In one line; item by item on the sheet Tables.")
    applicant = text("Who asks for the loan", default="", how="Names of all who would sign.")
    experience = text("Years of growing, and of running a farm", default="", how="In one line.")
    training = text(
        "Training and advice", default="", how="Courses, and who advises you: extension, accountant, other growers."
    )
    response = text(
        "What you do if cash falls short", default="", how="In one line: what you would cut, sell or put off, and when."
    )

    reasons = text(
        "Why the plan is better than what was reached before",
        default="",
        how="In one line: what is new, and what shows that it works.",
    )
    weakest = text(
        "Weakest point of the plan", default="", how="In one line, in your own words; a lender finds it anyway."
    )

    @line("Is the loan asked for", unit="flag", axes=(LOAN,))
    def asked(self) -> Expr:
        """The row of the list with its name."""
        present = self.model.axes[LOAN].present
        return all_of(present > 0, same_text(self.rows.loans, self.loan))

    def of_it(self, column: Expr) -> Expr:
        """What a column of the list says of the loan asked for."""
        return total(column * self.asked, LOAN)

    @line("Asked for: amount", unit="money")
    def amount(self) -> Expr:
        """As in the list of loans."""
        return self.of_it(self.rows.amount)

    @line("Asked for: rate a year", unit="share")
    def rate(self) -> Expr:
        """Fees left out."""
        return self.of_it(self.rows.rate)

    @line("Asked for: months to pay", unit="count")
    def term(self) -> Expr:
        """From the month in which the money comes."""
        return self.of_it(self.rows.term) / ONE_MONTH

    @line("Asked for: months of interest only", unit="count")
    def interest_only(self) -> Expr:
        """The first of them."""
        return self.of_it(self.rows.interest_only) / ONE_MONTH

    @line("Asked for: comes in month of the plan", unit="count")
    def drawn_in(self) -> Expr:
        """0 for one that runs already."""
        return self.of_it(self.rows.drawn_in)

    @line("Asked for: last payment in month of the plan", unit="count")
    def ends_in(self) -> Expr:
        """Months after the plan are counted on."""
        return self.of_it(self.rows.ends_in)

    @line("Asked for: level payment", unit="money")
    def payment(self) -> Expr:
        """Interest and repayment together."""
        return self.of_it(self.rows.level_payment)

    @line("Asked for: paid in a full year", unit="money")
    def paid_a_year(self) -> Expr:
        """The first year of level payments."""
        return self.of_it(self.rows.paid_a_year)

    @line("Asked for: interest in a full year", unit="money")
    def interest_a_year(self) -> Expr:
        """In the first year of level payments."""
        return self.of_it(self.rows.interest_a_year)

    @line("Applicant, as it stands on the request", unit="1")
    def applicant_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.applicant, "(not said)")

    @line("Purpose, as it stands on the request", unit="1")
    def purpose_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.purpose, "(not said)")

    @line("Security, as it stands on the request", unit="1")
    def security_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.security, "(not said)")

    @line("Experience, as it stands on the request", unit="1")
    def experience_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.experience, "(not said)")

    @line("Training, as it stands on the request", unit="1")
    def training_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.training, "(not said)")

    @line("If cash falls short, as it stands on the request", unit="1")
    def response_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.response, "(not said)")

    @line("Why better than before, as it stands on the request", unit="1")
    def reasons_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.reasons, "(not said)")

    @line("Weakest point, as it stands on the request", unit="1")
    def weakest_told(self) -> Expr:
        """From the inputs sheet."""
        return Label(self.weakest, "(not said)")

    @line("Request: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            figure(self.amount, 0, named=False),
            " is asked for, to come in month ",
            figure(self.drawn_in, 0, named=False),
            " of the plan, over ",
            figure(self.term, 0, named=False),
            " months at ",
            figure(self.rate, 1, named=False),
            " a year: ",
            figure(self.payment, 0, named=False),
            " a payment",
            either(self.interest_only > 0, ", after a time of interest only.", "."),
        )

    @check(
        "The loan asked for is in the plan",
        kind="alert",
        says="A loan is asked for, but loans stand as one sum: choose on Inputs to have payments worked out from the list.",
    )
    def counted(self) -> Expr:
        """Its money and its payments are in the months then. Fine as long as you have not said what cash there is."""
        return any_of(self.amount <= 0, self.loans.listed, negation(self.cash.given(self.cash.cash)))
