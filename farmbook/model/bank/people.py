"""Who stands behind the request: owners or members with their shares, and guarantors."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import any_of, total
from farmbook.expr.nodes import Expr, Label, wrap
from farmbook.model.axes import GUARANTOR, OWNER
from farmbook.sections.declare import check, line, names, number, text
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["People"]


class People(Section):
    """As they say it themselves; nothing else in the book rests on them."""

    title = "Owners and guarantors"

    owners = names(OWNER, "Owner", how="Each owner, partner or member by name.")
    share = number(
        "Owner: share of the farm",
        unit="share",
        usual=(0.1, 1),
        hard=(0, 1),
        default=1,
        axes=(OWNER,),
        how="All shares together are 100%.",
        source=COMMON_PRACTICE,
        decided=True,
    )
    owner_note = text("Owner: what to know", default="", axes=(OWNER,), how="Works on the farm, or lends his name.")
    guarantors = names(GUARANTOR, "Guarantor", how="Who would pay if the farm does not.")
    net_worth = number(
        "Guarantor: net worth",
        unit="money",
        usual=(10000, 1000000),
        hard=(-10000000, 1000000000),
        axes=(GUARANTOR,),
        how="What is owned less what is owed, by a signed statement.",
        source=COMMON_PRACTICE,
    )
    income = number(
        "Guarantor: income",
        unit="money/year",
        usual=(20000, 150000),
        hard=(0, 100000000),
        axes=(GUARANTOR,),
        how="As on the last tax return.",
        source=COMMON_PRACTICE,
    )
    guarantor_note = text(
        "Guarantor: what to know", default="", axes=(GUARANTOR,), how="Who it is to the farm, and for how much."
    )

    @line("Owner: note", unit="1", axes=(OWNER,))
    def owner_told(self) -> Expr:
        """As typed."""
        return Label(self.owner_note, "-")

    @line("Guarantor: note", unit="1", axes=(GUARANTOR,))
    def guarantor_told(self) -> Expr:
        """As typed."""
        return Label(self.guarantor_note, "-")

    @line("Owners listed", unit="count")
    def many_owners(self) -> Expr:
        """Rows in use."""
        return total(self.model.axes[OWNER].present, OWNER)

    @line("Shares of all owners", unit="share")
    def shares(self) -> Expr:
        """Added up."""
        return total(self.share, OWNER)

    @check(
        "Owners' shares come to the whole farm",
        kind="alert",
        says="The shares of the owners on the sheet Tables do not come to 100%.",
    )
    def shares_add_up(self) -> Expr:
        """Fine where no owner is listed."""
        return any_of(self.many_owners <= 0, is_rounding(self.shares - 1, self.shares, wrap(1)))
