"""Parts of the model that exist only where a scenario has their table: sections, inputs, sheets, and what is read back."""

from __future__ import annotations

from pathlib import Path

import pytest

from farmbook.errors import ScenarioProblems
from farmbook.layout.template import fitting, shipped_templates
from farmbook.model.bank.request import Request
from farmbook.model.farm import WITH_A_CROSSWALK, WITH_A_REQUEST
from farmbook.output import build_bytes
from farmbook.read_back import read_back
from farmbook.results import Computed, compute, load_scenario, whole_farm
from tests.made import results_of

ROOM = Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml"
PLAIN = Path(__file__).parents[2] / "scenarios" / "larch_lane.toml"
ASKS = '[request]\nloan = "Rooms and cold room"\n'
FORM = '[crosswalk]\nform = "A plan on one sheet"\n'


def farm(folder: Path, more: str) -> Computed:
    """The growing demo farm with some more tables."""
    path = folder / "farm.toml"
    path.write_text(f'extends = "{ROOM.as_posix()}"\n{more}', encoding="utf-8")
    return compute(load_scenario(path))


def test_a_scenario_without_the_table_has_none_of_its_sections() -> None:
    plain = results_of(PLAIN)
    assert plain.scenario.parts == frozenset()
    assert not WITH_A_REQUEST & {type(section) for section in plain.model.sections}
    assert not [line for line in plain.roots if line.name.startswith("request.")]


def test_a_scenario_with_it_has_them_all(tmp_path: Path) -> None:
    for tables, parts, there in (
        (ASKS, {"request"}, WITH_A_REQUEST),
        (FORM, {"crosswalk"}, WITH_A_CROSSWALK),
        (ASKS + FORM, {"request", "crosswalk"}, WITH_A_REQUEST | WITH_A_CROSSWALK),
    ):
        asking = farm(tmp_path, tables)
        assert asking.scenario.parts == parts
        found = {type(section) for section in asking.model.sections}
        assert found & (WITH_A_REQUEST | WITH_A_CROSSWALK) == there
    assert asking.model is whole_farm()


def test_its_sheets_and_blocks_stand_only_there() -> None:
    all_sheets = fitting(shipped_templates(), ["request", "crosswalk"])
    few = fitting(shipped_templates(), [])
    assert [sheet.sheet for sheet in all_sheets] == [sheet.sheet for sheet in shipped_templates()]
    assert not [sheet for sheet in few if sheet.only]
    asked = {block.title for sheet in all_sheets for block in sheet.blocks if block.only}
    assert asked
    assert not asked & {block.title for sheet in few for block in sheet.blocks}


def test_the_smaller_model_is_made_once() -> None:
    whole = whole_farm()
    assert whole.fitting([]) is whole.fitting(["farm"])
    assert whole.fitting(["request", "crosswalk", "farm"]) is whole
    assert whole.fitting(["request"]) is whole.fitting(["request", "farm"])


def test_a_key_that_needs_the_table_says_so(tmp_path: Path) -> None:
    path = tmp_path / "farm.toml"
    path.write_text(f'extends = "{ROOM.as_posix()}"\n[requst]\nloan = "Rooms and cold room"\n', encoding="utf-8")
    with pytest.raises(ScenarioProblems) as found:
        load_scenario(path)
    assert "did you mean [request]?" in str(found.value)


def test_a_book_is_read_back_with_the_table_it_was_made_with(tmp_path: Path) -> None:
    for more, has in ((ASKS, True), ("", False)):
        book = tmp_path / "farm.xlsx"
        book.write_bytes(build_bytes(farm(tmp_path, more)))
        assert (f"[{Request.table}]" in read_back(book, tmp_path / "back.toml").text) is has
