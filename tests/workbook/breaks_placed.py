"""Ways to break the rules that know which line a cell belongs to; the lines are those of the sample."""

from __future__ import annotations

from tests.workbook import lints_placed as rules
from tests.workbook.sample import BAGS, INPUTS, START, SUMS, Breakage

__all__ = ["PLACED_BREAKS"]

PLACED_BREAKS: dict[str, Breakage] = {
    "the last cell of a line": Breakage(
        rules.uniform, lambda sample: sample.formula("B14", "=Inputs!$B$6+0", BAGS), "2 different formulas in 4 cells"
    ),
    "a number in place of a formula": Breakage(
        rules.filled, lambda sample: sample.sheets[SUMS].write_number("B12", 600), "farm.weeks (Sums!B12): no formula"
    ),
    "a formula in place of an input": Breakage(
        rules.filled, lambda sample: sample.formula("B6", "=1+1", 2, sheet=INPUTS), "farm.bags (Inputs!B6): a formula"
    ),
    "words in place of a number": Breakage(
        rules.kinds,
        lambda sample: sample.formula("B6", "=farm_name", "Kestrel"),
        "farm.loads (Sums!B6): holds 'Kestrel'",
    ),
    "a number in place of words": Breakage(
        rules.kinds, lambda sample: sample.formula("B10", "=farm_bags", 600, sheet=START), "report.verdict (Start!B10)"
    ),
    "a number typed as words": Breakage(
        rules.kinds,
        lambda sample: sample.sheets[INPUTS].write_string("B6", "many"),
        "farm.bags (Inputs!B6): holds 'many'",
    ),
    "a line without its unit": Breakage(
        rules.units,
        lambda sample: sample.sheets[SUMS].write_string("C6", "bag"),
        "farm.loads (Sums!B6): no unit `load`",
    ),
    "a table without its unit": Breakage(
        rules.units, lambda sample: sample.sheets[SUMS].write_string("B10", "bags"), "farm.weeks (Sums!B11): no unit"
    ),
    "money without its sign": Breakage(
        rules.units,
        lambda sample: sample.formula("B6", "=farm_bags", BAGS),
        "farm.loads (Sums!B6): no `$` with the figure",
    ),
    "an input that is locked": Breakage(
        rules.open_cells, lambda sample: sample.sheets[INPUTS].write_number("B6", 1), "farm.bags (Inputs!B6): locked"
    ),
    "a line that is not locked": Breakage(
        rules.open_cells,
        lambda sample: sample.formula("B13", "=Inputs!$B$6", BAGS, look="open"),
        "farm.weeks (Sums!B13): not locked",
    ),
}
