"""How fast the middle of the coldest bag warms: by the size of the bag and how bags stand, or by a probe."""

from __future__ import annotations

from typing import Final

from farmbook.calc.lethality import (
    BAR_LAG_FACTOR,
    BRICK_LAG_FACTOR,
    brick_rate,
    core_by_gap,
    gap_fall,
    late_gap,
    lateness_by_reading,
    lateness_by_shape,
    measured_rate,
    slab_rate,
)
from farmbook.expr.functions import all_of, any_of, minimum, named, ratio, running_sum, sentence, where
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import COURSE
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.place.site import Site
from farmbook.sections.declare import Option, check, choice, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, HEAT_CONDUCTION
from farmbook.units import unit

__all__ = [
    "BY_SIZE_OR_PROBE",
    "FAST_BAG",
    "GAP_ALL_ROUND",
    "IN_CABINET",
    "IN_PAIRS",
    "IN_ROWS",
    "IN_VESSEL",
    "CoreHeating",
]

GAP_ALL_ROUND: Final = Option("gap", "gap all round")
IN_PAIRS: Final = Option("pairs", "touching in pairs")
IN_ROWS: Final = Option("rows", "solid rows")
IN_CABINET: Final = Option("cabinet", "steam cabinet")
IN_VESSEL: Final = Option("vessel", "pressure vessel")

BAGS_IN_A_PAIR: Final = Constant(2, "bags_in_a_pair", label="Bags in a pair", unit=unit("1"), source=ARITHMETIC.key)


def _mark(temperature: float, fahrenheit: int) -> Constant:
    return Constant(
        temperature,
        f"probe_mark_{fahrenheit}f",
        label=f"Probe reading to note the time of, {fahrenheit} degF",
        unit=unit("degC"),
        source=ARITHMETIC.key,
    )


MARK_150: Final = _mark((150 - 32) / 1.8, 150)
MARK_180: Final = _mark((180 - 32) / 1.8, 180)
MARK_190: Final = _mark((190 - 32) / 1.8, 190)


def _bag_number(course: str, words: str) -> Constant:
    return Constant(
        COURSE.members.index(course) + 1,
        f"bag_number_{course}",
        label=f"Number of the {words}",
        unit=unit("count"),
        source=ARITHMETIC.key,
        note="Counted from the slow bag.",
    )


BY_SIZE_OR_PROBE: Final = _bag_number("by_size_or_probe", "bag by size or probe")
FAST_BAG: Final = _bag_number("fast_bag", "fast bag")


class CoreHeating(Section):
    """How fast the middle of the coldest bag closes on the temperature of the chamber."""

    title = "How hard a bag is cooked: how fast its middle warms"
    table = "cook"

    site = uses(Site)
    cabinet = uses(CabinetHeat)
    vessel = uses(VesselHeat)

    thickness = number(
        "Thickness of a filled bag",
        unit="cm",
        usual=(8, 20),
        hard=(1, 100),
        default=12,
        how="Tape, between the two faces with which bags touch where they stand together; not the gusset.",
        source=COMMON_PRACTICE,
    )
    width = number(
        "Width of a filled bag",
        unit="cm",
        usual=(12, 30),
        hard=(1, 100),
        default=20,
        how="Tape, across the mix.",
        source=COMMON_PRACTICE,
    )
    length = number(
        "Length of a filled bag",
        unit="cm",
        usual=(12, 40),
        hard=(1, 200),
        default=20,
        how="Tape, along the mix; the empty bag above it does not count.",
        source=COMMON_PRACTICE,
    )
    standing = choice(
        "How bags stand in the load",
        GAP_ALL_ROUND,
        IN_PAIRS,
        IN_ROWS,
        default=GAP_ALL_ROUND,
        how="Look at the tightest place of the load. A gap is two fingers of free steam between one bag and the next.",
        source=COMMON_PRACTICE,
    )
    diffusivity = number(
        "How readily heat moves through the mix",
        unit="cm2/h",
        usual=(3.6, 9),
        hard=(1, 20),
        default=4.86,
        how="Leave it until a probe has measured how fast the middle warms; the probe then wins.",
        source=COMMON_PRACTICE,
        note="From memory, for packed moist sawdust: 1.35e-7 m2/s. Technical name: thermal diffusivity.",
    )
    fast_diffusivity = number(
        "How readily heat moves through the mix at best",
        unit="cm2/h",
        usual=(5, 15),
        hard=(1, 40),
        default=9,
        how="Leave it. A loose and open mix lets steam itself move inward.",
        source=COMMON_PRACTICE,
        note="From memory: 2.5e-7 m2/s. Makes the fast bag; where a probe counts, the spread below is taken.",
    )
    spread = number(
        "How much slower or faster other bags warm",
        unit="share",
        usual=(0.05, 0.3),
        hard=(0, 0.8),
        default=0.15,
        how="Probe several bags, some in the worst places; the largest difference from the mean, over the mean.",
        source=COMMON_PRACTICE,
        note="A guess: bags differ in fill, moisture and place. Makes the slow bag; with a probe the fast bag too.",
    )
    probe_place = choice(
        "Where your probe was",
        IN_CABINET,
        IN_VESSEL,
        default=IN_CABINET,
        how="Which chamber was the bag with the probe in? The other one then still goes by the size of the bag.",
        source=COMMON_PRACTICE,
    )
    hours_to_150f = number(
        "Your own figure: hours until the middle read 65.6 degC (150 degF)",
        unit="h",
        usual=(0.1, 20),
        hard=(0, 200),
        optional=True,
        how="Probe in the middle of the coldest bag; count from the chamber reaching its temperature. Two readings do.",
        note="Not read, or read before the chamber was at temperature: leave it empty.",
    )
    hours_to_180f = number(
        "Your own figure: hours until the middle read 82.2 degC (180 degF)",
        unit="h",
        usual=(0.2, 30),
        hard=(0, 200),
        optional=True,
        how="The same probe, the same load.",
    )
    hours_to_190f = number(
        "Your own figure: hours until the middle read 87.8 degC (190 degF)",
        unit="h",
        usual=(0.3, 40),
        hard=(0, 200),
        optional=True,
        how="The same probe, the same load; leave it empty if the chamber is hardly hotter than that.",
    )

    # By size

    @line("Bags side by side from gap to gap", unit="count", source=COMMON_PRACTICE)
    def bags_from_gap_to_gap(self) -> Expr:
        """0 for solid rows: there no gap ends the row, and no heat comes in along it."""
        alone, pairs = self.chose(self.standing, GAP_ALL_ROUND), self.chose(self.standing, IN_PAIRS)
        return alone + pairs * BAGS_IN_A_PAIR

    @line("Thickness from gap to gap", unit="cm")
    def thickness_from_gap_to_gap(self) -> Expr:
        """Bags that touch warm like one thick bag. This is what slows a load most, and it costs nothing to change."""
        return self.thickness * self.bags_from_gap_to_gap

    @line("Warming by the faces with which bags touch", unit="1/h", source=HEAT_CONDUCTION)
    def through_thickness(self) -> Expr:
        """Twice the thickness is four times slower."""
        return slab_rate(self.diffusivity, self.thickness_from_gap_to_gap)

    @line("Warming by the two sides", unit="1/h", source=HEAT_CONDUCTION)
    def through_width(self) -> Expr:
        """These stay free in every way of standing."""
        return slab_rate(self.diffusivity, self.width)

    @line("Warming by the two ends", unit="1/h", source=HEAT_CONDUCTION)
    def through_length(self) -> Expr:
        """These stay free in every way of standing."""
        return slab_rate(self.diffusivity, self.length)

    @line("Warming of the middle by the size of the bag", unit="1/h", source=HEAT_CONDUCTION)
    def rate_by_size(self) -> Expr:
        """All three pairs of faces together.

        The part of the gap to the chamber that closes in an hour, as long as the gap is large.
        """
        return brick_rate(self.through_thickness, self.through_width, self.through_length)

    @line("Warming of the middle by size, at best", unit="1/h", source=HEAT_CONDUCTION)
    def best_rate_by_size(self) -> Expr:
        """The same bag with the mix that heat moves through most readily."""
        return self.rate_by_size * ratio(self.fast_diffusivity, self.diffusivity)

    @line("How late the middle starts by how bags stand, lag factor", unit="1", source=HEAT_CONDUCTION)
    def lag_factor(self) -> Expr:
        """The gap at the start, taken this many times larger, gives the later course of the middle.

        About 2.1 for a bag that is heated from all sides, 1.6 in a solid row.
        """
        return where(self.chose(self.standing, IN_ROWS), named(BAR_LAG_FACTOR), named(BRICK_LAG_FACTOR))

    @line("How late the middle starts by how bags stand, natural logarithm", unit="1", source=HEAT_CONDUCTION)
    def late_by_size(self) -> Expr:
        """The same; divided by the warming in an hour, it gives the hours before the middle starts to warm."""
        return lateness_by_shape(self.lag_factor)

    # Slow bag, bag by size or probe, fast bag

    @line("Number of the bag", unit="count", axes=(COURSE,))
    def bag_number(self) -> Expr:
        """Counted from the slow bag."""
        return running_sum(1, COURSE)

    @line("Steps faster than the bag by size or probe", unit="count", axes=(COURSE,))
    def side(self) -> Expr:
        """-1 for the slow bag, 1 for the fast one."""
        return self.bag_number - BY_SIZE_OR_PROBE

    @line("Pace of the bag, by the spread", unit="1", axes=(COURSE,), source=COMMON_PRACTICE)
    def pace(self) -> Expr:
        """How many times as fast its middle warms as that of the bag by size or probe."""
        return 1 + self.side * self.spread

    @line("Warming of the middle by size, bag by bag", unit="1/h", axes=(COURSE,), source=COMMON_PRACTICE)
    def by_size(self) -> Expr:
        """The slow bag by the spread; the fast bag holds a loose mix, which heat moves through most readily."""
        return where(self.side > 0, self.best_rate_by_size, self.rate_by_size * self.pace)

    # By a probe

    @line("Temperature of the cabinet's chamber, boiling at most", unit="degC")
    def cabinet_chamber(self) -> Expr:
        """What you hold, but no more than the boiling point of your place: without pressure it gets no hotter."""
        return minimum(self.cabinet.hold_temperature, self.site.boiling_point)

    @line("Temperature of the chamber that the probe was in", unit="degC")
    def probe_chamber(self) -> Expr:
        """Cabinet or pressure vessel, as chosen."""
        return where(self.chose(self.probe_place, IN_VESSEL), self.vessel.hold_temperature, self.cabinet_chamber)

    @line("Temperature of bags when loaded where the probe was", unit="degC")
    def probe_start(self) -> Expr:
        """Cabinet or pressure vessel, as chosen."""
        in_vessel = self.chose(self.probe_place, IN_VESSEL)
        return where(in_vessel, self.vessel.start_temperature, self.cabinet.start_temperature)

    @line("Gap to the chamber at the start where the probe was", unit="delta_degC")
    def probe_first_gap(self) -> Expr:
        """How much cooler than the chamber the bags were loaded."""
        return self.probe_chamber - self.probe_start

    @line("Probe readings given", unit="count")
    def readings_given(self) -> Expr:
        """Two give the rate; three also tell whether the chamber was steady."""
        early = self.given(self.hours_to_150f) + self.given(self.hours_to_180f)
        return early + self.given(self.hours_to_190f)

    @line("First reading of the probe", unit="degC")
    def first_reading(self) -> Expr:
        """The coolest one given."""
        return where(self.given(self.hours_to_150f), named(MARK_150), named(MARK_180))

    @line("Last reading of the probe", unit="degC")
    def last_reading(self) -> Expr:
        """The hottest one given."""
        return where(self.given(self.hours_to_190f), named(MARK_190), named(MARK_180))

    @line("Hours until the first reading", unit="h")
    def first_hours(self) -> Expr:
        """From the chamber reaching its temperature."""
        return where(self.given(self.hours_to_150f), self.hours_to_150f, self.hours_to_180f)

    @line("Hours until the last reading", unit="h")
    def last_hours(self) -> Expr:
        """From the chamber reaching its temperature."""
        return where(self.given(self.hours_to_190f), self.hours_to_190f, self.hours_to_180f)

    @line("Gap to the chamber at the first reading", unit="delta_degC")
    def first_reading_gap(self) -> Expr:
        """How much cooler the middle was."""
        return self.probe_chamber - self.first_reading

    @line("Gap to the chamber at the last reading", unit="delta_degC")
    def last_reading_gap(self) -> Expr:
        """How much cooler the middle was."""
        return self.probe_chamber - self.last_reading

    @line("How many times smaller the gap became", unit="1", source=ARITHMETIC)
    def reading_gap_fall(self) -> Expr:
        """First gap over last gap."""
        return gap_fall(self.first_reading_gap, self.last_reading_gap)

    @line("Warming of the middle by the probe", unit="1/h", source=HEAT_CONDUCTION)
    def probe_rate(self) -> Expr:
        """From the fall of the gap between the first and the last reading; 0 where the readings give none."""
        return measured_rate(self.reading_gap_fall, self.last_hours - self.first_hours)

    @line("Hours until the reading between them", unit="h")
    def middle_hours(self) -> Expr:
        """The first one again where none is given."""
        return where(self.given(self.hours_to_180f), self.hours_to_180f, self.first_hours)

    @line("The reading between them comes between them", unit="flag")
    def middle_fits(self) -> Expr:
        """1 also where there is none."""
        return all_of(self.first_hours <= self.middle_hours, self.middle_hours <= self.last_hours)

    @line("The probe counts", unit="flag")
    def probe_counts(self) -> Expr:
        """1 with at least two readings that fit together."""
        return all_of(self.readings_given > 1, self.probe_rate > 0)

    @line("Gap at the start over the gap at the last reading", unit="1", source=ARITHMETIC)
    def fall_to_last_reading(self) -> Expr:
        """How many times smaller the gap was by then."""
        return gap_fall(self.probe_first_gap, self.last_reading_gap)

    @line("How late the middle starts by the probe, natural logarithm", unit="1", source=HEAT_CONDUCTION)
    def late_by_probe(self) -> Expr:
        """So that the course worked out goes through your last reading.

        Below 0: the middle had begun to warm before the chamber was at temperature.
        """
        return lateness_by_reading(self.probe_rate, self.last_hours, self.fall_to_last_reading)

    @line("Worked middle at your first reading", unit="degC", source=HEAT_CONDUCTION)
    def worked_at_first(self) -> Expr:
        """To set beside what the probe read; says nothing while no probe counts."""
        return self._worked_at(self.first_hours)

    @line("Worked middle between your first and last reading", unit="degC", source=HEAT_CONDUCTION)
    def worked_at_middle(self) -> Expr:
        """With three readings this is at 82.2 degC (180 degF) by the probe: far off it, the chamber was not steady."""
        return self._worked_at(self.middle_hours)

    @line("Worked middle at your last reading", unit="degC", source=HEAT_CONDUCTION)
    def worked_at_last(self) -> Expr:
        """To set beside what the probe read; says nothing while no probe counts."""
        return self._worked_at(self.last_hours)

    def _worked_at(self, hours: Expr) -> Expr:
        share = late_gap(self.late_by_probe, self.probe_rate, hours)
        return core_by_gap(self.probe_chamber, self.probe_first_gap, share)

    @line("What this is good for", unit="1")
    def meaning(self) -> Expr:
        """Read it before using any figure of this sheet."""
        return sentence(
            1 + self.probe_counts,
            "An index for comparing your own loads, never proof that anything is sterile. No probe has given the rate "
            "of warming yet: cabinet and pressure vessel cannot be ranked by it.",
            "An index for comparing your own loads, never proof that anything is sterile. The steamer that the probe "
            "was in goes by its readings; the other still goes by the size of the bag, so the two cannot be ranked.",
        )

    @check(
        "Probe readings are in order",
        kind="error",
        says=(
            "Probe readings need two temperatures or more, each read later than the cooler one and below the chamber: "
            "see your own figures for the middle of the bag."
        ),
    )
    def readings_in_order(self) -> Expr:
        """Fine where none is given."""
        return any_of(self.readings_given <= 0, all_of(self.probe_counts, self.middle_fits))

    @check(
        "Slow bag, bag by size and fast bag are in order",
        kind="error",
        says="A fast bag warms slower than one in packed mix: see how readily heat moves through the mix at best.",
    )
    def rates_in_order(self) -> Expr:
        """The range by the size of the bag must lie around what is expected."""
        return self.rate_by_size <= self.best_rate_by_size
