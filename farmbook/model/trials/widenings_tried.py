"""More places in the fruiting rooms, more hours of work, more steam loads: each with what it costs."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import maximum, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import say
from farmbook.model.decisions.missing_hour import MissingHour
from farmbook.model.limits.widenings import FruitingWidening, LabourWidening, SteamerWidening
from farmbook.model.trials.widen import WidenTrial
from farmbook.sections.declare import line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE, PARTIAL_BUDGET

__all__ = ["HoursTrial", "LoadsTrial", "PlacesTrial", "WidenAnswer"]

BY_THE_PLACE: Final = {"counts": "place"}
BY_THE_HOUR: Final = {"counts": "person_hour/week"}
BY_THE_LOAD: Final = {"counts": "run/week"}


class PlacesTrial(WidenTrial, words="More fruiting places", units=BY_THE_PLACE):
    """Another room, or more shelves. What it costs to build stands beside as a cost a year."""

    title = "More fruiting places"
    table = "trials"
    unknown = "those of now are not known"
    called = "Places"

    widening = uses(FruitingWidening)

    places_more = number(
        "Fruiting places more, to try",
        unit="place",
        usual=(50, 3000),
        hard=(0, 1000000),
        default=300,
        how="Bags that could stand there. 0 where you try none.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    places_cost = number(
        "Fruiting places more: cost a year",
        unit="money/year",
        usual=(200, 30000),
        hard=(0, 1e7),
        default=2400,
        how="Loss in value and interest of room and shelves, rent, heat and light, upkeep, rounds.",
        source=COMMON_PRACTICE,
        note="From memory: some 8 a place and year; the same number in every currency.",
        tried=True,
    )

    @property
    def more(self) -> Expr:
        """As typed."""
        return self.places_more

    def brings(self) -> Expr:
        """What the sheet Limits says of a place more."""
        return self.widening.worth

    @line("More fruiting places: cost a year, all of them", unit="money/year")
    def spent(self) -> Expr:
        """Used or not; nothing where the stage is not known."""
        return self.places_cost * (self.more > 0) * self.widening.stage.known


class HoursTrial(WidenTrial, words="More hours of work", units=BY_THE_HOUR):
    """An hour brings what its bags leave, and what those bags' hours were counted at: else it would be paid twice."""

    title = "More hours of work"
    table = "trials"
    unknown = "hired as needed"
    called = "Hours a week"

    widening = uses(LabourWidening)
    hour = uses(MissingHour)

    hours_more = number(
        "Hours more a week, to try",
        unit="person_hour/week",
        usual=(4, 80),
        hard=(0, 100000),
        default=8,
        how="Another day of somebody's, say. 0 where you try none.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    hour_cost = number(
        "Hours more: what one costs",
        unit="money/person_hour",
        usual=(10, 60),
        hard=(0, 1000),
        optional=True,
        how="With payroll tax and insurance, or as overtime. Left empty, what an hour of work costs.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @property
    def more(self) -> Expr:
        """As typed."""
        return self.hours_more

    def brings(self) -> Expr:
        """Of a week's hour, all weeks worked."""
        return self.brought * self.farm.weeks_worked

    @line("An hour more, tried: brings before it is paid", unit="money/person_hour", source=PARTIAL_BUDGET)
    def brought(self) -> Expr:
        """As the sheet Hours has it; nothing where a bag leaves less than its hours cost."""
        return maximum(self.hour.brings, 0)

    @line("An hour more, tried: costs", unit="money/person_hour")
    def hour_costs(self) -> Expr:
        """Your own figure where there is one."""
        return where(self.given(self.hour_cost), self.hour_cost, self.farm.labour_rate)

    @line("More hours of work: cost a year, all of them", unit="money/year")
    def spent(self) -> Expr:
        """Used or not; nothing where the stage is not known."""
        return self.more * self.hour_costs * self.farm.weeks_worked * self.widening.stage.known


class LoadsTrial(WidenTrial, words="More steam loads", units=BY_THE_LOAD):
    """A second load on a day, or a day more. Its energy, water and work are in what its bags leave."""

    title = "More steam loads"
    table = "trials"
    unknown = "those of now are not known"
    called = "Loads a week"

    widening = uses(SteamerWidening)

    loads_more = number(
        "Steam loads more a week, to try",
        unit="run/week",
        usual=(1, 7),
        hard=(0, 100),
        default=1,
        how="Loads beyond those that the working hours leave room for now. 0 where you try none.",
        source=COMMON_PRACTICE,
        tried=True,
    )
    load_cost = number(
        "Steam loads more: cost of each, beyond energy and work",
        unit="money/run",
        usual=(0, 200),
        hard=(0, 100000),
        optional=True,
        how="Night pay, a second cooler, a hired trailer. Left empty, nothing.",
        source=COMMON_PRACTICE,
        tried=True,
    )

    @property
    def more(self) -> Expr:
        """As typed."""
        return self.loads_more

    def brings(self) -> Expr:
        """Of a week's load, all weeks worked."""
        return self.widening.worth * self.farm.weeks_worked

    @line("More steam loads: cost a year, all of them", unit="money/year")
    def spent(self) -> Expr:
        """Beyond energy and work, used or not; nothing where the stage is not known."""
        return self.more * self.load_cost * self.farm.weeks_worked * self.widening.stage.known


class WidenAnswer(Section):
    """The three beside each other."""

    title = "More of what limits"

    places = uses(PlacesTrial)
    hours = uses(HoursTrial)
    loads = uses(LoadsTrial)

    @line("More places, hours or loads: the answer", unit="1")
    def answer(self) -> Expr:
        """All three, with what limits now."""
        return say(
            self.places.told,
            " ",
            self.hours.told,
            " ",
            self.loads.told,
            " Now limits: ",
            self.places.limits.first_name,
            ".",
        )
