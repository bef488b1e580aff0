"""Every two switches in each position, and extremes, in independent engines: all cells agree, and none shows an error."""

from __future__ import annotations

import random
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.engines import libreoffice, require
from tests.engines.cells import Book, disagreements
from tests.engines.formualizer_engine import FormualizerBook
from tests.engines.libreoffice import LibreOfficeBook
from tests.live.edits import live_book
from tests.live.switches import EXTREMES, covering, extreme, switches
from tests.live.test_live import ALL, Reader, written
from tests.live.turns import commit

__all__ = ["written"]

IN_PROCESS = 8
"""Of the farms one in so many is tried at each commit in the engine in process, by turns; all with `--whole`."""


def check(scenario: Path, book: Path, engine: Callable[[Path], Book], *, one_in: int) -> None:
    live = live_book(scenario)
    farms = {name: extreme(live, name) for name in EXTREMES}
    farms |= {f"switches {number}": row for number, row in enumerate(covering(switches(live), random.Random(7)))}
    turn = random.Random(commit()).randrange(one_in)
    found = []
    with engine(book) as opened:
        reader = Reader(live, opened, whole=True)
        for name, edits in list(farms.items())[turn::one_in]:
            reader.make(*edits)
            found += [f"{name}: {fault}" for fault in reader.everywhere(*edits)[:3]]
            reader.undo(*edits)
        found += [f"undone: {fault}" for fault in reader.everywhere()]
    assert found == [], "\n".join(found[:40])


@ALL
def test_they_agree_in_formualizer(scenario: Path, written: Path, pytestconfig: pytest.Config) -> None:
    check(scenario, written, FormualizerBook, one_in=1 if pytestconfig.getoption("whole") else IN_PROCESS)


@ALL
def test_they_agree_in_libreoffice(scenario: Path, written: Path, pytestconfig: pytest.Config) -> None:
    if not pytestconfig.getoption("whole"):
        pytest.skip("switches and extremes are tried in LibreOffice with --whole")
    require(libreoffice.available())
    check(scenario, written, LibreOfficeBook, one_in=1)


@ALL
def test_every_two_options_of_two_switches_meet(scenario: Path) -> None:
    options = switches(live_book(scenario))
    rows = [{edit.cell: edit.value for edit in row} for row in covering(options, random.Random(7))]
    for one in options:
        for other in options:
            met = {(row[one], row[other]) for row in rows}
            wanted = {(first, second) for first in options[one] for second in options[other]}
            assert met == (wanted if one is not other else {(option, option) for option in options[one]})


@ALL
@pytest.mark.parametrize("name", [name for name, (_, lines) in EXTREMES.items() if lines])
def test_what_has_no_meaning_then_says_so(scenario: Path, name: str) -> None:
    """Its cell shows words for 0, in every program."""
    live = live_book(scenario)
    expected = live.expected(*extreme(live, name))
    for line in map(live.computed.line, EXTREMES[name][1]):
        assert line.zero_is_none, line.name
        assert [expected[place] for place, _ in live.places[line]] == [0] * len(live.places[line]), line.name


def test_a_wrong_cell_is_seen(tmp_path: Path) -> None:
    """The comparison can fail: one result taken for another is told."""
    live = live_book(next(iter(ALL.args[1])))
    edits = extreme(live, "all trimmed away")
    assert disagreements(live.expected(*edits), live.expected())
