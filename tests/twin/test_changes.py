"""What a change is worth: every line of every change beside the whole twin run again on inputs edited."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
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


def farms() -> list[Farm]:
    """Farms that every stage holds back in turn, strange ones, and changes of other sizes."""
    held_back = [choice_farm(base, twist, "") for base in BASES for twist in list(TWISTS)[::3]]
    sized = [plausible(OWN), plausible(DOWN), plausible({**OWN, **DOWN})]
    return [*sized, *held_back, *(edge_farm(name) for name in list(EDGES)[::5])]


def lines() -> list[Line]:
    """Lines of the changes that can be held to the twin: no sentences."""
    keys = set(NAMES)
    every = [line for line in alternative_lines() if (line.case or line.name.partition(".")[0]) in keys]
    told = [line for line in every if not getattr(line.expr, "parts", ())]
    worked = [line for line in told if not line.name.endswith((".rank_key", ".cents"))]
    return [line for line in worked if plain(line) not in AS_TYPED and not plain(line).endswith("_used")]


@cache
def worked_out() -> list[Results]:
    """By the twin: what is said of each change, and every line of its farm under the name it has in the book."""
    found = []
    for farm in farms():
        given = twin_inputs(farm)
        now: Results = dict(twin(given))
        thens, told = changes(given, now)
        again = {f"{line}_{name}": value for name, then in thens.items() for line, value in then.items()}
        ranks = choices(given, now, {**of_the_book(farm), **told})
        found.append({**again, **told, **{name: ranks[name] for name in ranks if name.startswith("change_ranks")}})
    return found


def of_the_book(farm: Farm) -> Results:
    """What the farm comes to in other ways, which other tests hold to the twin."""
    others = [line for line in alternative_lines() if not line.case and not getattr(line.expr, "parts", ())]
    return {name: value[0] for name, value in in_declared_units(values_of([farm], "metric"), "metric", others).items()}


@pytest.mark.parametrize("system", ["metric", "us"])
def test_every_change_comes_to_what_the_twin_makes_of_it(system: str) -> None:
    apart, compared = [], Counter[str]()
    for own, farm in zip(worked_out(), farms(), strict=True):
        model = in_declared_units(values_of([farm], system), system, lines())
        assert model.keys() <= own.keys()
        compared.update(line.case for line in lines())
        apart += differences([own], model)
    assert apart == []
    assert all(compared[name] >= 9 * len(farms()) for name in NAMES), compared


def test_some_changes_pass_a_limit_and_some_are_ranked() -> None:
    passing = [sum(float(own[f"{name}.passes"]) for name in NAMES) for own in worked_out()]
    ranked = [float(own["change_ranks.ranked"]) for own in worked_out()]
    assert sum(each > 0 for each in passing) >= 5
    assert sum(each >= 3 for each in ranked) >= 5
    assert len({float(own["change_ranks.first"]) for own in worked_out()}) >= 4
