"""Farms at the end of what can be typed: every two options of two switches at once, and extremes by name."""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from farmbook.expr.nodes import RawInput
from farmbook.expr.walk import ordered_axes
from farmbook.model.axes import RECIPE
from farmbook.sections.declare import Choice
from tests.engines.cells import Entry
from tests.live.edits import Edit, LiveBook

__all__ = ["EXTREMES", "covering", "extreme", "switches"]

Options = Mapping[RawInput, Sequence[Entry]]

ONE_FIRST: Final = object()
"""A list of which the first member alone is left."""
PAID: Final = "hours paid"

EXTREMES: Final[Mapping[str, tuple[Mapping[str, Any], tuple[str, ...]]]] = {
    "no hours of the owner's": ({"hours.own_hours": 0}, ()),
    "no hours at all": ({"hours.counted": PAID, "hours.hired_hours": 0, "hours.own_hours": 0}, ()),
    "no cold room": ({"limits.cold_room": None}, ("cold_room_stage.capacity",)),
    "one customer": ({"customer.name": ONE_FIRST}, ()),
    "no customer": ({"customer.name": None}, ("year.money_per_sold", "customer_year.average_price")),
    "one ingredient": ({"ingredient.name": ONE_FIRST}, ()),
    "no loss": (
        {
            "recipe.loss_in_spawn_run": 0,
            "crop.loss_at_steaming": 0,
            "crop.loss_before_first_pick": 0,
            "crop.loss_between_flushes": 0,
            "crop.trim": 0,
            "crop.shrink": 0,
            "customer.unsold": 0,
        },
        (),
    ),
    "all lost at steaming": (
        {"crop.loss_at_steaming": 1, "vessel.loss_at_steaming": 1},
        ("year.money_per_sold", "growing_cost.cost_per_taken"),
    ),
    "all lost in the spawn run": ({"recipe.loss_in_spawn_run": 1}, ("year.money_per_sold",)),
    "all lost before the first pick": ({"crop.loss_before_first_pick": 1}, ("year.money_per_sold",)),
    "all lost between flushes": ({"crop.loss_between_flushes": 1}, ()),
    "all trimmed away": ({"crop.trim": 1}, ("year.full_per_sold", "growing_cost.cost_per_taken")),
    "all dried away": ({"crop.shrink": 1}, ("year.full_per_sold", "growing_cost.cost_per_taken")),
    "nothing grows": ({"recipe.efficiency_given": 0, "crop.weight_given": 0, "crop.first_weight": 0}, ()),
    "no bags": ({"farm.bags_filled_a_week": 0}, ("year.money_per_sold",)),
    "no weeks": ({"farm.weeks_worked": 0}, ("year.money_per_sold",)),
    "all unsold": ({"customer.unsold": 1}, ("year.money_per_sold", "customer_year.average_price")),
    "nobody pays": ({"customer.price": 0}, ()),
    "rooms far too small": (
        {"incubation_room.own_places": 1, "fruiting_room.own_places": 1, "fruiting_room.places_given": "typed"},
        (),
    ),
    "no power": ({"cabinet.power": 0, "vessel.power": 0}, ()),
    "no bills": ({"bill.amount": 0, "bills.energy": None, "bills.in_all": 0}, ()),
}
"""What is typed, everywhere in a list, and the lines that then have no figure."""


def switches(live: LiveBook) -> Options:
    """Every choice of the book with its options, each recipe, and one to four flushes."""
    inputs = live.computed.model.inputs
    found: dict[RawInput, Sequence[Entry]] = {
        bound.cell: declared.labels for declared, bound in inputs.items() if isinstance(declared, Choice)
    }
    names = live.computed.scenario.cells[live.computed.model.axes[RECIPE].names].texts.reshape(-1)
    by_name = {declared.dotted: bound.cell for declared, bound in inputs.items()}
    found[by_name["mix.chosen_recipe"]] = [str(name) for name in names if name]
    found[by_name["crop.flushes_kept"]] = [1.0, 2.0, 3.0, 4.0]
    return found


def covering(options: Options, chance: random.Random) -> Iterator[tuple[Edit, ...]]:
    """Farms among which every two options of two switches meet at least once; each tries to meet as many as it can."""
    cells = list(options)
    left = {
        frozenset(((one, first), (other, second)))
        for one, other in itertools.combinations(cells, 2)
        for first in options[one]
        for second in options[other]
    }
    while left:
        start = chance.choice(sorted(left, key=lambda pair: sorted(map(str, pair))))
        chosen: dict[RawInput, Entry] = dict(start)
        for cell in chance.sample(cells, len(cells)):
            if cell not in chosen:
                chosen[cell] = max(options[cell], key=lambda option: _met(cell, option, chosen, left))
        left -= {frozenset(pair) for pair in itertools.combinations(chosen.items(), 2)}
        yield tuple(Edit(cell, (), option) for cell, option in chosen.items())


def _met(
    cell: RawInput,
    option: Entry,
    chosen: Mapping[RawInput, Entry],
    left: set[frozenset[tuple[RawInput, Entry]]],
) -> int:
    return sum(frozenset(((cell, option), other)) in left for other in chosen.items())


def extreme(live: LiveBook, name: str) -> tuple[Edit, ...]:
    """The edits that make this extreme of a book."""
    typed = EXTREMES[name][0]
    inputs = {declared.dotted: bound.cell for declared, bound in live.computed.model.inputs.items()}
    return tuple(edit for dotted, value in typed.items() for edit in _everywhere(live, inputs[dotted], value))


def _everywhere(live: LiveBook, cell: RawInput, value: Any) -> Iterator[Edit]:
    sizes = live.computed.scenario.sizes
    for index in itertools.product(*(range(sizes[axis]) for axis in ordered_axes(cell.axes))):
        if value is not ONE_FIRST:
            yield Edit(cell, index, value)
        elif any(index):
            empty: Entry = None
            yield Edit(cell, index, empty)
