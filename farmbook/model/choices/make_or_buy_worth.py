"""Making spawn as money laid out: what it is worth over the years, when it is back, and both ways added up."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.calc.worth import (
    ONE_YEAR,
    discount,
    present_worth,
    share_of_year_to_pay,
    unpaid_share_of_year,
)
from farmbook.expr.functions import (
    all_of,
    any_of,
    internal_rate,
    joined,
    maximum,
    minimum,
    previous,
    running_sum,
    sentence,
    total,
    where,
)
from farmbook.expr.nodes import Expr
from farmbook.model.axes import YEAR
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import FARM_MANAGEMENT, NET_PRESENT_VALUE

__all__ = ["MakeOrBuyWorth"]


class MakeOrBuyWorth(Section):
    """Year by year over the life of the lab; nothing is counted after it."""

    title = "Spawn: the lab as money laid out"

    choice = uses(MakeOrBuy)

    # The years

    @line("Spawn lab: years counted, the start as one", unit="count", axes=(YEAR,))
    def counted(self) -> Expr:
        """1 for the day it is bought."""
        return running_sum(1, YEAR)

    @line("Spawn lab: years from the start", unit="year", axes=(YEAR,))
    def year(self) -> Expr:
        """0 is the day it is bought; every other year stands for its end."""
        return (self.counted - 1) * ONE_YEAR

    @line("Spawn lab: laid out now", unit="flag", axes=(YEAR,))
    def at_start(self) -> Expr:
        """1 on the day it is bought."""
        return self.year <= 0

    @line("Spawn lab: in use", unit="flag", axes=(YEAR,))
    def in_use(self) -> Expr:
        """1 for the years it lasts."""
        return all_of(self.year > 0, self.year <= self.choice.life)

    @line("Spawn lab: sold now", unit="flag", axes=(YEAR,))
    def at_end(self) -> Expr:
        """1 in the last year it is in use."""
        return all_of(self.in_use, self.year + ONE_YEAR > self.choice.life)

    # Flows

    @line("Spawn lab: paid for it", unit="money", axes=(YEAR,))
    def paid(self) -> Expr:
        """The lab and the trials."""
        return self.choice.capital * self.at_start

    @line("Spawn lab: saved by it", unit="money", axes=(YEAR,))
    def saved(self) -> Expr:
        """What buying costs less what making costs, before the lab is paid for."""
        return self.choice.saving * ONE_YEAR * self.in_use

    @line("Spawn lab: sold for", unit="money", axes=(YEAR,))
    def sold(self) -> Expr:
        """At the end of its life."""
        return self.choice.resale * self.at_end

    @line("Spawn lab: money in less money out", unit="money", axes=(YEAR,))
    def flow(self) -> Expr:
        """Below zero: out."""
        return self.saved + self.sold - self.paid

    @line("Spawn lab: worth today of 1 in that year", unit="1", axes=(YEAR,), source=NET_PRESENT_VALUE)
    def discount(self) -> Expr:
        """At the yearly return you want; the day it is bought is not discounted."""
        return discount(joined(self.choice.wanted_return, "1/year"), self.year, ONE_YEAR)

    @line("Spawn lab: worth today", unit="money", axes=(YEAR,), source=NET_PRESENT_VALUE)
    def worth(self) -> Expr:
        """The flow of each year, brought to the day the lab is bought."""
        return present_worth(self.flow, self.discount)

    @line("Spawn lab: what making is worth today, above the return you want", unit="money", source=NET_PRESENT_VALUE)
    def worth_in_all(self) -> Expr:
        """Above zero: making is the better use of the money. Bankers call it net present value."""
        return total(self.worth, YEAR)

    # When it is back

    @line("Spawn lab: still to be paid back", unit="money", axes=(YEAR,))
    def balance(self) -> Expr:
        """Below zero: not back yet. Interest and what it sells for are left out."""
        return running_sum(self.saved - self.paid, YEAR)

    @line("Spawn lab: short at the start of the year", unit="money", axes=(YEAR,))
    def short(self) -> Expr:
        """Below zero, or nothing once it is paid back."""
        return minimum(previous(self.balance, YEAR), 0)

    @line("Spawn lab: gained by it", unit="money", axes=(YEAR,))
    def gained(self) -> Expr:
        """What it saves; nothing where it saves nothing."""
        return maximum(self.saved, 0)

    @line("Spawn lab: share of the year to pay back", unit="share", axes=(YEAR,), source=FARM_MANAGEMENT)
    def share_to_pay(self) -> Expr:
        """Of the saving of that year; the whole year where it does not do."""
        return share_of_year_to_pay(self.short, self.gained)

    @line("Spawn lab: share of the year not yet paid back", unit="share", axes=(YEAR,), source=FARM_MANAGEMENT)
    def unpaid(self) -> Expr:
        """None once it is back."""
        return unpaid_share_of_year(self.short, self.share_to_pay) * self.in_use

    @line("Spawn lab: years until it is paid back", unit="year", source=FARM_MANAGEMENT, zero_is_none=True)
    def payback(self) -> Expr:
        """Without interest. None where it is never paid back within its life: the words below say which."""
        back = total(self.saved, YEAR) >= self.choice.capital
        return total(self.unpaid, YEAR) * back * ONE_YEAR

    @line("Spawn lab: saved by it, worth today", unit="money", axes=(YEAR,), source=NET_PRESENT_VALUE)
    def saved_worth(self) -> Expr:
        """For paying back with the return you want."""
        return present_worth(self.saved, self.discount)

    @line("Spawn lab: still to be paid back with your return", unit="money", axes=(YEAR,))
    def discounted_balance(self) -> Expr:
        """Below zero: not back yet."""
        return running_sum(self.saved_worth - self.paid, YEAR)

    @line("Spawn lab: short at the start of the year, with your return", unit="money", axes=(YEAR,))
    def discounted_short(self) -> Expr:
        """Below zero, or nothing once it is paid back."""
        return minimum(previous(self.discounted_balance, YEAR), 0)

    @line("Spawn lab: gained by it, worth today", unit="money", axes=(YEAR,))
    def gained_worth(self) -> Expr:
        """What it saves, brought to today; nothing where it saves nothing."""
        return maximum(self.saved_worth, 0)

    @line(
        "Spawn lab: share of the year to pay back with your return", unit="share", axes=(YEAR,), source=FARM_MANAGEMENT
    )
    def discounted_share(self) -> Expr:
        """As before, with savings brought to today."""
        return share_of_year_to_pay(self.discounted_short, self.gained_worth)

    @line(
        "Spawn lab: share of the year not yet paid back with your return",
        unit="share",
        axes=(YEAR,),
        source=FARM_MANAGEMENT,
    )
    def discounted_unpaid(self) -> Expr:
        """None once it is back."""
        return unpaid_share_of_year(self.discounted_short, self.discounted_share) * self.in_use

    @line(
        "Spawn lab: years until it is paid back with your return",
        unit="year",
        source=FARM_MANAGEMENT,
        zero_is_none=True,
    )
    def discounted_payback(self) -> Expr:
        """Always the longer of the two; none where it does not bring the return you want."""
        back = total(self.saved_worth, YEAR) >= self.choice.capital
        return total(self.discounted_unpaid, YEAR) * back * ONE_YEAR

    @line("Spawn lab: is it paid back?", unit="1")
    def paid_back(self) -> Expr:
        """What it sells for at the end is not counted here."""
        simple = total(self.saved, YEAR) >= self.choice.capital
        discounted = total(self.saved_worth, YEAR) >= self.choice.capital
        return sentence(
            1 + simple + discounted,
            "It is never paid back within its life.",
            "It is paid back, but not with the return you want.",
            "It is paid back with the return you want.",
        )

    # The rate

    @line("Spawn lab: money in less money out, all years", unit="money")
    def flow_in_all(self) -> Expr:
        """Without interest."""
        return total(self.flow, YEAR)

    @line("Spawn lab: money goes out and comes in", unit="flag")
    def sign_changes(self) -> Expr:
        """Without both there is no rate."""
        return all_of(total(self.flow < 0, YEAR) > 0, total(self.flow > 0, YEAR) > 0)

    @line("Spawn lab: back within the first year", unit="flag")
    def back_at_once(self) -> Expr:
        """A yearly rate would say no more."""
        return self.choice.saving * ONE_YEAR >= self.choice.capital

    @line("Spawn lab: it earns a rate", unit="flag")
    def has_rate(self) -> Expr:
        """More comes back than was laid out, and not within the first year."""
        return all_of(self.sign_changes, self.flow_in_all > 0, self.back_at_once <= 0)

    @line("Spawn lab: what the money in it earns a year", unit="share", source=NET_PRESENT_VALUE, zero_is_none=True)
    def rate(self) -> Expr:
        """Found by trial: the return at which it is just worth its cost. Bankers call it internal rate of return."""
        return where(self.has_rate, internal_rate(self.flow, YEAR), 0)

    @line("Spawn lab: is there a rate?", unit="1")
    def rate_in_words(self) -> Expr:
        """Where there is none, this says why."""
        return sentence(
            1 + self.has_rate + self.back_at_once + self.back_at_once,
            "No rate: less comes back than was laid out.",
            "The rate above stands.",
            "No rate: the money is back within the first year.",
        )

    # Both ways added up

    @line("Spawn bought: paid so far", unit="money", axes=(YEAR,))
    def bought_so_far(self) -> Expr:
        """Nothing is added after the life of the lab."""
        return running_sum(self.choice.bought * ONE_YEAR * self.in_use, YEAR)

    @line("Spawn made: all but the lab, in that year", unit="money", axes=(YEAR,))
    def spent_on_making(self) -> Expr:
        """Running, extra lost bags, and places taken."""
        return self.choice.made_without_lab * ONE_YEAR * self.in_use

    @line("Spawn made: paid and lost so far", unit="money", axes=(YEAR,))
    def made_so_far(self) -> Expr:
        """The lab first, then every year; what it sells for comes off at the end."""
        return running_sum(self.paid + self.spent_on_making - self.sold, YEAR)

    # Checks

    @line("Spawn lab: whole years in use", unit="year")
    def years_in_use(self) -> Expr:
        """It must be the number of years you typed."""
        return total(self.in_use, YEAR) * ONE_YEAR

    @check(
        "Life of the spawn lab is a whole number of years, 1 to 10",
        kind="error",
        says="The years the spawn lab lasts must be whole, from 1 to 10; see its inputs.",
    )
    def life_whole(self) -> Expr:
        """Years counted fall short of the number typed when it is broken or above ten."""
        return all_of(self.choice.life >= ONE_YEAR, self.years_in_use >= self.choice.life)

    @line("Spawn lab: what making is worth today, as an equal sum a year", unit="money/year", source=NET_PRESENT_VALUE)
    def worth_a_year(self) -> Expr:
        """Must agree with what making saves; that saving itself where its life is not whole years, and the two part."""
        yearly = self.worth_in_all * self.choice.owning_factor
        return where(self.life_whole, yearly, self.choice.advantage)

    @check(
        "Spawn lab sells for no more than it cost",
        kind="error",
        says="What the spawn lab sells for at the end is above what it cost without its trials: correct one of the two.",
    )
    def resale_fits(self) -> Expr:
        """A lab that gains in value would earn money by standing there."""
        return self.choice.resale <= self.choice.lab_price

    @check(
        "Bags are left with the extra loss of own spawn",
        kind="error",
        says=(
            "Bags lost in the spawn run and the extra loss of own spawn come to 100% or more, so that making spawn "
            "cannot be judged: see both losses."
        ),
    )
    def losses_fit(self) -> Expr:
        """Looked at while spawn is bought; once it is made, the extra loss is in the crop and its checks."""
        in_all = self.choice.crop.chosen_loss_in_spawn_run + self.choice.source.extra_loss
        return any_of(self.choice.source.made, in_all < 1)

    @check(
        "Worth of the spawn lab agrees with its yearly cost",
        kind="error",
        says="What making is worth today does not agree with what it saves a year: a formula was changed.",
    )
    def worth_agrees(self) -> Expr:
        """Worked out twice: from the flows of all years, and as an equal sum a year."""
        return is_rounding(self.worth_a_year - self.choice.advantage, self.choice.bought, self.choice.made)
