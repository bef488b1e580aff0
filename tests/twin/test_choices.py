"""Every stop, every recipe and either steamer as a whole farm: the book beside the whole twin run again on inputs edited."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

import pytest

from farmbook.expr.nodes import Line
from tests.twin.choice_farms import BASES, RECIPES, TWISTS, choice_farm
from tests.twin.farm_twin import choices, twin
from tests.twin.farm_twin_flushes import CLOSE, STOPS
from tests.twin.farm_twin_ground import Given, Results, over
from tests.twin.farm_twin_limits import STAGES, place_in_line
from tests.twin.farm_twin_whole import Way, as_stop, with_recipe, with_steamer
from tests.twin.farms import alternative_lines, compared_lines, in_declared_units, twin_inputs, values_of

SYSTEMS = ("metric", "us")
FEW = 5
"""Farms, at the least, that each stage holds back."""
SHARE = 1e-9
"""How far two workings-out of one figure may differ."""
AS_TYPED = {
    "bills.energy_then", "bills.energy_billed", "bills.in_one_sum", "bills.water_and_upkeep_then", "capital.usual_rest",
    "capital.usual_loss", "capital.steamer_then", "capital.own_loss_counted", "capital.in_one_sum",
}  # fmt: skip
"""What the book keeps of the papers of the farm as it is, and the twin types anew; what comes of them is compared."""
HIGHEST = ("own_peak_counts", "highest_power", "added_peak", "demand_cost_per_month")
TYPED = ("crop.flushes_kept_used", "farm.bags_filled_a_week_used")
"""Cells that a way types anew; the twin has them among its inputs."""


@dataclass(frozen=True)
class Case:
    """A farm with one recipe set beside: its inputs, and all that the twin makes of it run in every way."""

    name: str
    given: Given
    now: Results
    stops: tuple[Way, ...]
    recipe: Way
    steamer: Way

    @property
    def ways(self) -> dict[str, Way]:
        """By the key that each way has in the book."""
        stops = {f"stop_{{}}_{stop}": way for stop, way in zip(STOPS, self.stops, strict=True)}
        return {**stops, "other_recipe_{}": self.recipe, "other_steamer_{}": self.steamer}

    @property
    def kept(self) -> int:
        """Flushes kept now."""
        return int(self.given["crop.flushes_kept"])

    @property
    def as_it_is(self) -> Way:
        """The farm as it is run, with the bags it can fill."""
        return self.stops[self.kept - 1]


@cache
def farms() -> tuple[tuple[str, str, str], ...]:
    """Every base with every twist, and every recipe but the one in use beside it."""
    found = []
    for base in BASES:
        for twist, named in TWISTS.items():
            chosen = named.get("mix.chosen_recipe", RECIPES[0])
            found += [(base, twist, other) for other in RECIPES if other not in ("", chosen)]
    return tuple(found)


@cache
def cases() -> tuple[Case, ...]:
    """All farms, worked out by the twin in every way."""
    return tuple(worked(*each) for each in farms())


@cache
def ways_of(base: str, twist: str) -> tuple[Results, tuple[Way, ...], Way]:
    """What does not hang on the recipe that is set beside."""
    given = twin_inputs(choice_farm(base, twist, ""))
    now: Results = dict(twin(given))
    return now, tuple(as_stop(given, now, flushes) for flushes in range(1, 5)), with_steamer(given, now)


def worked(base: str, twist: str, other: str) -> Case:
    """One farm, worked out by the twin in every way."""
    given = twin_inputs(choice_farm(base, twist, other))
    _, stops, steamer = ways_of(base, twist)
    now: Results = dict(twin(given))
    recipe = with_recipe(given, now, RECIPES.index(other))
    return Case(f"{base}, {twist}, {other} beside", given, now, stops, recipe, steamer)


@cache
def book(system: str) -> dict[str, Any]:
    """What the book makes of all farms, line by line, in metric units."""
    values = values_of([choice_farm(*each) for each in farms()], system)
    return in_declared_units(values, system, (*compared_lines(), *alternative_lines()))


def of_book(system: str, name: str, number: int) -> Any:
    """A figure of the book for one of the farms."""
    found = book(system)[name]
    return found[min(number, len(found) - 1)]


def alike(one: Any, other: Any) -> bool:
    """Whether two figures, or lists of them, are the same but for rounding."""
    return bool(one == pytest.approx(other, rel=SHARE, abs=1e-9))


def limit_of(way: Way) -> str:
    """The stage that holds a farm back."""
    return STAGES[int(way.stages["limits.first_name"]) - 1]


def test_each_stage_holds_some_farms_back() -> None:
    assert len(cases()) == len(farms()) == 120
    different = {(base, twist): worked(base, twist, other).as_it_is for base, twist, other in farms()}
    assert len(different) == 60
    for ways in (
        list(different.values()),
        [case.recipe for case in cases()],
        [case.steamer for case in cases()],
        [stop for case in cases() for stop in case.stops],
    ):
        held = Counter(limit_of(way) for way in ways)
        assert all(held[stage] >= FEW for stage in BASES), held


def declared(case: Case) -> Iterator[tuple[str, Any]]:
    """What each way declares itself, by its name in the book."""
    for number, (key, way) in enumerate(case.ways.items(), start=1):
        room, year = key.format("room"), key.format("year")
        yield f"{room}.bags", way.bags
        yield f"{room}.limit", float(way.stages["limits.first_name"])
        yield f"{year}.bags", way.bags
        yield f"{year}.profit", way.profit
        yield f"{year}.net_takings", way.net_takings
        if key.startswith("stop"):
            yield f"{year}.flushes_kept", float(number)
            yield f"{year}.rank_key", in_fourths(way.profit, number)
            yield f"{year}.now_key", -4.0 * abs(number - case.kept) - number
    yield "other_steamer_year.return_wanted", case.steamer.return_wanted


def in_fourths(profit: float, number: int) -> float:
    """A number that is larger the more cents a year leaves, and the fewer flushes are kept."""
    cents = -(place_in_line(profit / 10, 0) / 9)
    return cents * 4 - number


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_way_comes_to_what_the_twin_makes_of_it(system: str) -> None:
    keys = {key.format(what) for key in cases()[0].ways for what in ("room", "year")}
    own = {line.name for line in alternative_lines() if not line.case and line.name.partition(".")[0] in keys}
    apart = []
    for number, case in enumerate(cases()):
        found = dict(declared(case))
        assert set(found) == own
        apart += [(case.name, name) for name, value in found.items() if not alike(of_book(system, name, number), value)]
    assert apart == []


EITHER = ("customer_year.all_it_takes", "customer_year.what_is_left")
"""Where bags are as many as customers allow, what is left is what a customer takes, but for the last digit, and stands in one
of these or in the other; what is taken, their sum, is compared."""


def plain(line: Line) -> str:
    """The name of the line that one was made again from."""
    return line.name.removesuffix(f"_{line.case}")


def read_with_another(case: Case, line: Line) -> bool:
    """Whether a line is of the highest kW of the steamer left aside: what was read with it stays with it in the book."""
    in_vessel = case.given["steamer.kind"] == "pressure vessel"
    aside = "vessel." if in_vessel else "cabinet."
    return line.case.startswith("other_steamer") and plain(line) in {f"{aside}{name}" for name in HIGHEST}


def test_every_line_made_again_is_the_twin_s_of_that_way() -> None:
    names = {key.format(what): (key, what) for key in cases()[0].ways for what in ("room", "year")}
    again = [line for line in alternative_lines() if line.case in names and plain(line) not in AS_TYPED]
    assert {line.case for line in again} == set(names)
    apart, compared = [], Counter[str]()
    for number, case in enumerate(cases()):
        for line in again:
            key, what = names[line.case]
            way = case.ways[key]
            results = way.stages if what == "room" else way.year
            if plain(line) in (*TYPED, *EITHER) or read_with_another(case, line):
                continue
            compared[line.case] += 1
            if not alike(of_book("metric", line.name, number), results[plain(line)]):
                apart.append((case.name, line.name))
    assert apart == []
    assert all(compared[each] > 60 * len(cases()) for each in names)


def better(first: float, second: float, takings: tuple[float, float]) -> int:
    """0 or 1 for the first or the second of two years, -1 where they are too close to call."""
    ahead = 0 if first >= second else 1
    apart = over(abs(first - second), abs(takings[ahead]))
    return ahead if apart > CLOSE else -1


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_best_stop_of_the_book_is_the_twin_s(system: str) -> None:
    clear = Counter[int]()
    for number, case in enumerate(cases()):
        order = sorted(range(4), key=lambda stop: -case.stops[stop].profit)
        best, second = (case.stops[stop] for stop in order[:2])
        is_clear = over(best.profit - second.profit, abs(best.net_takings)) > CLOSE
        assert of_book(system, "flush_choice.clear", number) == is_clear, case.name
        assert of_book(system, "flush_choice.best", number) == order[0] + 1 or not is_clear, case.name
        assert alike(of_book(system, "flush_choice.best_profit", number), best.profit), case.name
        assert alike(of_book(system, "as_it_is.profit", number), case.as_it_is.profit), case.name
        clear[order[0] + 1 if is_clear else 0] += 1
    # every stop is clearly the best of some farm, and on many it is too close to call
    assert set(clear) == {0, 1, 2, 3, 4}
    assert clear[0] >= FEW and sum(clear.values()) - clear[0] >= FEW


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_better_recipe_of_the_book_is_the_twin_s(system: str) -> None:
    won = Counter[int]()
    for number, case in enumerate(cases()):
        now, other = case.as_it_is, case.recipe
        wins = better(now.profit, other.profit, (now.net_takings, other.net_takings))
        assert of_book(system, "recipe_choice.clear", number) == (wins >= 0), case.name
        assert of_book(system, "recipe_choice.better", number) == (other.profit > now.profit), case.name
        assert alike(of_book(system, "recipe_choice.better_profit", number), max(now.profit, other.profit)), case.name
        won[wins] += 1
    assert all(won[each] >= FEW for each in (-1, 0, 1)), won


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_better_steamer_of_the_book_is_the_twin_s(system: str) -> None:
    won = Counter[int]()
    for number, case in enumerate(cases()):
        now, other = (way.profit - way.return_wanted for way in (case.as_it_is, case.steamer))
        wins = better(now, other, (case.as_it_is.net_takings, case.steamer.net_takings))
        assert of_book(system, "steamer_whole.clear", number) == (wins >= 0), case.name
        assert of_book(system, "steamer_whole.better", number) == (other > now), case.name
        assert alike(of_book(system, "steamer_whole.other_leaves", number), other), case.name
        won[wins] += 1
    assert all(won[each] >= FEW for each in (-1, 0, 1)), won


def test_what_is_chosen_among_the_twin_s_own_years_is_what_the_book_chooses() -> None:
    apart = []
    for number, case in enumerate(cases()):
        worth = {line.name: of_book("metric", line.name, number) for line in alternative_lines() if not line.case}
        found = choices(case.given, case.now, worth | dict(declared(case)))
        apart += [
            (case.name, name)
            for name, value in found.items()
            if not alike(of_book("metric", name, number), value.tolist())
        ]
    assert apart == []
