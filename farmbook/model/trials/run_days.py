"""Bags are ready later, or sooner: places, the new ceiling of the incubation room, and what it costs or brings."""

from __future__ import annotations

from farmbook.calc.compare import INPUTS_KNOWN_TO, difference_over_larger
from farmbook.calc.places import standing
from farmbook.calc.tolerance import SUM_TOLERANCE
from farmbook.expr.functions import absolute, all_of, any_of, joined, maximum, ratio, sentence, where, whole_up
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import either, figure, say
from farmbook.model.trials.spawn_run import SpawnRunTried
from farmbook.sections.declare import line, number
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, LITTLE_2008, PARTIAL_BUDGET

__all__ = ["RunDaysTrial"]


class RunDaysTrial(SpawnRunTried, words="Spawn run to try"):
    """Weight picked and bags lost are taken to be the same."""

    title = "Another spawn run"
    table = "trials"

    run_days = number(
        "Days of spawn run to try",
        unit="day",
        usual=(14, 28),
        hard=(1, 120),
        default=25,
        how="From inoculation to opening, as it would be: with another strain, in a cold spell, with other spawn.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @line("Another spawn run is tried", unit="flag")
    def tried(self) -> Expr:
        """0 where it has the days of now, or none: then nothing is changed."""
        apart = absolute(self.run_days - self.days_now) > self.days_now * SUM_TOLERANCE
        return all_of(apart, self.run_days > 0)

    @property
    def days_now(self) -> Expr:
        """The spawn run of now."""
        return self.room.harvest.spawn_run_days

    @line("Days of spawn run as tried", unit="day")
    def days(self) -> Expr:
        """Those of now where nothing is tried."""
        return where(self.tried, self.run_days, self.days_now)

    @line("Spawn run to try: whole days", unit="day")
    def whole_days(self) -> Expr:
        """A place is taken on each day on which a bag stands there."""
        return whole_up(self.days)

    @line("Spawn run to try: loads in the incubation room at its fullest", unit="run", source=LITTLE_2008)
    def peak_loads(self) -> Expr:
        """Whole loads."""
        return whole_up(standing(self.room.loads, self.whole_days))

    @line("Spawn run to try: places taken at the fullest", unit="place", source=ARITHMETIC)
    def at_peak(self) -> Expr:
        """Loads spread evenly over the week."""
        return self.room.in_all(joined(self.peak_loads * self.room.per_load, "place"))

    @line("Spawn run to try: places short on the fullest days", unit="place")
    def short(self) -> Expr:
        """None where the places are not known."""
        return maximum(self.at_peak - self.room.places, 0) * self.stage.known

    @line("Bags a week that all stages but incubation can do", unit="bag_filled/week", zero_is_none=True)
    def others(self) -> Expr:
        """The smallest of them."""
        return where(self.widening.limiting, self.limits.second, self.limits.first)

    @line("Incubation places would then limit the farm", unit="flag")
    def limits_then(self) -> Expr:
        """1 where no other stage that is known can do less."""
        alone = self.limits.many <= self.stage.known
        return all_of(self.stage.known, any_of(alone, self.ceiling <= self.others))

    @line("Spawn run to try: more or fewer bags a week", unit="bag_filled/week")
    def bags(self) -> Expr:
        """Against now. Below zero: fewer."""
        return self.bags_more - self.bags_fewer

    @line("Spawn run to try: change of the year", unit="money/year", source=PARTIAL_BUDGET)
    def change(self) -> Expr:
        """By bags alone."""
        return self.more_worth - self.fewer_cost

    @line("A day of spawn run is worth a year", unit="money/day/year", source=ARITHMETIC, zero_is_none=True)
    def a_day(self) -> Expr:
        """On average of the days between. No figure where it changes nothing."""
        return ratio(self.change, self.days_now - self.days)

    @line("Spawn run to try: change in bags, of the larger number", unit="share")
    def apart(self) -> Expr:
        """Less than the inputs are known to is no difference."""
        return difference_over_larger(self.bags, self.farm.bags_filled_a_week + self.bags_more)

    @line("Spawn run to try: outcome, as a number", unit="count")
    def outcome(self) -> Expr:
        """0 no bag more or fewer, 1 too close to call, 2 clear."""
        return (self.apart > SUM_TOLERANCE) * (1 + (self.apart > INPUTS_KNOWN_TO))

    @line("Spawn run to try: so what", unit="1")
    def verdict(self) -> Expr:
        """By the places on average."""
        return sentence(
            1 + self.tried * (1 + self.stage.known * (1 + self.outcome)),
            "is that of now: nothing is changed",
            "cannot be judged: incubation places are not known",
            "changes nothing",
            "is too close to call",
            "matters",
        )

    @line("Spawn run to try: bags, in words", unit="1")
    def by_how_much(self) -> Expr:
        """Against now."""
        return say(
            ": ",
            figure(absolute(self.bags), 0, named=False),
            either(self.bags < 0, " bags fewer a week, ", " bags more a week, "),
            figure(absolute(self.change), -2, named=False),
            either(self.bags < 0, " a year less", " a year more"),
        )

    @line("Spawn run to try, in a sentence", unit="1")
    def told(self) -> Expr:
        """With the fullest days, which an average hides."""
        return say(
            "A spawn run of ",
            figure(self.days, 0),
            " ",
            self.verdict,
            either(self.tried * (self.outcome > 1), self.by_how_much, ""),
            either(self.tried * (self.short > 0), ", but places are short when it is fullest.", "."),
        )
