"""Scenario files brought up to date: what is not changed stays to the letter."""

from __future__ import annotations

from farmbook.results import whole_farm
from farmbook.scenario.fields import Field, tables_of
from farmbook.scenario.rewrite import Entry, rewritten

TABLES = tables_of(type(section) for section in whole_farm().sections)
FARM = """# A farm.
[farm] # ours
wage = 17 # since May
bags_filled_a_week = { value = 600, basis = "measured" } # counted

[crop]
loss_at_steaming = 0.01

[flushes]
"""


def field(table: str, key: str) -> Field:
    found = TABLES[table]
    return found.fields.get(key) or found.row_fields[key]


def entry(path: tuple[str, ...], value: float | str, basis: str = "guess", note: str = "") -> Entry:
    return Entry(
        path, field(path[0], path[2] if path[0] in ("recipe", "ingredient") else path[1]), value, basis, note, False
    )


def test_remarks_and_order_stay() -> None:
    wage = entry(("farm", "wage"), 18.5)
    bags = entry(("farm", "bags_filled_a_week"), 640.0, "measured", "log")
    text = rewritten(FARM, {}, [], {}, [wage, bags])
    assert text == FARM.replace("17 #", "18.5 #").replace(
        '600, basis = "measured" }', '640, basis = "measured", note = "log"}'
    )


def test_a_basis_that_the_table_gives_is_not_said_again() -> None:
    text = rewritten('[farm]\nbasis = "quoted"\n', {}, [], {}, [entry(("farm", "wage"), 18.5, "quoted")])
    assert text == '[farm]\nbasis = "quoted"\nwage = 18.5\n'


LIST = '[recipe.house]\nefficiency_given = [ # by flush\n  "44 %",\n  "24 %",\n  "11 %",\n  "5 %",\n]\n'
MEMBERS = ("first", "second", "third", "fourth")


def test_one_of_a_list_is_changed_where_it_stands() -> None:
    text = rewritten(LIST, {}, [], {}, [entry(("recipe", "house", "efficiency_given", "third"), 0.12)])
    assert text == LIST.replace('"11 %"', "0.12")


def test_a_list_that_lacks_one_becomes_a_table_by_member() -> None:
    text = rewritten(LIST, {}, [], {("recipe", "house", "efficiency_given", "fourth"): MEMBERS}, [])
    assert text is not None
    assert 'efficiency_given = {first = "44 %", second = "24 %", third = "11 %"}' in text


def test_a_row_goes_with_all_that_is_in_it() -> None:
    text = rewritten(
        f"{LIST}\n[recipe.house.parts]\noats = 1\n\n[recipe.lean]\n", {}, [], {("recipe", "house"): ()}, []
    )
    assert text is not None
    assert "house" not in text
    assert "[recipe.lean]" in text


def test_what_cannot_be_changed_is_none() -> None:
    assert rewritten("[farm]\nfarm = [\n", {}, [], {}, []) is None
    assert rewritten("farm = 3\n", {}, [], {}, [entry(("farm", "wage"), 18.5)]) is None
