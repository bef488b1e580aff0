"""Where the spawn comes from, and the bags that own spawn loses more; read by the crop, so it stands before it."""

from __future__ import annotations

from typing import Final

from farmbook.expr.nodes import Expr
from farmbook.sections.declare import Option, choice, line, number
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["BOUGHT", "MADE", "SpawnSource"]

BOUGHT: Final = Option("bought", "bought")
MADE: Final = Option("made", "made on the farm")


class SpawnSource(Section):
    """Bought or made: the whole book follows this choice; the sheet MakeOrBuy works out both ways whatever it says."""

    title = "Where the spawn comes from"
    table = "spawn"

    supply = choice(
        "Where the spawn comes from",
        BOUGHT,
        MADE,
        default=BOUGHT,
        how="What you plan to do; look at the sheet MakeOrBuy before you change it.",
        source=COMMON_PRACTICE,
    )
    extra_loss = number(
        "Extra bags lost in the spawn run with own spawn",
        unit="share",
        usual=(0, 0.03),
        hard=(0, 0.5),
        default=0.015,
        how="Share of bags lost in ten batches on own spawn, less the share lost in ten batches on bought spawn.",
        source=COMMON_PRACTICE,
        note="From memory. Not 0 on purpose: spawn from a small lab spoils more bags, above all in the first year.",
    )

    @line("Spawn is made on the farm", unit="flag")
    def made(self) -> Expr:
        """1 where you chose to make it."""
        return self.chose(self.supply, MADE)

    @line("Extra bags lost in the spawn run, counted in the crop", unit="share")
    def extra_loss_counted(self) -> Expr:
        """Nothing as long as the spawn is bought; it comes on top of the loss of the recipe."""
        return self.extra_loss * self.made
