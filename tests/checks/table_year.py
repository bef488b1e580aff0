"""Checks of rooms, customers, hours, bills and the year: farms that break them, and farms that they leave in peace."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from tests.checks.checked import Checked

__all__ = ["YEAR"]

PAID: Final = {"hours.counted": "hours paid"}
NOBODY: Final = {"customer.name": ("",) * 5}

YEAR: Final[Mapping[str, Checked]] = {
    # 1 % lost at steaming and 1.5 % before the first pick leave 97.5 of a hundred
    "crop.share_is_enough": Checked(
        fails=({"crop.losses_given": "in one share", "crop.never_fruits": 0.024},),
        holds=({"crop.losses_given": "in one share", "crop.never_fruits": 0.025}, {"crop.never_fruits": 0.01}),
    ),
    "lost_bags.bags_add_up": Checked(
        slips=("lost_bags.lost_at_steaming", "lost_bags.lost_in_spawn_run", "lost_bags.cleared"),
        holds=({"crop.loss_at_steaming": 1}, {"crop.loss_between_flushes": [0, 1, 1, 1]}),
    ),
    # 614 bags inoculated a week stand for 21 days: 1,841 places; two loads a week, six at a time
    "incubation_room.enough": Checked(
        fails=({"incubation_room.own_places": 1841},),
        holds=({"incubation_room.own_places": 1842}, {"incubation_room.own_places": None}),
    ),
    "incubation_room.enough_at_peak": Checked(
        fails=({"incubation_room.own_places": 2148, "crop.spawn_run_days": 22},),
        holds=({"incubation_room.own_places": 2149, "crop.spawn_run_days": 22}, {"incubation_room.own_places": 0}),
    ),
    "incubation_room.days_add_up": Checked(
        slips=("incubation_room.at_peak", "incubation_room.by_load", "incubation_room.by_day"),
        holds=({"crop.spawn_run_days": 20.5}, {"crop.loss_at_steaming": 1}),
    ),
    # 589 bags a week, a place taken for 25 days
    "fruiting_room.enough": Checked(
        fails=({"fruiting_room.own_places": 2104},), holds=({"fruiting_room.own_places": 2105},)
    ),
    "fruiting_room.enough_at_peak": Checked(
        fails=({"fruiting_room.own_places": 2356},), holds=({"fruiting_room.own_places": 2357},)
    ),
    "incubation_climate.heat_adds_up": Checked(
        slips=(
            "incubation_climate.taken_out_a_year",
            "incubation_climate.lost_a_year",
            "incubation_climate.gained_a_year",
        ),
        holds=({"climate.outside": 30}, {"incubation_climate.air_volume": None}, {"crop.loss_at_steaming": 1}),
    ),
    "fruiting_climate.heat_adds_up": Checked(
        slips=("fruiting_climate.heat_a_year", "fruiting_climate.lost_a_year", "fruiting_climate.gained_a_year"),
        holds=({"climate.outside": 30}, {"fruiting_climate.air_volume": None}, {"crop.loss_at_steaming": 1}),
    ),
    "fruiting_room.days_add_up": Checked(
        slips=("fruiting_room.at_peak", "fruiting_room.by_load", "fruiting_room.by_day"),
        holds=({"crop.turn_round_days": 0.5}, {"recipe.loss_in_spawn_run": 1}),
    ),
    "customers.one_takes_the_rest": Checked(
        fails=({"customer.takes_rest": [1, 0, 0, 1, 0]},),
        holds=({"customer.takes_rest": 0}, {"customer.takes_rest": [1, 0, 0, 0, 1]}),
    ),
    "customer_year.everything_has_a_customer": Checked(
        fails=(NOBODY, {"customer.most_a_week": 40}), holds=({"customer.most_a_week": 400}, {**NOBODY, "crop.trim": 1})
    ),
    "customer_year.taken_adds_up": Checked(
        slips=("customer_year.taken", "customer_year.taken_in_all"), holds=(NOBODY, {"customer.most_a_week": 0})
    ),
    "customer_year.sold_adds_up": Checked(
        slips=("customer_year.sold_in_all", "customer_year.unsold", "customer_year.taken_in_all"),
        holds=({"customer.unsold": 1}, NOBODY),
    ),
    "hours.enough": Checked(
        fails=({**PAID, "hours.hired_hours": 10, "hours.own_hours": 40},),
        holds=({**PAID, "hours.hired_hours": 100}, {"hours.own_hours": 0}),
    ),
    "hours.tasks_add_up": Checked(
        slips=("hours.making", "mixing_work.per_bag", "office_work.per_bag", "hours.needed"),
        holds=({"farm.wage": 0},),
    ),
    "bills.energy_covers_steaming": Checked(
        fails=({"bills.energy": 100},), holds=({"bills.energy": 100000}, {"bills.energy": None})
    ),
    "bills.energy_is_in_the_bills": Checked(
        fails=({"bills.counted": "one sum", "bills.in_all": 4999, "bills.energy": 5000},),
        holds=({"bills.counted": "one sum", "bills.in_all": 5000, "bills.energy": 5000},),
    ),
    "year.adds_up": Checked(slips=("year.profit", "year.cost_in_money"), holds=(NOBODY,)),
    "household.lives": Checked(fails=({"household.needs": 1e6},), holds=({"household.needs": 0}, NOBODY)),
    "price_parts.all_parts": Checked(
        slips=(
            "price_parts.goods",
            "price_parts.standing",
            "price_parts.labour",
            "year.cash_cost",
        ),
        holds=(NOBODY,),
    ),
    "limits.plan_fits": Checked(
        fails=({"limits.bench_hours": 1},), holds=({"limits.bench_hours": 10}, {"limits.bench_hours": None})
    ),
    "busiest_day.day_is_long_enough": Checked(
        fails=({"limits.day_hours": 2},), holds=({"limits.day_hours": 60}, {"limits.day_hours": None})
    ),
    # 357 kg packed a week, a fifth of it on the busiest day, kept three days
    "busiest_day.cold_room_holds": Checked(
        fails=({"limits.cold_room": 150},), holds=({"limits.cold_room": 300}, {"limits.cold_room": None})
    ),
}
