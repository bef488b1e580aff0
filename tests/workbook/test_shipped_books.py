"""Every rule held against the workbook of every shipped scenario."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

import pytest

from tests.workbook.lints_cells import CELL_LINTS
from tests.workbook.lints_charts import CHART_LINTS
from tests.workbook.lints_file import FILE_LINTS
from tests.workbook.lints_formulas import FORMULA_LINTS
from tests.workbook.lints_front import FRONT_LINTS, SCREEN, heights_of
from tests.workbook.lints_placed import PLACED_LINTS, Placed
from tests.workbook.shipped import SCENARIOS, ShippedBook
from tests.workbook.written import MAIN, Written

Lint = Callable[[Written], Iterator[str]]
PlacedLint = Callable[[Written, Sequence[Placed]], Iterator[str]]
LINTS: tuple[Lint, ...] = (*FORMULA_LINTS, *CELL_LINTS, *FILE_LINTS, *CHART_LINTS, *FRONT_LINTS)


@pytest.fixture(params=SCENARIOS)
def book(request: pytest.FixtureRequest, books: Mapping[str, ShippedBook]) -> ShippedBook:
    return books[request.param]


@pytest.mark.parametrize("lint", LINTS, ids=lambda lint: str(lint.__name__))
def test_no_rule_is_broken(book: ShippedBook, lint: Lint) -> None:
    assert list(lint(book.written)) == []


@pytest.mark.parametrize("lint", PLACED_LINTS, ids=lambda lint: str(lint.__name__))
def test_no_line_or_input_breaks_a_rule(book: ShippedBook, lint: PlacedLint) -> None:
    assert len(book.placed) > 400
    assert list(lint(book.written, book.placed)) == []


def test_the_paper_is_the_one_of_the_scenario(book: ShippedBook) -> None:
    wanted = {"letter": "1", "a4": "9"}[book.computed.scenario.paper]
    setups = [root.find(f"{MAIN}pageSetup") for root in book.written.sheets_xml.values()]
    assert {setup.get("paperSize") for setup in setups if setup is not None} == {wanted}
    assert None not in setups


def test_every_line_and_input_of_the_model_stands_in_the_book(book: ShippedBook) -> None:
    placed = {each.name for each in book.placed}
    model = book.computed.model
    assert {line.name for line in model.lines} | {bound.cell.name for bound in model.inputs.values()} <= placed
    cells = [at for each in book.placed for at in each.cells]
    assert len(cells) == len(set(cells))


def test_the_first_screen_holds_the_answers(book: ShippedBook) -> None:
    """From the title over the figures to what limits and after which flush to dump; the other sentences stand below."""
    said = {cell.text: at[1] for at, cell in book.written.formulas.items() if at[0] == "Start"}
    heights = heights_of(book.written)
    assert sum(heights.get(row, 20) for row in range(1, said["=flush_choice_answer"] + 1)) <= SCREEN
