"""Every check of the book broken in both directions, and whole."""

from __future__ import annotations

import itertools
from functools import cache
from typing import Any, Final

import pytest

from farmbook.results import whole_farm
from tests.checks.farms import FIRST_FAILING, Typed, checks, farm, verdicts
from tests.checks.table import CHECKS

SUMS: Final = tuple(name for name, checked in CHECKS.items() if checked.slips)
GROUNDS: Final[tuple[Typed, ...]] = (
    {},
    {"spawn.supply": "made on the farm"},
    {"bag.bag_price": -5, "spawn.price": -40, "make_or_buy.resale": 1e6},
)
"""Farms whose figures are falsified: bought spawn, own spawn, and costs below zero."""
SLIP, DUST = 1e-5, 1e-12
"""Shares of a figure: one that only a changed formula explains, and one that is rounding."""
STILL = {line: 1.0 for checked in CHECKS.values() for line in checked.slips}
"""No figure falsified; every one that any test falsifies is named, so that one engine serves them all."""


def test_every_check_has_an_entry() -> None:
    assert set(CHECKS) == set(checks())


@pytest.mark.parametrize("system", ["metric", "us"])
def test_the_plausible_farm_breaks_none(system: str) -> None:
    found = verdicts([farm({})], system=system)
    assert [name for name in CHECKS if found[name][0] != 1] == []


@pytest.mark.parametrize("name", CHECKS)
def test_an_entry_breaks_its_check_and_has_a_farm_beside_it(name: str) -> None:
    assert CHECKS[name].fails or CHECKS[name].slips
    assert CHECKS[name].holds


@cache
def all_told(kind: str, system: str) -> dict[str, Any]:
    """What all checks say of the farms of this kind of every entry, one after the other, in one run."""
    return verdicts([farm(typed) for checked in CHECKS.values() for typed in getattr(checked, kind)], system=system)


def told(name: str, kind: str, system: str) -> list[tuple[float, str]]:
    """What a check says of its own farms of a kind, as a number and in words."""
    found, before = all_told(kind, system), list(CHECKS)[: list(CHECKS).index(name)]
    first = sum(len(getattr(CHECKS[each], kind)) for each in before)
    own = slice(first, first + len(getattr(CHECKS[name], kind)))
    return list(zip(found[name][own].tolist(), found[checks()[name].name][own].tolist(), strict=True))


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", [name for name, checked in CHECKS.items() if checked.fails])
def test_farms_that_break_it(name: str, system: str) -> None:
    for typed, (well, words) in zip(CHECKS[name].fails, told(name, "fails", system), strict=True):
        assert well == 0, typed
        assert words != "ok"
        assert words.endswith((".", "?")), words


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", CHECKS)
def test_farms_that_it_leaves_in_peace(name: str, system: str) -> None:
    for typed, found in zip(CHECKS[name].holds, told(name, "holds", system), strict=True):
        assert found == (1, "ok"), typed


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", SUMS)
def test_a_figure_falsified_upward_or_downward_breaks_it(name: str, system: str) -> None:
    cases = [case for case in falsified_cases() if case[0] == name]
    wells = [well for case, well in zip(falsified_cases(), all_falsified(system), strict=True) if case[0] == name]
    wrong = [case for case, well in zip(cases, wells, strict=True) if (well == 1) != (abs(case[3]) == DUST)]
    assert wrong == []
    assert len(cases) == len(GROUNDS) * len(CHECKS[name].slips) * 4


@cache
def falsified_cases() -> tuple[tuple[str, Typed, str, float], ...]:
    """A check, a farm, a line that goes into the check, and the share by which it is falsified."""
    return tuple(
        (name, ground, line, share)
        for name in SUMS
        for ground, line, share in itertools.product(GROUNDS, CHECKS[name].slips, (SLIP, -SLIP, DUST, -DUST))
    )


@cache
def all_falsified(system: str) -> list[float]:
    """What the check of each case says of it, in one run for all."""
    cases = falsified_cases()
    farms = [farm({**ground, **CHECKS[name].slips_where}) for name, ground, _, _ in cases]
    found = verdicts(farms, [{**STILL, line: 1 + share} for _, _, line, share in cases], system)
    return [float(found[name][number]) for number, (name, *_) in enumerate(cases)]


@pytest.mark.parametrize("kind", FIRST_FAILING)
def test_the_first_that_fails_is_named(kind: str) -> None:
    farms = [{}, *(typed for checked in CHECKS.values() for typed in checked.fails)]
    of_kind = [check for check in whole_farm().checks if check.kind == kind]
    named: set[str] = set()
    found = verdicts([farm(typed) for typed in farms])
    for number, typed in enumerate(farms):
        failing = [check.label for check in of_kind if found[check.name][number] == 0]
        said = str(found[FIRST_FAILING[kind]][number])
        assert said == (failing[0] if failing else "none"), typed
        named.add(said)
    assert len(named) > 10
