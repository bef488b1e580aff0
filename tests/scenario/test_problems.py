"""What a scenario says wrongly: every message by its text, where it stands and what was written."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from farmbook.errors import FileProblem, ModelFault, ScenarioProblems
from farmbook.model.place.farm_plan import Farm
from farmbook.scenario.fields import tables_of
from farmbook.scenario.load import load, read
from farmbook.sections.declare import names, number
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from tests.scenario.bakery import GOOD, LOAF, MODEL, Bakery, changed, loaded, told, written


def in_bakery(row: str) -> str:
    """A good file with one more row in the bakery's table."""
    return changed("oven_power = 18\n", f"oven_power = 18\n{row}\n")


def test_the_good_file_is_good(tmp_path: Path) -> None:
    assert loaded(tmp_path).warnings == ()


HEAT_LIMIT = "must be 400 degC or less; usually 180 to 260 degC"
IN_FAHRENHEIT = '401.5 degF is 205.3 degC: write "401.5 degF" if you mean that'
METRIC = "no such word here; did you mean `metric`? The words are"
FUELS = "words are `wood`, `gas` and `electricity`"
BASES = "`measured`, `quoted`, `published`, `common practice`, `guess` and `assumed`"
CELL = '{value = ..., basis = "measured", note = "..."}'


@pytest.mark.parametrize(
    ("row", "where", "given", "wanted"),
    [
        # kinds of value
        ("oven_heat = true", "oven_heat", "true", "a number is wanted, not true or false"),
        ("oven_heat = 2026-03-01", "oven_heat", "2026-03-01", "a number is wanted, not a date or a time"),
        ("oven_heat = [200]", "oven_heat", "[200]", "a number is wanted, not a list"),
        ("oven_heat = {low = 1, high = 2}", "oven_heat", "{...}", f"one value is wanted, or {CELL}"),
        (
            "oven_heat = {valeu = 210}",
            "oven_heat",
            "{...}",
            f"one value is wanted, or {CELL}; did you mean `value` by `valeu`?",
        ),
        ("oven_heat = {value = {value = 3}}", "oven_heat", "3", "a number is wanted, not a table"),
        ("oven_heat = nan", "oven_heat", "NaN", "a finite number is wanted"),
        ("oven_heat = -inf", "oven_heat", "-Infinity", "a finite number is wanted"),
        ("oven_heat = 1e9999999999999999999999", "oven_heat", "a very large number", "the number is too large"),
        ("oven_heat = -1e9999999999999999999999", "oven_heat", "a very large number", "the number is too large"),
        (
            "oven_heat = 1.5E-9999999999999999999999",
            "oven_heat",
            "a very small number",
            "the number is too small; write 0",
        ),
        ("oven_heat = 1e999", "oven_heat", "1E+999", "the number is too large"),
        (f"oven_heat = {'9' * 4000}", "oven_heat", "a very long number", "the number is too large"),
        (f"oven_heat = -{'9' * 40000}", "oven_heat", "a very long number", "the number is too large"),
        (f"oven_heat = {'1_0' * 9000}", "oven_heat", "a very long number", "the number is too large"),
        ('oven_heat = ""', "oven_heat", '""', "is empty; leave the key out to keep what the book fills in"),
        ('oven_heat = "hot"', "oven_heat", '"hot"', 'a number comes first, then its unit, as in "5 lb"'),
        (
            'oven_heat = "200 gal"',
            "oven_heat",
            '"200 gal"',
            "a temperature is wanted, in degC or the like; `gal` is a volume",
        ),
        (
            'dough = "2 tons"',
            "dough",
            '"2 tons"',
            "in a metric file write `t` for 1,000 kg, or `short ton` for 2,000 lb",
        ),
        (
            'power_price = "0.2 USD/kWh"',
            "power_price",
            '"0.2 USD/kWh"',
            "`USD` is not the file's currency: money in this file is in EUR",
        ),
        # limits
        ("oven_heat = 401.5", "oven_heat", "401.5", HEAT_LIMIT.replace(";", f"; {IN_FAHRENHEIT};")),
        ('oven_heat = "401.5 degC"', "oven_heat", '"401.5 degC"', HEAT_LIMIT),
        ("oven_heat = 800", "oven_heat", "800", HEAT_LIMIT),
        ('oven_heat = "800 degF"', "oven_heat", '"800 degF"', HEAT_LIMIT),
        ("oven_heat = 20", "oven_heat", "20", "must be 50 degC or more; usually 180 to 260 degC"),
        ("dough = -0.1", "dough", "-0.1", "must be 0 kg/bag filled or more; usually 0.4 to 2 kg/bag filled"),
        (
            "bake_off = 12",
            "bake_off",
            "12",
            'must be 100 % or less; for 12 in a hundred write "12 %" or 0.12; usually 8 to 20 %',
        ),
        ("bake_off = 160", "bake_off", "160", "must be 100 % or less; usually 8 to 20 %"),
        ('bake_off = "160 %"', "bake_off", '"160 %"', "must be 100 % or less; usually 8 to 20 %"),
        ('bake_off = "1200 %"', "bake_off", '"1200 %"', "must be 100 % or less; usually 8 to 20 %"),
        # words
        ('fuel = "gass"', "fuel", '"gass"', f"no such word here; did you mean `gas`? The {FUELS}"),
        ('fuel = "peat"', "fuel", '"peat"', f"no such word here; the {FUELS}"),
        ("fuel = 3", "fuel", "3", "a text in quotation marks is wanted, not a number"),
        ('sign = "  "', "sign", '"  "', "is empty; leave the key out to keep what the book fills in"),
        ("sign = 12:30:00", "sign", "12:30:00", "a text in quotation marks is wanted, not a date or a time"),
        ("sign = true", "sign", "true", "a text in quotation marks is wanted, not true or false"),
        (
            r'sign = "Old\tMill"',
            "sign",
            r'"Old\u0009Mill"',
            "a control character (U+0009, in place 4) may not stand in a text",
        ),
        (
            r'sign = "Mill\u202Elane"',
            "sign",
            r'"Mill\u202Elane"',
            "a control character (U+202E, in place 5) may not stand in a text",
        ),
        (f'sign = "{"x" * 201}"', "sign", '"' + "x" * 57 + '..."', "the text has 201 characters; at most 200 fit"),
        (
            'sign = {value = "Mill", basis = "guess"}',
            "sign.basis",
            '"guess"',
            "no such field; here stand `value` and `note`",
        ),
    ],
)
def test_one_value(tmp_path: Path, row: str, where: str, given: str, wanted: str) -> None:
    parts = where.split(".")
    place = f"[bakery] {where}" if len(parts) == 1 else f"[bakery.{parts[0]}] {parts[1]}"
    assert told(tmp_path, in_bakery(row)) == [(place, given, wanted)]


@pytest.mark.parametrize(
    ("row", "where", "given", "wanted"),
    [
        (
            'wall = {value = 2, basis = "mesured"}',
            "[bakery.wall] basis",
            '"mesured"',
            f"no such word here; did you mean `measured`? The words are {BASES}",
        ),
        (
            'wall = {value = 2, basis = "???"}',
            "[bakery.wall] basis",
            '"???"',
            f"no such word here; the words are {BASES}",
        ),
        (
            "wall = {value = 2, note = 3}",
            "[bakery.wall] note",
            "3",
            "a text in quotation marks is wanted, not a number",
        ),
        (
            "wall = {value = 2, remark = 'x'}",
            "[bakery.wall] remark",
            '"x"',
            "no such field; here stand `value`, `basis` and `note`",
        ),
        (
            "wall = {value = 2, bases = 'guess'}",
            "[bakery.wall] bases",
            '"guess"',
            "no such field; did you mean `basis`?",
        ),
        ('basis = "xyz"', "[bakery] basis", '"xyz"', f"no such word here; the words are {BASES}"),
    ],
)
def test_how_a_number_is_known(tmp_path: Path, row: str, where: str, given: str, wanted: str) -> None:
    assert told(tmp_path, in_bakery(row)) == [(where, given, wanted)]


def test_a_misspelt_key_and_the_missing_one_are_one_problem(tmp_path: Path) -> None:
    wanted = "no such field; did you mean `oven_power`? That is missing: Power of the oven, usually 5 to 40 kW"
    assert told(tmp_path, changed("oven_power", "oven_powr")) == [("[bakery] oven_powr", "18", wanted)]


def test_a_misspelt_key_of_a_row(tmp_path: Path) -> None:
    wanted = "no such field; did you mean `flour_price`? That is missing: Price of flour, usually 0.3 to 3 EUR/kg"
    assert told(tmp_path, changed("flour_price", "flower_price")) == [("[loaf.rye] flower_price", "1.1", wanted)]


def test_a_key_near_to_one_that_is_not_missing(tmp_path: Path) -> None:
    assert told(tmp_path, in_bakery("oven_heta = 200")) == [
        ("[bakery] oven_heta", "200", "no such field; did you mean `oven_heat`?")
    ]


def test_a_key_of_another_table(tmp_path: Path) -> None:
    assert told(tmp_path, in_bakery('best = "x"'))[0] == (
        "[bakery] best",
        '"x"',
        "no such field; it belongs in [sale]",
    )
    assert told(tmp_path, in_bakery("width = 0.3")) == [
        ("[bakery] width", "0.3", "no such field; it belongs in the rows of [loaf]")
    ]


def test_a_key_like_no_other(tmp_path: Path) -> None:
    wanted = (
        "no such field; here stand `sign`, `oven_heat`, `dough`, `oven_power`, `wall`, `power_price`, `bake_off`, "
        "`burnt`, `own_time`, `fuel`, `rest`, `risen` and `basis`"
    )
    assert told(tmp_path, in_bakery("qqq = 1")) == [("[bakery] qqq", "1", wanted)]
    assert told(tmp_path, GOOD + "[zzz]\nx = 1\n") == [
        (
            "[zzz]",
            "",
            "no such table; here stand `units`, `currency`, `paper`, `months`, `extends`, `bakery`, `loaf`, `stall` and `sale`",
        )
    ]


def test_a_misspelt_table_is_one_problem_though_its_fields_are_missing(tmp_path: Path) -> None:
    assert told(tmp_path, changed("[bakery]", "[bakerey]")) == [
        ("[bakerey]", "", "no such table; did you mean [bakery]?")
    ]


def test_a_misspelt_table_of_rows_is_one_problem_though_rows_are_picked(tmp_path: Path) -> None:
    content = changed("[stall.green_market]", "[stal.green_market]\n[sale]\nbest = 'green_market'")
    assert told(tmp_path, content) == [("[stal]", "", "no such table; did you mean [stall]?")]


def test_missing_fields(tmp_path: Path) -> None:
    found = told(tmp_path, changed("oven_power = 18\nrisen = [0.9, 0.5]\n", "").replace("flour_price = 0.9\n", ""))
    assert found == [
        ("[bakery] oven_power", "", "missing: Power of the oven, usually 5 to 40 kW"),
        ("[bakery] risen", "", "missing: Volume gained, usually 20 to 150 % (one for each rise)"),
        ("[loaf.white_tin] flour_price", "", "missing: Price of flour, usually 0.3 to 3 EUR/kg"),
    ]


def test_a_missing_field_is_told_in_the_units_of_the_book(tmp_path: Path) -> None:
    content = changed('"metric"', '"us"').replace("flour_price = 0.9\n", "")
    assert ("[loaf.white_tin] flour_price", "", "missing: Price of flour, usually 0.136 to 1.36 EUR/lb") in told(
        tmp_path, content
    )


def test_tables_where_values_stand_and_values_where_tables_stand(tmp_path: Path) -> None:
    assert told(
        tmp_path, "loaf = 3\n" + changed("[loaf.rye]\nflour_price = 1.1", "").replace("[loaf.white_tin]", "[x]")
    )[0] == (
        "loaf",
        "3",
        "a table is wanted here, with a row for each loaf, as in [loaf.first_loaf]",
    )
    assert told(tmp_path, "sale = 3\n" + GOOD) == [
        ("sale", "3", "a table is wanted here, with its values below the heading [sale]")
    ]
    assert told(tmp_path, changed("[loaf.rye]", "[loaf]\nrye = 3\n[loaf.oat]")) == [
        ("[loaf] rye", "3", "each loaf has a table of its own, [loaf.rye], with its values below the heading")
    ]
    assert told(tmp_path, GOOD + "sold = 5\n") == [
        ("[stall.green_market] sold", "5", "a table is wanted here, with a value for each loaf, by its key")
    ]


def test_rows_written_as_a_list_of_tables(tmp_path: Path) -> None:
    content = GOOD.replace("[loaf.rye]", "[[loaf]]").replace("[loaf.white_tin]", "[[loaf]]")
    assert told(tmp_path, content) == [
        ("loaf", "[{...}, {...}]", "a table is wanted here, with a row for each loaf, as in [loaf.first_loaf]")
    ]


def test_values_for_rows_that_do_not_exist(tmp_path: Path) -> None:
    assert told(tmp_path, GOOD + "[stall.green_market.sold]\nrie = 4\nzzz = 5\n") == [
        ("[stall.green_market.sold] rie", "4", "there is no loaf `rie`; did you mean `rye`?"),
        ("[stall.green_market.sold] zzz", "5", "there is no loaf `zzz`; there are `rye` and `white_tin`"),
    ]


@pytest.mark.parametrize(
    ("typed", "shown"), [("5 \ufeffg", r"\uFEFFg"), ("5 l\u200bb", r"l\u200Bb"), ("5 g/\u00ad", r"g/\u00AD")]
)
def test_what_a_screen_does_not_show_is_told_by_its_code(tmp_path: Path, typed: str, shown: str) -> None:
    ((_, _, wanted),) = told(tmp_path, in_bakery(f'dough = "{typed}"'))
    assert shown.rpartition("/")[2] in wanted
    assert wanted.isprintable()


def test_odd_keys_are_shown_in_quotation_marks_and_cut(tmp_path: Path) -> None:
    assert told(tmp_path, GOOD + f'[stall.green_market.sold]\n"a\\u0007{"b" * 80}" = 4\n') == [
        (
            f'[stall.green_market.sold] "a\\u0007{"b" * 55}..."',
            "4",
            f'there is no loaf `"a\\u0007{"b" * 55}..."`; there are `rye` and `white_tin`',
        )
    ]


def test_a_row_picked_that_does_not_exist(tmp_path: Path) -> None:
    assert told(tmp_path, GOOD + '[sale]\nbest = "green_marked"\n') == [
        ("[sale] best", '"green_marked"', "there is no stall `green_marked`; did you mean `green_market`?")
    ]


def test_no_row_picked_of_several(tmp_path: Path) -> None:
    assert told(tmp_path, GOOD + "[stall.harbour]\n") == [
        ("[sale] best", "", "missing: Best stall, one of `green_market` and `harbour`")
    ]
    assert told(tmp_path, changed("[stall.green_market]", "")) == [
        ("[sale] best", "", "missing: Best stall, and no stall is given")
    ]


def test_two_rows_of_one_name(tmp_path: Path) -> None:
    content = changed("[loaf.rye]", "[loaf.rye]\nname = 'WHITE TIN'")
    assert told(tmp_path, content) == [
        ("[loaf.white_tin] name", '"White tin"', "[loaf.rye] has the same name; every loaf has a name of its own")
    ]


def test_more_rows_than_there_is_room_for(tmp_path: Path) -> None:
    rows = "".join(f"[loaf.kind_{place}]\nflour_price = 1\n" for place in range(5))
    assert told(tmp_path, GOOD + rows) == [("[loaf]", "", "7 rows are given; there is room for 6")]


def test_the_key_of_a_row(tmp_path: Path) -> None:
    wanted = 'a row\'s key is made of letters, digits and underscores; give other words as its name = "..."'
    assert told(tmp_path, GOOD + '[loaf."sour rye"]\nflour_price = 1\n') == [('[loaf."sour rye"]', "", wanted)]
    assert told(tmp_path, GOOD + '[loaf."bell\\u0007"]\nflour_price = 1\n') == [('[loaf."bell\\u0007"]', "", wanted)]
    sixty, more = ("r" * count for count in (60, 61))
    assert loaded(tmp_path, f"{GOOD}[loaf.{sixty}]\nflour_price = 1\n").rows[LOAF][2] == sixty
    assert [found[1:] for found in told(tmp_path, f"{GOOD}[loaf.{more}]\nflour_price = 1\n")] == [("", wanted)]


def test_what_stands_in_a_row_with_a_wrong_key_is_judged_too(tmp_path: Path) -> None:
    found = told(tmp_path, GOOD + '[loaf."sour rye"]\nflour_price = true\nflower_price = 1\n')
    assert [where for where, _, _ in found] == [
        '[loaf."sour rye"]',
        '[loaf."sour rye"] flour_price',
        '[loaf."sour rye"] flower_price',
    ]


@pytest.mark.parametrize(
    ("old", "new", "where", "given", "wanted"),
    [
        ('units = "metric"\n', "", "units", "", 'missing: what plain numbers mean, "us" or "metric"'),
        ('currency = "EUR"\n', "", "currency", "", 'missing: the currency in three capital letters, such as "USD"'),
        ('"metric"', '"metrik"', "units", '"metrik"', f"{METRIC} `metric` and `us`"),
        ('"metric"', "5", "units", "5", "a text in quotation marks is wanted, not a number"),
        ('"EUR"', '"eur"', "currency", '"eur"', 'three capital letters are wanted, such as "USD"'),
        ('"EUR"', '"Euro"', "currency", '"Euro"', 'three capital letters are wanted, such as "USD"'),
        ('"EUR"', '"EUR"\npaper = "a5"', "paper", '"a5"', "no such word here; the words are `letter` and `a4`"),
        ("units =", "unit =", "unit", '"metric"', "no such field; did you mean `units`?"),
    ],
)
def test_the_top_of_the_file(tmp_path: Path, old: str, new: str, where: str, given: str, wanted: str) -> None:
    assert told(tmp_path, changed(old, new)) == [(where, given, wanted)]


def test_plain_numbers_are_not_judged_where_the_units_are_wrong(tmp_path: Path) -> None:
    content = changed('"metric"', '"metrik"').replace("oven_power = 18", "oven_power = 18\noven_heat = 430")
    assert [where for where, _, _ in told(tmp_path, content)] == ["units"]


def test_every_problem_at_once_and_the_whole_message(tmp_path: Path) -> None:
    content = (
        changed("oven_power", "oven_powr").replace("0.5]", "9]").replace('"EUR"', '"EUR"\npaper = "a5"')
        + "sold = {rie = 4}\n"
    )
    with pytest.raises(ScenarioProblems) as caught:
        load(written(tmp_path, content), MODEL)
    assert caught.value.exit_code == 1
    assert str(caught.value) == "\n".join(
        [
            f"4 problems in `{tmp_path / 'oak_lane.toml'}`",
            "",
            '  paper = "a5"',
            "    no such word here; the words are `letter` and `a4`",
            "  [bakery.risen] second = 9",
            '    must be 400 % or less; for 9 in a hundred write "9 %" or 0.09; usually 20 to 150 %',
            "  [bakery] oven_powr = 18",
            "    no such field; did you mean `oven_power`? That is missing: Power of the oven, usually 5 to 40 kW",
            "  [stall.green_market.sold] rie = 4",
            "    there is no loaf `rie`; did you mean `rye`?",
        ]
    )


def test_a_file_of_nothing_but_slips_is_cut_short(tmp_path: Path) -> None:
    found = told(tmp_path, GOOD + "".join(f"[junk_{place}]\nx = 1\n" for place in range(5000)))
    assert len(found) == 101
    assert found[-1] == ("and more", "", "further problems are not shown; mend these first")


def test_the_plan_of_the_farm(tmp_path: Path) -> None:
    content = 'units = "us"\ncurrency = "USD"\n[farm]\nbags_filed_a_week = 600\nbags_per_load = 0\n'
    content += 'payroll_extra = 60\nweeks_worked = "50 weeks"\n'
    with pytest.raises(ScenarioProblems) as caught:
        load(written(tmp_path, content), Model([Farm]))
    usual = "usually 50 to 4,000 bag filled/week"
    assert [(problem.where, problem.given, problem.wanted) for problem in caught.value.problems] == [
        (
            "[farm] weeks_worked",
            '"50 weeks"',
            "a number of weeks per year is wanted, in week/year or the like; `weeks` is a number of weeks",
        ),
        (
            "[farm] bags_per_load",
            "0",
            "must be 1 bag filled/steam load or more; usually 100 to 3,000 bag filled/steam load",
        ),
        (
            "[farm] payroll_extra",
            "60",
            'must be 200 % or less; for 60 in a hundred write "60 %" or 0.6; usually 0 to 40 %',
        ),
        (
            "[farm] bags_filed_a_week",
            "600",
            f"no such field; did you mean `bags_filled_a_week`? That is missing: Bags filled a week, {usual}",
        ),
    ]


def test_tables_in_python_are_read_alike() -> None:
    tables: dict[str, Any] = {
        "units": "us",
        "currency": "USD",
        "farm": {"bags_filled_a_week": 600.0, "bags_per_load": float("nan")},
    }
    with pytest.raises(ScenarioProblems) as caught:
        read(tables, Model([Farm]), "here.toml")
    assert [str(problem) for problem in caught.value.problems] == [
        "  [farm] bags_per_load = nan\n    a finite number is wanted"
    ]
    tables["farm"] = {"a": {"b": {"c": {"d": {"e": {"f": {"g": 1}}}}}}}
    with pytest.raises(FileProblem, match=r"^`here\.toml` is nested deeper than 6 tables$"):
        read(tables, Model([Farm]), "here.toml")


def test_two_inputs_in_one_place_are_a_fault_of_the_model() -> None:
    class Twin(Section):
        title = "Twin"
        loaves = names(LOAF, "Kind", how="")
        width = number("Width", unit="m", axes=(LOAF,), usual=(0, 1), how="")

    class Other(Section):
        title = "Other"
        width = number("Other width", unit="m", axes=(LOAF,), usual=(0, 1), how="")

    with pytest.raises(ModelFault, match=r"two inputs would both be `width` in the table \[loaf\]"):
        tables_of([Twin, Other])
    with pytest.raises(ModelFault, match="no section declares the names of the axis `loaf`"):
        tables_of([Other])
    assert list(tables_of([Bakery])) == ["bakery"]


def test_an_input_called_basis_is_a_fault_of_the_model() -> None:
    class Odd(Section):
        basis = number("Basis", unit="m", usual=(0, 1), how="")

    with pytest.raises(ModelFault, match="an input may not be called `basis`"):
        tables_of([Odd])
