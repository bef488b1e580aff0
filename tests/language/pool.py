"""A section that holds something of every sort, for expressions made at random to draw on."""

from __future__ import annotations

from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.functions import (
    calendar_month,
    calendar_year,
    joined,
    month_start,
    previous,
    running_product,
    running_sum,
    starting,
    total,
    whole_up,
)
from farmbook.expr.nodes import Constant, Expr, Label
from farmbook.expr.ranking import preference_key, ranking_key
from farmbook.sections.declare import NumberInput, Option, choice, line, names, number, text
from farmbook.sections.section import Section
from farmbook.units import unit

__all__ = ["COLUMN", "CONSTANTS", "FLUSH", "ROW", "SIZES", "SPELL", "STEP", "Pool"]

ROW: Final = Axis("row", "row", "down", 10, named=True, most=5)
COLUMN: Final = Axis("column", "column", "across", 20, members=("left", "right"))
FLUSH: Final = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second", "third"))
STEP: Final = Axis("step", "step", "across", 90, ordered=True, members=("1", "2", "3", "4"))
SPELL: Final = Axis("spell", "spell", "down", 95, ordered=True, members=("1", "2", "3", "4", "5"))
SIZES: Final = {axis: len(axis.members) for axis in (COLUMN, FLUSH, STEP, SPELL)} | {ROW: 4}
THREE_PHASE: Final = Option("three", "three-phase")
ONE_PHASE: Final = Option("one", "one-phase")


def _constant(value: float, name: str, of: str) -> Constant:
    return Constant(value, name, label=name.replace("_", " "), unit=unit(of), source="arithmetic")


A_DAY: Final = _constant(46400, "a_day_of_2027", "date")
CONSTANTS: Final = {
    "1": _constant(1.7, "plain_constant", "1"),
    "share": _constant(0.35, "share_constant", "share"),
    "h": _constant(2.25, "hours_constant", "h"),
    "kg_dry": _constant(0.8, "mass_constant", "kg_dry"),
    "degC": _constant(21.5, "warm_constant", "degC"),
    "kWh": _constant(3.1, "energy_constant", "kWh"),
}


def _number(label: str, of: str, *axes: Axis, optional: bool = False) -> NumberInput:
    default = None if optional else 1
    return number(
        label, unit=of, axes=axes, usual=(0.5, 3), hard=(-90, 90), default=default, how="Count.", optional=optional
    )


class Pool(Section):
    """Numbers of many kinds, single and in tables; words; and lines that can be stepped through."""

    word = choice("Supply", THREE_PHASE, ONE_PHASE, default=THREE_PHASE, how="Look.")
    note = text("Note", default="none", how="Any words.")
    row = names(ROW, "Row", how="Name it.")
    own = _number("Own hours", "h", optional=True)

    wet = _number("Wet mass", "kg_wet")
    dry = _number("Dry mass", "kg_dry")
    hours = _number("Hours", "h")
    days = _number("Days", "day")
    cash = _number("Cash", "money")
    length = _number("Length", "m")
    volume = _number("Volume", "L")
    energy = _number("Energy", "kWh")
    warm = _number("Warm", "degC")
    warmer = _number("Warmer", "degC")
    rise = _number("Rise", "delta_degC")
    share = _number("Share", "share")
    plain = _number("Plain", "1")
    bags = _number("Bags", "bag_filled")
    speed = _number("Speed", "kg_dry/h")
    price = _number("Price", "money/kg_wet")
    row_wet = _number("Row wet", "kg_wet", ROW)
    row_share = _number("Row share", "share", ROW)
    row_hours = _number("Row hours", "h", ROW)
    column_price = _number("Column price", "money/kg_wet", COLUMN)
    column_days = _number("Column days", "day", COLUMN)
    grid_dry = _number("Grid dry", "kg_dry", ROW, COLUMN)
    step_cash = _number("Step cash", "money", STEP)
    step_share = _number("Step share", "share", STEP)
    flush_share = _number("Flush share", "share", FLUSH)
    flush_warm = _number("Flush warm", "degC", FLUSH)
    spell_wet = _number("Spell wet", "kg_wet", SPELL)

    @line("Label of the note", unit="1")
    def heading(self) -> Expr:
        """At the head of every sheet."""
        return Label(self.model.section(Pool).raw(Pool.note), "(none)")

    @line("On one phase", unit="flag")
    def one_phase(self) -> Expr:
        """1 where this option is chosen."""
        return self.chose(self.word, ONE_PHASE)

    @line("On three phases", unit="flag")
    def three_phase(self) -> Expr:
        """1 where this option is chosen."""
        return self.chose(self.word, THREE_PHASE)

    @line("Step number", unit="1", axes=(STEP,))
    def step_number(self) -> Expr:
        """From 1."""
        return running_sum(1, STEP)

    @line("Wet so far", unit="kg_wet", axes=(SPELL,))
    def wet_so_far(self) -> Expr:
        """A running sum down."""
        return running_sum(self.spell_wet, SPELL)

    @line("Alive", unit="share", axes=(FLUSH,))
    def alive(self) -> Expr:
        """A running product down."""
        return running_product(self.flush_share, FLUSH)

    @line("Balance", unit="money", axes=(STEP,))
    def balance(self) -> Expr:
        """Stepped across, from an opening value."""
        return starting(self.cash, previous(self.balance, STEP) * self.share + self.step_cash)

    @line("Balance of the row", unit="h", axes=(ROW, STEP))
    def row_balance(self) -> Expr:
        """Stepped across, one opening value for each row."""
        return starting(self.row_hours, previous(self.row_balance, STEP) * self.step_share + self.days)

    @line("Row and spell", unit="kg_wet", axes=(ROW, SPELL))
    def row_spell(self) -> Expr:
        """Both lists usually run down."""
        return self.row_share * self.spell_wet

    @line("Row and spell so far", unit="kg_wet", axes=(ROW, SPELL))
    def row_spell_so_far(self) -> Expr:
        """A running sum down one of two lists."""
        return running_sum(self.row_spell, SPELL)

    @line("Flush and spell", unit="kg_dry", axes=(FLUSH, SPELL))
    def flush_spell(self) -> Expr:
        """Both lists usually run down."""
        return joined(self.flush_share * self.spell_wet, "kg_dry")

    @line("First of a month", unit="date")
    def first_of_month(self) -> Expr:
        """So many months after a day of 2027."""
        return month_start(A_DAY + self.days, whole_up(self.plain))

    @line("Year and month", unit="count")
    def year_and_month(self) -> Expr:
        """One number of the two."""
        return calendar_year(self.first_of_month) + calendar_month(self.first_of_month)

    @line("Steps", unit="1")
    def steps(self) -> Expr:
        """As many as the list has."""
        return total(self.step_number >= 1, STEP)

    @line("Key of the plain number", unit="1")
    def plain_key(self) -> Expr:
        """First in its block."""
        return ranking_key(self.plain, 1, self.steps)

    @line("Key of the bags", unit="1")
    def bags_key(self) -> Expr:
        """Below all on one phase."""
        return ranking_key(joined(self.bags, "1"), self.steps - 1, self.steps, present=self.three_phase)

    @line("Key of the share", unit="1")
    def share_key(self) -> Expr:
        """Last in its block."""
        return ranking_key(self.share, self.steps, self.steps)

    @line("Key of the step", unit="1", axes=(STEP,))
    def step_key(self) -> Expr:
        """What steps are taken by."""
        return preference_key(self.step_share, self.step_number, self.steps)

    @line("Flows", unit="money", axes=(STEP,))
    def flows(self) -> Expr:
        """Out in the first step, in later."""
        first = self.step_number <= 1
        return self.step_cash - first * (self.step_cash + self.cash)
