"""Rules for the formulas of a written workbook. Each returns one sentence for every place that breaks it."""

from __future__ import annotations

from collections.abc import Iterator

from openpyxl.formula.tokenizer import Token

from tests.workbook.formulas import (
    Area,
    FormulaNumber,
    areas,
    bare_powers,
    functions,
    nested_if,
    numbers,
    references,
    relative,
    tokens,
    white_space,
    wordless_length,
)
from tests.workbook.written import MAIN, At, FormulaCell, Written, shown

__all__ = ["FORMULA_LINTS"]

MOST_OPERANDS, MOST_FUNCTIONS, MOST_CHARACTERS = 5, 3, 160

PORTABLE = {
    "IF", "IFERROR", "AND", "OR", "NOT", "ISNUMBER", "ISBLANK", "ISERROR", "NA", "MIN", "MAX", "SUM", "AVERAGE",
    "COUNT", "COUNTA", "COUNTBLANK", "COUNTIF", "COUNTIFS", "SUMIF", "SUMIFS", "AVERAGEIFS", "PRODUCT", "SUMSQ",
    "SUMPRODUCT", "INDEX", "MATCH", "CHOOSE", "VLOOKUP", "HLOOKUP", "LOOKUP", "ROW", "COLUMN", "ROWS", "COLUMNS",
    "ROUND", "ROUNDUP", "ROUNDDOWN", "TRUNC", "INT", "CEILING", "FLOOR", "MROUND", "MOD", "ABS", "SIGN", "NPV",
    "IRR", "MIRR", "XNPV", "XIRR", "PMT", "IPMT", "PPMT", "CUMIPMT", "CUMPRINC", "FV", "PV", "NPER", "RATE",
    "EFFECT", "NOMINAL", "SLN", "SYD", "DB", "DDB", "DATE", "EDATE", "EOMONTH", "YEAR", "MONTH", "DAY", "WEEKDAY",
    "WEEKNUM", "YEARFRAC", "NETWORKDAYS", "WORKDAY", "LN", "EXP", "LOG", "LOG10", "POWER", "SQRT", "PI", "STDEV",
    "MEDIAN", "PERCENTILE", "QUARTILE", "LARGE", "SMALL", "NORMSINV", "CONFIDENCE", "CORREL", "SLOPE", "FORECAST",
    "FIXED", "RANK", "CONCATENATE", "LEFT", "RIGHT", "MID", "LEN", "SUBSTITUTE", "FIND",
}  # fmt: skip
"""Functions documented for Excel and measured to give the same in five programs; whatever is not named is refused."""

WHOLE_ARGUMENTS = {("FIXED", 2), ("ROUND", 2), ("ROUNDUP", 2), ("ROUNDDOWN", 2)}
"""Digits of rounding belong to the function."""

FACTOR = "factor_"
FLAGS = ("CHOOSE", "COUNTIF", "MATCH", "FIXED")
"""Sentences have limits of their own. Flags in words and counts of words set a cell against its limits, its row and a list
all at once, and no sum reads their words; so they may be longer than a line of arithmetic."""


def long_formulas(book: Written) -> Iterator[str]:
    """At most five operands, three functions, 160 characters besides texts.

    An operand that is written twice is one, and factors between units, which the display units bring in, are none.
    """
    for cell in book.formulas.values():
        called = functions(cell.text)
        if set(called) & set(FLAGS):
            continue
        operands = len({read for read in references(cell.text) if not read.startswith(FACTOR)})
        length = wordless_length(cell.text)
        if operands > MOST_OPERANDS:
            yield f"{cell}: {operands} operands"
        if len(called) > MOST_FUNCTIONS:
            yield f"{cell}: {len(called)} functions"
        if length > MOST_CHARACTERS:
            yield f"{cell}: {length} characters"


def nested_ifs(book: Written) -> Iterator[str]:
    """No IF inside another."""
    return (f"{cell}: an IF inside an IF" for cell in book.formulas.values() if nested_if(cell.text))


def typed_numbers(book: Written) -> Iterator[str]:
    """Only 0 and 1, in powers 2, 3 and 10, the digits of rounding, and a share said in hundredths; no TRUE or FALSE."""
    for cell in book.formulas.values():
        for number in numbers(cell.text):
            if not _allowed(number):
                yield f"{cell}: {number.text} typed into a formula"


def _allowed(number: FormulaNumber) -> bool:
    if number.in_power:
        return number.text in ("0", "1", "2", "3", "10")
    digits = (number.function, number.argument) in WHOLE_ARGUMENTS and number.text.lstrip("-").isdigit()
    hundredths = number.text == "100" and number.function in ("ROUND", "ABS")
    return digits or hundredths or number.text in ("0", "1")


def unportable(book: Written) -> Iterator[str]:
    """Only functions that every program has; no volatile ones, arrays, spilled or shared formulas, no white space."""
    for cell in book.formulas.values():
        strange = sorted(set(functions(cell.text)) - PORTABLE)
        if strange:
            yield f"{cell}: {', '.join(strange)} is not in the portable list"
        if any(token.type == Token.ARRAY or "{" in token.value for token in tokens(cell.text) if _not_text(token)):
            yield f"{cell}: an array is typed into it"
        if white_space(cell.text):
            yield f"{cell}: white space"
        if bare_powers(cell.text):
            yield f"{cell}: a sign or a power beside a power, without brackets"
    yield from _kinds(book)


def _not_text(token: Token) -> bool:
    return not (token.type == Token.OPERAND and token.subtype == Token.TEXT)


def _kinds(book: Written) -> Iterator[str]:
    for sheet, root in book.sheets_xml.items():
        for cell in root.iter(f"{MAIN}c"):
            formula = cell.find(f"{MAIN}f")
            if formula is not None and (formula.attrib or cell.get("cm")):
                kind = formula.get("t", "dynamic array")
                yield f"{sheet}!{cell.attrib['r']}: a formula of the kind {kind}"


def odd_ones_out(book: Written) -> Iterator[str]:
    """One formula per row, or per column of a table: none stands alone between two that are alike in R1C1 terms."""
    seen = {at: relative(cell.text, cell.row, cell.column) for at, cell in book.formulas.items()}
    for at, text in seen.items():
        for one, other in ((_ROW, _COLUMN), (_COLUMN, _ROW)):
            first, second = (seen.get(near) for near in _beside(at, one))
            # What is like its neighbours the other way belongs to another line.
            alone = text not in {seen.get(near) for near in _beside(at, other)}
            if first == second != text and alone and _moves(first):
                yield f"{book.formulas[at]}: not the formula of its two neighbours"


_ROW, _COLUMN = (0, 1), (1, 0)


def _beside(at: At, way: tuple[int, int]) -> tuple[At, At]:
    sheet, row, column = at
    return (sheet, row - way[0], column - way[1]), (sheet, row + way[0], column + way[1])


def _moves(text: str | None) -> bool:
    """Whether a formula moves with its cell; repeats of one named line are alike without being one line."""
    return text is not None and "[" in text


def dangling(book: Written) -> Iterator[str]:
    """Every name and sheet that a formula refers to exists, and every single cell it reads is one of the book's."""
    sheets = {sheet.title for sheet in book.sheets}
    filled = {at for at, _ in book.cells()}
    for cell in book.formulas.values():
        for area in areas(cell.text, cell.sheet, book.names):
            if isinstance(area, str):
                yield f"{cell}: there is nothing called {area}"
            elif area.sheet not in sheets:
                yield f"{cell}: there is no sheet {area.sheet}"
            elif area.single and (area.sheet, area.first_row, area.first_column) not in filled:
                yield f"{cell}: reads an empty cell"


def circles(book: Written) -> Iterator[str]:
    """No formula reads itself, neither at once nor by way of others."""
    needs = {at: _formulas_read(book, cell) for at, cell in book.formulas.items()}
    done: set[At] = set()
    for start in needs:
        circle = _circle_from(start, needs, done)
        if circle:
            yield "a circle: " + " <- ".join(shown(at) for at in circle[:8])
            return


def _formulas_read(book: Written, cell: FormulaCell) -> list[At]:
    found = []
    for area in areas(cell.text, cell.sheet, book.names):
        if isinstance(area, Area):
            found += [at for at in area.places() if at in book.formulas]
    return found


def _circle_from(start: At, needs: dict[At, list[At]], done: set[At]) -> list[At]:
    """The cells of a circle that can be reached from a cell; empty where there is none."""
    path: list[At] = []
    ahead: list[Iterator[At]] = [iter([start])]
    while ahead:
        at = next(ahead[-1], None)
        if at is None:
            ahead.pop()
            if path:
                done.add(path.pop())
        elif at in path:
            return [*path[path.index(at) :], at]
        elif at not in done:
            path.append(at)
            ahead.append(iter(needs[at]))
    return []


FORMULA_LINTS = (long_formulas, nested_ifs, typed_numbers, unportable, odd_ones_out, dangling, circles)
