"""One sheet as text: every line that stands on it, within a screen, and what is said where no one sheet is meant."""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.errors import visible
from farmbook.finding import WIDTH
from farmbook.layout.template import shipped_templates
from farmbook.results import Computed, compute, load_scenario
from farmbook.sheet_text import NoSuchSheet, sheet_text
from farmbook.show import headline_text

SCENARIOS = Path(__file__).parents[2] / "scenarios"
SCENARIO = SCENARIOS / "kestrel_hollow.toml"
FARMS = ("kestrel_hollow", "hof_fennewald")
WORKED = [sheet for sheet in shipped_templates() if sheet.kind == "worked"]
SHOWN = [*WORKED, *(sheet for sheet in shipped_templates() if sheet.kind in ("start", "inputs", "checks", "years"))]


@cache
def farm(name: str = "kestrel_hollow") -> Computed:
    return compute(load_scenario(SCENARIOS / f"{name}.toml"))


def squeezed(text: str) -> str:
    """The text as if no row were broken, and nothing stood beside it."""
    return "".join(text.split())


@pytest.mark.parametrize("name", FARMS)
@pytest.mark.parametrize("sheet", SHOWN, ids=lambda sheet: sheet.sheet)
def test_no_row_is_wider_than_a_screen(name: str, sheet: object) -> None:
    rows = sheet_text(farm(name), str(getattr(sheet, "sheet", ""))).splitlines()
    assert [row for row in rows if len(row) > WIDTH] == []
    assert len(rows) > 5


@pytest.mark.parametrize("sheet", [sheet.sheet for sheet in WORKED])
def test_every_line_that_lives_on_a_sheet_is_on_it_by_name(sheet: str) -> None:
    computed = farm()
    (found,) = [each for each in WORKED if each.sheet == sheet]
    text = f"{sheet_text(computed, sheet, names=True)}\n"
    for name in found.homes:
        if name and name != found.answer:
            line = computed.line(name)
            bearer = line if line.hands_on is None else line.hands_on
            said = bearer.name if line.axes else bearer.name.replace(".", "_")
            assert re.search(rf"^  {re.escape(said)}\s", text, re.MULTILINE), name


def test_a_single_value_a_list_and_two_lists() -> None:
    text = sheet_text(farm(), "recipe")
    assert text.startswith(
        "Recipe\nWhat does each mix cost, what is in it, and how much water does it take?\n\nThe mix costs"
    )
    assert "\nCost of the dry mix, chosen recipe                        $0.066  a lb dry\n" in text
    assert (
        "\nWhat is in each mix\n"
        "recipe                    house   lean   rich\n"
        "Parts in all ingredients    100    100    100\n"
    ) in text
    assert (
        "\nParts of dry mix\n"
        "  ingredient and recipe  house  lean  rich\n"
        "  maple_sawdust             74    78    58\n"
        "  soy_hull_pellets          25    12    41\n"
        "  oat_hulls                  0     9     0\n"
        "  gypsum                     1     1     1\n"
    ) in text
    assert "Rich ingredient needed, of the dry mix              no figure\n" in text
    assert "\nRecipe is the chosen one    yes     no     no\n" in text


def test_columns_past_the_edge_stand_in_another_table_below() -> None:
    rows = sheet_text(farm("hof_fennewald"), "makeorbuy").splitlines()
    heads = [row.split()[1:] for row in rows if row.startswith("year  ")]
    assert any(first + second == [str(year) for year in range(11)] for first, second in pairwise(heads))


def test_what_is_typed_in_stands_on_the_inputs() -> None:
    text = sheet_text(farm(), "Inputs", names=True)
    assert "\nFarm                                                Kestrel Hollow Mushrooms\n  farm_name\n" in text
    assert "\nPay for an hour of work                                   $17.50  an hour of work\n  farm_wage\n" in text
    assert "(used)" not in text


@pytest.mark.parametrize(
    ("part", "title"),
    [("crop", "Crop"), ("CRO", "Crop"), ("steam", "Which steamer"), ("steam cab", "Steam cabinet"), (" cost ", "Cost")],
)
def test_a_sheet_goes_by_a_part_of_its_name(part: str, title: str) -> None:
    assert sheet_text(farm(), part).splitlines()[0] == title


@pytest.mark.parametrize("part", ["", " ", "zzz", "\u202e", "\udcff", "[", "constants", "x" * 5000])
def test_where_there_is_none_the_sheets_are_listed(part: str) -> None:
    with pytest.raises(NoSuchSheet) as caught:
        sheet_text(farm(), part)
    said = str(caught.value)
    assert f"`{visible(part)}` is in the name of no sheet that holds figures" in said
    assert all(f"\n  {sheet.sheet} " in said for sheet in SHOWN)


def test_where_there_are_several_they_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", str(SCENARIO), "c"]) == 1
    out, said = capsys.readouterr()
    assert out == ""
    assert said.startswith("error: `c` fits ")
    listed = [row.split()[0] for row in said.splitlines() if row.startswith("  ")]
    assert sorted(listed) == sorted(sheet.sheet for sheet in SHOWN if sheet.sheet.startswith("C"))
    assert "hint: give the name of one sheet" in said


def test_show_prints_one_sheet_and_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", str(SCENARIO), "crop", "--names"]) == 0
    assert capsys.readouterr().out == f"{sheet_text(farm(), 'crop', names=True)}\n"
    assert main(["show", str(SCENARIO)]) == 0
    plain = capsys.readouterr().out.splitlines()
    assert main(["show", str(SCENARIO), "--names"]) == 0
    named = capsys.readouterr().out.splitlines()
    names = [row for row in named if re.fullmatch(r"  [a-z]+_[a-z_]+", row)]
    assert [row for row in named if row not in names] == plain
    assert {"  year_money_per_sold", "  front_lost_bag"} <= set(names)
    for name in names:
        farm().line(name.strip())


def test_show_says_its_sentences_whole_and_no_row_is_wider_than_a_screen() -> None:
    text = headline_text(farm())
    assert [row for row in text.splitlines() if len(row) > WIDTH] == []
    for name in ("front.steamers", "front.lost_bag"):
        (said,) = farm().values[farm().line(name)]
        assert squeezed(said) in squeezed(text), name
    assert re.search(r"^It costs, in money +\$\d", text, re.MULTILINE)


@pytest.mark.parametrize("form", ["--json", "--csv"])
def test_one_sheet_for_a_program_is_wrong_usage(form: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="2"):
        main(["show", str(SCENARIO), "crop", form])
    assert "not allowed with argument" in capsys.readouterr().err
