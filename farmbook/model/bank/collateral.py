"""Security offered, item by item: what a lender may lend on it, and what a forced sale would bring."""

from __future__ import annotations

from farmbook.expr.functions import any_of, maximum, ratio, total
from farmbook.expr.nodes import Expr, Label
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import SECURITY
from farmbook.model.bank.request import Request
from farmbook.sections.declare import check, line, names, number, text, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Collateral"]


class Collateral(Section):
    """At what it would fetch, not at what it cost. Bags in process and cultures are no security."""

    title = "Security"

    request = uses(Request)

    items = names(SECURITY, "Security", how="One row for each thing offered: make, year and serial number in the name.")
    market_value = number(
        "Security: market value",
        unit="money",
        usual=(500, 200000),
        hard=(0, 100000000),
        axes=(SECURITY,),
        how="What a willing buyer would pay today: an appraisal, or what such things were sold for.",
        source=COMMON_PRACTICE,
    )
    owed_on_it = number(
        "Security: owed on it to others",
        unit="money",
        usual=(0, 100000),
        hard=(0, 100000000),
        default=0,
        axes=(SECURITY,),
        how="Liens that come before this loan; your own statement, or a search of the register.",
        source=COMMON_PRACTICE,
    )
    lendable = number(
        "Security: share a lender lends on",
        unit="share",
        usual=(0.3, 0.85),
        hard=(0, 1),
        default=0.6,
        axes=(SECURITY,),
        how="Ask the lender; land more, used equipment less, built-in things little or nothing.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    forced = number(
        "Security: share a forced sale brings",
        unit="share",
        usual=(0.2, 0.8),
        hard=(0, 1),
        default=0.4,
        axes=(SECURITY,),
        how="Of the market value, sold in weeks to whoever comes; an auctioneer knows.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    selling = number(
        "Security: costs of selling it so",
        unit="share",
        usual=(0.05, 0.2),
        hard=(0, 1),
        default=0.1,
        axes=(SECURITY,),
        how="Of what the sale brings: hauling, auctioneer, lawyer.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    condition = text("Security: condition", default="", axes=(SECURITY,), how="In two or three words.")
    valued = text(
        "Security: how it is valued", default="", axes=(SECURITY,), how="Appraisal, quote or own guess, and when."
    )
    insured = text("Security: insurance", default="", axes=(SECURITY,), how="Insurer and sum, or none.")

    @line("Security: condition, as typed", unit="1", axes=(SECURITY,))
    def condition_told(self) -> Expr:
        """In words."""
        return Label(self.condition, "-")

    @line("Security: how valued, as typed", unit="1", axes=(SECURITY,))
    def valued_told(self) -> Expr:
        """In words."""
        return Label(self.valued, "-")

    @line("Security: insurance, as typed", unit="1", axes=(SECURITY,))
    def insured_told(self) -> Expr:
        """In words."""
        return Label(self.insured, "-")

    @line("Security: lendable value", unit="money", axes=(SECURITY,))
    def lendable_value(self) -> Expr:
        """The share lent on, less what is owed on it to others."""
        return maximum(self.market_value * self.lendable - self.owed_on_it, 0)

    @line("Security: forced sale, net", unit="money", axes=(SECURITY,))
    def forced_value(self) -> Expr:
        """After costs of selling and what is owed on it to others."""
        return maximum(self.market_value * self.forced * (1 - self.selling) - self.owed_on_it, 0)

    @line("All security: market value", unit="money")
    def market_in_all(self) -> Expr:
        """All rows."""
        return total(self.market_value, SECURITY)

    @line("All security: owed on it to others", unit="money")
    def owed_in_all(self) -> Expr:
        """All rows."""
        return total(self.owed_on_it, SECURITY)

    @line("All security: lendable value", unit="money")
    def lendable_in_all(self) -> Expr:
        """All rows."""
        return total(self.lendable_value, SECURITY)

    @line("All security: forced sale, net", unit="money")
    def forced_in_all(self) -> Expr:
        """All rows."""
        return total(self.forced_value, SECURITY)

    @line("Security: the loan, of the lendable value", unit="share", zero_is_none=True)
    def loan_to_value(self) -> Expr:
        """Above 100% the lendable value does not carry the loan. No figure where nothing is offered."""
        return ratio(self.request.amount, self.lendable_in_all)

    @line("Security: lendable value for each 1 asked for", unit="1", zero_is_none=True)
    def margin(self) -> Expr:
        """Some lenders want 1.25."""
        return ratio(self.lendable_in_all, self.request.amount)

    @line("Security: missing if all is sold by force when most is owed", unit="money")
    def shortfall(self) -> Expr:
        """The loan asked for owes most when it has just come: so much would be left to pay."""
        return maximum(self.request.amount - self.forced_in_all, 0)

    @check(
        "The security offered carries the loan asked for",
        kind="alert",
        says="Less may be lent on the security listed than is asked for: ask the lender what else it takes, or for what share.",
    )
    def carries(self) -> Expr:
        """By the shares lent on. Fine where nothing is listed."""
        return any_of(self.market_in_all <= 0, self.lendable_in_all >= self.request.amount)

    @line("Security missing, in words", unit="1")
    def shortfall_told(self) -> Expr:
        """Where a forced sale does not pay the loan."""
        return say("it would leave ", figure(self.shortfall, -2, named=False), " of the loan unpaid.")

    @line("Security: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "A lender may lend ",
            figure(self.lendable_in_all, -2, named=False),
            " on what is offered, for ",
            figure(self.request.amount, -2, named=False),
            " asked for. A forced sale would bring ",
            figure(self.forced_in_all, -2, named=False),
            ": ",
            either(self.shortfall > 0, self.shortfall_told, "it would pay the loan."),
        )
