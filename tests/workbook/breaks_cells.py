"""Ways to break the rules for cells."""

from __future__ import annotations

import math

from tests.workbook import lints_cells as rules
from tests.workbook.sample import BAGS, INPUTS, RULE, SUMS, Break, Breakage, Sample

__all__ = ["CELL_BREAKS"]


def stored(value: object) -> Break:
    """A formula with this stored beside it."""
    return lambda sample: sample.formula("F20", "=farm_bags*1", value)


def words(cell: str, text: str, look: str, sheet: str = SUMS) -> Break:
    """Words in a cell with this look."""
    return lambda sample: sample.sheets[sheet].write_string(cell, text, sample.looks[look])


def row(cell: str, label: str, name: str) -> Break:
    """A further line under the sheet's heads: label, value, unit, name."""
    return lambda sample: sample.sheets[SUMS].write_row(cell, [label, 1, "bag", name])


def named(name: str, target: str) -> Break:
    """A further name."""
    return lambda sample: sample.names.update({name: target})


def ruled(cell: str, **changes: object) -> Break:
    """A further rule for typing, changed in some points."""
    return lambda sample: sample.sheets[INPUTS].data_validation(cell, RULE | changes)


def open_and_ruled(**changes: object) -> Break:
    """A cell to type into, with a rule changed in some points."""

    def change(sample: Sample) -> None:
        sample.sheets[INPUTS].write_number("B8", 1, sample.looks["open"])
        sample.sheets[INPUTS].data_validation("B8", RULE | changes)

    return change


CELL_BREAKS: dict[str, Breakage] = {
    "a hidden sheet": Breakage(rules.hidden, lambda sample: sample.sheets[SUMS].hide(), "the sheet is hidden"),
    "a very hidden sheet": Breakage(rules.hidden, lambda sample: sample.sheets[SUMS].very_hidden(), "is veryHidden"),
    "a hidden row": Breakage(
        rules.hidden, lambda sample: sample.sheets[SUMS].set_row(7, None, None, {"hidden": True}), "row 8 is hidden"
    ),
    "a row of no height": Breakage(rules.hidden, lambda sample: sample.sheets[SUMS].set_row(7, 0), "row 8 is hidden"),
    "a folded row": Breakage(
        rules.hidden,
        lambda sample: sample.sheets[SUMS].set_row(7, None, None, {"level": 1}),
        "row 8 is hidden or folded",
    ),
    "a hidden column": Breakage(
        rules.hidden,
        lambda sample: sample.sheets[SUMS].set_column("F:G", None, None, {"hidden": True}),
        "column 6 is hidden",
    ),
    "a column of no width": Breakage(
        rules.hidden, lambda sample: sample.sheets[SUMS].set_column("F:F", 0), "column 6 is hidden"
    ),
    "white on white": Breakage(rules.hidden, words("F20", "psst", "white"), "Sums!F20: cannot be seen"),
    "straw on straw": Breakage(rules.hidden, words("F20", "psst", "straw on straw"), "Sums!F20: cannot be seen"),
    "a format that shows nothing": Breakage(rules.hidden, words("F20", "psst", "unseen"), "Sums!F20: cannot be seen"),
    "two lines of one label": Breakage(rules.labels, row("A7", "Loads", "farm_trips"), "`Loads` is the label of"),
    "a label of an input again": Breakage(rules.labels, row("A7", "Bags", "farm_sacks"), "`Bags` is the label of"),
    "one line with two labels": Breakage(rules.labels, row("A7", "Runs", "farm_loads"), "farm_loads is labelled"),
    "an empty result": Breakage(rules.results, stored(""), "no stored result"),
    "a yes as result": Breakage(rules.results, stored(True), "a yes/no value"),
    "an error as result": Breakage(rules.results, stored("#DIV/0!"), "the error #DIV/0!"),
    "a result that is no number": Breakage(rules.results, stored(math.nan), "not a finite number"),
    "an endless result": Breakage(rules.results, stored(math.inf), "not a finite number"),
    "a repeat that holds something else": Breakage(
        rules.repeats, lambda sample: sample.formula("F20", "=farm_loads", 299.0), "holds 299.0, Sums!B6 holds 300.0"
    ),
    "a repeat by address of other words": Breakage(
        rules.repeats, lambda sample: sample.formula("F20", "=Inputs!$B$7", "kestrel"), "holds 'kestrel'"
    ),
    "a password": Breakage(
        rules.locked, lambda sample: sample.sheets[SUMS].protect("secret"), "Sums: protected with a password"
    ),
    "a formula that is not locked": Breakage(
        rules.locked, lambda sample: sample.formula("F20", "=farm_bags", BAGS, look="open"), "may be typed over"
    ),
    "a formula that cannot be read": Breakage(
        rules.locked, lambda sample: sample.formula("F20", "=farm_bags", BAGS, look="secret"), "cannot be read"
    ),
    "a cell without a rule": Breakage(
        rules.validated,
        lambda sample: sample.sheets[INPUTS].write_number("B8", 1, sample.looks["open"]),
        "Inputs!B8: anything may be typed here",
    ),
    "a blank cell without a rule": Breakage(
        rules.validated,
        lambda sample: sample.sheets[INPUTS].write_blank("C8", None, sample.looks["open"]),
        "Inputs!C8: anything may be typed here",
    ),
    "a rule for a locked cell": Breakage(
        rules.validated, ruled("C6"), "Inputs!C6: has a rule but cannot be typed into"
    ),
    "a rule that asks for nothing": Breakage(rules.validated, open_and_ruled(input_message=""), "Inputs!B8: the rule"),
    "a rule that does not explain": Breakage(rules.validated, open_and_ruled(error_message=""), "Inputs!B8: the rule"),
    "a rule that only warns": Breakage(rules.validated, open_and_ruled(error_type="warning"), "Inputs!B8: the rule"),
    "a rule that keeps silent": Breakage(rules.validated, open_and_ruled(show_error=False), "Inputs!B8: the rule"),
    "a number kept as a text": Breakage(
        rules.numbers_as_text, words("B6", "1,200", "open", INPUTS), "Inputs!B6: '1,200' is a text"
    ),
    "a name without an underscore": Breakage(rules.named_cells, named("bags", "=Sums!$B$6"), "bags: not a name"),
    "a name in capitals": Breakage(rules.named_cells, named("Farm_Sacks", "=Sums!$B$6"), "Farm_Sacks: not a name"),
    "a name with a digit in front": Breakage(
        rules.named_cells, named("q1_sales", "=Sums!$B$6"), "q1_sales: not a name"
    ),
    "a name of a range": Breakage(rules.named_cells, named("farm_week", "=Sums!$B$11:$B$14"), "not for one cell"),
    "a name of a constant": Breakage(rules.named_cells, named("farm_seven", "=7"), "not for one cell"),
    "a name that moves": Breakage(rules.named_cells, named("farm_here", "=Sums!B6"), "not for one cell"),
    "a name of an empty cell": Breakage(rules.named_cells, named("farm_void", "=Sums!$F$30"), "which is empty"),
    "a name on one sheet only": Breakage(
        rules.named_cells, named("Sums!farm_bags", "=Inputs!$B$6"), "farm_bags: more than one cell"
    ),
    "a name of another sheet": Breakage(rules.named_cells, named("farm_gone", "=Start!$Z$99"), "which is empty"),
}
