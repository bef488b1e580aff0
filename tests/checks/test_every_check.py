"""Every check of the book broken in both directions, and whole."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import Final

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


def told(name: str, farms: Sequence[Typed], system: str) -> list[tuple[float, str]]:
    """What a check says of some farms, as a number and in words."""
    found = verdicts([farm(typed) for typed in farms], system=system)
    return list(zip(found[name].tolist(), found[checks()[name].name].tolist(), strict=True))


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", [name for name, checked in CHECKS.items() if checked.fails])
def test_farms_that_break_it(name: str, system: str) -> None:
    for typed, (well, words) in zip(CHECKS[name].fails, told(name, CHECKS[name].fails, system), strict=True):
        assert well == 0, typed
        assert words != "ok"
        assert words.endswith((".", "?")), words


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", CHECKS)
def test_farms_that_it_leaves_in_peace(name: str, system: str) -> None:
    for typed, found in zip(CHECKS[name].holds, told(name, CHECKS[name].holds, system), strict=True):
        assert found == (1, "ok"), typed


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", SUMS)
def test_a_figure_falsified_upward_or_downward_breaks_it(name: str, system: str) -> None:
    cases = list(itertools.product(GROUNDS, CHECKS[name].slips, (SLIP, -SLIP, DUST, -DUST)))
    farms = [farm({**ground, **CHECKS[name].slips_where}) for ground, _, _ in cases]
    found = verdicts(farms, [{**STILL, line: 1 + share} for _, line, share in cases], system)[name]
    wrong = [case for case, well in zip(cases, found, strict=True) if (well == 1) != (abs(case[2]) == DUST)]
    assert wrong == []


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
