"""The large test farm put together for so many months: its sections, ten cases, what they are worth, and its sheets."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from farmbook.expr.axis import Axis
from farmbook.expr.nodes import Constant, Expr, Line, RawInput
from farmbook.expr.ranking import nth_label, nth_value, ranking_key
from farmbook.expr.walk import ordered_axes
from farmbook.layout.template import Block, Template
from farmbook.sections.declare import Shock, number
from farmbook.sections.model import Case, Model
from farmbook.sections.section import Section
from farmbook.units import unit
from tests.language.time_model import FLUSH, Timing, Title
from tests.spine.months import CHANNEL, EXPENSES, LOANS, MONTH, Cash, Channels, Months, Prices, Rates, Sums
from tests.spine.weeks import AFTER, BEFORE, TASK, WEEK, Shocks, Tasks, Weeks

__all__ = ["NAMES", "SECTIONS", "TITLE", "Spine", "spine"]

TITLE: Final = "title.heading"
NAMES: Final = {TASK: ("Mixing", "Steaming", "Spawning", "Picking", "Selling", "Cleaning", "", "")}


class Sizes(Section):
    """How large the change of each case is."""

    price = number("Price falls by", unit="share", usual=(0, 0.4), default=0.1, how="Choose.")
    weight = number("Weight falls by", unit="share", usual=(0, 0.4), default=0.1, how="Choose.")
    loss = number("Loss grows by", unit="share", usual=(0, 0.2), default=0.04, how="Choose.")
    pay = number("Pay rises by", unit="share", usual=(0, 0.4), default=0.1, how="Choose.")
    materials = number("Materials rise by", unit="share", usual=(0, 0.4), default=0.1, how="Choose.")
    rate = number("Rate of a month rises by", unit="share", usual=(0, 0.02), default=0.003, how="Choose.")
    later = number("Share more paid late", unit="share", usual=(0, 1), default=0.3, how="Choose.")
    customer = number("Largest customer takes less by", unit="share", usual=(0, 1), default=0.5, how="Choose.")
    stopped = number("Weeks stopped", unit="1", usual=(0, 20), default=6, how="Choose.")
    slower = number("Spawn run longer by", unit="share", usual=(0, 0.5), hard=(0, 0.5), default=0.2, how="Choose.")

    def shocks(self) -> dict[str, tuple[str, Shock, Expr]]:
        """Of each case its label, its shock and what that is."""
        return {
            "price": ("Price falls", Shocks.price_kept, 1 - self.price),
            "weight": ("weight falls", Shocks.weight_kept, 1 - self.weight),
            "loss": ("More bags are lost", Shocks.loss_added, self.loss),
            "pay": ("Pay rises", Shocks.pay_kept, 1 + self.pay),
            "materials": ("Materials rise", Shocks.materials_kept, 1 + self.materials),
            "rate": ("Loans cost more", Shocks.rate_added, self.rate),
            "later": ("Customers pay later", Shocks.paid_later, self.later),
            "customer": ("The largest customer takes less", Shocks.customer_kept, 1 - self.customer),
            "stopped": ("Nothing is filled at first", Shocks.weeks_stopped, self.stopped),
            "slower": ("Spawn run is slower", Timing.slower, self.slower),
        }


SECTIONS: Final = (
    *(Title, Shocks, Timing, Weeks, Tasks, Months, Channels, Prices, Rates),
    *EXPENSES,
    *LOANS,
    *(Sums, Cash, Sizes),
)


def _plain(value: float, name: str, of: str = "1") -> Constant:
    return Constant(value, name, label=name.replace("_", " "), unit=unit(of), source="arithmetic")


CENTS: Final = _plain(100, "cents_in_money", "1/money")
PLACES: Final = tuple(_plain(place, f"place_{place}") for place in range(1, 11))


@dataclass(frozen=True)
class Spine:
    """The model with its cases, and the lines that compare them."""

    model: Model
    sizes: dict[Axis, int]
    cases: tuple[Case, ...]
    compared: tuple[Line, ...]

    @property
    def further(self) -> tuple[Line, ...]:
        """Every line beside those of the model."""
        return (*(line for case in self.cases for line in case.lines), *self.compared)

    def sheets(self) -> list[Template]:
        """All lines by their lists, section by section; a sheet for each case."""
        return list(_sheets(self))


def spine(months: int) -> Spine:
    """The farm for so many months, with the weeks that these need and margins before and after them."""
    weeks = BEFORE + math.ceil(months * 31 / 7) + 1 + AFTER
    model = Model(SECTIONS, {WEEK: weeks, MONTH: months})
    sizes = {WEEK: weeks, MONTH: months, FLUSH: 3, CHANNEL: 6, TASK: TASK.most}
    cases = tuple(
        model.case(name, label, {shock: change})
        for name, (label, shock, change) in model.section(Sizes).shocks().items()
    )
    return Spine(model, sizes, cases, _compared(model, cases))


def _compared(model: Model, cases: Sequence[Case]) -> tuple[Line, ...]:
    """What each case costs a year, one under another; their keys; the three that cost most."""
    base = model.line(Cash.profit_a_year)
    costs = [
        _single(f"worth.{case.name}_cost", case.label, base - case.line(Cash.profit_a_year), "money") for case in cases
    ]
    cents = [_single(f"{cost.name}_cents", f"{cost.label}, cents", cost * CENTS) for cost in costs]
    keys = [
        _single(f"{cost.name}_key", f"{cost.label}, key", ranking_key(each, place, PLACES[-1]))
        for cost, each, place in zip(costs, cents, PLACES, strict=True)
    ]
    top = [
        line
        for place in PLACES[:3]
        for line in (
            _single(f"worth.{place.name}", f"Costs most, {place.label}", nth_label(keys, place, PLACES[-1], costs, "")),
            _single(
                f"worth.{place.name}_cost", f"Cost, {place.label}", nth_value(keys, place, PLACES[-1], costs), "money"
            ),
        )
    ]
    return (*costs, *cents, *keys, *top)


def _single(name: str, label: str, expr: Expr, of: str = "1") -> Line:
    return Line(name, label, unit(of), (), lambda: expr, "Beside the plan.")


def _sheets(farm: Spine) -> Iterator[Template]:
    inputs = farm.model.inputs.values()
    single = tuple(bound.cell.name for bound in inputs if not bound.cell.axes)
    tables = groupby((bound.cell for bound in inputs if bound.cell.axes), lambda cell: (cell.axes, _subject(cell)))
    yield _sheet(
        "Start",
        "start",
        Block("list", "What cases cost a year", (TITLE, *(line.name for line in farm.compared))),
        Block("stamp", "Stamp"),
        Block("legend", "Looks"),
    )
    yield _sheet("Inputs", "inputs", Block("inputs", "Single", inputs=single))
    listed = [tuple(cell.name for cell in cells) for _, cells in tables]
    yield _sheet("Tables", "inputs", *(Block("input_table", "Table", inputs=names) for names in listed))
    placed = {bound.used for bound in inputs if not bound.cell.axes}
    lines = [
        line
        for line in farm.model.lines
        if line.kind in ("worked", "used") and line.name != TITLE and line not in placed
    ]
    for subject, own in groupby(sorted(lines, key=_subject), _subject):
        yield _sheet(subject.capitalize(), "worked", *_blocks(own))
    for case in farm.cases:
        yield _sheet(f"Case{case.name.capitalize()}", "worked", Block("case", "The case", of=case.name))
    yield _sheet("Constants", "reference", Block("constants", "Constants"), Block("sources", "Sources"))


def _subject(of: Line | RawInput) -> str:
    """The section; expenses stand together, and so do loans."""
    return of.name.partition(".")[0].rstrip("0123456789")


def _blocks(lines: Iterable[Line]) -> Iterator[Block]:
    groups: dict[tuple[Axis, ...], list[str]] = {}
    for line in lines:
        groups.setdefault(ordered_axes(line.axes), []).append(line.name)
    for axes, names in groups.items():
        if not axes:
            yield Block("list", "Single", tuple(names))
        elif len(axes) == 2:
            yield Block("matrix", lines=tuple(names))
        elif axes[0].direction == "across":
            yield Block("across", "Across", tuple(names), axis=axes[0].name)
        else:
            for first in range(0, len(names), 8):
                yield Block("table", "Down", tuple(names[first : first + 8]), axis=axes[0].name)


def _sheet(name: str, kind: str, *blocks: Block) -> Template:
    return Template(f"{name.lower()}.toml", name, name, "What is on this sheet?", kind, blocks)
