"""Faults of sheets by week, month and year name the line and the file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from farmbook.errors import ModelFault
from farmbook.layout.template import Template, read_templates
from tests.plan.model import worked
from tests.plan.sheets import TITLE, sheets

PLACING: Mapping[str, tuple[str, int, dict[str, Any], str]] = {
    "a line by week among months": (
        "Money", 0, {"lines": ("show:picked.in_all",)}, "`picked.in_all` does not run over the months of its sheet"
    ),
    "a line by month among weeks": (
        "Weeks", 1, {"lines": ("show:picked.month",)}, "`picked.month` does not run over the weeks of its sheet"
    ),
    "a single line among weeks": (
        "Weeks", 1, {"lines": ("show:money.lowest",)}, "`money.lowest` does not run over the weeks of its sheet"
    ),
    "a line at home among years": (
        "Cash", 1, {"lines": ("money.sales",)},
        "`money.sales` cannot live where years are read; write `show:` before it",
    ),
    "a line by week among years": (
        "Cash", 1, {"lines": ("show:picked.in_all",)}, "`picked.in_all` does not run over the months"
    ),
    "weeks at the head of years": (
        "Cash", 1, {"heads": ("plan_weeks.monday",)},
        "`plan_weeks.monday` does not run across over the months of whole years",
    ),
    "a case that there is not": (
        "Cheaper", 0, {"of": "dearer"}, "there is no case called `dearer` with lines to place here"
    ),
    "a level that is no row": (
        "Cash", 1, {"levels": ("money.lowest",)}, "`money.lowest` is no row of `Year {year}, in dollars`"
    ),
    "a drawing of the lowest week among months": (
        "Cash", 0, {"lowest": "picked.in_all"}, "`picked.in_all` does not run over month; it cannot be drawn so"
    ),
    "a table on a card": (
        "Card", 0, {"rows": (["Bank", "money.bank"],)},
        "`money.bank` has more than one value and no other home; it cannot stand so",
    ),
    "a table wider than a side": (
        "Tables", 0, {"inputs": ("picked.rate",) * 9}, "a table of 9 numbers and 0 texts is wider than a side"
    ),
    "a row of a card with too much in it": (
        "Card", 0, {"rows": (["a", "show:plan_start.day", "b", "c", "d"],)},
        "a row of `Mix and fill` has 5 parts, not 2 to 4",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", PLACING)
def test_a_line_out_of_place_is_named(name: str) -> None:
    sheet, number, changes, what = PLACING[name]
    with pytest.raises(ModelFault) as raised:
        lay_out(changed(sheet, number, changes))
    assert raised.value.what == what
    assert raised.value.where == f"{sheet.lower()}.toml"


@pytest.mark.parametrize(
    ("sheet", "heads", "direction"),
    [
        ("Months", ("show:plan_weeks.number", "show:plan_weeks.monday"), "across"),
        ("Weeks", ("show:plan_months.number",), "down"),
        ("Months", ("show:plan_months.number", "show:plan_years.number"), "across"),
        ("Months", ("show:money.lowest",), "across"),
    ],
)
def test_heads_run_over_the_list_of_their_sheet(sheet: str, heads: tuple[str, ...], direction: str) -> None:
    templates = [replace(each, heads=heads) if each.sheet == sheet else each for each in sheets()]
    with pytest.raises(ModelFault, match=f"the heads do not run {direction} over one list"):
        lay_out(templates)


def test_years_are_whole() -> None:
    found = worked(24, month=18, plan_year=1)
    with pytest.raises(ModelFault, match="does not run across over the months of whole years"):
        found.laid_out(sheets(), TITLE)


HEAD = 'sheet = "Here"\ntitle = "Here"\nquestion = "When?"\n'
CHART = '[[block]]\nkind = "chart"\ntitle = "Drawn"\n'
READING: Mapping[str, tuple[str, str]] = {
    "weeks that would print": (
        'class = "weeks"\nheads = ["plan_weeks.monday"]\n', "a sheet of all weeks does not print; say so"
    ),
    "months without heads": ('class = "months"\n', "a sheet of class `months` needs heads"),
    "years with heads": ('class = "years"\nheads = ["a.b"]\n', "a sheet of class `years` takes no heads"),
    "a list among years": (
        'class = "years"\n[[block]]\nkind = "list"\nlines = ["a.b"]\n',
        "a block of kind `list` stands on no sheet of class `years`",
    ),
    "figures at the head of years": (
        'class = "years"\ncomes_to = ["a.b"]\n',
        "a sheet of class `years` has no room for what it comes to, nor for bars",
    ),
    "bars among years": (
        f'class = "years"\n{CHART}bars = [["One", "a.b"]]\n',
        "a sheet of class `years` has no room for what it comes to, nor for bars",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", READING)
def test_a_template_at_fault_names_its_file(name: str, tmp_path: Path) -> None:
    content, what = READING[name]
    (tmp_path / "10_here.toml").write_text(HEAD + content, encoding="utf-8")
    with pytest.raises(ModelFault) as raised:
        read_templates(tmp_path)
    assert (raised.value.what, raised.value.where) == (what, "10_here.toml")


def changed(sheet: str, number: int, changes: Mapping[str, Any]) -> list[Template]:
    """The templates with one block of one sheet changed."""
    return [
        replace(each, blocks=tuple(replace(b, **changes) if at == number else b for at, b in enumerate(each.blocks)))
        if each.sheet == sheet
        else each
        for each in sheets()
    ]


def lay_out(templates: list[Template]) -> None:
    worked(12).laid_out(templates, TITLE)
