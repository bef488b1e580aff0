"""The column that says how a line is worked out says what the line's own expression says, in the file as it is written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from farmbook.expr.nodes import Constant, Line
from farmbook.interpret.formula import workbook_name
from farmbook.interpret.words import sentence_of
from farmbook.layout.line_numbers import numbered_way
from farmbook.layout.page import Plan
from farmbook.layout.template import fitting, read_templates
from farmbook.units import displayed
from tests.workbook.shipped import ShippedBook


def texts(shipped: ShippedBook) -> dict[str, list[tuple[int, str]]]:
    """Sheet: rows, counted from 1, and the texts that stand in them."""
    book = shipped.written.book
    return {
        sheet.title: [
            (cell.row, cell.value) for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)
        ]
        for sheet in book
    }


def worked_lines(shipped: ShippedBook) -> list[Line]:
    """Lines that are worked out from others and are no text: what the column is for."""
    return [line for line in shipped.computed.roots if line.kind == "worked" and not line.is_text]


@cache
def side_by_side() -> set[str]:
    """Lines that stand beside others in one row: how they are worked out is told in full further down."""
    rows = [row for template in read_templates() for block in template.blocks for row in block.rows]
    return {name for row in rows for name in row[1:]}


def repeated(plan: Plan, line: Line) -> str:
    """Where a line of a case stands for the farm as it is; of one that the case gives, that it does."""
    plain = line.name.removesuffix(f"_{line.case}")
    if not line.case:
        return ""
    if plain not in plan.places or plain.endswith("_used"):
        return "what is changed in this case"
    return f"as {plan.places[plain].sheet}, line {plan.places[plain].number}"


def way(plan: Plan, line: Line) -> str:
    """How a line is worked out, in the numbers of lines where it has one, as the book should say it."""
    return numbered_way(line, plan.places) if line.name in plan.places else sentence_of(line.expr)


def test_every_worked_line_says_how(books: Mapping[str, ShippedBook]) -> None:
    for shipped in books.values():
        said = texts(shipped)
        plan = shipped.plan
        silent = []
        for line in worked_lines(shipped):
            if line.case and line.axes:
                continue  # a heading says of all of them that they are worked out as the line of their name
            home = plan.homes[line]
            sentence = repeated(plan, line) or f"{way(plan, line)}."
            anywhere = bool(home.axes) or line.name in side_by_side()
            here = [text for row, text in said[home.sheet] if anywhere or row == home.row + 1]
            if not any(text == sentence or text.startswith(f"{sentence} ") for text in here):
                silent.append(line.name)
        assert silent == []
        assert len(worked_lines(shipped)) > 600


def test_the_number_that_the_sums_use_stands_in_the_row_of_its_input(books: Mapping[str, ShippedBook]) -> None:
    for shipped in books.values():
        plan = shipped.plan
        for bound in shipped.computed.model.inputs.values():
            if bound.used is not None and not bound.cell.axes:
                typed, used = plan.homes[bound.cell], plan.homes[bound.used]
                assert (typed.sheet, typed.row) == (used.sheet, used.row), bound.cell.name


def test_a_line_shown_again_says_which_sheet_it_comes_from(books: Mapping[str, ShippedBook]) -> None:
    """Which line it is, the name at the end of its row tells."""
    for shipped in books.values():
        plan = shipped.plan
        lines = {workbook_name(line): line for line in shipped.computed.roots}
        found = 0
        for sheet in shipped.written.book:
            for row in sheet.iter_rows(values_only=True):
                words = [str(value) for value in row if value is not None]
                told = [each for each in words if each.startswith("from ") and ", line " in each]
                if told and words[-1] in lines:
                    line = lines[words[-1]]
                    assert told == [f"from {plan.homes[line].sheet}, line {plan.places[line.name].number}"]
                    found += 1
        assert found > 20


def test_texts_are_wrapped_and_numbers_stand_to_the_right(books: Mapping[str, ShippedBook]) -> None:
    for shipped in books.values():
        book = shipped.written.book
        plan = shipped.plan
        for line in shipped.computed.roots:
            home = plan.homes[line]
            if not home.axes and line.kind in ("worked", "used"):
                look = book[home.sheet].cell(home.row + 1, home.column + 1).alignment
                wraps = line.is_text or bool(plan.words_instead(line))
                assert (bool(look.wrap_text), look.horizontal == "right") == (wraps, not line.is_text), line.name


def test_a_constant_stands_with_its_value_and_unit_in_the_books_own_system(books: Mapping[str, ShippedBook]) -> None:
    """Temperatures on a scale are shown in degF in a US book, worked here by hand; everything else as declared."""
    seen = 0
    for shipped in books.values():
        system = shipped.computed.scenario.system
        plan = shipped.plan
        sheet = shipped.written.book["Constants"]
        rows = {row[-1].value: row for row in sheet.iter_rows() if isinstance(row[-1].value, str)}
        for name, constant in plan.constants.items():
            row = rows[name]
            if constant.unit.point and constant.unit.shown() == "degC" and system == "us":
                expected, unit = float(constant) * 1.8 + 32, "degF"
                seen += 1
            else:
                currency = shipped.computed.scenario.currency
                expected, unit = float(constant), displayed_unit(constant).replace("money", currency)
            values = [cell.value for cell in row]
            assert any(isinstance(value, int | float) and abs(value - expected) < 1e-9 for value in values), name
            assert unit in values or not unit, name
    assert seen >= 5


def named_rows(shipped: ShippedBook) -> dict[tuple[str, str], list[list[str]]]:
    """Sheet and text: every row in which the text stands behind the first column, with all texts of that row."""
    found: dict[tuple[str, str], list[list[str]]] = {}
    for sheet in shipped.written.book:
        for row in sheet.iter_rows():
            said = [cell.value for cell in row if isinstance(cell.value, str)]
            for text in said[1:]:
                found.setdefault((sheet.title, text), []).append(said)
    return found


def entries(shipped: ShippedBook) -> Iterator[tuple[Line, str, str, bool]]:
    """Each number that a template names in a list or table: the line, the sheet, its workbook name, whether it is
    repeated there."""
    lines = {line.name: line for line in shipped.computed.roots}
    for template in fitting(read_templates(), shipped.computed.scenario.parts):
        for entry in (name for block in template.blocks for name in block.lines):
            line = lines[entry.removeprefix("show:")]
            if not line.is_text:
                yield line, template.sheet, line.name.replace(".", "_"), entry.startswith("show:")


def test_the_row_with_a_line_s_name_says_how_it_is_worked_out_or_where_it_comes_from(
    books: Mapping[str, ShippedBook],
) -> None:
    """Tables too: the sentence of a neighbour is not enough. Where a note follows in the same cell, it comes after."""
    for shipped in books.values():
        rows = named_rows(shipped)
        plan = shipped.plan
        silent, repeated = [], 0
        for line, sheet, name, shown in entries(shipped):
            away = plan.homes[line].sheet != sheet
            words = f"from {plan.homes[line].sheet}" if away else f"{way(plan, line)}."
            repeated += away
            if line.axes and shown:
                continue
            said = [text for row in rows.get((sheet, name), []) for text in row]
            if not any(text.startswith(words) for text in said):
                silent.append(f"{name} on {sheet}: {words}")
        assert silent == []
        assert repeated > 20


def displayed_unit(constant: Constant) -> str:
    """The constant's own unit, as both books show it."""
    return displayed(constant.unit, "metric").shown() if not constant.unit.pure else ""
