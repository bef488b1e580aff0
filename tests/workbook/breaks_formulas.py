"""Ways to break the rules for formulas."""

from __future__ import annotations

from tests.workbook import lints_formulas as rules
from tests.workbook.sample import Break, Breakage, Sample

__all__ = ["FORMULA_BREAKS"]


def put(text: str, cell: str = "F20") -> Break:
    """A formula in a cell of its own."""
    return lambda sample: sample.formula(cell, text)


def put_all(**texts: str) -> Break:
    """Several formulas at once."""

    def change(sample: Sample) -> None:
        for cell, text in texts.items():
            sample.formula(cell, text)

    return change


OPERANDS = "=Inputs!B6+Sums!B6+B11+B12+B13+B14"
CHARACTERS = "=farm_bags" + "*farm_bags" * 15 + "+1"
NESTED = "=IF(farm_bags>1,1,ABS(IF(farm_loads>1,1,0)))"
CALLS = "=MAX(ABS(farm_bags),ABS(farm_loads),MIN(B11,1))"

FORMULA_BREAKS: dict[str, Breakage] = {
    "six operands": Breakage(rules.long_formulas, put(OPERANDS), "6 operands"),
    "four functions": Breakage(rules.long_formulas, put(CALLS), "4 functions"),
    "162 characters": Breakage(rules.long_formulas, put(CHARACTERS), "162 characters"),
    "an IF deep inside an IF": Breakage(rules.nested_ifs, put(NESTED), "an IF inside an IF"),
    "a number of months": Breakage(rules.typed_numbers, put("=farm_bags*12"), "12 typed"),
    "a decimal": Breakage(rules.typed_numbers, put("=ROUND(farm_bags*0.45,0)"), "0.45 typed"),
    "a number in a comparison": Breakage(rules.typed_numbers, put("=(farm_bags>5)*1"), "5 typed"),
    "a yes": Breakage(rules.typed_numbers, put("=IF(TRUE,1,0)"), "TRUE typed"),
    "an error value": Breakage(rules.typed_numbers, put("=IF(farm_bags>1,1,#N/A)"), "#N/A typed"),
    "a strange power": Breakage(rules.typed_numbers, put("=farm_bags^4"), "4 typed"),
    "two outside a power": Breakage(rules.typed_numbers, put("=2*farm_bags"), "2 typed"),
    "a moving range": Breakage(rules.unportable, put("=OFFSET(B6,1,0)"), "OFFSET"),
    "the present moment": Breakage(rules.unportable, put("=NOW()"), "NOW"),
    "a random number": Breakage(rules.unportable, put("=RAND()"), "RAND"),
    "a reference in words": Breakage(rules.unportable, put('=INDIRECT("Inputs!B6")'), "INDIRECT"),
    "a new function": Breakage(rules.unportable, put("=_xlfn.XLOOKUP(B11,B11:B14,C11:C14)"), "XLOOKUP"),
    "a number in words": Breakage(rules.unportable, put('=TEXT(farm_bags,"0.0")'), "TEXT"),
    "a list of constants": Breakage(rules.unportable, put("=SUM({1,1})"), "an array"),
    "white space": Breakage(rules.unportable, put("=farm_bags + farm_loads"), "white space"),
    "a sign before a power": Breakage(rules.unportable, put("=-farm_bags^2"), "without brackets"),
    "a sign before brackets and a power": Breakage(rules.unportable, put("=-(farm_bags+1)^2"), "without brackets"),
    "a power of a power": Breakage(rules.unportable, put("=2^farm_bags^2"), "without brackets"),
    "an array formula": Breakage(
        rules.unportable,
        lambda sample: sample.sheets["Sums"].write_array_formula("F20:F21", "{=B11:B12}"),
        "of the kind array",
    ),
    "one cell in a column": Breakage(rules.odd_ones_out, put("=Inputs!$B$6*1", "B12"), "not the formula"),
    "one cell in a row": Breakage(
        rules.odd_ones_out,
        put_all(E20="=D20", F20="=E21", G20="=F20"),
        "not the formula",
    ),
    "a name that does not exist": Breakage(rules.dangling, put("=farm_bag"), "nothing called farm_bag"),
    "a sheet that does not exist": Breakage(rules.dangling, put("=Sales!B6"), "no sheet Sales"),
    "a cell that does not exist": Breakage(rules.dangling, put("=ABS(Inputs!H40)"), "reads an empty cell"),
    "a deleted reference": Breakage(rules.dangling, put("=Inputs!#REF!+1"), "nothing called"),
    "a cell that reads itself": Breakage(rules.circles, put("=F20+1"), "a circle"),
    "a circle by names and ranges": Breakage(
        rules.circles,
        put_all(F20="=SUM(G20:G22)+farm_loads", G21="=farm_loads", B6="=Sums!$F$20"),
        "a circle: ",
    ),
}
