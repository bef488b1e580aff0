"""Cost of growing: each stage worked by hand, a ledger of single bags beside it, lost bags, and each check broken."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest

from farmbook.expr.functions import joined
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import MADE, SpawnSource
from farmbook.model.mix.recipe import Recipe
from farmbook.sections.declare import Check, Input
from farmbook.sections.model import Model
from tests.model.growing_case import GIVEN, NAMES, SECTIONS, one, unchanged, worked
from tests.model.helpers import systems_agree

CHECKS = ("growing_cost.cost_adds_up", "lost_bags.bags_make_up_the_cost")
INOCULATION = 0.625 + 20 * 14 / 980


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("shelving_cost", 0.10),
        ("opening_cost", 0.20),
        ("clearing_cost", 0.25),
        ("culling_cost", 0.40),
        ("incubation_room_cost", 0.20),  # 0.07 a week, 20 days
        ("fruiting_room_cost", 0.74),  # 0.14 a week, 37 days
        ("filled_cost", 0.70),  # 0.20 mix + 0.30 bag + 0.20 work
        ("cost_through_steaming", 0.80),  # 5 h x 20 over 1,000 bags
        ("cost_after_steaming", 808 / 980),  # 1,000 x 0.80 and 20 x 0.40, over 980
        ("inoculation_added", INOCULATION),
        ("cost_after_inoculation", 808 / 980 + INOCULATION),
        ("spawn_run_added", 0.30),
        ("cost_after_spawn_run", (808 + 892.5 + 294 + 19.6) / 931),
        ("leaving_cost", 0.25 * 0.8208 + 0.40 * 0.1792),
        ("fruiting_added", 1.21688),
        ("grown_cost_per_live", 2014.1 / 931 + 1.21688),
        ("grown_cost_per_filled", 3.14701528),
        ("spent_per_filled", 3.14701528),
        ("steaming_spent", 0.108),
        ("inoculation_spent", 0.8925),
        ("spawn_run_spent", 0.3136),
        ("fruiting_spent", 1.13291528),
        ("cost_per_picked", 3.14701528 / 0.77801808),
        ("cost_per_packed", 3.14701528 / 0.739117176),
        ("cost_per_taken", 3.14701528 / 0.70955248896),
        ("filled_share", 0.70 / 3.14701528),
        ("steaming_share", 0.108 / 3.14701528),
        ("inoculation_share", 0.8925 / 3.14701528),
        ("spawn_run_share", 0.3136 / 3.14701528),
        ("fruiting_share", 1.13291528 / 3.14701528),
    ],
)
def test_growing_cost_by_hand(system: str, name: str, by_hand: float) -> None:
    assert one(unchanged(system), f"growing_cost.{name}") == pytest.approx(by_hand, rel=1e-12)


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("cost_at_steaming", 1.20),  # 0.80 + 0.40
        ("cost_in_spawn_run", 0.80 + INOCULATION + 0.30 + 0.40),
        ("cost_before_first_pick", 0.80 + INOCULATION + 0.30 + 0.20 + 0.74 + 0.40),
        ("cost_between_flushes", 0.40),
        ("lost_at_steaming", 20),
        ("lost_in_spawn_run", 49),
        ("lost_before_first_pick", 37.24),
        ("lost_between_flushes", 931 * 0.1392),
        ("steaming_bill", 24),
        ("spawn_run_bill", 118.125),
        ("first_pick_bill", 124.7806),
        ("flush_bill", 51.83808),
        ("bill_a_week", 318.74368),
        ("bill_a_year", 15937.184),
        ("spent_a_week", 3147.01528),
        ("share_of_cost", 318.74368 / 3147.01528),
    ],
)
def test_lost_bags_by_hand(system: str, name: str, by_hand: float) -> None:
    assert one(unchanged(system), f"lost_bags.{name}") == pytest.approx(by_hand, rel=1e-12)


def test_both_unit_systems_give_the_same_farm() -> None:
    assert systems_agree(SECTIONS, dict(GIVEN), NAMES) == []


@dataclass
class Ledger:
    """A thousand bags followed through the house, each payment entered when it is made; no line of the book is used."""

    bags: float = 1000.0
    paid: float = 0.0
    picked: float = 0.0

    def pay(self, each: float) -> None:
        self.paid += self.bags * each

    def lose(self, share: float) -> None:
        lost = self.bags * share
        self.paid += lost * 0.40
        self.bags -= lost


def kept_by_hand(losses: list[float], flushes: int) -> Ledger:
    """Losses: at steaming, in the spawn run, before the first, second, third and fourth pick."""
    ledger = Ledger()
    ledger.pay(0.20 + 0.30 + 0.20)
    ledger.pay(0.10)
    ledger.lose(losses[0])
    ledger.pay(0.625)
    ledger.paid += (ledger.bags / 98 + 4) * 20
    ledger.pay(0.10 + 0.07 * 20 / 7)
    ledger.lose(losses[1])
    days = 10 + sum((12, 13, 14)[: flushes - 1]) + 2
    ledger.pay(0.20 + 0.14 * days / 7)
    for flush, weight in enumerate((0.5, 0.3, 0.1, 0.05)[:flushes]):
        ledger.lose(losses[2 + flush])
        ledger.picked += ledger.bags * weight
    ledger.pay(0.25)
    return ledger


@pytest.mark.parametrize("seed", range(12))
def test_a_ledger_of_single_bags_agrees(seed: int) -> None:
    random = np.random.default_rng(seed)
    losses = [float(loss) for loss in random.uniform(0, 0.6, 6)]
    flushes = 1 + seed % 4
    ledger = kept_by_hand(losses, flushes)
    found = worked(
        {
            Crop.loss_at_steaming: losses[0],
            Crop.loss_in_spawn_run: [losses[1], 0, 0],
            Crop.loss_before_first_pick: losses[2],
            Crop.loss_between_flushes: [0, *losses[3:]],
            Crop.flushes_kept: flushes,
        },
        "us" if seed % 2 else "metric",
    )
    assert one(found, "growing_cost.grown_cost_per_filled") == pytest.approx(ledger.paid / 1000, rel=1e-10)
    assert one(found, "harvest.picked_a_week") == pytest.approx(ledger.picked, rel=1e-10)
    assert one(found, "growing_cost.cost_per_picked") == pytest.approx(ledger.paid / ledger.picked, rel=1e-10)
    assert [name for name in CHECKS if one(found, name) == 0] == []


# Traps


def test_going_back_divides() -> None:
    """With half the bags lost at steaming each one left carries two, and one removal: not one and a half."""
    found = worked({Crop.loss_at_steaming: 0.5})
    assert one(found, "growing_cost.cost_after_steaming") == pytest.approx(2 * 0.80 + 0.40)


def test_a_lost_bag_costs_the_same_however_many_are_lost() -> None:
    """The cost of those left rises with the loss, that of a lost one does not."""
    few, many = worked({Crop.loss_in_spawn_run: [0.01, 0, 0]}), worked({Crop.loss_in_spawn_run: [0.5, 0, 0]})
    for name in ("cost_at_steaming", "cost_in_spawn_run", "cost_before_first_pick"):
        assert one(few, f"lost_bags.{name}") == pytest.approx(one(many, f"lost_bags.{name}"))
    assert one(many, "growing_cost.cost_after_spawn_run") > 1.9 * one(few, "growing_cost.cost_after_spawn_run")


def test_a_loss_later_on_costs_more() -> None:
    found = worked()
    costs = [one(found, f"lost_bags.cost_{step}") for step in ("at_steaming", "in_spawn_run", "before_first_pick")]
    assert costs == sorted(costs)
    assert costs[0] > one(found, "bag.ingredient_cost") + one(found, "bag.packaging_cost")


def test_without_losses_nothing_is_carried() -> None:
    found = worked(
        {
            Crop.loss_at_steaming: 0,
            Crop.loss_in_spawn_run: [0, 0, 0],
            Crop.loss_before_first_pick: 0,
            Crop.loss_between_flushes: [0, 0, 0, 0],
        }
    )
    inoculation = 0.625 + 20 * (1000 / 98 + 4) / 1000
    plain_sum = 0.80 + inoculation + 0.30 + 0.20 + 0.74 + 0.25
    assert one(found, "growing_cost.grown_cost_per_live") == pytest.approx(plain_sum)
    assert one(found, "growing_cost.grown_cost_per_filled") == pytest.approx(plain_sum)
    assert one(found, "lost_bags.bill_a_week") == 0


def test_rooms_cost_nothing_here_unless_typed() -> None:
    """Rent stands with the yearly bills; the default leaves it there."""
    given: dict[Input, Any] = {
        GrowingCost.incubation_room_rate: GrowingCost.incubation_room_rate.default,
        GrowingCost.fruiting_room_rate: GrowingCost.fruiting_room_rate.default,
    }
    found = worked(given)
    saved = 0.98 * 0.20 + 0.931 * 0.74
    assert one(found, "growing_cost.grown_cost_per_filled") == pytest.approx(3.14701528 - saved)
    longer = worked({**given, Harvest.spawn_run_days: 28})
    assert one(longer, "growing_cost.grown_cost_per_filled") == pytest.approx(3.14701528 - saved)


# Checks, each broken


def test_raising_by_the_loss_instead_of_dividing_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    def raised_by_the_loss(self: GrowingCost) -> Expr:
        per_live = self.spawn_run_spent + self.inoculation_spent + self.steaming_spent + self.filled_cost
        return joined(per_live * (1 + self.crop.chosen_loss_in_spawn_run), "money/bag_live")

    assert one(worked(), "growing_cost.cost_adds_up") == 1
    monkeypatch.setattr(GrowingCost.cost_after_spawn_run, "method", raised_by_the_loss)
    assert one(worked(), "growing_cost.cost_adds_up") == 0


def test_a_lost_bag_that_carries_other_lost_bags_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """The cost so far of a bag that entered the spawn run has the bags lost before it in it already."""

    def carrying(self: LostBags) -> Expr:
        return self.cost.cost_through_spawn_run

    assert one(worked(), "lost_bags.bags_make_up_the_cost") == 1
    monkeypatch.setattr(LostBags.spent_in_spawn_run, "method", carrying)
    assert one(worked(), "lost_bags.bags_make_up_the_cost") == 0


def test_bags_that_all_die_are_an_error_and_not_a_free_crop() -> None:
    found = worked({Crop.loss_in_spawn_run: [1, 0, 0]})
    assert one(found, "crop.bags_survive") == 0
    assert one(found, "crop.some_is_left") == 0
    assert [name for name in CHECKS if one(found, name) == 0] == []  # no formula was changed, and none is blamed
    assert all(np.isfinite(value).all() for value in found.values() if value.dtype.kind == "f")


def test_a_mix_too_wet_gives_less_and_costs_more_for_each_weight() -> None:
    """Sawdust with 70% of water in it, aimed at 60%: 0.75 kg of dry mix in 2.5 kg and not 1, so three quarters of the crop.

    The bag holds 1.75 kg of water to heat and not 1.5, and 2.5 kg of sawdust at 0.10, bought as wet as it is.
    """
    dry, wet = worked(), worked({Recipe.dry_matter: [0.3]})
    assert one(wet, "crop.picked_per_filled") == pytest.approx(0.75 * one(dry, "crop.picked_per_filled"))
    assert one(wet, "cabinet_heat.load_water") == pytest.approx(1750)
    assert one(wet, "bag.ingredient_cost") == pytest.approx(0.25)
    spent = 3.14701528 + 0.05  # 0.05 more for ingredients than the 0.20 of the small farm; all else stays
    assert one(wet, "growing_cost.cost_per_picked") == pytest.approx(spent / (0.75 * 0.77801808))


ALL_CHECKS = [declared.dotted for section in SECTIONS for declared in section.declared if isinstance(declared, Check)]
CARRIED = (
    "growing_cost.grown_cost_per_live",
    "growing_cost.grown_cost_per_filled",
    "growing_cost.cost_per_picked",
    "growing_cost.cost_per_packed",
    "growing_cost.cost_per_taken",
)
OF_WEIGHT_SOLD = CARRIED[4:]


@pytest.mark.parametrize(
    ("changes", "without_figure", "fails"),
    [
        ({Crop.trim: 1}, CARRIED[3:], {"crop.some_is_left"}),
        ({Crop.shrink: 1}, OF_WEIGHT_SOLD, {"crop.some_is_left"}),
        ({Crop.trim: 1.2}, CARRIED[3:], {"crop.some_is_left"}),
        ({Crop.shrink: 1.2}, OF_WEIGHT_SOLD, {"crop.some_is_left"}),
        ({Crop.loss_at_steaming: 1.2}, CARRIED, {"crop.some_is_left", "crop.bags_survive"}),
        ({Crop.loss_in_spawn_run: [1.2, 0, 0]}, CARRIED, {"crop.some_is_left", "crop.bags_survive"}),
        (
            {Crop.loss_in_spawn_run: [0.9, 0, 0], SpawnSource.supply: MADE, SpawnSource.extra_loss: 0.5},
            CARRIED,
            {"crop.some_is_left", "crop.bags_survive"},
        ),
        ({Crop.loss_before_first_pick: 1.2}, CARRIED[2:], {"crop.some_is_left", "crop.bags_survive"}),
        ({Crop.loss_between_flushes: [0, 1.2, 0, 0]}, (), {"crop.bags_survive"}),
    ],
)
@pytest.mark.parametrize("system", ["metric", "us"])
def test_a_cost_that_does_not_exist_is_no_figure_and_the_crop_is_named(
    system: str, changes: dict[Input, Any], without_figure: tuple[str, ...], fails: set[str]
) -> None:
    """Nothing sold, or losses of all bags and more: no cost is worked out, none is below zero, no formula is blamed."""
    found = worked(changes, system)
    lines = {line.name: line for line in Model(SECTIONS).lines}
    assert {name for name in CARRIED if one(found, name) == 0} == set(without_figure)
    assert all(lines[name].zero_is_none for name in CARRIED)
    money = [name for section in (GrowingCost, LostBags) for name in lines if name.startswith(section.key())]
    figures = [name for name in money if lines[name].kind == "worked" and not lines[name].is_text]
    assert [name for name in figures if np.min(found[name]) < -1e-12] == []
    errors = {name for name in ALL_CHECKS if lines[name].kind == "error" and one(found, name) == 0}
    assert {name for name in errors if name.startswith(("crop", "harvest", "growing_cost", "lost_bags"))} == fails
