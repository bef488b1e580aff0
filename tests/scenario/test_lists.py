"""A value for each member of a fixed axis: what is wrong with a list, with its table form, with one of its values."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.scenario.bakery import changed, told


def test_a_member_of_a_list_that_is_missing(tmp_path: Path) -> None:
    assert told(tmp_path, changed("risen = [0.9, 0.5]", "risen = {first = 0.9}")) == [
        ("[bakery.risen] second", "", "missing: Volume gained, usually 20 to 150 %")
    ]


def test_a_member_that_is_wrong_is_not_also_missing(tmp_path: Path) -> None:
    content = changed("risen = [0.9, 0.5]", "risen = {first = true}")
    assert told(tmp_path, content) == [
        ("[bakery.risen] first", "true", "a number is wanted, not true or false"),
        ("[bakery.risen] second", "", "missing: Volume gained, usually 20 to 150 %"),
    ]
    content = changed("risen = [0.9, 0.5]", "risen = [true, 2026-03-01]")
    assert [where for where, _, _ in told(tmp_path, content)] == ["[bakery.risen] first", "[bakery.risen] second"]


def test_every_part_of_a_value_in_a_list_is_judged_and_shown(tmp_path: Path) -> None:
    content = changed("risen = [0.9, 0.5]", 'risen = [{value = "5 lb", basis = "rumour", source = 7}, 0.5]')
    assert [(where, given) for where, given, _ in told(tmp_path, content)] == [
        ("[bakery.risen.first] basis", '"rumour"'),
        ("[bakery.risen] first", '"5 lb"'),
        ("[bakery.risen.first] source", "7"),
    ]


def test_the_wrong_value_is_not_also_missing(tmp_path: Path) -> None:
    assert told(tmp_path, changed("[0.9, 0.5]", "[0.9, true]")) == [
        ("[bakery.risen] second", "true", "a number is wanted, not true or false")
    ]


@pytest.mark.parametrize(
    ("value", "wanted"),
    [
        ("0.9", "a list of 2 values is wanted, or a table with a value for each rise (first, second)"),
        ("[0.9]", "2 values are wanted, one for each rise (first, second); the list has 1"),
        ("[1, 2, 3]", "2 values are wanted, one for each rise (first, second); the list has 3"),
    ],
)
def test_a_list_of_the_wrong_length(tmp_path: Path, value: str, wanted: str) -> None:
    assert told(tmp_path, changed("[0.9, 0.5]", value)) == [("[bakery] risen", value, wanted)]


def test_a_member_that_is_not_on_the_list(tmp_path: Path) -> None:
    found = told(tmp_path, changed("[0.9, 0.5]", "{first = 0.9, second = 0.5, secnd = 1}"))
    assert found == [("[bakery.risen] secnd", "1", "no such field; did you mean `second`?")]
