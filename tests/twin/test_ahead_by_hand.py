"""The next weeks, the last year of a plan and weeks without filling, counted by hand on the small farm and the simple one."""

from __future__ import annotations

from datetime import date
from typing import Any, Final

import pytest

from tests.twin.plan_farms import day_counted
from tests.twin.test_months_by_hand import simple
from tests.twin.test_weeks_by_hand import ONCE, Named, near, small

WEEK_1: Final = day_counted(date(2026, 12, 28))
WEEK_2: Final = WEEK_1 + 7
LAB: Final[Named] = {
    "spawn.supply": "made on the farm",
    "own_spawn.route": "one grain, then sawdust spawn",
    "own_spawn.run_days": [14, 11, 13, 12],
    "own_spawn.buffer_days": 8,
}
"""Sawdust spawn 22 days before the bench, grain another 21 and the plate another 20; the bench a day after filling."""


def listed(line: Any) -> list[float]:
    """A line as a list."""
    return [float(each) for each in line]


def test_the_card_is_of_the_week_that_holds_the_day_typed() -> None:
    """The first week of January is shut: it is week 2, of 4 January."""
    shut: Named = {"plan.shut_weeks": [1] + [0] * 11}
    for day in (WEEK_2, WEEK_2 + 2, WEEK_2 + 6):
        found = small(shut, {"plan.this_monday": day})
        assert found["this_week.monday"] == WEEK_2
        assert listed(found["ahead.week"]) == listed(range(2, 15))
        assert listed(found["ahead.filled"]) == near(0, *[100] * 12)
        assert listed((found["this_week.bags"], found["this_week.loads"], found["this_week.batches"])) == near(0, 0, 0)
        assert float(found["this_week.picked"]) == pytest.approx(54)
        # what was not filled in week 2 is opened in week 5, and picked in weeks 6 and 8
        assert listed(found["ahead.opened"])[:5] == near(72, 72, 72, 0, 72)
        assert listed(found["ahead.picked"])[:8] == near(54, 54, 54, 54, 18, 54, 36, 54)
    # four weeks before week 2 the plan has not begun
    assert small(shut)["this_week.monday"] == WEEK_1


def test_days_far_from_the_plan_show_its_first_or_its_last_weeks() -> None:
    early, late = (small({"plan.this_monday": day_counted(date(year, 6, 1))}) for year in (2020, 2040))
    assert early["ahead.row"][0] == 2
    assert late["ahead.row"][-1] == late["plan_weeks.rows"] - 1


def test_crops_of_the_next_weeks_stand_flush_by_flush() -> None:
    """100 bags of week 5 give 36 kg in week 9, and 18 kg in week 11."""
    found = small(ONCE, {"plan.this_monday": WEEK_1 + 8 * 7})
    assert listed(found["this_week.picked_by_flush"]) == near(36, 0, 0, 0)
    assert listed(found["this_week.picked_next"]) == near(0, 0, 0, 0)
    assert listed(found["this_week.picked_after"]) == near(0, 18, 0, 0)


def test_spawn_is_ordered_before_its_bags_are_filled() -> None:
    """Three weeks of delivery are 20 days before a filling: it is ordered in the third week before."""
    found = small(ONCE, {"spawn.lead_time": 3, "plan.this_monday": WEEK_1})
    bags = float(found["month_spawn.packs_for_a_bag"]) * 100
    assert bags > 1
    assert listed(found["spawn_ahead.packs"]) == near(0, -(-bags // 1), *[0] * 11)
    # a year of weeks takes no more bags than their sum, and one that is begun
    steady = small({"spawn.lead_time": 3, "plan.this_monday": WEEK_1})
    assert 0 <= sum(listed(steady["spawn_ahead.packs"])) - 13 * bags < 1 + 1e-9


def test_own_spawn_is_started_a_generation_after_the_other() -> None:
    """Sawdust 21 days before filling, which are 3 weeks; grain 42, which are 6; the plate 62, which are 9."""
    found = small(ONCE, LAB, {"start_up.first_filling": 13, "step_up.from_week": [14, None, None]})
    assert listed(found["spawn_ahead.weeks_before"])[0] == 3
    weeks = {}
    for generation, name in enumerate(("sawdust", "grain from grain", "grain", "plate")):
        started = listed(found["spawn_ahead.started"][generation])
        weeks[name] = [week for week, count in enumerate(started, start=1) if count > 0]
    assert weeks == {"sawdust": [10], "grain from grain": [], "grain": [7], "plate": [4]}
    card = small(
        ONCE,
        LAB,
        {"start_up.first_filling": 13, "step_up.from_week": [14, None, None]},
        {"plan.this_monday": WEEK_1 + 21},
    )
    assert listed(card["this_week.ready_on"]) == near(0, 0, 0, WEEK_1 + 21 + 12)
    assert float(card["this_week.started"][3]) >= 1


def test_wetter_sawdust_is_weighed_out_heavier_and_less_water_added() -> None:
    """72 kg of dry mix a batch hold 78 % sawdust: 56.16 kg, which come with 42 % of water; 5 points more make 105.96 kg."""
    found = small()
    assert float(found["this_week.sawdust_dry"]) == pytest.approx(56.16)
    assert float(found["this_week.sawdust_typed"]) == pytest.approx(56.16 / 0.58)
    assert listed(found["this_week.sawdust"]) == near(56.16 / 0.68, 56.16 / 0.63, 56.16 / 0.53, 56.16 / 0.48)
    all_water = listed(found["this_week.water"] * 0.99821 + found["this_week.sawdust"])
    assert all_water == pytest.approx([all_water[0]] * 4)


def test_more_lost_bags_than_chance_brings_are_too_many() -> None:
    """Of 90 bags looked over 18 are lost, give or take the root of 14.4; three times that above 18 are 29.4."""
    found = small()
    assert listed((found["this_week.looked_over"], found["this_week.act_above"])) == near(90, 29)


def test_cash_four_weeks_on_is_of_the_month_of_that_day() -> None:
    """From 28 December it is 25 January, from 4 January it is 1 February; days off the plan are its first or last month."""
    for day, month in ((WEEK_1, 1), (WEEK_2, 2), (WEEK_1 - 70, 1), (WEEK_1 + 7 * 54, 12)):
        found = small({"plan.this_monday": day})
        assert found["four_weeks_on.month"] == month
        assert found["four_weeks_on.closing"] == found["month_cash.closing"][month - 1]


def test_the_last_year_is_added_up_and_explained() -> None:
    """366 days at 10 kg and 100 a day; a typical year has 52 weeks of them, and nothing is paid."""
    found = simple({}, 24)
    assert float(found["last_year.sold"]) == pytest.approx(3660)
    assert float(found["last_year.sales"]) == pytest.approx(36600)
    assert float(found["last_year.left"]) == pytest.approx(36600)
    assert float(found["last_year.typical_left"]) == pytest.approx(52 * 700)
    assert float(found["last_year.bags_share"]) == pytest.approx(366 / 7 / 52)
    # the 2 days by which the year is longer than 52 weeks bring 200, which its bags explain
    assert float(found["last_year.by_bags"]) == pytest.approx(200)
    assert float(found["last_year.by_rest"]) == pytest.approx(0, abs=1e-6)


def test_three_weeks_without_filling() -> None:
    """300 bags of 0.54 kg, of which customers take 40 of 54; what the last kilogram brings is lost, and 300 bags are saved."""
    found = small(
        {"stop.wages_kept": 0.25, "stop.insured": 500, "hours.counted": "hours paid", "hours.hired_hours": 40}
    )
    assert listed((found["stop.bags"], found["stop.first_missed"])) == near(300, 14)
    assert listed((found["stop.not_ready"], found["stop.weight"])) == near(162, 120)
    assert float(found["stop.hours"]) == pytest.approx(90)
    lost, saved = 120 * float(found["customer_year.last_one"]), 300 * float(found["stop.saved_a_bag"])
    wages = 90 * float(found["farm.labour_rate"])
    assert float(found["stop.cost"]) == pytest.approx(lost - saved - wages - 500)


def test_weeks_that_are_shut_anyway_cost_nothing() -> None:
    found = small({"plan.shut_weeks": [1] + [0] * 11, "stop.from_week": 2, "stop.weeks": 1})
    assert listed((found["stop.bags"], found["stop.weight"], found["stop.takings_lost"])) == near(0, 0, 0)


def test_the_farm_is_back_when_all_flushes_are_picked_as_before() -> None:
    """Down in weeks 10 to 12; the last flush of week 13 is picked in week 19, and no week from then on misses any."""
    found = small()
    stopped = small({"step_up.from_week": [10, 13, None], "step_up.more_bags": [-100, 100, None]})
    missing = (found["picks.picked"] - stopped["picks.picked"]).round(9)
    last = max(week for week, less in zip(found["plan_weeks.number"], missing, strict=True) if less > 0)
    assert last == 18
    assert found["stop.back"] == last + 1


def test_picking_by_the_piece_is_not_paid_for_what_is_not_picked() -> None:
    by_piece: Named = {"picking.paid": "by the piece"}
    found = small(by_piece)
    saved = float(found["one_more.piece"]) * float(found["stop.not_ready"])
    assert saved > 0
    goods = float(found["bag.material_cost"]) + float(found["one_more.steam_goods"])
    goods += float(found["one_more.spawn_goods"]) * float(found["crop.inoculated_per_filled"])
    assert float(found["stop.saved_on_bags"]) == pytest.approx(300 * goods + saved)


def test_what_nobody_takes_is_no_loss_when_it_is_not_grown() -> None:
    """54 kg a week are picked of which customers take 40: three weeks without bags cost them 120 kg at the most."""
    assert float(small()["stop.weight"]) <= 120 + 1e-9


def test_a_new_farm_expects_to_lose_what_its_plan_loses() -> None:
    """A tenth of the way: of 90 bags moved in week 8, 72 x 0.82 are opened, so the plan itself counts on 30.96 lost."""
    slow = {"start_up.weeks_to_learn": 10, "start_up.loss_at_first": 0.2, "plan.this_monday": WEEK_1 + 7 * 7}
    found = small(ONCE, slow)
    assert float(found["this_week.opened"]) == pytest.approx(72 * 0.82)
    assert float(found["this_week.lost_expected"]) == pytest.approx(90 - 72 * 0.82)


def test_own_spawn_on_paper_is_no_error_where_spawn_is_bought() -> None:
    found = small(LAB, {"spawn.supply": "bought", "own_spawn.run_days": [140, 11, 13, 12]})
    assert found["steaming_ahead.within_reach"] == 1
