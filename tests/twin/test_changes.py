"""What a change is worth: every line of every change beside the whole twin run again on inputs edited."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from farmbook.expr.nodes import Line
from farmbook.model.alternatives.change_sizes import ChangeSizes, OwnChange
from farmbook.sections.declare import Input
from tests.twin.choice_farms import BASES, TWISTS, choice_farm
from tests.twin.edge_farms import EDGES, edge_farm, plausible
from tests.twin.farm_twin import choices, twin
from tests.twin.farm_twin_change_ranks import NAMES
from tests.twin.farm_twin_changes import changes
from tests.twin.farm_twin_ground import Results
from tests.twin.farms import Farm, alternative_lines, differences, in_declared_units, twin_inputs, values_of
from tests.twin.test_choices import AS_TYPED, plain

OWN: Mapping[Input, Any] = {
    OwnChange.price: -0.1,
    OwnChange.weight: 0.08,
    OwnChange.losses: 0.3,
    OwnChange.bags: 0.2,
    OwnChange.pay: 0.04,
    OwnChange.energy: 0.3,
    OwnChange.spawn: -0.2,
    OwnChange.unsold: 0.5,
    OwnChange.weeks: -3.0,
}
DOWN: Mapping[Input, Any] = {
    ChangeSizes.price: -0.1,
    ChangeSizes.weight: -0.1,
    ChangeSizes.losses: 0.5,
    ChangeSizes.weeks: -2.0,
}


@cache
def farms() -> tuple[Farm, ...]:
    """Farms that every stage holds back in turn, strange ones, and changes of other sizes."""
    held_back = [choice_farm(base, twist, "") for base in BASES for twist in list(TWISTS)[::3]]
    sized = [plausible(OWN), plausible(DOWN), plausible({**OWN, **DOWN})]
    return (*sized, *held_back, *(edge_farm(name) for name in list(EDGES)[::5]))


def lines() -> list[Line]:
    """Lines of the changes that can be held to the twin: no sentences."""
    keys = set(NAMES)
    every = [line for line in alternative_lines() if (line.case or line.name.partition(".")[0]) in keys]
    told = [line for line in every if not getattr(line.expr, "parts", ())]
    worked = [line for line in told if not line.name.endswith((".rank_key", ".cents"))]
    return [line for line in worked if plain(line) not in AS_TYPED and not plain(line).endswith("_used")]


@cache
def alike() -> tuple[tuple[int, ...], ...]:
    """The farms, by their numbers, that have equally many rows, so that one engine serves them at once."""
    sizes = [tuple((axis.name, len(rows)) for axis, rows in farm.names.items()) for farm in farms()]
    return tuple(tuple(number for number, size in enumerate(sizes) if size == one) for one in sorted(set(sizes)))


@cache
def worked_out() -> tuple[Results, ...]:
    """By the twin: what is said of each change, and every line of its farm under the name it has in the book."""
    every, found = farms(), dict[int, Results]()
    for numbers in alike():
        others = of_the_book([every[number] for number in numbers])
        for place, number in enumerate(numbers):
            given = twin_inputs(every[number])
            now: Results = dict(twin(given))
            thens, told = changes(given, now)
            again = {f"{line}_{name}": value for name, then in thens.items() for line, value in then.items()}
            book = {name: value[min(place, len(value) - 1)] for name, value in others.items()}
            ranks = choices(given, now, {**book, **told})
            ranked = {name: value for name, value in ranks.items() if name.startswith("change_ranks")}
            found[number] = {**again, **told, **ranked}
    return tuple(found[number] for number in range(len(every)))


def of_the_book(some: Sequence[Farm]) -> Results:
    """What farms come to in other ways, which other tests hold to the twin."""
    others = [line for line in alternative_lines() if not line.case and not getattr(line.expr, "parts", ())]
    return dict(in_declared_units(values_of(some, "metric"), "metric", others))


@pytest.mark.parametrize("system", ["metric", "us"])
def test_every_change_comes_to_what_the_twin_makes_of_it(system: str) -> None:
    apart, every = [], farms()
    for numbers in alike():
        model = in_declared_units(values_of([every[number] for number in numbers], system), system, lines())
        ours = [worked_out()[number] for number in numbers]
        assert all(model.keys() <= own.keys() for own in ours)
        apart += [replace(each, farm=numbers[each.farm]) for each in differences(ours, model)]
    assert apart == []
    compared = Counter(line.case for line in lines())
    assert all(compared[name] >= 9 for name in NAMES), compared


def test_some_changes_pass_a_limit_and_some_are_ranked() -> None:
    passing = [sum(float(own[f"{name}.passes"]) for name in NAMES) for own in worked_out()]
    ranked = [float(own["change_ranks.ranked"]) for own in worked_out()]
    assert sum(each > 0 for each in passing) >= 5
    assert sum(each >= 3 for each in ranked) >= 5
    assert len({float(own["change_ranks.first"]) for own in worked_out()}) >= 4
