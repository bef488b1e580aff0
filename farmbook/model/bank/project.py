"""What the project costs and where the money comes from, and what it brings beside the farm without it."""

from __future__ import annotations

from farmbook.calc.worth import ONE_YEAR
from farmbook.expr.functions import absolute, any_of, maximum, ratio, total
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.axes import MONTH
from farmbook.model.months.last_year import LastYear
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.months.month_cash import MonthCash
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Project"]


class Project(Section):
    """Everything that the plan buys is the project; money to get through the start counts as far as it is more than that."""

    title = "Uses and sources of the project"
    table = "request"

    capital = uses(MonthCapital)
    cash = uses(MonthCash)
    last_year = uses(LastYear)

    contingency = number(
        "Project: put on top of what is bought",
        unit="share",
        usual=(0, 0.2),
        hard=(0, 1),
        default=0.1,
        how="For what a builder forgets: drains, wiring, a driveway.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    owner_cash = number(
        "Project: money of your own",
        unit="money",
        usual=(0, 100000),
        hard=(0, 100000000),
        default=0,
        how="Of the cash on the first day of the plan, what goes into the project. What is put in later comes on top.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    grants = number(
        "Project: grants agreed in writing",
        unit="money",
        usual=(0, 50000),
        hard=(0, 100000000),
        default=0,
        how="They are in no month of the plan: put what comes before it into the cash on its first day.",
        source=COMMON_PRACTICE,
        decided=True,
    )

    # Uses

    @line("Project: bought in the plan", unit="money")
    def bought(self) -> Expr:
        """Things, steamer and lab with a month of the plan; what only replaces worn things is not in it."""
        return total(self.capital.bought, MONTH)

    @line("Project: contingency", unit="money")
    def set_aside(self) -> Expr:
        """A share of what is bought."""
        return self.bought * self.contingency

    @line("Project: money to get through the start, beyond what is bought", unit="money")
    def working(self) -> Expr:
        """The deepest hole of the plan's cash holds what is bought too; nothing where the farm itself pays for a part of that."""
        return maximum(self.cash.needed - self.bought, 0)

    @line("Project: fees of loans that come", unit="money")
    def fees(self) -> Expr:
        """In the months of the plan."""
        return total(self.cash.loans.fees, MONTH)

    @line("Project: all uses", unit="money")
    def uses_in_all(self) -> Expr:
        """Bought, contingency, start and fees."""
        return self.bought + self.set_aside + self.working + self.fees

    # Sources

    @line("Project: loans that come in the plan", unit="money")
    def borrowed(self) -> Expr:
        """All of the list that have a month of the plan."""
        return total(self.cash.loans.drawn, MONTH)

    @line("Project: your own money in all", unit="money")
    def own_money(self) -> Expr:
        """Out of the cash on the first day, and what the owner puts in."""
        return self.owner_cash + self.cash.put_in

    @line("Project: all sources", unit="money")
    def sources_in_all(self) -> Expr:
        """Loans, your own money and grants. A credit line is not among them."""
        return self.borrowed + self.own_money + self.grants

    @line("Project: your own share of the sources", unit="share")
    def own_share(self) -> Expr:
        """Lenders look for a tenth to a third."""
        return ratio(self.own_money, self.sources_in_all)

    @line("Project: sources more than uses", unit="money")
    def over(self) -> Expr:
        """Below zero, money is missing."""
        return self.sources_in_all - self.uses_in_all

    @check(
        "The money for the project is there",
        kind="alert",
        says="The project costs more than loans, your own money and grants come to: see the sheet Project.",
    )
    def paid_for(self) -> Expr:
        """But for rounding. Fine where nothing is bought in the plan."""
        return any_of(self.bought <= 0, self.over >= -1 * self.cash.rounding)

    @line("Project: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "The project takes ",
            figure(self.uses_in_all, -2, named=False),
            "; ",
            figure(self.sources_in_all, -2, named=False),
            " is there for it, ",
            figure(self.own_share, 0, named=False),
            " of that your own. ",
            figure(absolute(self.over), -2, named=False),
            either(self.over < 0, " is missing. ", " is left for what nobody foresees. "),
            either(self.bought > 0, self.brings_told, "Nothing is bought in the plan."),
        )

    # With and without

    @line("Project: years until it is paid back", unit="year", zero_is_none=True)
    def payback(self) -> Expr:
        """What is bought, with contingency, over what the last year of the plan leaves more than a typical one."""
        return ratio(self.bought + self.set_aside, maximum(self.last_year.more, 0)) * ONE_YEAR

    @line("Project: after how many years it is paid back, in words", unit="1")
    def years_told(self) -> Expr:
        """Where it is."""
        return say("paid back after ", figure(self.payback, 1))

    @line("Project: whether it is paid back, where something is bought", unit="1")
    def bought_told(self) -> Expr:
        """Only out of what the last year of the plan leaves more."""
        return say(either(self.payback > 0, self.years_told, "not paid back in any year"))

    @line("Project: whether and when it is paid back", unit="1")
    def payback_told(self) -> Expr:
        """What is bought, with contingency, out of what the last year of the plan leaves more than a typical one."""
        return say(either(self.bought > 0, self.bought_told, "nothing is bought"))

    @line("Project: what it brings, in words", unit="1")
    def brings_told(self) -> Expr:
        """The last year of the plan beside a typical one."""
        return say(
            "The last year of the plan leaves ",
            figure(absolute(self.last_year.more), -2, named=False),
            either(self.last_year.more < 0, " less", " more"),
            " than a typical year, before tax and interest; what is bought is ",
            self.bought_told,
            ".",
        )

    @check(
        "The project leaves more than a typical year does",
        kind="alert",
        says="The last year of the plan leaves less than a typical year, project and all: look on the sheet Cash at bags and wages.",
    )
    def adds(self) -> Expr:
        """But for rounding. Fine where nothing is bought in the plan."""
        return any_of(self.bought <= 0, self.last_year.more >= -1 * self.cash.rounding)
