"""The sentences of the first sheet, on both sides of each turn, and where there is no figure to say."""

from __future__ import annotations

from functools import cache

import pytest

from farmbook.expr.nodes import RawInput
from farmbook.model.cost.steamer_year import CabinetYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.report import Report
from farmbook.results import Computed, compute, load_scenario
from farmbook.scenario.scenario import with_cell
from farmbook.sections.declare import Input
from tests.workbook.shipped import SCENARIOS

FIRST_IDEA = " are your own: a first idea."


@cache
def farm() -> Computed:
    return compute(load_scenario(SCENARIOS["kestrel_hollow"]))


def cell(declared: Input) -> RawInput:
    return farm().model.inputs[declared].cell


def basis(declared: Input) -> RawInput:
    found = farm().model.inputs[declared].basis
    assert found is not None
    return found


def said(name: str, *changes: tuple[RawInput, float | str]) -> str:
    """A sentence after some cells were typed over."""
    scenario = farm().scenario
    for raw, value in changes:
        scenario = with_cell(scenario, raw, (), value)
    computed = compute(scenario)
    return str(computed.values[computed.line(name)][0])


def test_the_answer_says_how_far_it_can_be_trusted() -> None:
    singles = [bound.basis for bound in farm().model.section(Report).singles() if bound.basis is not None]
    assert said("front.answer").endswith(FIRST_IDEA)
    measured = said("front.answer", *((each, "measured") for each in singles))
    assert measured.endswith(" 100% are your own.")


def test_a_farm_on_which_nothing_fruits_is_told_so_in_words() -> None:
    nothing = (cell(Crop.loss_at_steaming), 1.0)
    assert said("front.answer", nothing).startswith("A typical year loses ")
    assert " is missing. Of " in said("front.answer", nothing)
    answer = said("year.answer", nothing)
    assert answer.endswith("What you sell costs no figure.")
    assert "0.00" not in answer


@pytest.mark.parametrize(
    "assumed", [(), (CabinetYear.price,), (VesselYear.price,), (CabinetYear.price, VesselYear.price)]
)
def test_steamers_are_set_side_by_side_with_a_word_on_their_prices(assumed: tuple[Input, ...]) -> None:
    prices = (CabinetYear.price, VesselYear.price)
    words = said("front.steamers", *((basis(each), "assumed" if each in assumed else "quoted") for each in prices))
    assert words.startswith(
        "Steaming a good bag: $0.39 in the cabinet, $0.95 in the pressure vessel. The cabinet costs less"
    )
    assert words.endswith(" One price is the book's: give yours.") == bool(assumed)


def test_each_sentence_says_the_figures_of_its_sheet() -> None:
    assert said("front.lost_bag").startswith("A bag lost in the spawn run costs $2.48, before the first pick $2.59.")
    assert said("make_or_buy.told").endswith("Too close to call: let something other than money decide.")
