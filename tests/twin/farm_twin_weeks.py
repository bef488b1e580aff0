"""Twin of the schedule: bags week by week from the filling table to the dump, what is picked, and what is sold."""

from __future__ import annotations

import math

from tests.twin.farm_twin_calendar import BEFORE, Calendar
from tests.twin.farm_twin_ground import ROUNDING, Given, Results
from tests.twin.farm_twin_shortages import shortages
from tests.twin.farm_twin_week_hours import week_hours
from tests.twin.farm_twin_week_steps import Weekly, changed, later, so_far, split

__all__ = ["weeks"]

HOURS_IN_A_DAY = 24
WEEKS_IN_A_YEAR = 52
FLUSHES = 4
PLACES_IN_TURN = 5


def between(amount: float) -> float:
    """No less than 0 and no more than 1."""
    return max(0.0, min(amount, 1.0))


def start_up(given: Given, out: Results, when: Calendar) -> Results:
    """How far a new farm has come in each week."""
    new, first = bool(out["farm.is_new"]), float(given["start_up.first_filling"])

    def grown(weeks: float) -> Weekly:
        return [between((week + 1 - first) / max(weeks, 1.0)) if new else 1.0 for week in when.numbers]

    return {
        "start_up.filled_share": grown(float(given["start_up.weeks_to_full"])),
        "start_up.learned": grown(float(given["start_up.weeks_to_learn"])),
        "start_up.rostered_from": float(given["start_up.hands_from"]) if new else 1.0 - BEFORE,
    }  # fmt: skip


def filling(given: Given, out: Results, when: Calendar) -> Results:
    """Bags filled in each week: as logged before the plan, then as planned."""
    usual = float(given["farm.bags_filled_a_week"])
    rows = list(zip(given["plan.filled_earlier"], given["plan.filled_earlier_given"], strict=True))
    earlier = [float(typed) if known else usual for typed, known in rows]
    # the first is the last week before the plan, and the last one stands for all before it
    logged = [earlier[min(max(-week, 0), len(earlier) - 1)] for week in when.numbers]
    before = [0.0 if out["farm.is_new"] or row == 0 else bags for row, bags in enumerate(logged)]
    shut = when.by_month(given["plan.shut_weeks"])
    is_open = [passed >= closed for passed, closed in zip(when.passed, shut, strict=True)]
    full = [usual + more for more in changed(given, when, "more_bags")]
    full_bags = [max(bags, 0.0) * share for bags, share in zip(full, out["start_up.filled_share"], strict=True)]
    planned = [bags * works for bags, works in zip(full_bags, is_open, strict=True)]
    filled = [after if week >= 1 else log for week, after, log in zip(when.numbers, planned, before, strict=True)]
    shut_in_all = float(sum(given["plan.shut_weeks"]))
    found = {
        "whole_weeks_shut": [float(math.ceil(round(float(each), 9))) for each in given["plan.shut_weeks"]],
        "is_open": [float(each) for each in is_open],
        "full_bags": full_bags,
        "earlier": earlier,
        "before": before,
        "filled": filled,
        "shut_in_all": shut_in_all,
        "shut_weeks_agree": float(abs(WEEKS_IN_A_YEAR - float(given["farm.weeks_worked"]) - shut_in_all) <= 1),
    }
    return {f"filling.{name}": value for name, value in found.items()}


def lags(given: Given, out: Results) -> Results:
    """Days from filling to each step of a bag's life."""
    bench = float(out["steamer_in_use.cycle_time"]) / HOURS_IN_A_DAY
    opening = bench + float(given["crop.spawn_run_days"])
    free = opening + float(out["harvest.days_place_taken"])
    half = float(given["crop.pick_days"]) / 2
    pick = [bench + max(float(day) - half, 0.0) for day in out["harvest.day_of_flush"]]
    found: Results = {
        "lags.to_bench": bench,
        "lags.to_opening": opening,
        "lags.to_dumping": bench + float(out["harvest.days_until_dumped"]),
        "lags.to_free_place": free,
        "lags.to_pick": pick,
        "lags.pick_in_weeks": [split(days)[0] for days in pick],
        "lags.pick_whole": [float(split(days)[1]) for days in pick],
        "lags.pick_part": [split(days)[2] for days in pick],
        # a week's bags fall into two rows, and nothing stands in the very first one
        "lags.within_reach": float(split(free)[0] + 1 + 1 <= BEFORE),
    }
    spans = {"bench": "to_bench", "opening": "to_opening", "dumping": "to_dumping", "freeing": "to_free_place"}
    days = {lag: found[f"lags.{step}"] for lag, step in spans.items()}
    for lag, span in {**days, "keeping": float(given["plan.days_it_keeps"])}.items():
        in_weeks, whole, part = split(span)
        found |= {f"{lag}.in_weeks": in_weeks, f"{lag}.whole": float(whole), f"{lag}.part": part}
    return found


def stock(comes: Weekly, goes: Weekly) -> Weekly:
    """What is there at the end of each week."""
    return so_far([more - less for more, less in zip(comes, goes, strict=True)])


def in_process(given: Given, out: Results) -> Results:
    """Where the bags are at the end of each week."""
    filled, learned = out["filling.filled"], out["start_up.learned"]
    lost_at_first = [float(given["start_up.loss_at_first"]) * (1 - far) for far in learned]
    steamed = [bags * float(out["crop.inoculated_per_filled"]) for bags in filled]
    alive = [
        bags * float(out["crop.live_per_filled"]) * max(1 - lost, 0.0)
        for bags, lost in zip(filled, lost_at_first, strict=True)
    ]
    inoculated, moved = later(steamed, out["lags.to_bench"]), later(steamed, out["lags.to_opening"])
    opened, dumped = later(alive, out["lags.to_opening"]), later(alive, out["lags.to_dumping"])
    freed = later(alive, out["lags.to_free_place"])
    waiting, incubating, fruiting = stock(steamed, inoculated), stock(inoculated, moved), stock(opened, dumped)
    lost = [
        bags - whole + out_of_room - going_on
        for bags, whole, out_of_room, going_on in zip(filled, steamed, moved, opened, strict=True)
    ]
    found: Results = {
        "alive": alive,
        "inoculated": inoculated,
        "moved": moved,
        "opened": opened,
        "dumped": dumped,
        "freed": freed,
        "incubating": incubating,
        "fruiting": fruiting,
        "places": stock(opened, freed),
        "lost_by_opening": lost,
    }
    there = [sum(each) for each in zip(waiting, incubating, fruiting, strict=True)]
    gone = [one + other for one, other in zip(lost, dumped, strict=True)]
    rounding = ROUNDING * sum(filled)
    found |= {
        "filled_counted": sum(so_far(filled)),
        "gone_counted": sum(so_far(gone)),
        "waiting_counted": sum(waiting),
        "there_counted": sum(there),
        "rounding": rounding,
        "bags_add_up": alike(there, stock(filled, gone), rounding),
    }
    return {f"in_process.{name}": value for name, value in found.items()}


def alike(one: Weekly, other: Weekly, rounding: float) -> float:
    """1 where two ways of counting differ by no more than rounding in any week."""
    return float(all(abs(here - there) <= rounding for here, there in zip(one, other, strict=True)))


def picks(given: Given, out: Results, when: Calendar) -> Results:
    """What is picked in each week."""
    at_first = float(given["start_up.yield_at_first"])
    learned = [at_first + (1 - at_first) * far for far in out["start_up.learned"]]
    sound = [bags * share for bags, share in zip(out["in_process.alive"], learned, strict=True)]
    season = when.by_month(given["plan.yield_season"])
    bags = [later(sound, days) for days in out["lags.to_pick"]]
    by_flush = [
        [count * float(out["crop.fresh_per_live"][flush]) * now for count, now in zip(bags[flush], season, strict=True)]
        for flush in range(FLUSHES)
    ]
    picked = [sum(each) for each in zip(*by_flush, strict=True)]
    share = (1 - float(given["crop.trim"])) * (1 - float(given["crop.shrink"]))
    found = {
        "sound": sound,
        "typical": [
            [count * float(out["crop.fresh_per_live"][flush]) for count in bags[flush]] for flush in range(FLUSHES)
        ],
        "season": season,
        "by_flush": by_flush,
        "picked": picked,
        "share_taken": share,
        "ready": [each * share for each in picked],
    }
    return {f"picks.{name}": value for name, value in found.items()}


def in_turn(given: Given, out: Results) -> Results:
    """The customers in the order in which they are served."""
    used = [row for row, name in enumerate(given["customer.name"]) if name != ""]
    order = sorted(used, key=lambda row: float(out["customers.turn_key"][row]))
    line = [order[number] if number < len(order) else None for number in range(PLACES_IN_TURN)]
    columns = range(len(given["customer.name"]))

    def of(*names: str) -> Weekly:
        """Sums of typed figures in the order of service."""
        return [0.0 if row is None else sum(float(given[f"customer.{name}"][row]) for name in names) for row in line]

    def brings(row: int) -> tuple[float, float]:
        """Takings, and fees and packing, for a kilogram taken there."""
        sold = float(out["customers.share_sold"][row])
        paid = float(out["customers.fee_taken"][row]) * sold + float(given["customer.packing"][row])
        return float(out["customers.price_kept"][row]) * sold, paid

    pay = [(0.0, 0.0) if row is None else brings(row) for row in line]
    season = [[0.0] * 12 if row is None else [float(each) for each in given["customer.season"][row]] for row in line]
    most = of("most_a_week")
    weekly = [[most[place] * share for share in season[place]] for place in range(PLACES_IN_TURN)]
    found = {
        "place": [1.0 + order.index(row) if row in order else 0.0 for row in columns],
        "number": [1.0 + place for place in range(PLACES_IN_TURN)],
        "is_there": [[float(row == each) for each in line] for row in columns],
        "column": [0.0 if row is None else 1.0 + row for row in line],
        "in_use": [float(row is not None) for row in line],
        "most": most,
        "season": season,
        "week_of_month": weekly,
        "all_take": [sum(month) for month in zip(*weekly, strict=True)],
        "takings": [takings for takings, _ in pay],
        "selling": [paid for _, paid in pay],
        "going": of("stall", "delivery"),
        "days_to_pay": of("days_to_pay"),
    }
    return {f"in_turn.{name}": value for name, value in found.items()}


def cold_room(given: Given, out: Results, when: Calendar) -> Results:
    """What is ready is sold the oldest first, kept so many days, and thrown out."""
    at_first, keeps = float(given["start_up.sales_at_first"]), float(given["plan.days_it_keeps"])
    learned = [at_first + (1 - at_first) * far for far in out["start_up.learned"]]
    wanted = [most * far for most, far in zip(when.by_month(out["in_turn.all_take"]), learned, strict=True)]
    wanted = [float(each) for each in out.get("cold_room.wanted", wanted)]
    ready = out["picks.ready"]
    ready_so_far = so_far(ready)
    aged = later(ready_so_far, keeps)
    sold, spoiled, left = [], [], []
    there = all_sold = all_spoiled = 0.0
    rounding = ROUNDING * sum(ready)
    for row, comes in enumerate(ready):
        there += comes
        goes = max(min(there, wanted[row]), 0.0)
        all_sold += goes
        too_old = aged[row] - all_sold - all_spoiled
        rots = too_old if too_old > rounding else 0.0
        all_spoiled += rots
        there -= goes + rots
        sold.append(goes)
        spoiled.append(rots)
        left.append(there)
    gone = so_far([one + other for one, other in zip(sold, spoiled, strict=True)])
    accounted = [one + other for one, other in zip(gone, left, strict=True)]
    found = {
        "wanted": wanted,
        "aged": aged,
        "sold": sold,
        "spoiled": spoiled,
        "left": left,
        "rounding": rounding,
        "ready_counted": sum(ready_so_far),
        "gone_counted": sum(gone),
        "weight_adds_up": alike(ready_so_far, accounted, rounding),
    }
    return {f"cold_room.{name}": value for name, value in found.items()}


def weeks(given: Given, out: Results) -> Results:
    """The whole schedule of a farm whose typical year is worked out in `out`; what customers want may stand there as planned."""
    when = Calendar(given)
    every = {**out}
    every |= start_up(given, every, when)
    every |= filling(given, every, when)
    every |= lags(given, every)
    every |= in_process(given, every)
    every |= picks(given, every, when)
    every |= in_turn(given, every)
    every |= cold_room(given, every, when)
    every |= week_hours(given, every, when)
    every |= shortages(given, every, when)
    return {name: value for name, value in every.items() if name not in out}
