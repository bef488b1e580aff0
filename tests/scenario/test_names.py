"""Names of rows: which row a word picks, and which names are too alike for a spreadsheet to tell apart."""

from __future__ import annotations

from pathlib import Path

import pytest

import farmbook
from tests.scenario.bakery import GOOD, Sale, cell, loaded, texts, told

TWO_STALLS = GOOD.replace("[stall.green_market]", "[stall.house]\nname = 'House mix'\n[stall.HOUSE]\nname = 'Other'")


def picking(word: str, stalls: str = TWO_STALLS) -> str:
    return f"{stalls}\n[sale]\nbest = '{word}'\n"


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("HOUSE", "Other"),
        ("house", "House mix"),
        ("House mix", "House mix"),
        ("hOUSE MIX", "House mix"),
        ("OTHER", "Other"),
    ],
)
def test_a_key_or_a_name_as_it_is_written_goes_before_one_in_other_letters(
    tmp_path: Path, word: str, name: str
) -> None:
    assert texts(loaded(tmp_path, picking(word)), cell(Sale.best)) == name


def test_a_word_that_is_neither_as_written_but_both_in_other_letters(tmp_path: Path) -> None:
    wanted = (
        '[stall.house] (named "House mix") or [stall.HOUSE] (named "Other")'
        "; write a key or a name that only one of them has"
    )
    assert told(tmp_path, picking("House")) == [("[sale] best", '"House"', f"may mean {wanted}")]


def test_a_word_that_is_one_rows_key_and_another_rows_name(tmp_path: Path) -> None:
    stalls = GOOD.replace("[stall.green_market]", "[stall.lean]\nname = 'Thin'\n[stall.rich]\nname = 'lean'")
    wanted = (
        '[stall.lean] (named "Thin") or [stall.rich] (named "lean"); write a key or a name that only one of them has'
    )
    assert told(tmp_path, picking("lean", stalls)) == [("[sale] best", '"lean"', f"may mean {wanted}")]
    assert texts(loaded(tmp_path, picking("thin", stalls)), cell(Sale.best)) == "Thin"
    assert texts(loaded(tmp_path, picking("rich", stalls)), cell(Sale.best)) == "lean"


@pytest.mark.parametrize(
    ("one", "other"),
    [("Ro\u017fe", "Rose"), ("\ufb01g", "fig"), ("\u03bb\u03cc\u03b3\u03bf\u03c2", "\u03bb\u03cc\u03b3\u03bf\u03c3")],
)
def test_names_that_a_spreadsheet_takes_as_one(tmp_path: Path, one: str, other: str) -> None:
    content = GOOD.replace("[loaf.rye]", f"[loaf.rye]\nname = '{one}'").replace(
        "[loaf.white_tin]", f"[loaf.white_tin]\nname = '{other}'"
    )
    ((where, given, wanted),) = told(tmp_path, content)
    assert (where, given) == ("[loaf.white_tin] name", f'"{other}"')
    assert wanted == (
        f'[loaf.rye] has the name "{one}", which a spreadsheet may take as the same; every loaf has a name of its own'
    )


@pytest.mark.parametrize("row", ["[stall.harbour]\nname = 3", "[stall.'old harbour']\nname = 'Harbour'"])
def test_a_row_wrong_in_key_or_name_is_not_missed_a_second_time(tmp_path: Path, row: str) -> None:
    """The row picked may be the very one that is told to be wrong."""
    assert len(told(tmp_path, picking("Harbour", GOOD + row))) == 1
    assert len(told(tmp_path, GOOD.replace("[stall.green_market]", row))) == 1


def test_rows_that_are_no_table_are_told_once(tmp_path: Path) -> None:
    content = "stall = 3\n" + GOOD.replace("[stall.green_market]", "")
    assert [where for where, _, _ in told(tmp_path, content)] == ["stall"]
    assert [where for where, _, _ in told(tmp_path, picking("market", content))] == ["stall"]


@pytest.mark.parametrize("name", ["\u0130\u0130\u0130", "\u00df\ufb01\u017f" * 20, "Reg\u0131s"])
def test_a_recipe_is_found_by_any_name(tmp_path: Path, name: str) -> None:
    """Letters that grow when their case is folded must not be cut: the recipe chosen would be no recipe then."""
    content = (Path(__file__).parents[2] / "scenarios" / "kestrel_hollow.toml").read_text(encoding="utf-8")
    assert '[recipe.house]\nname = "House mix"\n' in content
    farm = tmp_path / "farm.toml"
    farm.write_text(content.replace('"House mix"', f'"{name}"'), "utf-8")
    results = farmbook.compute(farmbook.load(farm))
    assert results.values[results.line("recipe_checks.recipes_chosen")].tolist() == [1]
