"""Every fault of the language: what it says, and that it names the guilty line and where that is declared."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pytest

from farmbook.errors import KindMismatch, ModelFault
from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.lower import lower
from farmbook.interpret.kinds import check_kinds
from farmbook.sections.declare import Option, choice, number, uses
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from farmbook.units import SYSTEMS, unit
from tests.language.guilty_lines import COLUMN, MONTH, ONE_PHASE, ROW, Ground, Guilty, Method, model_of, worked_out

UNITS = "units do not agree in line `guilty.alone` [{}]"
FLAT = "a difference of temperatures, or one line that gives kelvin"
RULE_4 = "rule 4: give it a name, a unit and a source as a Constant"
STEPS = "steps run along the last of a line's lists, and that list must have an order"
ALIKE = "a whole number of one unit that every book shows alike"


def units(of: str, method: Method, found: str, wanted: str, axes: tuple[Axis, ...] = ()) -> Guilty:
    return Guilty(of, method, UNITS.format(of), f"found {found}, wanted {wanted}", axes)


def other(what: str, method: Method, why: str = "", *, of: str = "1", axes: tuple[Axis, ...] = ()) -> Guilty:
    return Guilty(of, method, what, why, axes)


GUILTY: Mapping[str, Guilty] = {
    "wet for dry": units("kg_dry", lambda s: s.ground.wet, "kg_wet", "kg_dry"),
    "for each bag filled, not for each surviving bag": units(
        "money/bag_live", lambda s: s.ground.cost, "money/bag_filled", "money/bag_live"
    ),
    "money and kilograms": units("money", lambda s: s.ground.cash + s.ground.wet, "kg_wet", "money"),
    "wet and dry": units("1", lambda s: f.ratio(s.ground.wet + s.ground.dry, s.ground.wet), "kg_dry", "kg_wet"),
    "two temperatures added": units("degC", lambda s: s.ground.warm + s.ground.warm, "degC", "delta_degC"),
    "a temperature for a difference": units("delta_degC", lambda s: s.ground.warm, "degC", "delta_degC"),
    "a difference less a temperature": units("degC", lambda s: s.ground.rise - s.ground.warm, "degC", "delta_degC"),
    "a temperature doubled": units("degC", lambda s: s.ground.warm * s.ground.plain, "a temperature in degC", FLAT),
    "a temperature squared": units(
        "1", lambda s: f.ratio(s.ground.warm**2, s.ground.warm**2), "a temperature in degC", FLAT
    ),
    "the size of a temperature": units("degC", lambda s: f.absolute(s.ground.warm), "a temperature in degC", FLAT),
    "a total of temperatures": units("degC", lambda s: f.total(s.ground.warm_rows, ROW), "a temperature in degC", FLAT),
    "temperatures so far": units(
        "degC", lambda s: f.running_sum(s.ground.warm_months, MONTH), "a temperature in degC", FLAT, (MONTH,)
    ),
    "a temperature against nothing": units("flag", lambda s: s.ground.warm > 0, "the plain number 0", "degC"),
    "a temperature or nothing": units("degC", lambda s: f.maximum(s.ground.warm, 0), "the plain number 0", "degC"),
    "one kilogram of what": units("kg_wet", lambda s: s.ground.wet + 1, "the plain number 1", "kg_wet"),
    "one less a percentage": units("percent", lambda s: 1 - s.ground.percent, "the plain number 1", "percent"),
    "a quotient or else money": units(
        "h", lambda s: f.ratio(s.ground.hours, s.ground.plain, otherwise=s.ground.cash), "h", "money"
    ),
    "a quotient with a unit, or else 1": units(
        "kg_wet", lambda s: f.ratio(s.ground.wet, s.ground.plain, otherwise=1), "kg_wet", "1"
    ),
    "a whole number of kilograms": units(
        "kg_wet", lambda s: f.whole_up(s.ground.wet), "a whole number of kg_wet", ALIKE
    ),
    "a whole number of a mixture": units(
        "money",
        lambda s: s.ground.plain * f.whole_up(f.ratio(s.ground.cash * s.ground.hours, s.ground.minutes)),
        "a whole number of money*h/min",
        ALIKE,
    ),
    "more than the kind changed": units(
        "money", lambda s: f.joined(s.ground.energy, "money"), "kWh", "money, with no other change than of kind"
    ),
    "a bare number": other("a bare 0.5 in an expression (line `guilty.alone`)", lambda s: s.ground.plain * 0.5, RULE_4),
    "a bare number as a line": other("a bare 7 in an expression (line `guilty.alone`)", lambda s: 7, RULE_4),
    "two where no power is": other(
        "a bare 2 in an expression (line `guilty.alone`)", lambda s: 2 * s.ground.plain, RULE_4
    ),
    "a line as a condition of Python": other(
        "a line was used as a Python condition (line `guilty.alone`)",
        lambda s: s.ground.plain if s.ground.plain > 0 else s.ground.percent,
        "write where(condition, yes, no)",
    ),
    "lines compared by Python": other(
        "False in an expression (line `guilty.alone`)",
        lambda s: f.where(s.ground.plain == 1, s.ground.plain, 0),
        "nodes are compared by <, <=, > and >= alone; == is Python's own",
    ),
    "an array beside a line": other(
        "a bare array([1., 2.]) in an expression (line `guilty.alone`)",
        lambda s: s.ground.plain * np.array([1.0, 2.0]),
        RULE_4,
    ),
    "a line beside an array": other(
        "a bare array([1., 2.]) in an expression (line `guilty.alone`)",
        lambda s: np.array([1.0, 2.0]) - s.ground.plain,
        RULE_4,
    ),
    "an array inside a function": other(
        "a bare array([0.]) in an expression (line `guilty.alone`)",
        lambda s: f.minimum(s.ground.plain, np.zeros(1)),
        RULE_4,
    ),
    "a list that is not declared": other(
        "line `guilty.alone` has a value for each column, row, which it does not declare",
        lambda s: s.ground.rows * s.ground.columns,
    ),
    "a total over a list that is not there": other(
        "a total over column of something that has no column (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows, COLUMN),
    ),
    "an unknown option": other(
        "'two-phase' is not an option of `ground.supply` (line `guilty.alone`)",
        lambda s: s.ground.chose(s.ground.supply, Option("two", "two-phase")),
    ),
    "an option of another section": other(
        "'one-phase' is not an option of `ground.supply` (line `guilty.alone`)",
        lambda s: s.chose(s.ground.supply, ONE_PHASE),
    ),
    "a running sum inside a sum": other(
        "Running may stand only as the whole of a line (line `guilty.alone`)",
        lambda s: f.running_sum(s.ground.months, MONTH) + s.ground.plain,
        axes=(MONTH,),
    ),
    "another step of something that is no line": other(
        "only a line has a value at another step (line `guilty.alone`)",
        lambda s: f.previous(s.ground.balance + 1, MONTH),
        "found Add",
        axes=(MONTH,),
    ),
    "steps along a list without order": other(
        "`ground.rows_used` has no steps along row (line `guilty.alone`)",
        lambda s: f.at(s.ground.rows, ROW, s.ground.plain),
        STEPS,
    ),
    "steps along a list that a line has not": other(
        "`ground.rows_used` has no steps along month (line `guilty.alone`)",
        lambda s: f.previous(s.ground.rows, MONTH),
        STEPS,
        axes=(ROW,),
    ),
    "an opening value without steps": other(
        "`guilty.alone` has no steps (line `guilty.alone`)", lambda s: f.starting(s.ground.plain, s.ground.plain), STEPS
    ),
    "an opening value that differs by month": other(
        "an opening value cannot differ by month (line `guilty.alone`)",
        lambda s: f.starting(s.ground.months, s.ground.plain),
        axes=(MONTH,),
    ),
    "a function inside a total": other(
        "the function maximum stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.maximum(s.ground.rows, 0), ROW),
        "make it a line first",
    ),
    "a size inside a total": other(
        "the function absolute stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.absolute(s.ground.rows), ROW),
        "make it a line first",
    ),
    "a choice inside a total": other(
        "a choice stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.where(s.ground.rows > 0, s.ground.rows, 0), ROW),
        "make it a line first",
    ),
    "a quotient inside a total": other(
        "a guarded division stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.ratio(s.ground.rows, s.ground.plain), ROW),
        "make it a line first",
    ),
    "a joined condition inside a total": other(
        "a joined condition stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.all_of(s.ground.rows > 0, s.ground.plain > 0), ROW),
        "make it a line first",
    ),
    "a total inside a total": other(
        "a total stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows * f.total(s.ground.columns, COLUMN), ROW),
        "make it a line first",
    ),
    "another month inside a total": other(
        "a value at another step stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows * f.at(s.ground.months, MONTH, s.ground.plain), ROW),
        "make it a line first",
    ),
    "a rate inside a total": other(
        "an internal rate stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows * f.internal_rate(s.ground.months, MONTH), ROW),
        "make it a line first",
    ),
    "the least of all months inside a total": other(
        "the least or the most stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.rows * f.lowest_of(s.ground.months, MONTH), ROW),
        "make it a line first",
    ),
    "the most of something that is no line": other(
        "only a line has a most (line `guilty.alone`)",
        lambda s: f.highest_of(s.ground.balance + 1, MONTH),
        "found Add",
    ),
    "the least along a list without order": other(
        "`ground.rows_used` has no steps along row (line `guilty.alone`)",
        lambda s: f.lowest_of(s.ground.rows, ROW),
        STEPS,
    ),
    "whether a number is typed inside a total": other(
        "whether a cell holds a number stands inside a total (line `guilty.alone`)",
        lambda s: f.total(s.ground.given(s.ground.rows), ROW),
        "make it a line first",
    ),
    "an earlier month inside a total": other(
        "a value one step earlier stands inside a total (line `guilty.alone`)",
        lambda s: f.total(f.previous(s.ground.balance, MONTH), MONTH),
        "make it a line first",
    ),
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", GUILTY)
def test_a_fault_says_what_is_wrong_and_where(name: str, system: str) -> None:
    assert_said(GUILTY[name], system, "test_faults.py")


def assert_said(guilty: Guilty, system: str, file: str) -> None:
    """The guilty line is refused, in the words expected and with the place in this file where it is declared."""
    with pytest.raises(ModelFault) as raised:
        worked_out(guilty, system)
    fault = raised.value
    assert fault.what == guilty.what
    if system == "metric":
        assert fault.why == guilty.why
    assert fault.why or not guilty.why
    declared = f"{file}:{guilty.method.__code__.co_firstlineno}"
    assert fault.where.endswith(declared)
    assert str(fault).startswith(guilty.what)
    assert str(fault).endswith(declared)


def test_an_unknown_unit_names_its_line() -> None:
    guilty = Guilty("kg_damp", lambda s: s.ground.wet, "")
    with pytest.raises(ModelFault) as raised:
        model_of(guilty)
    assert raised.value.what == "no unit `kg_damp` in the table of units (reading `kg_damp`) (line `guilty.alone`)"
    assert raised.value.where.endswith(f"test_faults.py:{guilty.method.__code__.co_firstlineno}")


def test_an_unknown_unit_of_an_input_names_it() -> None:
    body = {"size": number("Size", unit="m/fortnight", usual=(0, 1), how="Count.")}
    with pytest.raises(ModelFault) as raised:
        Model([type("Odd", (Section,), body)])
    assert raised.value.what == "no unit `fortnight` in the table of units (reading `m/fortnight`) (line `odd.size`)"
    assert raised.value.where.endswith("Odd")


OIL, WOOD = Option("oil", "heating oil"), Option("wood", "firewood")


def test_a_default_that_is_no_option_is_refused() -> None:
    with pytest.raises(ModelFault, match="the default 'town gas' of `Supply` is not among its options"):
        choice("Supply", OIL, WOOD, default=Option("gas", "town gas"), how="Look.")


@pytest.mark.parametrize("other", [Option("Wood", "logs"), Option("logs", "FIREWOOD"), Option("logs", "wood")])
def test_a_word_that_stands_for_two_options_is_refused(other: Option) -> None:
    with pytest.raises(ModelFault, match="two options of `Supply` share a word"):
        choice("Supply", OIL, WOOD, other, default=OIL, how="Look.")


def test_a_section_must_come_after_those_it_uses() -> None:
    with pytest.raises(ModelFault, match="section Ground is used before it is in the model"):
        Model([type("Early", (Section,), {"ground": uses(Ground)}), Ground])


def test_all_faults_of_a_model_are_told_at_once() -> None:
    lines = [each for name in ("wet for dry", "a bare number") for each in model_of(GUILTY[name]).lines]
    with pytest.raises(ModelFault) as raised:
        check_kinds(lines)
    assert raised.value.what == "2 faults in the model"
    for name in ("wet for dry", "a bare number"):
        assert GUILTY[name].what in raised.value.why
    check_kinds(Model([Ground]).lines)


def test_a_cell_left_blank_is_zero_even_for_a_temperature() -> None:
    """The one place where a bare 0 stands for a temperature: rule 3 makes a cleared cell zero in every book."""
    for system in SYSTEMS:
        used = Model([Ground]).section(Ground).warm
        assert isinstance(lower(used, system), n.Used)


def test_a_mismatch_says_what_it_found_and_wanted() -> None:
    mismatch = KindMismatch(str(unit("kg_wet")), str(unit("kg_dry")))
    assert (mismatch.found, mismatch.wanted, str(mismatch)) == ("kg_wet", "kg_dry", "found kg_wet, wanted kg_dry")


@pytest.mark.parametrize("word", ["line", "lines", "used", "model", "bound"])
def test_a_line_may_not_take_a_word_of_the_section_itself(word: str) -> None:
    """`self.line` would be the method of that name, or call itself for ever."""
    with pytest.raises(ModelFault, match=f"`{word}` is a section's own word; call it something else"):
        type("Odd", (Section,), {word: number("Size", unit="m", usual=(0, 1), how="Count.")})
