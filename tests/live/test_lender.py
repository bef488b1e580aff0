"""What a lender asks is edited live: every input that exists only with a request, in a book of twelve months that has one."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from farmbook.model.farm import WITH_A_CROSSWALK, WITH_A_REQUEST
from farmbook.output import written
from tests.engines.formualizer_engine import FormualizerBook
from tests.live.edits import Edit, LiveBook, edits, live_book
from tests.live.test_live import Reader
from tests.made import laid_out, results_of

ROOM: Final = Path(__file__).parents[2] / "scenarios" / "kestrel_second_room.toml"
ONLY_THEN: Final = WITH_A_REQUEST | WITH_A_CROSSWALK


@pytest.fixture(scope="module")
def asking(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo farm that asks for a loan, with a plan of a year."""
    path = tmp_path_factory.mktemp("asking") / "farm.toml"
    path.write_text(f'extends = "{ROOM.as_posix()}"\nmonths = 12\n', encoding="utf-8")
    return path


def asked_only_then(live: LiveBook) -> list[Edit]:
    """The edits of inputs that no book without a request has."""
    model = live.computed.model
    cells = {bound.cell for kind in ONLY_THEN for bound in model.section(kind).bound.values()}
    return [edit for edit in edits(live) if edit.cell in cells]


def test_every_edit_of_what_a_lender_asks_agrees(asking: Path, tmp_path: Path, pytestconfig: pytest.Config) -> None:
    """One edit of each input at a commit, all of them with `--whole`; and many at once."""
    live = live_book(asking)
    book = tmp_path / "book.xlsx"
    book.write_bytes(written(results_of(asking), *laid_out(asking)))
    made = asked_only_then(live)
    assert len({edit.cell for edit in made}) > 50
    whole, found = pytestconfig.getoption("whole"), []
    with FormualizerBook(book) as opened:
        reader = Reader(live, opened, whole=whole)
        one_each = list({edit.cell: edit for edit in reader.chance.sample(made, len(made))}.values())
        for edit in made if whole else one_each:
            reader.make(edit)
            found += [f"{edit}: {fault}" for fault in reader.near(edit)[:3]]
            reader.undo(edit)
        reader.make(*one_each)
        found += [f"{len(one_each)} together: {fault}" for fault in reader.everywhere(*one_each)[:3]]
    assert found == []
