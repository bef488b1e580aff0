"""How cooking is counted: what an hour at a temperature counts for, and the columns that add it up row by row."""

from __future__ import annotations

from typing import Final

from farmbook.calc.lethality import cooked_in_step, core_by_gap, late_gap, lethal_rate
from farmbook.expr.functions import at, exponential, minimum, named, previous, running_sum, starting
from farmbook.expr.nodes import Constant, Expr
from farmbook.model.axes import STEP
from farmbook.model.place.site import Site
from farmbook.sections.declare import LineOf, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE, LETHAL_RATE, VAN_DOORNMALEN_2009
from farmbook.units import unit

__all__ = [
    "CLOSE",
    "FAR",
    "HOT",
    "REFERENCE",
    "LethalRates",
    "at_the_end",
    "begin",
    "clock",
    "cooked_so_far",
    "core",
    "core_after",
    "rate_of_core",
    "row_time",
]

REFERENCE: Final = Constant(
    121.1,
    "cooking_reference",
    label="Reference temperature of cooking under pressure",
    unit=unit("degC"),
    source=LETHAL_RATE.key,
    note="Texts that take 121 degC count 2.3% more minutes for the same cooking, those that take 250 degF 0.2% less.",
)
HUNDRED: Final = Constant(
    100,
    "cooking_reference_boiling",
    label="Reference temperature of cooking without pressure",
    unit=unit("degC"),
    source=LETHAL_RATE.key,
)


LAST_ROW: Final = Constant(
    len(STEP.members), "cook_last_row", label="Last row of time", unit=unit("1"), source=ARITHMETIC.key
)
CLOSE: Final = Constant(
    1,
    "core_close",
    label="Gap to the chamber at which the middle counts as hot",
    unit=unit("delta_degC"),
    source=COMMON_PRACTICE.key,
)
FAR: Final = Constant(
    3,
    "core_far",
    label="Gap to the chamber at which the middle counts as not reached",
    unit=unit("delta_degC"),
    source=COMMON_PRACTICE.key,
)


HOT: Final = Constant(
    (190 - 32) / 1.8,
    "core_hot",
    label="Temperature of the middle from which hours are counted: 87.8 degC (190 degF)",
    unit=unit("degC"),
    source=COMMON_PRACTICE.key,
    note="Exactly 190 degF, one of the marks that a probe is read at.",
)


def _core(fahrenheit: int) -> Constant:
    """Whole degrees F, as logs are read; the label says the same temperature in degC to a hundredth."""
    temperature = (fahrenheit - 32) / 1.8
    words = f"{round(temperature, 2):g} degC ({fahrenheit} degF)"
    return Constant(
        temperature,
        f"core_at_{fahrenheit}f",
        label=f"Core temperature of the table: {words}",
        unit=unit("degC"),
        source=ARITHMETIC.key,
    )


def _at_reference(core: Constant) -> LineOf:
    """The line that counts an hour at a temperature in seconds at the hotter reference."""

    def counted(section: LethalRates) -> Expr:
        """Technical name: lethal rate."""
        return lethal_rate(named(core), named(REFERENCE), section.z_value)

    label = f"What an hour at {_words(core)} counts for at 121.1 degC"
    return line(label, unit="s/h", source=LETHAL_RATE)(counted)


def _at_hundred(core: Constant) -> LineOf:
    """The line that counts an hour at a temperature in minutes at boiling."""

    def counted(section: LethalRates) -> Expr:
        """The same, set beside boiling water at sea level."""
        return lethal_rate(named(core), named(HUNDRED), section.z_value)

    label = f"What an hour at {_words(core)} counts for at 100 degC"
    return line(label, unit="min/h", source=LETHAL_RATE)(counted)


def _words(core: Constant) -> str:
    return core.label.partition(": ")[2]


CORES: Final = tuple(_core(fahrenheit) for fahrenheit in (190, 200, 205, 208, 212, 240, 250, 259))
CORE_190, CORE_200, CORE_205, CORE_208, CORE_212, CORE_240, CORE_250, CORE_259 = CORES


class LethalRates(Section):
    """What each temperature counts for: a table to read a probe log with."""

    title = "How hard a bag is cooked: what each temperature counts for"
    table = "cook"

    site = uses(Site)

    z_value = number(
        "Degrees hotter that cook ten times as fast",
        unit="delta_degC",
        usual=(6, 12),
        hard=(2, 40),
        default=10,
        how="Leave it, so that your loads stay comparable with each other and with printed figures.",
        source=LETHAL_RATE,
        note="Technical name: z. One value for all temperatures makes cooking below 120 degC (248 degF) look too good.",
    )

    at_190f, at_190f_boiling = _at_reference(CORE_190), _at_hundred(CORE_190)
    at_200f, at_200f_boiling = _at_reference(CORE_200), _at_hundred(CORE_200)
    at_205f, at_205f_boiling = _at_reference(CORE_205), _at_hundred(CORE_205)
    at_208f, at_208f_boiling = _at_reference(CORE_208), _at_hundred(CORE_208)
    at_212f, at_212f_boiling = _at_reference(CORE_212), _at_hundred(CORE_212)
    at_240f, at_240f_boiling = _at_reference(CORE_240), _at_hundred(CORE_240)
    at_250f, at_250f_boiling = _at_reference(CORE_250), _at_hundred(CORE_250)
    at_259f, at_259f_boiling = _at_reference(CORE_259), _at_hundred(CORE_259)

    @line("What an hour at your boiling point counts for at 121.1 degC", unit="s/h", source=LETHAL_RATE)
    def at_boiling_point(self) -> Expr:
        """The most that an hour in a cabinet without pressure can count for at the height of your place."""
        return lethal_rate(self.site.boiling_point, named(REFERENCE), self.z_value)

    @line("Minutes at 100 degC counted as one at 121.1 degC", unit="1", source=VAN_DOORNMALEN_2009)
    def boiling_for_reference(self) -> Expr:
        """Published measurements find that below 120 degC (248 degF) it takes longer than such a count says."""
        return lethal_rate(named(REFERENCE), named(HUNDRED), self.z_value)


def row_time(hold: Expr) -> Expr:
    """Time from row to row: the chamber hold in even parts."""
    return hold / named(LAST_ROW)


def clock(row_time: Expr) -> Expr:
    """Time since the chamber reached its temperature; the whole of a line in hours."""
    return running_sum(row_time, STEP)


def core_after(chamber: Expr, first_gap: Expr, lateness: Expr, rate: Expr, time: Expr) -> Expr:
    """Temperature in the middle of the coldest bag after a time in a chamber that is at temperature, in degC."""
    return core_by_gap(chamber, first_gap, late_gap(lateness, rate, time))


def begin(chamber: Expr, first_gap: Expr, lateness: Expr) -> Expr:
    """Temperature in the middle of the coldest bag when the chamber reaches its temperature, in degC."""
    return core_by_gap(chamber, first_gap, exponential(minimum(lateness, 0)))


def core(start: Expr, after: Expr) -> Expr:
    """The column of that temperature; it opens with the middle of the bag when the chamber is at temperature."""
    return starting(start, after)


def rate_of_core(start: Expr, core: Expr, z_value: Expr) -> Expr:
    """The column of how much a moment counts for; `start` is the middle of the bag at its opening."""
    return starting(lethal_rate(start, named(REFERENCE), z_value), lethal_rate(core, named(REFERENCE), z_value))


def cooked_so_far(rate: Expr, row_time: Expr) -> Expr:
    """The column of seconds at the reference so far, by trapezoids."""
    return running_sum(cooked_in_step(previous(rate, STEP), rate, row_time), STEP)


def at_the_end(column: Expr) -> Expr:
    """What a column holds in its last row."""
    return at(column, STEP, named(LAST_ROW))
