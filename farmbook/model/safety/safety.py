"""Alerts that read the plan: a danger that it runs, and no money or device against it. Local codes come first, always."""

from __future__ import annotations

from typing import Final

from farmbook.expr.functions import all_of, any_of, minimum, negation
from farmbook.expr.nodes import CountWord, Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.labour.hours import Hours
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.safety.safety_costs import SafetyCosts
from farmbook.sections.declare import Option, check, choice, line, uses
from farmbook.sections.section import Section
from farmbook.sources import COMMON_PRACTICE

__all__ = ["Safety"]

NO_BOILER: Final = Option("none", "none")
A_BOILER: Final = Option("boiler", "there is one")
NO_ENTRY: Final = Option("no entry", "cannot be walked into")
WITH_RELEASE: Final = Option("release", "walk-in with inside release and stop")
NO_RELEASE: Final = Option("no release", "walk-in without")
NO_ALARM: Final = Option("no", "no alarm")
ALARM: Final = Option("yes", "alarm outside the door")


class Safety(Section):
    """No safety plan: it only sees what the plan leaves out."""

    title = "Safety: what the plan says"

    costs = uses(SafetyCosts)
    vessel = uses(VesselHeat)
    room = uses(IncubationRoom)
    hours = uses(Hours)

    boiler = choice(
        "Steam boiler on the farm, besides a pressure vessel in use",
        NO_BOILER,
        A_BOILER,
        default=NO_BOILER,
        how="One that is bought in this plan too. A steam generator may count as a boiler: ask a boiler inspector.",
        source=COMMON_PRACTICE,
    )
    walk_in = choice(
        "Steamer in use: can a person walk into it",
        NO_ENTRY,
        WITH_RELEASE,
        NO_RELEASE,
        default=NO_ENTRY,
        how="Would the door close behind a person? A release and a stop must work from inside, in the dark.",
        source=COMMON_PRACTICE,
    )
    co2_alarm = choice(
        "Incubation room: carbon dioxide alarm",
        NO_ALARM,
        ALARM,
        default=NO_ALARM,
        how="A meter with an alarm that is read before anyone opens the door.",
        source=COMMON_PRACTICE,
    )

    @line("Boiler or pressure vessel in use", unit="flag")
    def under_pressure(self) -> Expr:
        """The steamer in use, or a boiler."""
        return any_of(self.vessel.in_use, self.chose(self.boiler, A_BOILER))

    @line("Bags breathe in the incubation room", unit="flag")
    def breathing(self) -> Expr:
        """As soon as one stands there."""
        return self.room.taken > 0

    @line("Hired people pick", unit="flag")
    def hired_pickers(self) -> Expr:
        """Hired hours or picking by the piece, and something to pick."""
        hired = any_of(self.hours.hired > 0, self.hours.picking.by_piece > 0)
        return all_of(hired, self.hours.picking.pick_hours > 0)

    @check(
        "Boiler or pressure vessel is inspected and insured",
        kind="alert",
        says=(
            "There is a boiler or pressure vessel, and no money for its inspection or its insurance: ask a boiler "
            "inspector and your insurer, in writing."
        ),
    )
    def pressure_paid_for(self) -> Expr:
        """Both cost something each year. Local codes say who may inspect."""
        return any_of(negation(self.under_pressure), minimum(self.costs.inspection, self.costs.insurance) > 0)

    @check(
        "Nobody can be shut into the steamer",
        kind="alert",
        says=(
            "A person can walk into the steamer, and nothing opens or stops it from inside: do not use it so. Ask its "
            "maker, and the inspector whether it is a confined space."
        ),
    )
    def way_out(self) -> Expr:
        """A release and a stop inside, whoever closed the door."""
        return negation(self.chose(self.walk_in, NO_RELEASE))

    @check(
        "Incubation room has a carbon dioxide alarm",
        kind="alert",
        says=(
            "Bags breathe out carbon dioxide in a room with no alarm: ask the fire authority or a ventilation engineer, "
            "and put what it costs into the plan."
        ),
    )
    def alarm_there(self) -> Expr:
        """Where bags stand in it."""
        return any_of(negation(self.breathing), self.chose(self.co2_alarm, ALARM))

    @check(
        "Hired pickers have respirators",
        kind="alert",
        says=(
            "Hired people pick, and no money is put by for respirators and fit tests: ask an occupational health clinic "
            "or the workers' insurer."
        ),
    )
    def pickers_protected(self) -> Expr:
        """Spores make some people ill. Your own lungs need one as much."""
        return any_of(negation(self.hired_pickers), self.costs.respirators > 0)

    @line("Safety matters of steam that the plan leaves open", unit="count")
    def steam_open(self) -> Expr:
        """Pressure, and a way out."""
        return negation(self.pressure_paid_for) + negation(self.way_out)

    @line("Safety matters that the plan leaves open", unit="count")
    def left_open(self) -> Expr:
        """Of four: pressure, a way out, air, spores. What is only assumed counts as answered. More on the sheet Cautions."""
        return self.steam_open + negation(self.alarm_there) + negation(self.pickers_protected)

    @line("Safety: the answer", unit="1")
    def answer(self) -> Expr:
        """No safety plan: local codes and licensed practice come first."""
        return say(
            "Of four matters of safety it can see, the plan leaves ",
            figure(self.left_open, 0, named=False),
            " open and puts ",
            figure(self.costs.yearly, 0, named=False),
            " a year by. Answers behind that only assumed: ",
            figure(self._assumed(), 0, named=False),
            ".",
        )

    def _assumed(self) -> Expr:
        """How many of the inputs that these matters are judged by the book filled in: one block of cells, counted in one piece."""
        here = (self.bound[each] for each in (Safety.boiler, Safety.walk_in, Safety.co2_alarm))
        paid_for = (SafetyCosts.inspection, SafetyCosts.insurance, SafetyCosts.alarms, SafetyCosts.respirators)
        asked = (*here, *(self.costs.bound[each] for each in paid_for))
        return CountWord(tuple(each.basis for each in asked if each.basis is not None), "assumed")
