"""The cells that a scenario fills: numbers in the book's units, defaults, blanks, spare rows, bases, warnings."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from farmbook.expr.graph import Graph
from farmbook.expr.lower import lower
from farmbook.interpret.numbers import Engine
from farmbook.model.farm import SECTIONS, farm_model
from farmbook.scenario.load import load
from farmbook.scenario.values import Context, read_value
from farmbook.sections.declare import Choice
from farmbook.sections.model import Model
from tests.scenario.bakery import GOOD, LOAF, MODEL, RISE, STALL, Bakery, Sale, basis, cell, loaded, numbers, texts

US = GOOD.replace('"metric"', '"us"').replace('"EUR"', '"USD"')


def test_sizes_and_rows(tmp_path: Path) -> None:
    found = loaded(tmp_path)
    assert found.rows == {LOAF: ("rye", "white_tin"), STALL: ("green_market",)}
    assert found.sizes == {LOAF: 4, STALL: 3, RISE: 2}  # two given and two spare; all columns; the members


@pytest.mark.parametrize(("given", "size"), [(3, 5), (4, 6), (5, 6), (6, 6)])
def test_spare_rows_up_to_the_most_there_is_room_for(tmp_path: Path, given: int, size: int) -> None:
    more = "".join(f"[loaf.kind_{place}]\nflour_price = 1\n" for place in range(given - 2))
    assert loaded(tmp_path, GOOD + more).sizes[LOAF] == size


def test_no_rows_at_all(tmp_path: Path) -> None:
    found = loaded(
        tmp_path,
        GOOD.replace("[loaf.rye]\nflour_price = 1.1\n", "").replace("[loaf.white_tin]\nflour_price = 0.9\n", ""),
    )
    assert found.rows[LOAF] == ()
    assert found.sizes[LOAF] == 2


def test_every_cell_of_the_model_is_there_in_the_shape_of_its_axes(tmp_path: Path) -> None:
    found = loaded(tmp_path)
    wanted = {
        raw
        for bound in MODEL.inputs.values()
        for raw in (bound.cell, bound.basis, bound.low, bound.high, bound.least, bound.most, bound.built)
        if raw is not None
    }
    assert set(found.cells) == wanted
    for raw, cells in found.cells.items():
        shape = (1, *(found.sizes[axis] for axis in sorted(raw.axes, key=lambda axis: axis.order)))
        assert cells.numbers.shape == cells.texts.shape == shape, raw.name


def test_a_table_of_two_axes_is_keyed_by_the_other_axis(tmp_path: Path) -> None:
    content = GOOD + "sold = {white_tin = 40}\n[stall.harbour.sold]\nrye = 7\n[sale]\nbest = 'harbour'\n"
    assert numbers(loaded(tmp_path, content), Sale.sold) == [[0, 7, 0], [40, 0, 0], [0, 0, 0], [0, 0, 0]]


def test_a_fixed_axis_in_a_row_is_a_list_or_a_table(tmp_path: Path) -> None:
    content = GOOD + "keeping = [0.6, '40 %']\n[stall.harbour.keeping]\nsecond = 0.2\n[sale]\nbest = 'harbour'\n"
    found = loaded(tmp_path, content)
    assert numbers(found, Sale.keeping) == [[0.6, 0.4], [0.7, 0.2], [0.7, 0.3]]  # stalls down, rises across
    assert texts(found, basis(Sale.keeping)) == [["guess", "guess"], ["assumed", "guess"], ["assumed", "assumed"]]


def test_defaults_blanks_and_spare_rows(tmp_path: Path) -> None:
    found = loaded(tmp_path)
    assert numbers(found, Bakery.oven_heat) == 220
    assert numbers(found, Bakery.rest) == [8, 1]
    assert math.isnan(found.cells[cell(Bakery.own_time)].numbers[0])
    assert texts(found, basis(Bakery.own_time)) == ""
    assert numbers(found, Sale.width) == [0.3] * 4
    assert texts(found, basis(Sale.width)) == ["assumed"] * 4
    prices = found.cells[cell(Sale.flour_price)].numbers[0]
    assert prices[:2].tolist() == [1.1, 0.9]
    assert np.isnan(prices[2:]).all()
    assert texts(found, basis(Sale.flour_price)) == ["guess", "guess", "", ""]


def test_texts_and_choices(tmp_path: Path) -> None:
    found = loaded(tmp_path, GOOD.replace("oven_power", "sign = 2026-03-01\nfuel = 'WOOD'\noven_power"))
    assert texts(found, cell(Bakery.sign)) == "2026-03-01"
    assert texts(found, cell(Bakery.fuel)) == "wood"
    assert texts(found, cell(Sale.loaves)) == ["Rye", "White tin", "", ""]
    assert texts(found, cell(Sale.best)) == "Green market"  # the only one there is
    assert np.isnan(found.cells[cell(Bakery.sign)].numbers).all()


@pytest.mark.parametrize("word", ["power", "Power", "electricity", "ELECTRICITY"])
def test_an_option_by_its_key_or_its_label(tmp_path: Path, word: str) -> None:
    found = loaded(tmp_path, GOOD.replace("oven_power", f"fuel = '{word}'\noven_power"))
    assert texts(found, cell(Bakery.fuel)) == "electricity"


def test_every_option_of_the_farm_is_known_by_its_key_and_its_label() -> None:
    choices = [declared for declared in Model(SECTIONS).inputs if isinstance(declared, Choice)]
    for declared, option in ((each, option) for each in choices for option in each.options):
        for word in (option.key, option.label, option.key.upper(), option.label.title()):
            assert read_value(declared, word, Context("metric", "EUR")) == (Fraction(0), option.label)


@pytest.mark.parametrize("picked", ["harbour", "HARBOUR", "By the harbour", "by the HARBOUR"])
def test_a_row_is_picked_by_its_key_or_its_name(tmp_path: Path, picked: str) -> None:
    content = GOOD + f'[stall.harbour]\nname = "By the harbour"\n[sale]\nbest = "{picked}"\n'
    assert texts(loaded(tmp_path, content), cell(Sale.best)) == "By the harbour"


def test_the_basis_of_a_value_of_a_row_and_of_a_table(tmp_path: Path) -> None:
    content = GOOD.replace("[bakery]\n", "[bakery]\nbasis = 'Quoted'\noven_heat = {value = 230, basis = 'MEASURED'}\n")
    content = content.replace("[loaf.rye]\n", "[loaf.rye]\nbasis = 'published'\n")
    found = loaded(tmp_path, content)
    assert texts(found, basis(Bakery.oven_power)) == "quoted"
    assert texts(found, basis(Bakery.risen)) == ["quoted", "quoted"]
    assert texts(found, basis(Bakery.oven_heat)) == "measured"
    assert texts(found, basis(Bakery.dough)) == "assumed"
    assert texts(found, basis(Sale.flour_price)) == ["published", "guess", "", ""]


def test_options_and_members_have_a_basis_too(tmp_path: Path) -> None:
    content = GOOD + "[stall.harbour]\n[sale]\nbasis = 'published'\nbest = 'harbour'\n"
    found = loaded(tmp_path, content.replace("oven_power", "fuel = {value = 'wood', basis = 'measured'}\noven_power"))
    assert texts(found, basis(Bakery.fuel)) == "measured"
    assert texts(found, basis(Sale.best)) == "published"
    plain = loaded(tmp_path)
    assert (texts(plain, basis(Bakery.fuel)), texts(plain, basis(Sale.best))) == ("assumed", "assumed")


def test_notes_stand_at_their_cells(tmp_path: Path) -> None:
    content = GOOD.replace("flour_price = 0.9", 'flour_price = {value = 0.9, note = "mill, autumn"}')
    content = content.replace("[0.9, 0.5]", '[0.9, {value = 0.5, note = "ten doughs"}]')
    content += 'keeping = [{value = 1, note = "none left"}, 0]\n'
    assert loaded(tmp_path, content).notes == {
        cell(Bakery.risen): {(1,): "ten doughs"},
        cell(Sale.flour_price): {(1,): "mill, autumn"},
        cell(Sale.keeping): {(0, 0): "none left"},
    }


def test_a_us_book_shows_defaults_to_three_figures_and_typed_numbers_as_typed(tmp_path: Path) -> None:
    found = loaded(tmp_path, US.replace("oven_power", "dough = 1.23456\noven_power"))
    assert numbers(found, Bakery.oven_heat) == 428  # 220 degC
    assert numbers(found, Bakery.dough) == 1.23456
    assert numbers(found, Bakery.wall) == 11.4  # 2 m2 K/W is 11.36 ft2 h degF/Btu
    assert numbers(found, Sale.width)[0] == 0.984  # 0.3 m
    assert numbers(found, Bakery.power_price) == 0.2  # no conversion, no rounding
    assert (found.paper, found.currency) == ("letter", "USD")


def test_usual_limits_in_the_units_of_the_book(tmp_path: Path) -> None:
    bound = MODEL.inputs[Bakery.oven_heat]
    assert bound.low is not None
    assert bound.high is not None
    metric, us = loaded(tmp_path), loaded(tmp_path, US)
    assert [metric.cells[raw].numbers.tolist() for raw in (bound.low, bound.high)] == [[180], [260]]
    assert [us.cells[raw].numbers.tolist() for raw in (bound.low, bound.high)] == [[356], [500]]


def test_units_of_the_other_system_are_brought_to_the_book(tmp_path: Path) -> None:
    found = loaded(tmp_path, GOOD.replace("oven_power", 'oven_heat = "428 degF"\ndough = "2 lb"\noven_power'))
    assert numbers(found, Bakery.oven_heat) == 220
    assert numbers(found, Bakery.dough) == 0.90718474


def test_paper_may_be_chosen(tmp_path: Path) -> None:
    assert loaded(tmp_path, 'paper = "Letter"\n' + GOOD).paper == "letter"


def test_warnings_outside_the_usual_range(tmp_path: Path) -> None:
    content = GOOD.replace("oven_power = 18", 'oven_power = 60\noven_heat = "300 degF"').replace(
        "[0.9, 0.5]", "[0.9, 1.6]"
    )
    assert [(problem.where, problem.given, problem.wanted) for problem in loaded(tmp_path, content).warnings] == [
        ("[bakery] oven_heat", '"300 degF"', "below the usual range of 180 to 260 degC"),
        ("[bakery] oven_power", "60", "above the usual range of 5 to 40 kW"),
        ("[bakery.risen] second", "1.6", "above the usual range of 20 to 150 %"),
    ]


@pytest.mark.parametrize(("typed", "percent"), [("1", '"1 %" or 0.01'), ("0.5", '"0.5 %" or 0.005')])
def test_a_share_that_was_probably_meant_in_percent_is_a_warning(tmp_path: Path, typed: str, percent: str) -> None:
    content = GOOD.replace("oven_power", f"burnt = {typed}\noven_power")
    assert [problem.wanted for problem in loaded(tmp_path, content).warnings] == [
        f"above the usual range of 0.3 to 3 %; for {typed} in a hundred write {percent}"
    ]
    assert loaded(tmp_path, content.replace(f"burnt = {typed}", f'burnt = "{typed} %"')).warnings == ()


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("0.2", '; for 0.2 in a hundred write "0.2 %" or 0.002'),
        ("0.14", ""),
        ('"0.02 %"', '; for 2 in a hundred write "2 %" or 0.02'),
        ('"0.001 %"', ""),
        ("0.0002", ""),
    ],
)
def test_a_share_a_hundred_times_too_large_or_small(tmp_path: Path, typed: str, meant: str) -> None:
    side = "above" if typed in ("0.2", "0.14") else "below"
    assert [
        problem.wanted
        for problem in loaded(tmp_path, GOOD.replace("oven_power", f"burnt = {typed}\noven_power")).warnings
    ] == [f"{side} the usual range of 0.3 to 3 %{meant}"]


@pytest.mark.parametrize(
    ("units", "typed", "wanted"),
    [
        (
            "metric",
            "390",
            'above the usual range of 180 to 260 degC; 390 degF is 198.9 degC: write "390 degF" if you mean that',
        ),
        ("metric", '"390 degC"', "above the usual range of 180 to 260 degC"),
        ("metric", "100", "below the usual range of 180 to 260 degC"),
        (
            "us",
            "220",
            'below the usual range of 356 to 500 degF; 220 degC is 428 degF: write "220 degC" if you mean that',
        ),
        ("us", '"220 degF"', "below the usual range of 356 to 500 degF"),
    ],
)
def test_a_temperature_that_is_usual_on_the_other_scale(tmp_path: Path, units: str, typed: str, wanted: str) -> None:
    content = GOOD.replace('"metric"', f'"{units}"').replace("oven_power", f"oven_heat = {typed}\noven_power")
    found = loaded(tmp_path, content).warnings
    assert [problem.wanted for problem in found if "oven_heat" in problem.where] == [wanted]


@pytest.mark.parametrize("typed", ["100 %", "1000 g/kg"])
def test_a_share_with_its_unit_is_not_told_to_be_meant_otherwise(tmp_path: Path, typed: str) -> None:
    content = GOOD.replace("oven_power", f'burnt = "{typed}"\noven_power')
    assert [problem.wanted for problem in loaded(tmp_path, content).warnings] == ["above the usual range of 0.3 to 3 %"]


@pytest.mark.parametrize(("value", "inside"), [(180, True), (260, True), (179.99, False), (260.01, False)])
def test_the_limits_of_the_usual_range_belong_to_it(tmp_path: Path, value: float, inside: bool) -> None:
    found = loaded(tmp_path, GOOD.replace("oven_power", f"oven_heat = {value}\noven_power"))
    assert (found.warnings == ()) is inside


@pytest.mark.parametrize("value", ["50", "400", '"752 degF"', '"122 degF"'])
def test_the_hard_limits_are_allowed(tmp_path: Path, value: str) -> None:
    assert loaded(tmp_path, GOOD.replace("oven_power", f"oven_heat = {value}\noven_power")).warnings != ()


def test_the_engine_runs_on_what_is_loaded(tmp_path: Path) -> None:
    found = loaded(tmp_path, US)
    roots = {line: lower(line, found.system) for line in MODEL.lines}
    results = Engine(Graph(roots), found.sizes, found.system).run(found.cells)
    section = MODEL.section(Bakery)
    assert results[section.hour].tolist() == [pytest.approx(18 * 0.2)]
    assert results[MODEL.axes[LOAF].present].tolist() == [[1, 1, 0, 0]]


def test_the_whole_farm_takes_a_scenario(tmp_path: Path) -> None:
    path = tmp_path / "farm.toml"
    path.write_text(
        """units = "us"
currency = "USD"
[farm]
bags_filled_a_week = 600
bags_per_load = 1000
[ingredient.oak_sawdust]
dry_matter = "55 %"
price = "48 USD/ton"
[recipe.standard.parts]
oak_sawdust = 100
""",
        encoding="utf-8",
    )
    found = load(path, farm_model())
    price = next(
        raw for raw in found.cells if raw.name.endswith(".price") and raw.kind == "number" and len(raw.axes) == 1
    )
    assert found.cells[price].numbers[0][0] == 0.024  # USD/lb
