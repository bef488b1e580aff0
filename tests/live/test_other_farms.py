"""A farm that begins, one that grows on a loan, and plans of other lengths: as built, two programs agree in every cell."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Final

import pytest

from farmbook.output import lay_out, written
from farmbook.results import Computed, compute, load_scenario, whole_farm
from farmbook.scenario.load import read
from tests.demos import DEMOS, OTHERS
from tests.engines import gnumeric, libreoffice, require
from tests.engines.cells import Cell, Value, disagreements, formula_cells
from tests.engines.libreoffice import LibreOfficeBook
from tests.live.edits import LiveBook
from tests.live.turns import turn_of

LENGTHS = (12, 36, 84)
"""Months; the shortest, those of a plan unless its scenario says otherwise, and the longest."""
USUAL = 36
LATER = {12: "2027-06-01", 36: "2028-02-29", 84: "2028-02-29"}
"""First days: an ordinary one, and a 29 February, from which 84 months run over two leap years."""


def of_length(scenario: Path, months: int) -> Computed:
    """A demo farm with a plan of so many months, from another day."""
    farm = tomllib.loads(scenario.read_text(encoding="utf-8")) | {"months": months}
    farm["plan"] = farm.get("plan", {}) | {"start": LATER[months]}
    return compute(read(farm, whole_farm()))


def in_libreoffice(path: Path) -> dict[Cell, Value | None]:
    """Every formula of the workbook after LibreOffice worked it out."""
    with LibreOfficeBook(path) as book:
        return book.read(list(formula_cells(path)))


PROGRAMS: Final[Sequence[Callable[[Path], Mapping[Cell, Value | None]]]] = (gnumeric.recalculate, in_libreoffice)


ROUNDING: Final = 1e-8
"""Money of seven years, a million and more, is added up in another order: what should be nothing is some 1e-9 then."""


def hold_alike(
    computed: Computed, path: Path, programs: Sequence[Callable[[Path], Mapping[Cell, Value | None]]]
) -> None:
    """Every formula of the book gives in these programs what the engine of the book found."""
    book, plan = lay_out(computed)
    path.write_bytes(written(computed, book, plan))
    expected = LiveBook(computed, book, plan).expected()
    assert set(expected) == set(formula_cells(path))
    for program in programs:
        assert disagreements(expected, program(path), absolute=ROUNDING) == []


@pytest.mark.parametrize("scenario", OTHERS, ids=lambda path: path.stem)
def test_every_cell_agrees_as_built(scenario: Path, tmp_path: Path, pytestconfig: pytest.Config) -> None:
    """In one of the programs, which is the other one at another commit; in both with `--whole`."""
    require(gnumeric.available())
    require(libreoffice.available())
    whole = pytestconfig.getoption("whole")
    programs = PROGRAMS if whole else [PROGRAMS[turn_of(OTHERS.index(scenario), len(PROGRAMS))]]
    hold_alike(compute(load_scenario(scenario)), tmp_path / "book.xlsx", programs)


@pytest.mark.parametrize("months", LENGTHS)
@pytest.mark.parametrize("scenario", DEMOS, ids=lambda path: path.stem)
def test_every_cell_agrees_at_any_length(
    scenario: Path, months: int, tmp_path: Path, pytestconfig: pytest.Config
) -> None:
    """The usual length of one farm in one of the programs, which are others at another commit; all with `--whole`."""
    whole = pytestconfig.getoption("whole")
    if not whole and (months != USUAL or turn_of(DEMOS.index(scenario), len(DEMOS))):
        pytest.skip("plans of every length are recalculated with --whole")
    require(gnumeric.available())
    require(libreoffice.available())
    computed = of_length(scenario, months)
    assert computed.scenario.months == months
    hold_alike(computed, tmp_path / "book.xlsx", PROGRAMS if whole else [PROGRAMS[turn_of(1, len(PROGRAMS))]])
