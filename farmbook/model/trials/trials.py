"""Another spawn rate, bag or spawn run: the three in one answer."""

from __future__ import annotations

from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import say
from farmbook.model.trials.bag_size import BagTrial
from farmbook.model.trials.run_days import RunDaysTrial
from farmbook.model.trials.spawn_rate import SpawnRateTrial
from farmbook.sections.declare import line, uses
from farmbook.sections.section import Section

__all__ = ["Trials"]


class Trials(Section):
    """Each by itself: two changes at once are more than their sum, or less."""

    title = "Another spawn rate, bag or spawn run"

    rate = uses(SpawnRateTrial)
    bag = uses(BagTrial)
    days = uses(RunDaysTrial)

    @line("Another spawn rate, bag or spawn run: the answer", unit="1")
    def answer(self) -> Expr:
        """All three."""
        return say(self.rate.told, " ", self.bag.told, " ", self.days.told)
