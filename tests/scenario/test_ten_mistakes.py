"""Ten mistakes that growers make with a first file, each with its message as it stands on the screen."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from farmbook.cli import main

STARTERS = Path(__file__).parents[2] / "templates_src"
ADDS_UP = "my_farm.toml: the book adds up\n"


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a file to start from, in which the commands are given."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(STARTERS / "starter_us.txt", "my_farm.toml")
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str]:
    """The exit code of a command, and all that it says beside its results."""
    code = main(list(arguments))
    return code, capsys.readouterr().err


def changed(old: str, new: str, units: str = "us") -> None:
    """Make one change to the file to start from."""
    text = (STARTERS / f"starter_{units}.txt").read_text(encoding="utf-8")
    assert text.count(old) == 1
    Path("my_farm.toml").write_text(text.replace(old, new), encoding="utf-8")


def refused(where: str, wanted: str) -> tuple[int, str]:
    """What is said of a file with one problem."""
    return 1, f"error: 1 problem in `my_farm.toml`\n\n  {where}\n    {wanted}\n"


def unusual(where: str, wanted: str) -> tuple[int, str]:
    """What is said of a file with one thing that is unusual."""
    return 0, f"unusual:\n  {where}\n    {wanted}\n{ADDS_UP}"


def test_1_a_workbook_under_another_ending(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "build", "my_farm.toml", "--out", "my_farm.xls") == (
        1,
        (
            "error: `my_farm.xls` is no name for a workbook\n\n"
            "hint: give a file name that ends in .xlsx, such as my_farm.xlsx; every spreadsheet program opens it\n"
        ),
    )


def test_2_the_workbook_in_the_place_of_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "build", "my_farm.toml", "--out", "my_farm.xlsx")[0] == 0
    assert said(capsys, "check", "my_farm.xlsx") == (
        1,
        (
            "error: `my_farm.xlsx` is a workbook, not a scenario file; "
            "give the scenario file (.toml) that it was built from, or write one with "
            "`farmbook read BOOK.xlsx --out FILE.toml`\n"
        ),
    )


@pytest.mark.parametrize(
    ("units", "typed", "wanted"),
    [
        (
            "metric",
            200,
            (
                'must be 120 degC or less; 200 degF is 93.3 degC: write "200 degF" if you mean that; '
                "usually 87.8 to 98.9 degC"
            ),
        ),
        (
            "us",
            93,
            (
                'must be 104 degF or more; 93 degC is 199.4 degF: write "93 degC" if you mean that; '
                "usually 190 to 210 degF"
            ),
        ),
    ],
)
def test_3_a_temperature_on_the_other_scale(
    units: str, typed: int, wanted: str, capsys: pytest.CaptureFixture[str]
) -> None:
    changed("[cabinet]\n", f"[cabinet]\nhold_temperature = {typed}\n", units)
    assert said(capsys, "check", "my_farm.toml") == refused(f"[cabinet] hold_temperature = {typed}", wanted)


def test_4_percent_typed_as_plain_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    changed('target_moisture = "60 %"', "target_moisture = 60")
    assert said(capsys, "check", "my_farm.toml") == refused(
        "[recipe.house] target_moisture = 60",
        'must be 90 % or less; for 60 in a hundred write "60 %" or 0.6; usually 57 to 65 %',
    )
    changed('target_moisture = "60 %"', 'loss_in_spawn_run = 0.5\ntarget_moisture = "60 %"')
    assert said(capsys, "check", "my_farm.toml") == unusual(
        "[recipe.house] loss_in_spawn_run = 0.5",
        'above the usual range of 1 to 15 %; for 0.5 in a hundred write "0.5 %" or 0.005',
    )


def test_5_a_table_left_out_whole(capsys: pytest.CaptureFixture[str]) -> None:
    text = Path("my_farm.toml").read_text(encoding="utf-8")
    changed(text[text.index("[energy]") : text.index("# What the mix")], "")
    assert said(capsys, "check", "my_farm.toml") == unusual(
        "[energy]",
        "left out whole, so the book fills all of it in; most farms give `electricity_price` and `demand_charge`",
    )


def test_6_a_word_that_is_not_in_the_list(capsys: pytest.CaptureFixture[str]) -> None:
    changed("[cabinet]\n", '[cabinet]\nfuel = "gas"\n')
    assert said(capsys, "check", "my_farm.toml") == refused(
        '[cabinet] fuel = "gas"', "no such word here; the words are `electricity`, `natural gas` and `propane`"
    )


def test_7_a_price_by_the_cubic_yard_or_the_sack(capsys: pytest.CaptureFixture[str]) -> None:
    changed('"55 USD/ton" ', '"32 USD per cubic yard" ')
    assert said(capsys, "check", "my_farm.toml") == refused(
        '[ingredient.sawdust] price = "32 USD per cubic yard"',
        "money per mass is wanted, in USD/lb or the like; `USD per cubic yard` is money per volume, "
        'so weigh how much that is and write the weight, as in "30 USD per 500 lb"',
    )
    changed('"6 USD per 50 lb sack"', '"6 USD per sack"')
    assert said(capsys, "check", "my_farm.toml") == refused(
        '[ingredient.soy_hulls] price = "6 USD per sack"',
        'how much is in a `sack`? Write that with it, as in "12 USD per 50 lb sack"',
    )


def test_8_a_comma_for_the_point(capsys: pytest.CaptureFixture[str]) -> None:
    changed("own_material_cost = 0.68", "own_material_cost = 0,68")
    assert said(capsys, "check", "my_farm.toml") == (
        1,
        (
            "error: `my_farm.toml` is not valid TOML at line 23, column 22: "
            "a number is written without commas: 1200 for a thousand and more, 0.55 for parts of one\n"
        ),
    )


def test_9_a_unit_or_a_time_without_quotation_marks(capsys: pytest.CaptureFixture[str]) -> None:
    changed('wet_fill = "5 lb"', "wet_fill = 5 lb")
    assert said(capsys, "check", "my_farm.toml") == (
        1,
        (
            "error: `my_farm.toml` is not valid TOML at line 21, column 14: "
            'something is left over after the value; a number with its unit goes in quotes, as in "5 lb"\n'
        ),
    )
    changed('hold_time = "17 h"', "hold_time = 17:00")
    assert said(capsys, "check", "my_farm.toml") == (
        1,
        (
            "error: `my_farm.toml` is not valid TOML at line 86, column 15: "
            'hours and minutes go in quotes with their unit, as in "2:45 h"\n'
        ),
    )


def test_10_a_flush_kept_that_has_no_weight(capsys: pytest.CaptureFixture[str]) -> None:
    by_bag = (STARTERS / "starter_us.txt").read_text(encoding="utf-8")
    by_record = by_bag.replace('"weight picked from a bag"', '"weight picked per bag filled"')
    kept = by_record.replace(
        "flushes_kept = 2", 'weight_given = {first = "0.86 lb", second = "0.48 lb"}\nflushes_kept = 3'
    )
    Path("my_farm.toml").write_text(kept, encoding="utf-8")
    assert said(capsys, "check", "my_farm.toml") == (
        1,
        (
            "the book does not add up:\n"
            "  Bags lost, weight picked: Every flush kept has a weight where the yield is given by weight\n"
            "    You chose to give weight per bag filled, but a flush that is kept has none: type it, or keep fewer.\n"
        ),
    )


def test_what_is_wrong_comes_first_and_what_is_unusual_last(capsys: pytest.CaptureFixture[str]) -> None:
    changed("own_hours = 50", "own_hours = 5")
    code, words = said(capsys, "check", "my_farm.toml")
    assert (code, [row for row in words.splitlines() if not row.startswith(" ")]) == (
        0,
        ["alerts:", "unusual:", ADDS_UP.strip()],
    )
    text = Path("my_farm.toml").read_text(encoding="utf-8")
    Path("my_farm.toml").write_text(text.replace("flushes_kept = 2", "flushes_kept = 2.5"), encoding="utf-8")
    code, words = said(capsys, "check", "my_farm.toml")
    assert (code, [row for row in words.splitlines() if not row.startswith(" ")]) == (
        1,
        ["the book does not add up:", "alerts:", "unusual:"],
    )
