"""The words beside each input, against what they should be: no rule of the model is used to say which.

Held in the engine for every input of the plausible farm, in both unit systems, and in a book recalculated by a
spreadsheet engine.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import zip_longest
from pathlib import Path
from typing import Any, Final

import numpy as np
import pytest

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.numbers import Array, Cells, Engine
from farmbook.model.axes import RECIPE
from farmbook.results import whole_farm
from farmbook.sections.declare import Choice, NumberInput, TextInput
from farmbook.sections.model import Model
from farmbook.sections.section import Bound
from tests.checks.farms import farm
from tests.demos import DEMOS
from tests.engines.cells import Book, Cell, Entry, position
from tests.engines.formualizer_engine import FormualizerBook
from tests.live.edits import Edit, LiveBook, live_book
from tests.live.turns import turn_of
from tests.made import workbook_of
from tests.twin.farms import axis_sizes, cells_of, engine

SYSTEMS: Final = ("metric", "us")
SCENARIOS: Final = DEMOS

BELOW, WITHIN, ABOVE, IMPOSSIBLE = "▼ below usual", "within", "▲ above usual", "▲ cannot be"
NO_NUMBER, NOT_FILLED, SPARE = "▲ no number", "not given", "(spare)"
FINE, NOT_LISTED = "·", "▲ not in the list"


def beside(limit: float, side: int) -> float:
    """A number next to a limit, a millionth away."""
    return limit + side * 1e-6 * max(abs(limit), 1)


Limits = tuple[float, float, float, float]
"""Hard and usual limits from the lowest: the least there can be, the usual range, the most."""

TYPED: Final[dict[str, tuple[Callable[[Limits], Entry], str]]] = {
    "far below": (lambda at: at[0] - 1e6, IMPOSSIBLE),
    "just below what can be": (lambda at: beside(at[0], -1), IMPOSSIBLE),
    "at the least": (lambda at: at[0], BELOW),
    "just below": (lambda at: beside(at[1], -1), BELOW),
    "at the lower limit": (lambda at: at[1], WITHIN),
    "just above the lower limit": (lambda at: beside(at[1], 1), WITHIN),
    "between": (lambda at: (at[1] + at[2]) / 2, WITHIN),
    "just below the upper limit": (lambda at: beside(at[2], -1), WITHIN),
    "at the upper limit": (lambda at: at[2], WITHIN),
    "just above": (lambda at: beside(at[2], 1), ABOVE),
    "at the most": (lambda at: at[3], ABOVE),
    "just above what can be": (lambda at: beside(at[3], 1), IMPOSSIBLE),
    "nothing": (lambda _: None, NO_NUMBER),
    "words": (lambda _: "no idea", NO_NUMBER),
    "digits typed as text": (lambda _: "12", NO_NUMBER),
}
"""What is typed between the limits, and what the book says of it; an optional number may be missing."""


def words_beside(state: str, at: Limits, declared: NumberInput) -> str:
    """What stands beside a cell in this state; where two limits fall together, the harder word."""
    value, word = TYPED[state][0](at), TYPED[state][1]
    if not isinstance(value, float | int):
        return NOT_FILLED if declared.optional else word
    if not at[0] <= value <= at[3]:
        return IMPOSSIBLE
    if not at[1] <= value <= at[2]:
        return BELOW if value < at[1] else ABOVE
    return FINE if declared.axes else strip(int((value - at[1]) / (at[2] - at[1]) * 10.999))


def strip(place: int) -> str:
    """A range with its mark in one of eleven places."""
    return "─" * place + "●" + "─" * (10 - place)


def test_most_limits_lie_apart() -> None:
    """Else the words of the states would say nothing."""
    cells = plausible_cells("metric")
    for state, (typed, word) in TYPED.items():
        said = [words_beside(state, limits(bound, cells), declared) for declared, bound in number_inputs()]
        alike = [each for each in said if each in (word, NOT_FILLED) or (word == WITHIN and each[0] in "─●·")]
        assert len(alike) > 0.6 * len(said), (state, typed)


def number_inputs(model: Model | None = None) -> list[tuple[NumberInput, Bound]]:
    """Every number of the farm, or of the model of one book."""
    inputs = (model or whole_farm()).inputs
    return [(each, bound) for each, bound in inputs.items() if isinstance(each, NumberInput)]


def kind(declared: NumberInput) -> tuple[str, bool]:
    """How the cells of an input lie, and whether they may stay empty."""
    lie = " by ".join("named" if axis.named else "fixed" for axis in ordered_axes(declared.axes))
    return lie or "single", declared.optional


def test_every_kind_of_number_is_among_them() -> None:
    assert {kind(declared) for declared, _ in number_inputs()} == {
        ("single", False),
        ("single", True),
        ("named", False),
        ("named", True),
        ("fixed", False),
        ("fixed", True),
        ("named by named", False),
        ("named by fixed", False),
    }


def plausible_cells(system: str) -> dict[RawInput, Cells]:
    """The cells of the plausible farm, to be changed by who asked for them."""
    return dict(cells_of_plausible(system))


@cache
def cells_of_plausible(system: str) -> dict[RawInput, Cells]:
    return cells_of([farm({})], system)


def words_of(bound: Bound, cells: dict[RawInput, Cells], system: str) -> Array:
    """The flags of one input as the engine finds them, and nothing that they do not need."""
    assert bound.flag is not None
    return np.asarray(plausible_engine(system).run_in_chunks(cells, [bound.flag])[bound.flag][0])


def plausible_engine(system: str) -> Engine:
    sizes = tuple(sorted(axis_sizes(farm({}).names).items(), key=lambda each: each[0].order))
    return engine(system, sizes)


def all_words(cells: dict[RawInput, Cells], system: str) -> dict[str, Array]:
    values = plausible_engine(system).run(cells)
    return {line.name: np.asarray(value[0]) for line, value in values.items() if line.kind == "flag"}


def filled(shape: tuple[int, ...], value: Entry) -> Cells:
    """The same thing typed into all cells of an input."""
    number = float(value) if isinstance(value, float | int) else math.nan
    return Cells(np.full(shape, number), np.full(shape, "" if value is None else str(value), dtype=object))


def limits(bound: Bound, cells: dict[RawInput, Cells]) -> Limits:
    """The hard limits and the usual range as the cells show them."""
    least, low, high, most = (float(cells[cell].numbers.ravel()[0]) for cell in limit_cells(bound))
    return least, low, high, most


def limit_cells(bound: Bound) -> Sequence[RawInput]:
    """The cells of the four limits of a number, from the lowest."""
    found = (bound.least, bound.low, bound.high, bound.most)
    return [cell for cell in found if cell is not None]


def in_rows(axes: tuple[Axis, ...], names: dict[Axis, Any], word: str) -> Array:
    """The word in every cell of rows and columns that have a name; the others are spare."""
    found = np.full(tuple(len(names[axis]) if axis.named else len(axis.members) for axis in axes), word, dtype=object)
    for place, axis in enumerate(axes):
        for row, name in enumerate(names[axis] if axis.named else ()):
            if name == "":
                found[(slice(None),) * place + (row,)] = SPARE
    return found


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("state", TYPED)
def test_numbers(state: str, system: str) -> None:
    typed = TYPED[state][0]
    cells, names = plausible_cells(system), dict(farm({}).names)
    for _, bound in number_inputs():
        cells[bound.cell] = filled(cells[bound.cell].numbers.shape, typed(limits(bound, cells)))
    found = all_words(cells, system)
    for declared, bound in number_inputs():
        wanted = in_rows(ordered_axes(declared.axes), names, words_beside(state, limits(bound, cells), declared))
        assert bound.flag is not None
        assert found[bound.flag.name].tolist() == wanted.tolist(), declared.dotted


Cleared = tuple[Entry, Entry, Entry, Entry]

LIMITS: Final[tuple[tuple[Cleared, float, str], ...]] = (
    ((0, 5, 6, 99), 5, strip(0)),
    ((0, 5, 6, 99), 4.9, BELOW),
    ((0, 5, 6, 99), 6.1, ABOVE),
    ((0, 5, 6, 99), 100, IMPOSSIBLE),
    ((-30, -20, -10, 0), -15, strip(5)),
    ((-30, -20, -10, 0), 0, ABOVE),
    ((-30, -20, -10, -5), 0, IMPOSSIBLE),
    ((-30, -20, -10, 0), -31, IMPOSSIBLE),
)
CLEARED: Final[tuple[tuple[Cleared, float, str], ...]] = (
    ((None, None, 3, 9), 0, strip(0)),
    ((-9, None, 3, 9), -0.1, BELOW),
    ((-9, -3, None, 9), 0, strip(10)),
    ((-9, -3, None, None), 0.1, IMPOSSIBLE),
)
"""Limits typed, a value, and its words; in a spreadsheet a cleared limit is zero (no book is built with one)."""


def wage(model: Model | None = None) -> Bound:
    """One input with all its limits."""
    return next(bound for declared, bound in number_inputs(model) if declared.dotted == "farm.wage")


@pytest.mark.parametrize(("typed", "value", "words"), LIMITS)
def test_limits_are_read_from_their_cells(typed: Cleared, value: float, words: str) -> None:
    bound = wage()
    cells = plausible_cells("metric")
    cells |= {cell: filled((1,), limit) for cell, limit in zip(limit_cells(bound), typed, strict=True)}
    cells[bound.cell] = filled((1,), value)
    assert str(words_of(bound, cells, "metric")) == words


# Words picked


def picks(model: Model | None = None) -> list[tuple[TextInput, Bound]]:
    """Every choice, and every name to be picked out of a list; of the farm, or of the model of one book."""
    return [
        (each, bound)
        for each, bound in (model or whole_farm()).inputs.items()
        if isinstance(each, Choice) or (isinstance(each, TextInput) and each.picks is not None)
    ]


def words_to_pick(declared: TextInput, lists: dict[Axis, Any]) -> Iterator[tuple[Entry, str]]:
    """What may be typed into an input that picks, and what stands beside it then."""
    options = declared.labels if isinstance(declared, Choice) else lists[declared.picks or RECIPE]
    for option in options:
        if option:
            yield option, FINE
            yield option.upper(), FINE
            yield option.swapcase(), FINE
            yield option[:-1], NOT_LISTED
            yield option + "s", NOT_LISTED
    yield None, NOT_LISTED
    yield "no such thing", NOT_LISTED
    yield 3.0, NOT_LISTED


def test_there_are_choices_and_members() -> None:
    assert {isinstance(declared, Choice) for declared, _ in picks()} == {True, False}


@pytest.mark.parametrize("declared", [declared for declared, _ in picks()], ids=lambda each: each.dotted)
def test_words_picked(declared: TextInput) -> None:
    bound = whole_farm().inputs[declared]
    cases = list(words_to_pick(declared, dict(farm({}).names)))
    for typed, words in cases:
        cells = plausible_cells("metric")
        cells[bound.cell] = filled((1,), typed)
        assert str(words_of(bound, cells, "metric")) == words, typed


@pytest.mark.parametrize(
    ("recipes", "chosen", "words"),
    [
        (("Lean", "Rich", ""), "lean", FINE),
        (("Lean", "LEAN", ""), "lean", NOT_LISTED),
        (("Lean", "Lean", "Lean"), "Lean", NOT_LISTED),
        (("", "Lean", ""), "Lean", FINE),
        (("Lean", "", ""), "", NOT_LISTED),
        (("", "", ""), "Lean", NOT_LISTED),
    ],
)
def test_a_name_is_picked_only_where_exactly_one_row_has_it(recipes: tuple[str, ...], chosen: str, words: str) -> None:
    cells = cells_of([farm({"recipe.name": recipes, "mix.chosen_recipe": chosen})], "metric")
    bound = next(bound for declared, bound in picks() if declared.dotted == "mix.chosen_recipe")
    assert str(words_of(bound, cells, "metric")) == words


# The same in a recalculated book


def places(live: LiveBook, bound: Bound) -> Iterator[tuple[Edit, bool]]:
    """The first cell of an input and, where it has them, cells of spare rows; and whether a cell is spare."""
    sizes, rows = live.computed.scenario.sizes, live.computed.scenario.rows
    axes = ordered_axes(bound.cell.axes)
    first = tuple(0 for _ in axes)
    yield Edit(bound.cell, first, None), False
    for place, axis in enumerate(axes):
        if axis.named and len(rows[axis]) < sizes[axis]:
            yield Edit(bound.cell, (*first[:place], len(rows[axis]), *first[place + 1 :]), None), True


def flag_place(live: LiveBook, bound: Bound, index: tuple[int, ...]) -> tuple[str, str]:
    """Where the words beside a cell stand."""
    assert bound.flag is not None
    shape = tuple(live.computed.scenario.sizes[axis] for axis in ordered_axes(bound.flag.axes))
    number = int(np.ravel_multi_index(index, shape)) if index else 0
    return next(cell for cell, member in live.places[bound.flag] if member == number)


@pytest.fixture(params=SCENARIOS, ids=lambda path: path.stem)
def opened(
    request: pytest.FixtureRequest, tmp_path: Path, pytestconfig: pytest.Config
) -> Iterator[tuple[LiveBook, Book]]:
    """A shipped scenario's book, held open in a spreadsheet engine: one of the books at each commit, all with `--whole`."""
    if not pytestconfig.getoption("whole") and turn_of(SCENARIOS.index(request.param), len(SCENARIOS)):
        pytest.skip("the words beside the inputs of this book are recalculated at other commits, and with --whole")
    live = live_book(request.param)
    path = tmp_path / "book.xlsx"
    path.write_bytes(workbook_of(request.param))
    with FormualizerBook(path) as book:
        yield live, book


def test_a_recalculated_book_says_the_same_of_numbers(opened: tuple[LiveBook, Book]) -> None:
    live, book = opened
    cells = dict(live.computed.scenario.cells)
    for state, (typed, _) in TYPED.items():
        wanted: dict[Cell, str] = {}
        for declared, bound in number_inputs(live.computed.model):
            for edit, spare in places(live, bound):
                at = limits(bound, cells)
                book.set(*live.place(edit), typed(at))
                word = words_beside(state, at, declared)
                wanted[flag_place(live, bound, edit.index)] = SPARE if spare else word
        assert SPARE in wanted.values()
        assert book.read(wanted) == wanted, state


def test_a_recalculated_book_says_the_same_of_words(opened: tuple[LiveBook, Book]) -> None:
    """One word is typed into every such cell, then the next: what stands beside a cell hangs on it alone."""
    live, book = opened
    rounds = zip_longest(
        *(
            [(bound, *each) for each in words_to_pick(declared, named_rows(live))]
            for declared, bound in picks(live.computed.model)
        )
    )
    for typings in rounds:
        wanted: dict[Cell, str] = {}
        for bound, typed, words in filter(None, typings):
            book.set(*live.place(Edit(bound.cell, (), None)), typed)
            wanted[flag_place(live, bound, ())] = words
        assert book.read(wanted) == wanted


def test_a_recalculated_book_reads_limits_from_their_cells(opened: tuple[LiveBook, Book]) -> None:
    live, book = opened
    bound = wage(live.computed.model)
    beside_it = flag_place(live, bound, ())
    for typed, value, words in (*LIMITS, *CLEARED):
        for cell, entry in zip((bound.cell, *limit_cells(bound)), (value, *typed), strict=True):
            book.set(*live.place(Edit(cell, (), None)), entry)
        assert book.read([beside_it]) == {beside_it: words}, (typed, value)


def test_the_first_without_a_number_is_the_highest_on_the_sheet(opened: tuple[LiveBook, Book]) -> None:
    """Single inputs are cleared from the bottom up, so that each one cleared becomes the first."""
    live, book = opened
    required = [bound for each, bound in number_inputs(live.computed.model) if not each.axes and not each.optional]
    required.sort(key=lambda bound: live.book.homes[bound.cell].row, reverse=True)
    first = live.computed.line("report.first_without_number")
    (shown, _), *_ = live.places[first]
    cleared: dict[RawInput, Cells] = {}
    for step, bound in enumerate(required):
        cleared[bound.cell] = filled((1,), None)
        book.set(*live.place(Edit(bound.cell, (), None)), None)
        assert str(live.computed.what_if(cleared, [first])[first][0]) == bound.declared.label
        if step % 12 == 0:
            assert book.read([shown]) == {shown: bound.declared.label}
    assert len(required) > 100


def test_the_first_error_is_named_in_a_recalculated_book(opened: tuple[LiveBook, Book]) -> None:
    live, book = opened
    bound = wage(live.computed.model)
    first = live.computed.line("report.first_error")
    (shown, _), *_ = live.places[first]
    assert book.read([shown]) == {shown: "none"}
    book.set(*live.place(Edit(bound.cell, (), None)), None)
    wanted = str(live.computed.what_if({bound.cell: filled((1,), None)}, [first])[first][0])
    assert wanted != "none"
    assert book.read([shown]) == {shown: wanted}


def test_an_input_of_a_table_that_cannot_be_is_named_at_the_head_of_every_sheet(opened: tuple[LiveBook, Book]) -> None:
    """Typed past its hard limit, or cleared, in the first row in use; every input of the tables that have one in turn."""
    live, book = opened
    rows = live.computed.scenario.rows
    tables = [
        (each, bound)
        for each, bound in number_inputs(live.computed.model)
        if each.axes and all(rows.get(axis, "-") for axis in each.axes)
    ]
    verdict, cleared_too = live.computed.line("report.verdict"), 0
    (shown, _), *_ = live.places[verdict]
    assert len(tables) > 20
    for each, bound in tables:
        first = (0,) * len(bound.cell.axes)
        place, stands = live.place(Edit(bound.cell, first, None)), live.computed.scenario.cells[bound.cell].numbers[0]
        wanted = f"THE BOOK DOES NOT ADD UP: {each.label} (on Tables); inputs changed: 1."
        for typed in (-1e300, *(() if each.optional else (None,))):
            book.set(*place, typed)
            numbers = stands.copy()
            numbers[first] = math.nan if typed is None else typed
            found = live.computed.what_if(
                {bound.cell: Cells(numbers[None], filled(numbers.shape, None).texts[None])}, [verdict]
            )
            assert found[verdict][0] == wanted
            assert book.read([shown]) == {shown: wanted}
            cleared_too += typed is None
        book.set(*place, float(stands[first]) if math.isfinite(stands[first]) else None)
    assert cleared_too > 8


def test_of_several_in_tables_that_cannot_be_the_first_listed_is_named(opened: tuple[LiveBook, Book]) -> None:
    """From the last listed on the sheet Checks up, each is typed past its limit and left so."""
    live, book = opened
    rows, first = live.computed.scenario.rows, live.computed.line("report_tables.first_unsound")
    listed = {
        line.name: cells[0][0][1] for line, cells in live.places.items() if line.name.startswith("report_tables.")
    }
    tables = [
        bound
        for each, bound in number_inputs(live.computed.model)
        if each.axes and all(rows.get(axis, "-") for axis in each.axes)
    ]
    tables.sort(key=lambda bound: position(listed[sound_of(bound)])[0], reverse=True)
    (shown, _), *_ = live.places[first]
    typed: dict[RawInput, Cells] = {}
    for step, bound in enumerate(tables):
        start = (0,) * len(bound.cell.axes)
        numbers = live.computed.scenario.cells[bound.cell].numbers[0].copy()
        numbers[start] = -1e300
        typed[bound.cell] = Cells(numbers[None], filled(numbers.shape, None).texts[None])
        book.set(*live.place(Edit(bound.cell, start, None)), -1e300)
        wanted = f"{bound.declared.label} (on Tables)"
        assert str(live.computed.what_if(typed, [first])[first][0]) == wanted
        if step % 6 == 0:
            assert book.read([shown]) == {shown: wanted}
    assert len(tables) > 20


def sound_of(bound: Bound) -> str:
    """The line that says whether every cell in use of an input holds a number that can be."""
    return f"report_tables.{bound.cell.name.replace('.', '_')}"


def named_rows(live: LiveBook) -> dict[Axis, list[str]]:
    """The names in each list of the book."""
    model = live.computed.model
    return {
        axis: [str(name) for name in live.computed.scenario.cells[lines.names].texts.ravel()]
        for axis, lines in model.axes.items()
    }
